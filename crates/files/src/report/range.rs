//! The report on every made size of a layout.

use case::Digest;
use cushion::{Cell, Jump, RangeRow};
use schemars::JsonSchema;
use serde::Serialize;

use super::check::{RemarkReport, SayFinding, remark_reports};
use super::pattern::{CellsReport, SeamReport};
use super::{json, rounded};
use crate::Remark;

/// What is reported of a range.
pub struct RangeReport<'a> {
    /// The layout.
    pub layout: &'a str,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// The digest of its text.
    pub digest: &'a Digest,
    /// What is counted.
    pub cell: &'a Cell,
    /// The sizes.
    pub rows: &'a [RangeRow],
    /// Counts that do not go with their neighbours, each with how it is said.
    pub jumps: Vec<(&'a Jump, String)>,
}

/// Every made size of a layout.
#[derive(Serialize, JsonSchema)]
pub(super) struct RangeBody<'a> {
    layout: &'a str,
    revision: Option<u32>,
    layout_digest: &'a str,
    cell: &'a str,
    /// In the order of the layout.
    sizes: Vec<SizeBody<'a>>,
    /// Counts that differ by more than a quarter from what they would be, had they grown with the
    /// cushion from the next smaller size.
    jumps: Vec<JumpBody<'a>>,
    /// What is to be said about the layout's text.
    remarks: Vec<RemarkReport>,
}

/// One made size.
#[derive(Serialize, JsonSchema)]
struct SizeBody<'a> {
    /// Width x depth in mm.
    size_mm: String,
    max_user_weight_kg: f64,
    unloaded_fill_kpa: f64,
    /// Cells in the whole cushion.
    total: CellsReport,
    volume_ml: f64,
    /// Mass of all cells as supplied.
    cells_g: f64,
    compartments: Vec<RangeCompartment<'a>>,
    seams: Vec<SeamReport>,
    seams_mm: f64,
}

/// One compartment at one size.
#[derive(Serialize, JsonSchema)]
struct RangeCompartment<'a> {
    id: &'a str,
    number: u8,
    volume_ml: f64,
    cells: CellsReport,
}

/// A count that jumps.
#[derive(Serialize, JsonSchema)]
struct JumpBody<'a> {
    /// Width x depth in mm.
    size_mm: String,
    /// The next smaller size: of those nowhere wider or deeper the largest. Width x depth in mm.
    from_size_mm: String,
    number: u8,
    id: &'a str,
    /// Cells in the smaller size.
    was: u32,
    /// Cells in this size.
    is: u32,
    /// Cells, had it grown with the cushion.
    expected: u32,
    text: String,
}

/// Returns the report on every made size of a layout.
#[must_use]
pub fn range(
    program: &str,
    own: RangeReport<'_>,
    (remarks, say): ((&str, &[Remark]), SayFinding<'_>),
) -> String {
    let size = |row: usize| own.rows[row].made.size.to_string();
    let jumps = own.jumps.iter().map(|(jump, text)| JumpBody {
        size_mm: size(jump.row),
        from_size_mm: size(jump.from),
        number: jump.number,
        id: jump.id.as_str(),
        was: jump.was,
        is: jump.is,
        expected: jump.expected,
        text: text.clone(),
    });
    let body = RangeBody {
        layout: own.layout,
        revision: own.revision,
        layout_digest: own.digest.as_str(),
        cell: own.cell.name.as_str(),
        sizes: own.rows.iter().map(|row| size_body(row, own.cell)).collect(),
        jumps: jumps.collect(),
        remarks: remark_reports(remarks.0, remarks.1, say),
    };
    json("range", program, Vec::new(), body)
}

fn size_body<'a>(row: &'a RangeRow, cell: &Cell) -> SizeBody<'a> {
    let compartments = row.pattern.indices().map(|ix| RangeCompartment {
        id: row.pattern[ix].id.as_str(),
        number: row.pattern[ix].number,
        volume_ml: rounded(row.fill[ix].volume.to_ml()),
        cells: row.fill[ix].cells.into(),
    });
    let [low, stock, high] = row.totals();
    SizeBody {
        size_mm: row.made.size.to_string(),
        max_user_weight_kg: rounded(row.made.max_user_weight.to_kg()),
        unloaded_fill_kpa: rounded(row.fill.pressure.to_kpa()),
        total: CellsReport { low, stock, high },
        volume_ml: rounded(row.volume().to_ml()),
        cells_g: rounded(row.cells_mass(cell.film).to_g()),
        compartments: compartments.collect(),
        seams: SeamReport::all(&row.pattern),
        seams_mm: rounded(row.seams().to_mm()),
    }
}
