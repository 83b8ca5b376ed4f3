//! Predictions one after the other for one client on one cushion: each begins at the last, and
//! its spread is a question of its own.

use case::BodyError;
use case::{CentralNumbers, Client, Prediction};
use cushion::Mass;
use mechanics::{Outcome, Resting, Stop};

use crate::goals::aims::real;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::Answer;
use crate::prediction::predictor::{AlreadySolved, Ends, Predictor};
use crate::prediction::prepared::PreparedCushion;

/// A client over a meshed cushion, kept ready for counts that change a little from one question
/// to the next.
///
/// The numbers do not depend on what was asked before but for rounding: see
/// [`mechanics::come_to_rest`].
pub struct LivePredictor<'c> {
    cushion: &'c PreparedCushion,
    predictor: Predictor<'c>,
    /// The last sheet and body in balance, from which the next search begins.
    near: Option<Resting>,
    /// What was answered last.
    last: Option<(Vec<u32>, Answer)>,
}

impl<'c> LivePredictor<'c> {
    /// Meshes the cushion and puts a client of this weight over it. `stop` is asked in every
    /// question later; what was told to stop is to be thrown away.
    ///
    /// # Errors
    ///
    /// Returns what in the client's measures is no body's.
    pub fn new(
        cushion: &'c PreparedCushion,
        client: &Client,
        weight: Mass,
        stop: Stop<'c>,
    ) -> Result<Self, BodyError> {
        // How the client leans holds for all questions, so no single one may break it off.
        let setting = assumptions_of(client, cushion, weight, Stop::never())?;
        let predictor = Predictor::new(cushion, &setting, stop)?;
        Ok(Self { cushion, predictor, near: None, last: None })
    }

    /// The central numbers for these counts, one for each compartment in the pattern's order:
    /// one search on the fine mesh, from the last answer.
    ///
    /// # Panics
    ///
    /// Panics unless there is a count for each compartment.
    pub fn central(&mut self, counts: &[u32]) -> CentralNumbers {
        let real = real(counts);
        let answer = self.predictor.fine().rest(&real, self.near.as_ref());
        // With no spread asked for, the ends lie on the numbers, which alone are handed on.
        let (prediction, answer) = self.told(counts, answer, Some(Ends::default()));
        if let Some(resting) = answer.resting() {
            self.near = Some(resting.clone());
        }
        let stopped = answer.rest.outcome == Outcome::Stopped;
        self.last = (!stopped).then(|| (counts.to_vec(), answer));
        CentralNumbers::of(&prediction)
    }

    /// The last numbers with their spread; none where nothing was answered yet.
    pub fn with_spread(&self) -> Option<Prediction> {
        let (counts, answer) = self.last.clone()?;
        Some(self.told(&counts, answer, None).0)
    }

    /// The numbers of counts with their spread; central numbers are looked for first where those told last
    /// were of others. None where that was told to stop.
    pub fn spread_of(&mut self, counts: &[u32]) -> Option<Prediction> {
        if self.last.as_ref().is_none_or(|(last, _)| last != counts) {
            self.central(counts);
        }
        self.with_spread()
    }

    fn told(&self, counts: &[u32], answer: Answer, ends: Option<Ends>) -> (Prediction, Answer) {
        let known = AlreadySolved { answer: Some(answer), ends };
        self.predictor.predict(self.cushion.pattern(), counts, known)
    }
}
