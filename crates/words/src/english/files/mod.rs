//! English: findings about texts, questions, why work on them ends.

mod checks;
mod edits;
mod layouts;
mod plugins;
mod questions;
mod texts;
mod troubles;

pub(super) use self::troubles::reason;

use case::question::{Answer, Group, Question, QuestionWords, Unused};
use case::text::{EditError, TextFinding};
use case::{BodyMeasure, CheckError, FileKind, LayoutError, PluginFaultKind, Said, Trouble};
use cushion::{Compartment, FaultKind, SizeError, Words};

use super::English;
use crate::said::said;
use crate::{BasicWords as _, FileWords, Language as _};

impl QuestionWords for English {
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

impl FileWords for English {
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
        words.in_language(self.tag())
    }

    fn text_of_layout<'a>(&self, text: &'a str) -> &'a str {
        text
    }

    fn compartment(&self, compartment: &Compartment) -> String {
        let words = self.place_of(&compartment.words);
        match compartment.side.filter(|_| compartment.has_partner) {
            Some(side) => format!("{words}, client's {}", self.side(side)),
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
