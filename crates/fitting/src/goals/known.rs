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

    /// Keeps a filling.
    pub(crate) fn keep(&self, filling: &Filling) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).push(filling.clone());
    }
}
