//! Appends entries to the record of a client's file, and leaves what a person wrote as it is.

use case::{
    Adjustment, Check, Entry, Expected, Filled, Move, NotAppended, PartsChecked, Place,
    RecordedPlan, Recount,
};
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, value};

/// Returns `text` with an entry at the end of its record.
///
/// Every byte of `text` is in the answer, in the same order: comments, spacing and line ends stay.
///
/// # Errors
///
/// Returns an error where `text` is not TOML, or its `record` is no list of tables.
pub fn append_entry(text: &str, entry: &Entry) -> Result<String, NotAppended> {
    append(text, table_of(entry))
}

fn append(text: &str, entry: Table) -> Result<String, NotAppended> {
    let document: DocumentMut = text
        .parse()
        .map_err(|error: toml_edit::TomlError| NotAppended::NotToml(error.message().to_owned()))?;
    match document.get("record") {
        None => {}
        Some(Item::ArrayOfTables(_)) => {}
        Some(_) => return Err(NotAppended::RecordForm),
    }
    let entry = under_heading(entry);
    // An entry of a list of tables may stand anywhere after its sisters, so it is written at the
    // end, and nothing above it is touched.
    let line_end = if text.contains("\r\n") { "\r\n" } else { "\n" };
    let gap = match text {
        "" => String::new(),
        ended if ended.ends_with('\n') => line_end.to_owned(),
        _ => line_end.repeat(2),
    };
    Ok(format!("{text}{gap}{}", entry.replace('\n', line_end)))
}

/// An entry as text, under the heading of the record.
fn under_heading(table: Table) -> String {
    let mut record = ArrayOfTables::new();
    record.push(table);
    let mut document = DocumentMut::new();
    document.insert("record", Item::ArrayOfTables(record));
    document.to_string()
}

/// An entry as a table: what it is, when and by whom, then what it says.
fn table_of(entry: &Entry) -> Table {
    let mut table = Table::new();
    table["what"] = value(entry.what());
    table["on"] = value(date(entry.on()));
    table["by"] = value(entry.by());
    match entry {
        Entry::Plan(own) => plan(&mut table, own),
        Entry::Adjustment(own) => adjustment(&mut table, own),
        Entry::FittingCheck(own) => {
            if let Some(passed) = own.passed {
                table["passed"] = value(passed);
            }
            optional(&mut table, "found", own.found.as_deref());
        }
        Entry::Recount(own) => recount(&mut table, own),
        Entry::Weighed(own) => table["kg"] = value(hundredths(own.weight.to_kg())),
        Entry::Filled(own) | Entry::Incoming(own) => filled(&mut table, own),
        Entry::Checked(own) => checked(&mut table, own),
        Entry::Moved(own) => {
            table["moves"] = value(moves(&own.moves));
            optional(&mut table, "why", own.why.as_deref());
        }
        Entry::Returned(own) => {
            table["entry"] = value(own.entry as i64);
            table["counts"] = value(numbered(&own.counts));
            optional(&mut table, "why", own.why.as_deref());
        }
        Entry::Skin(own) => {
            table["site"] = value(own.site.id());
            table["is"] = value(own.answer.words());
        }
        Entry::Cleaned(own) => optional(&mut table, "why", own.why.as_deref()),
        Entry::Withdrawn(own) => {
            table["entry"] = value(own.entry as i64);
            table["because"] = value(&own.because);
        }
    }
    table
}

fn optional(table: &mut Table, key: &str, text: Option<&str>) {
    if let Some(text) = text {
        table[key] = value(text);
    }
}

fn found(checks: &[Check]) -> Array {
    checks.iter().map(ToString::to_string).collect()
}

fn adjustment(table: &mut Table, adjustment: &Adjustment) {
    table["found"] = value(found(&adjustment.checks));
    table["moves"] = value(moves(&adjustment.moves));
    optional(table, "why", adjustment.why.as_deref());
}

fn moves(moves: &[Move]) -> Array {
    let mut array = Array::new();
    for own in moves {
        let mut entry = InlineTable::new();
        entry.insert("from", place(own.from));
        entry.insert("to", place(own.to));
        entry.insert("cells", i64::from(own.cells).into());
        array.push(toml_edit::Value::InlineTable(entry));
    }
    array
}

fn recount(table: &mut Table, recount: &Recount) {
    table["counts"] = value(numbered(&recount.counts));
    if let Some(spare) = recount.spare {
        table["spare"] = value(i64::from(spare));
    }
}

fn filled(table: &mut Table, filled: &Filled) {
    if let Some((layout, size)) = &filled.cushion {
        table["layout"] = value(layout);
        table["size"] = value(size.to_string());
    }
    table["counts"] = value(numbered(&filled.counts));
    if let Some(spare) = filled.spare {
        table["spare"] = value(i64::from(spare));
    }
    optional(table, "batch", filled.batch.as_deref());
    optional(table, "serial", filled.serial.as_deref());
    optional(table, "why", filled.why.as_deref());
}

fn checked(table: &mut Table, check: &PartsChecked) {
    table["found"] = value(found(&check.found));
    table["transfer"] = value(check.transfer);
    table["reach"] = value(check.reach);
    if let Some(passed) = check.passed {
        table["passed"] = value(passed);
    }
    optional(table, "why", check.why.as_deref());
}

/// Cells by the number of the compartment, on a line.
fn numbered(counts: &[(u8, u32)]) -> Array {
    let table = |(number, cells): &(u8, u32)| {
        let mut table = InlineTable::new();
        table.insert("number", i64::from(*number).into());
        table.insert("cells", i64::from(*cells).into());
        toml_edit::Value::InlineTable(table)
    };
    counts.iter().map(table).collect()
}

/// What a plan was expected to do; numbers as far as they mean something.
fn expected(expected: &Expected) -> InlineTable {
    let (lower, by) = match expected.lower {
        Some((side, by)) => (side.words(), by.to_mm()),
        None => ("level", 0.0),
    };
    let mut table = InlineTable::new();
    table.insert("left_mm", rounded(expected.under.left.to_mm()).into());
    table.insert("right_mm", rounded(expected.under.right.to_mm()).into());
    table.insert("lower", lower.into());
    table.insert("lower_mm", rounded(by).into());
    table.insert("kg", rounded(expected.weight.to_kg()).into());
    table
}

/// A number with one decimal; nothing is never negative.
fn rounded(number: f64) -> f64 {
    (number * 10.0).round() / 10.0 + 0.0
}

/// A weight to a hundredth, so that tenths of a pound are the same when they are shown again.
fn hundredths(kg: f64) -> f64 {
    (kg * 100.0).round() / 100.0
}

fn place(place: Place) -> toml_edit::Value {
    match place {
        Place::Compartment(number) => i64::from(number).into(),
        Place::Spare => "spare".into(),
    }
}

fn plan(table: &mut Table, plan: &RecordedPlan) {
    table["layout"] = value(&plan.layout);
    table["size"] = value(plan.size.to_string());
    table["counts"] = value(counts(plan));
    table["total"] = value(i64::from(plan.total()));
    table["program"] = value(&plan.program);
    table["layout_digest"] = value(plan.layout_digest.as_str());
    table["cell_digest"] = value(plan.cell_digest.as_str());
    table["parameters_digest"] = value(plan.parameters_digest.as_str());
    optional(table, "drawn_by", plan.drawn_by.as_deref());
    optional(table, "why", plan.why.as_deref());
    if let Some(own) = &plan.expected {
        table["expected"] = value(expected(own));
    }
}

pub(crate) fn date(date: case::Date) -> toml_edit::Datetime {
    toml_edit::Datetime {
        date: Some(toml_edit::Date {
            year: date.year().unsigned_abs(),
            month: date.month().unsigned_abs(),
            day: date.day().unsigned_abs(),
        }),
        time: None,
        offset: None,
    }
}

/// The counts, a line for each compartment.
fn counts(plan: &RecordedPlan) -> Array {
    let mut counts = Array::new();
    for count in &plan.counts {
        let mut table = InlineTable::new();
        table.insert("id", count.id.as_str().into());
        table.insert("number", i64::from(count.number).into());
        table.insert("stock", i64::from(count.stock).into());
        table.insert("planned", i64::from(count.planned).into());
        let mut entry = toml_edit::Value::InlineTable(table);
        entry.decor_mut().set_prefix("\n  ");
        counts.push_formatted(entry);
    }
    counts.set_trailing_comma(true);
    counts.set_trailing("\n");
    counts
}
