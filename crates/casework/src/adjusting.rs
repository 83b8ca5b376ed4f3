//! From checks to the next moves of an open case, and to mistakes that would explain them.

use case::{AdjustRefusal, Caution, Check, Date, Trouble};
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

    /// Whether the spare bag holds too few cells for the counts of an adjustment.
    #[must_use]
    pub fn too_few_spares(&self, adjusted: &Adjusted) -> Option<Caution> {
        let wanted = adjusted.counts.iter().sum();
        fitting::too_few_spares(&self.client.value, self.cushion.stock().total(), wanted)
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
            return Err(WorkError::asked(Trouble::NoCheck));
        }
        let identity = self.identity();
        let (client, cushion, now) = (&self.client.value, &self.cushion, now.counts.as_slice());
        let answer = unless_stopped(stop, |stop| {
            question(&AdjustInput { client, cushion, on, now, checks, identity: &identity, stop })
        })?;
        answer.map_err(|refusal| self.cannot_adjust(refusal))
    }

    /// Why nothing can be said.
    fn cannot_adjust(&self, why: AdjustRefusal) -> WorkError {
        match why {
            AdjustRefusal::NoWeight => WorkError::file(self.no_weight()),
            AdjustRefusal::NoBody(error) => self.no_body(error),
            AdjustRefusal::NoSuchCompartment(_)
            | AdjustRefusal::Unreachable(_)
            | AdjustRefusal::NoPartner(_) => {
                let compartments = self.pattern.compartments().iter();
                let numbers = compartments.map(|compartment| compartment.number).collect();
                WorkError::asked(Trouble::Checks { why, numbers })
            }
        }
    }
}
