//! Reports in JSON, for scripts.
//!
//! Every report has `schema` 1, its own name in `report`, the program with its version,
//! `estimate: true` and `warnings`. Keys are only ever added within one schema. `REPORTS.md` beside
//! this crate is the page for those who read reports.

use schemars::JsonSchema;
use serde::Serialize;

mod adjust;
mod check;
mod comparison;
mod costs;
mod finding;
mod layouts;
mod order;
mod parts;
mod pattern;
mod plan;
mod plugins;
mod prediction;
mod range;
mod record;
mod review;
mod schema;
mod sizing;
mod standing;
mod survey;
mod template;
mod weigh;
mod written;

use self::finding::FindingBody;

pub use self::adjust::{AdjustReport, adjust};
pub use self::check::{CheckedFile, Error, SayFinding, check, error};
pub use self::comparison::{ComparedLayout, ComparisonReport, comparison};
pub use self::finding::Say;
pub use self::layouts::{LayoutOfList, layouts};
pub use self::order::{CellsOfOrder, CompartmentOfOrder, LineOfOrder, OrderReport, order};
pub use self::parts::{PartLine, PartsReport, parts, parts_csv};
pub use self::pattern::{LayoutSource, SayCompartment, pattern};
pub use self::plan::plan;
pub use self::plugins::{PluginFile, PluginParameter, PluginSelf, checked_plugin, plugin, plugins};
pub use self::prediction::{
    BoardExperiment, BoardTilt, ContourParameter, ContourStep, contour_test, predict,
};
pub use self::range::{RangeReport, range};
pub use self::record::{Held, RecordReport, SayEntry, find, history, record};
pub use self::review::{ReviewReport, SayReview, review};
pub use self::schema::schema;
pub use self::sizing::{SizedLayout, SizingReport, SizingsReport, ToMake, sizing, sizings};
pub use self::standing::StandingReport;
pub use self::survey::survey;
pub use self::template::{TemplateCrown, TemplateOpening, TemplateReport, TemplateSeam, template};
pub use self::weigh::{WeighReport, WeighedCompartment, weigh};
pub use self::written::{completions, set, written};

/// The version of the reports' form.
const SCHEMA: u32 = 1;

/// What every report has, and what is its own.
#[derive(Serialize, JsonSchema)]
struct Envelope<'a, T> {
    /// The version of the reports' form.
    schema: u32,
    /// Which report it is.
    report: &'a str,
    /// The program and its version.
    program: &'a str,
    /// Always true: what is computed is an estimate until somebody has checked it.
    estimate: bool,
    /// What whoever reads the numbers should know first.
    warnings: Vec<FindingBody>,
    #[serde(flatten)]
    body: T,
}

fn json<T: Serialize>(report: &str, program: &str, warnings: Vec<FindingBody>, body: T) -> String {
    let envelope = Envelope { schema: SCHEMA, report, program, estimate: true, warnings, body };
    serde_json::to_string_pretty(&envelope).expect("reports hold only text and finite numbers")
        + "\n"
}

/// A number with three decimals at most: more would be noise. Nothing is never negative.
fn rounded(number: f64) -> f64 {
    (number * 1e3).round() / 1e3 + 0.0
}
