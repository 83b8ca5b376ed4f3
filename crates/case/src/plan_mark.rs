//! By what a paper and a record find each other again: the number of a plan, and a check word.

use crate::{Client, Digest, Entry};

/// The number of a plan, and a word of its counts.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PlanMark {
    /// Which plan of the record, from 1.
    pub number: usize,
    /// Four letters and digits that another cushion or other counts hardly share: one in a million.
    pub word: String,
}

/// Letters and digits of check words: no I and O, no 0 and 1, which are taken for each other.
const SIGNS: &[u8; 32] = b"ABCDEFGHJKLMNPQRSTUVWXYZ23456789";
/// How many of them a check word has.
const LONG: u32 = 4;

/// Returns the check word of a digest, by its first twenty bits.
///
/// # Panics
///
/// Never: a digest has sixteen hexadecimal digits.
#[must_use]
pub fn check_word(digest: &Digest) -> String {
    let bits = u64::from_str_radix(digest.as_str(), 16).expect("sixteen hexadecimal digits");
    let sign = |at: u32| char::from(SIGNS[(bits >> (59 - 5 * at) & 31) as usize]);
    (0..LONG).map(sign).collect()
}

/// Whether a text could be a check word.
#[must_use]
pub fn is_check_word(text: &str) -> bool {
    text.len() == LONG as usize && text.bytes().all(|sign| SIGNS.contains(&sign))
}

impl Client {
    /// Returns how many plans the record has, with those that were withdrawn: the number of the latest.
    #[must_use]
    pub fn plan_number(&self) -> usize {
        self.record.iter().filter(|entry| matches!(entry, Entry::Plan(_))).count()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_the_first_twenty_bits_of_a_digest() {
        let word = |digits: &str| check_word(&Digest::new(digits).expect("a digest"));
        assert_eq!(word("0000000000000000"), "AAAA");
        assert_eq!(word("ffffffffffffffff"), "9999");
        // 00001 00010 00011 00100, and what comes after does not count.
        assert_eq!(word("08864fffffffffff"), "BCDE");
    }
}
