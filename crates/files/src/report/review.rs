//! The report on a review of a layout.

use case::{
    BonesAndSeams, CellsDo, Digest, REVIEWED, ReviewFinding, ReviewKind, ReviewedCompartment,
    ReviewedSeat, ReviewedSize, Said,
};
use schemars::JsonSchema;
use serde::Serialize;

use super::{json, rounded};

/// What is reported of a review.
pub struct ReviewReport<'a> {
    /// The layout.
    pub layout: &'a str,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// The digest of its text.
    pub digest: &'a Digest,
    /// The cell.
    pub cell: &'a str,
    /// Bodies that a size suits, of so many.
    pub bodies: (usize, usize),
    /// The sizes.
    pub sizes: &'a [ReviewedSize],
    /// What is found, the worst first.
    pub findings: &'a [ReviewFinding],
    /// The paths that were written.
    pub written: &'a [String],
}

/// How a finding of a review is said.
pub type SayReview<'a> = &'a dyn Fn(&ReviewFinding) -> Said;

/// A layout over its sizes and over bodies.
#[derive(Serialize, JsonSchema)]
pub(super) struct ReviewBody<'a> {
    layout: &'a str,
    revision: Option<u32>,
    layout_digest: &'a str,
    cell: &'a str,
    /// Bodies of the table.
    bodies: usize,
    /// Of those the ones that a size suits.
    suited: usize,
    /// The worst first.
    findings: Vec<FoundBody>,
    sizes: Vec<SizeBody<'a>>,
    /// The paths that were written.
    written: &'a [String],
}

/// A finding: where it is worst, its number, and what to do.
#[derive(Serialize, JsonSchema)]
struct FoundBody {
    id: &'static str,
    /// The size where it is worst, width x depth in mm.
    size_mm: String,
    /// All sizes where it is.
    sizes_mm: Vec<String>,
    /// The compartments that it is about, by their numbers.
    numbers: Vec<u8>,
    /// The number that it is about, in the unit of its id; null where it has none.
    value: Option<f64>,
    text: String,
    remedy: String,
}

/// One size.
#[derive(Serialize, JsonSchema)]
struct SizeBody<'a> {
    /// Width x depth in mm.
    size_mm: String,
    max_user_weight_kg: f64,
    code: &'a str,
    /// Bodies that it suits.
    suits: usize,
    seat_bones: BonesBody,
    seats: Vec<SeatBody>,
    compartments: Vec<CompartmentBody<'a>>,
}

/// Where seat bones fall against seams.
#[derive(Serialize, JsonSchema)]
struct BonesBody {
    share_of_women: f64,
    /// Of 5, 50 and 95 of a hundred people.
    apart_mm: [f64; 3],
    to_seam_mm: [f64; 3],
    /// Share of people whose bones lie within 15 mm of a seam.
    share_on_seam: f64,
}

/// How one body sits on the stock fill.
#[derive(Serialize, JsonSchema)]
struct SeatBody {
    percent: u8,
    kg: f64,
    outcome: &'static str,
    /// Under the bone that has less; null where the body comes to no rest.
    left_mm: Option<f64>,
    left_low_mm: Option<f64>,
    slack: Vec<u8>,
    bottomed: Vec<u8>,
}

/// One compartment.
#[derive(Serialize, JsonSchema)]
struct CompartmentBody<'a> {
    id: &'a str,
    number: u8,
    purpose: &'static str,
    low: u32,
    stock: u32,
    high: u32,
    width_mm: f64,
    opening_mm: f64,
    /// What one cell does; null where nobody sits or comes to no rest.
    one_cell: Option<CellBody>,
}

/// What one cell more does.
#[derive(Serialize, JsonSchema)]
struct CellBody {
    /// Cells by which it was tried, more and less.
    tried: u32,
    under_left_mm: f64,
    under_right_mm: f64,
    pitch_deg: f64,
    /// With the highest count here and the lowest in its mirror image, the seat bone of its side
    /// stands so much higher beside the other; null where it is for no seat bone.
    lifts_mm: Option<f64>,
}

/// Returns the report on a review.
#[must_use]
pub fn review(program: &str, own: &ReviewReport<'_>, say: SayReview<'_>) -> String {
    let found = |finding: &ReviewFinding| {
        let Said { message, hint } = say(finding);
        let (numbers, value) = about(&finding.kind);
        FoundBody {
            id: finding.kind.id(),
            size_mm: finding.size.to_string(),
            sizes_mm: finding.sizes.iter().map(ToString::to_string).collect(),
            numbers,
            value: value.map(rounded),
            text: message,
            remedy: hint.unwrap_or_default(),
        }
    };
    let body = ReviewBody {
        layout: own.layout,
        revision: own.revision,
        layout_digest: own.digest.as_str(),
        cell: own.cell,
        bodies: own.bodies.1,
        suited: own.bodies.0,
        findings: own.findings.iter().map(found).collect(),
        sizes: own.sizes.iter().map(size).collect(),
        written: own.written,
    };
    json("review", program, Vec::new(), body)
}

/// The compartments and the number that a finding is about: mm, a share, or cells.
fn about(kind: &ReviewKind) -> (Vec<u8>, Option<f64>) {
    match kind {
        ReviewKind::NoRest(_, weight) => (Vec::new(), Some(weight.to_kg())),
        ReviewKind::Bottoms(_, weight, numbers) | ReviewKind::Slack(_, weight, numbers) => {
            (numbers.clone(), Some(weight.to_kg()))
        }
        ReviewKind::LittleLeft(_, _, left) => (Vec::new(), Some(left.to_mm())),
        ReviewKind::BonesOnSeam(share) => (Vec::new(), Some(*share)),
        ReviewKind::NoHand(number, own)
        | ReviewKind::LittleReach(number, own)
        | ReviewKind::MuchForOne(number, own) => (vec![*number], Some(own.to_mm())),
        ReviewKind::Jumps(jump, _) => (vec![jump.number], Some(f64::from(jump.is))),
        ReviewKind::NobodySuits | ReviewKind::OtherCode { .. } => (Vec::new(), None),
    }
}

fn size(own: &ReviewedSize) -> SizeBody<'_> {
    SizeBody {
        size_mm: own.size.to_string(),
        max_user_weight_kg: rounded(own.rated.to_kg()),
        code: own.code,
        suits: own.bodies,
        seat_bones: bones(&own.bones),
        seats: own.seats.iter().map(seat).collect(),
        compartments: own.compartments.iter().map(compartment).collect(),
    }
}

fn bones(own: &BonesAndSeams) -> BonesBody {
    BonesBody {
        share_of_women: rounded(own.women),
        apart_mm: own.apart.map(|own| rounded(own.to_mm())),
        to_seam_mm: own.to_seam.map(|own| rounded(own.to_mm())),
        share_on_seam: rounded(own.on_seam),
    }
}

fn seat(own: &ReviewedSeat) -> SeatBody {
    debug_assert!(REVIEWED.contains(&own.percent));
    SeatBody {
        percent: own.percent,
        kg: rounded(own.weight.to_kg()),
        outcome: own.outcome.id(),
        left_mm: own.left.map(|left| rounded(left.central.to_mm())),
        left_low_mm: own.left.map(|left| rounded(left.low.to_mm())),
        slack: own.slack.clone(),
        bottomed: own.bottomed.clone(),
    }
}

fn compartment(own: &ReviewedCompartment) -> CompartmentBody<'_> {
    let [low, stock, high] = own.cells;
    let cell = |own: CellsDo| CellBody {
        tried: own.tried,
        under_left_mm: rounded(own.under.left.to_mm()),
        under_right_mm: rounded(own.under.right.to_mm()),
        pitch_deg: rounded(own.pitch_deg),
        lifts_mm: own.lifts.map(|own| rounded(own.to_mm())),
    };
    CompartmentBody {
        id: own.id.as_str(),
        number: own.number,
        purpose: own.purpose.words(),
        low,
        stock,
        high,
        width_mm: rounded(own.width.to_mm()),
        opening_mm: rounded(own.opening.to_mm()),
        one_cell: own.effect.map(cell),
    }
}
