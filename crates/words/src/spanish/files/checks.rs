//! Spanish: why a text is no check.

use case::{CHECK_KINDS, CheckError, Said, SiteName};

use super::said;
use crate::spanish::parts;

/// Why a text is no check, and what to write.
pub(super) fn no_check(error: &CheckError) -> Said {
    match error {
        CheckError::NotACheck(written) => said(
            format!("`{written}` no es una comprobación"),
            format!("escriba {} y {}", CHECK_KINDS[0], example(CHECK_KINDS[0])),
        ),
        CheckError::NoSuchCheck(written) => said(
            format!("ninguna comprobación se llama `{written}`"),
            format!("hay {}", CHECK_KINDS.join(", ")),
        ),
        CheckError::NotAnAnswer { kind, written } => said(
            match *kind {
                "skin" => format!("`{written}` no responde a una mirada a la piel"),
                kind => format!("`{written}` no responde a una comprobación `{kind}`"),
            },
            format!("escriba {}", example(kind)),
        ),
        CheckError::NotASide(written) => {
            said(format!("`{written}` no es un lado"), "escriba left (izquierda) o right (derecha)")
        }
        CheckError::NotALandmark(written) => said(
            format!("`{written}` no es un punto en que se mide el lado más bajo"),
            "escriba asis, por el frente de la pelvis, o seat-bones, por los isquiones",
        ),
        CheckError::NotANumber(written) => said(
            format!("`{written}` no es el número de un compartimento"),
            format!("escriba {}", example("press")),
        ),
        CheckError::NotASite(written) => {
            let known: Vec<&str> = SiteName::ALL.iter().map(|site| site.id()).collect();
            said(format!("`{written}` no es un sitio"), format!("hay {}", known.join(", ")))
        }
        CheckError::LengthWithoutUnit(written) => {
            said(format!("`{written}` no lleva unidad"), "escríbalo como 25mm o 1in")
        }
        CheckError::LengthRange { written, most_mm } => said(
            format!("`{written}` no puede ser correcto"),
            format!("está entre 0 y {most_mm:.0} mm"),
        ),
        CheckError::PressureWithoutUnit(written) => {
            said(format!("`{written}` no lleva unidad"), "escríbalo como 48mmHg o 6.4kPa")
        }
        CheckError::PressureRange { written, least_mmhg, most_mmhg } => said(
            format!("`{written}` no puede ser correcto"),
            format!(
                "está entre {} y {} mmHg",
                parts::number(*least_mmhg),
                parts::number(*most_mmhg)
            ),
        ),
    }
}

/// How an answer is written, by the word of its check.
fn example(kind: &str) -> &'static str {
    match kind {
        "top" => "left=safe, tight o pinched",
        "under" => "left=25mm, left=bone-felt o left=not-found",
        "press" => "3=slack, like o tight, con el número del compartimento",
        "lower" => "left=8mm, o level",
        "skin" => "left-seat-bone=clear, fades, stays, open o worse",
        _ => "left-seat-bone=48mmHg o 6.4kPa",
    }
}
