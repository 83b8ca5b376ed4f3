//! Counting by weight: the grams of what is in each compartment, from a batch counted that day.

use cushion::Name;
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
        let weighed = |(compartment, cells): (&cushion::Compartment, &u32)| {
            let grams = batch.grams_of(*cells);
            WeighedCompartment {
                number: compartment.number,
                id: compartment.id.clone(),
                cells: *cells,
                grams,
                plus_minus: batch.count(grams).plus_minus,
            }
        };
        self.pattern.compartments().iter().zip(&now.counts).map(weighed).collect()
    }
}
