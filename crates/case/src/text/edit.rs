//! Why a file is not edited.

use super::Remark;
use crate::question::{Group, Question};

/// Why a file is not edited.
#[derive(Clone, Debug, PartialEq)]
pub enum EditError {
    /// It cannot be read where these remarks say; nothing in it is sure then.
    Unreadable(Vec<Remark>),
    /// There is no such key.
    NoSuchKey {
        /// As written.
        key: String,
        /// What is meant, perhaps.
        near: Option<String>,
    },
    /// A list has no such entry.
    NoSuchEntry {
        /// The list.
        list: Group,
        /// How many entries it has.
        there: usize,
    },
    /// The key has an answer for each side, and no side is named.
    EachSide(Question),
    /// A table is named, and not one of its keys.
    Table(Group),
    /// The key is written in a form that only a person should change.
    Form(String),
    /// The value is wrong, or makes another wrong; the text as it would be, and what is wrong.
    Wrong {
        /// The text as it would be.
        text: String,
        /// The first error that was not there before.
        remark: Box<Remark>,
    },
}
