//! Curved seams that move.

use cushion::{Pattern, arrange};

use crate::rest::{Cushion, assert_follows_trend, crooked, numbers, seat_bones};

const CURVED_TEN: &str = include_str!("../../../../layouts/curved-ten.toml");

/// The built-in layout with the seam in front of the seat bones so many mm farther forward. The
/// seams beside it, which are curves through its ends, bend with it.
fn with_moved_seam(mm: f64) -> Pattern {
    let mut text = CURVED_TEN.to_owned();
    // The ends of the seam, and the seed between it and the seam in front of it.
    for (line, end, by) in [
        (r#"hold-mid     = ["0%", "20% + "#, 92.0, mm),
        (r#"side-hold    = ["40% - 44", "20% + "#, 80.0, mm),
        (r#"hold        = { seed = ["16%", "21% + "#, 130.0, mm / 2.0),
    ] {
        let old = format!("{line}{end}\"");
        assert!(text.contains(&old), "the layout has {old}");
        text = text.replace(&old, &format!("{line}{}\"", end + by));
    }
    let layout = testkit::layout_from(&text);
    arrange(&layout, "440x400".parse().expect("a size")).expect("it can be drawn")
}

/// Moved by a tenth of a cell's edge, 59.6 mm, at a time over two cells, across the seat bones'
/// discs: every clearance and disc mean within 20 % of its step from its trend, plus a floor.
#[test]
fn results_follow_a_curved_seam_that_moves() {
    let (steps, step) = (20, 5.96);
    let middle = with_moved_seam(0.0);
    let stock = Cushion::of_pattern(&middle, 4.0);
    let results: Vec<[f64; 4]> = (0..=steps)
        .map(|at| {
            let pattern = with_moved_seam(step * (f64::from(at) - f64::from(steps) / 2.0));
            let mut cushion = Cushion::of_pattern(&pattern, 4.0);
            // Counts go with the areas and are not rounded, and how densely cells lie stays.
            for (ix, own) in pattern.indices().zip(&mut cushion.cells) {
                let known = &stock.cells[ix.index()];
                own.count = known.count * (pattern.area(ix) / middle.area(ix));
                own.packing = known.packing;
            }
            let rest = cushion.carry(crooked(12.0));
            let [left, right] = seat_bones(numbers(&rest));
            [left.0, right.0, left.1, right.1]
        })
        .collect();
    // A fifth of a millimetre; of the disc means 0.1 kPa, 2 %, as between meshes.
    assert_follows_trend(&results, [0.2, 0.2, 0.1, 0.1]);
}
