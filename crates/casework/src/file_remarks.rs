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

    /// The line at which a remark points, from 1, and its words.
    #[must_use]
    pub fn line_of(&self, remark: &Remark) -> (usize, &str) {
        let line = files::place_of(&self.text, remark.span.start).line;
        (line, self.text.lines().nth(line - 1).unwrap_or_default())
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_remark_points_at_the_line_that_it_begins_in() {
        let text = "format = 1\nkind = \"client\"\n\n[cushion]\nlayuot = \"row-six\"\n".to_owned();
        let remarks = files::read_client(&text).remarks;
        let file = FileRemarks { path: "K-1.toml".to_owned(), text, remarks };
        let lines: Vec<_> = file.remarks.iter().map(|own| file.line_of(own)).collect();
        // At the first column of a line, and within a line.
        assert!(lines.contains(&(5, "layuot = \"row-six\"")), "{lines:?}");
        assert!(lines.iter().all(|(line, words)| file.text.lines().nth(line - 1) == Some(*words)));
    }
}
