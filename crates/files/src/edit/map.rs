//! Where everything is in a text: keys, values, headings.

use std::ops::Range;

use case::question::Group;
use toml::Spanned;
use toml::de::{DeTable, DeValue};

use super::path::Step;
use super::{line_ends, spliced};

/// Where a key and its value are.
#[derive(Clone, Debug)]
pub(super) struct Place {
    pub(super) key: Range<usize>,
    pub(super) value: Range<usize>,
    /// Whether it is in braces, and not on a line of its own.
    pub(super) in_braces: bool,
}

/// A table under a heading, or the file itself.
#[derive(Clone, Debug)]
struct Body {
    steps: Vec<Step>,
    /// Where its heading begins; 0 for the file.
    start: usize,
    /// Where its keys may begin.
    inner: usize,
    /// Where the last of its lines ends.
    end: usize,
    /// Its keys, with their values, in order.
    keys: Vec<(String, Place)>,
}

/// Where everything is.
pub(super) struct Map {
    /// In the order of the text.
    bodies: Vec<Body>,
    /// Keys within braces, by their steps.
    in_braces: Vec<(Vec<Step>, Place)>,
    end: usize,
}

impl Map {
    /// Reads where everything is in a text that is right TOML.
    pub(super) fn of(text: &str) -> Self {
        let (root, _) = DeTable::parse_recoverable(text);
        let mark = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
        let mut map = Self { bodies: Vec::new(), in_braces: Vec::new(), end: text.len() };
        map.table(text, root.get_ref(), Vec::new(), 0, mark);
        map.bodies.sort_by_key(|body| body.start);
        map
    }

    fn table(
        &mut self,
        text: &str,
        table: &DeTable<'_>,
        steps: Vec<Step>,
        start: usize,
        inner: usize,
    ) {
        let mut keys = Vec::new();
        for (key, value) in table.iter() {
            let mut inside = steps.clone();
            inside.push(Step::Key(key.get_ref().to_string()));
            let heading = |value: &Spanned<DeValue<'_>>| text[value.span()].starts_with('[');
            match value.get_ref() {
                DeValue::Table(own) if heading(value) => {
                    self.table(
                        text,
                        own,
                        inside,
                        value.span().start,
                        line_end(text, value.span().end),
                    );
                }
                DeValue::Array(list)
                    if list.iter().any(|own| own.get_ref().is_table() && heading(own)) =>
                {
                    for (at, own) in list.iter().enumerate() {
                        let mut inside = inside.clone();
                        inside.push(Step::Entry(at + 1));
                        let span = own.span();
                        if let DeValue::Table(table) = own.get_ref() {
                            self.table(text, table, inside, span.start, line_end(text, span.end));
                        }
                    }
                }
                other => {
                    let place = Place { key: key.span(), value: value.span(), in_braces: false };
                    if let DeValue::Table(own) = other {
                        self.braces(own, &inside);
                    }
                    keys.push((key.get_ref().to_string(), place));
                }
            }
        }
        keys.sort_by_key(|(_, place)| place.key.start);
        let last = keys.iter().map(|(_, place)| line_end(text, place.value.end)).max();
        let end = last.map_or(inner, |last| last.max(inner));
        self.bodies.push(Body { steps, start, inner, end, keys });
    }

    fn braces(&mut self, table: &DeTable<'_>, steps: &[Step]) {
        for (key, value) in table.iter() {
            let mut inside = steps.to_vec();
            inside.push(Step::Key(key.get_ref().to_string()));
            if let DeValue::Table(own) = value.get_ref() {
                self.braces(own, &inside);
            }
            let place = Place { key: key.span(), value: value.span(), in_braces: true };
            self.in_braces.push((inside, place));
        }
    }

    /// Finds a key.
    pub(super) fn find(&self, steps: &[Step]) -> Option<Place> {
        let (last, outer) = steps.split_last()?;
        let Step::Key(key) = last else { return None };
        let body = self.bodies.iter().find(|body| body.steps == outer);
        let own = body.and_then(|body| body.keys.iter().find(|(known, _)| known == key));
        let braced = self.in_braces.iter().find(|(known, _)| known == steps);
        own.map(|(_, place)| place).or(braced.map(|(_, place)| place)).cloned()
    }

    /// From the first to the last key within braces; empty where there is none; none where the
    /// value has no braces of its own, as with a key in parts.
    pub(super) fn inside(&self, steps: &[Step]) -> Option<Range<usize>> {
        let place = self.find(steps)?;
        let within = self
            .in_braces
            .iter()
            .filter(|(known, _)| known.len() == steps.len() + 1 && known.starts_with(steps));
        let mut range: Option<Range<usize>> = None;
        for (_, own) in within {
            if own.key.start <= place.value.start || own.value.end >= place.value.end {
                return None;
            }
            let known = range.unwrap_or(own.key.start..own.value.end);
            range = Some(known.start.min(own.key.start)..known.end.max(own.value.end));
        }
        Some(range.unwrap_or(0..0))
    }

    /// The table under a heading, by its steps.
    pub(super) fn body(&self, steps: &[Step]) -> Option<usize> {
        self.bodies.iter().position(|body| body.steps == steps)
    }

    /// From the heading of a table to the end of its last line.
    pub(super) fn lines_of(&self, steps: &[Step]) -> Option<Range<usize>> {
        let body = &self.bodies[self.body(steps)?];
        Some(body.start..body.end)
    }

    /// The entries of a list: each from its heading to the end of its last line, with the tables
    /// that are in it.
    pub(super) fn entries(&self, list: &[Step]) -> Vec<Range<usize>> {
        let is_entry = |body: &&Body| {
            body.steps.len() == list.len() + 1
                && body.steps.starts_with(list)
                && matches!(body.steps.last(), Some(Step::Entry(_)))
        };
        self.bodies.iter().filter(is_entry).map(|body| body.start..body.end).collect()
    }

    /// Where the first heading of a group stands that is wanted.
    pub(super) fn first_of(&self, wanted: impl Fn(Group) -> bool) -> Option<usize> {
        let group = |body: &Body| {
            let keys: Vec<&str> = (body.steps.iter())
                .filter_map(|step| match step {
                    Step::Key(key) => Some(key.as_str()),
                    Step::Entry(_) => None,
                })
                .collect();
            Group::from_path(&keys.join("."))
        };
        let later = |body: &&Body| !body.steps.is_empty() && group(body).is_some_and(&wanted);
        self.bodies.iter().find(later).map(|body| body.start)
    }

    /// The text with a line in a table: in place of its own example in a comment, else after the
    /// keys that come before it in `order`.
    pub(super) fn with_line(
        &self,
        text: &str,
        body: &usize,
        order: &[&str],
        key: &str,
        line: &str,
    ) -> String {
        let at = *body;
        let body = &self.bodies[at];
        let next = self.bodies.get(at + 1).map_or(self.end, |next| next.start);
        let is_entry = matches!(body.steps.last(), Some(Step::Entry(_)));
        let example = if is_entry { None } else { example(text, body.inner..next, key) };
        if let Some(place) = example {
            let line = with_comment_of(&text[place.clone()], line);
            return spliced(text, place, &line);
        }
        let rank = |key: &str| order.iter().position(|own| *own == key);
        let before = body.keys.iter().filter(|(own, _)| rank(own) < rank(key));
        let after = before.map(|(_, place)| line_end(text, place.value.end)).max();
        let place = after.unwrap_or(body.inner);
        let ends = line_ends(text);
        let gap = if place > 0 && !text[..place].ends_with(['\n', '\u{feff}']) { ends } else { "" };
        spliced(text, place..place, &format!("{gap}{line}{ends}"))
    }
}

/// The end of the line of a byte, with the line end.
fn line_end(text: &str, byte: usize) -> usize {
    text[byte..].find('\n').map_or(text.len(), |at| byte + at + 1)
}

/// The line of a key's example in a comment, without its end.
fn example(text: &str, range: Range<usize>, key: &str) -> Option<Range<usize>> {
    let mut at = range.start;
    for line in text[range.clone()].split_inclusive('\n') {
        let own = line.trim_end_matches(['\r', '\n']);
        // Below the heading of another table, a comment belongs to that one.
        if own.starts_with("# [") {
            return None;
        }
        let commented = own.strip_prefix('#').map(str::trim_start);
        let rest = commented.and_then(|rest| rest.strip_prefix(key)).map(str::trim_start);
        if rest.is_some_and(|rest| rest.starts_with('=')) {
            return Some(at..at + own.len());
        }
        at += line.len();
    }
    None
}

/// A line with the comment that stood behind its example, in the same column where it may.
fn with_comment_of(example: &str, line: &str) -> String {
    let inner = &example[1..];
    let mut quoted = false;
    let comment = inner.char_indices().find(|(_, c)| {
        quoted ^= *c == '"';
        *c == '#' && !quoted
    });
    let Some((at, _)) = comment else { return line.to_owned() };
    let column = example[..at + 1].chars().count();
    let wide = column.max(line.chars().count() + 2);
    let gap = " ".repeat(wide - line.chars().count());
    format!("{line}{gap}{}", &inner[at..])
}
