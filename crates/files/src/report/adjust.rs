//! The report on an adjustment.

use case::{
    Alarm, BrokenLimit, Caution, Check, Costs, Doubt, Finding, GoalOutcome, LookAt, Mistake, Move,
    NextStep, Prediction, Verdict,
};
use schemars::JsonSchema;
use serde::Serialize;

use super::costs::CostsBody;
use super::finding::{FindingBody, Say};
use super::plan::MoveReport;
use super::prediction::PredictionBody;
use super::{json, rounded};

/// What is reported of an adjustment.
pub struct AdjustReport<'a> {
    /// What it comes to.
    pub verdict: Verdict,
    /// What brings the client off the cushion.
    pub alarms: &'a [Alarm],
    /// Where to look in the set-up.
    pub look_at: &'a [LookAt],
    /// Whether it was recorded.
    pub recorded: bool,
    /// What was found.
    pub checks: &'a [Check],
    /// What does not go together.
    pub doubts: &'a [Doubt],
    /// Answers that were left out.
    pub left_out: &'a [Check],
    /// The moves.
    pub moves: &'a [Move],
    /// The counts after them.
    pub counts: &'a [u32],
    /// What is next.
    pub next: &'a [NextStep],
    /// Limits that are not kept.
    pub not_safe: &'a [BrokenLimit],
    /// What becomes of the goals.
    pub goals: &'a [GoalOutcome],
    /// That the spare bag holds too few cells.
    pub spares: Option<&'a Caution>,
    /// What is expected after the moves.
    pub prediction: &'a Prediction,
    /// What the moves change.
    pub costs: Option<&'a Costs>,
    /// Mistakes that would explain what was found, with how likely each is, from 0 to 1.
    pub mistakes: Vec<(&'a Mistake, f64)>,
}

/// An adjustment.
#[derive(Serialize, JsonSchema)]
pub(super) struct AdjustBody<'a> {
    client: &'a str,
    verdict: &'a str,
    alarms: Vec<FindingBody>,
    look_at: Vec<FindingBody>,
    recorded: bool,
    proposes: bool,
    checks: Vec<String>,
    doubts: Vec<FindingBody>,
    moves: Vec<MoveReport>,
    counts: &'a [u32],
    next: Vec<FindingBody>,
    not_safe: Vec<FindingBody>,
    goals: Vec<FindingBody>,
    result: PredictionBody<'a>,
    costs: Option<CostsBody>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    mistakes: Vec<MistakeBody>,
}

#[derive(Serialize, JsonSchema)]
struct MistakeBody {
    likelihood: f64,
    #[serde(flatten)]
    mistake: FindingBody,
}

/// Returns the report on an adjustment; what is asked again, what was left out, and too few
/// spare cells are the warnings.
#[must_use]
pub fn adjust(program: &str, client: &str, own: &AdjustReport<'_>, say: Say<'_>) -> String {
    let mistakes = own.mistakes.iter().map(|(mistake, likelihood)| MistakeBody {
        likelihood: rounded(*likelihood),
        mistake: FindingBody::new((*mistake).clone(), say),
    });
    let body = AdjustBody {
        client,
        verdict: own.verdict.id(),
        alarms: FindingBody::all(own.alarms, say),
        look_at: FindingBody::all(own.look_at, say),
        recorded: own.recorded,
        // What is really moved is recorded after it was done.
        proposes: true,
        checks: own.checks.iter().map(ToString::to_string).collect(),
        doubts: FindingBody::all(own.doubts, say),
        moves: own.moves.iter().map(MoveReport::from).collect(),
        counts: own.counts,
        next: FindingBody::all(own.next, say),
        not_safe: FindingBody::all(own.not_safe, say),
        goals: FindingBody::all(own.goals, say),
        result: own.prediction.into(),
        costs: own.costs.map(CostsBody::from),
        mistakes: mistakes.collect(),
    };
    let doubts = own.doubts.iter().map(|doubt| Finding::Doubt(*doubt));
    let left_out = own.left_out.iter().map(|check| Finding::LeftOut(*check));
    let spares = own.spares.cloned().map(Finding::Caution);
    let warnings: Vec<Finding> = doubts.chain(left_out).chain(spares).collect();
    json("adjust", program, FindingBody::all(&warnings, say), body)
}
