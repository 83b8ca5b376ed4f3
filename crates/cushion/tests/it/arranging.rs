//! Faces, areas and sides of right layouts.

use std::f64::consts::PI;

use cushion::{Pattern, Rim};

use crate::build::{Build, CURVE, assert_near, bow};

/// Rounding of sums of a few hundred thousand square millimetres.
const ROUNDING: f64 = 1e-6;

/// Two halves by a seam across, in a cushion that is written whole.
fn halves() -> Build {
    Build::whole()
        .on("west", "outline", "front-left", "rear-left", 0.5)
        .on("east", "outline", "rear-right", "front-right", 0.5)
        .seam("across", &["west", "east"])
        .one("rear", 0.0, 0.2, 1)
        .one("front", 0.0, 0.8, 2)
}

#[test]
fn a_seam_across_makes_two_rectangles() {
    let pattern = halves().at("440x400");
    for ix in pattern.indices() {
        assert_near(pattern.area(ix).to_mm2(), 440.0 * 200.0, ROUNDING);
        assert_near(pattern.perimeter(ix).to_mm(), 2.0 * (440.0 + 200.0), ROUNDING);
        assert_near(pattern.wall_area(ix).to_mm2(), 1280.0 * 60.0, ROUNDING);
    }
    let rear = pattern.centroid(pattern.by_id("rear").unwrap());
    assert_near(rear.x, 0.0, ROUNDING);
    assert_near(rear.y, 100.0, ROUNDING);
    let lengths: Vec<_> = pattern.seam_lengths();
    assert_eq!(lengths[1].0.as_str(), "across");
    assert_near(lengths[1].1.to_mm(), 440.0, ROUNDING);
}

#[test]
fn a_pattern_has_the_rim_of_its_layout() {
    let mut build = halves();
    for rim in [Rim::Soft, Rim::Boxed] {
        build.0.rim = rim;
        assert_eq!(build.at("440x400").rim(), rim);
    }
}

#[test]
fn every_edge_borders_what_lies_beside_it() {
    let pattern = halves().at("440x400");
    for edge in pattern.edges() {
        let inner = edge.seam.as_str() == "across";
        assert_eq!(edge.is_outer(), !inner);
    }
    let across = pattern.edges().iter().find(|edge| edge.seam.as_str() == "across").unwrap();
    // From the client's left to the right, the front lies to the left hand.
    assert_eq!(pattern[across.left.unwrap()].id.as_str(), "front");
    assert_eq!(pattern[across.right.unwrap()].id.as_str(), "rear");
}

/// A mirrored cushion: a centre seam in front, an island behind.
fn with_island() -> Build {
    Build::mirrored()
        .point("mid", 0.0, 0.6)
        .on("side", "outline", "rear-corner", "front-corner", 0.6)
        .point("isle-rear", 0.0, 0.2)
        .point("isle-front", 0.0, 0.4)
        .seam("across", &["mid", "side"])
        .seam("centre", &["mid", "front"])
        .shaped("isle", &["isle-rear", "isle-front"], bow(-0.5), false)
        .one("isle", 0.0, 0.3, 1)
        .one("rear", 0.0, 0.05, 2)
        .pair("front", 0.25, 0.8, 3, 4)
}

#[test]
fn a_mirrored_layout_has_both_halves() {
    let pattern = with_island().at("400x400");
    let ids: Vec<_> = pattern.compartments().iter().map(|c| c.id.as_str().to_owned()).collect();
    assert_eq!(ids, ["isle", "rear", "front-left", "front-right"]);
    let centre = |id: &str| pattern.centroid(pattern.by_id(id).unwrap());
    assert_near(centre("front-left").x, -100.0, ROUNDING);
    assert_near(centre("front-right").x, 100.0, ROUNDING);
    assert_near(centre("isle").x, 0.0, ROUNDING);
}

#[test]
fn an_island_is_a_hole_in_what_lies_around_it() {
    let pattern = with_island().at("400x400");
    let (isle, rear) = (pattern.by_id("isle").unwrap(), pattern.by_id("rear").unwrap());
    // Two half circles of 80 mm across.
    let disc = PI * 40.0 * 40.0;
    assert_near(pattern.area(isle).to_mm2(), disc, ROUNDING);
    assert_near(pattern.area(rear).to_mm2(), 400.0 * 240.0 - disc, ROUNDING);
    assert_eq!(pattern[rear].holes.len(), 1);
    assert_near(pattern.perimeter(rear).to_mm(), 2.0 * 640.0 + PI * 80.0, ROUNDING);
    // The hole's centroid is 120 mm from the rear, as is the rectangle's.
    assert_near(pattern.centroid(rear).y, 120.0, ROUNDING);
}

#[test]
fn compartments_cover_the_outline_whatever_the_seams() {
    for shape in [bow(0.1), bow(-0.2), CURVE] {
        let layout = Build::mirrored()
            .point("mid", 0.0, 0.45)
            .point("bend", 0.3, 0.55)
            .on("side", "outline", "rear-corner", "front-corner", 0.5)
            .shaped("across", &["mid", "bend", "side"], shape, false)
            .seam("centre", &["mid", "front"])
            .one("rear", 0.0, 0.2, 1)
            .pair("front", 0.25, 0.8, 2, 3);
        for size in ["250x250", "440x400", "610x550"] {
            let pattern = layout.at(size);
            let whole = pattern.size().width().to_mm() * pattern.size().depth().to_mm();
            let sum: f64 = pattern.indices().map(|ix| pattern.area(ix).to_mm2()).sum();
            assert_near(sum, whole, ROUNDING);
        }
    }
}

#[test]
fn a_curve_crosses_the_centre_line_without_a_corner() {
    let pattern = Build::mirrored()
        .point("mid", 0.0, 0.45)
        .point("bend", 0.3, 0.55)
        .on("side", "outline", "rear-corner", "front-corner", 0.5)
        .shaped("across", &["mid", "bend", "side"], CURVE, false)
        .one("rear", 0.0, 0.2, 1)
        .one("front", 0.0, 0.8, 2)
        .at("440x400");
    let at_centre = pattern
        .edges()
        .iter()
        .filter(|edge| edge.seam.as_str() == "across" && edge.chain.start().x.abs() < 1e-9);
    let slopes: Vec<f64> = at_centre.map(|edge| edge.chain.pieces()[0].direction(0.0).y).collect();
    assert_eq!(slopes.len(), 2);
    for slope in slopes {
        // Straight to the side, to rounding.
        assert_near(slope, 0.0, 1e-12);
    }
}

#[test]
fn rounded_corners_are_true_arcs() {
    let pattern = Build::whole()
        .round("front-left", 60.0)
        .round("front-right", 60.0)
        .one("all", 0.0, 0.5, 1)
        .at("440x400");
    let ix = pattern.by_id("all").unwrap();
    let missing = 2.0 * (1.0 - PI / 4.0) * 60.0 * 60.0;
    assert_near(pattern.area(ix).to_mm2(), 440.0 * 400.0 - missing, ROUNDING);
    let shorter = 2.0 * (2.0 - PI / 2.0) * 60.0;
    assert_near(pattern.perimeter(ix).to_mm(), 1680.0 - shorter, ROUNDING);
}

#[test]
fn a_seam_may_end_on_a_rounding() {
    let pattern = Build::mirrored()
        .round("front-corner", 80.0)
        .seam("slant", &["rear", "front-corner"])
        .one("front", 0.0, 0.8, 1)
        .pair("rear", 0.4, 0.2, 2, 3)
        .at("400x400");
    let corner = 200.0 - 80.0 * (1.0 - 0.5_f64.sqrt());
    let slant = pattern.edges().iter().find(|edge| edge.seam.as_str() == "slant").unwrap();
    assert_near(slant.chain.end().x.abs(), corner, ROUNDING);
    assert_near(slant.chain.end().y, 400.0 - 80.0 * (1.0 - 0.5_f64.sqrt()), ROUNDING);
}

#[test]
fn the_same_layout_gives_the_same_pattern() {
    assert_eq!(with_island().at("431.8x406.4"), with_island().at("431.8x406.4"));
}

/// A cushion written whole, with a seam from rear to front at a share of the width.
fn window_and_door(at: f64) -> Pattern {
    Build::whole()
        .on("back", "outline", "rear-left", "rear-right", at)
        .on("fore", "outline", "front-right", "front-left", 1.0 - at)
        .seam("split", &["back", "fore"])
        .one("window", -0.4, 0.5, 1)
        .one("door", 0.4, 0.5, 2)
        .at("440x400")
}

#[test]
fn partners_are_known_by_their_shapes() {
    let pattern = window_and_door(0.5);
    let of = |id: &str| pattern.by_id(id).unwrap();
    assert_eq!(pattern.partner(of("window")), Some(of("door")));
    assert_eq!(pattern.partner(of("door")), Some(of("window")));
    // On two sides, and not alike: whatever they are called, they are no partners.
    let pattern = window_and_door(0.45);
    assert!(pattern.indices().all(|ix| pattern.partner(ix).is_none()));
    // Across the middle there is none.
    let pattern = with_island().at("400x400");
    let of = |id: &str| pattern.by_id(id).unwrap();
    assert_eq!(pattern.partner(of("isle")), None);
    assert_eq!(pattern.partner(of("rear")), None);
    assert_eq!(pattern.partner(of("front-left")), Some(of("front-right")));
}

#[test]
fn an_island_is_no_partner_of_what_lies_around_its_image() {
    // On the client's right an island in the middle of a half, on the left none.
    let pattern = Build::whole()
        .on("back", "outline", "rear-left", "rear-right", 0.5)
        .on("fore", "outline", "front-right", "front-left", 0.5)
        .seam("split", &["back", "fore"])
        .point("isle-rear", 0.25, 0.35)
        .point("isle-front", 0.25, 0.65)
        .shaped("isle", &["isle-rear", "isle-front"], bow(-0.5), true)
        .one("isle", 0.25, 0.5, 1)
        .one("around", 0.25, 0.1, 2)
        .one("plain", -0.25, 0.5, 3)
        .at("440x400");
    assert!(pattern.indices().all(|ix| pattern.partner(ix).is_none()));
}
