//! Schemas of our files, against a validator that is not ours: right files are right, and what a
//! schema can know of wrong ones is wrong.

use case::FileKind;
use files::{BUILT_IN_CELLS, BUILT_IN_LAYOUTS, schema, starter};
use jsonschema::Validator;
use serde_json::Value;

use crate::remarks::{CLIENT_LINES, LAYOUT_LINES, WrongLine, with_line};

fn validator(kind: FileKind) -> Validator {
    let schema: Value = serde_json::from_str(&schema(kind, words::ENGLISH)).unwrap();
    jsonschema::draft202012::meta::validate(&schema).unwrap();
    jsonschema::draft202012::new(&schema).unwrap()
}

/// A text as an editor shows it to a validator: days are texts.
fn json(text: &str) -> Option<Value> {
    fn value(own: toml::Value) -> Value {
        match own {
            toml::Value::String(text) => Value::from(text),
            toml::Value::Integer(number) => Value::from(number),
            toml::Value::Float(number) => Value::from(number),
            toml::Value::Boolean(is) => Value::from(is),
            toml::Value::Datetime(day) => Value::from(day.to_string()),
            toml::Value::Array(list) => list.into_iter().map(value).collect(),
            toml::Value::Table(table) => {
                Value::Object(table.into_iter().map(|(key, own)| (key, value(own))).collect())
            }
        }
    }
    let table: toml::Table = toml::from_str(text).ok()?;
    Some(value(toml::Value::Table(table)))
}

#[track_caller]
pub(crate) fn right(kind: FileKind, text: &str) {
    let found: Vec<String> = validator(kind)
        .iter_errors(&json(text).unwrap())
        .map(|error| format!("{}: {error}", error.instance_path()))
        .collect();
    assert!(found.is_empty(), "{found:#?}");
}

#[test]
fn right_files_are_right() {
    for layout in BUILT_IN_LAYOUTS {
        right(FileKind::Layout, layout.text);
    }
    right(FileKind::Layout, starter::layout());
    for cell in BUILT_IN_CELLS {
        right(FileKind::Cell, cell.text);
    }
    right(FileKind::Cell, starter::cell());
    right(FileKind::Client, &starter::example(words::ENGLISH));
    right(FileKind::Client, &crate::appending::recorded());
    for demo in [
        include_str!("../../../cli/demo/client.toml"),
        include_str!("../../../cli/demo/child.toml"),
        include_str!("../../../cli/demo/wide.toml"),
        include_str!("../../../cli/tests/it/data/client.toml"),
    ] {
        right(FileKind::Client, demo);
    }
    right(FileKind::Layout, include_str!("../../../cli/tests/it/data/layout.toml"));
}

#[test]
fn the_examples_of_the_starter_are_right_too() {
    let text = starter::example(words::ENGLISH);
    let uncommented: Vec<&str> = text
        .lines()
        .map(|line| match line.strip_prefix("# ") {
            Some(rest) if rest.starts_with("[[") || rest.contains(" = ") => rest,
            _ => line,
        })
        .collect();
    right(FileKind::Client, &uncommented.join("\n"));
}

#[test]
fn inches_have_their_own_ranges() {
    let text = starter::example(words::ENGLISH).replace("units = \"mm\"", "units = \"in\"");
    assert!(!validator(FileKind::Client).is_valid(&json(&text).unwrap()));
    let inches = text
        .replace("hip_width = 380", "hip_width = 15")
        .replace("trochanter_width = 350", "trochanter_width = 14")
        .replace("{ left = 480, right = 480 }", "{ left = 19, right = 19 }")
        .replace("{ left = 420, right = 420 }", "{ left = 16.5, right = 16.5 }")
        .replace("external_knee_width = 340", "external_knee_width = 13")
        .replace("inside_width = 450", "inside_width = 18")
        .replace("inside_depth = 430", "inside_depth = 17");
    right(FileKind::Client, &inches);
}

/// Wrong lines that no schema can know: each needs the text itself, or a drawing.
const UNSEEN: [&str; 3] = [
    // The point is not there; that it is not is known where all points are.
    "across = { through = [\"mid\", \"sidde\"] }",
    // A seam is missing, so two seeds are in one compartment.
    "",
    // A number is given twice.
    "rear = { seed = [\"0%\", \"25%\"], number = 2, words = \"w\", for = \"seat bone\" }",
];

fn wrong(kind: FileKind, whole: &str, lines: &[WrongLine]) {
    let validator = validator(kind);
    let mut seen = 0;
    for (begins, with, _) in lines {
        let (_, text) = with_line(whole, begins, with);
        // What is no TOML never comes to a schema.
        let Some(json) = json(&text) else { continue };
        // NaN and infinity are no JSON.
        let number = with.ends_with("nan") || with.ends_with("inf");
        if UNSEEN.contains(with) && *begins != "taken_by" || number {
            continue;
        }
        assert!(!validator.is_valid(&json), "{with}");
        seen += 1;
    }
    assert!(seen > 3, "{seen}");
}

#[test]
fn wrong_lines_are_wrong() {
    wrong(FileKind::Client, &starter::example(words::ENGLISH), CLIENT_LINES);
    wrong(FileKind::Layout, starter::layout(), LAYOUT_LINES);
}

#[test]
fn blanks_files_of_other_kinds_and_lists_of_other_words_are_wrong() {
    let client = validator(FileKind::Client);
    assert!(!client.is_valid(&json(&starter::client(words::ENGLISH)).unwrap()));
    assert!(!client.is_valid(&json(starter::layout()).unwrap()));
    let record = |what: &str| {
        let entry = format!("\n[[record]]\nwhat = \"{what}\"\non = 2026-01-22\nby = \"OT\"\n");
        client.is_valid(&json(&(starter::example(words::ENGLISH) + &entry)).unwrap())
    };
    assert!(record("fitting check") && !record("plan") && !record("weighing") && !record("party"));
    let goal = |keys: &str| {
        let entry = format!("\n[[goal]]\n{keys}\n");
        client.is_valid(&json(&(starter::example(words::ENGLISH) + &entry)).unwrap())
    };
    assert!(goal("want = \"near stock\""));
    assert!(goal("want = \"medial support\"\nheight_mm = 5"));
    for bad in [
        "want = \"medial support\"",
        "want = \"near stock\"\nheight_mm = 5",
        "want = \"off-load\"\nsite = \"coccyx\"",
        "want = \"peace\"",
    ] {
        assert!(!goal(bad), "{bad}");
    }
}
