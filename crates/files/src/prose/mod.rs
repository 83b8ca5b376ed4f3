//! Every English sentence about files: how questions are asked and how findings are said.
//!
//! Each is an exhaustive function of a value, so that another language is another module, and the
//! compiler lists what it lacks.

mod edits;
mod findings;
mod questions;

pub use self::edits::say_edit;
pub(crate) use self::findings::unit_words;
pub use self::findings::{Said, say};
pub(crate) use self::questions::{CLIENT_HEAD, OR, RECORD_HEAD};
pub use self::questions::{
    answer, comment, file_title, group_comment, label, unused, unused_answers,
};
