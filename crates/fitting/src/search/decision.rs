//! The one decision of plan and adjust, as aims: limits, goals in their order, what is spared, then
//! harm and cells.

use cushion::{CompartmentIx, Pattern};

use crate::goals::aims::{Aim, Filling};
use crate::goals::harm::{harm, spared};
use crate::goals::limits::{Reference, limits};
use crate::goals::needs::Needs;
use crate::goals::wanted::{GoalReader, Wanted};
use crate::search::planner::Planner;
use crate::search::steps::Search;
use crate::search::task::Task;

impl Planner<'_> {
    /// The one decision of plan and adjust: limits, then goals in their order, then what is spared,
    /// then harm and cells.
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
        let pursued = |aim: &Aim| {
            // A goal that is not pursued may not get worse.
            let aim = aim.clone().pursued();
            match home.as_ref().and_then(|home| aim.quantity.value(home)) {
                Some(value) => aim.held_at(value),
                None => aim,
            }
        };
        let mut aims = limits(&self.needs, reader.pattern, reference, needed);
        aims.extend(self.held(reader.meshes));
        aims.extend(
            wanted.iter().filter_map(|goal| goal.aims.as_ref().ok()).flatten().map(pursued),
        );
        aims.extend(spared(&self.needs, reader.pattern, self.cushion.stock(), &now));
        search.harm = harm(&self.needs, &now);
        search.aims = aims;
        Some(search)
    }
}

/// The ranks of goals that are not met on the best filling, with what goes with them.
pub(super) fn beyond_reach(search: &Search<'_>, wanted: &[Wanted], best: &Filling) -> Vec<usize> {
    let missed = |rank: usize| {
        // Aims are pursued to half a tolerance: half a one more is one off.
        let mut own = search.aims.iter().filter(move |aim| aim.rank == rank);
        own.any(|aim| aim.misses(best) > 0.5)
    };
    let goals = 0..wanted.len();
    let missed = goals.filter(|goal| missed(Needs::rank(*goal, false)));
    missed.flat_map(|goal| [false, true].map(|goes_with| Needs::rank(goal, goes_with))).collect()
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
