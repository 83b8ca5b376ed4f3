//! Spanish: why there is no layout.

use std::time::Duration;

use case::text::{Remark, TextFinding};
use case::{BadDescription, Crash, Distrust, LayoutError, PluginFault, PluginFaultKind, Said};
use cushion::Name;

use super::{NAME_RULE, said, texts};
use crate::spanish::parts;

/// Why there is no layout, and what to do.
pub(super) fn no_layout(error: &LayoutError) -> Said {
    match error {
        LayoutError::OtherSource { name } => {
            said(format!("ningún diseño se llama `{name}`"), "dé la ruta de un archivo de diseño")
        }
        LayoutError::UnknownName { name, known } => said(
            format!("ningún diseño se llama `{name}`"),
            format!("incluidos: {}; o dé la ruta de un archivo de diseño", quoted(known)),
        ),
        LayoutError::NoParameters { name, given } => said(
            format!("el diseño incluido `{name}` no tiene el parámetro `{given}`"),
            "quite los parámetros",
        ),
        LayoutError::NotSettable { name, given } => said(
            format!("no se puede dar `{given}`: ningún complemento dibuja el diseño `{name}`"),
            "solo los diseños de complementos admiten valores",
        ),
        LayoutError::Plugin(PluginFault { plugin, kind }) => {
            let Said { message, hint } = fault(kind);
            Said { message: format!("complemento `{plugin}`: {message}"), hint }
        }
    }
}

/// Names in quotes.
pub(super) fn quoted<T: std::fmt::Display>(names: &[T]) -> String {
    names.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ")
}

/// What is wrong with a plugin that was named, and what to do.
pub(super) fn fault(kind: &PluginFaultKind) -> Said {
    use PluginFaultKind as Kind;
    let hint = match kind {
        Kind::NotAName => format!("tome {NAME_RULE}"),
        Kind::NotFound { looked_in } if looked_in.is_empty() => String::new(),
        Kind::NotFound { looked_in } => format!("póngalo en uno de: {}", looked_in.join(", ")),
        Kind::UnknownParameter { known, .. } if known.is_empty() => "no tiene ninguno".to_owned(),
        Kind::UnknownParameter { known, .. } => format!("tiene: {}", names(known)),
        Kind::NotGiven { parameter, .. } => format!("mídalo, o dé `{parameter}`"),
        Kind::NoFile => "nombre la ruta propia de la biblioteca".to_owned(),
        Kind::NotTrusted { .. } => {
            "haga que sea suyo o de root y que nadie más pueda escribir en ello".to_owned()
        }
        Kind::Refused(_) | Kind::OutOfRange { .. } | Kind::NoChild(_) | Kind::NoLimits(_) => {
            String::new()
        }
        Kind::NotALibrary(_)
        | Kind::NoEntry
        | Kind::OtherVersion { .. }
        | Kind::BadDescription(_)
        | Kind::OtherName { .. }
        | Kind::Crashed(_)
        | Kind::Ended
        | Kind::TooSlow(_)
        | Kind::NotReadInTime(_)
        | Kind::TooLong { .. }
        | Kind::TooMuchPrinted { .. }
        | Kind::NotText
        | Kind::Failed(_)
        | Kind::OtherLayout { .. }
        | Kind::OtherSize { .. }
        | Kind::BadLayout { .. } => {
            "avise al autor del complemento; no se escribió nada".to_owned()
        }
    };
    said(message(kind), hint)
}

/// Names, one after the other.
fn names(names: &[Name]) -> String {
    names.iter().map(ToString::to_string).collect::<Vec<_>>().join(", ")
}

fn message(kind: &PluginFaultKind) -> String {
    use PluginFaultKind as Kind;
    match kind {
        Kind::NotAName => "esto no es el nombre de un complemento".to_owned(),
        Kind::NotFound { .. } => "no se encontró ningún complemento con este nombre".to_owned(),
        Kind::NoFile => "no existe ese archivo".to_owned(),
        Kind::NotALibrary(Some(why)) => format!("este archivo no se puede cargar: {why}"),
        Kind::NotALibrary(None) => "este archivo no se puede cargar".to_owned(),
        Kind::NoEntry => NO_ENTRY.to_owned(),
        Kind::OtherVersion { found } => other_version(*found),
        Kind::BadDescription(bad) => {
            format!("su descripción rompe el contrato: {}", bad_description(*bad))
        }
        Kind::OtherName { found } => format!("se llama a sí mismo `{found}`"),
        Kind::NotTrusted { path, why } => {
            format!("no se ejecutó, porque `{path}` {}", distrust(*why))
        }
        Kind::UnknownParameter { given, .. } => format!("no tiene el parámetro `{given}`"),
        Kind::OutOfRange { parameter, value, least, greatest } => {
            let [value, least, greatest] = [value, least, greatest].map(|own| parts::number(*own));
            format!("`{parameter}` es {value}, y está entre {least} y {greatest}")
        }
        Kind::NotGiven { parameter, words, .. } => not_given(parameter, words),
        Kind::NoChild(why) => format!("no se pudo iniciar su proceso: {why}"),
        Kind::NoLimits(why) => format!("no se pudieron poner límites a su proceso: {why}"),
        Kind::Crashed(crash) => format!("falló de golpe ({})", crashed(*crash)),
        Kind::Ended => "acabó sin respuesta".to_owned(),
        Kind::TooSlow(limit) => format!("no respondió en {} s", parts::number(limit.as_secs_f64())),
        Kind::NotReadInTime(limit) => not_read_in_time(*limit),
        Kind::OtherLayout { found } => other_layout(found),
        Kind::TooLong { most } => format!("respondió más de {most} bytes"),
        Kind::TooMuchPrinted { most } => format!("imprimió más de {most} bytes"),
        Kind::NotText => "su respuesta no es texto".to_owned(),
        Kind::Failed(Some(why)) => format!("falló: {why}"),
        Kind::Failed(None) => "falló, y no dijo por qué".to_owned(),
        Kind::Refused(Some(why)) => why.trim_end_matches('.').to_owned(),
        Kind::Refused(None) => "se negó, y no dijo por qué".to_owned(),
        Kind::OtherSize { asked, answered } => {
            let answered: Vec<String> = answered.iter().map(ToString::to_string).collect();
            format!("se le pidió {asked} y respondió para {}", answered.join(", "))
        }
        Kind::BadLayout { remarks, .. } => bad_layout(remarks),
    }
}

const NO_ENTRY: &str = "esta biblioteca no es un complemento: no exporta `seatwright_plugin`";

fn other_version(found: u32) -> String {
    format!("se hizo para la versión {found} del contrato; este programa lee la versión 1")
}

fn not_given(parameter: &Name, words: &str) -> String {
    format!("`{parameter}` ({words}) se debe medir o dar; no se toma un valor por defecto")
}

fn not_read_in_time(limit: Duration) -> String {
    format!("su diseño no se puede leer en {} s", parts::number(limit.as_secs_f64()))
}

fn other_layout(found: &Name) -> String {
    format!("respondió con un diseño que se llama `{found}`")
}

fn bad_layout(remarks: &[Remark]) -> String {
    // What is missing from a text that broke off is not what is wrong with it.
    let broken = |remark: &&Remark| matches!(remark.finding, TextFinding::Syntax(_));
    let first = remarks.iter().find(broken).or(remarks.first());
    first.map_or("su diseño no se puede leer".to_owned(), |first| {
        format!("su diseño está mal: {}", texts::about(&first.finding).message)
    })
}

fn distrust(why: Distrust) -> &'static str {
    match why {
        Distrust::OtherOwner => "es de otro usuario",
        Distrust::WritableByAll => "lo puede escribir cualquiera",
    }
}

fn bad_description(bad: BadDescription) -> &'static str {
    match bad {
        BadDescription::Null => "es nula, así que no puede describirse",
        BadDescription::Size => "su tamaño está mal",
        BadDescription::NoFunction => "una función es nula",
        BadDescription::TooManyParameters => "tiene demasiados parámetros",
        BadDescription::NoParameters => "sus parámetros son nulos",
        BadDescription::ParameterSize => "el tamaño de un parámetro está mal",
        BadDescription::Name => "su nombre no es un nombre",
        BadDescription::Version => "su versión no es una versión",
        BadDescription::About => "lo que dice de sí mismo no es un texto",
        BadDescription::Parameter => "un parámetro no está bien",
        BadDescription::Unreadable => "no se puede leer",
    }
}

fn crashed(crash: Crash) -> String {
    match crash {
        Crash::OthersMemory => "usó memoria que no es suya".to_owned(),
        Crash::NoMemory => "usó memoria que no existe".to_owned(),
        Crash::GaveUp => "se rindió: sin memoria o sin pila, o por sí mismo".to_owned(),
        Crash::NoInstruction => "ejecutó algo que no es una instrucción".to_owned(),
        Crash::DividedByZero => "dividió por cero".to_owned(),
        Crash::TooLong => "calculó demasiado tiempo".to_owned(),
        Crash::WroteFile => "escribió en un archivo".to_owned(),
        Crash::Killed => "fue detenido".to_owned(),
        Crash::Signal(number) => format!("señal {number}"),
    }
}
