//! Spanish: why what was done is not recorded.

use case::{NotDone, Said};

use super::said;
use crate::spanish::parts::{cells, list};

/// Why what was done is not recorded, and what to do.
pub(super) fn about(file: &str, why: &NotDone) -> Said {
    match why {
        NotDone::NoCountFor(numbers) => said(
            format!("no se da cantidad para el número {}", list(&words(numbers))),
            "cuente cada compartimento, y dé 0 donde esté vacío",
        ),
        NotDone::CountedTwice(number) => said(
            format!("el número {number} está contado dos veces"),
            "dé una cantidad para cada compartimento",
        ),
        NotDone::NoSuchNumber { number, known } => said(
            format!("el cojín no tiene compartimento número {number}"),
            format!("tiene {}", list(&words(known))),
        ),
        NotDone::NothingPlanned => said(
            format!(
                "`{file}` no tiene plan registrado para este cojín, así que nada puede ser según lo planificado"
            ),
            "diga la cantidad de cada compartimento, o registre antes un plan",
        ),
        NotDone::NothingProposed => said(
            format!("en `{file}` no hay nada propuesto que no se registrara como hecho"),
            "diga qué celdas se movieron",
        ),
        NotDone::FillGoesOn { counted, of } => fill_goes_on(file, [*counted, *of]),
        NotDone::NothingPutIn => said(
            format!("nadie registró en `{file}` qué se puso en el cojín"),
            "registre antes qué se llenó, se contó o fue según lo planificado",
        ),
        NotDone::TooMany { number, there, moved } => said(
            format!(
                "{} no pueden salir del número {number}: según el registro tiene {}",
                cells(*moved),
                cells(*there)
            ),
            "cuéntelo otra vez y registre antes el recuento",
        ),
        NotDone::Nothing => said("no se dice que se hiciera nada", "diga qué se hizo"),
        NotDone::NoSuchEntry { entry, there: 0 } => {
            said(format!("no hay entrada {entry}: el registro de `{file}` está vacío"), "")
        }
        NotDone::NoSuchEntry { entry, there } => said(
            format!("no hay entrada {entry} en el registro de `{file}`"),
            format!(
                "las entradas se cuentan desde 1, la más antigua primero; la última es {there}"
            ),
        ),
        NotDone::IsWithdrawn(entry) => said(format!("la entrada {entry} ya está retirada"), ""),
        NotDone::HasNoCounts(entry) => said(
            format!("tras la entrada {entry} no se sabe qué había en este cojín"),
            "tome una entrada de un llenado, un recuento, movimientos o un plan",
        ),
        NotDone::NoReason => said(
            "no se dio ningún motivo, y por eso la entrada no se retiró",
            "diga por qué en una línea: nunca se borra nada, y alguien preguntará",
        ),
    }
}

/// A check cannot pass while so many of all compartments are filled.
fn fill_goes_on(file: &str, [counted, of]: [usize; 2]) -> Said {
    said(
        format!(
            "un llenado empezado no está registrado en `{file}`: {counted} de {of} compartimentos"
        ),
        "registre lo que hay en el cojín antes de superar una comprobación, o deje el llenado",
    )
}

fn words(numbers: &[u8]) -> Vec<String> {
    numbers.iter().map(ToString::to_string).collect()
}
