//! The stock fill and the unloaded cushion.

use cushion::{Cell, Length, Packing, Pattern, Pressure, Volume};
use support::{Parameters, UnloadedCushion};
use testkit::assert_near;

/// The straight-seam cushions of the reference cases: 440 x 400 mm, walls of 60 mm.
fn straight(rows: &[f64]) -> Pattern {
    let mut text = String::from(
        r#"
format = 1
kind = "layout"
name = "straight"
title = "Straight seams"
about = "For tests."
class = "skin protection"
mirror = true
wall_height = 60
stock_crown = 15
rating_from = "Not rated."
sizes = [{ size = "440x400", max_user_weight_kg = 80 }]
[points]
rear = ["0%", "0%"]
rear-corner = ["50%", "0%"]
front-corner = ["50%", "100%"]
front = ["0%", "100%"]
"#,
    );
    for (row, y) in rows.iter().enumerate() {
        text += &format!("mid{row} = [0, {y}]\nside{row} = [\"50%\", {y}]\n");
    }
    let inner = |stem: &str| (0..rows.len()).map(|row| format!("\"{stem}{row}\"")).collect::<Vec<_>>();
    let (mids, sides) = (inner("mid").join(", "), inner("side").join(", "));
    text += "[seams]\n";
    text += &format!("outline = {{ through = [\"rear\", \"rear-corner\", {sides}, \"front-corner\", \"front\"] }}\n");
    text += &format!("centre = {{ through = [\"rear\", {mids}, \"front\"] }}\n");
    for row in 0..rows.len() {
        text += &format!("cross{row} = {{ through = [\"mid{row}\", \"side{row}\"] }}\n");
    }
    text += "[compartments]\n";
    for row in 0..=rows.len() {
        let ends = [if row == 0 { 0.0 } else { rows[row - 1] }, *rows.get(row).unwrap_or(&400.0)];
        let y = f64::midpoint(ends[0], ends[1]);
        text += &format!(
            "row{row} = {{ seed = [\"25%\", {y}], numbers = {{ left = {}, right = {} }}, words = \"a row\", for = \"general\" }}\n",
            2 * row + 1,
            2 * row + 2
        );
    }
    let layout = testkit::layout_from(&text);
    let size = "440x400".parse().expect("it is a size");
    cushion::arrange(&layout, size).expect("the test's layout can be drawn")
}

/// A cell of 25 ml that fills the same share everywhere.
fn even_cell(share: f64) -> Cell {
    let packing = Packing { bulk: share, wall: 0.0, source: "as in the reference cases".into() };
    Cell { inflated: Volume::from_ml(25.0), packing, ..testkit::cell() }
}

fn unloaded(pattern: &Pattern, cell: &Cell) -> UnloadedCushion {
    UnloadedCushion::new(pattern, cell, &Parameters::default()).expect("it can be filled")
}

/// Outside source: `tests/reference/prototype_cases.md`, two independent programs in Python.
#[test]
fn counts_of_the_reference_cases_follow_from_their_unloaded_pressures() {
    check_case(&[220.0], &[(0.35, 83.6, 73.0), (0.47, 70.0, 81.0)]);
    check_case(&[140.0, 272.0], &[(0.74, 57.2, 94.0), (0.83, 54.8, 98.0), (0.88, 53.6, 99.0)]);
}

/// Checks rows, rear to front: fill pressure in kPa, count, tension in N/m.
#[track_caller]
fn check_case(seams: &[f64], rows: &[(f64, f64, f64)]) {
    let cushion = unloaded(&straight(seams), &even_cell(0.60));
    let pattern = straight(seams);
    for (row, (kpa, count, tension)) in rows.iter().enumerate() {
        for number in [2 * row + 1, 2 * row + 2] {
            let ix = pattern.by_number(number as u8).expect("it has this number");
            let found = cushion.at_pressure(ix, Pressure::from_kpa(*kpa));
            // The cases are to be reproduced within 3 %.
            assert_near(found.count / count, 1.0, 0.03);
            assert_near(found.tension / tension, 1.0, 0.03);
            println!("{number} {found:?}");
            let from_count = cushion.at_count(ix, *count);
            println!("{number} {from_count:?}");
        }
    }
}

#[test]
fn scratch() {
    for layout in ["row-six", "island-eight", "curved-ten"] {
        let pattern = testkit::pattern(layout, "440x400");
        let mut best = std::time::Duration::MAX;
        for _ in 0..10 {
            let start = std::time::Instant::now();
            let un = UnloadedCushion::new(&pattern, &testkit::cell(), &Parameters::default()).unwrap();
            best = best.min(start.elapsed());
            if best == std::time::Duration::ZERO { println!("{un:?}"); }
        }
        let un = unloaded(&pattern, &testkit::cell());
        println!("{layout} stock {best:?} p {} total {}", un.stock().pressure.to_pa(), un.stock().total());
        for ix in pattern.indices() {
            println!("{} {:.2} {:.2}", pattern[ix].id, un.most_crown(ix).to_mm() * 8.0, cushion::greatest_width(&pattern, ix).to_mm());
        }
    }
}
