//! Cushions with bodies on them, on which the laws are tested. All meshes are of 8 mm: a law holds
//! on every mesh.

use cushion::{Force, Length, Mass, Side};

use super::super::model::SheetModel;
use super::super::nested::{FilledModel, Searches};
use super::super::newton::{End, Limits, SearchEnd};
use super::super::problem::RestProblem;
use super::super::rest::{Cells, SeatedBody, laws};
use super::super::unloaded::Unloaded;
use crate::stop::Stop;
use crate::{Body, Load, NestedMeshes, Obliquity, Parameters, SeatedClient, stock_fill};

/// A cushion, what is in it, and who sits on it.
pub(super) struct Scene {
    pub(super) model: SheetModel,
    pub(super) cells: Vec<Cells>,
    pub(super) seated: SeatedBody,
    pub(super) parameters: Parameters,
}

/// The stock fill of a built-in layout at 440 x 400 mm, times `share` by compartment, on a mesh
/// of 8 mm.
fn scene(layout: &str, body: Body, parameters: Parameters, share: impl Fn(usize) -> f64) -> Scene {
    let pattern = testkit::pattern(layout, "440x400");
    let cell = testkit::cell();
    let stock = stock_fill(&pattern, &cell, &parameters).expect("built-in layouts have a fill");
    let meshes = NestedMeshes::new(&pattern, Length::from_mm(8.0)).expect("it can be meshed");
    let model = SheetModel::new(&meshes, pattern.wall_height());
    let cells = stock.compartments.iter().enumerate().map(|(at, own)| Cells {
        count: f64::from(own.cells.stock) * share(at),
        each: cell.inflated,
        packing: own.packing,
    });
    Scene { cells: cells.collect(), seated: SeatedBody::new(&model, body), model, parameters }
}

/// `tissue`: stiffness of soft tissue, Pa/m.
fn crooked_client(tissue: Option<f64>) -> Body {
    let mut client = SeatedClient::new(Mass::from_kg(70.0));
    client.obliquity = Some(Obliquity::at_seat_bones(Side::Left, Length::from_mm(12.0)));
    client.windswept = Some((Side::Left, 8.0));
    client.tissue_stiffness = tissue;
    Body::of_client(&client).expect("it is a body")
}

fn round_body() -> Body {
    Body::reference(Load::new(Force::from_n(500.0), [0.0, 0.170]))
}

/// With walls that stay upright and slopes that are small.
pub(super) fn upright() -> Parameters {
    Parameters::default().with_upright_walls()
}

/// With walls that bow and the true area of the cover.
pub(super) fn giving(give: f64) -> Parameters {
    Parameters {
        inner_give: give,
        outer_give: 0.5 * give,
        small_slopes: false,
        ..Parameters::default()
    }
}

pub(super) fn scenes() -> Vec<Scene> {
    vec![
        scene("row-six", round_body(), upright(), |_| 1.0),
        scene("curved-ten", crooked_client(None), upright(), |_| 1.0),
        // An emptied compartment, which lets the body down to the base.
        scene("curved-ten", crooked_client(None), upright(), |at| if at == 0 { 0.0 } else { 0.8 }),
        scene("island-eight", crooked_client(Some(0.5e6)), upright(), |_| 1.0),
        scene("curved-ten", crooked_client(None), giving(0.5), |_| 1.0),
        scene("row-six", round_body(), Parameters::default(), |_| 1.0),
        scene("island-eight", crooked_client(Some(0.5e6)), Parameters::default(), |_| 1.0),
        scene("row-six", crooked_client(None), giving(1.0), |at| if at == 1 { 0.8 } else { 1.0 }),
    ]
}

pub(super) const LIMITS: Limits<'_> = Limits { residual: 1e-7, steps: 40, stop: Stop::never() };

/// Solves a scene and hands problem and answer on.
pub(super) fn solved<T>(
    scene: &Scene,
    use_it: impl Fn(&FilledModel<'_>, &Unloaded, &RestProblem<'_>, &SearchEnd) -> T,
) -> T {
    let laws = laws(&scene.model, &scene.cells, &scene.parameters);
    let case = FilledModel::new(&scene.model, &scene.parameters, &laws);
    let unloaded = case.unloaded(None, LIMITS, Searches::All);
    assert!(unloaded.end() == End::AtRest && !unloaded.by_barrier);
    let body = scene.seated.over_mesh();
    let loaded = case.cold(&unloaded, body, LIMITS, Searches::All).expect("it has room");
    assert!(loaded.found.end == End::AtRest && !loaded.by_barrier);
    let problem = case.loaded_problem(scene.model.levels.len() - 1, &unloaded, body);
    use_it(&case, &unloaded, &problem, &loaded.found)
}

/// The client of the hard cases: lower on the left, sharp on the left, legs to the right, one thigh
/// shorter, the load off the middle. `left` is the side that is called left: the other one gives
/// the mirror image.
pub(super) fn hard_client(left: Side, weight: Mass) -> Body {
    let mut client = SeatedClient::new(weight);
    client.obliquity = Some(Obliquity::at_seat_bones(left, Length::from_mm(12.0)));
    client.injured.left = left == Side::Left;
    client.injured.right = left == Side::Right;
    client.windswept = Some((left.other(), 8.0));
    let (short, long) = (Length::from_mm(450.0), Length::from_mm(480.0));
    let depth = &mut client.measures.thigh_depth;
    let depths = if left == Side::Left { [short, long] } else { [long, short] };
    (depth.left, depth.right) = (Some(depths[0]), Some(depths[1]));
    client.load_right = Length::from_mm(if left == Side::Left { 8.0 } else { -8.0 });
    Body::of_client(&client).expect("it is a body")
}

/// A hard case: what is done to the stock counts by compartment, and the client's weight.
pub(super) struct HardCase {
    pub(super) name: &'static str,
    pub(super) share: fn(usize) -> f64,
    pub(super) weight: Mass,
}

/// With the stock counts; with one compartment emptied; with one so low that it is bottomed.
pub(super) const HARD: [HardCase; 3] = [
    HardCase { name: "stock", share: |_| 1.0, weight: Mass::from_kg(70.0) },
    HardCase {
        name: "emptied",
        share: |at| if at == EMPTIED { 0.0 } else { 1.0 },
        weight: Mass::from_kg(70.0),
    },
    HardCase {
        name: "bottomed",
        share: |at| if at == BOTTOMED { 0.2 } else { 0.55 },
        weight: Mass::from_kg(85.0),
    },
];

/// The compartment in front of the right seat bone.
pub(super) const EMPTIED: usize = 3;
/// The compartment under the left seat bone.
pub(super) const BOTTOMED: usize = 0;

impl HardCase {
    /// The case, or its mirror image, with upright walls.
    pub(super) fn scene(&self, left: Side) -> Scene {
        self.scene_with(left, upright())
    }

    /// The case, or its mirror image.
    pub(super) fn scene_with(&self, left: Side, parameters: Parameters) -> Scene {
        // Left and right of a pair are neighbours in the list of compartments.
        let image = |at: usize| if left == Side::Left { at } else { at ^ 1 };
        let body = hard_client(left, self.weight);
        scene("curved-ten", body, parameters, |at| (self.share)(image(at)))
    }
}

pub(super) fn hard_cases() -> Vec<Scene> {
    let with = |parameters: Parameters| {
        HARD.iter().map(move |case| case.scene_with(Side::Left, parameters.clone()))
    };
    with(upright()).chain(with(giving(0.5))).chain(with(Parameters::default())).collect()
}
