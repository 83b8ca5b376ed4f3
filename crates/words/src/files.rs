//! What is said of files: findings about texts, questions, why work on them ends.

use case::question::{Answer, Question, QuestionWords, Unused};
use case::text::{EditError, TextFinding};
use case::{BodyMeasure, CheckError, LayoutError, PluginFaultKind, Said, Trouble};
use cushion::{Compartment, FaultKind, SizeError, Words};

/// What is said of files.
pub trait FileWords: QuestionWords {
    /// What is found about a text, and what to do.
    fn about_text(&self, finding: &TextFinding) -> Said;

    /// Why work on a case ends early, and what to do.
    fn trouble(&self, trouble: &Trouble) -> Said;

    /// Why a text is no check, and what to write.
    fn no_check(&self, error: &CheckError) -> Said;

    /// Why a file is not edited, and what to do.
    fn about_edit(&self, error: &EditError) -> Said;

    /// Why there is no layout, and what to do.
    fn no_layout(&self, error: &LayoutError) -> Said;

    /// What is wrong with a plugin that the reader knows, and what to do.
    fn plugin_fault(&self, kind: &PluginFaultKind) -> Said;

    /// What is wrong with a layout, and what to do.
    fn layout_fault(&self, kind: &FaultKind) -> Said;

    /// Why a text is not a size.
    fn no_size(&self, error: SizeError) -> String;

    /// What its author calls a compartment for carers, without a side.
    fn place_of<'a>(&self, words: &'a Words) -> &'a str;

    /// What a compartment is to carers, in its author's words, with the side where they do not
    /// say it.
    fn compartment(&self, compartment: &Compartment) -> String;

    /// What the file of a layout says of it in English (title, what it is for, whence its ratings are): in
    /// this language for the layouts that are ours, else as its author wrote it.
    fn text_of_layout<'a>(&self, text: &'a str) -> &'a str;

    /// A measure of the client, without an article.
    fn body_measure(&self, measure: BodyMeasure) -> &'static str;

    /// What the program answers, without a verb.
    fn answer(&self, answer: Answer) -> &'static str;

    /// Which answers change nothing that the program says, and why: a sentence for each reason.
    fn unused_answers(&self, answers: &[(Question, Unused)]) -> Vec<String>;

    /// How many errors and other remarks there are.
    fn count(&self, errors: usize, remarks: usize) -> String;
}
