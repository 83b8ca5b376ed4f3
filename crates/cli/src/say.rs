//! How findings are said to whoever reads the terminal or a report.

use case::text::TextFinding;
use case::{Caution, Finding, Said};
use casework::OpenCase;
use cushion::Pattern;
use words::{ENGLISH, Language};

/// How everything about a case is said: with lengths as its file has them.
pub(crate) fn about(case: &OpenCase) -> &'static dyn Language {
    ENGLISH.with_lengths_in(case.client.value.lengths)
}

/// Says a finding about a case.
pub(crate) fn finding(finding: &Finding) -> String {
    ENGLISH.finding(finding)
}

/// What is to be known first of a pattern at a size that its layout is not made in: that it is not
/// rated.
pub(crate) fn not_rated(pattern: &Pattern) -> Vec<Finding> {
    let rated = pattern.max_user_weight().is_some();
    let unrated = Finding::Caution(Caution::NoRating { size: pattern.size() });
    (!rated).then_some(unrated).into_iter().collect()
}

/// Says a finding about a text.
pub(crate) fn text(finding: &TextFinding) -> Said {
    ENGLISH.about_text(finding)
}
