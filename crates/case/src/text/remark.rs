//! Remarks: what is found about a text, and where.

use std::ops::Range;

use cushion::Severity;

use super::{FileFinding, TextFinding};

/// One thing to say about a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Remark {
    /// Whether the text can be used in spite of it.
    pub severity: Severity,
    /// The bytes that it is about; within the text, on borders of characters.
    pub span: Range<usize>,
    /// What is found there.
    pub finding: TextFinding,
}

impl Remark {
    /// How many remarks it stands for: one, but where it says how many more there are.
    #[must_use]
    pub fn count(&self) -> usize {
        match self.finding {
            TextFinding::File(FileFinding::More(count)) => count,
            _ => 1,
        }
    }
}
