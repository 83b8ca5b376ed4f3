//! What a person types for a number: with a comma or a point, a fraction, a unit behind it.

use case::question::{Kind, Question, Unit};
use case::text::LengthUnit;
use cushion::Mass;

/// In what a number without a unit is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TypedIn {
    /// Of lengths.
    pub lengths: TypedLength,
    /// Of weights, whether it is pounds.
    pub pounds: bool,
}

/// In what a length without a unit is meant.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TypedLength {
    /// Millimetres.
    Millimetres,
    /// Centimetres.
    Centimetres,
    /// Inches.
    Inches,
}

impl TypedLength {
    /// All, with the words by which a unit is known.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::Millimetres, "mm"), (Self::Centimetres, "cm"), (Self::Inches, "in")];

    /// Its word.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::Millimetres => "mm",
            Self::Centimetres => "cm",
            Self::Inches => "in",
        }
    }
}

/// The international avoirdupois pound, by definition, in kilograms.
const KG_OF_LB: f64 = 0.453_592_37;

/// Millimetres in a centimetre; of the units of lengths, inches alone are longer.
const MM_OF_CM: f64 = 10.0;

/// Units that may stand behind a number, each with its size in millimetres or kilograms.
const UNITS: [(&str, Measured, f64); 13] = [
    ("mm", Measured::Length, 1.0),
    ("cm", Measured::Length, MM_OF_CM),
    ("inches", Measured::Length, 25.4),
    ("inch", Measured::Length, 25.4),
    ("in", Measured::Length, 25.4),
    ("\u{2033}", Measured::Length, 25.4),
    ("\"", Measured::Length, 25.4),
    ("kg", Measured::Weight, 1.0),
    ("lbs", Measured::Weight, KG_OF_LB),
    ("lb", Measured::Weight, KG_OF_LB),
    ("\u{b0}", Measured::Bare, 1.0),
    ("%", Measured::Bare, 1.0),
    ("m", Measured::Bare, 1.0),
];

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Measured {
    Length,
    Weight,
    Bare,
}

/// A number with the size of the unit behind it, where one was typed.
fn with_unit(typed: &str) -> Option<(f64, Option<(Measured, f64)>)> {
    let typed = typed.trim();
    let lower = typed.to_lowercase();
    let unit = UNITS.iter().find(|own| lower.ends_with(own.0));
    let digits = unit.map_or(typed, |own| typed[..typed.len() - own.0.len()].trim());
    Some((number(digits)?, unit.map(|own| (own.1, own.2))))
}

/// A number: `42`, `42.5`, `42,5`, `16 1/2`, `16½`. None for anything else.
fn number(typed: &str) -> Option<f64> {
    let typed = typed.trim().replace('\u{bd}', " 1/2").replace('\u{bc}', " 1/4");
    let typed = typed.replace('\u{be}', " 3/4");
    let mut parts = typed.split_whitespace();
    let (first, second) = (parts.next()?, parts.next());
    if parts.next().is_some() {
        return None;
    }
    let value = match (first.split_once('/'), second) {
        (Some(_), None) => fraction(first)?,
        (None, None) => decimal(first)?,
        (None, Some(rest)) => {
            let whole = first.parse::<u32>().ok()?;
            f64::from(whole) + fraction(rest).filter(|part| *part < 1.0)?
        }
        _ => return None,
    };
    value.is_finite().then_some(value)
}

fn decimal(typed: &str) -> Option<f64> {
    let plain = |c: char| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+');
    // Two signs between digits are thousands, or a slip: never guessed.
    let one = typed.matches(['.', ',']).count() <= 1;
    (one && typed.chars().all(plain)).then(|| typed.replace(',', ".").parse().ok())?
}

fn fraction(typed: &str) -> Option<f64> {
    let (over, under) = typed.split_once('/')?;
    let (over, under) = (over.parse::<u32>().ok()?, under.parse::<u32>().ok()?);
    (under > 0).then(|| f64::from(over) / f64::from(under))
}

/// As a file has it: at most three decimals, and none that say nothing.
fn plain(value: f64) -> String {
    let rounded = (value * 1e3).round() / 1e3 + 0.0;
    rounded.to_string()
}

/// What was typed for a question, as a file has it whose lengths are in a unit; with the question
/// that is answered by it, which is the weight in pounds where pounds were typed. What is no number
/// stays as it was typed: what is wrong with it is said where it is read.
pub(super) fn as_in_file(
    question: Question,
    typed: &str,
    default: TypedIn,
    file: LengthUnit,
) -> (Question, String) {
    let kept = || typed.trim().to_owned();
    let in_mm = |value: f64, unit: Option<(Measured, f64)>| match unit {
        Some((Measured::Length, size)) => Some(value * size),
        Some(_) => None,
        None => Some(value * size_of(default.lengths)),
    };
    let Some((value, unit)) = with_unit(typed) else { return (question, kept()) };
    match question.row().kind {
        Kind::Length(_) => {
            let of_file = match file {
                LengthUnit::Millimetres => 1.0,
                LengthUnit::Inches => 25.4,
            };
            let own = in_mm(value, unit).map(|own| plain(own / of_file));
            (question, own.unwrap_or_else(kept))
        }
        Kind::Number(Unit::Millimetre, _) => {
            (question, in_mm(value, unit).map_or_else(kept, plain))
        }
        Kind::Number(Unit::Kilogram | Unit::Pound, _) => {
            let pounds = match unit {
                Some((Measured::Weight, size)) => size < 1.0,
                Some(_) => return (question, kept()),
                None => default.pounds,
            };
            let question = if pounds { Question::WeightLb } else { Question::WeightKg };
            (question, plain(value))
        }
        Kind::Number(..) => match unit {
            None | Some((Measured::Bare, _)) => (question, plain(value)),
            Some(_) => (question, kept()),
        },
        _ => (question, kept()),
    }
}

/// A body weight as it was typed, within what a client's file takes; none for anything else.
#[must_use]
pub fn weight_typed(typed: &str, default: TypedIn) -> Option<Mass> {
    let (question, value) = as_in_file(Question::WeightKg, typed, default, LengthUnit::Millimetres);
    let Kind::Number(_, range) = question.row().kind else { return None };
    let value = value.parse::<f64>().ok().filter(|value| range.has(*value))?;
    let kg = if question == Question::WeightLb { value * KG_OF_LB } else { value };
    Some(Mass::from_kg(kg))
}

/// A length as it was typed, as a check has it: `30mm`, or `1.25in` where inches stand behind the
/// number, or are what a number without a unit is meant in. None for what is no length.
#[must_use]
pub fn length_typed(typed: &str, default: TypedLength) -> Option<String> {
    let (value, unit) = with_unit(typed)?;
    match (value, unit.or(Some((Measured::Length, size_of(default))))) {
        (value, Some((Measured::Length, size))) if size > MM_OF_CM => {
            Some(format!("{}in", plain(value)))
        }
        (value, Some((Measured::Length, size))) => Some(format!("{}mm", plain(value * size))),
        _ => None,
    }
}

fn size_of(unit: TypedLength) -> f64 {
    match unit {
        TypedLength::Millimetres => 1.0,
        TypedLength::Centimetres => MM_OF_CM,
        TypedLength::Inches => 25.4,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const MM: TypedIn = TypedIn { lengths: TypedLength::Millimetres, pounds: false };

    fn hip(typed: &str, lengths: TypedLength, file: LengthUnit) -> String {
        as_in_file(Question::HipWidth, typed, TypedIn { lengths, ..MM }, file).1
    }

    #[test]
    fn lengths_are_read_in_the_unit_behind_them_and_else_in_the_chosen_one() {
        let mm = LengthUnit::Millimetres;
        for (typed, lengths, wanted) in [
            ("402", TypedLength::Millimetres, "402"),
            ("40,2", TypedLength::Centimetres, "402"),
            ("40.2 cm", TypedLength::Inches, "402"),
            ("16 1/2", TypedLength::Inches, "419.1"),
            ("16\u{bd} in", TypedLength::Millimetres, "419.1"),
            ("16.5\"", TypedLength::Centimetres, "419.1"),
            ("402 MM", TypedLength::Inches, "402"),
        ] {
            assert_eq!(hip(typed, lengths, mm), wanted, "{typed}");
        }
        assert_eq!(hip("16 1/2", TypedLength::Inches, LengthUnit::Inches), "16.5");
        assert_eq!(hip("419.1 mm", TypedLength::Inches, LengthUnit::Inches), "16.5");
    }

    #[test]
    fn what_is_no_number_stays_as_it_was_typed() {
        for typed in ["4o2", "1.234,5", "40 2", "16 3/2", "1/0", "nan", "inf", "", "40 kg", "--4"] {
            assert_eq!(hip(typed, TypedLength::Millimetres, LengthUnit::Millimetres), typed);
        }
    }

    #[test]
    fn a_length_of_a_check_has_its_unit() {
        for (typed, wanted) in [
            ("30", Some("30mm")),
            ("12,5", Some("12.5mm")),
            ("3 cm", Some("30mm")),
            ("1 1/4 in", Some("1.25in")),
            ("0.6\"", Some("0.6in")),
            ("-3", Some("-3mm")),
            ("30 kg", None),
            ("thirty", None),
            ("", None),
        ] {
            assert_eq!(length_typed(typed, TypedLength::Millimetres).as_deref(), wanted, "{typed}");
        }
        for (typed, default, wanted) in [
            ("1 1/4", TypedLength::Inches, "1.25in"),
            ("30 mm", TypedLength::Inches, "30mm"),
            ("3,2", TypedLength::Centimetres, "32mm"),
            ("1.25 in", TypedLength::Centimetres, "1.25in"),
        ] {
            assert_eq!(length_typed(typed, default).as_deref(), Some(wanted), "{typed}");
        }
    }

    #[test]
    fn pounds_answer_the_question_in_pounds() {
        let weight = |typed, pounds| {
            let default = TypedIn { pounds, ..MM };
            as_in_file(Question::WeightKg, typed, default, LengthUnit::Millimetres)
        };
        assert_eq!(weight("68", false), (Question::WeightKg, "68".to_owned()));
        assert_eq!(weight("150 lb", false), (Question::WeightLb, "150".to_owned()));
        assert_eq!(weight("150", true), (Question::WeightLb, "150".to_owned()));
        assert_eq!(weight("68 kg", true), (Question::WeightKg, "68".to_owned()));
        assert_eq!(weight("68 mm", true), (Question::WeightKg, "68 mm".to_owned()));
    }
}
