//! Writes one problem on a coarse mesh with its answer, as JSON, for solvers that are not ours.
//!
//! `cargo run -p mechanics --example coarse_problem -- LAYOUT SIZE BODY [MM [RUNS]]`, where BODY is
//! `level`, `oblique`, or one of these with `-giving` behind it, for walls that bow and the true area
//! of the cover, MM the width of the finest mesh, 16 where not given, and RUNS how often
//! the answer is sought, each time with its seconds. tests/outside/equilibrium.py hands the problem
//! to a general solver, tests/peers to a peer of ours.

#![expect(
    clippy::disallowed_methods,
    clippy::disallowed_types,
    reason = "a program that is called with words, and tells how long it took"
)]

use std::fmt::Display;
use std::time::Instant;

use cushion::{Cell, Length, Mass, Side};
use mechanics::{
    Body, Cells, Load, NestedMeshes, Obliquity, Parameters, Resting, SeamSegment, SeatedBody,
    SeatedClient, SheetModel, Stop, UnloadedCushion, come_to_rest, unit_sheets,
};

fn main() {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let (layout, size, body, mm, runs) = match &words[..] {
        [layout, size, body] => (layout, size, body, "16", "0"),
        [layout, size, body, mm] => (layout, size, body, mm.as_str(), "0"),
        [layout, size, body, mm, runs] => (layout, size, body, mm.as_str(), runs.as_str()),
        _ => panic!("give LAYOUT SIZE BODY [MM [RUNS]]"),
    };
    let mm = Length::from_mm(mm.parse().expect("MM is a number"));
    let runs = runs.parse().expect("RUNS is a whole number");
    write(&problem(layout, size, body, mm, runs));
}

#[expect(clippy::print_stdout, reason = "an example is a program")]
fn write(text: &str) {
    println!("{text}");
}

fn list<T: Display>(items: impl IntoIterator<Item = T>) -> String {
    format!("[{}]", items.into_iter().map(|item| item.to_string()).collect::<Vec<_>>().join(","))
}

/// A client of 75 kg, level, or lower on the left by 15 mm with the knees to the right.
fn client(body: &str) -> SeatedClient {
    let mut client = SeatedClient::new(Mass::from_kg(75.0));
    if body.starts_with("oblique") {
        client.obliquity = Some(Obliquity::at_seat_bones(Side::Left, Length::from_mm(15.0)));
        client.windswept = Some((Side::Right, 8.0));
        // A body that resists being rolled, about 4 N m per degree, at ease lower on the left.
        client.own_roll_stiffness = 230.0;
        client.roll_at_ease = 0.05;
    }
    client
}

/// Those of walls that bow, inner ones more than outer ones, or of upright ones.
fn parameters(body: &str) -> Parameters {
    let gives = body.ends_with("-giving");
    Parameters {
        inner_give: if gives { 0.5 } else { 0.0 },
        outer_give: if gives { 0.3 } else { 0.0 },
        small_slopes: !gives,
        ..Parameters::default()
    }
}

fn problem(layout: &str, size: &str, body: &str, spacing: Length, runs: usize) -> String {
    let pattern = testkit::pattern(layout, size);
    let (cell, parameters) = (testkit::cell(), parameters(body));
    let meshes = NestedMeshes::new(&pattern, spacing).expect("it can be meshed");
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
    let seated = SeatedBody::new(&model, Body::of_client(&client(body)).expect("a body"));
    let seek = || come_to_rest(&model, &cells, &seated, &parameters, None, Stop::never());
    let seconds = (0..runs).map(|_| {
        let start = Instant::now();
        std::hint::black_box(seek());
        start.elapsed().as_secs_f64()
    });
    let seconds = list(seconds);
    let rest = seek();
    let resting = rest.resting.expect("the client rests");
    let mesh = meshes.finest();
    let fields = [
        ("nodes", list(mesh.nodes().iter().map(|node| list([node.x, node.y])))),
        ("triangles", list(mesh.triangles().iter().map(|triangle| list(triangle.nodes)))),
        ("compartment_of", list(mesh.triangles().iter().map(|triangle| triangle.compartment))),
        ("tethered", list(mesh.nodes().iter().map(|node| node.seam))),
        ("walls", list(mesh.segments().iter().map(wall))),
        ("wall", pattern.wall_height().to_m().to_string()),
        ("underside", list(seated.body().heights(mesh))),
        ("cells", list(cells.iter().map(|cells| cells.count))),
        ("packing", list(cells.iter().map(|cells| cells.packing))),
        ("parameters", parameters_text(&parameters, &cell)),
        ("load", load_text(seated.body().load())),
        ("coarser", list(coarser(&meshes))),
        ("seconds", seconds),
        ("answer", answer_text(&resting)),
    ];
    object(&fields)
}

/// The coarser meshes, the coarsest first: each has the first of the nodes; `parents` are those of
/// the nodes that the next finer one adds.
fn coarser(meshes: &NestedMeshes) -> Vec<String> {
    let pairs = meshes.levels().windows(2);
    let fields = pairs.map(|pair| {
        let triangles = pair[0].triangles().iter();
        object(&[
            ("nodes", pair[0].nodes().len().to_string()),
            ("triangles", list(triangles.clone().map(|triangle| list(triangle.nodes)))),
            ("compartment_of", list(triangles.map(|triangle| triangle.compartment))),
            ("parents", list(pair[1].parents().iter().map(|pair| list(*pair)))),
        ])
    });
    fields.collect()
}

/// A stretch of wall: its ends, and the compartments on both sides, -1 outside.
fn wall(segment: &SeamSegment) -> String {
    let [a, b] = segment.nodes;
    let [left, right] = segment.sides.map(|side| side.map_or(-1, i64::from));
    list([i64::from(a), i64::from(b), left, right])
}

/// Fields as a JSON object of numbers.
fn object(fields: &[(&str, String)]) -> String {
    let fields: Vec<String> =
        fields.iter().map(|(name, value)| format!("\"{name}\":{value}")).collect();
    format!("{{{}}}", fields.join(","))
}

fn parameters_text(parameters: &Parameters, cell: &Cell) -> String {
    object(&[
        ("tension_slack", parameters.tension_slack.to_string()),
        ("tension_taut", parameters.tension_taut.to_string()),
        ("stretch", parameters.stretch.to_string()),
        ("migration", parameters.migration.to_string()),
        ("void_pressure", parameters.void_pressure.to_string()),
        ("air_pressure", parameters.air_pressure.to_string()),
        ("cover_weight", parameters.cover_weight.to_string()),
        ("base_stiffness", parameters.base_stiffness.to_string()),
        ("inner_give", parameters.inner_give.to_string()),
        ("outer_give", parameters.outer_give.to_string()),
        ("small_slopes", parameters.small_slopes.to_string()),
        ("cell_volume", cell.inflated.to_m3().to_string()),
    ])
}

fn load_text(load: &Load) -> String {
    object(&[
        ("weight", load.weight.to_n().to_string()),
        ("x", load.at[0].to_string()),
        ("y", load.at[1].to_string()),
        ("tilt_y", load.at[1].to_string()),
        ("trunk_height", load.trunk_height.to_m().to_string()),
        ("own_roll_stiffness", load.own_roll_stiffness.to_string()),
        ("roll_at_ease", load.roll_at_ease.to_string()),
    ])
}

fn answer_text(resting: &Resting) -> String {
    let compartments = resting.compartments.iter();
    object(&[
        ("pose", list(resting.pose)),
        ("fill_pa", list(compartments.clone().map(|it| it.pressure.to_pa()))),
        ("unloaded_pa", list(compartments.map(|it| it.unloaded_pressure.to_pa()))),
    ])
}
