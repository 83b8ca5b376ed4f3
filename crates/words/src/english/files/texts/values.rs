//! English: what is found about a value by itself.

use case::question::{Kind, Question, Range, Unit};
use case::text::{LengthUnit, Looks, Type, ValueFinding, WordFinding};
use case::{ClientCode, Said};
use cushion::{Name, SizeError};

use super::{alternatives, label, layouts, said, unit_of_length};

pub(super) fn value(finding: &ValueFinding) -> Said {
    match finding {
        ValueFinding::Type { found, wanted } => said(
            format!("this is {}, not {}", type_words(*found), type_words(*wanted)),
            how(*wanted),
        ),
        ValueFinding::NumberInWords { written, write } => said(
            format!("`{written}` is a text, not a number"),
            match write {
                Some(number) => format!("write {number}, without unit, comma or quotes"),
                None => how(Type::Number).to_owned(),
            },
        ),
        ValueFinding::NotFinite => said("this is not a finite number", "write a number"),
        ValueFinding::Length { question, number, unit, looks } => {
            length(*question, *number, *unit, *looks)
        }
        ValueFinding::Range { question, number } => range(*question, *number),
        ValueFinding::Whole { written, least, most } => said(
            format!("{written} cannot be right here"),
            format!("it lies between {least} and {most}"),
        ),
        ValueFinding::Date(written) => {
            said(format!("`{written}` is not a date"), "write year-month-day, as 2026-03-31")
        }
        ValueFinding::Empty => said("this is empty", "write it, or take the key away"),
        ValueFinding::Control => {
            said("this has a line break or a control character in it", "write it in one line")
        }
        ValueFinding::Unprintable(character) => said(
            format!("the papers cannot print `{character}`"),
            "write it in letters of European languages",
        ),
        ValueFinding::RightToLeft(character) => said(
            format!("`{character}` is written from right to left, which papers do not set yet"),
            "write it in letters that run from left to right",
        ),
        ValueFinding::Word { wanted, written } => {
            said(format!("`{written}` cannot stand here"), format!("write \"{wanted}\""))
        }
    }
}

/// What is said of a value that is one of many words.
pub(super) fn word(finding: &WordFinding) -> Said {
    match finding {
        WordFinding::Name(written, near) => said(
            format!("`{written}` is not a name"),
            match near {
                Some(near) => format!("write \"{near}\""),
                None => format!("take {}", Name::RULE),
            },
        ),
        WordFinding::Choice { question, written, near } => choice(*question, written, *near),
        WordFinding::Code(written) => said(
            format!("`{written}` is not a code for a client"),
            format!("never a name: take {}", ClientCode::RULE),
        ),
        WordFinding::NameInCode(written) => said(
            format!("`{written}` looks like a name or a day of birth"),
            "a code must not tell who the client is; if it does not, leave it",
        ),
        WordFinding::Phone(written) => said(
            format!("`{written}` is not a telephone number"),
            "write digits, spaces and + ( ) - only",
        ),
        WordFinding::Size(error, near) => {
            let hint = match (near, error) {
                (Some(near), _) => format!("write \"{near}\""),
                (None, SizeError::Range { .. }) => {
                    "write millimetres, or add `in` for inches".to_owned()
                }
                (None, _) => "width comes first".to_owned(),
            };
            said(layouts::no_size(*error), hint)
        }
    }
}

fn choice(question: Question, written: &str, near: Option<&str>) -> Said {
    let row = question.row();
    let message = if row.key == "units" {
        format!("`{written}` is not a unit for measures")
    } else {
        format!("no {} is called `{written}`", label(question))
    };
    let words = match row.kind {
        Kind::Choice(words) => alternatives(words),
        _ => String::new(),
    };
    let hint = match near {
        Some(near) => format!("write \"{near}\""),
        None => format!("write {words}"),
    };
    said(message, hint)
}

fn length(question: Question, number: f64, unit: LengthUnit, looks: Looks) -> Said {
    let words = unit_of_length(unit);
    let hint = match looks {
        Looks::Centimetres => "this looks like centimetres; write millimetres".to_owned(),
        Looks::Inches => {
            "this looks like inches; write millimetres, or `units = \"in\"`".to_owned()
        }
        Looks::Millimetres => {
            "this looks like millimetres; write inches, or `units = \"mm\"`".to_owned()
        }
        Looks::Wrong => match question.row().kind {
            Kind::Length(Range { least, most }) => {
                let (least, most) = (least / unit.in_mm(), most / unit.in_mm());
                format!("it lies between {least:.0} and {most:.0} {words}; measure again")
            }
            _ => String::new(),
        },
    };
    said(format!("{number} {words} cannot be the {}", label(question)), hint)
}

fn range(question: Question, number: f64) -> Said {
    let Kind::Number(unit, Range { least, most }) = question.row().kind else {
        return said(format!("{number} cannot be right here"), "");
    };
    let unit = match unit_words(unit) {
        "" => String::new(),
        words => format!(" {words}"),
    };
    let label = label(question);
    let article = if label.starts_with(['a', 'e', 'i', 'o', 'u']) { "an" } else { "a" };
    said(
        format!("{article} {label} of {number}{unit} cannot be right"),
        format!("it lies between {least} and {most}{unit}"),
    )
}

/// How a unit is written after a number.
fn unit_words(unit: Unit) -> &'static str {
    match unit {
        Unit::Degree => "degrees",
        Unit::Hour => "hours",
        Unit::Millimetre
        | Unit::Metre
        | Unit::Kilogram
        | Unit::Pound
        | Unit::Gram
        | Unit::Millilitre
        | Unit::Percent
        | Unit::Share => unit.symbol(),
    }
}

fn type_words(found: Type) -> &'static str {
    match found {
        Type::Text => "a text",
        Type::Number => "a number",
        Type::Whole => "a whole number",
        Type::Truth => "true or false",
        Type::Date => "a date",
        Type::List => "a list",
        Type::Table => "a table",
    }
}

fn how(wanted: Type) -> &'static str {
    match wanted {
        Type::Text => "write it in quotes, as in \"...\"",
        Type::Number => "write a number without quotes, such as 40 or 12.5",
        Type::Whole => "write a whole number without quotes",
        Type::Truth => "write `true` or `false`, without quotes",
        Type::Date => "write it as 2026-03-31",
        Type::List => "write it in square brackets, as in [1, 2]",
        Type::Table => "write it in braces, as in { key = value }, or under a [heading]",
    }
}
