//! Every sentence that a person reads about a case, by language.
//!
//! Start at [`Language`]: whoever shows something holds one, and hands it values. What is said of a
//! value is a function of that value; the compiler lists what a language lacks.

mod basics;
mod card;
mod cautions;
mod checks;
mod english;
mod files;
mod findings;
mod goals;
mod language;
pub mod page;
mod papers;
mod pictures;
mod program;
mod record;
mod reports;
mod rounding;
mod said;
mod spanish;

pub use case::Said;

pub use crate::basics::BasicWords;
pub use crate::card::CardWords;
pub use crate::cautions::CautionWords;
pub use crate::checks::CheckWords;
pub use crate::english::English;
pub use crate::files::FileWords;
pub use crate::findings::FindingWords;
pub use crate::goals::GoalWords;
pub use crate::language::{ENGLISH, LANGUAGES, Language, SPANISH, by_tag};
pub use crate::page::PageWords;
pub use crate::papers::{
    CheckTexts, CheckedOn, DefinedCheckTexts, FillCardTexts, Foretold, HeightGaugeTexts,
    HistoryTexts, LetterTexts, MeasuringFormTexts, OrderTexts, PaperWords, PassageTexts,
    RangeTableTexts, ReviewTexts, SectionTexts, SetupCardTexts, SharedTexts, StepTexts,
    SurveyTexts, TagTexts, TakeHomeTexts, TemplateTexts, WashDayTexts, WrittenTableTexts,
};
pub use crate::pictures::PictureWords;
pub use crate::program::{
    Advice, Begun, CallFault, ContourNumber, ContourSaid, Done, FileFault, Level, OutputFault,
    PageFault, ProgramFault, ProgramWords, SupplierFault, Told,
};
pub use crate::record::RecordWords;
pub use crate::reports::{ComparisonTexts, FixedLines, PartsTexts, ReportWords, TableTexts};
pub use crate::spanish::Spanish;
