//! How a case stands: what is in the cushion, whether it is fitted, when to look again.

use case::{Beside, Client, CushionNow, Date, Likeness, RecordedPlan, Standing};
use mechanics::Stop;

use crate::open_case::OpenCase;

impl OpenCase {
    /// Returns how the fitting stands on a day.
    #[must_use]
    pub fn standing(&self, on: Date) -> Standing<'_> {
        self.standing_of(&self.client.value, on)
    }

    /// The same for the client's file as it is now, where something was added to its record.
    #[must_use]
    pub fn standing_of<'c>(&self, client: &'c Client, on: Date) -> Standing<'c> {
        case::state(client, on, self.beside(client, on))
    }

    /// What the record cannot say by itself of how the fitting stands.
    pub(crate) fn beside(&self, client: &Client, on: Date) -> Beside {
        Beside {
            weight_breaks_limit: self.weight_breaks_limit(client),
            counts_break_limit: self.counts_break_limit(client),
            other_cushion: client.latest_plan().is_some_and(|plan| self.is_of_another(plan)),
            look_again: fitting::look_again(client, on),
        }
    }

    fn is_of_another(&self, plan: &RecordedPlan) -> bool {
        matches!(self.identity().likeness(plan), Likeness::Other | Likeness::OtherCompartments)
    }

    /// Whether the client's newest weight, where it is another than at the fitting check, breaks
    /// a limit on the counts that belong on paper.
    fn weight_breaks_limit(&self, client: &Client) -> bool {
        let weighing = client.weight_since_check();
        let (Some(weighing), Some(plan)) = (weighing, client.counts_on_paper()) else {
            return false;
        };
        if self.is_of_another(&plan) {
            return false;
        }
        let counts: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
        // A client of whom nothing can be said is not known to be safe.
        let predicted = self.cushion.predict(client, weighing.weight, &counts, Stop::never());
        predicted.map_or(true, |(prediction, _)| !fitting::broken(&prediction).is_empty())
    }

    /// Whether what somebody recorded to be in the cushion, and nobody planned, is expected to break a
    /// limit.
    fn counts_break_limit(&self, client: &Client) -> bool {
        let now = client.unplanned_counts().filter(|now| now.is_in(&client.cushion));
        let Some(now) = now else { return false };
        let numbers = self.pattern.compartments().iter().map(|own| own.number);
        let counts: Option<Vec<u32>> = numbers.map(|own| now.counts.get(&own).copied()).collect();
        // Of a client of whom too little is known nothing is expected.
        counts.is_some_and(|counts| {
            let predicted = self.as_found(Stop::never()).predict(&counts, Stop::never());
            predicted.is_ok_and(|(prediction, _)| !fitting::broken(&prediction).is_empty())
        })
    }

    /// Returns what is in this cushion, by the record, in the pattern's order; none where nothing
    /// says so, or it is another cushion.
    pub(crate) fn counted(&self) -> Option<(CushionNow, Vec<u32>)> {
        let client = &self.client.value;
        let now = client.cushion_now()?;
        if !now.is_in(&client.cushion) {
            return None;
        }
        let numbers = self.pattern.compartments().iter().map(|own| own.number);
        let counts: Vec<u32> =
            numbers.map(|number| now.counts.get(&number).copied()).collect::<Option<_>>()?;
        (counts.len() == now.counts.len()).then_some((now, counts))
    }
}
