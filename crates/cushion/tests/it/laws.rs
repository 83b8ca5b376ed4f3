//! Laws that hold for any layout, on random ones.

use cushion::{Pattern, SeamShape, arrange};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

use crate::build::{Build, CURVE, bow, size};

/// Two seams across that never meet, a centre seam, and an island behind them.
fn layout(rear: f64, front: f64, tilt: f64, shapes: (SeamShape, SeamShape), isle: f64) -> Build {
    Build::mirrored()
        .point("rear-mid", 0.0, rear)
        .point("front-mid", 0.0, front)
        .point("rear-bend", 0.25, rear + tilt)
        .point("front-bend", 0.25, front + tilt)
        .on("rear-side", "outline", "rear-corner", "front-corner", rear)
        .on("front-side", "outline", "rear-corner", "front-corner", front)
        .point("isle-rear", 0.0, 0.1)
        .point("isle-front", 0.0, 0.1 + isle)
        .round("front-corner", 40.0)
        .shaped("hind", &["rear-mid", "rear-bend", "rear-side"], shapes.0, false)
        .shaped("fore", &["front-mid", "front-bend", "front-side"], shapes.1, false)
        .seam("centre", &["rear-mid", "front-mid", "front"])
        .shaped("isle", &["isle-rear", "isle-front"], bow(-0.5), false)
        .one("isle", 0.0, 0.1 + isle / 2.0, 1)
        .one("rear", 0.0, 0.05, 2)
        .pair("middle", 0.2, f64::midpoint(rear, front), 3, 4)
        .pair("front", 0.2, 0.93, 5, 6)
}

fn shape() -> impl Strategy<Value = SeamShape> {
    prop_oneof![Just(SeamShape::Straight), Just(CURVE), (-0.1..0.1).prop_map(bow)]
}

prop_compose! {
    fn patterns()(
        rear in 0.42..0.5,
        front in 0.68..0.76,
        tilt in -0.04..0.04,
        shapes in (shape(), shape()),
        isle in 0.1..0.25,
        at in prop_oneof![Just("250x250"), Just("431.8x406.4"), Just("610x550")],
    ) -> Pattern {
        let build = layout(rear, front, tilt, shapes, isle);
        arrange(&build.0, size(at)).expect("seams that keep apart make a pattern")
    }
}

/// Area within the outer seam, from the edges that border the outside.
fn outline_area(pattern: &Pattern) -> f64 {
    let outer = pattern.edges().iter().filter(|edge| edge.is_outer());
    let area: f64 = outer
        .map(|edge| {
            let sum: f64 = edge.chain.pieces().iter().map(cushion::Piece::swept_area).sum();
            if edge.left.is_some() { sum } else { -sum }
        })
        .sum();
    area
}

proptest! {
    #![proptest_config(ProptestConfig {
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(20),
        ..ProptestConfig::default()
    })]

    #[test]
    fn compartments_cover_the_outline(pattern in patterns()) {
        let sum: f64 = pattern.indices().map(|ix| pattern.area(ix).to_mm2()).sum();
        // Rounding of sums of up to 4e5.
        prop_assert!((sum - outline_area(&pattern)).abs() < 1e-6);
    }

    #[test]
    fn each_inner_seam_is_a_wall_of_two(pattern in patterns()) {
        let perimeters: f64 = pattern.indices().map(|ix| pattern.perimeter(ix).to_mm()).sum();
        let edges: f64 = pattern
            .edges()
            .iter()
            .map(|edge| edge.chain.length() * if edge.is_outer() { 1.0 } else { 2.0 })
            .sum();
        prop_assert!((perimeters - edges).abs() < 1e-6);
    }

    #[test]
    fn the_halves_mirror_each_other(pattern in patterns()) {
        for (left, right) in [(3, 4), (5, 6)] {
            let [left, right] = [left, right].map(|n| pattern.by_number(n).expect("it is there"));
            let (a, b) = (pattern.centroid(left), pattern.centroid(right));
            // Rounding of moments of some 1e8 over areas of some 1e4.
            prop_assert!((a.x + b.x).abs() < 1e-7 && (a.y - b.y).abs() < 1e-7);
            prop_assert!((pattern.area(left) - pattern.area(right)).abs().to_mm2() < 1e-6);
        }
    }
}
