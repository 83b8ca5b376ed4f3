//! Reads the record of a client's file: plans and checks, oldest first.

use std::collections::BTreeSet;

use case::question::{Group, Question};
use case::text::{KeyFinding, RecordFinding};
use case::{
    Adjustment, Check, Cleaned, Date, Digest, Entry, Expected, Filled, FittingCheck, Move, Moved,
    PartsChecked, Place, RecordedCount, RecordedPlan, Recount, Returned, Sides, SiteName,
    SkinAnswer, SkinSeen, Weighed, Withdrawn,
};
use cushion::{Length, Mass, Side};

use crate::client::without;
use crate::cursor::Table;
use crate::value::Value;

/// Reads all entries; a remark where a date goes back.
pub(crate) fn record(table: &Table<'_>) -> Option<Vec<Entry>> {
    let list = table.list("record")?;
    let read: Vec<Option<Entry>> =
        list.iter().enumerate().map(|(at, value)| entry(value, at + 1)).collect();
    let entries: Vec<Entry> = read.into_iter().collect::<Option<_>>()?;
    let dates: Vec<Date> = entries.iter().map(Entry::on).collect();
    if dates.windows(2).any(|pair| pair[1] < pair[0]) {
        table.remarks.remark(table.key_span("record"), RecordFinding::Order);
    }
    Some(entries)
}

/// One entry, and which one it is, from 1.
fn entry(value: &Value<'_>, number: usize) -> Option<Entry> {
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
        Some(Group::Filled) => filled(&table, &FILLED).map(Entry::Filled),
        Some(Group::Incoming) => filled(&table, &INCOMING).map(Entry::Incoming),
        Some(Group::Checked) => parts_checked(&table).map(Entry::Checked),
        Some(Group::Moved) => cells_moved(&table).map(Entry::Moved),
        Some(Group::Returned) => returned(&table, number).map(Entry::Returned),
        Some(Group::SkinSeen) => skin_seen(&table).map(Entry::Skin),
        Some(Group::Cleaned) => cleaned(&table).map(Entry::Cleaned),
        Some(Group::Withdrawn) => withdrawn(&table, number).map(Entry::Withdrawn),
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
pub(crate) fn signed(table: &Table<'_>, [on, by]: [Question; 2]) -> Option<(Date, String)> {
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
    let found = checks(table, Question::AdjustmentFound);
    let places = [Question::MoveFrom, Question::MoveTo, Question::MoveCells];
    let moves = table.entries(Group::Move, |table| moved(table, places));
    let why = table.optional(Question::AdjustmentWhy).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Adjustment { on, by, checks: found?, moves: moves?, why })
}

/// What hands found.
fn checks(table: &Table<'_>, question: Question) -> Option<Vec<Check>> {
    let checks = table.required(question)?.list()?.into_iter().map(|value| {
        let read = Check::read_whole(value.text()?);
        let note = |wrong| value.remarks.error(value.span(), RecordFinding::Check(wrong));
        read.map_err(note).ok()
    });
    checks.collect::<Vec<_>>().into_iter().collect()
}

fn moved(table: &Table<'_>, [from, to, cells]: [Question; 3]) -> Option<Move> {
    let place = |question| {
        let value = table.required(question)?;
        // Numbers, or the word for the spare bag.
        if value.get().as_str() == Some("spare") {
            return Some(Place::Spare);
        }
        value.whole_in(1, 99).map(|number| Place::Compartment(number as u8))
    };
    let (from, to) = (place(from), place(to));
    let cells = table.required(cells).and_then(|value| count(&value));
    table.finish();
    Some(Move { from: from?, to: to?, cells: cells? })
}

fn recount(table: &Table<'_>) -> Option<Recount> {
    let signed = signed(table, [Question::RecountOn, Question::RecountBy]);
    let questions = [Question::RecountNumber, Question::RecountCells];
    let counts = numbered(table, Group::RecountCount, questions);
    let spare = table.optional(Question::RecountSpare).map(|value| count(&value));
    let (on, by) = signed?;
    Some(Recount { on, by, counts: counts?, spare: spare.flatten() })
}

/// Cells by the number of the compartment, in the order of the file.
fn numbered(
    table: &Table<'_>,
    group: Group,
    [number, cells]: [Question; 2],
) -> Option<Vec<(u8, u32)>> {
    let counts = table.entries(group, |table| {
        let number = table.required(number).and_then(|value| value.whole());
        let cells = table.required(cells).and_then(|value| count(&value));
        table.finish();
        Some((number? as u8, cells?))
    })?;
    once_each(table, group, counts.iter().map(|own| own.0)).then_some(counts)
}

/// Whether each compartment of a list is there once; an error where it is not.
pub(crate) fn once_each(
    table: &Table<'_>,
    group: Group,
    numbers: impl Iterator<Item = u8>,
) -> bool {
    let mut seen = BTreeSet::new();
    for number in numbers {
        if !seen.insert(number) {
            let place = table.key_span(group.key());
            table.remarks.error(place, RecordFinding::CountedTwice(number));
            return false;
        }
    }
    true
}

/// The same where there must be some, in the order of the numbers.
fn all_numbered(
    table: &Table<'_>,
    group: Group,
    questions: [Question; 2],
) -> Option<Vec<(u8, u32)>> {
    if !table.has(group.key()) {
        table.required_sub(group);
        return None;
    }
    let mut counts = numbered(table, group, questions)?;
    if counts.is_empty() {
        table.remarks.error(table.key_span(group.key()), RecordFinding::NoCounts);
        return None;
    }
    counts.sort_unstable();
    Some(counts)
}

/// The questions of an entry on what is in a cushion.
struct FilledQuestions {
    signed: [Question; 2],
    cushion: [Question; 2],
    group: Group,
    counts: [Question; 2],
    spare: Question,
    batch: Question,
    serial: Question,
    why: Question,
}

const FILLED: FilledQuestions = FilledQuestions {
    signed: [Question::FilledOn, Question::FilledBy],
    cushion: [Question::FilledLayout, Question::FilledSize],
    group: Group::FilledCount,
    counts: [Question::FilledNumber, Question::FilledCells],
    spare: Question::FilledSpare,
    batch: Question::FilledBatch,
    serial: Question::FilledSerial,
    why: Question::FilledWhy,
};

const INCOMING: FilledQuestions = FilledQuestions {
    signed: [Question::IncomingOn, Question::IncomingBy],
    cushion: [Question::IncomingLayout, Question::IncomingSize],
    group: Group::IncomingCount,
    counts: [Question::IncomingNumber, Question::IncomingCells],
    spare: Question::IncomingSpare,
    batch: Question::IncomingBatch,
    serial: Question::IncomingSerial,
    why: Question::IncomingWhy,
};

fn filled(table: &Table<'_>, own: &FilledQuestions) -> Option<Filled> {
    let signed = signed(table, own.signed);
    let sentence = |question| table.optional(question).and_then(|value| value.sentence());
    let layout = sentence(own.cushion[0]);
    let size = table.optional(own.cushion[1]).and_then(|value| value.size());
    match own.cushion.map(|question| table.has(question.row().key)) {
        [true, false] => without(table, own.cushion[0], own.cushion[1]),
        [false, true] => without(table, own.cushion[1], own.cushion[0]),
        _ => {}
    }
    let counts = all_numbered(table, own.group, own.counts);
    let spare = table.optional(own.spare).and_then(|value| count(&value));
    let (batch, serial, why) = (sentence(own.batch), sentence(own.serial), sentence(own.why));
    let (on, by) = signed?;
    Some(Filled { on, by, cushion: layout.zip(size), counts: counts?, spare, batch, serial, why })
}

fn parts_checked(table: &Table<'_>) -> Option<PartsChecked> {
    let signed = signed(table, [Question::CheckedOn, Question::CheckedBy]);
    let found = checks(table, Question::CheckedFound);
    let yes = |question| table.optional(question).and_then(|value| value.boolean());
    let transfer = yes(Question::CheckedTransfer).unwrap_or(false);
    let reach = yes(Question::CheckedReach).unwrap_or(false);
    let passed = yes(Question::CheckedPassed);
    let why = table.optional(Question::CheckedWhy).and_then(|value| value.sentence());
    let (on, by) = signed?;
    let check = PartsChecked { on, by, found: found?, transfer, reach, passed, why };
    if passed == Some(true) && check.outcome() != case::CheckOutcome::Passed {
        let alarm = check.found.iter().any(Check::is_alarm);
        let finding = RecordFinding::NotPassed { missing: check.missing(), alarm };
        table.remarks.remark(table.place(Question::CheckedPassed), finding);
    }
    Some(check)
}

fn cells_moved(table: &Table<'_>) -> Option<Moved> {
    let signed = signed(table, [Question::MovedOn, Question::MovedBy]);
    if !table.has(Group::MovedMove.key()) {
        table.required_sub(Group::MovedMove);
        return None;
    }
    let places = [Question::MovedFrom, Question::MovedTo, Question::MovedCells];
    let moves = table.entries(Group::MovedMove, |table| moved(table, places));
    let why = table.optional(Question::MovedWhy).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Moved { on, by, moves: moves?, why })
}

/// An earlier entry of the record; a remark where it is none.
fn earlier(table: &Table<'_>, question: Question, number: usize) -> Option<usize> {
    let value = table.required(question)?;
    let entry = usize::try_from(value.whole()?).ok()?;
    if entry >= number {
        value.remarks.error(value.span(), RecordFinding::NotEarlier { entry, here: number });
        return None;
    }
    Some(entry)
}

fn returned(table: &Table<'_>, number: usize) -> Option<Returned> {
    let signed = signed(table, [Question::ReturnedOn, Question::ReturnedBy]);
    let entry = earlier(table, Question::ReturnedEntry, number);
    let questions = [Question::ReturnedNumber, Question::ReturnedCells];
    let counts = all_numbered(table, Group::ReturnedCount, questions);
    let why = table.optional(Question::ReturnedWhy).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Returned { on, by, entry: entry?, counts: counts?, why })
}

fn skin_seen(table: &Table<'_>) -> Option<SkinSeen> {
    let signed = signed(table, [Question::SkinSeenOn, Question::SkinSeenBy]);
    let site = table.required(Question::SkinSeenSite);
    let site = site.and_then(|value| value.choice(&SiteName::WORDS));
    let answer = table.required(Question::SkinSeenIs);
    let answer = answer.and_then(|value| value.choice(&SkinAnswer::ALL));
    let (on, by) = signed?;
    Some(SkinSeen { on, by, site: site?, answer: answer? })
}

fn cleaned(table: &Table<'_>) -> Option<Cleaned> {
    let signed = signed(table, [Question::CleanedOn, Question::CleanedBy]);
    let why = table.optional(Question::CleanedWhy).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Cleaned { on, by, why })
}

fn withdrawn(table: &Table<'_>, number: usize) -> Option<Withdrawn> {
    let signed = signed(table, [Question::WithdrawnOn, Question::WithdrawnBy]);
    let entry = earlier(table, Question::WithdrawnEntry, number);
    let because = table.required(Question::WithdrawnBecause).and_then(|value| value.sentence());
    let (on, by) = signed?;
    Some(Withdrawn { on, by, entry: entry?, because: because? })
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
    let expected = table.sub(Group::PlanExpected).map(|own| expected(&own));
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
        expected: expected.flatten(),
    };
    let (span, total) = total?;
    let (total, sum) = (total?, plan.total());
    if total != sum {
        table.remarks.error(span, RecordFinding::Sum { sum, total });
        return None;
    }
    Some(plan)
}

/// What a plan was expected to do.
fn expected(table: &Table<'_>) -> Option<Expected> {
    let number =
        |question| table.required(question).and_then(|value: Value<'_>| value.number_in_range());
    let under = [Question::ExpectedLeft, Question::ExpectedRight].map(number);
    let sides = [(Some(Side::Left), "left"), (Some(Side::Right), "right"), (None, "level")];
    let lower = table.required(Question::ExpectedLower).and_then(|value| value.choice(&sides));
    let by = number(Question::ExpectedLowerBy);
    let kg = number(Question::ExpectedKg);
    table.finish();
    let [left, right] = under;
    let under = Sides { left: Length::from_mm(left?), right: Length::from_mm(right?) };
    let by = Length::from_mm(by?);
    Some(Expected { under, lower: lower?.map(|side| (side, by)), weight: Mass::from_kg(kg?) })
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

pub(crate) fn count(value: &Value<'_>) -> Option<u32> {
    value.whole().map(|count| count as u32)
}

fn digest(value: &Value<'_>) -> Option<Digest> {
    let digest = Digest::new(value.text()?);
    if digest.is_none() {
        value.remarks.error(value.span(), RecordFinding::Digest);
    }
    digest
}
