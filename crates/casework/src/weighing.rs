//! Counting by weight: the grams of what is in each compartment, from a batch counted that day.

use cushion::{Name, Pattern, StockFill};
use fitting::counting::Batch;

use crate::open_case::{CountsNow, OpenCase};

/// One compartment's cells by weight.
#[derive(Clone, Debug, PartialEq)]
pub struct WeighedCompartment {
    /// The number sewn at its opening.
    pub number: u8,
    /// The compartment.
    pub id: Name,
    /// Cells in it.
    pub cells: u32,
    /// What they weigh, without bag and vessel.
    pub grams: f64,
    /// How many cells a count by those grams may be off.
    pub plus_minus: u32,
}

impl OpenCase {
    /// Returns the grams of counts, in the pattern's order.
    #[must_use]
    pub fn weigh(&self, now: &CountsNow, batch: &Batch) -> Vec<WeighedCompartment> {
        weighed(&self.pattern, now.counts.iter().copied(), batch)
    }
}

/// Returns the grams of a stock fill, in the pattern's order.
#[must_use]
pub fn weigh_stock(pattern: &Pattern, fill: &StockFill, batch: &Batch) -> Vec<WeighedCompartment> {
    weighed(pattern, fill.compartments.iter().map(|own| own.cells.stock), batch)
}

fn weighed(
    pattern: &Pattern,
    counts: impl Iterator<Item = u32>,
    batch: &Batch,
) -> Vec<WeighedCompartment> {
    let one = |(compartment, cells): (&cushion::Compartment, u32)| {
        let grams = batch.grams_of(cells);
        WeighedCompartment {
            number: compartment.number,
            id: compartment.id.clone(),
            cells,
            grams,
            plus_minus: batch.count(grams).plus_minus,
        }
    };
    pattern.compartments().iter().zip(counts).map(one).collect()
}
