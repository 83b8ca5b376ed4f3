//! The record as a history: what was in the cushion and what was known at each of its entries.

use cushion::Mass;

use crate::{Cells, Check, Client, Date, Entry, Expected, SiteName, SkinAnswer, withdrawn};

/// What was known at an entry of the record.
#[derive(Clone, Debug, PartialEq)]
pub struct Moment<'a> {
    /// Which entry, from 1.
    pub number: usize,
    /// The entry.
    pub entry: &'a Entry,
    /// Whether it was withdrawn later.
    pub withdrawn: bool,
    /// Cells in the cushion after it; of a plan, those that it proposes. None where nobody knows.
    pub cells: Option<Cells>,
    /// Cells in the spare bag after it; of a plan that was not carried out, those before it.
    pub bag: Option<i64>,
    /// What was expected of the plan that was recorded last.
    pub expected: Option<&'a Expected>,
    /// What hands found last, on these cells or before.
    pub found: &'a [Check],
    /// The weight that was known then.
    pub weight: Option<Mass>,
}

impl Client {
    /// Returns what was known at each entry of the record, oldest first.
    #[must_use]
    pub fn history(&self) -> Vec<Moment<'_>> {
        (1..=self.record.len()).filter_map(|number| self.moment(number)).collect()
    }

    /// Returns how the skin of a site was when somebody looked at it last, and when.
    #[must_use]
    pub fn skin_last_seen(&self, site: SiteName) -> Option<(Date, SkinAnswer)> {
        let of_it = |checks: &[Check]| {
            checks.iter().rev().find_map(|check| match check {
                Check::Skin { site: at, answer } if *at == site => Some(*answer),
                _ => None,
            })
        };
        self.in_force().into_iter().rev().find_map(|entry| {
            let seen = match entry {
                Entry::Skin(own) if own.site == site => Some(own.answer),
                Entry::Adjustment(own) => of_it(&own.checks),
                Entry::Checked(own) => of_it(&own.found),
                _ => None,
            };
            Some((entry.on(), seen?))
        })
    }

    /// Returns what was known at an entry of the record, counted from 1; none where there is none.
    #[must_use]
    pub fn moment(&self, number: usize) -> Option<Moment<'_>> {
        let at = number.checked_sub(1)?;
        let entry = self.record.get(at)?;
        let gone = withdrawn(&self.record);
        let so_far = || {
            let kept = self.record[..number].iter().zip(&gone);
            kept.filter(|(own, gone)| !**gone || std::ptr::eq(*own, entry)).map(|own| own.0).rev()
        };
        let then = self.cushion_after(number);
        let cells = match entry {
            Entry::Plan(plan) => {
                Some(plan.counts.iter().map(|own| (own.number, own.planned)).collect())
            }
            _ => then.as_ref().map(|own| own.counts.clone()),
        };
        let expected = so_far().find_map(|own| match own {
            Entry::Plan(plan) => Some(plan.expected.as_ref()),
            _ => None,
        });
        let found = so_far().find_map(|own| match own {
            Entry::Adjustment(own) => Some(own.checks.as_slice()),
            Entry::Checked(own) => Some(own.found.as_slice()),
            _ => None,
        });
        let recorded = so_far().find_map(|own| match own {
            Entry::Weighed(own) => Some((own.on, own.weight)),
            _ => None,
        });
        let told = self.weighing.as_ref().map(|own| (own.on, own.weight));
        let told = told.filter(|own| own.0 <= entry.on());
        let newest = |a: (Date, Mass), b: (Date, Mass)| if b.0 >= a.0 { b } else { a };
        Some(Moment {
            number,
            entry,
            withdrawn: gone[at],
            cells,
            bag: then.map(|own| own.bag),
            expected: expected.flatten(),
            found: found.unwrap_or_default(),
            weight: told.into_iter().chain(recorded).reduce(newest).map(|own| own.1),
        })
    }
}
