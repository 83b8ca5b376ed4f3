//! The report on counting by weight.

use case::Date;
use schemars::JsonSchema;
use serde::Serialize;

use super::{json, rounded};

/// What is reported of counting by weight.
pub struct WeighReport<'a> {
    /// The client's code; none of a stock fill.
    pub client: Option<&'a str>,
    /// The layout and the size of a stock fill.
    pub stock: Option<(&'a str, String)>,
    /// The day on which the counts were recorded; none where they were not.
    pub recorded_on: Option<Date>,
    /// Cells of the batch that was counted by hand.
    pub batch: u32,
    /// What one of them weighs, g.
    pub grams_of_one: f64,
    /// The compartments.
    pub compartments: Vec<WeighedCompartment<'a>>,
}

/// One compartment's cells by weight.
#[derive(Serialize, JsonSchema)]
pub struct WeighedCompartment<'a> {
    /// The id.
    pub id: &'a str,
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells in it.
    pub cells: u32,
    /// What they weigh, without bag and vessel.
    pub grams: f64,
    /// How many cells a count by those grams may be off.
    pub plus_minus_cells: u32,
}

/// Grams of each compartment.
#[derive(Serialize, JsonSchema)]
pub(super) struct WeighBody<'a> {
    /// The client's code; null of a stock fill.
    client: Option<&'a str>,
    /// The layout of a stock fill; null of a client's.
    layout: Option<&'a str>,
    /// The size of a stock fill, width x depth in mm; null of a client's.
    size_mm: Option<String>,
    /// The day on which the counts were recorded; null where they are of a plan that was not.
    recorded_on: Option<String>,
    /// Cells of the batch that was counted by hand.
    batch_cells: u32,
    /// What one of them weighs.
    cell_grams: f64,
    /// The compartments.
    compartments: Vec<WeighedCompartment<'a>>,
}

/// Returns the report on counting by weight.
#[must_use]
pub fn weigh(program: &str, own: WeighReport<'_>) -> String {
    let compartments = own.compartments.into_iter();
    let (layout, size_mm) = own.stock.unzip();
    let body = WeighBody {
        client: own.client,
        layout,
        size_mm,
        recorded_on: own.recorded_on.map(|on| on.to_string()),
        batch_cells: own.batch,
        cell_grams: rounded(own.grams_of_one),
        compartments: compartments
            .map(|it| WeighedCompartment { grams: rounded(it.grams), ..it })
            .collect(),
    };
    json("weigh", program, Vec::new(), body)
}
