//! Parts of sentences: numbers with their nouns, sides, signs.

use cushion::Side;

/// A number of cells with its noun.
pub(super) fn cells(count: u32) -> String {
    if count == 1 { "1 cell".to_owned() } else { format!("{count} cells") }
}

/// The client's side, within a sentence.
pub(super) fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "left",
        Side::Right => "right",
    }
}

/// The client's side, where it must not be overlooked.
pub(super) fn loud_side(side: Side) -> &'static str {
    match side {
        Side::Left => "LEFT",
        Side::Right => "RIGHT",
    }
}

/// The same words with a capital letter at their head, whatever letter it is.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A number with its noun, whose plural has an s.
pub(super) fn counted(count: usize, noun: &str) -> String {
    if count == 1 { format!("1 {noun}") } else { format!("{count} {noun}s") }
}
