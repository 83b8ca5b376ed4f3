//! How a fitting stands, and what is in a cushion, as reports have it.

use case::{CushionNow, Standing, State};
use schemars::JsonSchema;
use serde::Serialize;

/// How a fitting stands, with what is said of it.
#[derive(Clone, Debug, Serialize, JsonSchema)]
pub struct StandingReport {
    state: &'static str,
    checked_on: Option<String>,
    checked_by: Option<String>,
    lapsed_because: Option<&'static str>,
    review: &'static str,
    review_by: Option<String>,
    text: String,
}

impl StandingReport {
    /// How a fitting stands, with what is said of it.
    #[must_use]
    pub fn new(standing: Standing<'_>, text: String) -> Self {
        let (looked, lapse) = match standing.state {
            State::ToMeasure | State::ToPlan | State::Estimate | State::NotSafe(_) => (None, None),
            State::Fitted(looked) | State::Failed(looked) => (Some(looked), None),
            State::Lapsed(looked, lapse) => (Some(looked), Some(lapse)),
        };
        Self {
            state: standing.state.id(),
            checked_on: looked.map(|own| own.on.to_string()),
            checked_by: looked.map(|own| own.by.to_owned()),
            lapsed_because: lapse.map(case::Lapse::id),
            review: standing.review.id(),
            review_by: standing.review.by().map(|by| by.to_string()),
            text,
        }
    }

    /// What is said of it.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }
}

/// Cells of one compartment.
#[derive(Serialize, JsonSchema)]
pub(super) struct CellsBody {
    number: u8,
    cells: u32,
}

impl CellsBody {
    pub(super) fn all<'a>(cells: impl IntoIterator<Item = (&'a u8, &'a u32)>) -> Vec<Self> {
        cells.into_iter().map(|(number, cells)| Self { number: *number, cells: *cells }).collect()
    }
}

/// What is in a cushion.
#[derive(Serialize, JsonSchema)]
pub(super) struct CushionBody {
    from: &'static str,
    from_on: Option<String>,
    counts: Vec<CellsBody>,
    total: u32,
    bag: i64,
}

impl From<&CushionNow> for CushionBody {
    fn from(own: &CushionNow) -> Self {
        Self {
            from: own.from.id(),
            from_on: own.from.on().map(|on| on.to_string()),
            counts: CellsBody::all(&own.counts),
            total: own.total(),
            bag: own.bag,
        }
    }
}
