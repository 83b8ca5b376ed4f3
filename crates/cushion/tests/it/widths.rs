//! Least widths against shapes whose width is known.

use cushion::{greatest_width, least_width};

use crate::build::{Build, assert_near, bow};

/// The width is found to half a millimetre, and a curve's two sides are each a tenth off.
const FOUND_TO: f64 = 0.7;

#[track_caller]
fn check(build: &Build, id: &str, expected: f64) {
    let pattern = build.at("400x400");
    let ix = pattern.by_id(id).expect("the compartment is there");
    assert_near(least_width(&pattern, ix).to_mm(), expected, FOUND_TO);
}

#[test]
fn a_rectangle_is_as_wide_as_its_short_side() {
    let strip = Build::whole()
        .on("west", "outline", "front-left", "rear-left", 0.75)
        .on("east", "outline", "rear-right", "front-right", 0.25)
        .seam("across", &["west", "east"])
        .one("rear", 0.0, 0.1, 1)
        .one("front", 0.0, 0.8, 2);
    check(&strip, "rear", 100.0);
    check(&strip, "front", 300.0);
}

#[test]
fn a_neck_counts_and_a_disc_is_its_diameter() {
    // Between the disc and the sides, 400 mm apart, is left (400 - 240) / 2 on each side.
    let ring = Build::mirrored()
        .point("isle-rear", 0.0, 0.2)
        .point("isle-front", 0.0, 0.8)
        .shaped("isle", &["isle-rear", "isle-front"], bow(-0.5), false)
        .one("isle", 0.0, 0.5, 1)
        .one("around", 0.0, 0.1, 2);
    check(&ring, "isle", 240.0);
    check(&ring, "around", 80.0);
}

#[test]
fn the_widest_place_is_where_the_largest_disc_fits() {
    let build = Build::mirrored()
        .point("mid", 0.0, 0.5)
        .on("side", "outline", "rear-corner", "front-corner", 0.25)
        .seam("slant", &["mid", "side"])
        .one("rear", 0.0, 0.2, 1)
        .one("front", 0.0, 0.8, 2);
    let pattern = build.at("400x400");
    let rear = pattern.by_id("rear").expect("the compartment is there");
    // A house of 400 across, 200 high in the middle and 100 at the sides: the disc stands on the
    // base and under both slopes, whose normal has the share 200 / hypot(100, 200) upwards.
    let upwards = 200.0 / 100.0_f64.hypot(200.0);
    let radius = 200.0 * upwards / (1.0 + upwards);
    assert_near(greatest_width(&pattern, rear).to_mm(), 2.0 * radius, FOUND_TO);
    assert!(least_width(&pattern, rear) < greatest_width(&pattern, rear));
}
