//! What a language must be able to say of questions, for whoever writes files.

use super::{Group, Question, Unused};
use crate::FileKind;

/// How questions are called and explained in a language.
pub trait QuestionWords {
    /// How a question is called on a form and in a sentence, without an article.
    fn label(&self, question: Question) -> &'static str;

    /// What to write, for the line of a starter file; empty where the key says it.
    fn comment(&self, question: Question) -> &'static str;

    /// What stands above or beside the heading of a group of the client's file; empty where there
    /// is nothing to say.
    fn group_comment(&self, group: Group) -> &'static str;

    /// Why an answer to a question is not used.
    fn unused(&self, why: Unused) -> &'static str;

    /// How a kind of file is called.
    fn file_title(&self, kind: FileKind) -> &'static str;

    /// The first lines of a client's file.
    fn client_head(&self) -> &'static str;

    /// The lines above the record of a client's file.
    fn record_head(&self) -> &'static str;

    /// The word before other words that could be written.
    fn or(&self) -> &'static str;
}
