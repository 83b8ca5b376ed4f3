//! The search on nested meshes: each begins where the coarser one ended.

use crate::fill::FillLaw;
use crate::parameters::Parameters;

use super::barrier;
use super::model::SheetModel;
use super::newton::{self, Begin, End, Limits, SearchEnd};
use super::problem::{BodyOverMesh, Migration, RestProblem, SheetAndPose};
use super::smooth;
use super::unloaded::Unloaded;

/// How far the body is lowered below touching before the search begins, m.
const DIP: f64 = 0.04;
/// Unbalanced force at which a search on a coarser mesh ends, as a share of the load: it is but a
/// start for the next, which the meshes' difference puts off by more.
const COARSE: f64 = 1e-3;

/// One fill, with or without a body.
pub(super) struct FilledModel<'a> {
    pub(super) model: &'a SheetModel,
    pub(super) parameters: &'a Parameters,
    /// The same with upright walls.
    upright: Parameters,
    pub(super) laws: &'a [FillLaw],
}

/// Which searches may be made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Searches {
    /// The active set, and the barrier where it gives up.
    All,
    /// The barrier alone.
    BarrierOnly,
}

/// Where a search on the finest mesh ended, and whether the barrier was needed.
pub(super) struct FinestEnd {
    pub(super) found: SearchEnd,
    pub(super) by_barrier: bool,
}

impl<'a> FilledModel<'a> {
    /// Takes a model with the law of each compartment's cells.
    pub(super) fn new(
        model: &'a SheetModel,
        parameters: &'a Parameters,
        laws: &'a [FillLaw],
    ) -> Self {
        Self { model, parameters, upright: parameters.with_upright_walls(), laws }
    }

    /// Whether its own walls are upright, and slopes small.
    pub(super) fn is_upright(&self) -> bool {
        *self.parameters == self.upright
    }

    /// The problem without a body, with upright walls.
    pub(super) fn upright_problem(&self, level: usize) -> RestProblem<'_> {
        RestProblem {
            level: &self.model.levels[level],
            parameters: &self.upright,
            wall: self.model.wall,
            laws: self.laws,
            migration: None,
            body: None,
            yielding: Vec::new(),
        }
    }

    /// The problem with a body on an unloaded sheet. Of the values at nodes, those of the finest
    /// mesh are given; a coarser one has the first of them.
    pub(super) fn loaded_problem<'b>(
        &'b self,
        level: usize,
        unloaded: &'b Unloaded,
        body: BodyOverMesh<'b>,
    ) -> RestProblem<'b> {
        let stiffness = self.laws.iter().zip(&unloaded.patches).map(|(law, patch)| {
            let loose = law.loose_volume().to_m3();
            self.parameters.migration * (loose / patch.volume).min(1.0)
        });
        let nodes = self.model.levels[level].len();
        RestProblem {
            migration: Some(Migration {
                stiffness: stiffness.collect(),
                unloaded: &unloaded.sheet[..nodes],
            }),
            body: Some(BodyOverMesh { underside: &body.underside[..nodes], ..body }),
            parameters: self.parameters,
            ..self.upright_problem(level)
        }
    }

    /// Finds the sheet of a problem without a body, from a start that is thought near.
    pub(super) fn unloaded_on(
        &self,
        problem: &RestProblem<'_>,
        near: Option<Begin>,
        limits: Limits<'_>,
        searches: Searches,
    ) -> FinestEnd {
        let nodes = problem.level.len();
        let start = problem.held_by_seams(&self.model.unit[..nodes]);
        // Where every seam holds the sheet, that is the answer already.
        if let Some(near) = near
            && searches == Searches::All
            && problem.forces(&start).is_none_or(|forces| {
                let holds = problem.holds(&start, &forces);
                problem.sheet_residual(&start, &forces, &holds) > limits.residual
            })
        {
            let found = newton::search(problem, near, limits);
            let ended = |found: &SearchEnd| matches!(found.end, End::AtRest | End::Stopped);
            if let Some(found) = found.filter(ended) {
                return FinestEnd { found, by_barrier: false };
            }
        }
        let flat =
            SheetAndPose { sheet: vec![self.model.wall; nodes], walls: Vec::new(), pose: [0.0; 3] };
        on_finest(problem, start, flat, limits, searches)
            .expect("a sheet as high as the walls has room for the cells")
    }

    /// Takes a state to the next finer mesh.
    pub(super) fn go_finer(
        &self,
        problem: &RestProblem<'_>,
        finer: &RestProblem<'_>,
        level: usize,
        state: &mut SheetAndPose,
    ) {
        let pressures = problem.forces(state).map(|forces| forces.pressures());
        state.sheet = self.model.prolonged(level, &state.sheet);
        smooth::smooth(finer, state);
        if let Some(pressures) = pressures {
            finer.bow_to(&pressures, state);
        }
    }

    /// Finds the loaded sheet on the finest mesh from one that was found before.
    pub(super) fn warm(
        &self,
        unloaded: &Unloaded,
        body: BodyOverMesh<'_>,
        start: impl Into<Begin>,
        limits: Limits<'_>,
    ) -> Option<SearchEnd> {
        let problem = self.loaded_problem(self.finest(), unloaded, body);
        newton::search(&problem, start, limits).filter(|found| found.end != End::GaveUp)
    }

    /// Finds the loaded sheet on the finest mesh; none where there are so few cells that the sheet,
    /// with its walls upright, has no room for them under the body: it rests on the base then.
    pub(super) fn cold(
        &self,
        unloaded: &Unloaded,
        body: BodyOverMesh<'_>,
        limits: Limits<'_>,
        searches: Searches,
    ) -> Option<FinestEnd> {
        let mut steps = 0;
        let mut state = self.touching(0, unloaded, &body);
        state.pose[0] -= DIP;
        let coarse = Limits { residual: COARSE * body.weight, ..limits };
        for level in 0..self.finest() {
            let problem = self.loaded_problem(level, unloaded, body);
            if let Some(found) = newton::search(&problem, state.clone(), coarse) {
                steps += found.steps;
                if found.end == End::Stopped {
                    let found = SearchEnd { steps, ..found };
                    return Some(FinestEnd { found, by_barrier: false });
                }
                state = found.state;
            }
            let finer = self.loaded_problem(level + 1, unloaded, body);
            self.go_finer(&problem, &finer, level, &mut state);
        }
        let problem = self.loaded_problem(self.finest(), unloaded, body);
        let above = self.touching(self.finest(), unloaded, &body);
        let mut ended = on_finest(&problem, state, above, limits, searches)?;
        ended.found.steps += steps;
        Some(ended)
    }

    pub(super) fn finest(&self) -> usize {
        self.model.levels.len() - 1
    }

    /// The unloaded sheet with the body just touching it.
    fn touching(&self, level: usize, unloaded: &Unloaded, body: &BodyOverMesh<'_>) -> SheetAndPose {
        let nodes = self.model.levels[level].len();
        let sheet = unloaded.sheet[..nodes].to_vec();
        let gap = sheet.iter().zip(body.underside).map(|(height, body)| height - body);
        let touching = gap.fold(f64::NEG_INFINITY, f64::max);
        SheetAndPose { sheet, walls: Vec::new(), pose: [touching, 0.0, 0.0] }
    }
}

/// Searches from a start that is thought near the end, and where the active set gives up, by the
/// barrier from one that is allowed; none where that has no room for the cells.
fn on_finest(
    problem: &RestProblem<'_>,
    near: SheetAndPose,
    allowed: SheetAndPose,
    limits: Limits<'_>,
    searches: Searches,
) -> Option<FinestEnd> {
    let mut steps = 0;
    if searches == Searches::All
        && let Some(found) = newton::search(problem, near, limits)
    {
        if found.end != End::GaveUp {
            return Some(FinestEnd { found, by_barrier: false });
        }
        steps = found.steps;
    }
    let mut found = barrier::search(problem, allowed, limits)?;
    found.steps += steps;
    Some(FinestEnd { found, by_barrier: true })
}
