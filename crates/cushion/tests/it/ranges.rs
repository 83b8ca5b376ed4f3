//! What is said of a layout over its sizes: jumps, and which counts share a column.

use cushion::{
    CompartmentFill, CountRange, Length, MadeSize, Mass, Pressure, RangeRow, StockFill, Volume,
    columns_of_counts, jumps,
};

use crate::build::{Build, size};

/// Three compartments: one across the rear, a pair in front. Cells grow with the area, one in ten
/// square centimetres.
fn row(of: &str, more_in_1: u32) -> RangeRow {
    let layout = Build::mirrored()
        .point("middle", 0.0, 0.5)
        .on("side", "outline", "rear-corner", "front-corner", 0.5)
        .seam("across", &["middle", "side"])
        .seam("legs", &["middle", "front"])
        .one("rear", 0.0, 0.25, 1)
        .pair("front", 0.25, 0.75, 2, 3);
    let pattern = layout.at(of);
    let compartment = |ix: cushion::CompartmentIx| {
        let stock = (pattern.area(ix).to_cm2() / 10.0).round() as u32;
        let stock = if pattern[ix].number == 1 { stock + more_in_1 } else { stock };
        CompartmentFill {
            crown: Length::from_mm(10.0),
            volume: Volume::from_litres(2.0),
            packing: 0.5,
            cells: CountRange { low: stock - 3, stock, high: stock + 4 },
        }
    };
    let compartments = pattern.indices().map(compartment).collect();
    let fill = StockFill { pressure: Pressure::from_pa(500.0), compartments };
    let made = MadeSize { size: size(of), max_user_weight: Mass::from_kg(80.0) };
    RangeRow { made, pattern, fill }
}

#[test]
fn counts_that_go_with_the_cushion_do_not_jump_and_others_do() {
    let rows = |more| vec![row("440x440", more), row("400x400", 0), row("480x480", 0)];
    assert_eq!(jumps(&rows(0)), []);
    // A fifth more is within what is let pass, half as much more is not; the next size then falls.
    let before = rows(0)[0].fill.compartments[0].cells.stock;
    assert_eq!(jumps(&rows(before / 6)), []);
    let found = jumps(&rows(before / 2));
    let told: Vec<_> = found.iter().map(|own| (own.row, own.from, own.number)).collect();
    assert_eq!(told, [(0, 1, 1), (2, 0, 1)]);
    assert_eq!(
        (found[0].was, found[0].is),
        (rows(0)[1].fill.compartments[0].cells.stock, before + before / 2)
    );
    assert_eq!(found[0].expected, before, "cells were laid by area");
}

#[test]
fn sizes_that_are_wider_and_shorter_are_not_compared() {
    let mut rows = vec![row("400x480", 0), row("480x400", 0)];
    rows[1].fill.compartments[0].cells.stock *= 3;
    assert_eq!(jumps(&rows), []);
}

#[test]
fn only_mirror_images_with_the_same_counts_share_a_column() {
    let names = |rows: &[RangeRow]| -> Vec<String> {
        columns_of_counts(rows).iter().map(|column| column.name()).collect()
    };
    let mut rows = vec![row("400x400", 0), row("440x440", 0)];
    assert_eq!(names(&rows), ["1", "2, 3"]);
    rows[1].fill.compartments[2].cells.high += 1;
    assert_eq!(names(&rows), ["1", "2", "3"]);
    // The same counts alone make no mirror images.
    let mut rows = vec![row("400x400", 0)];
    for own in &mut rows[0].fill.compartments {
        own.cells = CountRange { low: 1, stock: 2, high: 3 };
    }
    assert_eq!(names(&rows), ["1", "2, 3"]);
}

#[test]
fn a_row_adds_up() {
    let row = row("400x400", 0);
    let [low, stock, high] = row.totals();
    assert_eq!((stock - low, high - stock), (9, 12));
    assert_eq!(row.cells_mass(Mass::from_g(0.5)).to_g(), 0.5 * f64::from(stock));
    // The outer seam of a square of 400 mm, one across, one from there to the front.
    let seams: f64 = row.pattern.edges().iter().map(|edge| edge.chain.length()).sum();
    assert!((row.seams().to_mm() - seams).abs() < 1e-9 && seams > 2000.0);
    assert!((row.volume().to_litres() - 6.0).abs() < 1e-12);
}
