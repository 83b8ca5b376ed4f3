//! Places in a client's file of what only a plan can find wrong.

use std::ops::Range;

use cushion::Name;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// Returns where `text` names the compartment of the last change that is wanted for it.
#[must_use]
pub fn place_of_change(text: &str, compartment: &Name) -> Option<Range<usize>> {
    let (root, _) = DeTable::parse_recoverable(text);
    let changes = root.get_ref().get("change")?.get_ref().as_array()?;
    let mut named = changes.iter().filter_map(|change| {
        let name = change.get_ref().as_table()?.get("compartment")?;
        (name.get_ref().as_str()? == compartment.as_str()).then(|| name.span())
    });
    named.next_back()
}

/// Returns where `text` has the value of a key within a table.
#[must_use]
pub fn place_of_value(text: &str, table: &str, key: &str) -> Option<Range<usize>> {
    let (root, _) = DeTable::parse_recoverable(text);
    let value: &Spanned<DeValue<'_>> = root.get_ref().get(table)?.get_ref().as_table()?.get(key)?;
    Some(value.span())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_last_change_of_a_compartment_is_found() {
        let text = "[[change]]\ncompartment = \"a\"\n[[change]]\ncompartment = \"a\"\n";
        let place = |name: &str| place_of_change(text, &Name::new(name).unwrap());
        assert_eq!(place("a"), Some(54..57));
        assert_eq!(place("b"), None);
    }

    #[test]
    fn a_value_is_found() {
        let text = "[cushion]\nlayout = \"a\"\n";
        assert_eq!(place_of_value(text, "cushion", "layout"), Some(19..22));
        assert_eq!(place_of_value(text, "cushion", "size"), None);
    }
}
