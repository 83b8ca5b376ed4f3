//! Least widths against shapes whose width is known.

use cushion::least_width;

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
