//! Pieces of covers: strips, cut lines, notches, openings, the sheet.
#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

use cushion::{
    CompartmentFill, CountRange, Length, Pattern, Piece, Point, Pressure, StockFill, Volume,
};
use templates::{Drawn, Layer, Options, PieceKind, Says, Template, strips};
use testkit::assert_near;

/// A fill whose compartments all rise by so much.
fn fill(pattern: &Pattern, crown: f64) -> StockFill {
    let one = CompartmentFill {
        crown: Length::from_mm(crown),
        volume: Volume::from_litres(2.0),
        packing: 0.5,
        cells: CountRange { low: 20, stock: 30, high: 40 },
    };
    let compartments = vec![one; pattern.compartments().len()];
    StockFill { pressure: Pressure::from_pa(500.0), compartments }
}

fn options(allowance: f64, eased: bool) -> Options {
    Options { allowance: Length::from_mm(allowance), eased }
}

fn of(layout: &str, size: &str) -> (Pattern, Template) {
    let pattern = testkit::pattern(layout, size);
    let template = Template::new(&pattern, &fill(&pattern, 12.0), options(10.0, true));
    (pattern, template)
}

const ALL: [(&str, &str); 4] = [
    ("row-six", "250x250"),
    ("island-eight", "440x400"),
    ("curved-ten", "440x400"),
    ("curved-ten", "610x550"),
];

#[test]
fn strips_are_all_seams_and_end_where_seams_meet() {
    for (layout, size) in ALL {
        let pattern = testkit::pattern(layout, size);
        let all = strips(&pattern);
        for (name, length) in pattern.seam_lengths() {
            let own = all.iter().filter(|strip| strip.seam == name);
            let sum: Length = own.map(templates::Strip::length).sum();
            assert_near(sum.to_mm(), length.to_mm(), 1e-6);
        }
        // Euler: with one piece of seam net and no closed way in it, faces are strips less
        // junctions and one more; a closed way without junctions adds a face by itself.
        let ends: std::collections::BTreeSet<usize> =
            all.iter().filter_map(|strip| strip.ends).flatten().collect();
        let closed = all.iter().filter(|strip| strip.ends.is_none()).count();
        let open = all.len() - closed;
        assert_eq!(pattern.compartments().len() + ends.len(), open + 1 + closed, "{layout}");
        // At each junction at least three walls are sewn together.
        for junction in &ends {
            let sewn = all.iter().filter_map(|strip| strip.ends).flatten();
            assert!(sewn.filter(|own| own == junction).count() >= 3, "{layout} J{junction}");
        }
        // Outside is to the right hand of outer walls, so that they run counter-clockwise.
        let swept: f64 = (all.iter().filter(|strip| strip.is_outer()))
            .flat_map(|strip| strip.chain.pieces())
            .map(Piece::swept_area)
            .sum();
        let inside: f64 = pattern.indices().map(|ix| pattern.area(ix).to_mm2()).sum();
        assert_near(swept, inside, 1e-3);
    }
}

fn of_layer(template: &Template, kind: PieceKind, layer: Layer) -> Vec<&Drawn> {
    let piece = template.pieces.iter().find(|piece| piece.kind == kind).unwrap();
    piece.lines.iter().filter(|own| own.layer == layer).collect()
}

#[test]
fn notches_match_on_wall_base_and_top() {
    for (layout, size) in ALL {
        let (_, template) = of(layout, size);
        for strip in &template.strips {
            let kind = PieceKind::Wall(strip.number);
            let on_wall = of_layer(&template, kind, Layer::Notch);
            let stitch = of_layer(&template, kind, Layer::Stitch);
            // Along the lower edge, from its left end.
            let lower = stitch[0].chain.clone();
            let from = lower.start();
            let along = |own: &Drawn| own.chain.start().distance(from);
            let is_lower = |own: &&Drawn| (own.chain.start().y - from.y).abs() < 1e-6;
            let marks: Vec<f64> = on_wall.iter().copied().filter(is_lower).map(along).collect();
            assert_eq!(marks.len(), if strip.length().to_mm() < 60.0 { 1 } else { 3 });
            for piece in [PieceKind::Base, PieceKind::Top] {
                let times = if piece == PieceKind::Top { 1.0 + template.ease } else { 1.0 };
                let notches = of_layer(&template, piece, Layer::Notch);
                let chain = &strip.chain;
                for mark in &marks {
                    // Where the mark is on the seam, one of the panel's marks crosses or touches.
                    let at = chain.point_at(*mark);
                    let hits = |own: &&&Drawn| {
                        let (a, b) = (own.chain.start(), own.chain.end());
                        let origin = corner(&template, piece);
                        let x = if piece == PieceKind::Base { -at.x } else { at.x };
                        let there = origin + kurbo::Vec2::new(x, at.y) * times;
                        kurbo::ParamCurveNearest::nearest(&kurbo::Line::new(a, b), there, 1e-9)
                            .distance_sq
                            < 0.2 * 0.2
                    };
                    assert!(notches.iter().any(|own| hits(&own)), "{layout} {piece:?} {mark}");
                }
            }
        }
    }
}

/// Where the origin of the pattern lies on the sheet: the middle of the rear edge.
fn corner(template: &Template, kind: PieceKind) -> Point {
    let piece = template.pieces.iter().find(|piece| piece.kind == kind).unwrap();
    let bounds = piece.bounds();
    Point::new(bounds.center().x, bounds.y0 + template.options.allowance.to_mm())
}

#[test]
fn the_top_is_larger_by_what_the_crowns_ask_and_the_base_is_not() {
    let (pattern, template) = of("curved-ten", "440x400");
    let most = template.crowns.iter().map(templates::Crown::extra).fold(0.0, f64::max);
    assert!(most > 0.005 && template.ease == most, "{most}");
    let width = |kind| {
        let piece = template.pieces.iter().find(|piece| piece.kind == kind).unwrap();
        piece.bounds().width() - 20.0
    };
    let own = pattern.size().width().to_mm();
    assert_near(width(PieceKind::Base), own, 0.02);
    assert_near(width(PieceKind::Top), own * (1.0 + most), 0.02);
    for join in &template.joins {
        assert_near(join.eased_in().to_mm(), join.on_wall.to_mm() * most, 1e-9);
    }
    let stretch = Template::new(&pattern, &fill(&pattern, 12.0), options(10.0, false));
    assert_eq!(stretch.ease, 0.0);
    let flat = Template::new(&pattern, &fill(&pattern, 0.0), options(10.0, true));
    assert_eq!(flat.ease, 0.0);
}

#[test]
fn pieces_lie_apart_on_the_sheet() {
    for (layout, size) in ALL {
        let (_, template) = of(layout, size);
        let boxes: Vec<kurbo::Rect> =
            template.pieces.iter().map(templates::Piece::bounds).collect();
        for (at, own) in boxes.iter().enumerate() {
            assert!(template.sheet.inflate(1e-6, 1e-6).contains_rect(*own), "{layout} {own:?}");
            for other in &boxes[..at] {
                let both = own.intersect(*other);
                assert!(both.width() <= 0.0 || both.height() <= 0.0, "{layout}: {own:?} {other:?}");
            }
        }
    }
}

#[test]
fn openings_lie_inside_their_compartments_with_room_for_a_closure() {
    for (layout, size) in ALL {
        let (pattern, template) = of(layout, size);
        for (own, ix) in template.openings.iter().zip(pattern.indices()) {
            assert_eq!(own.number, pattern[ix].number);
            let walls: Vec<Point> = std::iter::once(&pattern[ix].outer)
                .chain(&pattern[ix].holes)
                .flat_map(|ring| pattern.pieces(ring))
                .flat_map(|piece| cushion::Chain::new(vec![piece]).flatten(0.1))
                .collect();
            for end in own.ends() {
                let nearest = walls.iter().map(|wall| wall.distance(end)).fold(f64::MAX, f64::min);
                // Corners of straight walls alone are looked at: what is nearer is no wall.
                assert!(nearest > 8.0, "{layout} {} is {nearest} mm from a wall", own.number);
            }
        }
    }
}

#[test]
fn every_wall_and_compartment_is_named() {
    let (pattern, template) = of("island-eight", "440x400");
    let said: Vec<&Says> =
        template.pieces.iter().flat_map(|piece| &piece.labels).map(|label| &label.says).collect();
    for own in pattern.compartments() {
        let times = said.iter().filter(|says| ***says == Says::Compartment(own.number)).count();
        assert_eq!(times, 2, "on the top and on the base: {}", own.number);
    }
    for strip in &template.strips {
        let times = said.iter().filter(|says| ***says == Says::WallNumber(strip.number)).count();
        assert_eq!(times, 3, "on the wall, on the top and on the base: {}", strip.number);
    }
}

#[test]
fn the_same_template_is_the_same_bytes() {
    let (_, template) = of("curved-ten", "440x400");
    let (_, again) = of("curved-ten", "440x400");
    let written = |own: &Template| templates::dxf(own, &|says| format!("{says:?}"), &[]);
    assert_eq!(written(&template), written(&again));
}

/// How long the words are that run up a short wall, only whoever sets them knows.
#[test]
fn the_arrow_of_a_wall_crosses_no_words_that_run_up_it() {
    let mut upright = 0;
    for (layout, size) in ALL {
        let (_, template) = of(layout, size);
        for piece in template.pieces.iter().filter(|own| matches!(own.kind, PieceKind::Wall(_))) {
            let words = piece.labels.iter().filter(|own| own.angle != 0.0);
            for label in words.filter(|own| matches!(own.says, Says::Wall { .. })) {
                upright += 1;
                let [left, right] = [label.at.x - label.height, label.at.x];
                for line in piece.lines.iter().filter(|own| own.layer == Layer::Grain) {
                    let ends = [line.chain.start().x, line.chain.end().x];
                    let is_beside =
                        ends.iter().all(|x| *x < left) || ends.iter().all(|x| *x > right);
                    assert!(
                        is_beside,
                        "{layout} {}: {ends:?} at {left} to {right}",
                        piece.kind.id()
                    );
                }
            }
        }
    }
    assert!(upright > 4, "some walls are short");
}
