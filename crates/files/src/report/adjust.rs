//! The report on an adjustment.

use case::{Alarm, Check, GoalOutcome, Move, Prediction};
use serde::Serialize;

use super::json;
use super::plan::{GoalBody, MoveReport};
use super::prediction::PredictionBody;

/// What is reported of an adjustment.
pub struct AdjustReport<'a> {
    /// What it comes to, in a word.
    pub verdict: &'a str,
    /// What brings the client off the cushion.
    pub alarms: &'a [Alarm],
    /// Where to look in the set-up.
    pub look_at: &'a [String],
    /// Whether it was recorded.
    pub recorded: bool,
    /// What was found.
    pub checks: &'a [Check],
    /// What does not go together.
    pub questions: &'a [String],
    /// The moves.
    pub moves: &'a [Move],
    /// The counts after them.
    pub counts: &'a [u32],
    /// What is next.
    pub notes: &'a [String],
    /// Limits that are not kept.
    pub not_safe: &'a [String],
    /// What becomes of the goals.
    pub goals: &'a [GoalOutcome],
    /// What is expected after the moves.
    pub prediction: &'a Prediction,
    /// Mistakes that would explain what was found, with how likely each is.
    pub mistakes: Vec<(&'a str, f64)>,
}

#[derive(Serialize)]
struct Body<'a> {
    client: &'a str,
    verdict: &'a str,
    alarms: Vec<AlarmBody>,
    look_at: &'a [String],
    recorded: bool,
    checks: Vec<String>,
    questions: &'a [String],
    moves: Vec<MoveReport>,
    counts: &'a [u32],
    notes: &'a [String],
    not_safe: &'a [String],
    goals: Vec<GoalBody<'a>>,
    result: PredictionBody<'a>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    mistakes: Vec<MistakeBody<'a>>,
}

#[derive(Serialize)]
struct AlarmBody {
    id: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    side: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    expected_mm: Option<f64>,
    #[serde(skip_serializing_if = "Option::is_none")]
    site: Option<&'static str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    answer: Option<&'static str>,
}

impl From<&Alarm> for AlarmBody {
    fn from(alarm: &Alarm) -> Self {
        let none = Self { id: "", side: None, expected_mm: None, site: None, answer: None };
        match alarm {
            Alarm::BoneFelt { side, expected } => Self {
                id: "bone-felt",
                side: Some(side.words()),
                expected_mm: expected.map(|expected| super::rounded(expected.to_mm())),
                ..none
            },
            Alarm::Mark { site, answer } => {
                Self { id: "mark", site: Some(site.id()), answer: Some(answer.words()), ..none }
            }
        }
    }
}

#[derive(Serialize)]
struct MistakeBody<'a> {
    text: &'a str,
    likelihood: f64,
}

/// Returns the report on an adjustment; its questions are the warnings.
#[must_use]
pub fn adjust(program: &str, client: &str, own: &AdjustReport<'_>) -> String {
    let body = Body {
        client,
        verdict: own.verdict,
        alarms: own.alarms.iter().map(AlarmBody::from).collect(),
        look_at: own.look_at,
        recorded: own.recorded,
        checks: own.checks.iter().map(ToString::to_string).collect(),
        questions: own.questions,
        moves: own.moves.iter().map(MoveReport::from).collect(),
        counts: own.counts,
        notes: own.notes,
        not_safe: own.not_safe,
        goals: own.goals.iter().map(GoalBody::from).collect(),
        result: own.prediction.into(),
        mistakes: own
            .mistakes
            .iter()
            .map(|(text, likelihood)| MistakeBody { text, likelihood: super::rounded(*likelihood) })
            .collect(),
    };
    json(program, own.questions, body)
}
