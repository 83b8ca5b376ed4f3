//! The kinds of file that are ours.

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
