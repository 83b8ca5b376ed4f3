//! A file that was read, and what is to be said about it.

use std::ops::Range;

use files::{Remark, Severity};

/// A file that was read, and what is to be said about it.
#[derive(Clone, Debug, PartialEq)]
pub struct FileRemarks {
    /// The name, as the user knows the file.
    pub path: String,
    /// The text that the places in the remarks count in.
    pub text: String,
    /// The remarks, in the order of the file.
    pub remarks: Vec<Remark>,
}

impl FileRemarks {
    /// How messages call the file.
    #[must_use]
    pub fn shown(&self) -> String {
        format!("`{}`", self.path)
    }

    /// The place of the first line, for what is about the file as a whole.
    #[must_use]
    pub fn first_line(&self) -> Range<usize> {
        0..self.text.find('\n').unwrap_or(self.text.len())
    }

    /// How many errors there are, and how many other remarks.
    #[must_use]
    pub fn counts(&self) -> (usize, usize) {
        let of = |severity| {
            let own = self.remarks.iter().filter(|it| it.severity == severity);
            own.map(Remark::count).sum::<usize>()
        };
        (of(Severity::Error), of(Severity::Remark))
    }

    /// Whether a remark says that the file cannot be used.
    #[must_use]
    pub fn is_wrong(&self) -> bool {
        self.remarks.iter().any(|remark| remark.severity == Severity::Error)
    }
}
