//! A language: all that it must be able to say.

use std::fmt;

use case::text::LengthUnit;

use crate::{
    English, FileWords, FindingWords, PageWords, PaperWords, PictureWords, ProgramWords,
    ReportWords, Spanish,
};

/// A language in which everything can be said. A further one is a type of its own that implements
/// the same traits.
pub trait Language:
    FileWords
    + FindingWords
    + PageWords
    + PaperWords
    + PictureWords
    + ProgramWords
    + ReportWords
    + fmt::Debug
    + Send
    + Sync
{
    /// Its tag by BCP 47, such as `en`.
    fn tag(&self) -> &'static str;

    /// Its name in itself, such as `English`, by which its readers know it.
    fn own_name(&self) -> &'static str;

    /// That no professional looked through its words: a line for each page, in the language itself
    /// and in English. None where somebody did, or where nothing was translated.
    fn unreviewed(&self) -> Option<&'static str>;

    /// The same language for whoever measures in this unit: lengths are read in it first.
    fn with_lengths_in(&self, unit: LengthUnit) -> &'static dyn Language;
}

/// English, as everything is written first.
pub const ENGLISH: &dyn Language = &English::new();

/// Spanish, in neutral words that are understood everywhere.
pub const SPANISH: &dyn Language = &Spanish::new();

/// All languages, the one in which everything is written first before the others.
pub const LANGUAGES: [&dyn Language; 2] = [ENGLISH, SPANISH];

/// The language of a tag; none where there is none.
#[must_use]
pub fn by_tag(tag: &str) -> Option<&'static dyn Language> {
    LANGUAGES.into_iter().find(|own| own.tag() == tag)
}
