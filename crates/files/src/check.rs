//! Checks a text of any kind of ours.

use cushion::Severity;

use crate::finding::{FileFinding, Finding};
use crate::{Kind, Remark, check_layout, kind_of, read_cell, read_client};

/// Returns the kind of a text and everything that is to be said about it.
#[must_use]
pub fn check(text: &str) -> (Option<Kind>, Vec<Remark>) {
    let kind = kind_of(text);
    let remarks = match kind {
        Some(Kind::Layout) => check_layout(text).remarks,
        Some(Kind::Cell) => read_cell(text).remarks,
        Some(Kind::Client) => read_client(text).remarks,
        None => unknown(text),
    };
    (kind, remarks)
}

/// A text that does not say what it is: the syntax errors that hide it, or that it does not.
fn unknown(text: &str) -> Vec<Remark> {
    let as_client = read_client(text).remarks;
    let unreadable = |remark: &Remark| {
        matches!(remark.finding, Finding::Syntax(_) | Finding::File(FileFinding::TooLarge))
    };
    let unreadable: Vec<Remark> = as_client.into_iter().filter(unreadable).collect();
    if !unreadable.is_empty() {
        return unreadable;
    }
    let end = text.find('\n').unwrap_or(text.len());
    vec![Remark { severity: Severity::Error, span: 0..end, finding: FileFinding::NoKind.into() }]
}
