//! Fillings that were solved before: the counts as they are, the stock fill and what was found are asked
//! for again and again.

use std::sync::{Mutex, PoisonError};

use crate::goals::aims::Filling;

/// Fillings of one client on one mesh.
#[derive(Default)]
pub(crate) struct KnownFillings(Mutex<Vec<Filling>>);

impl KnownFillings {
    /// The filling of counts that were solved before.
    pub(crate) fn of(&self, counts: &[f64]) -> Option<Filling> {
        let known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        known.iter().find(|own| own.counts == counts).cloned()
    }

    /// Of the fillings that were solved before and one more the one whose counts are nearest to these:
    /// the fewest cells away, and of several the first.
    pub(crate) fn nearest(&self, counts: &[f64], more: Option<&Filling>) -> Option<Filling> {
        let known = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        let away = |own: &&Filling| -> f64 {
            own.counts.iter().zip(counts).map(|(own, asked)| (own - asked).abs()).sum()
        };
        more.into_iter().chain(known.iter()).min_by(|a, b| away(a).total_cmp(&away(b))).cloned()
    }

    /// Keeps a filling.
    pub(crate) fn keep(&self, filling: &Filling) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).push(filling.clone());
    }
}
