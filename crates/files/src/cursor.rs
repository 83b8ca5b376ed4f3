//! A cursor over parsed TOML that collects remarks instead of stopping at the first.
//!
//! Each getter marks its key as known; what nobody asked for is an unknown key. A getter that
//! finds something wrong makes its remark and returns none, and reading goes on.

use std::cell::RefCell;
use std::ops::{Range, RangeInclusive};

use cushion::{Name, Severity};
use jiff::civil::Date;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use crate::limits::MOST_BYTES;
use crate::{Kind, Read, Remark};

/// The remarks made while one text is read.
#[derive(Default)]
pub(crate) struct Remarks(RefCell<Vec<Remark>>);

impl Remarks {
    pub(crate) fn error(
        &self,
        span: Range<usize>,
        message: impl Into<String>,
        hint: impl Into<String>,
    ) {
        self.push(Severity::Error, span, message.into(), hint.into());
    }

    pub(crate) fn remark(
        &self,
        span: Range<usize>,
        message: impl Into<String>,
        hint: impl Into<String>,
    ) {
        self.push(Severity::Remark, span, message.into(), hint.into());
    }

    fn push(&self, severity: Severity, span: Range<usize>, message: String, hint: String) {
        let hint = (!hint.is_empty()).then_some(hint);
        self.0.borrow_mut().push(Remark { severity, span, message, hint });
    }

    fn into_vec(self) -> Vec<Remark> {
        self.0.into_inner()
    }
}

/// Reads `text` as a file of one kind: parses it, checks `format` and `kind`, and gives the
/// table to `read`.
pub(crate) fn read_text<T>(
    text: &str,
    kind: Kind,
    read: impl FnOnce(&Table<'_>) -> Option<T>,
) -> Read<T> {
    let remarks = Remarks::default();
    if text.len() > MOST_BYTES {
        remarks.error(
            0..0,
            "this file is larger than 1 MB",
            "it cannot be one of ours; name another",
        );
        return Read::new(None, remarks.into_vec());
    }
    let (root, errors) = DeTable::parse_recoverable(text);
    for error in &errors {
        let span = within(text, error.span().unwrap_or(0..0));
        let (message, hint) = syntax_words(error.message());
        remarks.error(span, message, hint);
    }
    let table = Table::new(root.get_ref(), 0..first_line(text), &remarks);
    header(&table, kind);
    let value = read(&table);
    if errors.is_empty() {
        table.finish();
    }
    drop(table);
    Read::new(value, remarks.into_vec())
}

/// The end of the first line, where remarks about the whole file point.
fn first_line(text: &str) -> usize {
    text.find('\n').unwrap_or(text.len())
}

/// Brings a span into the text and onto borders of characters.
pub(crate) fn within(text: &str, span: Range<usize>) -> Range<usize> {
    let border = |mut at: usize| {
        at = at.min(text.len());
        while !text.is_char_boundary(at) {
            at -= 1;
        }
        at
    };
    let start = border(span.start);
    start..border(span.end).max(start)
}

/// Our words for what the parser says.
fn syntax_words(message: &str) -> (String, &'static str) {
    if message.contains("duplicate key") {
        ("this key is written twice".to_owned(), "keep one of the two")
    } else {
        (
            format!("this cannot be read: {message}"),
            "see the format in README; `new` writes an example",
        )
    }
}

fn header(table: &Table<'_>, kind: Kind) {
    if let Some(value) = table.required("format")
        && let Some(format) = value.whole(0..=i64::MAX)
        && format != 1
    {
        table.remarks.error(
            value.span(),
            format!("format {format} is not known"),
            "this program reads `format = 1`",
        );
    }
    if let Some(value) = table.required("kind")
        && let Some(written) = value.text()
        && written != kind.words()
    {
        let message = format!("this is a file of kind `{written}`, not `{}`", kind.words());
        table.remarks.error(value.span(), message, "name a file of the right kind");
    }
}

/// A table whose keys are asked for one by one.
pub(crate) struct Table<'a> {
    entries: Vec<(&'a str, Range<usize>, &'a Spanned<DeValue<'a>>)>,
    span: Range<usize>,
    asked: RefCell<Vec<&'static str>>,
    pub(crate) remarks: &'a Remarks,
}

impl<'a> Table<'a> {
    fn new(table: &'a DeTable<'a>, span: Range<usize>, remarks: &'a Remarks) -> Self {
        let mut entries: Vec<_> =
            table.iter().map(|(key, value)| (key.get_ref().as_ref(), key.span(), value)).collect();
        entries.sort_by_key(|(_, span, _)| span.start);
        Self { entries, span, asked: RefCell::default(), remarks }
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

    /// The value of a key, where it is there.
    pub(crate) fn optional(&self, key: &'static str) -> Option<Value<'a>> {
        self.asked.borrow_mut().push(key);
        let (_, _, value) = self.entries.iter().find(|(name, ..)| *name == key)?;
        Some(Value { value, remarks: self.remarks })
    }

    /// The value of a key; a remark where it is missing.
    pub(crate) fn required(&self, key: &'static str) -> Option<Value<'a>> {
        let found = self.optional(key);
        if found.is_none() {
            self.remarks.error(
                self.span(),
                format!("the key `{key}` is missing"),
                format!("add `{key} = ...`"),
            );
        }
        found
    }

    /// All entries with the names by which the file calls them, in the order written.
    pub(crate) fn named(&self) -> Vec<(Name, Range<usize>, Value<'a>)> {
        self.entries
            .iter()
            .filter_map(|(key, span, value)| {
                let value = Value { value, remarks: self.remarks };
                if let Some(name) = Name::new(key) {
                    return Some((name, span.clone(), value));
                }
                self.remarks.error(
                    span.clone(),
                    format!("`{key}` is not a name"),
                    format!("take {}", Name::RULE),
                );
                None
            })
            .collect()
    }

    /// Says which keys nobody asked for.
    pub(crate) fn finish(&self) {
        let asked = self.asked.borrow();
        for (key, span, _) in &self.entries {
            if asked.iter().any(|known| known == key) {
                continue;
            }
            let likeness = |known: &&&str| strsim::jaro_winkler(key, known);
            let near = asked.iter().max_by(|a, b| likeness(a).total_cmp(&likeness(b)));
            let hint = match near {
                Some(near) if likeness(&near) > 0.8 => format!("did you mean `{near}`?"),
                _ => format!("known here: {}", asked.join(", ")),
            };
            self.remarks.error(span.clone(), format!("unknown key `{key}`"), hint);
        }
    }
}

/// A value with its place.
#[derive(Clone, Copy)]
pub(crate) struct Value<'a> {
    value: &'a Spanned<DeValue<'a>>,
    pub(crate) remarks: &'a Remarks,
}

impl<'a> Value<'a> {
    pub(crate) fn span(&self) -> Range<usize> {
        self.value.span()
    }

    fn wrong_type(&self, wanted: &str, example: &str) {
        let found = self.value.get_ref().type_str();
        self.remarks.error(
            self.span(),
            format!("this is {}, not {wanted}", article(found)),
            format!("write {example}"),
        );
    }

    /// A text.
    pub(crate) fn text(&self) -> Option<&'a str> {
        let text = self.value.get_ref().as_str();
        if text.is_none() {
            self.wrong_type("a text", "it in quotes, as in \"...\"");
        }
        text
    }

    /// A text that says something.
    pub(crate) fn sentence(&self) -> Option<String> {
        let text = self.text()?.trim();
        if text.is_empty() {
            self.remarks.error(self.span(), "this is empty", "write it, or take the key away");
            return None;
        }
        if text.chars().any(char::is_control) {
            self.remarks.error(
                self.span(),
                "this has a line break or a control character in it",
                "write it in one line",
            );
            return None;
        }
        Some(text.to_owned())
    }

    pub(crate) fn name(&self) -> Option<Name> {
        let text = self.text()?;
        let name = Name::new(text);
        if name.is_none() {
            self.remarks.error(
                self.span(),
                format!("`{text}` is not a name"),
                format!("take {}", Name::RULE),
            );
        }
        name
    }

    /// One of some words, with what it stands for.
    pub(crate) fn choice<T: Copy>(&self, what: &str, words: &[(&str, T)]) -> Option<T> {
        let written = self.text()?;
        let found = words.iter().find(|(word, _)| *word == written);
        if found.is_none() {
            let known: Vec<String> = words.iter().map(|(word, _)| format!("\"{word}\"")).collect();
            self.remarks.error(
                self.span(),
                format!("no {what} is called `{written}`"),
                format!("write {}", known.join(", ")),
            );
        }
        found.map(|(_, value)| *value)
    }

    pub(crate) fn boolean(&self) -> Option<bool> {
        let value = self.value.get_ref().as_bool();
        if value.is_none() {
            self.wrong_type("true or false", "`true` or `false`, without quotes");
        }
        value
    }

    /// A number if it is written as one; remarks only on numbers that are not finite.
    pub(crate) fn if_number(&self) -> Option<Option<f64>> {
        let number: f64 = match self.value.get_ref() {
            DeValue::Integer(integer) => {
                i64::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok()?
                    as f64
            }
            DeValue::Float(float) => float.as_str().replace('_', "").parse().ok()?,
            _ => return None,
        };
        if number.is_finite() {
            return Some(Some(number));
        }
        self.remarks.error(self.span(), "this is not a finite number", "write a number");
        Some(None)
    }

    /// A finite number.
    pub(crate) fn number(&self) -> Option<f64> {
        let found = self.if_number();
        if found.is_none() {
            self.wrong_type("a number", "a number without quotes, such as 40 or 12.5");
        }
        found.flatten()
    }

    /// A number in a range, named for what it is.
    pub(crate) fn number_in(
        &self,
        what: &str,
        range: RangeInclusive<f64>,
        unit: &str,
    ) -> Option<f64> {
        let number = self.number()?;
        if !range.contains(&number) {
            let unit = if unit.is_empty() { String::new() } else { format!(" {unit}") };
            self.remarks.error(
                self.span(),
                format!("a {what} of {number}{unit} cannot be right"),
                format!("it lies between {} and {}{unit}", range.start(), range.end()),
            );
            return None;
        }
        Some(number)
    }

    /// A whole number in a range.
    pub(crate) fn whole(&self, range: RangeInclusive<i64>) -> Option<i64> {
        let DeValue::Integer(integer) = self.value.get_ref() else {
            self.wrong_type("a whole number", "a whole number without quotes");
            return None;
        };
        let number = i64::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok();
        let inside = number.filter(|number| range.contains(number));
        if inside.is_none() {
            let hint = format!("it lies between {} and {}", range.start(), range.end());
            self.remarks.error(
                self.span(),
                format!("{} cannot be right here", integer.as_str()),
                hint,
            );
        }
        inside
    }

    /// A day, as a TOML date or a text such as "2026-03-31".
    pub(crate) fn date(&self) -> Option<Date> {
        let written = match self.value.get_ref() {
            DeValue::Datetime(datetime) => datetime.to_string(),
            DeValue::String(text) => text.to_string(),
            _ => {
                self.wrong_type("a date", "it as 2026-03-31");
                return None;
            }
        };
        let date = written.parse::<Date>().ok().filter(|_| written.len() == 10);
        let plausible = date.filter(|date| (1990..=2120).contains(&date.year()));
        if plausible.is_none() {
            self.remarks.error(
                self.span(),
                format!("`{written}` is not a date"),
                "write year-month-day, as 2026-03-31",
            );
        }
        plausible
    }

    /// The values of a list.
    pub(crate) fn list(&self) -> Option<Vec<Value<'a>>> {
        let list = self.value.get_ref().as_array();
        if list.is_none() {
            self.wrong_type("a list", "it in square brackets, as in [1, 2]");
        }
        Some(list?.iter().map(|value| Value { value, remarks: self.remarks }).collect())
    }

    pub(crate) fn is_list(&self) -> bool {
        self.value.get_ref().is_array()
    }

    /// A table.
    pub(crate) fn table(&self) -> Option<Table<'a>> {
        let Some(table) = self.value.get_ref().as_table() else {
            self.wrong_type("a table", "it in braces, as in { key = value }, or under a [heading]");
            return None;
        };
        Some(Table::new(table, self.span(), self.remarks))
    }
}

fn article(type_name: &str) -> String {
    let vowel = type_name.starts_with(['a', 'i']);
    match type_name {
        "string" => "a text".to_owned(),
        "array" => "a list".to_owned(),
        "float" => "a number".to_owned(),
        "integer" => "a whole number".to_owned(),
        "datetime" => "a date".to_owned(),
        other => format!("{} {other}", if vowel { "an" } else { "a" }),
    }
}
