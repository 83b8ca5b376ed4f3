//! The stock fill: the program's one call into mechanics.

use case::Digest;
use cushion::{Cell, Layout, Pattern, StockFill};
use mechanics::{Parameters, StockError, UnloadedCushion};

use crate::failure::Failure;
use crate::resolve::Sourced;

/// The stock fill of a pattern.
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
        unloaded.map(Self).map_err(|error| none(layout, pattern, &error))
    }

    /// The fill.
    pub(crate) fn fill(&self) -> &StockFill {
        self.0.stock()
    }
}

/// Why a layout has no stock fill.
pub(crate) fn none(layout: &Sourced<Layout>, pattern: &Pattern, error: &StockError) -> Failure {
    let (shown, size) = (layout.file.shown(), pattern.size());
    Failure::file(format!("{shown} has no stock fill in {size}: {error}"))
}

/// By which the model's parameters are known again.
pub(crate) fn parameters_digest() -> Digest {
    let all = Parameters::default().all();
    files::digest_of_parameters(all.iter().filter_map(|facts| Some((facts.name, facts.value?))))
}
