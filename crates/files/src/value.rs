//! A value with its place, and what it is read as.

use std::ops::Range;

use case::Date;
use case::question::{Group, Kind, Question, Unit};
use case::text::{
    KeyFinding, LengthUnit, Looks, TextFinding, Type, ValueFinding, WordFinding, is_right_to_left,
};
use cushion::{Length, Name, Size, Words};
use toml::Spanned;
use toml::de::DeValue;

use crate::cursor::{FILL_IN, Remarks, Table, near, wrong_type};

/// A value with its place, and the question that it answers.
#[derive(Clone, Copy)]
pub(crate) struct Value<'a> {
    value: &'a Spanned<DeValue<'a>>,
    question: Option<Question>,
    pub(crate) remarks: &'a Remarks,
}

impl<'a> Value<'a> {
    pub(crate) fn new(
        value: &'a Spanned<DeValue<'a>>,
        question: Option<Question>,
        remarks: &'a Remarks,
    ) -> Self {
        Self { value, question, remarks }
    }

    pub(crate) fn get(&self) -> &'a DeValue<'a> {
        self.value.get_ref()
    }

    pub(crate) fn span(&self) -> Range<usize> {
        self.value.span()
    }

    /// Whether it was to be filled in, on a side where there are two; says so.
    pub(crate) fn is_blank(&self, side: Option<&'static str>) -> bool {
        let blank = self.get().as_str().is_some_and(|text| text.trim() == FILL_IN);
        if let (true, Some(question)) = (blank, self.question) {
            self.remarks.error(self.span(), KeyFinding::Blank(question, side));
        }
        blank && self.question.is_some()
    }

    /// A text.
    pub(crate) fn text(&self) -> Option<&'a str> {
        let text = self.get().as_str();
        if text.is_none() {
            wrong_type(self, Type::Text);
        }
        text
    }

    /// A text that says something, in one line, in a direction that papers can set.
    pub(crate) fn sentence(&self) -> Option<String> {
        let text = self.line()?;
        if let Some(character) = text.chars().find(|own| is_right_to_left(*own)) {
            self.remarks.error(self.span(), ValueFinding::RightToLeft(character));
            return None;
        }
        Some(text)
    }

    /// A text that says something, in one line.
    fn line(&self) -> Option<String> {
        let text = self.text()?.trim();
        if text.is_empty() {
            self.remarks.error(self.span(), ValueFinding::Empty);
            return None;
        }
        if text.chars().any(char::is_control) {
            self.remarks.error(self.span(), ValueFinding::Control);
            return None;
        }
        Some(text.to_owned())
    }

    /// A text that says something, in English; or one for each language, English among them.
    pub(crate) fn words(&self, question: Question) -> Option<Words> {
        if !self.get().is_table() {
            return self.sentence().map(Words::english);
        }
        let languages = self.table(None)?.by_language();
        if !languages.iter().any(|(tag, _)| *tag == Words::ENGLISH) {
            self.remarks.error(self.span(), KeyFinding::NoEnglish(question));
            return None;
        }
        let mut words = Words::english("");
        for (tag, value) in languages {
            words = words.with(tag, value.line()?);
        }
        Some(words)
    }

    /// A name by which files call things.
    pub(crate) fn name(&self) -> Option<Name> {
        let text = self.text()?;
        let name = Name::new(text);
        if name.is_none() {
            let plain = text.trim().to_lowercase().replace([' ', '_'], "-");
            let meant = Name::new(&plain).map(|name| name.as_str().to_owned());
            self.remarks.error(self.span(), WordFinding::Name(text.to_owned(), meant));
        }
        name
    }

    /// One of some words, with what it stands for.
    pub(crate) fn choice<T: Copy>(&self, words: &[(T, &'static str)]) -> Option<T> {
        let written = self.text()?;
        let found = words.iter().find(|(_, word)| *word == written);
        if let (None, Some(question)) = (found, self.question) {
            let known: Vec<&'static str> = words.iter().map(|(_, word)| *word).collect();
            let plain = |word: &str| word.to_lowercase().replace(['-', '_'], " ");
            let same = known.iter().find(|word| plain(word) == plain(written.trim())).copied();
            let near = same.or_else(|| near(written, &known).filter(|_| written.len() > 3));
            let written = written.to_owned();
            self.remarks.error(self.span(), WordFinding::Choice { question, written, near });
        }
        found.map(|(value, _)| *value)
    }

    pub(crate) fn boolean(&self) -> Option<bool> {
        let value = self.get().as_bool();
        if value.is_none() {
            wrong_type(self, Type::Truth);
        }
        value
    }

    /// A number if it is written as one; remarks only on numbers that are not finite.
    pub(crate) fn if_number(&self) -> Option<Option<f64>> {
        let number: f64 = match self.get() {
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
        self.remarks.error(self.span(), ValueFinding::NotFinite);
        Some(None)
    }

    /// A finite number; where it is in words, with a guess at what to write in `unit`.
    fn number_of(&self, unit: Option<Unit>) -> Option<f64> {
        if let Some(number) = self.if_number() {
            return number;
        }
        match self.get().as_str() {
            Some(written) => {
                let (written, write) = (written.to_owned(), in_words(written, unit));
                self.remarks.error(self.span(), ValueFinding::NumberInWords { written, write });
            }
            None => wrong_type(self, Type::Number),
        }
        None
    }

    /// A finite number.
    pub(crate) fn number(&self) -> Option<f64> {
        self.number_of(None)
    }

    /// A number in the range of its question.
    pub(crate) fn number_in_range(&self) -> Option<f64> {
        let question = self.question?;
        let Kind::Number(unit, range) = question.row().kind else { return self.number() };
        let number = self.number_of(Some(unit))?;
        if !range.has(number) {
            self.remarks.error(self.span(), ValueFinding::Range { question, number });
            return None;
        }
        Some(number)
    }

    /// A length of the body or the chair; a remark where it cannot be right, with a guess why.
    pub(crate) fn length(&self, unit: LengthUnit) -> Option<Length> {
        let question = self.question?;
        let Kind::Length(range) = question.row().kind else { return None };
        let in_mm = (unit == LengthUnit::Millimetres).then_some(Unit::Millimetre);
        let number = self.number_of(in_mm)?;
        let mm = number * unit.in_mm();
        if range.has(mm) {
            return Some(Length::from_mm(mm));
        }
        let guess = |factor: f64| range.has(number * factor);
        let looks = match unit {
            LengthUnit::Millimetres if guess(10.0) => Looks::Centimetres,
            LengthUnit::Millimetres if guess(25.4) => Looks::Inches,
            LengthUnit::Inches if guess(1.0) => Looks::Millimetres,
            _ => Looks::Wrong,
        };
        self.remarks.error(self.span(), ValueFinding::Length { question, number, unit, looks });
        None
    }

    /// A whole number in the range of its question.
    pub(crate) fn whole(&self) -> Option<i64> {
        match self.question?.row().kind {
            Kind::Whole { least, most } => self.whole_in(least, most),
            _ => self.whole_in(i64::MIN, i64::MAX),
        }
    }

    /// A whole number in a range.
    pub(crate) fn whole_in(&self, least: i64, most: i64) -> Option<i64> {
        let DeValue::Integer(integer) = self.get() else {
            match self.get().as_str() {
                Some(written) => {
                    let (written, write) = (written.to_owned(), in_words(written, None));
                    self.remarks.error(self.span(), ValueFinding::NumberInWords { written, write });
                }
                None => wrong_type(self, Type::Whole),
            }
            return None;
        };
        let number = i64::from_str_radix(&integer.as_str().replace('_', ""), integer.radix()).ok();
        let inside = number.filter(|number| (least..=most).contains(number));
        if inside.is_none() {
            let written = integer.as_str().to_owned();
            self.remarks.error(self.span(), ValueFinding::Whole { written, least, most });
        }
        inside
    }

    /// A day, as a TOML date or a text such as "2026-03-31".
    pub(crate) fn date(&self) -> Option<Date> {
        let written = match self.get() {
            DeValue::Datetime(datetime) => datetime.to_string(),
            DeValue::String(text) => text.to_string(),
            _ => {
                wrong_type(self, Type::Date);
                return None;
            }
        };
        let date = written.parse::<Date>().ok().filter(|_| written.len() == 10);
        let plausible = date.filter(|date| (1990..=2120).contains(&date.year()));
        if plausible.is_none() {
            self.remarks.error(self.span(), ValueFinding::Date(written));
        }
        plausible
    }

    /// A size, width by depth.
    pub(crate) fn size(&self) -> Option<Size> {
        let written = self.text()?;
        match written.parse::<Size>() {
            Ok(size) => Some(size),
            Err(error) => {
                self.remarks.error(self.span(), WordFinding::Size(error, size_meant(written)));
                None
            }
        }
    }

    /// The values of a list.
    pub(crate) fn list(&self) -> Option<Vec<Value<'a>>> {
        let list = self.get().as_array();
        if list.is_none() {
            wrong_type(self, Type::List);
        }
        Some(list?.iter().map(|value| Value::new(value, self.question, self.remarks)).collect())
    }

    pub(crate) fn is_list(&self) -> bool {
        self.get().is_array()
    }

    /// A table of a group, or of names.
    pub(crate) fn table(&self, group: Option<Group>) -> Option<Table<'a>> {
        let Some(table) = self.get().as_table() else {
            wrong_type(self, Type::Table);
            return None;
        };
        Some(Table::new(table, self.span(), group, self.remarks))
    }

    /// The client's left and right.
    pub(crate) fn sides(&self) -> Option<Table<'a>> {
        Some(self.table(None)?.of_sides(self.question))
    }

    /// Makes a remark that is no error.
    pub(crate) fn ask(&self, finding: impl Into<TextFinding>) {
        self.remarks.remark(self.span(), finding);
    }
}

/// The number that is meant by words such as `3cm`, `38,5` and `60 kg`, as it is to be written.
fn in_words(written: &str, unit: Option<Unit>) -> Option<String> {
    let plain = written.trim().replace(',', ".");
    let outside = |c: char| !(c.is_ascii_digit() || "+-.".contains(c));
    let end = plain.find(outside).unwrap_or(plain.len());
    let (number, words): (f64, &str) = (plain[..end].parse().ok()?, plain[end..].trim());
    let factor = match (words, unit) {
        ("", _) => 1.0,
        (words, Some(unit)) if words == unit.symbol() => 1.0,
        ("cm", Some(Unit::Millimetre)) => 10.0,
        ("in" | "\"", Some(Unit::Millimetre)) => 25.4,
        ("degrees" | "deg", Some(Unit::Degree)) => 1.0,
        ("h" | "hours", Some(Unit::Hour)) => 1.0,
        _ => return None,
    };
    Some(((number * factor * 1e3).round() / 1e3).to_string())
}

/// The size that is meant by words such as `440X400`, as it is to be written.
pub(crate) fn size_meant(written: &str) -> Option<String> {
    let plain = written.to_lowercase().replace(['*', '/'], "x").replace(',', ".");
    let plain = plain.replace(" by ", "x").replace('"', "in").replace("inx", "x");
    let plain: String = plain.replace("cm", "").split_whitespace().collect();
    let centimetres = || {
        let (width, depth) = plain.split_once('x')?;
        let mm = |side: &str| Some(side.parse::<f64>().ok()? * 10.0);
        Some(format!("{}x{}", mm(width)?, mm(depth)?))
    };
    let meant = if written.contains("cm") { centimetres()? } else { plain.clone() };
    meant.parse::<Size>().is_ok().then_some(meant)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_in_words_are_told_as_they_are_to_be_written() {
        let meant = |written: &str, unit| in_words(written, unit);
        assert_eq!(meant("38,5", Some(Unit::Kilogram)), Some("38.5".to_owned()));
        assert_eq!(meant("3cm", Some(Unit::Millimetre)), Some("30".to_owned()));
        assert_eq!(meant("60 kg", Some(Unit::Kilogram)), Some("60".to_owned()));
        assert_eq!(meant("60 kg", Some(Unit::Pound)), None);
        assert_eq!(meant("soon", None), None);
        assert_eq!(meant("3 cm", None), None);
    }

    #[test]
    fn sizes_are_told_as_they_are_to_be_written() {
        for written in ["440X400", "440*400", "440 by 400", "44x40cm", "44 x 40 cm"] {
            assert_eq!(size_meant(written), Some("440x400".to_owned()), "{written}");
        }
        assert_eq!(size_meant("17\"x16\""), Some("17x16in".to_owned()));
        assert_eq!(size_meant("wide"), None);
    }
}
