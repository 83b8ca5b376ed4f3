//! All answers of a text, each with its question and its place.

use std::ops::Range;

use case::FileKind;
use case::question::{Form, Group, Kind, Question};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

/// An answer as a text has it: right or wrong.
pub(crate) struct Answered<'a> {
    pub(crate) question: Question,
    pub(crate) span: Range<usize>,
    pub(crate) value: &'a DeValue<'a>,
}

/// Calls `each` with every answer of a text of a kind, as far as it can be read.
pub(crate) fn each_answer(text: &str, kind: FileKind, mut each: impl FnMut(&Answered<'_>)) {
    let (root, _) = DeTable::parse_recoverable(text);
    table(root.get_ref(), kind.group(), &mut each);
}

fn table(table: &DeTable<'_>, group: Group, each: &mut dyn FnMut(&Answered<'_>)) {
    for (key, value) in table.iter() {
        let key: &str = key.get_ref();
        let question = Question::of(group).find(|own| own.row().key == key);
        if let Some(question) = question {
            answer(question, value, each);
        } else if let Some(child) = group.children().find(|own| own.key() == key) {
            of_group(value, child, each);
        }
    }
}

fn answer(question: Question, value: &Spanned<DeValue<'_>>, each: &mut dyn FnMut(&Answered<'_>)) {
    match value.get_ref() {
        DeValue::Table(sides) if question.row().each_side => {
            sides.iter().for_each(|(_, value)| answer(question, value, each));
        }
        DeValue::Table(languages) if question.row().kind == Kind::Words => {
            languages.iter().for_each(|(_, value)| answer(question, value, each));
        }
        DeValue::Array(list) => list.iter().for_each(|value| answer(question, value, each)),
        own => each(&Answered { question, span: value.span(), value: own }),
    }
}

fn of_group(value: &Spanned<DeValue<'_>>, group: Group, each: &mut dyn FnMut(&Answered<'_>)) {
    match value.get_ref() {
        DeValue::Array(list) => list.iter().for_each(|value| of_group(value, group, each)),
        DeValue::Table(named) if group.form() == Form::Named => {
            let tables = named.iter().filter_map(|(_, value)| value.get_ref().as_table());
            tables.for_each(|own| table(own, group, each));
        }
        DeValue::Table(own) if group.entry().is_some() => {
            // What an entry is says which keys it has.
            let what = own.get("what").and_then(|value| value.get_ref().as_str());
            let entry = Group::ALL.iter().copied().find(|group| group.entry() == what);
            entry.filter(|_| what.is_some()).into_iter().for_each(|group| table(own, group, each));
        }
        DeValue::Table(own) => table(own, group, each),
        _ => {}
    }
}
