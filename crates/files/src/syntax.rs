//! What keeps a text from being read: one remark for each cause, in our words.

use std::ops::Range;

use case::text::{SyntaxFinding, TextFinding, ValueFinding};
use cushion::Severity;

use crate::Remark;

/// Quotes that word processors put in place of plain ones.
const TYPOGRAPHIC: [char; 8] = ['“', '”', '„', '‟', '«', '»', '‘', '’'];

/// Something that the parser stopped at.
pub(crate) struct Broken {
    remark: Remark,
    line: Range<usize>,
    /// Whether what stands below is read as something else: where a heading is broken.
    all: bool,
}

impl Broken {
    /// Whether a place is in the broken line.
    pub(crate) fn covers(&self, at: usize) -> bool {
        (self.line.start..=self.line.end).contains(&at)
    }
}

/// Says what is broken, once for each line.
pub(crate) fn broken(text: &str, errors: &[toml::de::Error]) -> Vec<Broken> {
    let mut found: Vec<Broken> = Vec::new();
    for error in errors {
        let span = within(text, error.span().unwrap_or(0..0));
        let line = line_of(text, span.start);
        if found.iter().any(|known| known.line.contains(&line.start) || known.line == line) {
            continue;
        }
        let is_heading = text[line.clone()].trim_start().starts_with('[');
        let (span, finding) = cause(text, span, line.clone(), error.message());
        // One bracket that is missing breaks every line below it, each in the same way.
        if let (Some(last), TextFinding::Syntax(SyntaxFinding::Other(_))) =
            (found.last_mut(), &finding)
            && last.remark.finding == finding
        {
            last.line.end = line.end;
            last.all |= is_heading;
            continue;
        }
        let twice = matches!(
            finding,
            TextFinding::Syntax(SyntaxFinding::Twice | SyntaxFinding::HeadingTwice)
        );
        let all = !twice && is_heading;
        let remark = Remark { severity: Severity::Error, span, finding };
        found.push(Broken { remark, line, all });
    }
    found
}

/// Puts what is broken and other remarks together, and leaves out what only follows from it.
pub(crate) fn without_consequences(broken: Vec<Broken>, mut remarks: Vec<Remark>) -> Vec<Remark> {
    if broken.is_empty() {
        return remarks;
    }
    let missing = |remark: &Remark| match &remark.finding {
        TextFinding::Key(own) => own.is_missing(),
        finding => matches!(finding, TextFinding::Wish(_)),
    };
    // The key may be what could not be read, and what stands in for a value that could not be lies
    // nowhere.
    remarks.retain(|remark| !missing(remark) && remark.span != (0..0));
    if broken.iter().any(|own| own.all) {
        remarks.clear();
    }
    for own in broken {
        // That a number has no quotes is no help where a number is asked.
        let better = |remark: &Remark| {
            remark.span == own.remark.span
                && !remark.span.is_empty()
                && matches!(remark.finding, TextFinding::Value(ValueFinding::NumberInWords { .. }))
        };
        if !remarks.iter().any(better) {
            remarks.retain(|remark| !own.covers(remark.span.start));
            remarks.push(own.remark);
        }
    }
    remarks
}

/// The line of a byte, without its end.
fn line_of(text: &str, byte: usize) -> Range<usize> {
    let start = text[..byte].rfind('\n').map_or(0, |at| at + 1);
    let end = text[byte..].find('\n').map_or(text.len(), |at| byte + at);
    start..end
}

/// Brings a span into the text and onto borders of characters.
fn within(text: &str, span: Range<usize>) -> Range<usize> {
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

/// What is written wrongly, and where; a guess from the line, since parsers know nothing of
/// habits.
fn cause(
    text: &str,
    span: Range<usize>,
    line: Range<usize>,
    parser: &str,
) -> (Range<usize>, TextFinding) {
    let words = &text[line.clone()];
    if parser.contains("duplicate key") {
        let heading = words.trim_start().starts_with('[');
        let twice = if heading { SyntaxFinding::HeadingTwice } else { SyntaxFinding::Twice };
        return (span, twice.into());
    }
    let value = value_of(words);
    let place = line.start + value.start..line.start + value.end;
    let value = &words[value];
    let pointed = &text[span.clone()];
    if value.starts_with(TYPOGRAPHIC) {
        let plain = value.trim_matches(TYPOGRAPHIC).to_owned();
        return (place, SyntaxFinding::TypographicQuotes(plain).into());
    }
    if let Some(number) = decimal_comma(words) {
        let place = line.start + number.start..line.start + number.end;
        return (place, SyntaxFinding::DecimalComma(words[number].to_owned()).into());
    }
    let plain = |c: char| c.is_ascii_digit() || ".-/".contains(c);
    let finding: TextFinding = if words.contains('=') && value.is_empty() {
        SyntaxFinding::NoValue.into()
    } else if value.len() >= 6 && value.chars().all(plain) {
        ValueFinding::Date(value.to_owned()).into()
    } else if parser.contains("must be quoted") && !pointed.is_empty() {
        return (span.clone(), SyntaxFinding::NoQuotes(pointed.to_owned()).into());
    } else if parser.contains("invalid boolean") {
        SyntaxFinding::Truth(value.to_owned()).into()
    } else if parser.contains("leading zero") && value.parse::<f64>().is_ok() {
        SyntaxFinding::LeadingZero(value.to_owned()).into()
    } else {
        return (span, SyntaxFinding::Other(parser.to_owned()).into());
    };
    (if place.is_empty() { span } else { place }, finding)
}

/// Where the value of a line stands, without a comment after it.
fn value_of(line: &str) -> Range<usize> {
    let start = line.find('=').map_or(line.len(), |at| at + 1);
    let end = line[start..].find('#').map_or(line.len(), |at| start + at);
    let value = &line[start..end];
    let left = start + value.len() - value.trim_start().len();
    left..left + value.trim().len()
}

/// Where a number has a comma in place of a point, outside of quotes and comments.
fn decimal_comma(line: &str) -> Option<Range<usize>> {
    let bytes = line.as_bytes();
    let mut quoted = false;
    for (at, byte) in bytes.iter().enumerate() {
        match byte {
            b'"' => quoted = !quoted,
            b'#' if !quoted => return None,
            b',' if !quoted => {
                let digit = |at: usize| bytes.get(at).is_some_and(u8::is_ascii_digit);
                if at > 0 && digit(at - 1) && digit(at + 1) {
                    let start = (0..at).rev().take_while(|at| digit(*at)).last()?;
                    let end = (at + 1..bytes.len()).take_while(|at| digit(*at)).last()? + 1;
                    return Some(start..end);
                }
            }
            _ => {}
        }
    }
    None
}
