//! Which kind of file of ours a text is.

use case::FileKind;
use case::question::Question;
use toml::de::DeTable;

/// The two keys with which it begins.
pub(crate) fn header_of(kind: FileKind) -> [Question; 2] {
    match kind {
        FileKind::Layout => [Question::LayoutFormat, Question::LayoutKind],
        FileKind::Cell => [Question::CellFormat, Question::CellKind],
        FileKind::Client => [Question::Format, Question::FileKind],
    }
}

/// Returns the kind that a text says it is, as far as it can be read.
#[must_use]
pub fn kind_of(text: &str) -> Option<FileKind> {
    if text.len() > crate::MOST_BYTES {
        return None;
    }
    let (root, _) = DeTable::parse_recoverable(text);
    let written = root.get_ref().get("kind")?.get_ref().as_str()?.to_owned();
    FileKind::ALL.into_iter().find(|kind| kind.id() == written)
}
