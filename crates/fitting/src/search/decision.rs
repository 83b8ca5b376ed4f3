//! The one decision of plan and adjust, as aims: limits, goals in their order, what is spared, the goals
//! closer, then harm and cells.

use cushion::{CompartmentIx, Pattern};

use crate::goals::aims::{Aim, Filling};
use crate::goals::harm::{harm, spared};
use crate::goals::limits::{Reference, limits};
use crate::goals::needs::Needs;
use crate::goals::wanted::{GoalReader, MET, Wanted};
use crate::search::planner::Planner;
use crate::search::steps::Search;
use crate::search::task::Task;

/// Tolerances beyond those within which a goal is brought, at which it is not met: a whole one.
const UNMET: f64 = 1.0 - MET;

impl Planner<'_> {
    /// The one decision of plan and adjust: limits, then goals in their order, then what is spared,
    /// then the goals closer, then harm and cells.
    pub(super) fn decision<'s>(
        &'s self,
        reader: &GoalReader<'s>,
        wanted: &[Wanted],
        task: Task,
        needed: [f64; 2],
    ) -> Option<Search<'s>> {
        let mut search = self.search(reader.meshes, Vec::new());
        let filled = |counts: &[f64]| search.filled(counts, Some(reader.stock));
        let now = filled(&self.reference)?;
        let passed = self.passed.as_ref().and_then(|passed| filled(passed));
        let reference = Reference { now: &now, passed: passed.as_ref() };
        let mends = matches!(task, Task::Repair | Task::Confirm);
        let home = if mends { Some(filled(&self.home)?) } else { None };
        // A goal that is not pursued may not get worse.
        let held = |aim: Aim| match home.as_ref().and_then(|home| aim.quantity.value(home)) {
            Some(value) => aim.held_at(value),
            None => aim,
        };
        let mut aims = limits(&self.needs, reader.pattern, reference, needed);
        aims.extend(self.held(reader.meshes));
        aims.extend(wanted.iter().flat_map(|goal| goal.pursued(&self.needs)).map(held));
        aims.extend(spared(&self.needs, reader.pattern, self.cushion.stock(), &now));
        search.firm = self.needs.spared_rank();
        search.harm = harm(&self.needs, &now);
        search.aims = aims;
        Some(search)
    }
}

/// The goal that is farthest from being met, of those that are not met on a filling; none where all are.
pub(super) fn farthest_unmet(
    search: &Search<'_>,
    wanted: &[Wanted],
    filling: &Filling,
) -> Option<usize> {
    let off = |goal: usize| {
        let own = search.aims.iter().filter(|aim| aim.rank == Needs::rank(goal, false));
        own.map(|aim| aim.misses(filling)).fold(0.0, f64::max)
    };
    let unmet = (0..wanted.len()).map(|goal| (goal, off(goal))).filter(|(_, off)| *off > UNMET);
    Some(unmet.reduce(|most, next| if next.1 > most.1 { next } else { most })?.0)
}

/// Pairs, where compartments change alike left and right; else each by itself.
pub(super) fn groups(pattern: &Pattern, symmetric: bool) -> Vec<Vec<usize>> {
    let partner = |ix| pattern.partner(ix).filter(|_| symmetric);
    let group = |ix: CompartmentIx| match partner(ix) {
        Some(other) if other < ix => None,
        Some(other) if other != ix => Some(vec![ix.index(), other.index()]),
        _ => Some(vec![ix.index()]),
    };
    pattern.indices().filter_map(group).collect()
}
