//! Fill values: how many cells, and what they make of the unloaded cushion.

use crate::{CompartmentIx, Length, Pressure, Volume};

/// How few and how many cells suit a compartment, around the count as supplied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct CountRange {
    /// The cells just reach the height of the walls; with fewer, the top is slack.
    pub low: u32,
    /// As supplied.
    pub stock: u32,
    /// The top rises as far as the small-slope model is good for.
    pub high: u32,
}

/// One compartment of the unloaded, stock-filled cushion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompartmentFill {
    /// Rise of the top above the walls, at its highest.
    pub crown: Length,
    /// Space under the top sheet.
    pub volume: Volume,
    /// Share of that space that unpressed cells fill.
    pub packing: f64,
    /// How many cells.
    pub cells: CountRange,
}

/// The stock fill of a pattern: one unloaded fill pressure in all compartments.
#[derive(Clone, Debug, PartialEq)]
pub struct StockFill {
    /// The fill pressure, unloaded.
    pub pressure: Pressure,
    /// In the order of the compartments' numbers.
    pub compartments: Vec<CompartmentFill>,
}

impl StockFill {
    /// Returns the number of cells in the whole cushion.
    #[must_use]
    pub fn total(&self) -> u32 {
        self.compartments.iter().map(|fill| fill.cells.stock).sum()
    }
}

impl std::ops::Index<CompartmentIx> for StockFill {
    type Output = CompartmentFill;
    fn index(&self, ix: CompartmentIx) -> &CompartmentFill {
        &self.compartments[ix.index()]
    }
}
