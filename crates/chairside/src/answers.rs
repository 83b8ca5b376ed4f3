//! Answers of a form on their way into a client's file.

use case::question::Question;
use case::text::{EditError, KeyFinding, Remark, TextFinding};
use casework::{Answered, Blank, Draft, NotWritten, Typed, TypedIn};
use cushion::Side;
use maud::{Markup, html};
use words::Language;

use crate::fields::{capital, side_of};
use crate::form::Sent;

/// The button that keeps what somebody else wrote meanwhile, by the key of the answer.
const THEIRS: &str = "theirs";
/// The button that writes one's own answer in its place.
const MINE: &str = "mine";

/// An answer that was typed and not written, with why.
#[derive(Clone, Debug)]
pub(crate) struct Said {
    pub(crate) blank: Blank,
    pub(crate) typed: String,
    /// What stood there when the person was shown the blank.
    pub(crate) seen: Option<String>,
    pub(crate) message: String,
    /// Whether somebody else wrote there meanwhile: which of both stands is for the person to say.
    pub(crate) is_overtaken: bool,
}

impl Said {
    /// Whether something is wrong with it; else it is only shown again, as it was typed.
    pub(crate) fn is_refused(&self) -> bool {
        !self.message.is_empty()
    }
}

/// Two buttons that say which of two answers is to stand: nothing is written over somebody else's by the
/// way.
pub(crate) fn which_stands(language: &dyn Language, key: &str) -> Markup {
    let texts = &language.page().fields;
    html! {
        div class="row" {
            button class="button less" name=(THEIRS) value=(key) { (texts.keep_theirs) }
            button class="button less" name=(MINE) value=(key) { (texts.write_mine) }
        }
    }
}

/// Whether a form was sent only to say that: it leads nowhere else.
pub(crate) fn says_which_stands(sent: &Sent) -> bool {
    [THEIRS, MINE].iter().any(|own| sent.get(own).is_some())
}

/// The answers that a form sent. What is as it was shown is no answer.
pub(crate) fn typed(sent: &Sent) -> Vec<Typed> {
    let all = sent.all().filter_map(|(key, words)| {
        let blank = Blank::from_key(key)?;
        // What somebody else wrote is kept, and is what stands there then.
        if sent.get(THEIRS) == Some(key) {
            return None;
        }
        // Of a radio button, the last of a name counts.
        let last = sent.get(key) == Some(words);
        // Whoever says so wants their own answer, whatever stands there.
        let seen = sent.get(&format!("was:{key}")).filter(|_| sent.get(MINE) != Some(key));
        let seen = seen.map(str::to_owned);
        let shown = sent.get(&format!("shown:{key}"));
        let words = match (&seen, shown) {
            (Some(seen), Some(shown)) if shown == words.trim() => seen.clone(),
            _ => words.to_owned(),
        };
        last.then_some(Typed { blank, words, seen })
    });
    all.collect()
}

/// What became of the answers of a form.
pub(crate) struct Taken {
    /// The file with those that were written.
    pub(crate) draft: Draft,
    /// Those that were refused, with why.
    pub(crate) refused: Vec<Said>,
    /// Those that say nothing beside the answer that they go with.
    pub(crate) left_out: Vec<Said>,
}

/// Takes the answers of a form: what is not written is said in words.
pub(crate) fn taken(
    language: &dyn Language,
    draft: &Draft,
    sent: &Sent,
    default: TypedIn,
) -> Taken {
    let Answered { draft, refused, left_out } = draft.answered(&typed(sent), default);
    let refused = refused.into_iter().map(|own| Said {
        blank: own.typed.blank,
        message: why(language, &own.why),
        seen: own.typed.seen,
        is_overtaken: matches!(own.why, NotWritten::Meanwhile(_)),
        typed: own.typed.words,
    });
    let left_out = left_out.into_iter().filter_map(|blank| {
        let (other, words) = blank.question.row().need.goes_with()?;
        let message = only_with(language, blank.question, other, words)?;
        let typed = sent.get(&blank.key()).unwrap_or_default().to_owned();
        Some(Said { blank, typed, seen: None, message, is_overtaken: false })
    });
    Taken { refused: refused.collect(), left_out: left_out.collect(), draft }
}

fn why(language: &dyn Language, why: &NotWritten) -> String {
    match why {
        NotWritten::Wrong(error) => sentence(language, error),
        NotWritten::Meanwhile(now) => language.changed_meanwhile(now.as_deref()),
    }
}

fn sentence(language: &dyn Language, error: &EditError) -> String {
    let said = language.about_edit(error);
    whole(&said.message, said.hint.as_deref())
}

/// A message and its hint as sentences.
pub(crate) fn whole(message: &str, hint: Option<&str>) -> String {
    let sentence = |words: &str| {
        let mut rest = words.chars();
        let first = rest.next().map(|first| first.to_uppercase().to_string()).unwrap_or_default();
        let end = if words.ends_with(['.', '?', '!']) { "" } else { "." };
        format!("{first}{}{end}", rest.as_str())
    };
    match hint {
        Some(hint) => format!("{} {}", sentence(message), sentence(hint)),
        None => sentence(message),
    }
}

/// What is to be said about an answer.
pub(crate) enum Asked {
    /// Nobody answered yet, and nothing is worked out without it.
    Needed,
    /// It is written, and wrong.
    Wrong(String),
    /// It is written, and unlikely.
    Doubted(String),
}

/// What is asked about an answer that is written, or wrong with it; and that one is needed, where
/// another one needs it.
pub(crate) fn said_of(
    language: &dyn Language,
    draft: &Draft,
    remarks: &[Remark],
    blank: &Blank,
) -> Vec<Asked> {
    let about = draft.about(blank, remarks);
    let is_blank = draft.answer(blank).is_none();
    // One side that lacks an answer does not make the other one needed.
    let is_said = |own: &Asked| is_blank || !matches!(own, Asked::Needed);
    let mut said: Vec<Asked> =
        about.iter().map(|own| asked(language, blank, own)).filter(is_said).collect();
    let lacks = |remark: &Remark| blank_of(remark).is_some_and(|own| own.0 == blank.question);
    // Which entry of a list lacks an answer is not known.
    if about.is_empty() && is_blank && blank.entry.is_none() && remarks.iter().any(lacks) {
        said.push(Asked::Needed);
    }
    said
}

fn asked(language: &dyn Language, blank: &Blank, remark: &Remark) -> Asked {
    match blank_of(remark) {
        Some((question, _)) if question == blank.question => return Asked::Needed,
        Some((question, _)) => {
            return Asked::Wrong(language.answer_too(&capital(&language.label_on_form(question))));
        }
        None => {}
    }
    if let Some(message) = goes_only_with(language, remark) {
        return Asked::Wrong(message);
    }
    let said = language.about_text(&remark.finding);
    let message = whole(&said.message, said.hint.as_deref());
    match remark.severity {
        cushion::Severity::Error => Asked::Wrong(message),
        _ => Asked::Doubted(message),
    }
}

/// That an answer stands beside another one that it does not go with, by what they are called here.
fn goes_only_with(language: &dyn Language, remark: &Remark) -> Option<String> {
    let TextFinding::Key(KeyFinding::NotBeside { question, other, words }) = &remark.finding else {
        return None;
    };
    only_with(language, *question, other, words)
}

/// That an answer goes only with these to the question of a key beside it.
fn only_with(
    language: &dyn Language,
    question: Question,
    other: &str,
    words: &[&'static str],
) -> Option<String> {
    let other = Question::of(question.row().group).find(|own| own.row().key == other)?;
    let answers: Vec<String> =
        words.iter().map(|word| capital(&language.word_on_form(other, word))).collect();
    let label = capital(&language.label_on_form(other));
    Some(language.goes_only_with(&label, &answers.join(" / ")))
}

/// The question that a remark finds without an answer, and the side; none where it finds something else.
pub(crate) fn blank_of(remark: &Remark) -> Option<(Question, Option<Side>)> {
    let TextFinding::Key(finding) = &remark.finding else { return None };
    match finding {
        KeyFinding::Blank(question, side) => Some((*question, side.and_then(side_of))),
        KeyFinding::Missing(question)
        | KeyFinding::Neither(question, _)
        | KeyFinding::Without { missing: question, .. } => Some((*question, None)),
        KeyFinding::MissingGroup(group) => Some((Question::of(*group).next()?, None)),
        _ => None,
    }
}
