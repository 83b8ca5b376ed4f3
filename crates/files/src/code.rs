//! Codes that look like names, and names that are meant.

use cushion::Name;

/// Letters in a row from which a word may be a name.
const LETTERS_OF_A_NAME: usize = 3;

/// Whether a client's code looks like a name, or has a day of birth in it.
///
/// Common practice, no source: a word of three letters or more with a vowel in it is taken for a
/// name where small letters follow a capital, or where a year of birth stands behind it; and
/// eight digits for a day of birth where they begin with a year and go on with a month.
pub(crate) fn looks_like_a_name(code: &str) -> bool {
    let words = code.split(|c: char| !c.is_ascii_alphabetic());
    let is_word = |word: &str| {
        word.len() >= LETTERS_OF_A_NAME
            && word.to_lowercase().contains(['a', 'e', 'i', 'o', 'u', 'y'])
    };
    let mut words = words.filter(|word| is_word(word)).peekable();
    let has_word = words.peek().is_some();
    let mixed = words.any(|word| {
        word.contains(|c: char| c.is_ascii_uppercase())
            && word.contains(|c: char| c.is_ascii_lowercase())
    });
    let digits = || code.split(|c: char| !c.is_ascii_digit()).filter(|run| !run.is_empty());
    let year = |run: &str| matches!(run.get(..2), Some("19" | "20")) && run.len() >= 4;
    let number = |text: Option<&str>| text.and_then(|text| text.parse::<u32>().ok());
    let day = |run: &str| {
        run.len() == 8
            && year(run)
            && matches!(number(run.get(4..6)), Some(1..=12))
            && matches!(number(run.get(6..8)), Some(1..=31))
    };
    mixed || digits().any(day) || has_word && digits().any(|run| run.len() == 4 && year(run))
}

/// The name that is meant by words such as `Pelvis left`.
pub(crate) fn meant(written: &str) -> Option<String> {
    let plain = written.trim().to_lowercase().replace([' ', '_'], "-");
    Name::new(&plain).map(|name| name.as_str().to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn names_and_days_of_birth_are_seen() {
        for code in ["Maria1958", "JohnSmith1980", "MARIA-1958", "maria1958", "K-19580312"] {
            assert!(looks_like_a_name(code), "{code}");
        }
        for code in ["K-17", "DEMO-1", "X-001", "CHILD-2", "A1", "KX-1958", "2026-14", "client-7"] {
            assert!(!looks_like_a_name(code), "{code}");
        }
    }
}
