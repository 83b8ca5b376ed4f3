//! How findings are said to whoever reads the terminal or a report.

use case::text::TextFinding;
use case::{Finding, Said};
use words::ENGLISH;

/// Says a finding about a case.
pub(crate) fn finding(finding: &Finding) -> String {
    ENGLISH.finding(finding)
}

/// Says a finding about a text.
pub(crate) fn text(finding: &TextFinding) -> Said {
    ENGLISH.about_text(finding)
}
