//! Digests, by which a text or a set of parameters is known again.

use case::Digest;
use sha2::{Digest as _, Sha256};

/// Returns the digest of a text; line ends do not count.
#[must_use]
pub fn digest(text: &str) -> Digest {
    let unix = text.replace("\r\n", "\n");
    let sum = Sha256::digest(unix.as_bytes());
    let digits: String = sum.iter().take(8).map(|byte| format!("{byte:02x}")).collect();
    Digest::new(&digits).expect("eight bytes are sixteen digits")
}

/// Returns the digest of named numbers, in the order given.
#[must_use]
pub fn digest_of_parameters<'a>(parameters: impl IntoIterator<Item = (&'a str, f64)>) -> Digest {
    let lines: String =
        parameters.into_iter().map(|(name, value)| format!("{name} = {value:e}\n")).collect();
    digest(&lines)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_digest_is_the_head_of_a_sha_256() {
        // FIPS 180-2, appendix B.1: SHA-256 of "abc" begins ba7816bf 8f01cfea.
        assert_eq!(digest("abc").as_str(), "ba7816bf8f01cfea");
    }

    #[test]
    fn line_ends_do_not_count() {
        assert_eq!(digest("a\r\nb"), digest("a\nb"));
    }
}
