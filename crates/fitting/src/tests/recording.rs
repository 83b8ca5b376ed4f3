//! Counts as they are recorded, for adjustments that begin from them.

use case::{CushionIdentity, Date, Digest, Entry, RecordedCount, RecordedPlan};
use cushion::{Name, Pattern};

/// The identity of what [`recorded`] records.
pub(crate) fn identity(pattern: &Pattern) -> CushionIdentity {
    let compartments = pattern.compartments().iter();
    CushionIdentity {
        layout: pattern.layout().to_string(),
        layout_digest: digest(),
        cell_digest: digest(),
        size: pattern.size(),
        compartments: compartments
            .map(|compartment| (compartment.id.clone(), compartment.number))
            .collect(),
    }
}

/// A recorded plan of counts.
pub(crate) fn recorded(pattern: &Pattern, counts: &[u32]) -> Entry {
    let counts = pattern.compartments().iter().zip(counts);
    Entry::Plan(RecordedPlan {
        on: Date::constant(2026, 3, 1),
        by: "OT".to_owned(),
        layout: pattern.layout().to_string(),
        size: pattern.size(),
        counts: counts
            .map(|(compartment, count)| RecordedCount {
                id: Name::new(compartment.id.as_str()).expect("an id"),
                number: compartment.number,
                stock: *count,
                planned: *count,
            })
            .collect(),
        program: "test".to_owned(),
        layout_digest: digest(),
        cell_digest: digest(),
        parameters_digest: digest(),
        drawn_by: None,
        why: None,
        expected: None,
    })
}

fn digest() -> Digest {
    Digest::new("0123456789abcdef").expect("a digest")
}
