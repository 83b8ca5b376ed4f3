//! Reads the record of a client's file: plans and checks, oldest first.

use case::question::{Group, Question};
use case::text::{KeyFinding, RecordFinding};
use case::{
    Adjustment, Check, Date, Digest, Entry, FittingCheck, Move, Place, RecordedCount, RecordedPlan,
    Recount, Weighed,
};
use cushion::Mass;

use crate::cursor::Table;
use crate::value::Value;

/// The word for a plan in the record.
pub(crate) const PLAN: &str = "plan";
/// The word for an adjustment in the record.
pub(crate) const ADJUSTMENT: &str = "adjustment";

/// Reads all entries; a remark where a date goes back.
pub(crate) fn record(table: &Table<'_>) -> Option<Vec<Entry>> {
    let list = table.list("record")?;
    let read: Vec<Option<Entry>> = list.iter().map(entry).collect();
    let entries: Vec<Entry> = read.into_iter().collect::<Option<_>>()?;
    let dates: Vec<Date> = entries.iter().map(Entry::on).collect();
    if dates.windows(2).any(|pair| pair[1] < pair[0]) {
        table.remarks.remark(table.key_span("record"), RecordFinding::Order);
    }
    Some(entries)
}

fn entry(value: &Value<'_>) -> Option<Entry> {
    // What an entry is says which keys it has.
    let table = value.table(Some(Group::Plan))?;
    if !table.has(Question::PlanWhat.row().key) {
        // Nothing else is said of an entry of which nobody knows what it is, so a slip in this key
        // is said here.
        table.remarks.error(table.span(), KeyFinding::Missing(Question::PlanWhat));
    }
    let what = table.optional(Question::PlanWhat)?;
    let written = what.text()?;
    let group = Group::ALL.iter().copied().find(|group| group.entry() == Some(written));
    let table = value.table(group.or(Some(Group::Plan)))?;
    let entry = match group {
        Some(Group::Plan) => plan(&table).map(Entry::Plan),
        Some(Group::FittingCheck) => check(&table).map(Entry::FittingCheck),
        Some(Group::Adjustment) => adjustment(&table).map(Entry::Adjustment),
        Some(Group::Recount) => recount(&table).map(Entry::Recount),
        Some(Group::Weighing) => weighed(&table).map(Entry::Weighed),
        _ => {
            what.remarks.error(what.span(), RecordFinding::NoSuchEntry(written.to_owned()));
            return None;
        }
    };
    table.finish();
    entry
}

/// The day and the person of an entry.
fn signed(table: &Table<'_>, [on, by]: [Question; 2]) -> Option<(Date, String)> {
    let on = table.required(on).and_then(|value| value.date());
    let by = table.required(by).and_then(|value| value.sentence());
    Some((on?, by?))
}

fn check(table: &Table<'_>) -> Option<FittingCheck> {
    let signed = signed(table, [Question::CheckOn, Question::CheckBy]);
    let passed = table.optional(Question::CheckPassed);
    if !table.has(Question::CheckPassed.row().key) {
        table.remarks.remark(table.span(), RecordFinding::NotSaidToPass);
    }
    let passed = passed.and_then(|value| value.boolean());
    let found = table.optional(Question::CheckFound).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(FittingCheck { on, by, passed, found })
}

fn adjustment(table: &Table<'_>) -> Option<Adjustment> {
    let signed = signed(table, [Question::AdjustmentOn, Question::AdjustmentBy]);
    let found = table.required(Question::AdjustmentFound).and_then(|value| {
        let checks = value.list()?.into_iter().map(|value| {
            let read = Check::read_whole(value.text()?);
            let note = |wrong| value.remarks.error(value.span(), RecordFinding::Check(wrong));
            read.map_err(note).ok()
        });
        checks.collect::<Vec<_>>().into_iter().collect::<Option<Vec<_>>>()
    });
    let moves = table.entries(Group::Move, moved);
    let why = table.optional(Question::AdjustmentWhy).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Adjustment { on, by, checks: found?, moves: moves?, why })
}

fn moved(table: &Table<'_>) -> Option<Move> {
    let place = |question| {
        let value = table.required(question)?;
        // Numbers, or the word for the spare bag.
        if value.get().as_str() == Some("spare") {
            return Some(Place::Spare);
        }
        value.whole_in(1, 99).map(|number| Place::Compartment(number as u8))
    };
    let (from, to) = (place(Question::MoveFrom), place(Question::MoveTo));
    let cells = table.required(Question::MoveCells).and_then(|value| count(&value));
    table.finish();
    Some(Move { from: from?, to: to?, cells: cells? })
}

fn recount(table: &Table<'_>) -> Option<Recount> {
    let signed = signed(table, [Question::RecountOn, Question::RecountBy]);
    let counts = table.entries(Group::RecountCount, |table| {
        let number = table.required(Question::RecountNumber).and_then(|value| value.whole());
        let cells = table.required(Question::RecountCells).and_then(|value| count(&value));
        table.finish();
        Some((number? as u8, cells?))
    });
    let (on, by) = signed?;
    Some(Recount { on, by, counts: counts? })
}

fn weighed(table: &Table<'_>) -> Option<Weighed> {
    let signed = signed(table, [Question::WeighingOn, Question::WeighingBy]);
    let kg = table.required(Question::WeighingKg).and_then(|value| value.number_in_range());
    let (on, by) = signed?;
    Some(Weighed { on, by, weight: Mass::from_kg(kg?) })
}

fn plan(table: &Table<'_>) -> Option<RecordedPlan> {
    let signed = signed(table, [Question::PlanOn, Question::PlanBy]);
    let required = |question| table.required(question).and_then(|value| value.sentence());
    let (layout, program) = (required(Question::PlanLayout), required(Question::PlanProgram));
    let size = table.required(Question::PlanSize).and_then(|value| value.size());
    let counts = counts(table);
    let total = table.required(Question::PlanTotal);
    let total = total.map(|value| (value.span(), count(&value)));
    let digest = |question| table.required(question).and_then(|value| digest(&value));
    let layout_digest = digest(Question::PlanLayoutDigest);
    let cell_digest = digest(Question::PlanCellDigest);
    let parameters_digest = digest(Question::PlanParametersDigest);
    let optional = |question| table.optional(question).and_then(|value| value.sentence());
    let (drawn_by, why) = (optional(Question::PlanDrawnBy), optional(Question::PlanWhy));
    let (on, by) = signed?;
    let plan = RecordedPlan {
        on,
        by,
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
        table.remarks.error(span, RecordFinding::Sum { sum, total });
        return None;
    }
    Some(plan)
}

fn counts(table: &Table<'_>) -> Option<Vec<RecordedCount>> {
    let key = Group::PlanCount.key();
    if !table.has(key) {
        table.required_sub(Group::PlanCount);
        return None;
    }
    let wrong = |finding| table.remarks.error(table.key_span(key), finding);
    let mut counts: Vec<RecordedCount> = Vec::new();
    for count in table.entries(Group::PlanCount, recorded_count)? {
        if counts.iter().any(|known| known.number == count.number || known.id == count.id) {
            wrong(RecordFinding::CountedTwice(count.number));
            return None;
        }
        counts.push(count);
    }
    if counts.is_empty() {
        wrong(RecordFinding::NoCounts);
        return None;
    }
    counts.sort_by_key(|count| count.number);
    Some(counts)
}

fn recorded_count(table: &Table<'_>) -> Option<RecordedCount> {
    let id = table.required(Question::PlanCountId).and_then(|value| value.name());
    let number = table.required(Question::PlanCountNumber).and_then(|value| value.whole());
    let stock = table.required(Question::PlanCountStock).and_then(|value| count(&value));
    let planned = table.required(Question::PlanCountPlanned).and_then(|value| count(&value));
    table.finish();
    Some(RecordedCount { id: id?, number: number? as u8, stock: stock?, planned: planned? })
}

fn count(value: &Value<'_>) -> Option<u32> {
    value.whole().map(|count| count as u32)
}

fn digest(value: &Value<'_>) -> Option<Digest> {
    let digest = Digest::new(value.text()?);
    if digest.is_none() {
        value.remarks.error(value.span(), RecordFinding::Digest);
    }
    digest
}
