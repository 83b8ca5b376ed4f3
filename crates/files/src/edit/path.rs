//! Paths of keys, as a person names them.

use case::question::{Form, Group, Kind, Question};

use super::EditError;
use crate::cursor::near;

/// One step of a path.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Step {
    /// Into a table, or to a value.
    Key(String),
    /// Into an entry of a list, counted from 1.
    Entry(usize),
}

/// What a path leads to.
#[derive(Clone, Debug)]
pub(super) struct Target {
    /// As written.
    pub(super) written: String,
    /// The table in which it ends.
    pub(super) group: Group,
    /// The question; none where the path ends at a table or an entry.
    pub(super) question: Option<Question>,
    /// The client's side, where one is named.
    pub(super) side: Option<&'static str>,
    /// The name of a parameter, where one is named.
    pub(super) name: Option<String>,
    /// Step by step.
    pub(super) steps: Vec<Step>,
}

/// Finds what a path leads to.
pub(super) fn target(written: &str) -> Result<Target, EditError> {
    let mut target = Target {
        written: written.to_owned(),
        group: Group::Client,
        question: None,
        side: None,
        name: None,
        steps: Vec::new(),
    };
    let mut words = written.trim().split('.').map(str::trim);
    while let Some(word) = words.next() {
        if target.question.is_some() {
            return inner(target, word, words.next().is_some());
        }
        target.steps.push(Step::Key(word.to_owned()));
        let into = |own: &Group| own.key() == word && own.entry().is_none();
        if let Some(question) = Question::of(target.group).find(|own| own.row().key == word) {
            target.question = Some(question);
        } else if let Some(group) = target.group.children().find(into) {
            target.group = group;
            if group.form() == Form::List {
                match words.next() {
                    Some(number) => target.steps.push(entry(number, written)?),
                    None => return Err(EditError::Table(group)),
                }
            }
        } else {
            return Err(unknown(&target, written, word));
        }
    }
    Ok(target)
}

fn entry(number: &str, written: &str) -> Result<Step, EditError> {
    let number = number.parse::<usize>().ok().filter(|number| *number > 0);
    let unknown = || EditError::NoSuchKey { key: written.to_owned(), near: None };
    number.map(Step::Entry).ok_or_else(unknown)
}

/// A step into a value: to one of its sides, or to a parameter.
fn inner(target: Target, word: &str, more: bool) -> Result<Target, EditError> {
    let mut target = target;
    let row = target.question.map(Question::row);
    let side = ["left", "right"].into_iter().find(|side| *side == word);
    if row.is_some_and(|row| row.each_side) && side.is_some() && !more {
        target.side = side;
    } else if row.is_some_and(|row| row.kind == Kind::Parameters) && !more {
        target.name = Some(word.to_owned());
    } else {
        let key = target.written;
        return Err(EditError::NoSuchKey { key, near: None });
    }
    target.steps.push(Step::Key(word.to_owned()));
    Ok(target)
}

/// Says that there is no such key, with the one that is meant, perhaps: by its likeness, or by its
/// name in another table.
fn unknown(target: &Target, written: &str, word: &str) -> EditError {
    let of_client = || Question::ALL.iter().filter(|own| own.row().group.root() == Group::Client);
    let elsewhere = of_client().find(|own| own.row().key == word).map(|own| own.path());
    let near = elsewhere.or_else(|| {
        // The record is written by the program, and by hand in an editor.
        let near = near(word, &target.group.keys()).filter(|near| *near != "record")?;
        let path = target.group.path();
        Some(if path.is_empty() { near.to_owned() } else { format!("{path}.{near}") })
    });
    EditError::NoSuchKey { key: written.to_owned(), near }
}
