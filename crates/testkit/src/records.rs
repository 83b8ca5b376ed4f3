//! Counts as a client's record has them.

use case::{CushionIdentity, Date, Digest, RecordedCount, RecordedPlan};
use cushion::Pattern;

/// By which the cushion of [`recorded`] counts is known again.
#[must_use]
pub fn identity(pattern: &Pattern) -> CushionIdentity {
    let compartments = pattern.compartments().iter();
    CushionIdentity {
        layout: pattern.layout().to_string(),
        layout_digest: digest(),
        cell_digest: digest(),
        size: pattern.size(),
        compartments: compartments.map(|own| (own.id.clone(), own.number)).collect(),
    }
}

/// A plan of counts, in the pattern's order, which are those as supplied too.
#[must_use]
pub fn recorded(pattern: &Pattern, counts: &[u32]) -> RecordedPlan {
    let counts = pattern.compartments().iter().zip(counts);
    RecordedPlan {
        on: Date::constant(2026, 3, 2),
        by: "OT".to_owned(),
        layout: pattern.layout().to_string(),
        size: pattern.size(),
        counts: counts
            .map(|(own, count)| RecordedCount {
                id: own.id.clone(),
                number: own.number,
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
    }
}

/// The digest of nothing: sixteen digits in a row.
fn digest() -> Digest {
    Digest::new("0123456789abcdef").expect("a digest has sixteen such digits")
}
