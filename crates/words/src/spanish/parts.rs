//! Parts of sentences: numbers with their nouns, sides, signs.

use cushion::{Length, Mass, Side};

use crate::rounding::rounded_inches;

/// A number of cells with its noun.
pub(super) fn cells(count: u32) -> String {
    if count == 1 { "1 celda".to_owned() } else { format!("{count} celdas") }
}

/// The client's side, beside a noun that is masculine, as bones, feet and fronts are.
pub(super) fn side(side: Side) -> &'static str {
    match side {
        Side::Left => "izquierdo",
        Side::Right => "derecho",
    }
}

/// The client's side as a noun, or beside one that is feminine.
pub(super) fn hand(side: Side) -> &'static str {
    match side {
        Side::Left => "izquierda",
        Side::Right => "derecha",
    }
}

/// As [`side`], where it must not be overlooked.
pub(super) fn loud_side(side: Side) -> &'static str {
    match side {
        Side::Left => "IZQUIERDO",
        Side::Right => "DERECHO",
    }
}

/// As [`hand`], where it must not be overlooked.
pub(super) fn loud_hand(side: Side) -> &'static str {
    match side {
        Side::Left => "IZQUIERDA",
        Side::Right => "DERECHA",
    }
}

/// The same words with a capital letter at their head, whatever letter it is.
pub(super) fn capital(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A number with so many decimals, after a comma.
pub(super) fn decimal(number: f64, decimals: usize) -> String {
    format!("{number:.decimals$}").replace('.', ",")
}

/// A number with as many decimals as it has, after a comma.
pub(super) fn number(number: f64) -> String {
    number.to_string().replace('.', ",")
}

/// A length in whole millimetres.
pub(super) fn mm(length: Length) -> String {
    format!("{:.0}\u{a0}mm", length.to_mm().round() + 0.0)
}

/// Inches to a tenth, without a nought after the comma; to a hundredth where a tenth would be
/// nothing.
pub(super) fn inches(length: Length) -> String {
    number(rounded_inches(length))
}

/// A share in whole per cent, without its sign.
pub(super) fn percent(share: f64) -> String {
    format!("{:.0}\u{a0}%", (share * 100.0).abs().round())
}

/// A body weight.
pub(super) fn kg(mass: Mass) -> String {
    format!("{}\u{a0}kg", number((mass.to_kg() * 10.0).round() / 10.0))
}

/// The same in pounds.
pub(super) fn lb(mass: Mass) -> String {
    format!("{}\u{a0}lb", number((mass.to_pounds() * 10.0).round() / 10.0))
}

/// Words one after the other: "a", "a y b", "a, b y c"; "e" before the sound of an i.
pub(super) fn list(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => {
            let and = if last.to_lowercase().starts_with('i') { "e" } else { "y" };
            format!("{} {and} {last}", most.join(", "))
        }
    }
}

/// A whole number with its sign.
pub(super) fn signed(number: f64) -> String {
    let whole = number.round();
    if whole < 0.0 { format!("\u{2212}{:.0}", -whole) } else { format!("+{:.0}", whole.abs()) }
}

/// A number with its noun, for one and for others.
pub(super) fn counted(count: usize, [one, many]: [&str; 2]) -> String {
    if count == 1 { format!("1 {one}") } else { format!("{count} {many}") }
}

/// Compartments, for one and for others.
pub(super) const COMPARTMENTS: [&str; 2] = ["compartimento", "compartimentos"];
/// Spare cells, for one and for others.
pub(super) const SPARE_CELLS: [&str; 2] = ["celda de repuesto", "celdas de repuesto"];
