//! Live work: counts of one case are changed again and again, and what they would do is told at
//! once, the central numbers first and their spread when it is known.

mod mailbox;
mod told_before;
mod turns;
mod worker;

use std::sync::Arc;
use std::thread::{self, JoinHandle};

use case::{CentralNumbers, PredictedOutcome, Prediction, Trouble};

use crate::error::{Whose, WorkError};
use crate::open_case::OpenCase;

use mailbox::Mailbox;

pub use turns::Turns;

/// Which of the counts that were asked about: later ones are greater.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Revision(u64);

impl Revision {
    /// As a number, from 1.
    #[must_use]
    pub fn number(self) -> u64 {
        self.0
    }
}

/// An answer.
#[derive(Clone, Debug)]
pub struct LiveAnswer {
    /// For which counts.
    pub revision: Revision,
    /// What they would do.
    pub numbers: LiveNumbers,
}

impl LiveAnswer {
    /// Whether nothing follows for the same counts.
    #[must_use]
    pub fn is_last(&self) -> bool {
        !matches!(self.numbers, LiveNumbers::Central(_))
    }
}

/// What counts would do, as far as it is known.
#[derive(Clone, Debug)]
pub enum LiveNumbers {
    /// The central numbers, in which the client rests; the spread follows.
    Central(CentralNumbers),
    /// The same with their spread. Nothing follows.
    Spread(Prediction),
    /// There are no numbers for these counts, with how the search ended. Nothing follows.
    NoNumbers(PredictedOutcome),
    /// There are no numbers for any counts. Nothing follows.
    NoBody(WorkError),
}

/// One case with its meshed cushion and its last answer, kept ready by a worker of its own.
///
/// There is room for one question: newer counts take the place of older ones, whose search is
/// stopped. Dropping it ends the worker.
pub struct LiveCase {
    case: Arc<OpenCase>,
    mailbox: Arc<Mailbox>,
    turns: Arc<Turns>,
    worker: Option<JoinHandle<()>>,
}

impl LiveCase {
    /// Starts the worker, which begins by meshing the cushion and works when it has a turn.
    ///
    /// # Errors
    ///
    /// Fails where the client was not weighed, or the system has no thread left.
    pub fn start(case: Arc<OpenCase>, turns: Arc<Turns>) -> Result<Self, WorkError> {
        let weight = case.weight()?;
        let mailbox = Arc::new(Mailbox::default());
        let (own, its_case) = (Arc::clone(&mailbox), Arc::clone(&case));
        let its_turns = Arc::clone(&turns);
        let work = move || worker::work(&its_case, weight, &own, &its_turns);
        let worker = thread::Builder::new()
            .spawn(work)
            .map_err(|error| WorkError::new(Whose::Keeper, Trouble::NoThread(error.to_string())))?;
        Ok(Self { case, mailbox, turns, worker: Some(worker) })
    }

    /// Asks what counts would do, one for each compartment in the pattern's order. What was asked
    /// before is forgotten: nothing more is told of it.
    ///
    /// # Errors
    ///
    /// Fails where there is not one count for each compartment.
    pub fn ask(&self, counts: &[u32]) -> Result<Revision, WorkError> {
        let wanted = self.case.pattern.compartments().len();
        if counts.len() != wanted {
            return Err(WorkError::asked(Trouble::OtherCounts { given: counts.len(), wanted }));
        }
        let revision = Revision(self.mailbox.ask(counts));
        // What was under way, or waited for its turn, for the counts before is not wanted any more.
        self.turns.ask_again();
        Ok(revision)
    }

    /// Waits for the next answer and takes it: never one for older counts than the newest.
    /// None once [`Self::end`] was called, or the worker failed.
    #[must_use]
    pub fn next_answer(&self) -> Option<LiveAnswer> {
        self.mailbox.take_answer()
    }

    /// Ends the work: nothing is told any more, and whoever waits for an answer waits no longer.
    pub fn end(&self) {
        self.mailbox.end();
        self.turns.ask_again();
    }
}

impl Drop for LiveCase {
    fn drop(&mut self) {
        self.end();
        if let Some(worker) = self.worker.take() {
            // A worker that failed has ended too.
            worker.join().ok();
        }
    }
}
