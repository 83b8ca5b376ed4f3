//! Answers as edits of a client's file: what can be written is written, and what cannot stays as
//! it was typed, with why.

use std::collections::BTreeMap;

use case::question::{Form, Group, Kind, Need, Question};
use case::text::EditError;

use super::Draft;
use super::blank::{Blank, group_key};
use super::typed::{TypedIn, as_in_file};
use crate::error::WorkError;
use crate::shelf::{Change, Shelf};

/// One answer, as a person typed it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Typed {
    /// Where it goes.
    pub blank: Blank,
    /// What was typed; nothing takes the answer away.
    pub words: String,
    /// What stood there when the person was shown the blank; none where that is not known. Where
    /// another stands there now, somebody else wrote it.
    pub seen: Option<String>,
}

/// An answer that was not written.
#[derive(Clone, Debug, PartialEq)]
pub struct Refused {
    /// As it was typed.
    pub typed: Typed,
    /// Why.
    pub why: NotWritten,
}

/// Why an answer was not written.
#[derive(Clone, Debug, PartialEq)]
pub enum NotWritten {
    /// It is wrong.
    Wrong(EditError),
    /// Somebody wrote another answer meanwhile, which is this; none where it was taken away.
    Meanwhile(Option<String>),
}

/// What became of answers.
#[derive(Clone, Debug)]
pub struct Answered {
    /// The file with those that were written.
    pub draft: Draft,
    /// Those that were not.
    pub refused: Vec<Refused>,
    /// Where something was typed that says nothing beside the answer that it goes with: it was not
    /// written either.
    pub left_out: Vec<Blank>,
}

impl Draft {
    /// Returns the file with answers; nothing is written yet.
    #[must_use]
    pub fn answered(&self, typed: &[Typed], default: TypedIn) -> Answered {
        let mut own = Work { text: self.text.clone(), draft: self, default, refused: Vec::new() };
        let (blank, given): (Vec<&Typed>, Vec<&Typed>) =
            typed.iter().partition(|one| own.is_blank(one, typed));
        let left_out = blank.iter().filter(|one| !one.words.trim().is_empty());
        let left_out = left_out.map(|one| one.blank).collect();
        for one in blank {
            own.empty(one);
        }
        for one in given {
            own.write(one);
        }
        own.without_empty_groups(typed);
        let draft = Self::of(self.name.clone(), own.text);
        Answered { draft, refused: own.refused, left_out }
    }

    /// Keeps the file as `after` has it, in place of what was read here.
    ///
    /// # Errors
    ///
    /// Fails where it cannot be written, or was changed since it was read.
    pub fn keep(&self, shelf: &dyn Shelf, after: &Self) -> Result<(), WorkError> {
        if self.text == after.text {
            return Ok(());
        }
        let change = Change::of(&self.name, self.text.as_bytes(), after.text.as_bytes());
        Ok(shelf.put(&[change])?)
    }

    /// Returns the file without an entry of a list, from 1.
    ///
    /// # Errors
    ///
    /// Fails where there is none.
    pub fn without_entry(&self, list: Group, entry: usize) -> Result<Self, EditError> {
        let edited = files::remove(&self.text, &format!("{}.{entry}", list.path()))?;
        Ok(Self::of(self.name.clone(), edited.text))
    }

    /// Returns the file with an entry of a list in another place, both from 1.
    ///
    /// # Errors
    ///
    /// Fails where there is no such entry or place.
    pub fn with_entry_at(&self, list: Group, entry: usize, to: usize) -> Result<Self, EditError> {
        let edited = files::reorder(&self.text, &format!("{}.{entry}", list.path()), to)?;
        Ok(Self::of(self.name.clone(), edited.text))
    }
}

struct Work<'a> {
    text: String,
    draft: &'a Draft,
    default: TypedIn,
    refused: Vec<Refused>,
}

impl Work<'_> {
    /// Whether nothing is to stand there: nothing was typed, or it says nothing beside the answer
    /// that it goes with.
    fn is_blank(&self, one: &Typed, all: &[Typed]) -> bool {
        let row = one.blank.question.row();
        let Some((key, words)) = row.need.goes_with() else {
            return one.words.trim().is_empty();
        };
        let other = Question::of(row.group).find(|own| own.row().key == key);
        let other = other.map(|own| one.blank.beside(own));
        let typed = all.iter().find(|own| Some(own.blank) == other).map(|own| own.words.clone());
        let written = other.and_then(|own| self.draft.answer(&own));
        let governs = typed.or(written).unwrap_or_default();
        one.words.trim().is_empty() || !words.contains(&governs.as_str())
    }

    /// Whether somebody else wrote there since the person was shown the blank; then that is said.
    fn is_overtaken(&mut self, one: &Typed) -> bool {
        let Some(seen) = &one.seen else { return false };
        let now = files::written(&self.text, &one.blank.key());
        if now.as_deref().unwrap_or_default() == seen {
            return false;
        }
        // The same answer, however it was typed, is nobody else's.
        let (question, value) = self.as_in_file(one);
        let now_words = now.as_deref().unwrap_or_default();
        let same =
            now_words == one.words.trim() || (question == one.blank.question && now_words == value);
        if !same {
            let why = NotWritten::Meanwhile(now);
            self.refused.push(Refused { typed: one.clone(), why });
        }
        true
    }

    fn empty(&mut self, one: &Typed) {
        let key = one.blank.key();
        // Blank as it was shown is no answer, whatever somebody else wrote meanwhile.
        let untouched = one.words.trim().is_empty() && one.seen.as_deref() == Some("");
        if untouched
            || files::place_of_key(&self.text, &key).is_none()
            || files::written(&self.text, &key).is_none()
            || self.is_overtaken(one)
        {
            return;
        }
        match files::remove(&self.text, &key) {
            Ok(edited) => self.text = edited.text,
            Err(error) => self.refuse(one, error),
        }
    }

    fn write(&mut self, one: &Typed) {
        let unchanged = one.seen.as_deref() == Some(one.words.trim());
        if unchanged || self.is_overtaken(one) {
            return;
        }
        let (question, value) = self.as_in_file(one);
        let blank = Blank { question, ..one.blank };
        let mut text = self.text.clone();
        if let Need::OneOf(other) = question.row().need {
            text = without_the_other(&text, &blank, other);
        }
        match files::set(&text, &blank.key(), &value) {
            Ok(edited) => self.text = edited.text,
            Err(error) => self.refuse(one, error),
        }
    }

    fn as_in_file(&self, one: &Typed) -> (Question, String) {
        let question = one.blank.question;
        if question.row().kind == Kind::Texts {
            let lines = one.words.lines().map(str::trim).filter(|line| !line.is_empty());
            return (question, files::list_of(&lines.collect::<Vec<_>>()));
        }
        as_in_file(question, &one.words, self.default, self.draft.lengths())
    }

    fn refuse(&mut self, one: &Typed, error: EditError) {
        self.refused.push(Refused { typed: one.clone(), why: NotWritten::Wrong(error) });
    }

    /// Takes groups in braces away of which every blank was shown and none is answered.
    fn without_empty_groups(&mut self, typed: &[Typed]) {
        let mut groups: BTreeMap<Group, bool> = BTreeMap::new();
        for one in typed {
            let group = one.blank.question.row().group;
            if group.form() == Form::Braces {
                let written = files::written(&self.text, &one.blank.key()).is_some();
                *groups.entry(group).or_default() |= written;
            }
        }
        for (group, _) in groups.into_iter().filter(|own| !own.1) {
            if files::has(&self.text, group)
                && let Ok(edited) = files::remove(&self.text, &group_key(group, None))
            {
                self.text = edited.text;
            }
        }
    }
}

/// The text without the answer to the other of two questions of which one is answered.
fn without_the_other(text: &str, blank: &Blank, other: &str) -> String {
    let other = Question::of(blank.question.row().group).find(|own| own.row().key == other);
    let key = other.map(|own| Blank { question: own, ..*blank }.key());
    let there = key.filter(|key| files::place_of_key(text, key).is_some());
    let removed = there.and_then(|key| files::remove(text, &key).ok());
    removed.map_or_else(|| text.to_owned(), |edited| edited.text)
}
