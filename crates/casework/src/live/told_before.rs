//! What was told of counts before: whoever goes back to them, or tries the same in another window, waits
//! for no search.

use std::collections::VecDeque;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError, Weak};

use case::{CentralNumbers, Client, Prediction};
use fitting::PreparedCushion;

/// Counts that are kept: what is tried within some minutes, in a few windows.
const MOST: usize = 64;

/// A client as they were found to sit, on a cushion: the same counts do the same.
#[derive(Clone, Debug)]
pub(super) struct Sitter {
    cushion: Weak<PreparedCushion>,
    client: Arc<Client>,
}

impl Sitter {
    pub(super) fn new(cushion: &Arc<PreparedCushion>, client: &Client) -> Self {
        Self { cushion: Arc::downgrade(cushion), client: Arc::new(client.clone()) }
    }

    fn is(&self, other: &Self) -> bool {
        self.cushion.ptr_eq(&other.cushion) && self.client == other.client
    }
}

/// What was told last, the newest last.
#[derive(Debug, Default)]
pub(super) struct ToldBefore(Mutex<VecDeque<Told>>);

/// What was told of the counts of one client.
#[derive(Debug)]
struct Told {
    sitter: Sitter,
    counts: Vec<u32>,
    central: CentralNumbers,
    spread: Option<Prediction>,
}

impl ToldBefore {
    /// The central numbers of counts.
    pub(super) fn central(&self, sitter: &Sitter, counts: &[u32]) -> Option<CentralNumbers> {
        self.of(sitter, counts, |told| Some(told.central.clone()))
    }

    /// The same numbers with their spread.
    pub(super) fn spread(&self, sitter: &Sitter, counts: &[u32]) -> Option<Prediction> {
        self.of(sitter, counts, |told| told.spread.clone())
    }

    /// Keeps central numbers; never those of a search that was stopped.
    pub(super) fn keep(&self, sitter: &Sitter, counts: &[u32], central: &CentralNumbers) {
        let (sitter, counts, central) = (sitter.clone(), counts.to_vec(), central.clone());
        let mut kept = self.kept();
        kept.push_back(Told { sitter, counts, central, spread: None });
        if kept.len() > MOST {
            kept.pop_front();
        }
    }

    /// Keeps the spread of numbers that are kept.
    pub(super) fn keep_spread(&self, sitter: &Sitter, counts: &[u32], spread: &Prediction) {
        let mut kept = self.kept();
        let own = kept.iter_mut().find(|own| own.counts == counts && own.sitter.is(sitter));
        if let Some(own) = own {
            own.spread = Some(spread.clone());
        }
    }

    fn of<T>(
        &self,
        sitter: &Sitter,
        counts: &[u32],
        part: impl Fn(&Told) -> Option<T>,
    ) -> Option<T> {
        let kept = self.kept();
        kept.iter().find(|own| own.counts == counts && own.sitter.is(sitter)).and_then(part)
    }

    fn kept(&self) -> MutexGuard<'_, VecDeque<Told>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}
