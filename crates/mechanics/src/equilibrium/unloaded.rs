//! The cushion without a body.
//!
//! Where every seam holds the sheet and slopes are small, it is known in closed form but for one
//! number for each compartment. What walls that bow and the true area take from that is smooth and
//! small, so it is found on the mesh before the finest, and added there: solving it anew on the
//! finest would cost several times what the loaded sheet does. What that leaves out is the error
//! of the coarser mesh in a correction of millimetres, some hundredths of one.

use crate::fill::FillLaw;
use crate::parameters::Parameters;

use super::energy::PatchForces;
use super::nested::{FilledModel, FinestEnd, Searches};
use super::newton::{self, End, Limits, SearchEnd};
use super::problem::{RestProblem, SheetAndPose};

/// The cushion without a body.
#[derive(Debug)]
pub(super) struct Unloaded {
    /// The cells of each compartment.
    laws: Vec<FillLaw>,
    parameters: Parameters,
    /// The unbalanced force to which it was looked for, N.
    found_to: f64,
    /// Height of the sheet at the nodes of the finest mesh, m.
    pub(super) sheet: Vec<f64>,
    /// One for each compartment.
    pub(super) patches: Vec<UnloadedPatch>,
    /// With upright walls, on the finest mesh.
    pub(super) upright: SearchEnd,
    /// With upright walls and with its own, on the mesh before; none where its own are upright, or
    /// what they take is that of a like fill.
    pub(super) coarse: Option<[SearchEnd; 2]>,
    /// What walls of its own take from that with upright ones.
    taken: Option<Taken>,
    pub(super) by_barrier: bool,
}

/// A compartment without a body.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct UnloadedPatch {
    /// m3.
    pub(super) volume: f64,
    /// Pa.
    pub(super) pressure: f64,
    /// N/m.
    pub(super) tension: f64,
}

/// What walls of its own, and the true area, add to the sheet over upright walls; mostly below zero.
#[derive(Clone, Debug, PartialEq)]
struct Taken {
    /// At the nodes of the finest mesh, m.
    sheet: Vec<f64>,
    /// By compartment.
    patches: Vec<UnloadedPatch>,
}

impl Unloaded {
    /// How the searches ended, together.
    pub(super) fn end(&self) -> End {
        let mut ends = self.searches().map(|found| found.end);
        ends.find(|end| *end != End::AtRest).unwrap_or(End::AtRest)
    }

    /// Steps of all searches.
    pub(super) fn steps(&self) -> u32 {
        self.searches().map(|found| found.steps).sum()
    }

    fn searches(&self) -> impl Iterator<Item = &SearchEnd> {
        [&self.upright].into_iter().chain(self.coarse.iter().flatten())
    }

    /// The same without the equations, which take most of its room: a search that begins at it has a
    /// step more to make.
    pub(super) fn without_equations(mut self) -> Self {
        let searches = [&mut self.upright].into_iter().chain(self.coarse.iter_mut().flatten());
        searches.for_each(|found| found.factored = None);
        self
    }

    /// Whether what walls take is that of a like fill.
    pub(super) fn is_of_a_like_fill(&self) -> bool {
        self.taken.is_some() && self.coarse.is_none()
    }

    /// Whether it is that of these cells: how they resist being moved under a body, and what is
    /// safe, is nothing to it.
    pub(super) fn is_of(&self, laws: &[FillLaw], parameters: &Parameters) -> bool {
        let Parameters { migration, clearance_limit, least_clearance, .. } = *parameters;
        let own =
            Parameters { migration, clearance_limit, least_clearance, ..self.parameters.clone() };
        let is_found = self.end() == End::AtRest && !self.is_of_a_like_fill();
        is_found && self.laws == laws && own == *parameters
    }

    /// Whether it was looked for as finely as this asks for.
    pub(super) fn is_as_fine_as(&self, limits: Limits<'_>) -> bool {
        self.found_to <= limits.residual
    }
}

impl FilledModel<'_> {
    /// Finds the unloaded sheet, from that of a like fill where there is one.
    pub(super) fn unloaded(
        &self,
        near: Option<&Unloaded>,
        limits: Limits<'_>,
        searches: Searches,
    ) -> Unloaded {
        let upright = near.map(|near| near.upright.begin());
        let problem = self.upright_problem(self.finest());
        let upright = self.unloaded_on(&problem, upright, limits, searches);
        let (mut by_barrier, mut coarse) = (upright.by_barrier, None);
        if !self.is_upright() && upright.found.end == End::AtRest {
            let near = near.and_then(|near| near.coarse.as_ref());
            let problems = self.coarse_problems();
            let on = |at: usize, near| self.unloaded_on(&problems[at], near, limits, searches);
            // Where there is no coarser mesh, that is known already.
            let before = if self.before_finest() == self.finest() {
                FinestEnd { found: upright.found.clone(), by_barrier: false }
            } else {
                on(0, near.map(|near| near[0].begin()))
            };
            if before.found.end == End::Stopped {
                return self.combined(before.found, None, limits);
            }
            let start = match near {
                Some(near) => near[1].begin(),
                None => self.coarse_to_fine(&before.found.state, limits).into(),
            };
            let own = on(1, Some(start));
            by_barrier |= before.by_barrier || own.by_barrier;
            coarse = Some([before.found, own.found]);
        }
        Unloaded { by_barrier, ..self.combined(upright.found, coarse, limits) }
    }

    /// Finds the unloaded sheet beside that of a like fill: with upright walls, and what its own take
    /// is as there.
    pub(super) fn unloaded_beside(&self, near: &Unloaded, limits: Limits<'_>) -> Unloaded {
        let problem = self.upright_problem(self.finest());
        let begin = near.upright.begin();
        let upright = self.unloaded_on(&problem, Some(begin), limits, Searches::All);
        let by_barrier = upright.by_barrier;
        Unloaded { by_barrier, ..self.bare(upright.found, None, near.taken.clone(), limits) }
    }

    /// The problems with upright walls and with its own on the mesh on which they are compared.
    pub(super) fn coarse_problems(&self) -> [RestProblem<'_>; 2] {
        let upright = self.upright_problem(self.before_finest());
        let own = RestProblem { parameters: self.parameters, ..upright.clone() };
        [upright, own]
    }

    /// The sheet over walls of its own on the mesh before the finest, as the coarser meshes say;
    /// that over upright walls where there are none.
    fn coarse_to_fine(&self, upright: &SheetAndPose, limits: Limits<'_>) -> SheetAndPose {
        let own =
            |level| RestProblem { parameters: self.parameters, ..self.upright_problem(level) };
        let mut state: Option<SheetAndPose> = None;
        for level in 0..self.before_finest() {
            let problem = own(level);
            let start = state
                .take()
                .unwrap_or_else(|| problem.held_by_seams(&self.model.unit[..problem.level.len()]));
            let Some(found) = newton::search(&problem, start, limits) else {
                return upright.clone();
            };
            let mut found = found.state;
            self.go_finer(&problem, &own(level + 1), level, &mut found);
            state = Some(found);
        }
        state.unwrap_or_else(|| upright.clone())
    }

    fn before_finest(&self) -> usize {
        self.finest().saturating_sub(1)
    }

    /// What is linear between the nodes of the mesh before, on the finest.
    pub(super) fn on_finest_mesh(&self, values: Vec<f64>) -> Vec<f64> {
        let before = self.before_finest();
        if before < self.finest() { self.model.prolonged(before, &values) } else { values }
    }

    /// The unloaded cushion of searches that ended.
    fn combined(
        &self,
        upright: SearchEnd,
        coarse: Option<[SearchEnd; 2]>,
        limits: Limits<'_>,
    ) -> Unloaded {
        let taken = coarse.as_ref().map(|[before, own]| {
            let sheets = own.state.sheet.iter().zip(&before.state.sheet);
            let patches = patches(own).into_iter().zip(patches(before));
            Taken {
                sheet: self.on_finest_mesh(sheets.map(|(own, before)| own - before).collect()),
                patches: patches.map(|(own, before)| own.less(before)).collect(),
            }
        });
        self.bare(upright, coarse, taken, limits)
    }

    /// The sheet over upright walls with what its own take.
    fn bare(
        &self,
        upright: SearchEnd,
        coarse: Option<[SearchEnd; 2]>,
        taken: Option<Taken>,
        limits: Limits<'_>,
    ) -> Unloaded {
        let (mut sheet, mut patches) = (upright.state.sheet.clone(), patches(&upright));
        if let Some(taken) = &taken {
            sheet.iter_mut().zip(&taken.sheet).for_each(|(height, more)| *height += more);
            for (patch, more) in patches.iter_mut().zip(&taken.patches) {
                patch.volume += more.volume;
                patch.pressure = (patch.pressure + more.pressure).max(0.0);
                patch.tension += more.tension;
            }
        }
        Unloaded {
            laws: self.laws.to_vec(),
            parameters: self.parameters.clone(),
            found_to: limits.residual,
            sheet,
            patches,
            upright,
            coarse,
            taken,
            by_barrier: false,
        }
    }
}

impl UnloadedPatch {
    /// What is more than in another.
    fn less(self, other: Self) -> Self {
        Self {
            volume: self.volume - other.volume,
            pressure: self.pressure - other.pressure,
            tension: self.tension - other.tension,
        }
    }
}

fn patches(found: &SearchEnd) -> Vec<UnloadedPatch> {
    let patch = |own: &PatchForces| UnloadedPatch {
        volume: own.volume,
        pressure: own.pressure,
        tension: own.tension,
    };
    found.forces.patches.iter().map(patch).collect()
}
