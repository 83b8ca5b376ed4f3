//! From checks to the next moves of an open case, and to mistakes that would explain them.

use case::{AdjustRefusal, Check, Date};
use fitting::{AdjustInput, Adjusted, Explanation};
use mechanics::Stop;

use crate::error::WorkError;
use crate::open_case::{CountsNow, OpenCase};
use crate::stopping::unless_stopped;

impl OpenCase {
    /// Finds the next moves from what was found on the cushion as it is.
    ///
    /// # Errors
    ///
    /// Fails where no check is given, a check cannot be made on this cushion, too little is known
    /// of the client, or it was told to stop.
    pub fn adjust(
        &self,
        now: &CountsNow,
        checks: &[Check],
        on: Date,
        stop: Stop<'_>,
    ) -> Result<Adjusted, WorkError> {
        self.asked((now, checks), on, stop, fitting::adjust)
    }

    /// Ranks mistakes in the set-up that would explain what was found, the likeliest first.
    ///
    /// # Errors
    ///
    /// As [`Self::adjust`].
    pub fn mistakes(
        &self,
        now: &CountsNow,
        checks: &[Check],
        on: Date,
        stop: Stop<'_>,
    ) -> Result<Vec<Explanation>, WorkError> {
        self.asked((now, checks), on, stop, fitting::mistakes)
    }

    /// Asks something about checks on counts.
    fn asked<T>(
        &self,
        (now, checks): (&CountsNow, &[Check]),
        on: Date,
        stop: Stop<'_>,
        question: impl Fn(&AdjustInput<'_>) -> Result<T, AdjustRefusal>,
    ) -> Result<T, WorkError> {
        if checks.is_empty() {
            return Err(WorkError::asked("no check is given, so there is nothing to go by")
                .hint("give what was found, such as a top and an under check on both sides"));
        }
        let identity = self.identity();
        let (client, cushion, now) = (&self.client.value, &self.cushion, now.counts.as_slice());
        let answer = unless_stopped(stop, |stop| {
            question(&AdjustInput { client, cushion, on, now, checks, identity: &identity, stop })
        })?;
        answer.map_err(|refusal| self.cannot_adjust(&refusal))
    }

    /// Why nothing can be said.
    fn cannot_adjust(&self, refusal: &AdjustRefusal) -> WorkError {
        match refusal {
            AdjustRefusal::NoWeight => {
                self.weight().err().unwrap_or_else(|| WorkError::file("no weight"))
            }
            AdjustRefusal::NoBody(error) => self.no_body(error),
            AdjustRefusal::NoSuchCompartment(_) => {
                let numbers = self
                    .pattern
                    .compartments()
                    .iter()
                    .map(|compartment| compartment.number.to_string());
                let numbers = numbers.collect::<Vec<_>>().join(", ");
                WorkError::asked(words::ENGLISH.adjust_refusal(refusal).message)
                    .hint(format!("there are {numbers}"))
            }
            AdjustRefusal::Unreachable(_) | AdjustRefusal::NoPartner(_) => {
                let said = words::ENGLISH.adjust_refusal(refusal);
                said.hint.into_iter().fold(WorkError::asked(said.message), WorkError::hint)
            }
        }
    }
}
