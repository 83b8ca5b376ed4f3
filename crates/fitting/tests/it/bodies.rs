//! Sizing over real bodies.
//!
//! Outside source: ANSUR II, `tests/reference/ansur2.csv`; percentiles of the rules' outcomes as
//! computed from the whole public files (4082 men, 1986 women), of which the table has half.

use cushion::Length;
use fitting::{DEPTH_ROOM, WIDTH_ROOM, sizing};

const TABLE: &str = include_str!("../../../../tests/reference/ansur2.csv");

fn percentile(sorted: &[f64], share: f64) -> f64 {
    let at = (sorted.len() - 1) as f64 * share;
    let (low, part) = (at.floor() as usize, at.fract());
    sorted[low] + part * (sorted[(low + 1).min(sorted.len() - 1)] - sorted[low])
}

fn check(sex: &str, of: impl Fn(&case::SurveyedBody) -> Length, expected: [f64; 3]) {
    let bodies = files::read_bodies(TABLE).unwrap();
    let mut values: Vec<f64> =
        bodies.iter().filter(|body| body.sex == sex).map(|body| of(body).to_mm()).collect();
    values.sort_by(f64::total_cmp);
    for (share, expected) in [0.05, 0.5, 0.95].into_iter().zip(expected) {
        let found = percentile(&values, share);
        // Three standard errors of a percentile at the ends, 2.1 sd / sqrt(n): sd 33 mm, n 968.
        assert!((found - expected).abs() <= 6.6, "{sex} {share}: {found}, expected {expected}");
    }
}

#[test]
fn the_rules_have_the_percentiles_of_the_whole_survey() {
    let depth = |body: &case::SurveyedBody| body.thigh_depth - DEPTH_ROOM;
    check("M", depth, [409.0, 452.0, 498.0]);
    check("F", depth, [391.0, 433.0, 485.0]);
    let width = |body: &case::SurveyedBody| body.hip_width + WIDTH_ROOM;
    check("M", width, [358.0, 403.0, 456.0]);
    check("F", width, [373.0, 422.0, 481.0]);
}

#[test]
fn nobody_gets_a_size_that_breaks_a_rule() {
    let sizes = testkit::layout("row-six").sizes;
    let bodies = files::read_bodies(TABLE).unwrap();
    assert_eq!(bodies.len(), 3034);
    let mut made = 0;
    for body in &bodies {
        let depth = Some(body.thigh_depth);
        let measures = case::Measures {
            hip_width: Some(body.hip_width),
            thigh_depth: case::Sides { left: depth, right: depth },
            ..case::Measures::default()
        };
        let sized = sizing(&measures, Some(body.weight), &case::Chair::default(), &sizes);
        let Some(size) = sized.chosen else { continue };
        made += 1;
        assert!(size.width() >= body.hip_width);
        assert!(size.depth() <= body.thigh_depth - Length::from_mm(30.0));
        let rating = sizes.iter().find(|made| made.size == size).unwrap().max_user_weight;
        assert!(body.weight <= rating);
    }
    // Soldiers are heavier for their hips than the sizes are rated for; more than half find one.
    assert!(2 * made > bodies.len(), "{made}");
}
