//! Parts of sentences: numbers with their nouns, sides, signs.

use cushion::{Length, Mass, Side};

use crate::rounding::rounded_inches;

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

/// A length in whole millimetres.
pub(super) fn mm(length: Length) -> String {
    format!("{:.0} mm", length.to_mm().round() + 0.0)
}

/// Inches to a tenth, without a nought after the point; to a hundredth where a tenth would be
/// nothing.
pub(super) fn inches(length: Length) -> String {
    rounded_inches(length).to_string()
}

/// A share in whole per cent, without its sign.
pub(super) fn percent(share: f64) -> String {
    format!("{:.0} %", (share * 100.0).abs().round())
}

/// A body weight.
pub(super) fn kg(mass: Mass) -> String {
    let tenths = (mass.to_kg() * 10.0).round() / 10.0;
    format!("{tenths} kg")
}

/// The same in pounds.
pub(super) fn lb(mass: Mass) -> String {
    let tenths = (mass.to_pounds() * 10.0).round() / 10.0;
    format!("{tenths} lb")
}

/// Words one after the other: "a", "a and b", "a, b and c".
pub(super) fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

/// A whole number with its sign.
pub(super) fn signed(number: f64) -> String {
    let whole = number.round();
    if whole < 0.0 { format!("\u{2212}{:.0}", -whole) } else { format!("+{:.0}", whole.abs()) }
}

/// A number with its noun, whose plural has an s.
pub(super) fn counted(count: usize, noun: &str) -> String {
    if count == 1 { format!("1 {noun}") } else { format!("{count} {noun}s") }
}
