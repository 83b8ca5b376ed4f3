//! The stock fill: the program's one call into mechanics.

use case::Digest;
use cushion::{Cell, CompartmentIx, Layout, Length, Pattern, StockFill};
use support::{Parameters, UnloadedCushion};

use crate::failure::Failure;
use crate::resolve::Sourced;

/// The stock fill of a pattern, and what is needed to ask for other fills.
pub(crate) struct Stock(UnloadedCushion);

impl Stock {
    /// Finds the stock fill of a layout's pattern.
    ///
    /// # Errors
    ///
    /// Fails where the layout leaves no room for cells, or asks for no crown.
    pub(crate) fn of(
        layout: &Sourced<Layout>,
        pattern: &Pattern,
        cell: &Cell,
    ) -> Result<Self, Failure> {
        let unloaded = UnloadedCushion::new(pattern, cell, &Parameters::default());
        unloaded.map(Self).map_err(|error| {
            let (shown, size) = (layout.file.shown(), pattern.size());
            Failure::file(format!("{shown} has no stock fill in {size}: {error}"))
        })
    }

    /// The fill.
    pub(crate) fn fill(&self) -> &StockFill {
        self.0.stock()
    }

    /// Finds the count at which a compartment's unloaded crown is so high.
    pub(crate) fn count_at_crown(&self, ix: CompartmentIx, crown: Length) -> Option<u32> {
        // Whole cells: the nearest count, which is never negative.
        self.0.count_at_crown(ix, crown).map(|count| count.round().max(0.0) as u32)
    }
}

/// By which the model's parameters are known again.
pub(crate) fn parameters_digest() -> Digest {
    let all = Parameters::default().all();
    files::digest_of_parameters(all.iter().filter_map(|facts| Some((facts.name, facts.value?))))
}
