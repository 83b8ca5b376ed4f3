//! Least width of a compartment, by opening with a disc.

use crate::{CompartmentIx, Length, Pattern};

/// Returns the width of the narrowest place of a compartment.
#[must_use]
pub fn least_width(_pattern: &Pattern, _compartment: CompartmentIx) -> Length {
    unimplemented!()
}
