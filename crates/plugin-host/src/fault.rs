//! What foreign code said of its faults, so that a terminal can show it.

use case::PluginFaultKind;

/// The longest sentence of a plugin that is shown, in characters.
const LONGEST: usize = 300;

/// The same fault, with what foreign code said cut to one line that a terminal can show.
pub(crate) fn tidied(fault: PluginFaultKind) -> PluginFaultKind {
    use PluginFaultKind::{Failed, NotALibrary, Refused};
    let tidy = |said: Option<String>| said.and_then(|said| one_line(&said));
    match fault {
        NotALibrary(said) => NotALibrary(tidy(said)),
        Failed(said) => Failed(tidy(said)),
        Refused(said) => Refused(tidy(said)),
        other => other,
    }
}

/// What a plugin said, without line ends and other control characters, and not without end; none
/// where that is nothing.
fn one_line(said: &str) -> Option<String> {
    let plain = |c: char| if c.is_control() { ' ' } else { c };
    let said: String = said.chars().take(4 * LONGEST).map(plain).collect();
    let said = said.split_whitespace().collect::<Vec<_>>().join(" ");
    match said.char_indices().nth(LONGEST) {
        Some((end, _)) => Some(format!("{}...", &said[..end])),
        None => (!said.is_empty()).then_some(said),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_plugin_says_is_one_line_of_plain_text() {
        assert_eq!(one_line("no\troom\r\n\x1b[31mhere ").as_deref(), Some("no room [31mhere"));
        assert_eq!(one_line("\n"), None);
        assert_eq!(one_line(&"é".repeat(2000)), Some("é".repeat(300) + "..."));
    }
}
