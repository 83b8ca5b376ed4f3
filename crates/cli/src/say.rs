//! How findings are said to whoever reads the terminal or a report.

use case::text::TextFinding;
use case::{Finding, Said};
use casework::OpenCase;
use words::{ENGLISH, Language};

/// How everything about a case is said: with lengths as its file has them.
pub(crate) fn about(case: &OpenCase) -> &'static dyn Language {
    ENGLISH.with_lengths_in(case.client.value.lengths)
}

/// Says a finding about a case.
pub(crate) fn finding(finding: &Finding) -> String {
    ENGLISH.finding(finding)
}

/// Says a finding about a text.
pub(crate) fn text(finding: &TextFinding) -> Said {
    ENGLISH.about_text(finding)
}
