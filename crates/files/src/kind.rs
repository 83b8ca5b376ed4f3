//! The kinds of file that are ours.

use case::question::{Group, Question};
use toml::de::DeTable;

/// A kind of file, as its key `kind` says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A layout.
    Layout,
    /// A cell.
    Cell,
    /// A client.
    Client,
}

impl Kind {
    /// All kinds.
    pub const ALL: [Self; 3] = [Self::Layout, Self::Cell, Self::Client];

    /// The word in the file.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Layout => "layout",
            Self::Cell => "cell",
            Self::Client => "client",
        }
    }

    /// The questions of such a file.
    #[must_use]
    pub fn group(self) -> Group {
        match self {
            Self::Layout => Group::Layout,
            Self::Cell => Group::Cell,
            Self::Client => Group::Client,
        }
    }

    /// The two keys with which it begins.
    pub(crate) fn header(self) -> [Question; 2] {
        match self {
            Self::Layout => [Question::LayoutFormat, Question::LayoutKind],
            Self::Cell => [Question::CellFormat, Question::CellKind],
            Self::Client => [Question::Format, Question::FileKind],
        }
    }
}

/// Returns the kind that a text says it is, as far as it can be read.
#[must_use]
pub fn kind_of(text: &str) -> Option<Kind> {
    if text.len() > crate::MOST_BYTES {
        return None;
    }
    let (root, _) = DeTable::parse_recoverable(text);
    let written = root.get_ref().get("kind")?.get_ref().as_str()?.to_owned();
    Kind::ALL.into_iter().find(|kind| kind.words() == written)
}
