//! Words by lot, which nobody can guess.

/// A word of 32 hexadecimal digits from the system's generator; none where that fails, and then
/// nothing may be served.
pub(crate) fn word() -> Option<String> {
    let mut bytes = [0_u8; 16];
    getrandom::fill(&mut bytes).ok()?;
    Some(bytes.iter().map(|byte| format!("{byte:02x}")).collect())
}

/// Whether a text is written as these words are.
pub(crate) fn is_word(text: &str) -> bool {
    text.len() == 32 && text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'))
}

/// Whether two words are the same, in a time that does not tell where they differ.
pub(crate) fn same(one: &str, other: &str) -> bool {
    let differs = one.bytes().zip(other.bytes()).fold(0, |all, (a, b)| all | (a ^ b));
    one.len() == other.len() && differs == 0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_differ_and_are_compared_whole() {
        let (one, other) = (word().unwrap(), word().unwrap());
        assert_ne!(one, other);
        assert!(is_word(&one) && is_word(&other));
        assert!(!is_word(&one[1..]) && !is_word(&one.replace(&one[..1], "x")) && !is_word(""));
        assert!(same(&one, &one.clone()));
        assert!(!same(&one, &one[..31]));
        assert!(!same("", &one));
    }
}
