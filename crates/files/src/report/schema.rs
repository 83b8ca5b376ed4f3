//! The JSON Schema of all reports, made from the types that write them.

use schemars::JsonSchema;
use schemars::generate::{SchemaGenerator, SchemaSettings};
use serde_json::{Value, json};

use super::adjust::AdjustBody;
use super::check::{CheckReport, ErrorReport};
use super::comparison::ComparisonBody;
use super::layouts::LayoutsBody;
use super::order::OrderBody;
use super::parts::PartsBody;
use super::pattern::PatternReport;
use super::plan::PlanReport;
use super::plugins::{PluginBody, PluginsBody};
use super::prediction::{ContourReport, PredictReport};
use super::range::RangeBody;
use super::record::{FindBody, HistoryBody, RecordBody};
use super::review::ReviewBody;
use super::sizing::{SizingBody, SizingsBody};
use super::survey::SurveyBody;
use super::template::TemplateBody;
use super::weigh::WeighBody;
use super::written::{CompletionsBody, SetBody, WrittenBody};
use super::{Envelope, SCHEMA};

/// Returns the JSON Schema (draft 2020-12) of every report, one of which an answer in JSON is.
///
/// # Panics
///
/// Never: a schema holds only text and finite numbers.
#[must_use]
pub fn schema() -> String {
    let mut generator = SchemaSettings::draft2020_12().for_serialize().into_generator();
    let reports = vec![
        report::<AdjustBody<'_>>("adjust", &mut generator),
        report::<CheckReport<'_>>("check", &mut generator),
        report::<ComparisonBody<'_>>("compare", &mut generator),
        report::<CompletionsBody<'_>>("completions", &mut generator),
        report::<ContourReport<'_>>("contour-test", &mut generator),
        report::<ErrorReport<'_>>("error", &mut generator),
        report::<FindBody<'_>>("find", &mut generator),
        report::<HistoryBody<'_>>("history", &mut generator),
        report::<LayoutsBody<'_>>("layouts", &mut generator),
        report::<OrderBody<'_>>("order", &mut generator),
        report::<PartsBody<'_>>("parts", &mut generator),
        report::<PatternReport<'_>>("pattern", &mut generator),
        report::<PlanReport<'_>>("plan", &mut generator),
        report::<PluginBody>("plugin", &mut generator),
        report::<PluginsBody>("plugins", &mut generator),
        report::<PredictReport<'_>>("predict", &mut generator),
        report::<RangeBody<'_>>("range", &mut generator),
        report::<RecordBody<'_>>("record", &mut generator),
        report::<ReviewBody<'_>>("review", &mut generator),
        report::<SetBody<'_>>("set", &mut generator),
        report::<SizingBody<'_>>("size", &mut generator),
        report::<SizingsBody<'_>>("sizes", &mut generator),
        report::<SurveyBody<'_>>("survey", &mut generator),
        report::<TemplateBody<'_>>("template", &mut generator),
        report::<WeighBody<'_>>("weigh", &mut generator),
        report::<WrittenBody<'_>>("written", &mut generator),
    ];
    let schema = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Seatwright: reports",
        "oneOf": reports,
        "$defs": generator.take_definitions(true),
    });
    serde_json::to_string_pretty(&schema).expect("a schema holds only text and finite numbers")
        + "\n"
}

/// One report, by the name in its `report` key; it has no keys but those of its type.
fn report<T: JsonSchema>(name: &str, generator: &mut SchemaGenerator) -> Value {
    json!({
        "title": name,
        "allOf": [
            generator.subschema_for::<Envelope<'_, T>>(),
            { "properties": { "report": { "const": name }, "schema": { "const": SCHEMA } } },
        ],
        "unevaluatedProperties": false,
    })
}
