//! Spanish: what is found about a value by itself.

use case::Said;
use case::question::{Kind, Question, Range, Unit};
use case::text::{LengthUnit, Looks, Type, ValueFinding, WordFinding};
use cushion::SizeError;

use super::super::{CODE_RULE, NAME_RULE};
use super::{alternatives, label, layouts, said, unit_of_length};
use crate::spanish::parts;

pub(super) fn value(finding: &ValueFinding) -> Said {
    match finding {
        ValueFinding::Type { found, wanted } => said(
            format!("esto es {}, no {}", type_words(*found), type_words(*wanted)),
            how(*wanted),
        ),
        ValueFinding::NumberInWords { written, write } => said(
            format!("`{written}` es un texto, no un número"),
            match write {
                Some(number) => format!("escriba {number}, sin unidad, coma ni comillas"),
                None => how(Type::Number).to_owned(),
            },
        ),
        ValueFinding::NotFinite => said("esto no es un número finito", "escriba un número"),
        ValueFinding::Length { question, number, unit, looks } => {
            length(*question, *number, *unit, *looks)
        }
        ValueFinding::Range { question, number } => range(*question, *number),
        ValueFinding::Whole { written, least, most } => said(
            format!("{written} no puede ser correcto aquí"),
            format!("está entre {least} y {most}"),
        ),
        ValueFinding::Date(written) => {
            said(format!("`{written}` no es una fecha"), "escriba año-mes-día, como 2026-03-31")
        }
        ValueFinding::Empty => said("esto está vacío", "escríbalo, o quite la clave"),
        ValueFinding::Control => {
            said("aquí hay un salto de línea o un carácter de control", "escríbalo en una línea")
        }
        ValueFinding::Unprintable(character) => said(
            format!("los papeles no pueden imprimir `{character}`"),
            "escríbalo con letras de lenguas europeas",
        ),
        ValueFinding::RightToLeft(character) => said(
            format!(
                "`{character}` se escribe de derecha a izquierda, y los papeles aún no lo admiten"
            ),
            "escríbalo con letras que vayan de izquierda a derecha",
        ),
        ValueFinding::Word { wanted, written } => {
            said(format!("`{written}` no puede estar aquí"), format!("escriba \"{wanted}\""))
        }
    }
}

/// What is said of a value that is one of many words.
pub(super) fn word(finding: &WordFinding) -> Said {
    match finding {
        WordFinding::Name(written, near) => said(
            format!("`{written}` no es un nombre"),
            match near {
                Some(near) => format!("escriba \"{near}\""),
                None => format!("tome {NAME_RULE}"),
            },
        ),
        WordFinding::Choice { question, written, near } => choice(*question, written, *near),
        WordFinding::Code(written) => said(
            format!("`{written}` no es un código para una persona"),
            format!("nunca un nombre: tome {CODE_RULE}"),
        ),
        WordFinding::NameInCode(written) => said(
            format!("`{written}` parece un nombre o un día de nacimiento"),
            "un código no debe decir quién es la persona; si no lo dice, déjelo",
        ),
        WordFinding::Phone(written) => said(
            format!("`{written}` no es un número de teléfono"),
            "escriba solo cifras, espacios y + ( ) -",
        ),
        WordFinding::Size(error, near) => {
            let hint = match (near, error) {
                (Some(near), _) => format!("escriba \"{near}\""),
                (None, SizeError::Range { .. }) => {
                    "escriba milímetros, o añada `in` para pulgadas".to_owned()
                }
                (None, _) => "la anchura va primero".to_owned(),
            };
            said(layouts::no_size(*error), hint)
        }
    }
}

fn choice(question: Question, written: &str, near: Option<&str>) -> Said {
    let row = question.row();
    let message = if row.key == "units" {
        format!("`{written}` no es una unidad de medidas")
    } else {
        format!("`{written}` no vale para «{}»", label(question))
    };
    let words = match row.kind {
        Kind::Choice(words) => alternatives(words),
        _ => String::new(),
    };
    let hint = match near {
        Some(near) => format!("escriba \"{near}\""),
        None => format!("escriba {words}"),
    };
    said(message, hint)
}

fn length(question: Question, number: f64, unit: LengthUnit, looks: Looks) -> Said {
    let words = unit_of_length(unit);
    let hint = match looks {
        Looks::Centimetres => "parecen centímetros; escriba milímetros".to_owned(),
        Looks::Inches => "parecen pulgadas; escriba milímetros, o `units = \"in\"`".to_owned(),
        Looks::Millimetres => "parecen milímetros; escriba pulgadas, o `units = \"mm\"`".to_owned(),
        Looks::Wrong => match question.row().kind {
            Kind::Length(Range { least, most }) => {
                let (least, most) = (least / unit.in_mm(), most / unit.in_mm());
                format!("está entre {least:.0} y {most:.0} {words}; mida otra vez")
            }
            _ => String::new(),
        },
    };
    let number = parts::number(number);
    said(format!("{number} {words} no puede ser correcto para «{}»", label(question)), hint)
}

fn range(question: Question, number: f64) -> Said {
    let Kind::Number(unit, Range { least, most }) = question.row().kind else {
        return said(format!("{} no puede ser correcto aquí", parts::number(number)), "");
    };
    let unit = match unit_words(unit) {
        "" => String::new(),
        words => format!(" {words}"),
    };
    let label = label(question);
    let [number, least, most] = [number, least, most].map(parts::number);
    said(
        format!("{number}{unit} no puede ser correcto para «{label}»"),
        format!("está entre {least} y {most}{unit}"),
    )
}

/// How a unit is written after a number.
fn unit_words(unit: Unit) -> &'static str {
    match unit {
        Unit::Degree => "grados",
        Unit::Hour => "horas",
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
        Type::Text => "un texto",
        Type::Number => "un número",
        Type::Whole => "un número entero",
        Type::Truth => "true o false",
        Type::Date => "una fecha",
        Type::List => "una lista",
        Type::Table => "una tabla",
    }
}

fn how(wanted: Type) -> &'static str {
    match wanted {
        Type::Text => "escríbalo entre comillas, como \"...\"",
        Type::Number => "escriba un número sin comillas, como 40 o 12.5",
        Type::Whole => "escriba un número entero sin comillas",
        Type::Truth => "escriba `true` o `false`, sin comillas",
        Type::Date => "escríbalo como 2026-03-31",
        Type::List => "escríbalo entre corchetes, como [1, 2]",
        Type::Table => "escríbalo entre llaves, como { key = value }, o bajo un [encabezado]",
    }
}
