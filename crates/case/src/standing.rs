//! Whether a plan may be called checked on a day, from what the record says.

use crate::{Client, Date, Entry, FittingCheck};

/// How a fitting stands on a day.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Standing<'a> {
    /// Nobody has recorded that the latest plan fits: no check, or none that passed.
    NotFitted,
    /// A check passed, and nothing since speaks against it.
    Fitted(&'a FittingCheck),
    /// A check passed, and no longer holds.
    Lapsed(&'a FittingCheck, Lapse),
}

/// Why a check that passed no longer holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Lapse {
    /// Other counts were found in the cushion on that day.
    Counts(Date),
    /// At the weight of that day a limit is broken.
    Weight(Date),
    /// The client was to be looked at again on that day, which has passed.
    Review(Date),
}

impl<'a> Standing<'a> {
    /// The check, while it holds.
    #[must_use]
    pub fn fitted(self) -> Option<&'a FittingCheck> {
        match self {
            Self::Fitted(check) => Some(check),
            _ => None,
        }
    }
}

impl Client {
    /// Returns how the fitting of the latest plan stands on a day.
    ///
    /// `weight_breaks_limit` says that the newest weight breaks a limit which the weight at the
    /// check did not: whoever can predict knows, see [`Self::weight_since_check`].
    #[must_use]
    pub fn standing(&self, on: Date, weight_breaks_limit: bool) -> Standing<'_> {
        let Some(check) = self.fitting_check() else { return Standing::NotFitted };
        let counted = self.counted_otherwise().map(Lapse::Counts);
        let weighed = self.latest_weighing().filter(|_| weight_breaks_limit);
        let overdue = self.next_review.filter(|day| *day < on).map(Lapse::Review);
        let lapse = counted.or(weighed.map(|own| Lapse::Weight(own.on))).or(overdue);
        lapse.map_or(Standing::Fitted(check), |lapse| Standing::Lapsed(check, lapse))
    }

    /// Returns the newest weight where it was found after the check that passed and is another
    /// than at the check, or none was known then.
    #[must_use]
    pub fn weight_since_check(&self) -> Option<crate::Weighing> {
        let check = self.fitting_check()?;
        let now = self.latest_weighing()?;
        let recorded = self.record[..self.check_at()?].iter().filter_map(|entry| match entry {
            Entry::Weighed(own) => Some((own.on, own.weight)),
            _ => None,
        });
        let told = self.weighing.iter().map(|own| (own.on, own.weight));
        let before = told.filter(|own| own.0 <= check.on).chain(recorded);
        let then = before.reduce(|newest, next| if next.0 >= newest.0 { next } else { newest });
        (then.map(|own| own.1) != Some(now.weight)).then_some(now)
    }

    /// The place in the record of the check that passed.
    fn check_at(&self) -> Option<usize> {
        let check = self.fitting_check()?;
        let same = |entry: &Entry| matches!(entry, Entry::FittingCheck(own) if own == check);
        self.record.iter().rposition(same)
    }

    /// The day of the newest recount after the check that found other counts than the plan's.
    fn counted_otherwise(&self) -> Option<Date> {
        let plan = self.latest_plan()?;
        let planned = |number: u8| plan.counts.iter().find(|own| own.number == number);
        let after = self.record[self.check_at()?..].iter().rev();
        after
            .filter_map(|entry| match entry {
                Entry::Recount(own) => Some(own),
                _ => None,
            })
            .find(|own| {
                let differs = |(number, cells): &(u8, u32)| {
                    planned(*number).is_none_or(|count| count.planned != *cells)
                };
                own.counts.iter().any(differs)
            })
            .map(|own| own.on)
    }
}
