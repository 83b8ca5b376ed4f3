//! Spanish: why work on a case ends early.

mod done;
mod papers;
mod restoring;
mod shelf;
mod surveys;

pub(in crate::spanish) use self::shelf::reason;

use case::text::EditError;
use case::{
    AdjustRefusal, BatchError, Date, FileKind, MeshError, NotAppended, Said, StockError, Trouble,
};
use cushion::{FaultKind, Size};

use super::plugins::quoted;
use super::{edits, layouts, plugins, said, texts};
use crate::spanish::parts;
use crate::{CheckWords as _, Spanish};

/// Why work on a case ends early, and what to do.
pub(super) fn about(trouble: &Trouble) -> Said {
    match trouble {
        Trouble::Shelf(error) => shelf::about(error),
        Trouble::NotUtf8 { file, line, byte } => not_utf8(file, *line, *byte),
        Trouble::WrongFile { file, errors, remarks } => wrong_file(file, *errors, *remarks),
        Trouble::Layout(error) => plugins::no_layout(error),
        Trouble::NotOurs { file, kind } => not_ours(file, *kind),
        Trouble::UnknownCell { name, known } => said(
            format!("ninguna celda se llama `{name}`"),
            format!("incluidas: {}; o dé la ruta de un archivo de celda", quoted(known)),
        ),
        Trouble::Edit { file, error } => edit(file, error),
        Trouble::FirstFileIsItself { file } => said(
            format!("`{file}` se nombra a sí mismo como archivo del primer cojín de la persona"),
            "nombre el archivo del otro cojín, o quite la clave",
        ),
        Trouble::OtherCompartments { file } => other_compartments(file),
        Trouble::OtherCushion { file, on, was, now } => other_cushion(file, *on, was, now),
        Trouble::NoWeight { file } => no_weight(file),
        Trouble::NoBody { file, error } => said(
            format!(
                "con las medidas de `{file}` no resulta un cuerpo: {}",
                Spanish::new().body_error(error)
            ),
            "revise esa medida y las cercanas",
        ),
        Trouble::NotSafe(why) => {
            let Said { message, hint } = Spanish::new().plan_refusal(why);
            Said { message: format!("no es posible con seguridad: {message}"), hint }
        }
        Trouble::NoPlan(why) => Spanish::new().plan_refusal(why),
        Trouble::NothingRecorded { file } => nothing_recorded(file),
        Trouble::NotAppended { file, why } => said(not_appended(file, why), ""),
        Trouble::NotSigned => not_signed(),
        Trouble::NotDone { file, why } => done::about(file, why),
        Trouble::NotRestored(why) => restoring::about(why),
        Trouble::NoCheck => no_check(),
        Trouble::Checks { why, numbers } => checks(why, numbers),
        Trouble::NotDrawn { what, why } => papers::not_drawn(what, why),
        Trouble::NoPicture(why) => said(papers::no_picture(why), ""),
        Trouble::NoStock { file, size, error } => no_stock(file, *size, error),
        Trouble::NotMade { file, size, fault } => not_made(file, *size, fault.as_ref()),
        Trouble::NoSizes { file } => said(format!("`{file}` no tiene tamaños"), ""),
        Trouble::OtherCounts { given, wanted } => said(
            format!("se dan {given} cantidades para {wanted} compartimentos"),
            "dé una cantidad para cada compartimento",
        ),
        Trouble::Batch(error) => said(batch(error), ""),
        Trouble::Table { file, line, fault } => surveys::table(file, *line, fault),
        Trouble::PartsOfOtherSurveys { file, first } => surveys::other_surveys(file, first),
        Trouble::PartTwice { file, first, part } => surveys::part_twice(file, first, *part),
        Trouble::PartsMissing { missing, of } => surveys::parts_missing(missing, *of),
        Trouble::EmptyPart { file } => surveys::empty_part(file),
        Trouble::OtherSurvey { file } => surveys::other_survey(file),
        Trouble::BodyTwice { row } => surveys::body_twice(*row),
        Trouble::NoParts => surveys::no_parts(),
        Trouble::Stopped => said("se le dijo que parara, así que no hay respuesta", ""),
        Trouble::NoThread(why) => said(format!("no se pudo iniciar un hilo: {why}"), ""),
    }
}

fn not_utf8(file: &str, line: usize, byte: u8) -> Said {
    said(
        format!(
            "`{file}` no es texto UTF-8: la línea {line} tiene el byte 0x{byte:02X}, que no va ahí"
        ),
        "guarde el archivo como UTF-8 en su editor de texto",
    )
}

fn wrong_file(file: &str, errors: usize, remarks: usize) -> Said {
    said(format!("`{file}` no se puede usar: {}", texts::count(errors, remarks)), "")
}

fn not_ours(file: &str, kind: FileKind) -> Said {
    let id = kind.id();
    said(
        format!("`{file}` no es un archivo {id}: no dice `kind = \"{id}\"`"),
        format!("nombre un archivo {id}; cada uno dice al principio qué es"),
    )
}

fn edit(file: &str, error: &EditError) -> Said {
    let Said { message, hint } = edits::about(error);
    match error {
        EditError::Unreadable(_) => Said { message: format!("`{file}`: {message}"), hint },
        EditError::NoSuchKey { .. }
        | EditError::NoSuchEntry { .. }
        | EditError::EachSide(_)
        | EditError::Table(_)
        | EditError::Form(_)
        | EditError::Wrong { .. } => Said { message, hint },
    }
}

fn not_appended(file: &str, why: &NotAppended) -> String {
    match why {
        NotAppended::NotToml(why) => format!("`{file}`: no se puede añadir al registro: {why}"),
        NotAppended::RecordForm => format!(
            "`{file}`: no se puede añadir al registro: `record` no está escrito como [[record]]"
        ),
        NotAppended::FillingForm => format!(
            "`{file}`: no se puede guardar hasta dónde llegó el llenado: `filling` no está escrito como [filling]"
        ),
    }
}

fn other_compartments(file: &str) -> Said {
    said(
        format!("el último plan registrado en `{file}` tiene otros compartimentos que su diseño"),
        "el diseño se cambió; registre un plan nuevo",
    )
}

fn other_cushion(file: &str, on: Date, was: &(String, Size), now: &(String, Size)) -> Said {
    said(
        format!(
            "el plan registrado el {on} es para `{}` en {}, y `{file}` nombra ahora `{}` en {}",
            was.0, was.1, now.0, now.1
        ),
        "registre un plan nuevo, o vuelva a poner el cojín como estaba",
    )
}

fn no_weight(file: &str) -> Said {
    said(
        format!("`{file}` no tiene peso corporal, y sin él no se puede predecir nada"),
        "pese a la persona y añada [weight] con `kg = ...` y `weighed_on = ...`",
    )
}

fn nothing_recorded(file: &str) -> Said {
    said(
        format!("`{file}` no tiene plan registrado, y solo se imprimen cantidades registradas"),
        "mire antes el plan, después regístrelo",
    )
}

fn not_signed() -> Said {
    said(
        "quién lo registra, o por qué, está vacío o lleva un salto de línea",
        "nombre quién comprobó y movió, por iniciales o función, y diga por qué en una línea",
    )
}

fn no_check() -> Said {
    said(
        "no se da ninguna comprobación, así que no hay en qué basarse",
        "diga lo que se halló, como una comprobación por arriba y una por debajo en ambos lados",
    )
}

fn not_made(file: &str, size: Size, fault: Option<&FaultKind>) -> Said {
    match fault {
        Some(fault) => said(
            format!("`{file}` no se puede dibujar en {size}: {}", layouts::fault(fault)),
            layouts::advice(fault),
        ),
        None => said(format!("`{file}` no se puede dibujar en {size}"), ""),
    }
}

fn checks(why: &AdjustRefusal, numbers: &[u8]) -> Said {
    let said = Spanish::new().adjust_refusal(why);
    match why {
        AdjustRefusal::NoSuchCompartment(_) => {
            let numbers: Vec<String> = numbers.iter().map(ToString::to_string).collect();
            Said::new(said.message, format!("hay {}", numbers.join(", ")))
        }
        AdjustRefusal::Unreachable(_)
        | AdjustRefusal::NoPartner(_)
        | AdjustRefusal::NoWeight
        | AdjustRefusal::NoBody(_) => said,
    }
}

fn no_stock(file: &str, size: Size, error: &StockError) -> Said {
    said(format!("`{file}` no tiene llenado de serie en {size}: {}", stock(error)), "")
}

/// Why there is no stock fill.
fn stock(error: &StockError) -> String {
    match error {
        StockError::Mesh(MeshError::TooClose { at }) => format!(
            "dos costuras pasan demasiado cerca una de otra cerca de x = {:.0}, y = {:.0} mm",
            at.x, at.y
        ),
        StockError::Mesh(MeshError::Empty) => {
            "las costuras no encierran ningún compartimento".to_owned()
        }
        StockError::NoCrown(crown) => format!(
            "un abombamiento de serie de {} mm no aprieta las celdas; dé uno mayor que 0 mm",
            parts::decimal(crown.to_mm(), 1)
        ),
    }
}

/// Why cells cannot be counted by weight.
fn batch(error: &BatchError) -> String {
    match error {
        BatchError::FewCells { cells, least } => {
            format!(
                "un lote de {cells} celdas es muy pequeño; cuente {least} como mínimo, mejor 50"
            )
        }
        BatchError::ManyCells { cells, most } => {
            format!(
                "un lote de {cells} celdas es más de lo que se cuenta a mano; tome {most} como mucho"
            )
        }
        BatchError::CellWeight { cell, least, most } => format!(
            "una celda pesaría {} g, y está entre {} y {} g; mire otra vez celdas y gramos",
            format!("{cell:.3e}").replace('.', ","),
            parts::number(*least),
            parts::number(*most)
        ),
        BatchError::NotANumber => "gramos y división son números mayores que cero".to_owned(),
        BatchError::CoarseScale { cell, division } => format!(
            "una báscula con pasos de {} g no puede contar celdas de {} g; tome una más fina, o cuente a mano",
            parts::number(*division),
            parts::decimal(*cell, 2)
        ),
    }
}
