//! Writes one problem on a coarse mesh with its answer, as JSON, for solvers that are not ours.
//!
//! `cargo run -p support --example coarse_problem -- LAYOUT SIZE BODY`, where BODY is `level` or
//! `oblique`. tests/outside/equilibrium.py hands it to a general solver.

use std::fmt::Display;

use cushion::{Length, Mass, Side};
use support::{
    Body, Cells, NestedMeshes, Obliquity, Parameters, Placed, SheetModel, Sitter, UnloadedCushion,
    come_to_rest, unit_sheets,
};

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let [layout, size, body] = &words[..] else { panic!("give LAYOUT SIZE BODY") };
    write(&problem(layout, size, body));
}

#[expect(clippy::print_stdout, reason = "an example is a program")]
fn write(text: &str) {
    println!("{text}");
}

fn list<T: Display>(items: impl IntoIterator<Item = T>) -> String {
    format!("[{}]", items.into_iter().map(|item| item.to_string()).collect::<Vec<_>>().join(","))
}

/// A client of 75 kg, level, or lower on the left by 15 mm with the knees to the right.
fn sitter(body: &str) -> Sitter {
    let mut sitter = Sitter::new(Mass::from_kg(75.0));
    if body == "oblique" {
        sitter.obliquity = Some(Obliquity::at_seat_bones(Side::Left, Length::from_mm(15.0)));
        sitter.windswept = Some((Side::Right, 8.0));
    }
    sitter
}

fn problem(layout: &str, size: &str, body: &str) -> String {
    let pattern = testkit::pattern(layout, size);
    let (cell, parameters) = (testkit::cell(), Parameters::default());
    let meshes = NestedMeshes::new(&pattern, Length::from_mm(16.0)).expect("it can be meshed");
    let units = unit_sheets(&meshes);
    let stock = UnloadedCushion::of_meshes(&pattern, &cell, &parameters, &meshes, &units)
        .expect("it has a stock fill")
        .into_stock();
    // Fewer in the first compartment, so that no symmetry helps.
    let cells: Vec<Cells> = pattern
        .indices()
        .map(|ix| Cells {
            count: f64::from(stock[ix].cells.stock) * if ix.index() == 0 { 0.9 } else { 1.0 },
            each: cell.inflated,
            packing: stock[ix].packing,
        })
        .collect();
    let model = SheetModel::new(&meshes, pattern.wall_height());
    let placed = Placed::new(&model, Body::sitter(&sitter(body)).expect("a body"));
    let rest = come_to_rest(&model, &cells, &placed, &parameters, None);
    let resting = rest.resting.expect("the client rests");
    let mesh = meshes.finest();
    let load = placed.body().load();
    let fields = [
        ("nodes", list(mesh.nodes().iter().map(|node| list([node.x, node.y])))),
        ("triangles", list(mesh.triangles().iter().map(|triangle| list(triangle.nodes)))),
        ("compartment_of", list(mesh.triangles().iter().map(|triangle| triangle.compartment))),
        ("tethered", list(mesh.nodes().iter().map(|node| node.seam))),
        ("wall", pattern.wall_height().to_m().to_string()),
        ("underside", list(placed.body().heights(mesh))),
        ("cells", list(cells.iter().map(|cells| cells.count))),
        ("packing", list(cells.iter().map(|cells| cells.packing))),
        (
            "parameters",
            format!(
                r#"{{"tension_slack":{},"tension_taut":{},"stretch":{},"migration":{},"void_pressure":{},"air_pressure":{},"cover_weight":{},"base_stiffness":{},"cell_volume":{}}}"#,
                parameters.tension_slack,
                parameters.tension_taut,
                parameters.stretch,
                parameters.migration,
                parameters.void_pressure,
                parameters.air_pressure,
                parameters.cover_weight,
                parameters.base_stiffness,
                cell.inflated.to_m3()
            ),
        ),
        (
            "load",
            format!(
                r#"{{"weight":{},"x":{},"y":{},"tilt_y":{},"trunk_height":{}}}"#,
                load.weight.to_n(),
                load.at[0],
                load.at[1],
                load.at[1],
                load.trunk_height.to_m()
            ),
        ),
        (
            "answer",
            format!(
                r#"{{"pose":{},"fill_pa":{},"unloaded_pa":{}}}"#,
                list(resting.pose),
                list(resting.compartments.iter().map(|it| it.pressure.to_pa())),
                list(resting.compartments.iter().map(|it| it.unloaded_pressure.to_pa()))
            ),
        ),
    ];
    let fields = fields.map(|(name, value)| format!("\"{name}\":{value}"));
    format!("{{{}}}", fields.join(","))
}
