//! What is found before it is known whether it is needed.

use crate::goals::aims::Filling;
use crate::search::side_by_side::{both, has_processors};
use crate::search::steps::Search;

/// The answer for the best counts by themselves, which is needed where no step from them is better: it is
/// found while a step is tried, where a processor would idle.
#[derive(Default)]
pub(super) struct Ahead {
    found: Option<Option<Filling>>,
}

impl Ahead {
    /// Does something, and looks for the answer meanwhile where it is not known. What is known to the
    /// search stays the same by it, so that the answer is the same as later.
    pub(super) fn while_doing<T>(
        &mut self,
        search: &Search<'_>,
        best: &Filling,
        work: impl FnOnce() -> T,
    ) -> T {
        let is_known = search.known.is_none_or(|known| known.of(&best.counts).is_some());
        if self.found.is_some() || is_known || !has_processors() {
            return work();
        }
        let (done, found) = both(work, || search.solved_anew(&best.counts, Some(best)));
        self.found = Some(found);
        done
    }

    /// The answer.
    pub(super) fn filled(&mut self, search: &Search<'_>, best: &Filling) -> Option<Filling> {
        match self.found.take() {
            Some(found) => search.kept(found),
            None => search.filled(&best.counts, Some(best)),
        }
    }
}
