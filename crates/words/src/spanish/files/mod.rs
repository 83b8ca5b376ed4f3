//! Spanish: findings about texts, questions, why work on them ends.

mod checks;
mod edits;
mod layouts;
mod places;
mod plugins;
mod questions;
mod texts;
mod troubles;

pub(super) use self::places::text_of_layout;
pub(super) use self::troubles::reason;

use case::question::{Answer, Group, Question, QuestionWords, Unused};
use case::text::{EditError, TextFinding};
use case::{BodyMeasure, CheckError, FileKind, LayoutError, PluginFaultKind, Said, Trouble};
use cushion::{Compartment, FaultKind, SizeError, Words};

use super::{Spanish, parts};
use crate::said::said;
use crate::{FileWords, Language as _};

/// What a name is, after "take".
pub(super) const NAME_RULE: &str =
    "letras minúsculas, cifras y guiones, con una letra al principio, como mucho 40";
/// What a code for a client is, after "take".
const CODE_RULE: &str = "de 2 a 24 letras, cifras y guiones con alguna cifra, sin guion delante, sin nombre de aparato como COM1";

impl QuestionWords for Spanish {
    fn label(&self, question: Question) -> &'static str {
        questions::label(question)
    }

    fn comment(&self, question: Question) -> &'static str {
        questions::comment(question)
    }

    fn group_comment(&self, group: Group) -> &'static str {
        questions::group_comment(group)
    }

    fn unused(&self, why: Unused) -> &'static str {
        questions::unused(why)
    }

    fn file_title(&self, kind: FileKind) -> &'static str {
        questions::file_title(kind)
    }

    fn client_head(&self) -> &'static str {
        questions::CLIENT_HEAD
    }

    fn record_head(&self) -> &'static str {
        questions::RECORD_HEAD
    }

    fn or(&self) -> &'static str {
        questions::OR
    }
}

impl FileWords for Spanish {
    fn about_text(&self, finding: &TextFinding) -> Said {
        texts::about(finding)
    }

    fn trouble(&self, trouble: &Trouble) -> Said {
        troubles::about(trouble)
    }

    fn no_check(&self, error: &CheckError) -> Said {
        checks::no_check(error)
    }

    fn about_edit(&self, error: &EditError) -> Said {
        edits::about(error)
    }

    fn no_layout(&self, error: &LayoutError) -> Said {
        plugins::no_layout(error)
    }

    fn plugin_fault(&self, kind: &PluginFaultKind) -> Said {
        plugins::fault(kind)
    }

    fn layout_fault(&self, kind: &FaultKind) -> Said {
        said(layouts::fault(kind), layouts::advice(kind))
    }

    fn no_size(&self, error: SizeError) -> String {
        layouts::no_size(error)
    }

    fn place_of<'a>(&self, words: &'a Words) -> &'a str {
        places::words(words, self.tag())
    }

    fn text_of_layout<'a>(&self, text: &'a str) -> &'a str {
        text_of_layout(text)
    }

    fn compartment(&self, compartment: &Compartment) -> String {
        let words = self.place_of(&compartment.words);
        match compartment.side.filter(|_| compartment.has_partner) {
            Some(side) => format!("{words}, {} de la persona", parts::hand(side)),
            None => words.to_owned(),
        }
    }

    fn body_measure(&self, measure: BodyMeasure) -> &'static str {
        layouts::measure(measure)
    }

    fn answer(&self, answer: Answer) -> &'static str {
        questions::answer(answer)
    }

    fn unused_answers(&self, answers: &[(Question, Unused)]) -> Vec<String> {
        questions::unused_answers(answers)
    }

    fn count(&self, errors: usize, remarks: usize) -> String {
        texts::count(errors, remarks)
    }
}
