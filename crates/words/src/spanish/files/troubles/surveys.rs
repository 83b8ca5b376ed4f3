//! Spanish: what is wrong with tables of bodies and parts of surveys.

use case::{Said, TableFault};

use super::said;
use crate::spanish::parts;

pub(super) fn table(file: &str, line: u64, fault: &TableFault) -> Said {
    let Said { message, hint } = fault_of_table(fault);
    Said { message: format!("{file}, línea {line}: {message}"), hint }
}

pub(super) fn other_surveys(file: &str, first: &str) -> Said {
    said(
        format!(
            "`{file}` y `{first}` son de estudios distintos: de otro diseño, celda, tabla u opciones, o en otro número de partes"
        ),
        "junte partes de un estudio",
    )
}

pub(super) fn part_twice(file: &str, first: &str, part: usize) -> Said {
    said(format!("`{file}` y `{first}` son ambas la parte {part}"), "nombre cada parte una vez")
}

pub(super) fn parts_missing(missing: &[usize], of: usize) -> Said {
    let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
    let noun = if missing.len() == 1 { "la parte" } else { "las partes" };
    said(
        format!("de {of} partes, no se halla {noun} {} en estas tablas", parts::list(&missing)),
        "nombre todas las partes; un estudio está entero o no está",
    )
}

pub(super) fn empty_part(file: &str) -> Said {
    said(
        format!("`{file}` no tiene filas, así que nadie sabe qué parte es"),
        "ejecute otra vez esa parte",
    )
}

pub(super) fn other_survey(file: &str) -> Said {
    said(
        format!(
            "`{file}` es de otro estudio: de otro diseño, celda, tabla u opciones, o de otra parte"
        ),
        "nombre otro archivo para la respuesta, o mueva antes ese",
    )
}

pub(super) fn body_twice(row: u32) -> Said {
    said(format!("el cuerpo {row} está en dos de las partes"), "nombre cada parte una vez")
}

pub(super) fn no_parts() -> Said {
    said("no hay nada en estas partes", "nombre tablas que escribió un estudio")
}

fn fault_of_table(fault: &TableFault) -> Said {
    match fault {
        TableFault::NoColumn { name, wanted } => said(
            format!("no hay columna `{name}`"),
            format!("una tabla de cuerpos tiene {}", wanted.join(", ")),
        ),
        TableFault::Cell { written, column, least, most } => said(
            format!("`{written}` no puede ser correcto bajo {column}"),
            format!("está entre {least} y {most}"),
        ),
        TableFault::NotARow(why) => said(
            format!("esto no es una fila de la tabla: {why}"),
            "cada fila tiene tantas celdas como el encabezado",
        ),
        TableFault::NoSurvey => said(
            "esto no es un estudio de esta versión",
            "nombre una tabla que escribió un estudio, u otra para la respuesta",
        ),
        TableFault::SurveyRow => {
            said("no se puede leer esta fila", "se cambió a mano; ejecute otra vez esta parte")
        }
    }
}
