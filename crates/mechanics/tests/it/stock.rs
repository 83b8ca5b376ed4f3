//! The stock fill and the unloaded cushion.

use case::StockError;
use cushion::{Cell, Length, Packing, Pattern, Pressure, Volume};
use mechanics::{Parameters, UnloadedCushion, stock_fill};
use testkit::assert_near;

/// Straight seams on 440 x 400 mm, two sides, rows parted at `rows` mm from the rear.
fn straight(rows: &[f64], walls: f64, crown: f64) -> Pattern {
    let mut text = format!(
        r#"
format = 1
kind = "layout"
name = "straight"
title = "Straight seams"
about = "For tests."
class = "skin protection"
mirror = true
wall_height = {walls}
stock_crown = {crown}
rating_from = "Not rated."
sizes = [{{ size = "440x400", max_user_weight_kg = 80 }}]
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
    let inner =
        |stem: &str| (0..rows.len()).map(|row| format!("\"{stem}{row}\"")).collect::<Vec<_>>();
    let (mids, sides) = (inner("mid").join(", "), inner("side").join(", "));
    text += "[seams]\n";
    text += &format!(
        "outline = {{ through = [\"rear\", \"rear-corner\", {sides}, \"front-corner\", \"front\"] }}\n"
    );
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
    let pattern = straight(seams, 60.0, 15.0);
    let cushion = unloaded(&pattern, &even_cell(0.60));
    for (row, (kpa, count, tension)) in rows.iter().enumerate() {
        for number in [2 * row + 1, 2 * row + 2] {
            let ix = pattern.by_number(number as u8).expect("it has this number");
            let found = cushion.at_pressure(ix, Pressure::from_kpa(*kpa));
            // The cases are to be reproduced within 3 %.
            assert_near(found.count / count, 1.0, 0.03);
            assert_near(found.tension / tension, 1.0, 0.03);
            let filled = cushion.at_count(ix, *count);
            // Heights within 0.5 mm; both cases were filled to 75.0 mm.
            assert_near(filled.crown.to_mm(), 15.0, 0.5);
        }
    }
}

/// Outside source: Timoshenko and Goodier's torsion function of the square, whose greatest value
/// is 0.0736714 of the squared side (`tests/reference/torsion_table.csv`).
#[test]
fn under_even_tension_the_crown_is_the_torsion_functions() {
    let pattern = straight(&[220.0], 60.0, 15.0);
    let tension = 100.0;
    let even =
        Parameters { tension_slack: tension, tension_taut: tension, ..Parameters::default() };
    let cushion =
        UnloadedCushion::new(&pattern, &even_cell(0.60), &even).expect("it can be filled");
    let rear = pattern.by_number(1).expect("it has this number");
    let expected = (500.0 - even.cover_weight) / tension * 0.073_671_353 * 0.22 * 0.22;
    let found = cushion.at_pressure(rear, Pressure::from_pa(500.0)).crown;
    // Heights on the default mesh are within half a percent; on a square, a fiftieth of that.
    assert_near(found.to_m() / expected, 1.0, 2e-4);
}

#[test]
fn one_pressure_fills_all_and_what_rises_most_stands_as_asked() {
    for layout in LAYOUTS {
        let pattern = testkit::pattern(layout, "440x400");
        let cushion = unloaded(&pattern, &testkit::cell());
        let stock = cushion.stock();
        for ix in pattern.indices() {
            let at = cushion.at_pressure(ix, stock.pressure);
            // Both ways of finding the rise end within rounding.
            assert_near(at.crown.to_mm(), stock[ix].crown.to_mm(), 1e-9);
            assert_near(at.volume.to_ml(), stock[ix].volume.to_ml(), 1e-6);
            assert_eq!(at.count.round() as u32, stock[ix].cells.stock);
        }
        let most = pattern.indices().map(|ix| stock[ix].crown).fold(Length::ZERO, Length::max);
        assert_near(most.to_mm(), pattern.stock_crown().to_mm(), 1e-9);
    }
}

const LAYOUTS: [&str; 3] = ["row-six", "island-eight", "curved-ten"];

#[test]
fn sides_get_the_same_and_ranges_are_in_order_at_every_size() {
    for layout in LAYOUTS {
        for made in testkit::layout(layout).sizes {
            let pattern = testkit::pattern(layout, &made.size.to_string());
            let cushion = unloaded(&pattern, &testkit::cell());
            let stock = cushion.stock();
            for ix in pattern.indices() {
                let cells = stock[ix].cells;
                assert!(0 < cells.low && cells.low < cells.stock && cells.stock <= cells.high);
                let id = pattern[ix].id.as_str();
                if let Some(stem) = id.strip_suffix("-left") {
                    let image = pattern.by_id(&format!("{stem}-right")).expect("it is mirrored");
                    assert_eq!(stock[ix], stock[image], "{layout} {} {stem}", made.size);
                }
            }
        }
    }
}

#[test]
fn counts_and_crowns_undo_each_other() {
    let pattern = testkit::pattern("curved-ten", "440x400");
    let cushion = unloaded(&pattern, &testkit::cell());
    for ix in pattern.indices() {
        let most = cushion.most_crown(ix);
        for crown in [-40.0, -3.0, 0.5, 6.0, most.to_mm()] {
            let crown = Length::from_mm(crown);
            let count = cushion.count_at_crown(ix, crown).expect("cells make this crown");
            // A thousandth of a cell's worth of height.
            assert_near(cushion.at_count(ix, count).crown.to_mm(), crown.to_mm(), 1e-3);
        }
        assert_eq!(cushion.count_at_crown(ix, most + Length::from_mm(5.0)), None);
        assert_eq!(cushion.count_at_crown(ix, Length::from_mm(-500.0)), None);
    }
}

#[test]
fn more_cells_never_stand_lower() {
    let pattern = testkit::pattern("island-eight", "400x400");
    let cushion = unloaded(&pattern, &testkit::cell());
    for ix in pattern.indices() {
        let high = cushion.stock()[ix].cells.high;
        let states: Vec<_> = (0..=high).map(|n| cushion.at_count(ix, n.into())).collect();
        for pair in states.windows(2) {
            assert!(pair[0].crown <= pair[1].crown);
            assert!(pair[0].pressure <= pair[1].pressure);
        }
        // No cells, no height.
        assert_near(states[0].crown.to_mm(), -pattern.wall_height().to_mm(), 1e-9);
    }
}

#[test]
fn the_low_count_lies_loose_up_to_the_walls() {
    let pattern = straight(&[220.0], 60.0, 15.0);
    let cushion = unloaded(&pattern, &even_cell(0.60));
    let rear = pattern.by_number(1).expect("it has this number");
    // 220 x 220 x 60 mm, of which 60 % is cells of 25 ml.
    let expected = 0.22 * 0.22 * 0.06 * 0.60 / 25e-6;
    let low = cushion.count_at_crown(rear, Length::ZERO).expect("loose cells reach the walls");
    assert_near(low, expected, 1e-9);
    assert_eq!(cushion.stock()[rear].cells.low, expected.round() as u32);
}

/// Common practice, no source: a rear side compartment of about 220 x 220 mm, filled proud with
/// cells of 25 ml, holds on the order of 100 to 120.
#[test]
fn a_rear_side_compartment_filled_proud_holds_about_a_hundred_cells() {
    let pattern = straight(&[220.0], 75.0, 22.0);
    let cushion = unloaded(&pattern, &Cell { inflated: Volume::from_ml(25.0), ..testkit::cell() });
    let rear = pattern.by_number(1).expect("it has this number");
    let stock = cushion.stock()[rear].cells.stock;
    // The order of magnitude, with a fifth for other walls and packings.
    assert!((80..=144).contains(&stock), "{stock}");
}

#[test]
fn a_crown_below_the_walls_is_refused() {
    let pattern = straight(&[220.0], 60.0, 0.0);
    let error = stock_fill(&pattern, &testkit::cell(), &Parameters::default());
    assert_eq!(error, Err(StockError::NoCrown(Length::ZERO)));
}

#[test]
fn crowns_beyond_small_slopes_are_reported() {
    // An eighth of 220 mm is 27.5 mm.
    for (crown, steep) in [(26.0, false), (28.0, true)] {
        let pattern = straight(&[220.0], 60.0, crown);
        let cushion = unloaded(&pattern, &testkit::cell());
        let rear = pattern.by_number(1).expect("it has this number");
        assert_eq!(cushion.too_steep().contains(&rear), steep);
        let cells = cushion.stock()[rear].cells;
        assert_eq!(cells.stock == cells.high, steep);
    }
}
