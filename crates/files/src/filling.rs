//! Reads, writes and takes away how far a cushion is filled, before that is in the record.

use case::question::{Group, Question};
use case::text::RecordFinding;
use case::{Client, Filling, FillingCount, NotAppended};
use toml_edit::{Array, DocumentMut, InlineTable, Item, Table as Written, value};

use crate::append::date;
use crate::client::without;
use crate::cursor::Table;
use crate::edit::with_table;
use crate::read_client;
use crate::record::{count, once_each, signed};

/// Reads the fill that is going on, where there is one, of a file whose record has so many entries;
/// none where something is wrong with it.
pub(crate) fn filling(file: &Table<'_>, entries: Option<usize>) -> Option<Option<Filling>> {
    if !file.has(Group::Filling.key()) {
        return Some(None);
    }
    file.sub(Group::Filling).and_then(|own| fill(&own, entries)).map(Some)
}

fn fill(table: &Table<'_>, entries: Option<usize>) -> Option<Filling> {
    let signed = signed(table, [Question::FillingOn, Question::FillingBy]);
    let after = after(table, entries);
    let counts = counts(table);
    table.finish();
    let (on, by) = signed?;
    Some(Filling { on, by, after: after?, counts: counts? })
}

/// How many entries the record had; an error where it has fewer.
fn after(table: &Table<'_>, entries: Option<usize>) -> Option<usize> {
    let value = table.required(Question::FillingAfter)?;
    let after = usize::try_from(value.whole()?).ok()?;
    if let Some(there) = entries.filter(|there| after > *there) {
        value.remarks.error(value.span(), RecordFinding::AfterNoEntry { after, there });
        return None;
    }
    Some(after)
}

fn counts(table: &Table<'_>) -> Option<Vec<FillingCount>> {
    let group = Group::FillingCount;
    if !table.has(group.key()) {
        table.required_sub(group);
        return None;
    }
    let counts = table.entries(group, one)?;
    if counts.is_empty() {
        table.remarks.error(table.key_span(group.key()), RecordFinding::NoCounts);
        return None;
    }
    once_each(table, group, counts.iter().map(|own| own.number)).then_some(counts)
}

/// One compartment: what is to be put in, and, once it was counted twice, what was.
fn one(table: &Table<'_>) -> Option<FillingCount> {
    let number = table.required(Question::FillingNumber).and_then(|value| value.whole());
    let planned = table.required(Question::FillingPlanned).and_then(|value| count(&value));
    let [first, second] = [Question::FillingFirst, Question::FillingSecond];
    let put = match [first, second].map(|own| table.has(own.row().key)) {
        [false, false] => Some(None),
        [true, false] => {
            without(table, first, second);
            None
        }
        [false, true] => {
            without(table, second, first);
            None
        }
        [true, true] => {
            let counted = |question| table.optional(question).and_then(|value| count(&value));
            counted(first).zip(counted(second)).map(Some)
        }
    };
    table.finish();
    let (number, planned, put) = (number? as u8, planned?, put?);
    if let Some((first, second)) = put.filter(|own| own.0 != own.1) {
        let place = table.place(Question::FillingSecond);
        table.remarks.error(place, RecordFinding::CountsDiffer { number, first, second });
        return None;
    }
    Some(FillingCount { number, planned, put: put.map(|own| own.0) })
}

/// Says that a fill was begun and is not recorded, and whether it is gone on with.
pub(crate) fn remark_on_filling(table: &Table<'_>, client: &Client) {
    if let Some(own) = client.filling_so_far() {
        table.remarks.remark(table.key_span(Group::Filling.key()), RecordFinding::Filling(own));
    }
}

/// Returns `text` with how far a fill is in place of what it said of one, or with nothing of it.
///
/// All else stays as it is: comments, spacing and line ends.
///
/// # Errors
///
/// Returns an error where `text` is not TOML, or says how far a fill is in another form than a
/// table.
pub fn with_filling(text: &str, filling: Option<&Filling>) -> Result<String, NotAppended> {
    let document: DocumentMut = text
        .parse()
        .map_err(|error: toml_edit::TomlError| NotAppended::NotToml(error.message().to_owned()))?;
    let key = Group::Filling.key();
    if document.get(key).is_some_and(|own| !own.is_table_like()) {
        return Err(NotAppended::FillingForm);
    }
    let block = filling.map(block);
    let after = with_table(text, Group::Filling, block.as_deref());
    // What is written by hand in an unusual way, or cannot be read back, is left to hands.
    let is_there = after.parse::<DocumentMut>().is_ok_and(|own| own.contains_key(key));
    let wanted = read_client(text).value.map(|own| Client { filling: filling.cloned(), ..own });
    let is_as_wanted = wanted.is_none() || read_client(&after).value == wanted;
    if is_there != filling.is_some() || !is_as_wanted {
        return Err(NotAppended::FillingForm);
    }
    Ok(after)
}

/// How far a fill is, under its heading, a line for each compartment.
fn block(filling: &Filling) -> String {
    let mut counts = Array::new();
    for own in &filling.counts {
        let mut table = InlineTable::new();
        table.insert("number", i64::from(own.number).into());
        table.insert("planned", i64::from(own.planned).into());
        if let Some(put) = own.put {
            table.insert("first", i64::from(put).into());
            table.insert("second", i64::from(put).into());
        }
        let mut entry = toml_edit::Value::InlineTable(table);
        entry.decor_mut().set_prefix("\n  ");
        counts.push_formatted(entry);
    }
    counts.set_trailing_comma(true);
    counts.set_trailing("\n");
    let mut table = Written::new();
    table["on"] = value(date(filling.on));
    table["by"] = value(&filling.by);
    table["after"] = value(filling.after as i64);
    table["counts"] = value(counts);
    let mut document = DocumentMut::new();
    document.insert(Group::Filling.key(), Item::Table(table));
    document.to_string()
}
