//! Appends plans and adjustments to a client's file, and leaves what a person wrote as it is.

use case::{Adjustment, NotAppended, Place, RecordedPlan};
use toml_edit::{Array, ArrayOfTables, DocumentMut, InlineTable, Item, Table, value};

use crate::record::{ADJUSTMENT, PLAN};

/// Returns `text` with a plan at the end of its record.
///
/// Every byte of `text` is in the answer, in the same order: comments, spacing and line ends stay.
///
/// # Errors
///
/// Returns an error where `text` is not TOML, or its `record` is no list of tables.
pub fn append_plan(text: &str, plan: &RecordedPlan) -> Result<String, NotAppended> {
    append(text, plan_table(plan))
}

/// Returns `text` with an adjustment at the end of its record, with the same promise.
///
/// # Errors
///
/// As [`append_plan`].
pub fn append_adjustment(text: &str, adjustment: &Adjustment) -> Result<String, NotAppended> {
    append(text, adjustment_table(adjustment))
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

fn adjustment_table(adjustment: &Adjustment) -> Table {
    let mut table = Table::new();
    table["what"] = value(ADJUSTMENT);
    table["on"] = value(date(adjustment.on));
    table["by"] = value(&adjustment.by);
    let found: Array = adjustment.checks.iter().map(|check| check.to_string()).collect();
    table["found"] = value(found);
    let mut moves = Array::new();
    for own in &adjustment.moves {
        let mut entry = InlineTable::new();
        entry.insert("from", place(own.from));
        entry.insert("to", place(own.to));
        entry.insert("cells", i64::from(own.cells).into());
        moves.push(toml_edit::Value::InlineTable(entry));
    }
    table["moves"] = value(moves);
    if let Some(why) = &adjustment.why {
        table["why"] = value(why);
    }
    table
}

fn place(place: Place) -> toml_edit::Value {
    match place {
        Place::Compartment(number) => i64::from(number).into(),
        Place::Spare => "spare".into(),
    }
}

fn plan_table(plan: &RecordedPlan) -> Table {
    let mut table = Table::new();
    table["what"] = value(PLAN);
    table["on"] = value(date(plan.on));
    table["by"] = value(&plan.by);
    table["layout"] = value(&plan.layout);
    table["size"] = value(plan.size.to_string());
    table["counts"] = value(counts(plan));
    table["total"] = value(i64::from(plan.total()));
    table["program"] = value(&plan.program);
    table["layout_digest"] = value(plan.layout_digest.as_str());
    table["cell_digest"] = value(plan.cell_digest.as_str());
    table["parameters_digest"] = value(plan.parameters_digest.as_str());
    if let Some(drawn_by) = &plan.drawn_by {
        table["drawn_by"] = value(drawn_by);
    }
    if let Some(why) = &plan.why {
        table["why"] = value(why);
    }
    table
}

fn date(date: case::Date) -> toml_edit::Datetime {
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
