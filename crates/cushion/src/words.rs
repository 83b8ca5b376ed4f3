//! Words of a layout's author, in one language or in several.

use std::collections::BTreeMap;

/// What an author calls something: in English, and perhaps in other languages.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Words {
    english: String,
    others: BTreeMap<String, String>,
}

impl Words {
    /// The tag of the language that must be there.
    pub const ENGLISH: &str = "en";

    /// Words in English alone.
    #[must_use]
    pub fn english(words: impl Into<String>) -> Self {
        Self { english: words.into(), others: BTreeMap::new() }
    }

    /// The same with words in another language; `tag` is such as [`Self::is_tag`] takes.
    #[must_use]
    pub fn with(mut self, tag: &str, words: impl Into<String>) -> Self {
        match tag {
            Self::ENGLISH => self.english = words.into(),
            _ => drop(self.others.insert(tag.to_owned(), words.into())),
        }
        self
    }

    /// Whether a text has the form of a language's tag by BCP 47 (RFC 5646, section 2.1), as far
    /// as a layout needs it: two or three lower-case letters, then perhaps parts of letters and
    /// digits after hyphens, such as `es` or `pt-BR`.
    #[must_use]
    pub fn is_tag(text: &str) -> bool {
        let mut parts = text.split('-');
        let language = parts.next().unwrap_or_default();
        let lower = |part: &str| part.bytes().all(|byte| byte.is_ascii_lowercase());
        (2..=3).contains(&language.len())
            && lower(language)
            && parts.all(|part| {
                (2..=8).contains(&part.len()) && part.bytes().all(|own| own.is_ascii_alphanumeric())
            })
    }

    /// The words in a language: those of its tag, else of its first part, else in English.
    #[must_use]
    pub fn in_language(&self, tag: &str) -> &str {
        let first = tag.split('-').next().unwrap_or(tag);
        let found = self.others.get(tag).or_else(|| self.others.get(first));
        found.unwrap_or(&self.english)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_language_that_is_not_there_is_english() {
        let words = Words::english("under the thigh").with("es", "bajo el muslo");
        for (tag, expected) in [
            ("en", "under the thigh"),
            ("en-GB", "under the thigh"),
            ("es", "bajo el muslo"),
            ("es-MX", "bajo el muslo"),
            ("est", "under the thigh"),
            ("de", "under the thigh"),
        ] {
            assert_eq!(words.in_language(tag), expected, "{tag}");
        }
        assert_eq!(words.with("es-MX", "abajo").in_language("es-MX"), "abajo");
    }

    #[test]
    fn only_tags_are_tags() {
        for good in ["en", "es", "gsw", "pt-BR", "zh-Hant", "de-1996"] {
            assert!(Words::is_tag(good), "{good}");
        }
        for bad in ["", "e", "EN", "English", "es_MX", "es-", "es-!", "e1"] {
            assert!(!Words::is_tag(bad), "{bad}");
        }
    }
}
