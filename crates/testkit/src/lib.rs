//! For tests only: comparisons that fail on NaN, built-in values by name, recorded counts, shelves in
//! memory.

mod laws;
mod records;
mod shelves;

pub use crate::laws::assert_keeps_the_promises;
pub use crate::records::{identity, recorded};
pub use crate::shelves::{Ended, Fault, FaultyShelf, MemoryShelf};

use cushion::{Cell, Layout, Pattern, Size, arrange};

/// Fails unless the two are within `tolerance` of each other; NaN is never near.
///
/// # Panics
///
/// Panics where they are not.
#[track_caller]
pub fn assert_near(actual: f64, expected: f64, tolerance: f64) {
    assert!(
        (actual - expected).abs() <= tolerance,
        "{actual} is not within {tolerance} of {expected}"
    );
}

/// Returns a built-in layout.
///
/// # Panics
///
/// Panics where none is called so.
#[must_use]
#[track_caller]
pub fn layout(name: &str) -> Layout {
    layout_from(files::built_in_layout(name).expect("a test names built-in layouts"))
}

/// Returns the layout that a test writes.
///
/// # Panics
///
/// Panics where the text is wrong.
#[must_use]
#[track_caller]
pub fn layout_from(text: &str) -> Layout {
    files::read_layout(text).value.expect("a test writes right layouts")
}

/// Returns a built-in layout at a size.
///
/// # Panics
///
/// Panics where there is no such layout or size.
#[must_use]
#[track_caller]
pub fn pattern(name: &str, size: &str) -> Pattern {
    let size: Size = size.parse().expect("a test names sizes");
    arrange(&layout(name), size).expect("built-in layouts can be drawn at any sensible size")
}

/// Returns the built-in cell.
#[must_use]
pub fn cell() -> Cell {
    files::BuiltIn::cell()
}
