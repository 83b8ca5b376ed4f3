//! Starter files, with a comment for each key; that of a client is written in any language.

use case::question::{Form, Group, Kind, Need, Question, QuestionWords};
use case::{CardCode, ClientCode};
use cushion::Name;
use toml_edit::{InlineTable, Value};

use crate::cursor::FILL_IN;

/// A layout to begin from: four compartments in two rows.
#[must_use]
pub fn layout() -> &'static str {
    include_str!("texts/starter-layout.toml")
}

/// A cell to begin from.
#[must_use]
pub fn cell() -> &'static str {
    include_str!("texts/starter-cell.toml")
}

/// A client's file to fill in, in the order of the measuring form: what is needed is blank, what
/// may be left out is a comment.
///
/// Nothing can be planned from it before the blanks are filled in: reading refuses each by name.
#[must_use]
pub fn client(words: &dyn QuestionWords) -> String {
    client_with(words, &blank)
}

/// What stands in a file to fill in: a blank where an answer is needed.
fn blank(question: Question) -> Option<String> {
    match question.row().kind {
        Kind::Just(_) | Kind::Word(_) => Some(question.row().example.to_owned()),
        _ if question == Question::Units => Some(question.row().example.to_owned()),
        _ if is_asked(question) => Some(format!("\"{FILL_IN}\"")),
        _ => None,
    }
}

/// The file of an invented client: the same with the examples of the table in the blanks, and with
/// an answer to each question about measures, weight and chair that adds nothing unusual.
#[must_use]
pub fn example(words: &dyn QuestionWords) -> String {
    const MORE: [Question; 8] = [
        Question::TrochanterWidth,
        Question::LowerLegLength,
        Question::ExternalKneeWidth,
        Question::InsideWidth,
        Question::InsideDepth,
        Question::SeatBase,
        Question::CellOfCushion,
        Question::Units,
    ];
    client_with(words, &|question| {
        let answered = is_asked(question)
            || MORE.contains(&question)
            || matches!(question.row().kind, Kind::Just(_) | Kind::Word(_));
        answered.then(|| question.row().example.to_owned())
    })
}

/// A cushion as the file of a client is to name it.
#[derive(Clone, Copy, Debug)]
pub struct RestoredCushion<'a> {
    /// The layout: its name, or the path of its file from the folder of the client's.
    pub layout: &'a str,
    /// The cell, named in the same way.
    pub cell: &'a str,
    /// Values for the parameters of the layout.
    pub parameters: &'a [(Name, f64)],
    /// The code that stands for the client; none where it is not known.
    pub client: Option<&'a ClientCode>,
}

/// A client's file with what the code on a card says, and blanks for all else; under a head that says
/// so. The counts are not in it yet: they belong in its record.
#[must_use]
pub fn restored(
    words: &dyn QuestionWords,
    head: &str,
    code: &CardCode,
    cushion: RestoredCushion<'_>,
) -> String {
    let text = |text: &str| Some(Value::from(text).to_string());
    let parameters: InlineTable = (cushion.parameters.iter())
        .map(|(name, value)| (name.as_str(), Value::from(*value)))
        .collect();
    let known = |question: Question| match question {
        Question::Code => cushion.client.and_then(|own| text(own.as_str())),
        Question::LayoutOfCushion => text(cushion.layout),
        Question::LayoutParameters if !parameters.is_empty() => Some(parameters.to_string()),
        Question::SizeOfCushion => text(&code.size.to_string()),
        Question::CellOfCushion => text(cushion.cell),
        Question::SerialOfCushion => code.serial.as_deref().and_then(text),
        _ => None,
    };
    let blanks = client_with(words, &|question| known(question).or_else(|| blank(question)));
    format!("{}#\n{blanks}", commented(head))
}

/// Whether a file without an answer does not do, in a group that is written.
fn is_asked(question: Question) -> bool {
    let row = question.row();
    let always = matches!(row.need, Need::Always | Need::Both(_))
        && matches!(row.group, Group::Client | Group::Measures | Group::Weight | Group::Cushion);
    always || !row.needed_for.is_empty()
}

/// A client's file with these answers; questions without one are comments with their examples.
fn client_with(words: &dyn QuestionWords, answer: &dyn Fn(Question) -> Option<String>) -> String {
    let mut text = commented(words.client_head());
    text.push('\n');
    for question in Question::of(Group::Client) {
        text += &line(words, question, answer(question));
    }
    for group in Group::Client.children() {
        match (group.form(), group.entry()) {
            (Form::List, None) => text += &list(words, group),
            // What is done with the cushion is written as it is done.
            _ if group.is_of_work() => {}
            _ => text += &heading(words, group, answer),
        }
    }
    text.push('\n');
    text += &commented(words.record_head());
    for group in Group::Client.children().filter(|group| group.entry().is_some()) {
        // Plans and adjustments are written by the program alone.
        if !words.group_comment(group).is_empty() {
            text.push('\n');
            text += &commented(words.group_comment(group));
            text += &block(words, group, None);
        }
    }
    text
}

/// Lines as comments.
fn commented(words: &str) -> String {
    words.lines().map(|line| format!("# {line}\n")).collect()
}

/// A group under its heading, with the groups that are in it.
///
/// Headings are never comments: so what is uncommented below one belongs to it.
fn heading(
    words: &dyn QuestionWords,
    group: Group,
    answer: &dyn Fn(Question) -> Option<String>,
) -> String {
    let mut text = String::from("\n");
    text += &with_comment(&format!("[{}]", group.path()), words.group_comment(group));
    for question in Question::of(group) {
        // The other of two is named beside the one.
        if !is_second(question) {
            text += &line(words, question, answer(question));
        }
    }
    for child in group.children().filter(|child| child.form() == Form::Braces) {
        text += &braces(words, child);
    }
    for child in group.children().filter(|child| child.form() == Form::List) {
        text += &list(words, child);
    }
    text
}

/// Whether a question is the second of two of which one is answered.
fn is_second(question: Question) -> bool {
    let row = question.row();
    let Need::OneOf(other) = row.need else { return false };
    let first = Question::of(row.group).find(|own| [row.key, other].contains(&own.row().key));
    first != Some(question)
}

/// A question's line: with an answer, or a comment with its example.
fn line(words: &dyn QuestionWords, question: Question, answer: Option<String>) -> String {
    let row = question.row();
    let sign = if answer.is_some() { "" } else { "# " };
    let value = answer.unwrap_or_else(|| row.example.to_owned());
    let value =
        if row.each_side { format!("{{ left = {value}, right = {value} }}") } else { value };
    with_comment(&format!("{sign}{} = {value}", row.key), &explained(words, question))
}

/// A group in braces, as a comment, below what explains it.
fn braces(words: &dyn QuestionWords, group: Group) -> String {
    let mut text = String::new();
    let mut pairs = Vec::new();
    for question in Question::of(group) {
        let (row, comment) = (question.row(), explained(words, question));
        if !comment.is_empty() {
            text += &format!("# {}, {}: {comment}\n", group.key(), row.key);
        }
        if matches!(row.need, Need::Always) {
            pairs.push(format!("{} = {}", row.key, row.example));
        }
    }
    text + &format!("# {} = {{ {} }}\n", group.key(), pairs.join(", "))
}

/// The words of a list's first question, apart by what other keys go with them.
fn kinds(group: Group) -> Vec<Vec<&'static str>> {
    let mut kinds: Vec<Vec<&str>> = Vec::new();
    for question in Question::of(group) {
        if let Need::With(_, words) = question.row().need
            && !kinds.iter().any(|known| known == words)
        {
            kinds.push(words.to_vec());
        }
    }
    let first = Question::of(group).next().map(|own| own.row().kind);
    if let (false, Some(Kind::Choice(all))) = (kinds.is_empty(), first) {
        let with_keys: Vec<&str> = kinds.concat();
        kinds.push(all.iter().copied().filter(|word| !with_keys.contains(word)).collect());
    }
    kinds
}

/// A list of tables as comments: a block for each kind of entry that has keys of its own.
fn list(words: &dyn QuestionWords, group: Group) -> String {
    let mut text = String::from("\n");
    text += &commented(words.group_comment(group));
    let kinds = kinds(group);
    if kinds.is_empty() {
        text += &block(words, group, None);
    }
    for kind in &kinds {
        text += &block(words, group, Some(kind));
    }
    text
}

/// An entry of a list as comments; of one kind, where there are several.
fn block(words: &dyn QuestionWords, group: Group, kind: Option<&[&str]>) -> String {
    let mut text = format!("# [[{}]]\n", group.path());
    for (at, question) in Question::of(group).filter(|own| !is_second(*own)).enumerate() {
        let row = question.row();
        let mut comment = explained(words, question);
        let mut value = row.example.to_owned();
        match (row.need, kind) {
            (Need::With(_, with), Some(kind)) if with != kind => continue,
            (Need::Always, Some([first, others @ ..])) if at == 0 => {
                value = format!("\"{first}\"");
                comment = others_of(words, others);
            }
            _ => {}
        }
        text += &with_comment(&format!("# {} = {value}", row.key), &comment);
    }
    for child in group.children().filter(|child| child.form() == Form::BracesInList) {
        let pairs: Vec<String> = Question::of(child)
            .map(|own| format!("{} = {}", own.row().key, own.row().example))
            .collect();
        text += &format!("# {} = [{{ {} }}]\n", child.key(), pairs.join(", "));
    }
    text
}

/// Other words that could be written; nothing where there are none.
fn others_of(words: &dyn QuestionWords, others: &[&str]) -> String {
    let others: Vec<String> = others.iter().map(|word| format!("\"{word}\"")).collect();
    if others.is_empty() { String::new() } else { format!("{} {}", words.or(), others.join(", ")) }
}

/// What explains a question, and what else could be written.
fn explained(words: &dyn QuestionWords, question: Question) -> String {
    let row = question.row();
    let mut parts = vec![words.comment(question).to_owned()];
    if let Kind::Choice(all) = row.kind {
        let is_example = |word: &&str| format!("\"{word}\"") == row.example;
        let others: Vec<&str> = all.iter().copied().filter(|word| !is_example(word)).collect();
        parts.push(others_of(words, &others));
    }
    match row.need {
        Need::OneOf(other) => {
            let other = Question::of(row.group).find(|own| own.row().key == other);
            parts.extend(
                other
                    .map(Question::row)
                    .map(|own| format!("{} {} = {}", words.or(), own.key, own.example)),
            );
        }
        Need::Always | Need::Never | Need::Both(_) | Need::With(..) | Need::May(..) => {}
    }
    parts.retain(|part| !part.is_empty());
    parts.join("; ")
}

/// A line with a comment after it.
fn with_comment(line: &str, comment: &str) -> String {
    /// Where comments begin, as far as lines are short enough.
    const COLUMN: usize = 35;
    if comment.is_empty() {
        return format!("{line}\n");
    }
    let column = if line.len() < COLUMN { COLUMN } else { line.len() + 2 };
    format!("{line:<column$}# {comment}\n")
}
