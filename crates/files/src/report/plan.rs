//! The report on a plan.

use case::{GoalOutcome, Place, Plan};
use serde::Serialize;

use super::prediction::PredictionBody;
use super::{json, rounded};

#[derive(Serialize)]
struct PlanReport<'a> {
    client: &'a str,
    recorded: bool,
    compartments: Vec<PlannedReport<'a>>,
    total_stock: u32,
    total: u32,
    goals: Vec<GoalBody<'a>>,
    not_safe: &'a [String],
    cautions: Vec<CautionReport<'a>>,
    moves: Vec<MoveReport>,
    result: Option<PredictionBody<'a>>,
}

#[derive(Serialize)]
struct PlannedReport<'a> {
    id: &'a str,
    number: u8,
    stock: u32,
    planned: u32,
    #[serde(skip_serializing_if = "Option::is_none")]
    reason: Option<&'a str>,
}

#[derive(Serialize)]
pub(super) struct GoalBody<'a> {
    id: &'a str,
    wanted: f64,
    reached: Option<f64>,
    unit: &'a str,
    met: bool,
    why: Option<&'a str>,
}

#[derive(Serialize)]
struct CautionReport<'a> {
    id: &'a str,
    severity: &'a str,
    text: &'a str,
    source: &'a str,
}

#[derive(Serialize)]
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

impl<'a> From<&'a GoalOutcome> for GoalBody<'a> {
    fn from(own: &'a GoalOutcome) -> Self {
        Self {
            id: &own.id,
            wanted: rounded(own.wanted),
            reached: own.reached.map(rounded),
            unit: own.unit,
            met: own.met,
            why: own.why.as_deref(),
        }
    }
}

/// Returns the report on a plan; the texts of its cautions are the warnings.
#[must_use]
pub fn plan(program: &str, client: &str, plan: &Plan, recorded: bool) -> String {
    let report = PlanReport {
        client,
        recorded,
        compartments: plan
            .counts
            .iter()
            .map(|count| PlannedReport {
                id: count.id.as_str(),
                number: count.number,
                stock: count.stock,
                planned: count.planned,
                reason: count.reason.as_deref(),
            })
            .collect(),
        total_stock: plan.total_stock(),
        total: plan.total_planned(),
        goals: plan.goals.iter().map(GoalBody::from).collect(),
        not_safe: &plan.not_safe,
        cautions: plan
            .cautions
            .iter()
            .map(|own| CautionReport {
                id: own.id,
                severity: own.severity.words(),
                text: &own.text,
                source: own.source,
            })
            .collect(),
        moves: plan.moves.iter().map(MoveReport::from).collect(),
        result: plan.prediction.as_ref().map(PredictionBody::from),
    };
    let warnings: Vec<String> = plan.cautions.iter().map(|own| own.text.clone()).collect();
    json(program, &warnings, report)
}
