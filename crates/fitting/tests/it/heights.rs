//! Heights of compartments without a client.

use cushion::Length;
use fitting::{PreparedCushion, Spacings};

fn cushion(layout: &str) -> PreparedCushion {
    let pattern = testkit::pattern(layout, "440x400");
    PreparedCushion::new(&pattern, &testkit::cell(), Spacings::default()).unwrap()
}

fn stock(cushion: &PreparedCushion) -> Vec<u32> {
    cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
}

fn mm(length: Length) -> f64 {
    length.to_mm()
}

/// Walls that bow take height from the closed form with upright walls, and never give any.
#[test]
fn heights_lie_between_the_walls_and_the_crown_over_upright_ones() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        let cushion = cushion(layout);
        let counts = stock(&cushion);
        let heights = cushion.heights(None, &counts);
        assert_eq!(heights.len(), counts.len());
        let walls = mm(cushion.pattern().wall_height());
        for (ix, own) in cushion.pattern().indices().zip(heights) {
            let own = own.expect("a stock fill has tops");
            assert!(own.low <= own.central && own.central <= own.high, "{layout}: {own:?}");
            assert!(mm(own.high - own.low) > 1.0, "it is not known so well: {own:?}");
            let upright = walls + mm(cushion.stock()[ix].crown);
            // A whole count is up to half a cell off the stock crown, some tenths of a millimetre.
            let within = walls - 0.5..upright + 1.0;
            assert!(within.contains(&mm(own.central)), "{layout}: {own:?}, upright {upright}");
        }
    }
}

#[test]
fn a_height_follows_its_own_count_and_sides_are_alike() {
    let cushion = cushion("row-six");
    let counts = stock(&cushion);
    let central = |counts: &[u32]| {
        let heights = cushion.heights(None, counts).into_iter();
        heights.map(|own| mm(own.unwrap().central)).collect::<Vec<_>>()
    };
    let before = central(&counts);
    for pair in before.chunks(2) {
        // Searches end a little off, on meshes that are mirror images.
        assert!((pair[0] - pair[1]).abs() < 0.1, "{before:?}");
    }
    let mut more = counts.clone();
    more[0] += 6;
    let after = central(&more);
    assert!(after[0] > before[0] + 1.0, "{before:?} {after:?}");
}

#[test]
fn a_compartment_whose_cells_do_not_reach_its_walls_has_no_height() {
    let cushion = cushion("row-six");
    let mut counts = stock(&cushion);
    counts[1] /= 2;
    let heights = cushion.heights(None, &counts);
    let known: Vec<bool> = heights.iter().map(Option::is_some).collect();
    assert_eq!(known, [true, false, true, true, true, true]);
    assert!(cushion.heights(None, &[0; 6]).iter().all(Option::is_none));
}
