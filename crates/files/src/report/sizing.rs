//! The reports on sizing: of one layout, and of all.

use case::{HeightEffect, NoSizeToMake, SizeMargin, SizeMisfit, SizeToMake, SizingRule};
use cushion::Size;
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{FindingBody, Say};
use super::json;

/// What a supplier is asked for, or why that cannot be told; none where a made size suits.
pub type ToMake = Option<Result<SizeToMake, Vec<NoSizeToMake>>>;

/// What is reported of the sizes of one layout.
pub struct SizingReport<'a> {
    /// The layout whose sizes were looked at.
    pub layout: &'a str,
    /// The size that the client's file names.
    pub named: Size,
    /// The made size that suits best; none where none does.
    pub best: Option<Size>,
    /// What it leaves free.
    pub margins: &'a [SizeMargin],
    /// The other sizes that suit.
    pub suit_too: &'a [Size],
    /// What was gone by.
    pub rules: &'a [SizingRule],
    /// Why each other size is left.
    pub left: &'a [(Size, Vec<SizeMisfit>)],
    /// What would have to be made.
    pub to_make: &'a ToMake,
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
    /// What the best size leaves free around the client; negative where there is too little.
    margins: Vec<FindingBody>,
    /// The other made sizes that suit, further from what is wanted, width x depth in mm.
    suit_too_mm: Vec<String>,
    /// What was gone by.
    rules: Vec<FindingBody>,
    /// The made sizes that do not suit.
    left: Vec<LeftSize>,
    /// What a supplier is asked for; null where a made size suits, and where nothing can be asked
    /// for.
    to_make: Option<FindingBody>,
    /// Why nothing can be asked for.
    not_to_make: Vec<FindingBody>,
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

impl LeftSize {
    fn all(left: &[(Size, Vec<SizeMisfit>)], say: Say<'_>) -> Vec<Self> {
        let left = left
            .iter()
            .map(|(size, why)| Self { size_mm: size.to_string(), why: FindingBody::all(why, say) });
        left.collect()
    }
}

fn words(sizes: &[Size]) -> Vec<String> {
    sizes.iter().map(Size::to_string).collect()
}

/// What is asked for, and why nothing is.
fn asked(to_make: &ToMake, say: Say<'_>) -> (Option<FindingBody>, Vec<FindingBody>) {
    match to_make {
        None => (None, Vec::new()),
        Some(Ok(size)) => (Some(FindingBody::new(*size, say)), Vec::new()),
        Some(Err(whys)) => (None, FindingBody::all(whys, say)),
    }
}

/// Returns the report on the sizes of one layout.
#[must_use]
pub fn sizing(program: &str, client: &str, own: &SizingReport<'_>, say: Say<'_>) -> String {
    let (to_make, not_to_make) = asked(own.to_make, say);
    let body = SizingBody {
        client,
        layout: own.layout,
        named_size_mm: own.named.to_string(),
        best_size_mm: own.best.map(|size| size.to_string()),
        margins: FindingBody::all(own.margins, say),
        suit_too_mm: words(own.suit_too),
        rules: FindingBody::all(own.rules, say),
        left: LeftSize::all(own.left, say),
        to_make,
        not_to_make,
        heights: FindingBody::all(own.heights, say),
    };
    json("size", program, Vec::new(), body)
}

/// What is reported of the sizes of all layouts.
pub struct SizingsReport<'a> {
    /// What was gone by.
    pub rules: &'a [SizingRule],
    /// The layouts, in their order.
    pub layouts: Vec<SizedLayout<'a>>,
    /// What would have to be made.
    pub to_make: &'a ToMake,
}

/// What is reported of one layout of many.
pub struct SizedLayout<'a> {
    /// The layout.
    pub layout: &'a str,
    /// The made size that suits best; none where none does.
    pub best: Option<Size>,
    /// What it leaves free.
    pub margins: &'a [SizeMargin],
    /// The other sizes that suit.
    pub suit_too: &'a [Size],
    /// Why each other size is left.
    pub left: &'a [(Size, Vec<SizeMisfit>)],
    /// Why the layout could not be looked at, in a clause.
    pub not_seen: Option<String>,
    /// Whether it can be drawn in the size that is asked for; none where none is.
    pub can_be_drawn_so: Option<bool>,
}

/// Which made sizes of all layouts suit a client.
#[derive(Serialize, JsonSchema)]
pub(super) struct SizingsBody<'a> {
    /// The client's code.
    client: &'a str,
    /// What was gone by.
    rules: Vec<FindingBody>,
    /// Every layout that was found, in an order that stays the same.
    layouts: Vec<SizedLayoutBody<'a>>,
    /// What a supplier is asked for; null where a made size suits, and where nothing can be asked
    /// for.
    to_make: Option<FindingBody>,
    /// Why nothing can be asked for.
    not_to_make: Vec<FindingBody>,
}

/// The sizes of one layout of many.
#[derive(Serialize, JsonSchema)]
struct SizedLayoutBody<'a> {
    /// The layout.
    layout: &'a str,
    /// The made size that suits best, width x depth in mm; null where none does.
    best_size_mm: Option<String>,
    /// What the best size leaves free around the client; negative where there is too little.
    margins: Vec<FindingBody>,
    /// The other made sizes that suit, further from what is wanted, width x depth in mm.
    suit_too_mm: Vec<String>,
    /// The made sizes that do not suit.
    left: Vec<LeftSize>,
    /// Why the layout could not be looked at; null where it could.
    not_seen: Option<String>,
    /// Whether it can be drawn in the size that is asked for; null where none is.
    can_be_drawn_so: Option<bool>,
}

/// Returns the report on the sizes of all layouts.
#[must_use]
pub fn sizings(program: &str, client: &str, own: SizingsReport<'_>, say: Say<'_>) -> String {
    let (to_make, not_to_make) = asked(own.to_make, say);
    let rules = FindingBody::all(own.rules, say);
    let layouts = own.layouts.into_iter().map(|own| sized_layout(own, say)).collect();
    let body = SizingsBody { client, rules, layouts, to_make, not_to_make };
    json("sizes", program, Vec::new(), body)
}

fn sized_layout<'a>(own: SizedLayout<'a>, say: Say<'_>) -> SizedLayoutBody<'a> {
    SizedLayoutBody {
        layout: own.layout,
        best_size_mm: own.best.map(|size| size.to_string()),
        margins: FindingBody::all(own.margins, say),
        suit_too_mm: words(own.suit_too),
        left: LeftSize::all(own.left, say),
        not_seen: own.not_seen,
        can_be_drawn_so: own.can_be_drawn_so,
    }
}
