//! What one cell more does: the derivatives of an answer by the counts.
//!
//! In balance the slopes of the energy are zero. Their derivative by a count is a load on the
//! sheet: the cells press more, and the unloaded shape that they resist leaving is another. The
//! answer's change under it is one more right-hand side of the equations of the last step. The
//! unloaded sheet's change is found first, in the same way; without it the effects are off by 11
//! to 22 %. Which nodes are held is taken not to change.

use crate::fill::FillLaw;
use crate::parameters::Parameters;

use super::energy::Forces;
use super::level::Station;
use super::model::SheetModel;
use super::nested::FilledModel;
use super::newton::{End, SearchEnd};
use super::problem::{Hold, RestProblem, SheetAndPose};
use super::regions::Regions;
use super::rest::{Cells, SeatedBody, laws};
use super::results::{Resting, disc_mean};
use super::step::{AppliedForces, Change, StepPoint};
use super::unloaded::Unloaded;

/// What one cell more in one compartment does.
#[derive(Clone, Debug, PartialEq)]
pub struct CellEffect {
    /// On the pose: m, and slopes.
    pub pose: [f64; 3],
    /// On the clearance under each site, m.
    pub clearance: Vec<f64>,
    /// On the immersion of each site, m. Where several points of the unloaded sheet are the
    /// highest, that of a cell less is another.
    pub immersion: Vec<f64>,
    /// On the surface pressure at each site, Pa.
    pub surface_pressure: Vec<f64>,
    /// On the fill pressure in each compartment, Pa.
    pub fill_pressure: Vec<f64>,
    /// On what each compartment carries, N.
    pub load: Vec<f64>,
    /// On what each region carries.
    pub regions: Regions,
}

impl CellEffect {
    /// What each of `cells` more in one compartment did on average between two answers, of the
    /// same body over the same cushion. Walls swallow the first cells, so that the effect of some
    /// is not that of one times as many.
    #[must_use]
    pub fn between(fewer: &Resting, more: &Resting, cells: f64) -> Self {
        let each = |of: &dyn Fn(&Resting, usize) -> f64, n: usize| -> Vec<f64> {
            (0..n).map(|at| (of(more, at) - of(fewer, at)) / cells).collect()
        };
        let (sites, compartments) = (more.sites.len(), more.compartments.len());
        Self {
            pose: std::array::from_fn(|at| (more.pose[at] - fewer.pose[at]) / cells),
            clearance: each(&|rest, at| rest.sites[at].clearance.to_m(), sites),
            immersion: each(&|rest, at| rest.sites[at].immersion.to_m(), sites),
            surface_pressure: each(&|rest, at| rest.sites[at].pressure.to_pa(), sites),
            fill_pressure: each(&|rest, at| rest.compartments[at].pressure.to_pa(), compartments),
            load: each(&|rest, at| rest.compartments[at].load.to_n(), compartments),
            regions: more.regions.less(&fewer.regions, cells),
        }
    }
}

/// Returns what one cell more in each compartment does to an answer. None where the equations are
/// singular, which they are not at an answer that is at rest.
///
/// # Panics
///
/// Panics unless `resting` is the answer for the same model, cells, body and parameters.
#[must_use]
#[track_caller]
pub fn effects_of_a_cell(
    model: &SheetModel,
    cells: &[Cells],
    seated: &SeatedBody,
    parameters: &Parameters,
    resting: &Resting,
) -> Option<Vec<CellEffect>> {
    let laws = laws(model, cells, parameters);
    let case = FilledModel::new(model, parameters, &laws);
    let unloaded = &*resting.bare;
    assert!(!unloaded.is_of_a_like_fill(), "an answer that was not found beside another");
    let problem = case.loaded_problem(case.finest(), unloaded, seated.over_mesh());
    let loaded = at_state(&problem, &resting.sheet, &resting.walls, resting.pose)?;
    let pressing: Vec<f64> =
        (0..cells.len()).map(|at| pressing(&loaded.forces, cells, at)).collect();
    let shapes = shapes(&case, unloaded, cells)?;
    let moved = Moved { problem: &problem, laws: &laws, cells, unloaded, loaded: &loaded };
    let causes: Vec<Cause> =
        shapes.iter().enumerate().map(|(at, shape)| moved.cause(at, shape, pressing[at])).collect();
    let loads: Vec<AppliedForces> = causes.iter().map(|cause| moved.load(cause)).collect();
    let changes = solve(&problem, &loaded, &loads)?;
    let effect = |(cause, change): (&Cause, &Change)| moved.effect(cause, change, seated);
    Some(causes.iter().zip(&changes).map(effect).collect())
}

/// How the unloaded sheet changes with one cell more in a compartment.
struct Shape {
    /// Change of its heights on the finest mesh, m.
    sheet: Vec<f64>,
    /// Change of the room in each compartment, m3.
    grown: Vec<f64>,
}

/// The changes of the unloaded sheet, by compartment that gets a cell.
fn shapes(case: &FilledModel<'_>, unloaded: &Unloaded, cells: &[Cells]) -> Option<Vec<Shape>> {
    let mut shapes = shapes_on(&case.upright_problem(case.finest()), &unloaded.upright, cells)?;
    let Some([before, own]) = &unloaded.coarse else { return Some(shapes) };
    let problems = case.coarse_problems();
    let before = shapes_on(&problems[0], before, cells)?;
    let own = shapes_on(&problems[1], own, cells)?;
    for ((shape, own), before) in shapes.iter_mut().zip(own).zip(before) {
        let less = |(own, before): (f64, f64)| own - before;
        let more = own.sheet.into_iter().zip(before.sheet).map(less).collect();
        let grown = own.grown.into_iter().zip(before.grown).map(less);
        let add = |(value, more): (&mut f64, f64)| *value += more;
        shape.sheet.iter_mut().zip(case.on_finest_mesh(more)).for_each(add);
        shape.grown.iter_mut().zip(grown).for_each(add);
    }
    Some(shapes)
}

/// The same on one mesh, with walls as they are in a problem.
fn shapes_on(problem: &RestProblem<'_>, found: &SearchEnd, cells: &[Cells]) -> Option<Vec<Shape>> {
    let changes = solve(problem, found, &unloaded_loads(problem, &found.forces, cells))?;
    let shape = |change: Change| {
        let bowed = problem.bowed_volumes(&change.walls);
        let under = problem.level.patches.iter().zip(bowed);
        let grown = under
            .map(|(patch, bowed)| {
                crate::linear::dot(&patch.gather(&change.sheet), &patch.areas) + bowed
            })
            .collect();
        Shape { sheet: change.sheet, grown }
    };
    Some(changes.into_iter().map(shape).collect())
}

/// The forces at a state that is an answer.
#[track_caller]
fn at_state(
    problem: &RestProblem<'_>,
    sheet: &[f64],
    walls: &[f64],
    pose: [f64; 3],
) -> Option<SearchEnd> {
    assert_eq!(sheet.len(), problem.level.len(), "an answer for this cushion");
    let state = SheetAndPose { sheet: sheet.to_vec(), walls: walls.to_vec(), pose };
    let forces = problem.forces(&state)?;
    let holds = problem.holds(&state, &forces);
    Some(SearchEnd { end: End::AtRest, state, forces, holds, factored: None, steps: 0 })
}

fn solve(
    problem: &RestProblem<'_>,
    found: &SearchEnd,
    loads: &[AppliedForces],
) -> Option<Vec<Change>> {
    let (state, forces, holds) = (&found.state, &found.forces, &found.holds);
    let at = StepPoint { problem, state, forces, holds, bowing: None, springs: None };
    let step = at.step(loads)?;
    step.factored.stands.then_some(step.changes)
}

/// dp/dN of a compartment at its volume, Pa. The pressure depends on V/N alone.
fn pressing(forces: &Forces, cells: &[Cells], compartment: usize) -> f64 {
    let patch_forces = &forces.patches[compartment];
    let count = cells[compartment].count;
    if count > 0.0 { patch_forces.stiffness * patch_forces.volume / count } else { 0.0 }
}

fn unloaded_loads(
    problem: &RestProblem<'_>,
    forces: &Forces,
    cells: &[Cells],
) -> Vec<AppliedForces> {
    let load = |compartment: usize| {
        let patch = &problem.level.patches[compartment];
        let pressing = pressing(forces, cells, compartment);
        let mut nodes = vec![0.0; problem.level.len()];
        for (node, area) in patch.nodes.iter().zip(&patch.areas) {
            nodes[*node as usize] = pressing * area;
        }
        let walls = pressing_on_walls(problem, compartment, pressing);
        AppliedForces { nodes, walls, pose: [0.0; 3] }
    };
    (0..cells.len()).map(load).collect()
}

/// What more pressure in one compartment is on what walls sweep, Pa m.
fn pressing_on_walls(problem: &RestProblem<'_>, compartment: usize, pressing: f64) -> Vec<f64> {
    let of = |station: &Station| {
        station.length * station.across(|side| if side == compartment { pressing } else { 0.0 })
    };
    problem.stations().iter().map(of).collect()
}

/// What one cell more changes before the loaded sheet answers.
struct Cause<'a> {
    compartment: usize,
    /// Change of the unloaded sheet.
    shape: &'a Shape,
    /// Change of the pressure at the same volume, Pa.
    pressing: f64,
    /// Change of k_i in each compartment, Pa/m.
    migration: Vec<f64>,
}

/// The answer whose change is sought.
struct Moved<'a> {
    problem: &'a RestProblem<'a>,
    laws: &'a [FillLaw],
    cells: &'a [Cells],
    unloaded: &'a Unloaded,
    loaded: &'a SearchEnd,
}

impl Moved<'_> {
    fn cause<'b>(&self, compartment: usize, shape: &'b Shape, pressing: f64) -> Cause<'b> {
        let migration = self.unloaded.patches.iter().enumerate().map(|(at, patch)| {
            let loose = self.laws[at].loose_volume().to_m3();
            if loose >= patch.volume {
                return 0.0;
            }
            let own_cell = if at == compartment { self.loose_volume_of_a_cell(at) } else { 0.0 };
            let share = (own_cell - loose / patch.volume * shape.grown[at]) / patch.volume;
            self.problem.parameters.migration * share
        });
        Cause { compartment, shape, pressing, migration: migration.collect() }
    }

    /// The room that one cell takes unpressed, m3; also where there is none.
    fn loose_volume_of_a_cell(&self, compartment: usize) -> f64 {
        let one = Cells { count: 1.0, ..self.cells[compartment] };
        one.law(self.problem.parameters).loose_volume().to_m3()
    }

    /// What pushes the sheet up where nothing yet gives way.
    fn load(&self, cause: &Cause<'_>) -> AppliedForces {
        let mut nodes = vec![0.0; self.problem.level.len()];
        for (at, patch) in self.problem.level.patches.iter().enumerate() {
            let pressing = if at == cause.compartment { cause.pressing } else { 0.0 };
            for (node, area) in patch.nodes.iter().zip(&patch.areas) {
                nodes[*node as usize] += area * (pressing + self.pulled(cause, at, *node));
            }
        }
        let walls = pressing_on_walls(self.problem, cause.compartment, cause.pressing);
        AppliedForces { nodes, walls, pose: [0.0; 3] }
    }

    /// Change of what migration pushes up with while the sheet stays, Pa.
    fn pulled(&self, cause: &Cause<'_>, compartment: usize, node: u32) -> f64 {
        let Some(migration) = &self.problem.migration else { return 0.0 };
        let node = node as usize;
        let by = migration.unloaded[node] - self.loaded.state.sheet[node];
        cause.migration[compartment] * by
            + migration.stiffness[compartment] * cause.shape.sheet[node]
    }

    fn effect(&self, cause: &Cause<'_>, change: &Change, seated: &SeatedBody) -> CellEffect {
        let body = seated.over_mesh();
        let sites = seated.body.sites();
        let clearance: Vec<f64> = sites
            .iter()
            .map(|site| body.modes(site.at).iter().zip(change.pose).map(|(a, b)| a * b).sum())
            .collect();
        let rise = self.rise_of_top(&cause.shape.sheet);
        let (pressures, reactions) = self.reactions(cause, change);
        let level = self.problem.level;
        CellEffect {
            pose: change.pose,
            immersion: clearance.iter().map(|clearance| rise - clearance).collect(),
            clearance,
            surface_pressure: sites
                .iter()
                .map(|site| disc_mean(level, &reactions, site.at))
                .collect(),
            fill_pressure: pressures,
            load: super::results::patch_shares(level, &reactions),
            regions: Regions::of(&level.places, &reactions, seated.seat_bones()),
        }
    }

    /// How the highest point of the unloaded sheet rises: where several are as high, the one that
    /// rises most.
    fn rise_of_top(&self, shape: &[f64]) -> f64 {
        let sheet = &self.unloaded.sheet;
        let top = sheet.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        // Rounding leaves mirror images apart.
        let highest = sheet.iter().zip(shape).filter(|(height, _)| **height >= top - 1e-9);
        highest.map(|(_, rise)| *rise).fold(f64::NEG_INFINITY, f64::max)
    }

    /// Adds what walls pull on nodes that the body holds.
    fn add_walls(&self, change: &Change, pressures: &[f64], pushes: &mut [f64]) {
        let SearchEnd { state, forces, holds, .. } = self.loaded;
        let bowing = self.problem.bowing(state, forces, holds);
        for (station, response) in self.problem.stations().iter().zip(&bowing.stations) {
            let node = station.node as usize;
            let pressed = station.length * station.across(|side| pressures[side]);
            pushes[node] += response.by_node * pressed;
        }
        for (node, _) in self.problem.wall_nodes() {
            pushes[node] -= bowing.springs[node] * change.sheet[node];
        }
    }

    /// Changes of the fill pressures, Pa, and of what the body carries on each node, N.
    fn reactions(&self, cause: &Cause<'_>, change: &Change) -> (Vec<f64>, Vec<f64>) {
        let level = self.problem.level;
        let mut pressures = Vec::with_capacity(level.patches.len());
        let mut pushes = vec![0.0; level.len()];
        let tangents = self.problem.tangents(&self.loaded.state);
        let bowed = self.problem.bowed_volumes(&change.walls);
        for (at, (patch, patch_forces)) in
            level.patches.iter().zip(&self.loaded.forces.patches).enumerate()
        {
            let by = patch.gather(&change.sheet);
            let bent = patch.bend(&by, &tangents[at]);
            let pressing = if at == cause.compartment { cause.pressing } else { 0.0 };
            let pressure = pressing
                - patch_forces.stiffness * (crate::linear::dot(&by, &patch.areas) + bowed[at]);
            let tension = patch_forces.tension_slope * crate::linear::dot(&by, &patch_forces.bent);
            let stiffness =
                self.problem.migration.as_ref().map_or(0.0, |migration| migration.stiffness[at]);
            for (place, node) in patch.nodes.iter().enumerate() {
                let migration = self.pulled(cause, at, *node) - stiffness * by[place];
                pushes[*node as usize] += (pressure + migration) * patch.areas[place]
                    - patch_forces.tension * bent[place]
                    - tension * patch_forces.bent[place];
            }
            pressures.push(pressure);
        }
        self.add_walls(change, &pressures, &mut pushes);
        let base = self.problem.parameters.base_stiffness;
        for (node, push) in pushes.iter_mut().enumerate() {
            if self.loaded.state.sheet[node] < 0.0 {
                *push -= base * level.areas[node] * change.sheet[node];
            }
            let touches = match self.problem.tissue() {
                Some(_) => {
                    let skin = self.problem.skin(node, &self.loaded.state.pose);
                    self.loaded.state.sheet[node] > skin
                }
                None => self.loaded.holds.nodes[node] == Hold::Body,
            };
            *push = if touches { *push } else { 0.0 };
        }
        (pressures, pushes)
    }
}
