//! Spanish: why no client's file is made of the code on a card.

use case::{CardCodeFault, CodePart, NotRestored, Said};

use super::said;

/// Why no client's file is made of the code on a card, and what to do.
pub(super) fn about(why: &NotRestored) -> Said {
    match why {
        NotRestored::Code(fault) => code(*fault),
        NotRestored::NoPdf { file } => said(
            format!("`{file}` no se puede leer como PDF"),
            "tome el PDF de una ficha de ajuste o de una hoja para casa, o el texto del código",
        ),
        NotRestored::NothingAttached { file } => said(
            format!("`{file}` no lleva ningún código adjunto"),
            "tome el PDF de una ficha de ajuste o de una hoja para casa tal como se hizo, o lea el código del papel con un teléfono",
        ),
        NotRestored::Needed { part, name, head } => said(
            format!(
                "el código necesita {} `{name}` cuyo resumen digital empieza por {head}, y no está aquí",
                what(*part)
            ),
            "pida el archivo a quien hizo la ficha, y delo también",
        ),
        NotRestored::OtherText { part, name, head, there, digest } => said(
            format!(
                "el código necesita {} `{name}` cuyo resumen digital empieza por {head}, y {there} es otro: su resumen digital es {digest}",
                what(*part)
            ),
            "pida a quien hizo la ficha el archivo con que se hizo: las mismas cantidades serían otro llenado",
        ),
        NotRestored::OtherCompartments { layout, size, counts, compartments } => said(
            format!(
                "el código tiene {counts} cantidades, y el diseño `{layout}` tiene {compartments} compartimentos en {size}"
            ),
            "no llene según él: este programa no hizo este código",
        ),
        NotRestored::OtherWord { word } => said(
            format!(
                "la clave {word} no corresponde al diseño, el tamaño, la celda y las cantidades del código"
            ),
            "no llene según él: este programa no hizo este código",
        ),
        NotRestored::OtherSerial { given, coded } => said(
            format!("el código es del cojín con la serie `{coded}`, no `{given}`"),
            "mire otra vez la etiqueta, y tome la ficha de este cojín",
        ),
        NotRestored::NoSerial { given } => said(
            format!("el código no lleva serie, así que `{given}` no se puede comparar"),
            "compare a mano tamaño, diseño y clave, y no dé la serie",
        ),
    }
}

fn what(part: CodePart) -> &'static str {
    match part {
        CodePart::Layout => "el diseño",
        CodePart::Cell => "la celda",
    }
}

/// Why a text is no code.
fn code(fault: CardCodeFault) -> Said {
    match fault {
        CardCodeFault::NotOne => said(
            "esto no es el código de una ficha: no empieza por SW1/",
            "lea con un teléfono el código de una ficha de ajuste o de una hoja para casa, y dé todo su texto",
        ),
        CardCodeFault::OtherVersion => said(
            "el código está escrito en otra versión que SW1, que es la que se lee aquí",
            "mire otra vez sus cuatro primeros signos; si son como se leyeron, un programa más nuevo hizo la ficha",
        ),
        CardCodeFault::Sign { sign, at } => said(
            format!("el signo {at} del código es `{sign}`, que ningún código tiene"),
            "los códigos solo tienen mayúsculas, cifras y % - . / :; léalo otra vez",
        ),
        CardCodeFault::TooLong { signs } => said(
            format!("el texto tiene {signs} signos, más que ningún código"),
            "dé el texto de un solo código, y nada más",
        ),
        CardCodeFault::Mistyped => said(
            "el código no cuadra: un signo está mal, falta o sobra",
            "léalo otra vez, mejor con un teléfono que a mano; no se adivinó nada",
        ),
        CardCodeFault::Unreadable => said(
            "el código cuadra, pero no dice nada que se pueda leer: este programa no lo hizo",
            "no llene según él; tome el papel mismo",
        ),
    }
}
