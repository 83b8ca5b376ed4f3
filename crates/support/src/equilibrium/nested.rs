//! The search on nested meshes: each begins where the coarser one ended.

use crate::fill::FillLaw;
use crate::parameters::Parameters;

use super::model::SheetModel;
use super::newton::{self, End, Found, Limits};
use super::problem::{Body, Migration, Problem, State};

/// How far the body is lowered below touching before the search begins, m.
const DIP: f64 = 0.02;

/// One fill on all meshes.
pub(super) struct Case<'a> {
    pub(super) model: &'a SheetModel,
    pub(super) parameters: &'a Parameters,
    pub(super) laws: &'a [FillLaw],
}

impl<'a> Case<'a> {
    /// The problem without a body.
    pub(super) fn unloaded(&self, level: usize) -> Problem<'a> {
        Problem {
            level: &self.model.levels[level],
            parameters: self.parameters,
            wall: self.model.wall,
            laws: self.laws,
            migration: None,
            body: None,
        }
    }

    /// The problem with a body on the sheet that was found unloaded.
    pub(super) fn loaded<'b>(
        &self,
        level: usize,
        unloaded: &'b Found,
        body: Body<'b>,
    ) -> Problem<'b>
    where
        'a: 'b,
    {
        let stiffness = self.laws.iter().zip(&unloaded.forces.patches).map(|(law, own)| {
            let loose = law.loose_volume().to_m3();
            self.parameters.migration * (loose / own.volume).min(1.0)
        });
        let migration =
            Migration { stiffness: stiffness.collect(), unloaded: &unloaded.state.sheet };
        let nodes = self.model.levels[level].len();
        let body = Body { underside: &body.underside[..nodes], ..body };
        Problem { migration: Some(migration), body: Some(body), ..self.unloaded(level) }
    }

    /// A flat sheet at the height of the walls.
    pub(super) fn flat(&self, level: usize) -> State {
        let sheet = vec![self.model.wall; self.model.levels[level].len()];
        State { sheet, pose: [0.0; 3] }
    }
}
