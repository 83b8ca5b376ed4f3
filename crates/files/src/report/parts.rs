//! The report on what cushions are made of, and the same as CSV.

use case::{Digest, Finding, Spread};
use cushion::Mass;
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{FindingBody, Say};
use super::{json, rounded};

/// One line of the parts: what, how much for each cushion, in which unit.
#[derive(Clone, Debug, PartialEq)]
pub struct PartLine {
    /// By which it is known: `top`, `wall-4`, `thread`, `cells`.
    pub id: String,
    /// For one cushion.
    pub each: f64,
    /// `cm2`, `m`, `mm` or `pieces`.
    pub unit: &'static str,
}

/// What is reported of parts.
pub struct PartsReport<'a> {
    /// The layout.
    pub layout: &'a str,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// The digest of its text.
    pub digest: &'a Digest,
    /// Width x depth in mm.
    pub size: String,
    /// How many cushions.
    pub quantity: u32,
    /// Cloth left outside of stitch lines, mm.
    pub allowance_mm: f64,
    /// The lines.
    pub parts: &'a [PartLine],
    /// One finished cushion, its cover, its cells.
    pub masses: [Spread<Mass>; 3],
    /// The paths that were written.
    pub written: &'a [String],
}

/// What cushions are made of.
#[derive(Serialize, JsonSchema)]
pub(super) struct PartsBody<'a> {
    layout: &'a str,
    revision: Option<u32>,
    layout_digest: &'a str,
    /// Width x depth in mm.
    size_mm: String,
    quantity: u32,
    allowance_mm: f64,
    parts: Vec<PartBody<'a>>,
    /// One finished cushion, without spare cells, labels and an outer cover.
    finished: MassBody,
    /// Of that the cover.
    cover: MassBody,
    /// Of that the cells.
    cells: MassBody,
    /// The paths that were written.
    written: &'a [String],
}

/// One line.
#[derive(Serialize, JsonSchema)]
struct PartBody<'a> {
    id: &'a str,
    /// `cm2`, `m`, `mm` or `pieces`.
    unit: &'a str,
    /// For one cushion.
    each: f64,
    /// For all.
    in_all: f64,
}

/// A mass with its range.
#[derive(Serialize, JsonSchema)]
pub(super) struct MassBody {
    grams: f64,
    low_grams: f64,
    high_grams: f64,
}

impl From<Spread<Mass>> for MassBody {
    fn from(own: Spread<Mass>) -> Self {
        Self {
            grams: rounded(own.central.to_g()),
            low_grams: rounded(own.low.to_g()),
            high_grams: rounded(own.high.to_g()),
        }
    }
}

/// Returns the report on parts.
#[must_use]
pub fn parts(
    program: &str,
    own: PartsReport<'_>,
    (cautions, say): (&[Finding], Say<'_>),
) -> String {
    let many = f64::from(own.quantity);
    let line = |part: &'_ PartLine| (rounded(part.each), rounded(part.each * many));
    let lines = own.parts.iter().map(|part| {
        let (each, in_all) = line(part);
        PartBody { id: &part.id, unit: part.unit, each, in_all }
    });
    let [finished, cover, cells] = own.masses.map(MassBody::from);
    let body = PartsBody {
        layout: own.layout,
        revision: own.revision,
        layout_digest: own.digest.as_str(),
        size_mm: own.size,
        quantity: own.quantity,
        allowance_mm: rounded(own.allowance_mm),
        parts: lines.collect(),
        finished,
        cover,
        cells,
        written: own.written,
    };
    json("parts", program, FindingBody::all(cautions, say), body)
}

/// Returns the lines as CSV, with a heading.
#[must_use]
pub fn parts_csv(parts: &[PartLine], quantity: u32) -> String {
    let mut text = String::from("part,unit,each,in_all\n");
    for PartLine { id, each, unit } in parts {
        let (own, all) = (rounded(*each), rounded(*each * f64::from(quantity)));
        // Ids and units are letters, digits and hyphens.
        text += &format!("{id},{unit},{own},{all}\n");
    }
    text
}
