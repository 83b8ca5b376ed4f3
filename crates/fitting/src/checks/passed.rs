//! The counts on which a fitting check was passed.

use case::{Client, CushionIdentity, Entry, Likeness, RecordedPlan};
use cushion::Pattern;

/// Returns the last counts on which a fitting check was passed on this cushion, in the pattern's
/// order; none where there are none, or where a later check of the same counts failed.
#[must_use]
pub fn passed_counts(
    client: &Client,
    pattern: &Pattern,
    identity: &CushionIdentity,
) -> Option<Vec<u32>> {
    let mut counts: Option<Vec<u32>> = None;
    let mut passed: Option<Vec<u32>> = None;
    for entry in &client.record {
        match entry {
            Entry::Plan(plan) => {
                let same = identity.likeness(plan) == Likeness::Same;
                counts = in_order(plan, pattern).filter(|_| same);
            }
            Entry::FittingCheck(check) => match check.passed {
                Some(true) => passed = counts.clone().or(passed),
                Some(false) if counts == passed => passed = None,
                _ => {}
            },
            Entry::Adjustment(_) | Entry::Recount(_) | Entry::Weighed(_) => {}
        }
    }
    passed
}

/// The planned counts in the pattern's order; none where one is missing.
pub(crate) fn in_order(plan: &RecordedPlan, pattern: &Pattern) -> Option<Vec<u32>> {
    let of = |id| plan.counts.iter().find(|count| count.id == id).map(|count| count.planned);
    pattern.compartments().iter().map(|compartment| of(compartment.id.clone())).collect()
}
