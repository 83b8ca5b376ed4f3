//! Names: the words by which files call points, seams, compartments, layouts and cells.

use std::borrow::Borrow;
use std::fmt;

/// A name: lower-case letters, digits and hyphens, beginning with a letter, at most 40 long.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Name(String);

impl Name {
    /// The rule in words, for messages.
    pub const RULE: &str =
        "lower-case letters, digits and hyphens, beginning with a letter, at most 40";

    /// Returns `None` where `text` breaks the rule.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let begins = text.as_bytes().first().is_some_and(u8::is_ascii_lowercase);
        let goes_on = text
            .bytes()
            .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-');
        (begins && goes_on && text.len() <= 40).then(|| Self(text.to_owned()))
    }

    /// Returns the name with a hyphen and a word added; `word` is lower-case letters.
    pub(crate) fn joined(base: &Self, word: &str) -> Self {
        Self(format!("{base}-{word}"))
    }

    /// The name as written.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Name {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl Borrow<str> for Name {
    fn borrow(&self) -> &str {
        &self.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_plain_words_are_names() {
        for good in ["a", "rear-left", "row2"] {
            assert!(Name::new(good).is_some(), "{good}");
        }
        for bad in ["", "-a", "2a", "Rear", "rear left", "é", &"a".repeat(41)] {
            assert!(Name::new(bad).is_none(), "{bad}");
        }
    }
}
