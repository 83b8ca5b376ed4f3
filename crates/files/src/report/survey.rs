//! The report on a survey.

use case::{NoSize, SurveyFault, SurveySummary};
use schemars::JsonSchema;
use serde::Serialize;

use super::json;

/// What came out of a survey.
#[derive(Serialize, JsonSchema)]
pub(super) struct SurveyBody<'a> {
    /// Bodies in all.
    bodies: usize,
    /// Bodies for which a size is made.
    sized: usize,
    /// Bodies with a plan within all limits.
    planned: usize,
    /// Why no size is made for the others.
    without_size: Vec<CountedReason>,
    /// Why there is no safe plan.
    not_safe: Vec<CountedReason>,
    /// The paths that were written.
    written: &'a [String],
}

/// A reason, and for how many it is one.
#[derive(Serialize, JsonSchema)]
struct CountedReason {
    /// The reason.
    id: &'static str,
    /// How many bodies.
    bodies: usize,
}

/// Returns the report on a survey.
#[must_use]
pub fn survey(program: &str, summary: &SurveySummary, written: &[String]) -> String {
    let without = summary.without_size.iter().map(|(why, bodies)| {
        let id = NoSize::IDS.iter().find(|(own, _)| own == why).map_or("", |own| own.1);
        CountedReason { id, bodies: *bodies }
    });
    let not_safe = summary.not_safe.iter().map(|(why, bodies)| {
        let id = SurveyFault::IDS.iter().find(|(own, _)| own == why).map_or("", |own| own.1);
        CountedReason { id, bodies: *bodies }
    });
    let body = SurveyBody {
        bodies: summary.bodies,
        sized: summary.sized,
        planned: summary.planned,
        without_size: without.collect(),
        not_safe: not_safe.collect(),
        written,
    };
    json("survey", program, Vec::new(), body)
}
