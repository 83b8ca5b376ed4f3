//! The kinds of file that are ours.

use crate::question::Group;

/// A kind of file, as its key `kind` says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileKind {
    /// A layout.
    Layout,
    /// A cell.
    Cell,
    /// A client.
    Client,
}

impl FileKind {
    /// All kinds.
    pub const ALL: [Self; 3] = [Self::Layout, Self::Cell, Self::Client];

    /// The word in the file.
    #[must_use]
    pub fn id(self) -> &'static str {
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
}
