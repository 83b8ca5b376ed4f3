//! The counts on which a fitting check was passed.

use case::{Cells, CheckOutcome, Client, CushionIdentity, Likeness};
use cushion::Pattern;

/// Returns the last counts on which a fitting check was passed on this cushion, in the pattern's
/// order; none where there are none, or where a later check of the same counts failed.
#[must_use]
pub fn passed_counts(
    client: &Client,
    pattern: &Pattern,
    identity: &CushionIdentity,
) -> Option<Vec<u32>> {
    let mut passed: Option<Vec<u32>> = None;
    for fitting in client.fittings_checked() {
        let same = identity.likeness(fitting.plan) == Likeness::Same;
        let counts = in_order(&fitting.cells, pattern).filter(|_| same);
        match fitting.outcome {
            CheckOutcome::Passed => passed = counts.or(passed),
            CheckOutcome::Failed if counts == passed => passed = None,
            CheckOutcome::Failed | CheckOutcome::NotFinished => {}
        }
    }
    passed
}

/// Cells in the pattern's order; none where a compartment has no count.
pub(crate) fn in_order(cells: &Cells, pattern: &Pattern) -> Option<Vec<u32>> {
    let compartments = pattern.compartments().iter();
    compartments.map(|compartment| cells.get(&compartment.number).copied()).collect()
}
