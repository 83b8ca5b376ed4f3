//! Numbers that look random and are the same everywhere.

/// Returns a number that looks random for each number: the last step of the generator known as
/// SplitMix64 (Steele, Lea and Flood, OOPSLA 2014; constants from memory).
#[must_use]
pub fn mixed(number: u64) -> u64 {
    let mut z = number;
    z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    z ^ (z >> 31)
}
