//! Spanish: how it is said that a file is not edited.

use case::Said;
use case::text::EditError;

use super::{said, texts};

/// Says why a file is not edited.
pub(super) fn about(error: &EditError) -> Said {
    match error {
        EditError::Unreadable(remarks) => Said {
            message: match remarks.first() {
                Some(first) => {
                    let first = texts::about(&first.finding).message;
                    format!("no se puede leer el archivo: {first}")
                }
                None => "no se puede leer el archivo".to_owned(),
            },
            hint: Some("corríjalo antes en un editor de texto".to_owned()),
        },
        EditError::NoSuchKey { key, near: Some(near) } => {
            said(format!("no hay `{key}` en el archivo"), format!("¿quería decir `{near}`?"))
        }
        EditError::NoSuchKey { key, near: None } => said(
            format!("no hay `{key}` en el archivo"),
            "nómbrelo como en measures.hip_width, measures.thigh_depth.left o goal.1.want",
        ),
        EditError::NoSuchEntry { list, there } => said(
            match there {
                0 => format!("`{}` no tiene entradas", list.path()),
                1 => format!("`{}` tiene 1 entrada", list.path()),
                there => format!("`{}` tiene {there} entradas", list.path()),
            },
            "cuente desde 1; una más de las que hay empieza una entrada nueva",
        ),
        EditError::EachSide(question) => said(
            format!("`{}` tiene una respuesta por lado", question.path()),
            "nombre el lado: izquierda y derecha son las de la persona",
        ),
        EditError::Table(group) => said(
            format!("`{}` es más que una respuesta", group.path()),
            "nombre una de sus claves, o una entrada por su número",
        ),
        EditError::Form(key) => said(
            format!("`{key}` está escrito en una forma que aquí no se edita"),
            "cámbielo en un editor de texto",
        ),
        EditError::Wrong { remark, .. } => texts::about(&remark.finding),
    }
}
