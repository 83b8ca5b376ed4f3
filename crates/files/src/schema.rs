//! JSON Schemas of our files, by which an editor completes keys, explains them and marks what is
//! wrong while it is written. Made from the table of questions.
//!
//! A schema knows less than `check`: nothing of what values mean together, of other files, or of
//! what is unusual and possible.

use case::FileKind;
use case::question::{Form, Group, Kind as Answer, Need, Question, QuestionWords, Range};
use serde_json::{Map, Value, json};

/// What names are made of.
const NAME: &str = "^[a-z][a-z0-9-]{0,39}$";
/// A text of one line that says something.
const LINE: &str = "^[^\\u0000-\\u001f\\u007f-\\u009f]*\\S[^\\u0000-\\u001f\\u007f-\\u009f]*$";
/// The tag of a language.
const LANGUAGE: &str = "^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$";
/// Millimetres, a share, or both.
const MEASURE: &str = "^\\s*[+-]?[0-9.]+\\s*(%\\s*([+-]\\s*[0-9.]+)?\\s*)?$";
/// What `case::Check` reads.
const CHECK: &str = "^\\s*(top|under|press|lower|reading|skin) .+$";

/// Returns the JSON Schema (draft 2020-12) of a kind of file.
///
/// # Panics
///
/// Never: a schema holds only text and finite numbers.
#[must_use]
pub fn schema(kind: FileKind, words: &dyn QuestionWords) -> String {
    let group = kind.group();
    let mut schema = table(words, group);
    let head = json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": words.file_title(kind),
    });
    if let (Value::Object(own), Value::Object(head)) = (&mut schema, head) {
        own.extend(head);
        if group == Group::Client {
            let lengths = |in_mm| lengths(group, in_mm);
            own.insert(
                "if".to_owned(),
                json!({ "properties": { "measures": {
                    "properties": { "units": { "const": "in" } }, "required": ["units"] } } }),
            );
            own.insert("then".to_owned(), lengths(25.4));
            own.insert("else".to_owned(), lengths(1.0));
        }
    }
    serde_json::to_string_pretty(&schema).expect("a schema holds only text and finite numbers")
        + "\n"
}

/// The schema of a table.
fn table(words: &dyn QuestionWords, group: Group) -> Value {
    let mut properties = Map::new();
    let mut required: Vec<&str> = Vec::new();
    let mut rules: Vec<Value> = Vec::new();
    for question in Question::of(group) {
        let row = question.row();
        properties.insert(row.key.to_owned(), property(words, question));
        match row.need {
            Need::Always => required.push(row.key),
            Need::Never => {}
            Need::Both(other) => rules.push(json!({ "dependentRequired": { row.key: [other] } })),
            Need::OneOf(other) => {
                let rule = json!({
                    "oneOf": [{ "required": [row.key] }, { "required": [other] }] });
                let mirrored = json!({
                    "oneOf": [{ "required": [other] }, { "required": [row.key] }] });
                if !rules.contains(&mirrored) {
                    rules.push(rule);
                }
            }
            Need::With(other, words) => rules.push(json!({
                "if": { "properties": { other: { "enum": words } }, "required": [other] },
                "then": { "required": [row.key] },
                "else": { "properties": { row.key: false } },
            })),
            Need::May(other, words) => rules.push(json!({
                "if": { "required": [row.key] },
                "then": { "properties": { other: { "enum": words } }, "required": [other] },
            })),
        }
    }
    let mut entries = Vec::new();
    for child in group.children() {
        if child.entry().is_some() {
            entries.push(child);
            continue;
        }
        properties.insert(child.key().to_owned(), of_group(words, child));
        if child.is_required() {
            required.push(child.key());
        }
    }
    if let Some(first) = entries.first() {
        properties.insert(first.key().to_owned(), one_of_entries(words, &entries));
    }
    let mut schema = json!({
        "type": "object",
        "properties": properties,
        "required": required,
        "additionalProperties": false,
    });
    if !rules.is_empty() {
        schema["allOf"] = Value::Array(rules);
    }
    schema
}

/// The schema of a group by the way in which it is written.
fn of_group(words: &dyn QuestionWords, group: Group) -> Value {
    let mut schema = match group.form() {
        Form::File | Form::Heading | Form::Braces => table(words, group),
        Form::List | Form::BracesInList => json!({ "type": "array", "items": table(words, group) }),
        Form::Named => json!({
            "type": "object",
            "propertyNames": { "pattern": NAME },
            "additionalProperties": named(words, group),
        }),
    };
    if matches!(group, Group::MadeSize | Group::PlanCount | Group::FillingCount) {
        schema["minItems"] = json!(1);
    }
    let comment = words.group_comment(group);
    if !comment.is_empty() {
        schema["description"] = json!(comment);
    }
    schema
}

/// What stands behind a name of the author's: a point has a short form.
fn named(words: &dyn QuestionWords, group: Group) -> Value {
    if group != Group::Points {
        return table(words, group);
    }
    let spot = json!({
        "type": "array",
        "prefixItems": [measure(), measure(), { "type": "string", "pattern": "^round\\s*[0-9.]+$" }],
        "items": false,
        "minItems": 2,
    });
    json!({ "anyOf": [spot, table(words, group)] })
}

/// The schema of the record: what an entry is says which keys it has.
fn one_of_entries(words: &dyn QuestionWords, entries: &[Group]) -> Value {
    let kinds: Vec<&str> = entries.iter().filter_map(|group| group.entry()).collect();
    let rules: Vec<Value> = (entries.iter())
        .map(|group| {
            json!({
                "if": { "properties": { "what": { "const": group.entry() } }, "required": ["what"] },
                "then": table(words, *group),
            })
        })
        .collect();
    json!({ "type": "array", "items": {
        "type": "object",
        "properties": { "what": { "enum": kinds } },
        "required": ["what"],
        "allOf": rules,
    } })
}

/// The schema of an answer, with what explains it.
fn property(words: &dyn QuestionWords, question: Question) -> Value {
    let row = question.row();
    let one = answer(row.kind);
    let mut schema = if row.each_side {
        json!({
            "type": "object",
            "properties": { "left": one, "right": one },
            "additionalProperties": false,
        })
    } else {
        one
    };
    let (label, comment) = (words.label(question), words.comment(question));
    schema["title"] = json!(label);
    if !comment.is_empty() {
        schema["description"] = json!(comment);
    }
    schema
}

fn answer(kind: Answer) -> Value {
    match kind {
        Answer::Just(number) => json!({ "const": number }),
        Answer::Word(word) => json!({ "const": word }),
        // Its range is in the rule of the file's unit.
        Answer::Length(_) => json!({ "type": "number" }),
        Answer::Number(_, Range { least, most }) => {
            json!({ "type": "number", "minimum": least, "maximum": most })
        }
        Answer::Whole { least, most } => {
            json!({ "type": "integer", "minimum": least, "maximum": most })
        }
        Answer::Date => json!({ "type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" }),
        Answer::Choice(words) => json!({ "enum": words }),
        Answer::YesNo => json!({ "type": "boolean" }),
        Answer::Text => line(),
        Answer::Words => by_language(),
        Answer::Texts => json!({ "type": "array", "items": line() }),
        Answer::Code => json!({
            "type": "string",
            "pattern": "^(?=.*[0-9])[A-Za-z0-9][A-Za-z0-9-]{1,23}$",
            "not": { "pattern": "^([Cc][Oo][Mm]|[Ll][Pp][Tt]).$" },
        }),
        Answer::Phone => json!({
            "type": "string",
            "allOf": [{ "pattern": "^[0-9 +()./x-]*$" }, { "pattern": "([0-9][^0-9]*){3}" }],
        }),
        Answer::Size => size(),
        Answer::Name => json!({ "type": "string", "pattern": NAME }),
        Answer::Names => {
            json!({ "type": "array", "items": { "type": "string", "pattern": NAME } })
        }
        Answer::Layout => json!({
            "type": "string",
            "pattern": "^(plugin:)?[a-z][a-z0-9-]{0,39}$|[/\\\\]|\\.toml$",
        }),
        Answer::Parameters => json!({
            "type": "object",
            "propertyNames": { "pattern": NAME },
            "additionalProperties": { "type": "number" },
        }),
        Answer::Measure => measure(),
        Answer::Spot => json!({
            "type": "array", "items": measure(), "minItems": 2, "maxItems": 2 }),
        Answer::Pair => json!({
            "type": "object",
            "properties": { "left": number(), "right": number() },
            "required": ["left", "right"],
            "additionalProperties": false,
        }),
        Answer::Place => json!({ "anyOf": [number(), { "const": "spare" }] }),
        Answer::Checks => {
            json!({ "type": "array", "items": { "type": "string", "pattern": CHECK } })
        }
        Answer::Digest => json!({ "type": "string", "pattern": "^[0-9a-f]{16}$" }),
    }
}

/// A text, or one for each language.
fn by_language() -> Value {
    json!({ "anyOf": [line(), {
            "type": "object",
            "propertyNames": { "pattern": LANGUAGE },
            "additionalProperties": line(),
            "required": ["en"],
        }] })
}

fn line() -> Value {
    json!({ "type": "string", "pattern": LINE })
}

fn measure() -> Value {
    json!({ "anyOf": [{ "type": "number" }, { "type": "string", "pattern": MEASURE }] })
}

/// The number of a compartment.
fn number() -> Value {
    json!({ "type": "integer", "minimum": 1, "maximum": 99 })
}

/// Width by depth, each from 150 to 800 mm, or in whole and broken inches within that.
fn size() -> Value {
    let pair = |side: &str, unit: &str| format!("^\\s*({side})\\s*[x×]\\s*({side})\\s*{unit}\\s*$");
    let mm = pair("1[5-9][0-9](\\.[0-9]+)?|[2-7][0-9]{2}(\\.[0-9]+)?|800(\\.0+)?", "(mm)?");
    let inches = pair(
        "5\\.9[1-9][0-9]*|[6-9](\\.[0-9]+)?|[12][0-9](\\.[0-9]+)?|30(\\.[0-9]+)?|31(\\.[0-4][0-9]*)?",
        "in",
    );
    json!({ "type": "string", "anyOf": [{ "pattern": mm }, { "pattern": inches }] })
}

/// The ranges of all lengths in and below a group, in a unit.
fn lengths(group: Group, in_mm: f64) -> Value {
    let mut properties = Map::new();
    for question in Question::of(group) {
        let row = question.row();
        let Answer::Length(Range { least, most }) = row.kind else { continue };
        let range = json!({ "minimum": least / in_mm, "maximum": most / in_mm });
        let range = match row.each_side {
            true => json!({ "properties": { "left": range, "right": range } }),
            false => range,
        };
        properties.insert(row.key.to_owned(), range);
    }
    for child in group.children() {
        let inner = lengths(child, in_mm);
        if inner["properties"].as_object().is_some_and(|inner| !inner.is_empty()) {
            properties.insert(child.key().to_owned(), inner);
        }
    }
    json!({ "properties": properties })
}
