//! A language: all that it must be able to say.

use std::fmt;

use case::text::LengthUnit;

use crate::{English, FileWords, FindingWords, PageWords, PaperWords, PictureWords, ReportWords};

/// A language in which everything can be said. A second one is a type of its own that implements
/// the same traits.
pub trait Language:
    FileWords
    + FindingWords
    + PageWords
    + PaperWords
    + PictureWords
    + ReportWords
    + fmt::Debug
    + Send
    + Sync
{
    /// Its tag by BCP 47, such as `en`.
    fn tag(&self) -> &'static str;

    /// The same language for whoever measures in this unit: lengths are read in it first.
    fn with_lengths_in(&self, unit: LengthUnit) -> &'static dyn Language;
}

/// English, as everything is written first.
pub const ENGLISH: &dyn Language = &English::new();
