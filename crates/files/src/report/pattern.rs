//! The report on a pattern and its stock fill.

use case::{Digest, Finding};
use cushion::{Compartment, CompartmentFill, CountRange, Length, Name, Pattern, StockFill};
use schemars::JsonSchema;
use serde::Serialize;

use super::check::{RemarkReport, SayFinding, remark_reports};
use super::finding::{FindingBody, Say};
use super::{json, rounded};
use crate::Remark;

/// How a compartment is called.
pub type SayCompartment<'a> = &'a dyn Fn(&Compartment) -> String;

/// Where a layout comes from.
#[derive(Clone, Copy, Debug)]
pub struct LayoutSource<'a> {
    /// The digest of its text.
    pub digest: &'a Digest,
    /// The plugin that wrote the text, with its version, where one did.
    pub drawn_by: Option<&'a str>,
}

/// A pattern and its stock fill.
#[derive(Serialize, JsonSchema)]
pub(super) struct PatternReport<'a> {
    layout: &'a str,
    /// Null where the layout's author does not count them.
    revision: Option<u32>,
    layout_digest: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    drawn_by: Option<&'a str>,
    width_mm: f64,
    depth_mm: f64,
    wall_height_mm: f64,
    unloaded_fill_kpa: f64,
    total_cells: u32,
    compartments: Vec<CompartmentReport<'a>>,
    seams: Vec<SeamReport>,
    /// What is to be said about the layout's text.
    remarks: Vec<RemarkReport>,
}

#[derive(Serialize, JsonSchema)]
struct CompartmentReport<'a> {
    id: &'a str,
    number: u8,
    words: String,
    #[serde(rename = "for")]
    purpose: &'a str,
    area_mm2: f64,
    centroid_mm: [f64; 2],
    perimeter_mm: f64,
    wall_area_mm2: f64,
    crown_mm: f64,
    volume_ml: f64,
    packing: f64,
    cells: CellsReport,
}

#[derive(Serialize, JsonSchema)]
pub(super) struct CellsReport {
    pub(super) low: u32,
    pub(super) stock: u32,
    pub(super) high: u32,
}

impl From<CountRange> for CellsReport {
    fn from(CountRange { low, stock, high }: CountRange) -> Self {
        Self { low, stock, high }
    }
}

#[derive(Serialize, JsonSchema)]
pub(super) struct SeamReport {
    name: String,
    length_mm: f64,
}

impl SeamReport {
    /// Each seam of a pattern with its whole length.
    pub(super) fn all(pattern: &Pattern) -> Vec<Self> {
        let seams = pattern.seam_lengths().into_iter();
        let one = |(name, length): (Name, Length)| Self {
            name: name.to_string(),
            length_mm: rounded(length.to_mm()),
        };
        seams.map(one).collect()
    }
}

/// Returns the report on a pattern and its stock fill; `name` says what a compartment is.
#[must_use]
pub fn pattern(
    program: &str,
    source: LayoutSource<'_>,
    (pattern, fill, name): (&Pattern, &StockFill, SayCompartment<'_>),
    (cautions, say): (&[Finding], Say<'_>),
    (remarks, say_text): ((&str, &[Remark]), SayFinding<'_>),
) -> String {
    let compartment = |ix| {
        let there = &pattern[ix];
        let CompartmentFill { crown, volume, packing, cells } = fill[ix];
        let centroid = pattern.centroid(ix);
        CompartmentReport {
            id: there.id.as_str(),
            number: there.number,
            words: name(there),
            purpose: there.purpose.words(),
            area_mm2: rounded(pattern.area(ix).to_mm2()),
            centroid_mm: [rounded(centroid.x), rounded(centroid.y)],
            perimeter_mm: rounded(pattern.perimeter(ix).to_mm()),
            wall_area_mm2: rounded(pattern.wall_area(ix).to_mm2()),
            crown_mm: rounded(crown.to_mm()),
            volume_ml: rounded(volume.to_ml()),
            packing: rounded(packing),
            cells: cells.into(),
        }
    };
    let report = PatternReport {
        layout: pattern.layout().as_str(),
        revision: pattern.revision(),
        layout_digest: source.digest.as_str(),
        drawn_by: source.drawn_by,
        width_mm: rounded(pattern.size().width().to_mm()),
        depth_mm: rounded(pattern.size().depth().to_mm()),
        wall_height_mm: rounded(pattern.wall_height().to_mm()),
        unloaded_fill_kpa: rounded(fill.pressure.to_kpa()),
        total_cells: fill.total(),
        compartments: pattern.indices().map(compartment).collect(),
        seams: SeamReport::all(pattern),
        remarks: remark_reports(remarks.0, remarks.1, say_text),
    };
    json("pattern", program, FindingBody::all(cautions, say), report)
}
