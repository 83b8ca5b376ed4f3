//! The report on a plan.

use case::{CountReason, OtherCushion, Place, Plan};
use schemars::JsonSchema;
use serde::Serialize;

use super::costs::CostsBody;
use super::finding::{FindingBody, Say};
use super::prediction::PredictionBody;
use super::standing::StandingReport;
use super::{json, rounded};

/// A plan.
#[derive(Serialize, JsonSchema)]
pub(super) struct PlanReport<'a> {
    client: &'a str,
    recorded: bool,
    proposes: bool,
    standing: Option<StandingReport>,
    compartments: Vec<PlannedReport<'a>>,
    total_stock: u32,
    total: u32,
    goals: Vec<FindingBody>,
    not_safe: Vec<FindingBody>,
    moves: Vec<MoveReport>,
    result: Option<PredictionBody<'a>>,
    costs: Option<CostsBody>,
    other_cushion: Option<OtherBody>,
}

/// A cushion that the client sat on before, or sits on beside this one.
#[derive(Serialize, JsonSchema)]
struct OtherBody {
    layout: String,
    size_mm: [f64; 2],
    on: String,
    cells: u32,
    taught: bool,
    left_under_mm: Option<f64>,
    right_under_mm: Option<f64>,
    weight_kg: Option<f64>,
}

impl From<&OtherCushion> for OtherBody {
    fn from(own: &OtherCushion) -> Self {
        let expected = own.expected.as_ref();
        Self {
            layout: own.layout.clone(),
            size_mm: [own.size.width().to_mm(), own.size.depth().to_mm()],
            on: own.on.to_string(),
            cells: own.cells,
            taught: own.taught,
            left_under_mm: expected.map(|own| rounded(own.under.left.to_mm())),
            right_under_mm: expected.map(|own| rounded(own.under.right.to_mm())),
            weight_kg: expected.map(|own| own.weight.to_kg()),
        }
    }
}

#[derive(Serialize, JsonSchema)]
struct PlannedReport<'a> {
    id: &'a str,
    number: u8,
    stock: u32,
    planned: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<ReasonReport<'a>>,
}

#[derive(Serialize, JsonSchema)]
struct ReasonReport<'a> {
    id: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    wish: Option<&'a str>,
}

#[derive(Serialize, JsonSchema)]
pub(super) struct MoveReport {
    from: String,
    to: String,
    cells: u32,
}

impl From<&case::Move> for MoveReport {
    fn from(own: &case::Move) -> Self {
        Self { from: place(own.from), to: place(own.to), cells: own.cells }
    }
}

/// The number of a compartment, or `spare`.
fn place(place: Place) -> String {
    match place {
        Place::Compartment(number) => number.to_string(),
        Place::Spare => "spare".to_owned(),
    }
}

/// Returns the report on a plan; its cautions are the warnings.
#[must_use]
pub fn plan(
    program: &str,
    (client, standing): (&str, Option<&StandingReport>),
    (plan, other): (&Plan, Option<&OtherCushion>),
    recorded: bool,
    say: Say<'_>,
) -> String {
    let counts = plan.counts.iter().map(|count| PlannedReport {
        id: count.id.as_str(),
        number: count.number,
        stock: count.stock,
        planned: count.planned,
        reason: count.reason.as_ref().map(|reason| match reason {
            CountReason::Goals => ReasonReport { id: "goals", wish: None },
            CountReason::Wish(wish) => ReasonReport { id: "wish", wish: Some(wish) },
        }),
    });
    let report = PlanReport {
        client,
        recorded,
        // What is really put in is recorded after it was done.
        proposes: true,
        standing: standing.cloned(),
        compartments: counts.collect(),
        total_stock: plan.total_stock(),
        total: plan.total_planned(),
        goals: FindingBody::all(&plan.goals, say),
        not_safe: FindingBody::all(&plan.not_safe, say),
        moves: plan.moves.iter().map(MoveReport::from).collect(),
        result: plan.prediction.as_ref().map(PredictionBody::from),
        costs: plan.costs.as_ref().map(CostsBody::from),
        other_cushion: other.map(OtherBody::from),
    };
    json("plan", program, FindingBody::all(&plan.cautions, say), report)
}
