//! Edits one key of a client's file, and leaves everything else as a person wrote it: comments,
//! order, line ends and byte-order mark.
//!
//! A file is edited as text, at places that its parser tells: what is not named stays byte for
//! byte. The answer is read as any other file is, so a wrong value gets the remark that `check`
//! would make.

mod map;
mod path;

use std::ops::Range;

use case::question::{Form, Group, Kind, Question};
use case::text::{EditError, TextFinding};
use cushion::Severity;
use toml_edit::Value;

use self::map::Map;
use self::path::{Step, Target};
use crate::cursor::FILL_IN;
use crate::{Remark, read_client};

/// A file after an edit.
#[derive(Clone, Debug, PartialEq)]
pub struct Edited {
    /// The text.
    pub text: String,
    /// What is to be said about it: an edit may leave more to be filled in.
    pub remarks: Vec<Remark>,
}

/// Gives a key of a client's file a value.
///
/// Keys are as `measures.hip_width`, `measures.thigh_depth.left`, `posture.obliquity.by`, and for
/// lists as `goal.2.percent`, counted from 1; one more than there are begins a new entry. Values
/// are as on a form: `380`, `left`, `2026-03-01`; lists and tables as in TOML.
///
/// # Errors
///
/// Returns why nothing is changed.
pub fn set(text: &str, key: &str, value: &str) -> Result<Edited, EditError> {
    let target = path::target(key)?;
    let map = map_of(text)?;
    let (question, value) = match target.question {
        Some(question) => (question, toml_of(question, &target, value)?),
        None => return Err(EditError::Table(target.group)),
    };
    let changed = match map.find(&target.steps) {
        Some(place) => spliced(text, place.value, &value),
        None => inserted(text, &map, &target, question, &value)?,
    };
    finished(text, changed)
}

/// What a client's file has at a key, as on a form: words without their quotes, the words of a
/// list a line each, numbers and days as they are written. None where it has nothing there, a blank
/// that is still to be filled in, or cannot be read.
#[must_use]
pub fn written(text: &str, key: &str) -> Option<String> {
    let target = path::target(key).ok()?;
    let place = Map::of(text).find(&target.steps)?;
    let own = &text[place.value];
    let said = match own.parse::<Value>().ok()? {
        Value::String(words) => words.into_value(),
        Value::Array(list) => {
            let words = list.iter().map(|one| one.as_str().unwrap_or_default());
            words.collect::<Vec<_>>().join("\n")
        }
        _ => own.trim().to_owned(),
    };
    (said.trim() != FILL_IN).then_some(said)
}

/// How many entries a list of a client's file has, such as `goal` or `skin.injury`.
#[must_use]
pub fn entries(text: &str, list: Group) -> usize {
    let steps: Vec<Step> = list.path().split('.').map(|key| Step::Key(key.to_owned())).collect();
    Map::of(text).entries(&steps).len()
}

/// Whether a client's file has a table, such as `posture.obliquity`, with anything in it.
#[must_use]
pub fn has(text: &str, group: Group) -> bool {
    let steps: Vec<Step> = group.path().split('.').map(|key| Step::Key(key.to_owned())).collect();
    let map = Map::of(text);
    map.find(&steps).is_some() || map.body(&steps).is_some()
}

/// The bytes of a value of a client's file, and of the key before it: what a remark about it
/// points at.
#[must_use]
pub fn place_of_key(text: &str, key: &str) -> Option<Range<usize>> {
    let target = path::target(key).ok()?;
    let place = Map::of(text).find(&target.steps)?;
    Some(place.key.start..place.value.end)
}

/// Lines of words as the value of a list, for [`set`].
#[must_use]
pub fn list_of(words: &[&str]) -> String {
    let list: toml_edit::Array = words.iter().copied().collect();
    list.to_string().trim().to_owned()
}

/// Takes a key, a table or an entry of a list away.
///
/// # Errors
///
/// Returns why nothing is changed: where it is not there, or the file would be wrong without it.
pub fn remove(text: &str, key: &str) -> Result<Edited, EditError> {
    let target = path::target(key)?;
    let map = map_of(text)?;
    if let Some(Step::Entry(at)) = target.steps.last() {
        let entries = map.entries(&target.steps[..target.steps.len() - 1]);
        let entry = entries
            .get(at - 1)
            .ok_or(EditError::NoSuchEntry { list: target.group, there: entries.len() })?;
        return finished(text, spliced(text, entry.clone(), ""));
    }
    if target.question.is_none() && target.group == Group::Filling && has(text, target.group) {
        return finished(text, with_table(text, target.group, None));
    }
    let place = map.find(&target.steps);
    let place = place.ok_or_else(|| EditError::NoSuchKey { key: key.to_owned(), near: None })?;
    if target.question.is_none() && target.group.form() != Form::Braces {
        return Err(EditError::Table(target.group));
    }
    let range = if place.in_braces {
        with_comma(text, place.key.start..place.value.end)
    } else {
        whole_lines(text, place.key.start..place.value.end)
    };
    finished(text, spliced(text, range, ""))
}

/// The text with a block of lines in place of a table of the file, or with nothing of it.
pub(crate) fn with_table(text: &str, group: Group, block: Option<&str>) -> String {
    let map = Map::of(text);
    let steps = [Step::Key(group.key().to_owned())];
    if let Some(place) = map.find(&steps) {
        // In braces; below its lines other keys of the file may stand.
        let without = spliced(text, whole_lines(text, place.key.start..place.value.end), "");
        return match block {
            Some(_) => with_table(&without, group, block),
            None => without,
        };
    }
    match (map.lines_of(&steps), block) {
        (Some(lines), Some(block)) => spliced(text, lines, &block.replace('\n', line_ends(text))),
        (None, Some(block)) => with_block(text, &map, group, block, None),
        (Some(lines), None) => spliced(text, with_gap(text, lines), ""),
        (None, None) => text.to_owned(),
    }
}

/// Lines with the empty one after them, where one is before them too; at the end of a text, with the
/// one before them.
fn with_gap(text: &str, lines: Range<usize>) -> Range<usize> {
    let ends = line_ends(text);
    let gap_before = text[..lines.start].ends_with(&ends.repeat(2));
    if gap_before && text[lines.end..].starts_with(ends) {
        return lines.start..lines.end + ends.len();
    }
    if gap_before && lines.end == text.len() {
        return lines.start - ends.len()..lines.end;
    }
    lines
}

/// Puts an entry of a list, such as `goal.3`, in another place, counted from 1.
///
/// # Errors
///
/// Returns why nothing is changed: where there is no such entry or place.
pub fn reorder(text: &str, entry: &str, to: usize) -> Result<Edited, EditError> {
    let target = path::target(entry)?;
    let map = map_of(text)?;
    let Some(Step::Entry(from)) = target.steps.last() else {
        return Err(EditError::NoSuchKey { key: entry.to_owned(), near: None });
    };
    let entries = map.entries(&target.steps[..target.steps.len() - 1]);
    let there = entries.len();
    if !(1..=there).contains(from) || !(1..=there).contains(&to) {
        return Err(EditError::NoSuchEntry { list: target.group, there });
    }
    let mut order: Vec<usize> = (0..there).collect();
    let moved = order.remove(from - 1);
    order.insert(to - 1, moved);
    let mut changed = String::new();
    let mut end = 0;
    for (place, own) in entries.iter().zip(&order) {
        changed += &text[end..place.start];
        changed += ended(&text[entries[*own].clone()], text).as_str();
        end = place.end;
    }
    changed += &text[end..];
    finished(text, changed)
}

/// Returns the errors after an edit that were not there before.
#[must_use]
pub fn new_errors(before: &[Remark], after: &[Remark]) -> Vec<Remark> {
    let mut known: Vec<&TextFinding> = before.iter().map(|remark| &remark.finding).collect();
    let mut new = Vec::new();
    for remark in after.iter().filter(|remark| remark.severity == Severity::Error) {
        match known.iter().position(|own| **own == remark.finding) {
            Some(at) => {
                known.swap_remove(at);
            }
            None => new.push(remark.clone()),
        }
    }
    new
}

/// Reads where everything is, where it can be read at all.
fn map_of(text: &str) -> Result<Map, EditError> {
    let broken: Vec<Remark> = read_client(text)
        .remarks
        .into_iter()
        .filter(|remark| matches!(remark.finding, TextFinding::Syntax(_) | TextFinding::File(_)))
        .collect();
    if broken.is_empty() { Ok(Map::of(text)) } else { Err(EditError::Unreadable(broken)) }
}

/// The text after an edit, where it is no worse than before but for what is still to be filled
/// in.
fn finished(before: &str, text: String) -> Result<Edited, EditError> {
    let remarks = read_client(&text).remarks;
    let worse = new_errors(&read_client(before).remarks, &remarks);
    let to_come =
        |remark: &Remark| matches!(&remark.finding, TextFinding::Key(own) if own.is_missing());
    match worse.into_iter().find(|remark| !to_come(remark)) {
        Some(remark) => Err(EditError::Wrong { text, remark: Box::new(remark) }),
        None => Ok(Edited { text, remarks }),
    }
}

/// A value as TOML has it: of a number's kind where it is one, else in quotes.
fn toml_of(question: Question, target: &Target, value: &str) -> Result<String, EditError> {
    let value = value.trim();
    let row = question.row();
    if row.each_side && target.side.is_none() {
        return Err(EditError::EachSide(question));
    }
    let quoted = || Value::from(value).to_string();
    let parsed = value.parse::<Value>().ok();
    let bare = match row.kind {
        Kind::Just(_) | Kind::Length(_) | Kind::Number(..) | Kind::Whole { .. } => {
            parsed.is_some_and(|own| own.is_integer() || own.is_float())
        }
        Kind::Place | Kind::Measure => parsed.is_some_and(|own| own.is_integer() || own.is_float()),
        Kind::Parameters if target.name.is_some() => {
            parsed.is_some_and(|own| own.is_integer() || own.is_float())
        }
        Kind::YesNo => parsed.is_some_and(|own| own.is_bool()),
        Kind::Date => parsed.is_some_and(|own| own.is_datetime()),
        Kind::Texts | Kind::Names | Kind::Spot | Kind::Checks => {
            if !parsed.is_some_and(|own| own.is_array()) {
                return Ok(format!("[{}]", quoted()));
            }
            true
        }
        Kind::Parameters | Kind::Pair => parsed.is_some_and(|own| own.is_inline_table()),
        Kind::Word(_)
        | Kind::Choice(_)
        | Kind::Text
        | Kind::Words
        | Kind::Code
        | Kind::Phone
        | Kind::Size
        | Kind::Name
        | Kind::Layout
        | Kind::Digest => false,
    };
    Ok(if bare { value.to_owned() } else { quoted() })
}

/// The text with a key that is not there yet.
fn inserted(
    text: &str,
    map: &Map,
    target: &Target,
    question: Question,
    value: &str,
) -> Result<String, EditError> {
    // What is written anew: the key itself, or what it is in that is in braces and not there.
    let mut steps = target.steps.clone();
    let mut value = value.to_owned();
    let mut key = last_key(&steps);
    while let Some(outer) = outer_in_braces(target, &steps) {
        if let Some(place) = map.find(&outer) {
            let Some(end) = map.inside(&outer) else {
                return Err(EditError::Form(target.written.clone()));
            };
            let comma = if end.is_empty() { "" } else { ", " };
            let space = if end.is_empty() { " " } else { "" };
            let at = if end.is_empty() { place.value.start + 1 } else { end.end };
            let new = format!("{comma}{space}{key} = {value}{space}");
            return Ok(spliced(text, at..at, &new));
        }
        value = format!("{{ {key} = {value} }}");
        steps = outer;
        key = last_key(&steps);
    }
    let order: Vec<&str> = match target.group.form() {
        Form::Braces => target.group.parent().keys(),
        _ => target.group.keys(),
    };
    let line = format!("{key} = {value}");
    let outer = &steps[..steps.len() - 1];
    match (map.body(outer), outer.last()) {
        (Some(body), _) => Ok(map.with_line(text, &body, &order, &key, &line)),
        (None, Some(Step::Entry(at))) => {
            let entries = map.entries(&outer[..outer.len() - 1]);
            if *at != entries.len() + 1 {
                let list = target.group;
                return Err(EditError::NoSuchEntry { list, there: entries.len() });
            }
            let group = question.row().group;
            let block = format!("[[{}]]\n{line}\n", group.path());
            let at = entries.last().map(|own| own.end);
            Ok(with_block(text, map, group, &block, at))
        }
        (None, _) => {
            let group = match target.group.form() {
                Form::Braces => target.group.parent(),
                _ => target.group,
            };
            let block = format!("[{}]\n{line}\n", group.path());
            Ok(with_block(text, map, group, &block, None))
        }
    }
}

fn last_key(steps: &[Step]) -> String {
    match steps.last() {
        Some(Step::Key(key)) => key.clone(),
        _ => String::new(),
    }
}

/// What a path is in, where that is written in braces.
fn outer_in_braces(target: &Target, steps: &[Step]) -> Option<Vec<Step>> {
    let inner = target.side.is_some() || target.name.is_some();
    let depth = target.steps.len() - steps.len();
    let in_braces = match (inner, depth) {
        (true, 0) => true,
        (true, 1) | (false, 0) => target.group.form() == Form::Braces,
        _ => false,
    };
    in_braces.then(|| steps[..steps.len() - 1].to_vec())
}

/// The text with a block of lines of its own: at a place, before its example in a comment, or
/// before what comes after it.
fn with_block(text: &str, map: &Map, group: Group, block: &str, at: Option<usize>) -> String {
    let ends = line_ends(text);
    if let Some(at) = at {
        return spliced(text, at..at, &format!("\n{block}").replace('\n', ends));
    }
    let heading = block.lines().next().unwrap_or_default();
    let example = format!("# {heading}");
    let example = text
        .match_indices(&example)
        .map(|(at, _)| at)
        .find(|at| *at == 0 || text.as_bytes()[at - 1] == b'\n');
    let later = || map.first_of(|own| own > group).map(|at| above_comments(text, at));
    match example.or_else(later) {
        Some(at) => spliced(text, at..at, &format!("{block}\n").replace('\n', ends)),
        None => {
            let gap = if text.is_empty() || text.ends_with('\n') { "\n" } else { "\n\n" };
            text.to_owned() + &format!("{gap}{block}").replace('\n', ends)
        }
    }
}

/// The start of the comments that stand right above a line.
fn above_comments(text: &str, line: usize) -> usize {
    let mut at = line;
    while at > 0 {
        let start = text[..at - 1].rfind('\n').map_or(0, |end| end + 1);
        if !text[start..at].starts_with('#') {
            break;
        }
        at = start;
    }
    at
}

/// The line ends of a text.
fn line_ends(text: &str) -> &'static str {
    if text.contains("\r\n") { "\r\n" } else { "\n" }
}

/// Lines that end with a line end, though they may be the last of a text.
fn ended(lines: &str, text: &str) -> String {
    if lines.ends_with('\n') { lines.to_owned() } else { format!("{lines}{}", line_ends(text)) }
}

fn spliced(text: &str, range: Range<usize>, with: &str) -> String {
    format!("{}{with}{}", &text[..range.start], &text[range.end..])
}

/// The lines of a range, with their ends.
fn whole_lines(text: &str, range: Range<usize>) -> Range<usize> {
    let start = text[..range.start].rfind('\n').map_or(0, |at| at + 1);
    let end = text[range.end..].find('\n').map_or(text.len(), |at| range.end + at + 1);
    // A byte-order mark is no part of the first line.
    let mark = if start == 0 && text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
    start + mark..end
}

/// A range in braces with the comma before it, or after it where it is the first.
fn with_comma(text: &str, range: Range<usize>) -> Range<usize> {
    let before = text[..range.start].trim_end();
    if before.ends_with(',') {
        return before.len() - 1..range.end;
    }
    let after = text[range.end..].trim_start();
    match after.strip_prefix(',') {
        Some(rest) => range.start..text.len() - rest.trim_start().len(),
        None => range,
    }
}
