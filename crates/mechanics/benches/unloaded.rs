//! Times of the unloaded cushion: mesh, unit solution, stock fill.
//!
//! `cargo bench -p mechanics --bench unloaded`. Read the medians as ratios to each other: they
//! depend on the machine and on what else it does.

use cushion::{Length, Pattern};
use divan::{Bencher, black_box};
use mechanics::{NestedMeshes, Parameters, UnloadedCushion, stock_fill, unit_sheets};

const LAYOUTS: [&str; 3] = ["row-six", "island-eight", "curved-ten"];

fn main() {
    divan::main();
}

fn pattern(layout: &str) -> Pattern {
    testkit::pattern(layout, "440x400")
}

fn meshes(pattern: &Pattern, mm: f64) -> NestedMeshes {
    NestedMeshes::new(pattern, Length::from_mm(mm)).expect("built-in layouts can be meshed")
}

#[divan::bench(args = [16.0, 8.0, 4.0, 2.0])]
fn mesh(bencher: Bencher<'_, '_>, mm: f64) {
    let pattern = pattern("curved-ten");
    bencher.bench(|| meshes(black_box(&pattern), mm));
}

#[divan::bench(args = [8.0, 4.0, 2.0])]
fn unit_solution(bencher: Bencher<'_, '_>, mm: f64) {
    let meshes = meshes(&pattern("curved-ten"), mm);
    bencher.bench(|| unit_sheets(black_box(&meshes)));
}

#[divan::bench(args = LAYOUTS)]
fn stock(bencher: Bencher<'_, '_>, layout: &str) {
    let (pattern, cell, parameters) = (pattern(layout), testkit::cell(), Parameters::default());
    bencher.bench(|| stock_fill(black_box(&pattern), &cell, &parameters));
}

/// What one compartment's count makes of its crown, with meshes and unit solution at hand.
#[divan::bench]
fn crown_of_a_count(bencher: Bencher<'_, '_>) {
    let pattern = pattern("curved-ten");
    let cushion = UnloadedCushion::new(&pattern, &testkit::cell(), &Parameters::default())
        .expect("built-in layouts can be filled");
    let seat = pattern.by_number(1).expect("the layout has this number");
    bencher.bench(|| cushion.at_count(seat, black_box(44.0)));
}
