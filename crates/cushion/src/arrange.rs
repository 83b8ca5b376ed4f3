//! From a layout and a size to a pattern: draws the seams and finds the faces they cut out.

use crate::{Fault, Layout, Pattern, Size};

/// Draws `layout` at `size`.
///
/// # Errors
///
/// Returns every fault found, in the order in which the layout is written.
pub fn arrange(_layout: &Layout, _size: Size) -> Result<Pattern, Vec<Fault>> {
    unimplemented!()
}
