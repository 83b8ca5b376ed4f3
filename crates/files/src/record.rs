//! Reads the record of a client's file: plans and checks, oldest first.

use case::{
    Adjustment, Check, Date, Digest, Entry, FittingCheck, Move, Place, RecordedCount, RecordedPlan,
    Recount, Weighed,
};
use cushion::{Mass, Name};

use crate::client::entries;
use crate::cursor::{Table, Value};
use crate::layout::size;
use crate::limits::MOST_CELLS;

/// The word for a plan in the record.
pub(crate) const PLAN: &str = "plan";
/// The words for a fitting check in the record.
pub(crate) const FITTING_CHECK: &str = "fitting check";
/// The word for an adjustment in the record.
pub(crate) const ADJUSTMENT: &str = "adjustment";
/// The word for a recount in the record.
const RECOUNT: &str = "recount";
/// The word for a weighing in the record.
const WEIGHING: &str = "weighing";

/// Reads all entries; a remark where a date goes back.
pub(crate) fn record(table: &Table<'_>) -> Option<Vec<Entry>> {
    let entries = entries(table, "record", entry)?;
    let dates: Vec<Date> = entries.iter().map(Entry::on).collect();
    if dates.windows(2).any(|pair| pair[1] < pair[0]) {
        table.remarks.remark(
            table.key_span("record"),
            "the record is not in the order of its dates",
            "the last entry counts as the newest; put it in order",
        );
    }
    Some(entries)
}

fn entry(table: &Table<'_>) -> Option<Entry> {
    let what = table.required("what")?;
    let entry = match what.text()? {
        PLAN => plan(table).map(Entry::Plan),
        FITTING_CHECK => check(table).map(Entry::FittingCheck),
        ADJUSTMENT => adjustment(table).map(Entry::Adjustment),
        RECOUNT => recount(table).map(Entry::Recount),
        WEIGHING => weighed(table).map(Entry::Weighed),
        other => {
            what.remarks.error(
                what.span(),
                format!("no entry of the record is called `{other}`"),
                format!(
                    "write \"{PLAN}\", \"{FITTING_CHECK}\", \"{ADJUSTMENT}\", \"{RECOUNT}\" or \"{WEIGHING}\""
                ),
            );
            return None;
        }
    };
    table.finish();
    entry
}

fn check(table: &Table<'_>) -> Option<FittingCheck> {
    let on = table.required("on").and_then(|value| value.date());
    let by = table.required("by").and_then(|value| value.sentence());
    let passed = table.optional("passed");
    if passed.is_none() {
        table.remarks.remark(
            table.span(),
            "the fitting check does not say whether it passed, so papers say NOT FITTED YET",
            "write `passed = true` where the client may use the cushion, else `passed = false`",
        );
    }
    let passed = passed.and_then(|value| value.boolean());
    let found = table.optional("found").and_then(|value| value.sentence());
    Some(FittingCheck { on: on?, by: by?, passed, found })
}

/// The day and the person of an entry.
fn signed(table: &Table<'_>) -> Option<(Date, String)> {
    let on = table.required("on").and_then(|value| value.date());
    let by = table.required("by").and_then(|value| value.sentence());
    Some((on?, by?))
}

fn adjustment(table: &Table<'_>) -> Option<Adjustment> {
    let signed = signed(table);
    let found = table.required("found").and_then(|value| {
        let checks = value.list()?.into_iter().map(|value| {
            let read = Check::read_whole(value.text()?);
            let note = |wrong: String| {
                let hint = "write it as `adjust` records it, such as \"top left=tight\"";
                value.remarks.error(value.span(), wrong, hint);
            };
            read.map_err(note).ok()
        });
        checks.collect::<Vec<_>>().into_iter().collect::<Option<Vec<_>>>()
    });
    let moves = entries(table, "moves", moved);
    let why = table.optional("why").and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Adjustment { on, by, checks: found?, moves: moves?, why })
}

fn moved(table: &Table<'_>) -> Option<Move> {
    let place = |key| {
        let value = table.required(key)?;
        // Numbers, or the word for the spare bag.
        if value.if_number().is_some() {
            return value.whole(1..=99).map(|number| Place::Compartment(number as u8));
        }
        value.choice("place of cells", &[("spare", Place::Spare)])
    };
    let (from, to) = (place("from"), place("to"));
    let cells = table.required("cells").and_then(|value| count(&value));
    table.finish();
    Some(Move { from: from?, to: to?, cells: cells? })
}

fn recount(table: &Table<'_>) -> Option<Recount> {
    let signed = signed(table);
    let counts = entries(table, "counts", |table| {
        let number = table.required("number").and_then(|value| value.whole(1..=99));
        let cells = table.required("cells").and_then(|value| count(&value));
        table.finish();
        Some((number? as u8, cells?))
    });
    let (on, by) = signed?;
    Some(Recount { on, by, counts: counts? })
}

fn weighed(table: &Table<'_>) -> Option<Weighed> {
    let signed = signed(table);
    let kg = table
        .required("kg")
        .and_then(|value| value.number_in("body weight", crate::limits::WEIGHT_KG, "kg"));
    let (on, by) = signed?;
    Some(Weighed { on, by, weight: Mass::from_kg(kg?) })
}

fn plan(table: &Table<'_>) -> Option<RecordedPlan> {
    let on = table.required("on").and_then(|value| value.date());
    let sentence = |key| table.required(key).and_then(|value| value.sentence());
    let (by, layout, program) = (sentence("by"), sentence("layout"), sentence("program"));
    let size = table.required("size").and_then(|value| size(&value));
    let counts = table.required("counts").and_then(|value| counts(&value));
    let total = table.required("total").map(|value| (value.span(), count(&value)));
    let digest = |key| table.required(key).and_then(|value| digest(&value));
    let layout_digest = digest("layout_digest");
    let cell_digest = digest("cell_digest");
    let parameters_digest = digest("parameters_digest");
    let drawn_by = table.optional("drawn_by").and_then(|value| value.sentence());
    let why = table.optional("why").and_then(|value| value.sentence());
    let plan = RecordedPlan {
        on: on?,
        by: by?,
        layout: layout?,
        size: size?,
        counts: counts?,
        program: program?,
        layout_digest: layout_digest?,
        cell_digest: cell_digest?,
        parameters_digest: parameters_digest?,
        drawn_by,
        why,
    };
    let (span, total) = total?;
    let (total, sum) = (total?, plan.total());
    if total != sum {
        table.remarks.error(
            span,
            format!("the counts add up to {sum}, and the total says {total}"),
            "one of them was changed by hand; record the plan again",
        );
        return None;
    }
    Some(plan)
}

fn counts(value: &Value<'_>) -> Option<Vec<RecordedCount>> {
    let read: Vec<Option<RecordedCount>> =
        value.list()?.iter().map(|value| recorded_count(&value.table()?)).collect();
    let mut counts: Vec<RecordedCount> = Vec::new();
    for count in read {
        let count = count?;
        if counts.iter().any(|known| known.number == count.number || known.id == count.id) {
            let message = format!("the compartment {} is counted twice", count.number);
            value.remarks.error(value.span(), message, "record the plan again");
            return None;
        }
        counts.push(count);
    }
    if counts.is_empty() {
        value.remarks.error(value.span(), "there are no counts", "record the plan again");
        return None;
    }
    counts.sort_by_key(|count| count.number);
    Some(counts)
}

fn recorded_count(table: &Table<'_>) -> Option<RecordedCount> {
    let id: Option<Name> = table.required("id").and_then(|value| value.name());
    let number = table.required("number").and_then(|value| value.whole(1..=99));
    let stock = table.required("stock").and_then(|value| count(&value));
    let planned = table.required("planned").and_then(|value| count(&value));
    table.finish();
    Some(RecordedCount { id: id?, number: number? as u8, stock: stock?, planned: planned? })
}

fn count(value: &Value<'_>) -> Option<u32> {
    // A whole cushion holds less than a hundred times the most of one compartment.
    value.whole(0..=100 * i64::from(MOST_CELLS)).map(|count| count as u32)
}

fn digest(value: &Value<'_>) -> Option<Digest> {
    let digest = Digest::new(value.text()?);
    if digest.is_none() {
        value.remarks.error(value.span(), "this is not a digest", "record the plan again");
    }
    digest
}
