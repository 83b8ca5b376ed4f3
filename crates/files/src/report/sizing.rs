//! The report on sizing.

use case::{HeightEffect, SizeMisfit, SizingRule};
use cushion::Size;
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{FindingBody, Say};
use super::json;

/// What is reported of sizing.
pub struct SizingReport<'a> {
    /// The layout whose sizes were looked at.
    pub layout: &'a str,
    /// The size that the client's file names.
    pub named: Size,
    /// The made size that suits best; none where none does.
    pub best: Option<Size>,
    /// What was gone by.
    pub rules: &'a [SizingRule],
    /// Why each other size is left.
    pub left: &'a [(Size, Vec<SizeMisfit>)],
    /// What the cushion's height means around it.
    pub heights: &'a [HeightEffect],
}

/// Which made size suits a client.
#[derive(Serialize, JsonSchema)]
pub(super) struct SizingBody<'a> {
    /// The client's code.
    client: &'a str,
    /// The layout whose sizes were looked at.
    layout: &'a str,
    /// The size that the client's file names, width x depth in mm.
    named_size_mm: String,
    /// The made size that suits best, width x depth in mm; null where none does.
    best_size_mm: Option<String>,
    /// What was gone by.
    rules: Vec<FindingBody>,
    /// The made sizes that do not suit.
    left: Vec<LeftSize>,
    /// What the cushion's height means around it.
    heights: Vec<FindingBody>,
}

/// A made size that does not suit.
#[derive(Serialize, JsonSchema)]
struct LeftSize {
    /// Width x depth in mm.
    size_mm: String,
    /// Why.
    why: Vec<FindingBody>,
}

/// Returns the report on sizing.
#[must_use]
pub fn sizing(program: &str, client: &str, own: &SizingReport<'_>, say: Say<'_>) -> String {
    let left = own
        .left
        .iter()
        .map(|(size, why)| LeftSize { size_mm: size.to_string(), why: FindingBody::all(why, say) });
    let body = SizingBody {
        client,
        layout: own.layout,
        named_size_mm: own.named.to_string(),
        best_size_mm: own.best.map(|size| size.to_string()),
        rules: FindingBody::all(own.rules, say),
        left: left.collect(),
        heights: FindingBody::all(own.heights, say),
    };
    json("size", program, Vec::new(), body)
}
