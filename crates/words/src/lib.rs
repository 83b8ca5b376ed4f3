//! Every sentence that a person reads about a case, by language.
//!
//! Start at [`Language`]: whoever shows something holds one, and hands it values. What is said of a
//! value is a function of that value; the compiler lists what a language lacks.

mod english;
mod files;
mod findings;
mod language;
mod papers;

pub use crate::english::English;
pub use crate::files::FileWords;
pub use crate::findings::FindingWords;
pub use crate::language::{ENGLISH, Language};
pub use crate::papers::{
    CheckTexts, FillCardTexts, MeasuringFormTexts, PaperWords, PassageTexts, SectionTexts,
    SetupCardTexts, SharedTexts, SurveyTexts, TagTexts, TakeHomeTexts,
};
