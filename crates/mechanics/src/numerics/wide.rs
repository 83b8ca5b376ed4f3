//! Loops over many numbers, with the widest instructions that a processor has.

use fearless_simd::{Level, dispatch};

/// Does work with the widest instructions that this processor has, beyond those that all of its kind have.
/// The closure and what it calls must be marked as always inlined: what is not takes no part.
///
/// The numbers are the same to the last bit on every machine: each is worked with the same operations in
/// the same order, only more of them at once, and no two operations become one.
#[inline]
pub(crate) fn wide<T>(work: impl FnOnce() -> T) -> T {
    dispatch!(Level::new(), _ => work())
}
