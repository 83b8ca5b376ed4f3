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
use super::model::SheetModel;
use super::nested::FilledModel;
use super::newton::{End, SearchEnd};
use super::problem::{Hold, RestProblem, SheetAndPose};
use super::rest::{Cells, SeatedBody, laws};
use super::results::{Resting, disc_mean};
use super::step::{AppliedForces, Change, StepPoint};

/// What one cell more in one compartment does, in the limit of small changes.
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
    let case = FilledModel { model, parameters, laws: &laws };
    let finest = model.levels.len() - 1;
    let bare = case.unloaded_problem(finest);
    let unloaded = at_state(&bare, &resting.unloaded, [0.0; 3])?;
    let problem = case.loaded_problem(finest, &unloaded, seated.over_mesh());
    let loaded = at_state(&problem, &resting.sheet, resting.pose)?;
    let pressing: Vec<f64> =
        (0..cells.len()).map(|at| pressing(&loaded.forces, cells, at)).collect();
    let shapes = solve(&bare, &unloaded, &unloaded_loads(&bare, &unloaded.forces, cells))?;
    let moved =
        Moved { problem: &problem, laws: &laws, cells, unloaded: &unloaded, loaded: &loaded };
    let causes: Vec<Cause> =
        shapes.iter().enumerate().map(|(at, shape)| moved.cause(at, shape, pressing[at])).collect();
    let loads: Vec<AppliedForces> = causes.iter().map(|cause| moved.load(cause)).collect();
    let changes = solve(&problem, &loaded, &loads)?;
    let effect = |(cause, change): (&Cause, &Change)| moved.effect(cause, change, seated);
    Some(causes.iter().zip(&changes).map(effect).collect())
}

/// The forces at a state that is an answer.
#[track_caller]
fn at_state(problem: &RestProblem<'_>, sheet: &[f64], pose: [f64; 3]) -> Option<SearchEnd> {
    assert_eq!(sheet.len(), problem.level.len(), "an answer for this cushion");
    let state = SheetAndPose { sheet: sheet.to_vec(), pose };
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
    let at = StepPoint { problem, state, forces, holds, springs: None };
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
        AppliedForces { nodes, pose: [0.0; 3] }
    };
    (0..cells.len()).map(load).collect()
}

/// What one cell more changes before the loaded sheet answers.
struct Cause<'a> {
    compartment: usize,
    /// Change of the unloaded sheet.
    shape: &'a [f64],
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
    unloaded: &'a SearchEnd,
    loaded: &'a SearchEnd,
}

impl Moved<'_> {
    fn cause<'b>(&self, compartment: usize, shape: &'b Change, pressing: f64) -> Cause<'b> {
        let patches = self.problem.level.patches.iter().zip(&self.unloaded.forces.patches);
        let migration = patches.enumerate().map(|(at, (patch, patch_forces))| {
            let loose = self.laws[at].loose_volume().to_m3();
            if loose >= patch_forces.volume {
                return 0.0;
            }
            let own_cell = if at == compartment { self.loose_volume_of_a_cell(at) } else { 0.0 };
            let grown = crate::linear::dot(&patch.gather(&shape.sheet), &patch.areas);
            let share = (own_cell - loose / patch_forces.volume * grown) / patch_forces.volume;
            self.problem.parameters.migration * share
        });
        Cause { compartment, shape: &shape.sheet, pressing, migration: migration.collect() }
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
        AppliedForces { nodes, pose: [0.0; 3] }
    }

    /// Change of what migration pushes up with while the sheet stays, Pa.
    fn pulled(&self, cause: &Cause<'_>, compartment: usize, node: u32) -> f64 {
        let Some(migration) = &self.problem.migration else { return 0.0 };
        let node = node as usize;
        let by = migration.unloaded[node] - self.loaded.state.sheet[node];
        cause.migration[compartment] * by + migration.stiffness[compartment] * cause.shape[node]
    }

    fn effect(&self, cause: &Cause<'_>, change: &Change, seated: &SeatedBody) -> CellEffect {
        let body = seated.over_mesh();
        let sites = seated.body.sites();
        let clearance: Vec<f64> = sites
            .iter()
            .map(|site| body.modes(site.at).iter().zip(change.pose).map(|(a, b)| a * b).sum())
            .collect();
        let rise = self.rise_of_top(cause.shape);
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
        }
    }

    /// How the highest point of the unloaded sheet rises: where several are as high, the one that
    /// rises most.
    fn rise_of_top(&self, shape: &[f64]) -> f64 {
        let sheet = &self.unloaded.state.sheet;
        let top = sheet.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        // Rounding leaves mirror images apart.
        let highest = sheet.iter().zip(shape).filter(|(height, _)| **height >= top - 1e-9);
        highest.map(|(_, rise)| *rise).fold(f64::NEG_INFINITY, f64::max)
    }

    /// Changes of the fill pressures, Pa, and of what the body carries on each node, N.
    fn reactions(&self, cause: &Cause<'_>, change: &Change) -> (Vec<f64>, Vec<f64>) {
        let level = self.problem.level;
        let mut pressures = Vec::with_capacity(level.patches.len());
        let mut pushes = vec![0.0; level.len()];
        for (at, (patch, patch_forces)) in
            level.patches.iter().zip(&self.loaded.forces.patches).enumerate()
        {
            let by = patch.gather(&change.sheet);
            let bent = patch.bend(&by);
            let pressing = if at == cause.compartment { cause.pressing } else { 0.0 };
            let pressure =
                pressing - patch_forces.stiffness * crate::linear::dot(&by, &patch.areas);
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
                None => self.loaded.holds[node] == Hold::Body,
            };
            *push = if touches { *push } else { 0.0 };
        }
        (pressures, pushes)
    }
}
