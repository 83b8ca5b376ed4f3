//! Times of a body coming to rest.
//!
//! `cargo bench -p mechanics --bench rest`. Read the medians as ratios to each other: they depend on
//! the machine and on what else it does; the fastest is what the program needs.

use cushion::{Force, Length};
use divan::{Bencher, black_box};
use mechanics::{
    Body, Cells, Load, NestedMeshes, Parameters, SeatedBody, SheetModel, Stop, come_to_rest,
    come_to_rest_slowly, effects_of_a_cell, stock_fill,
};

const SPACINGS: [u32; 3] = [8, 4, 2];
/// Walls that stay upright under a cover of small slopes, and walls that give under its true area.
const WALLS: [&str; 2] = ["upright", "giving"];

fn main() {
    divan::main();
}

/// Six compartments on 440 x 400 mm with their stock fill, and the reference body.
struct Scene {
    meshes: NestedMeshes,
    model: SheetModel,
    cells: Vec<Cells>,
    seated: SeatedBody,
    parameters: Parameters,
    walls: Length,
}

fn scene(mm: f64, walls: &str) -> Scene {
    let pattern = testkit::pattern("row-six", "440x400");
    let gives = walls == "giving";
    let give = if gives { 0.5 } else { 0.0 };
    let parameters = Parameters {
        inner_give: give,
        outer_give: give,
        small_slopes: !gives,
        ..Parameters::default()
    };
    let cell = testkit::cell();
    let stock = stock_fill(&pattern, &cell, &parameters).expect("built-in layouts have a fill");
    let meshes = NestedMeshes::new(&pattern, Length::from_mm(mm)).expect("it can be meshed");
    let model = SheetModel::new(&meshes, pattern.wall_height());
    let cells = stock
        .compartments
        .iter()
        .map(|own| Cells {
            count: f64::from(own.cells.stock),
            each: cell.inflated,
            packing: own.packing,
        })
        .collect();
    let body = Body::reference(Load::new(Force::from_n(500.0), [0.0, 0.170]));
    let seated = SeatedBody::new(&model, body);
    Scene { meshes, model, cells, seated, parameters, walls: pattern.wall_height() }
}

/// What is done once for a pattern, the mesh apart.
#[divan::bench(consts = SPACINGS)]
fn model<const MM: u32>(bencher: Bencher<'_, '_>) {
    let scene = scene(f64::from(MM), "giving");
    bencher.bench(|| SheetModel::new(black_box(&scene.meshes), scene.walls));
}

/// Unloaded and loaded.
#[divan::bench(args = WALLS, consts = SPACINGS)]
fn cold<const MM: u32>(bencher: Bencher<'_, '_>, walls: &str) {
    let Scene { model, cells, seated, parameters, .. } = scene(f64::from(MM), walls);
    bencher.bench(|| {
        come_to_rest(&model, black_box(&cells), &seated, &parameters, None, Stop::never())
    });
}

/// Unloaded and loaded, from the answer before a cell was added.
#[divan::bench(args = WALLS, consts = SPACINGS)]
fn warm<const MM: u32>(bencher: Bencher<'_, '_>, walls: &str) {
    let Scene { model, mut cells, seated, parameters, .. } = scene(f64::from(MM), walls);
    let before = come_to_rest(&model, &cells, &seated, &parameters, None, Stop::never());
    cells[0].count += 1.0;
    let near = before.resting.as_ref();
    bencher.bench(|| {
        come_to_rest(&model, black_box(&cells), &seated, &parameters, near, Stop::never())
    });
}

/// The slower search alone.
#[divan::bench(args = WALLS, sample_count = 3)]
fn slowly(bencher: Bencher<'_, '_>, walls: &str) {
    let Scene { model, cells, seated, parameters, .. } = scene(4.0, walls);
    bencher.bench(|| come_to_rest_slowly(&model, black_box(&cells), &seated, &parameters));
}

/// What one cell more in each compartment does.
#[divan::bench(args = WALLS)]
fn effects(bencher: Bencher<'_, '_>, walls: &str) {
    let Scene { model, cells, seated, parameters, .. } = scene(4.0, walls);
    let rest = come_to_rest(&model, &cells, &seated, &parameters, None, Stop::never());
    let resting = rest.resting.expect("it comes to rest");
    bencher.bench(|| effects_of_a_cell(&model, black_box(&cells), &seated, &parameters, &resting));
}
