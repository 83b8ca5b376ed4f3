//! In which language papers are, of which day, and for which paper.

use case::Date;
use sheets::Paper;
use words::Language;

/// In which language papers are, of which day, and for which paper.
#[derive(Clone, Copy, Debug)]
pub struct Edition {
    /// The language.
    pub language: &'static dyn Language,
    /// The day that they bear.
    pub on: Date,
    /// What they are printed on.
    pub paper: Paper,
    /// Whether what carers read is set in larger print.
    pub large_print: bool,
    /// Whether the code by which counts are found again has the client's code in it.
    pub client_in_code: bool,
}
