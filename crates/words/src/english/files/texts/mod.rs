//! English: how findings about a text are said.

mod meaning;
mod orders;
mod reading;
mod values;

use case::Said;
use case::text::{LengthUnit, TextFinding};

use super::questions::label;
use super::{checks, layouts, said, troubles};

/// Says a finding.
pub(super) fn about(finding: &TextFinding) -> Said {
    match finding {
        TextFinding::File(own) => reading::file(own),
        TextFinding::Syntax(own) => reading::syntax(own),
        TextFinding::Key(own) => reading::key(own),
        TextFinding::Value(own) => values::value(own),
        TextFinding::Word(own) => values::word(own),
        TextFinding::Client(own) => meaning::client(own),
        TextFinding::Wish(own) => meaning::wish(own),
        TextFinding::Record(own) => meaning::record(own),
        TextFinding::Design(own) => meaning::design(own),
        TextFinding::Columns(own) => orders::columns(own),
        TextFinding::Order(own) => orders::order(own),
        TextFinding::Trouble(own) => troubles::about(own),
    }
}

/// Words of a choice, as they are written.
fn alternatives(words: &[&str]) -> String {
    let words: Vec<String> = words.iter().map(|word| format!("\"{word}\"")).collect();
    words.join(", ")
}

fn unit_of_length(unit: LengthUnit) -> &'static str {
    match unit {
        LengthUnit::Millimetres => "mm",
        LengthUnit::Inches => "in",
    }
}

/// How many errors and other remarks there are.
pub(super) fn count(errors: usize, remarks: usize) -> String {
    let words = |count: usize, one: &str| match count {
        1 => format!("1 {one}"),
        _ => format!("{count} {one}s"),
    };
    match (errors, remarks) {
        (0, 0) => "no remarks".to_owned(),
        (0, remarks) => words(remarks, "remark"),
        (errors, 0) => words(errors, "error"),
        (errors, remarks) => words(errors, "error") + ", " + &words(remarks, "remark"),
    }
}
