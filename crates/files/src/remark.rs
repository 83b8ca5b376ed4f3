//! What was understood of a text, with what is to be said about it.

use case::text::{FileFinding, Remark, TextFinding};
use cushion::Severity;

/// The most remarks that are made on one text: more are not read by anybody.
const MOST_REMARKS: usize = 50;

/// What was understood of a text, and what is to be said about it.
#[derive(Clone, Debug, PartialEq)]
pub struct Read<T> {
    /// The value; none where a remark is an error.
    pub value: Option<T>,
    /// All remarks, in the order of the text.
    pub remarks: Vec<Remark>,
}

impl<T> Read<T> {
    /// Puts the remarks in order, and gives the value only where none is an error.
    pub(crate) fn new(value: Option<T>, mut remarks: Vec<Remark>) -> Self {
        remarks.sort_by_key(|remark| (remark.span.start, remark.span.end));
        let wrong = remarks.iter().any(|remark| remark.severity == Severity::Error);
        debug_assert!(wrong || value.is_some(), "without an error there is a value");
        Self { value: value.filter(|_| !wrong), remarks: at_most(remarks) }
    }

    /// Returns what `make` makes of the value, with the same remarks.
    pub(crate) fn map<U>(self, make: impl FnOnce(T) -> U) -> Read<U> {
        Read { value: self.value.map(make), remarks: self.remarks }
    }
}

/// The first remarks, and how many more there are, with those that were left out before.
fn at_most(remarks: Vec<Remark>) -> Vec<Remark> {
    let (mut count, mut severity, mut first) = (0, Severity::Remark, Vec::new());
    for remark in remarks {
        match remark.finding {
            TextFinding::File(FileFinding::More(more)) => count += more,
            _ if first.len() < MOST_REMARKS => {
                first.push(remark);
                continue;
            }
            _ => count += 1,
        }
        severity = severity.min(remark.severity);
    }
    if let (Some(last), true) = (first.last(), count > 0) {
        let finding = FileFinding::More(count).into();
        first.push(Remark { severity, span: last.span.clone(), finding });
    }
    first
}

/// A place in a text as people count: the first line and the first column are 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// The line.
    pub line: usize,
    /// The column, in characters.
    pub column: usize,
}

/// Returns the place of a byte of `text`.
#[must_use]
pub fn place_of(text: &str, byte: usize) -> Place {
    let before = &text.as_bytes()[..byte.min(text.len())];
    let line_start = before.iter().rposition(|&b| b == b'\n').map_or(0, |at| at + 1);
    let is_start = |byte: &&u8| (**byte & 0xC0) != 0x80;
    Place {
        line: before.iter().filter(|&&b| b == b'\n').count() + 1,
        column: before[line_start..].iter().filter(is_start).count() + 1,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn places_count_characters() {
        let text = "a\nüb\n";
        let place = |byte| place_of(text, byte);
        assert_eq!(place(0), Place { line: 1, column: 1 });
        assert_eq!(place(2), Place { line: 2, column: 1 });
        assert_eq!(place(4), Place { line: 2, column: 2 });
        assert_eq!(place(6), Place { line: 3, column: 1 });
        assert_eq!(place(99), Place { line: 3, column: 1 });
    }
}
