//! Checks a text of any kind of ours.

use case::question::{Kind as Answer, Question, Unused, Use};
use case::text::{ClientFinding, FileFinding, TextFinding, ValueFinding, is_right_to_left};
use case::{Date, FileKind};
use cushion::Severity;

use crate::answers::{Answered, each_answer};
use crate::{Read, Remark, check_layout, kind_of, read_cell, read_client};

/// What is known beside the text.
#[derive(Clone, Copy)]
pub struct Known<'a> {
    /// The day on which it is checked; days after it are asked about. Where there is none, no day
    /// is.
    pub today: Option<Date>,
    /// Whether the papers can print a character.
    pub printable: &'a dyn Fn(char) -> bool,
}

impl Known<'_> {
    /// Nothing is known: no day, and all characters can be printed.
    pub const NOTHING: Self = Self { today: None, printable: &|_| true };
}

/// What there is to be said about a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Checked {
    /// What it is, where it says so.
    pub kind: Option<FileKind>,
    /// All remarks, in the order of the text.
    pub remarks: Vec<Remark>,
    /// The questions that are answered in a right client's file and change no answer of the
    /// program, with why not, in the order of the form.
    pub unused: Vec<(Question, Unused)>,
}

/// Returns the kind of a text and everything that is to be said about it.
#[must_use]
pub fn check(text: &str, known: &Known<'_>) -> Checked {
    let kind = kind_of(text);
    let remarks = match kind {
        Some(FileKind::Layout) => check_layout(text).remarks,
        Some(FileKind::Cell) => read_cell(text).remarks,
        Some(FileKind::Client) => read_client(text).remarks,
        None => unknown(text),
    };
    let Some(of) = kind else { return Checked { kind, remarks, unused: Vec::new() } };
    let mut asked = Vec::new();
    let mut unused = Vec::new();
    each_answer(text, of, |answered| {
        let remark = |finding: TextFinding| Remark {
            severity: Severity::Remark,
            span: answered.span.clone(),
            finding,
        };
        asked.extend(in_the_future(answered, known.today).map(|own| remark(own.into())));
        asked.extend(unprintable(answered, known.printable).map(|own| remark(own.into())));
        let of_client = of == FileKind::Client;
        let changes = answered.question.row().changes;
        if let (true, Use::Nothing(why) | Use::OnCard(why)) = (of_client, changes) {
            unused.push((answered.question, why));
        }
    });
    unused.sort_unstable_by_key(|(question, _)| *question);
    unused.dedup_by_key(|(question, _)| *question);
    // Of a wrong answer only that is said.
    asked.retain(|remark| !remarks.iter().any(|own| own.span == remark.span));
    let remarks = Read::new(Some(()), remarks.into_iter().chain(asked).collect()).remarks;
    if remarks.iter().any(|remark| remark.severity == Severity::Error) {
        unused.clear();
    }
    Checked { kind, remarks, unused }
}

/// A day that is still to come and should not be.
fn in_the_future(answered: &Answered<'_>, today: Option<Date>) -> Option<ClientFinding> {
    if answered.question.row().kind != Answer::Date || answered.question == Question::NextReview {
        return None;
    }
    let (today, written) = (
        today?,
        match answered.value {
            toml::de::DeValue::Datetime(day) => day.to_string(),
            own => own.as_str()?.to_owned(),
        },
    );
    let date = written.parse::<Date>().ok()?;
    (date > today).then_some(ClientFinding::Future { date, today })
}

/// A character that no font of the papers has.
fn unprintable(answered: &Answered<'_>, printable: &dyn Fn(char) -> bool) -> Option<ValueFinding> {
    let text = answered.value.as_str()?;
    let printed =
        matches!(answered.question.row().kind, Answer::Text | Answer::Texts | Answer::Words);
    let found = text.chars().find(|c| printed && !c.is_control() && !printable(*c));
    found.map(|c| match is_right_to_left(c) {
        true => ValueFinding::RightToLeft(c),
        false => ValueFinding::Unprintable(c),
    })
}

/// A text that does not say what it is: the syntax errors that hide it, or that it does not.
fn unknown(text: &str) -> Vec<Remark> {
    let as_client = read_client(text).remarks;
    let unreadable = |remark: &Remark| {
        matches!(remark.finding, TextFinding::Syntax(_) | TextFinding::File(FileFinding::TooLarge))
    };
    let unreadable: Vec<Remark> = as_client.into_iter().filter(unreadable).collect();
    if !unreadable.is_empty() {
        return unreadable;
    }
    let end = text.find('\n').unwrap_or(text.len());
    vec![Remark { severity: Severity::Error, span: 0..end, finding: FileFinding::NoKind.into() }]
}
