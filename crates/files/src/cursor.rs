//! A cursor over parsed TOML that collects remarks instead of stopping at the first.
//!
//! A table knows from the questions of its group which keys it may have. A getter that finds
//! something wrong makes its remark and returns none, and reading goes on.

use std::cell::RefCell;
use std::ops::Range;

use case::FileKind;
use case::question::{Group, Need, Question};
use case::text::{FileFinding, KeyFinding, TextFinding, Type, ValueFinding};
use cushion::{Name, Severity, Words};
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::kind::header_of;
use crate::limits::MOST_BYTES;
use crate::value::Value;
use crate::{Read, Remark, syntax};

/// What stands in a blank file where an answer is to be written.
pub(crate) const FILL_IN: &str = "fill in";

/// From this likeness on, a misspelt word is taken for another.
const LIKE: f64 = 0.8;

/// The remarks made while one text is read.
#[derive(Default)]
pub(crate) struct Remarks(RefCell<Vec<Remark>>);

impl Remarks {
    pub(crate) fn error(&self, span: Range<usize>, finding: impl Into<TextFinding>) {
        self.push(Severity::Error, span, finding.into());
    }

    pub(crate) fn remark(&self, span: Range<usize>, finding: impl Into<TextFinding>) {
        self.push(Severity::Remark, span, finding.into());
    }

    fn push(&self, severity: Severity, span: Range<usize>, finding: TextFinding) {
        self.0.borrow_mut().push(Remark { severity, span, finding });
    }

    pub(crate) fn into_vec(self) -> Vec<Remark> {
        self.0.into_inner()
    }
}

/// Reads `text` as a file of one kind: parses it, checks `format` and `kind`, and gives the
/// table to `read`.
pub(crate) fn read_text<T>(
    text: &str,
    kind: FileKind,
    read: impl FnOnce(&Table<'_>) -> Option<T>,
) -> Read<T> {
    let remarks = Remarks::default();
    if text.len() > MOST_BYTES {
        remarks.error(0..0, FileFinding::TooLarge);
        return Read::new(None, remarks.into_vec());
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    let broken = syntax::broken(text, &errors);
    let table = Table::new(root.get_ref(), 0..first_line(text), Some(kind.group()), &remarks);
    let other = other_kind(&table, kind);
    let read_well = |at: usize| !broken.iter().any(|own| own.covers(at));
    if let Some((span, other)) = other.filter(|(span, _)| read_well(span.start)) {
        remarks.error(span, other);
        drop(table);
        return Read::new(None, remarks.into_vec());
    }
    header(&table, kind);
    let value = read(&table);
    table.finish();
    drop(table);
    Read::new(value, syntax::without_consequences(broken, remarks.into_vec()))
}

/// The end of the first line, where remarks about the whole file point.
fn first_line(text: &str) -> usize {
    text.find('\n').unwrap_or(text.len())
}

/// What is to be said, and nothing else, of a file of another kind.
fn other_kind(table: &Table<'_>, wanted: FileKind) -> Option<(Range<usize>, FileFinding)> {
    let (_, _, value) = table.entries.iter().find(|(key, ..)| *key == "kind")?;
    let written = value.get_ref().as_str().filter(|written| *written != wanted.id())?;
    Some((value.span(), FileFinding::OtherKind { written: written.to_owned(), wanted }))
}

fn header(table: &Table<'_>, kind: FileKind) {
    let [format, own] = header_of(kind);
    if let Some(value) = table.required(format)
        && let Some(format) = value.whole_in(0, i64::MAX)
        && format != 1
    {
        table.remarks.error(value.span(), FileFinding::Format(format));
    }
    // Another word was found before.
    if let Some(value) = table.required(own) {
        value.text();
    }
}

type Entry<'a> = (&'a str, Range<usize>, &'a Spanned<DeValue<'a>>);

/// A table whose keys are asked for one by one.
pub(crate) struct Table<'a> {
    entries: Vec<Entry<'a>>,
    span: Range<usize>,
    /// None where its keys are the client's left and right, or names of the author's.
    group: Option<Group>,
    /// Of which the left and right are.
    question: Option<Question>,
    pub(crate) remarks: &'a Remarks,
}

impl<'a> Table<'a> {
    pub(crate) fn new(
        table: &'a DeTable<'a>,
        span: Range<usize>,
        group: Option<Group>,
        remarks: &'a Remarks,
    ) -> Self {
        let mut entries: Vec<_> =
            table.iter().map(|(key, value)| (key.get_ref().as_ref(), key.span(), value)).collect();
        entries.sort_by_key(|(_, span, _)| span.start);
        Self { entries, span, group, question: None, remarks }
    }

    /// The same as the two sides of a question.
    pub(crate) fn of_sides(self, question: Option<Question>) -> Self {
        Self { question, ..self }
    }

    /// Where the table is written.
    pub(crate) fn span(&self) -> Range<usize> {
        self.span.clone()
    }

    /// Where a key is written, or the table where it is not.
    pub(crate) fn key_span(&self, key: &str) -> Range<usize> {
        let found = self.entries.iter().find(|(name, ..)| *name == key);
        found.map_or_else(|| self.span(), |(_, span, _)| span.clone())
    }

    /// Where a question is answered, or the table where it is not.
    pub(crate) fn place(&self, question: Question) -> Range<usize> {
        self.key_span(question.row().key)
    }

    /// Whether a key is written, with whatever value.
    pub(crate) fn has(&self, key: &str) -> bool {
        self.entries.iter().any(|(name, ..)| *name == key)
    }

    fn find(&self, key: &str) -> Option<&'a Spanned<DeValue<'a>>> {
        self.entries.iter().find(|(name, ..)| *name == key).map(|(_, _, value)| *value)
    }

    /// The answer to a question, where it is there; a remark where it was to be filled in.
    pub(crate) fn optional(&self, question: Question) -> Option<Value<'a>> {
        let value = Value::new(self.find(question.row().key)?, Some(question), self.remarks);
        (!value.is_blank(None)).then_some(value)
    }

    /// The answer to a question; a remark where it is missing.
    pub(crate) fn required(&self, question: Question) -> Option<Value<'a>> {
        let key = question.row().key;
        if !self.has(key) && !self.is_misspelt(key) {
            self.remarks.error(self.span(), KeyFinding::Missing(question));
        }
        self.optional(question)
    }

    /// Whether an unknown key is taken for this one: then it is not missing too.
    fn is_misspelt(&self, key: &str) -> bool {
        let known = self.known();
        let unknown = self.entries.iter().map(|(own, ..)| *own).filter(|own| !known.contains(own));
        unknown.into_iter().any(|own| near(own, &known) == Some(key))
    }

    /// The answers of the client's left or right.
    pub(crate) fn side(&self, side: &'static str) -> Option<Value<'a>> {
        let value = Value::new(self.find(side)?, self.question, self.remarks);
        (!value.is_blank(Some(side))).then_some(value)
    }

    /// The same; a remark where it is missing.
    pub(crate) fn required_side(&self, side: &'static str) -> Option<Value<'a>> {
        if !self.has(side) {
            self.remarks.error(self.span(), KeyFinding::MissingSide(side));
        }
        self.side(side)
    }

    /// A group within this one, where it is there.
    pub(crate) fn sub(&self, group: Group) -> Option<Table<'a>> {
        Value::new(self.find(group.key())?, None, self.remarks).table(Some(group))
    }

    /// A group within this one; a remark where it is missing.
    pub(crate) fn required_sub(&self, group: Group) -> Option<Table<'a>> {
        if !self.has(group.key()) && !self.is_misspelt(group.key()) {
            self.remarks.error(self.span(), KeyFinding::MissingGroup(group));
        }
        self.sub(group)
    }

    /// A list of tables, where it is there; of one group, or each of its own.
    pub(crate) fn list(&self, key: &str) -> Option<Vec<Value<'a>>> {
        match self.find(key) {
            Some(list) => Value::new(list, None, self.remarks).list(),
            None => Some(Vec::new()),
        }
    }

    /// Reads each table of a list of tables; none where one of them is wrong.
    pub(crate) fn entries<T>(
        &self,
        group: Group,
        read: impl Fn(&Table<'_>) -> Option<T>,
    ) -> Option<Vec<T>> {
        let list = self.list(group.key())?;
        let read: Vec<Option<T>> =
            list.iter().map(|value| read(&value.table(Some(group))?)).collect();
        read.into_iter().collect()
    }

    /// All entries with the names by which the file calls them, in the order written.
    pub(crate) fn named(&self) -> Vec<(Name, Range<usize>, Value<'a>)> {
        self.entries
            .iter()
            .filter_map(|(key, span, value)| {
                let value = Value::new(value, None, self.remarks);
                if let Some(name) = Name::new(key) {
                    return Some((name, span.clone(), value));
                }
                self.remarks.error(span.clone(), KeyFinding::NotAName((*key).to_owned()));
                None
            })
            .collect()
    }

    /// All entries by the tags of languages, in the order written.
    pub(crate) fn by_language(&self) -> Vec<(&'a str, Value<'a>)> {
        self.entries
            .iter()
            .filter_map(|(key, span, value)| {
                if Words::is_tag(key) {
                    return Some((*key, Value::new(value, None, self.remarks)));
                }
                self.remarks.error(span.clone(), KeyFinding::NotALanguage((*key).to_owned()));
                None
            })
            .collect()
    }

    /// The keys that may stand here.
    fn known(&self) -> Vec<&'static str> {
        self.group.map_or_else(|| vec!["left", "right"], Group::keys)
    }

    /// Says which keys are not known here, and which say nothing beside another's word.
    pub(crate) fn finish(&self) {
        let known = self.known();
        for (key, span, _) in &self.entries {
            if known.contains(key) {
                continue;
            }
            let root = self.group.or(self.question.map(|own| own.row().group)).map(Group::root);
            let belongs = Group::ALL.iter().copied().find(|group| {
                Some(group.root()) == root && Question::of(*group).any(|own| own.row().key == *key)
            });
            let near = near(key, &known);
            let known = known.clone();
            let unknown = KeyFinding::Unknown { key: (*key).to_owned(), near, known, belongs };
            self.remarks.error(span.clone(), unknown);
        }
        self.group.into_iter().flat_map(Question::of).for_each(|question| self.beside(question));
    }

    /// What is wrong with a question beside the answer that it goes with.
    fn beside(&self, given: Question) {
        let Some((other, words)) = given.row().need.goes_with() else { return };
        let asked = || self.group.into_iter().flat_map(Question::of);
        let Some(missing) = asked().find(|own| own.row().key == other) else { return };
        if !self.has(given.row().key) {
            return;
        }
        if matches!(given.row().need, Need::May(..)) && !self.has(other) {
            self.remarks.error(self.place(given), KeyFinding::Without { given, missing });
        }
        let word = self.find(other).and_then(|value| value.get_ref().as_str());
        let known = |word: &str| matches!(missing.row().kind, case::question::Kind::Choice(all) if all.contains(&word));
        if word.is_some_and(|word| known(word) && !words.contains(&word)) {
            let finding = KeyFinding::NotBeside { question: given, other, words };
            self.remarks.error(self.place(given), finding);
        }
    }
}

/// The word that is meant by a misspelt one, perhaps.
pub(crate) fn near(written: &str, known: &[&'static str]) -> Option<&'static str> {
    let likeness = |known: &str| strsim::jaro_winkler(written, known);
    let best = known.iter().copied().max_by(|a, b| likeness(a).total_cmp(&likeness(b)))?;
    (likeness(best) > LIKE).then_some(best)
}

/// The type of a value, as people call it.
pub(crate) fn type_of(value: &DeValue<'_>) -> Type {
    match value {
        DeValue::String(_) => Type::Text,
        DeValue::Integer(_) => Type::Whole,
        DeValue::Float(_) => Type::Number,
        DeValue::Boolean(_) => Type::Truth,
        DeValue::Datetime(_) => Type::Date,
        DeValue::Array(_) => Type::List,
        DeValue::Table(_) => Type::Table,
    }
}

/// Says that a value is of another type than is wanted.
pub(crate) fn wrong_type(value: &Value<'_>, wanted: Type) {
    let found = type_of(value.get());
    value.remarks.error(value.span(), ValueFinding::Type { found, wanted });
}
