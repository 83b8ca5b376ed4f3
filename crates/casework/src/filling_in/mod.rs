//! A client's file while it is being filled in, answer by answer: right already, or not yet.
//!
//! Whatever a person typed is an edit of the file's text and of nothing else, so what stands there
//! can be read, changed and repeated in an editor or by command.

mod answers;
mod blank;
mod roster;
mod typed;

use std::ops::Range;

use case::question::{Group, Question, QuestionWords};
use case::text::{FileFinding, KeyFinding, LengthUnit, Remark, TextFinding};
use case::{Client, ClientCode, Date, FileKind, LayoutSource};
use cushion::Severity;
use files::Read;

use crate::error::WorkError;
use crate::file_remarks::FileRemarks;
use crate::open_case::OpenCase;
use crate::prepared_cushions::PreparedCushions;
use crate::shelf::{Change, Shelf};
use crate::sourced::{Sourced, client_text};
use crate::surroundings::Surroundings;

pub use self::answers::{Answered, NotWritten, Refused, Typed};
pub use self::blank::Blank;
pub use self::roster::{Listed, roster};
pub use self::typed::{TypedIn, TypedLength, length_typed, weight_typed};

/// A client's file while it is being filled in.
#[derive(Clone, Debug)]
pub struct Draft {
    /// Its name on the shelf.
    pub name: String,
    text: String,
    read: Read<Client>,
}

impl Draft {
    /// Opens a client's file, right or not yet.
    ///
    /// # Errors
    ///
    /// Fails where it cannot be read, or is no client's file.
    pub fn open(surroundings: Surroundings<'_>, name: &str) -> Result<Self, WorkError> {
        let text = surroundings.text(name)?;
        crate::sourced::says_what_it_is(name, &text, FileKind::Client)?;
        Ok(Self::of(name.to_owned(), text))
    }

    /// Begins the file of a new client, with a comment for each answer.
    ///
    /// # Errors
    ///
    /// Fails where there is a file of that code, or it cannot be written.
    pub fn begin(
        shelf: &dyn Shelf,
        code: &ClientCode,
        unit: LengthUnit,
        words: &dyn QuestionWords,
    ) -> Result<Self, WorkError> {
        let name = format!("{code}.toml");
        let unit = match unit {
            LengthUnit::Millimetres => "mm",
            LengthUnit::Inches => "in",
        };
        let text = files::starter::client(words);
        let text = [("client", code.as_str()), ("measures.units", unit)]
            .into_iter()
            .try_fold(text, |text, (key, value)| Ok(files::set(&text, key, value)?.text));
        let text = text.map_err(|error: files::EditError| {
            WorkError::asked(case::Trouble::Edit { file: name.clone(), error })
        })?;
        shelf.put(&[Change::new(&name, text.as_bytes())])?;
        Ok(Self::of(name, text))
    }

    fn of(name: String, text: String) -> Self {
        let read = files::read_client(&text);
        Self { name, text, read }
    }

    /// The client, where the file is right.
    #[must_use]
    pub fn client(&self) -> Option<&Client> {
        self.read.value.as_ref()
    }

    /// The client with the text that it was read from.
    ///
    /// # Errors
    ///
    /// Fails where the file is not right yet.
    pub fn sourced(&self) -> Result<Sourced<Client>, WorkError> {
        client_text(self.name.clone(), self.text.clone())
    }

    /// By which the client is known: the code that the file has, or else the name of the file
    /// without its ending.
    #[must_use]
    pub fn code(&self) -> String {
        let of_file = || self.name.trim_end_matches(".toml").to_owned();
        files::written(&self.text, "client").unwrap_or_else(of_file)
    }

    /// What is written for a blank; none where it is still empty.
    #[must_use]
    pub fn answer(&self, blank: &Blank) -> Option<String> {
        files::written(&self.text, &blank.key())
    }

    /// How many entries a list has.
    #[must_use]
    pub fn entries(&self, list: Group) -> usize {
        files::entries(&self.text, list)
    }

    /// The unit in which the file has lengths.
    #[must_use]
    pub fn lengths(&self) -> LengthUnit {
        match files::written(&self.text, "measures.units").as_deref() {
            Some("in") => LengthUnit::Inches,
            _ => LengthUnit::Millimetres,
        }
    }

    /// Whether the file has the client's weight in pounds.
    #[must_use]
    pub fn is_in_pounds(&self) -> bool {
        self.answer(&Blank::of(Question::WeightLb)).is_some()
    }

    /// Everything that there is to be said of the text on a day.
    #[must_use]
    pub fn remarks(&self, on: Date) -> Vec<Remark> {
        let known = files::Known { today: Some(on), printable: &sheets::is_printable };
        files::check(&self.text, &known).remarks
    }

    /// What is to be asked about an answer, or is wrong with it, of all that there is to be said
    /// ([`Self::remarks`]); what is about both sides together is said of each.
    #[must_use]
    pub fn about<'r>(&self, blank: &Blank, remarks: &'r [Remark]) -> Vec<&'r Remark> {
        let place = |blank: &Blank| files::place_of_key(&self.text, &blank.key());
        if place(blank).is_none() {
            return Vec::new();
        }
        let Some(around) = place(&Blank { side: None, ..*blank }).or_else(|| place(blank)) else {
            return Vec::new();
        };
        let other = blank.side.and_then(|side| {
            let side = Some(side.other());
            place(&Blank { side, ..*blank })
        });
        let within = |outer: &Range<usize>, span: &Range<usize>| {
            outer.start <= span.start && span.end <= outer.end
        };
        let is_about = |remark: &&Remark| {
            within(&around, &remark.span)
                && !other.as_ref().is_some_and(|other| within(other, &remark.span))
        };
        remarks.iter().filter(is_about).collect()
    }

    /// What keeps the file from being right: what is missing, or wrong.
    #[must_use]
    pub fn missing(&self) -> Vec<Remark> {
        let errors = self.read.remarks.iter().filter(|own| own.severity == Severity::Error);
        errors.cloned().collect()
    }

    /// What is written wrongly and stands in no box, as `in_a_box` says of a question: only a text
    /// editor mends it, and all of a text that cannot be taken apart. None where nothing is.
    #[must_use]
    pub fn wrong(&self, in_a_box: impl Fn(Question) -> bool) -> Option<FileRemarks> {
        let broken = |own: &Remark| {
            let not_toml = matches!(own.finding, TextFinding::Syntax(_));
            not_toml || matches!(own.finding, TextFinding::File(FileFinding::TooLarge))
        };
        let is_broken = self.read.remarks.iter().any(broken);
        let mut remarks = self.missing();
        remarks.retain(|own| {
            let in_a_box = || !is_broken && self.is_about_one(own, &in_a_box);
            !is_only_missing(own) && !in_a_box()
        });
        let file = FileRemarks { path: self.name.clone(), text: self.text.clone(), remarks };
        (!file.remarks.is_empty()).then_some(file)
    }

    /// Whether a remark is about the answer to one of some questions.
    fn is_about_one(&self, remark: &Remark, of: impl Fn(Question) -> bool) -> bool {
        let asked = Question::ALL.iter().copied().filter(|own| of(*own));
        let mut blanks = asked.flat_map(|own| match self.entries(own.row().group) {
            0 => Blank::all(own, None),
            count => (1..=count).flat_map(|at| Blank::all(own, Some(at))).collect(),
        });
        blanks.any(|own| !self.about(&own, std::slice::from_ref(remark)).is_empty())
    }

    /// The case with a cushion in its place where none is chosen yet: for what does not depend on
    /// which it is. Its cushion is taken from those that are kept, and kept.
    ///
    /// # Errors
    ///
    /// Fails where the file is not right in other ways, or there is no layout.
    pub fn with_any_cushion(
        &self,
        cushions: &PreparedCushions,
        surroundings: Surroundings<'_>,
    ) -> Result<OpenCase, WorkError> {
        self.standing_in(cushions, surroundings, |chosen| chosen.is_none())
    }

    /// The same, whatever cushion is chosen: for who chooses anew, since that one cannot be had.
    ///
    /// # Errors
    ///
    /// As [`Self::with_any_cushion`].
    pub fn with_another_cushion(
        &self,
        cushions: &PreparedCushions,
        surroundings: Surroundings<'_>,
    ) -> Result<OpenCase, WorkError> {
        self.standing_in(cushions, surroundings, |_| true)
    }

    fn standing_in(
        &self,
        cushions: &PreparedCushions,
        surroundings: Surroundings<'_>,
        where_chosen: impl Fn(Option<String>) -> bool,
    ) -> Result<OpenCase, WorkError> {
        let mut text = self.text.clone();
        for (key, value) in stand_in(surroundings.layouts) {
            if where_chosen(files::written(&text, key))
                && let Ok(edited) = files::set(&text, key, &value)
            {
                text = edited.text;
            }
        }
        OpenCase::made(cushions, surroundings, client_text(self.name.clone(), text)?)
    }
}

/// Whether a remark says no more than that an answer is missing.
fn is_only_missing(remark: &Remark) -> bool {
    let TextFinding::Key(own) = &remark.finding else { return false };
    own.is_missing() || matches!(own, KeyFinding::Blank(..))
}

/// A cushion that stands in for one that is not chosen yet: the first layout in its first size.
fn stand_in(layouts: &dyn LayoutSource) -> Vec<(&'static str, String)> {
    let Some(name) = layouts.names().into_iter().next() else { return Vec::new() };
    vec![
        ("cushion.layout", name),
        ("cushion.size", "440x400".to_owned()),
        ("cushion.spare_cells", "0".to_owned()),
    ]
}
