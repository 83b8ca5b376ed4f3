//! Spanish: why something cannot be put on paper, or drawn.

use case::text::is_right_to_left;
use case::{Drawn, NoPicture, NotDrawn, Said};

use super::said;
use crate::spanish::parts;

/// Why something cannot be put on paper, and what to do.
pub(super) fn not_drawn(what: &Drawn, why: &NotDrawn) -> Said {
    let cannot = match what {
        Drawn::Paper { name, of } => format!("no se puede hacer el papel {name} de `{of}`"),
        Drawn::Words => "los papeles no podrían mostrar lo que se va a registrar".to_owned(),
        Drawn::Form => "no se puede hacer un papel del formulario".to_owned(),
        Drawn::Pattern => "no se puede dibujar el patrón".to_owned(),
        Drawn::Sections => "no se pueden dibujar los cortes".to_owned(),
        Drawn::SurveyFigure => "no se puede dibujar la figura".to_owned(),
    };
    let hint = match why {
        NotDrawn::OtherCompartments | NotDrawn::OtherSize => "registre un plan nuevo",
        NotDrawn::OtherFill => "calcúlelo de nuevo",
        NotDrawn::Missing { .. } | NotDrawn::Unplaced { .. } => "use letras de lenguas europeas",
        NotDrawn::TooWide { .. } | NotDrawn::Overflow { .. } => "acorte los textos más largos",
    };
    said(format!("{cannot}: {}", reason(why)), hint)
}

fn reason(why: &NotDrawn) -> String {
    match why {
        NotDrawn::Missing { character, text } if is_right_to_left(*character) => format!(
            "el carácter `{character}` (U+{:04X}) de \"{text}\" se escribe de derecha a izquierda, y los papeles aún no lo admiten; escríbalo con letras que vayan de izquierda a derecha",
            u32::from(*character)
        ),
        NotDrawn::Missing { character, text } => format!(
            "la fuente no tiene el carácter `{character}` (U+{:04X}), que está en \"{text}\"; escríbalo de otra forma",
            u32::from(*character)
        ),
        NotDrawn::Unplaced { character, text } => format!(
            "el carácter U+{:04X} de \"{text}\" no se puede colocar solo; escriba la letra con su acento como un carácter",
            u32::from(*character)
        ),
        NotDrawn::TooWide { word, width_mm, room_mm } => format!(
            "\"{word}\" mide {} mm de ancho y tiene {} mm; acórtela o pártala",
            parts::decimal(*width_mm, 1),
            parts::decimal(*room_mm, 1)
        ),
        NotDrawn::Overflow { what, by_mm } => format!(
            "la página está llena: \"{what}\" pasa en {} mm del sitio que queda; acorte el texto",
            parts::decimal(*by_mm, 1)
        ),
        NotDrawn::OtherCompartments => {
            "el plan registrado tiene otros compartimentos que el diseño ahora".to_owned()
        }
        NotDrawn::OtherSize => {
            "el plan registrado es para otro tamaño que el cojín ahora".to_owned()
        }
        NotDrawn::OtherFill => "el llenado de serie es para otro patrón que el dibujado".to_owned(),
    }
}

/// Why a page is not drawn as a picture.
pub(super) fn no_picture(why: &NoPicture) -> String {
    match why {
        NoPicture::Size => "la imagen no tiene un tamaño que se pueda dibujar".to_owned(),
        NoPicture::NotUnderstood(what) => format!("no se puede dibujar la página: {what}"),
    }
}
