//! Spanish: what was found again by the code on a card.

use case::{CardCode, NoCardCode, Restored};

/// Who signs for counts that a code has told.
pub(super) const BY: &str = "código de una ficha";

/// What was found again, and what it is worth.
pub(super) fn told(restored: &Restored) -> String {
    let Restored { file, code } = restored;
    let counts: Vec<String> = code.counts.iter().map(ToString::to_string).collect();
    let counts = counts.join(", ");
    format!(
        "Recuperado en `{file}`: las cantidades del {} para `{}` en {}, por los números de los compartimentos {counts}. Son una ESTIMACIÓN hasta que se comprueben a mano con la persona: el código no sabe qué hay ahora en el cojín. Lo demás está en blanco.",
        plan(code),
        code.layout,
        code.size
    )
}

/// Why the counts are in the record.
pub(super) fn why(code: &CardCode) -> String {
    format!(
        "recuperado del código del {}, el día en que se leyó; una estimación hasta que se compruebe",
        plan(code)
    )
}

/// What a restored file is, and what it is not.
pub(super) fn head(code: &CardCode) -> String {
    format!(
        "RECUPERADO DE UN CÓDIGO, SIN COMPROBAR: las cantidades del {}.\n\
         Una estimación hasta que unas manos lo comprueben con la persona. Cuente lo que hay en el cojín.\n\
         Lo demás está en blanco: mida otra vez, y rellénelo.",
        plan(code)
    )
}

/// Why papers have no code.
pub(super) fn no_code(why: NoCardCode) -> String {
    format!(
        "los papeles no llevan código con que recuperar las cantidades: tendría {} signos, y caben {}; guarde una copia del archivo de la persona",
        why.signs, why.most
    )
}

fn plan(code: &CardCode) -> String {
    format!("plan {}, clave {}", code.mark.number, code.mark.word)
}
