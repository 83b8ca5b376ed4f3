//! Spanish: what was done, begun, or is to be known of an answer.

use super::super::parts::{COMPARTMENTS, counted, list, number};
use crate::{Begun, Done, Told};

/// What running plugins is.
const TRUST: &str = "Un complemento es un programa. Se ejecuta en un proceso propio y con límites, lo que protege de sus fallos, no de la mala intención: use solo lo que sea de su confianza.";

pub(super) fn done(done: &Done<'_>) -> String {
    match done {
        Done::Recorded { file, by: Some(by) } => format!("Registrado en {file} por {by}."),
        Done::Recorded { file, by: None } => format!("Registrado en {file}."),
        Done::MovesNotRecorded { file } => format!(
            "Lo que se encontró está registrado en {file}. Los cambios de celdas no: con ellos sigue sin cumplirse un límite."
        ),
        Done::NotRecorded { command } => format!("Sin registrar: {command}"),
        Done::NothingRecorded => "; no se registró nada".to_owned(),
        Done::Entry { number, file } => format!("Entrada {number} de {file}"),
        Done::InTheCushion => "En el cojín".to_owned(),
        Done::Changed { file, remarks } => format!("{file}: cambiado, {remarks}"),
        Done::WhyLooksForMistakes => "`--why` busca errores en el ajuste.".to_owned(),
    }
}

pub(super) fn begun(begun: &Begun<'_>) -> String {
    let change =
        |file: &str| format!("{file} está empezado; cámbielo, y después: seatwright check {file}");
    match begun {
        Begun::Client { file } => {
            format!("{file} está empezado; rellénelo, y después: seatwright check {file}")
        }
        Begun::Cell { file } => change(file),
        Begun::Layout { file } => format!(
            "{}\nMírelo: seatwright pattern {file} --size 440x400 --svg look.svg",
            change(file)
        ),
        Begun::Plugin { folder, commands } => {
            format!("{folder} está empezado. Lo siguiente:\n{commands}")
        }
        Begun::Schema { file, kind } => format!(
            "{file} está escrito; ponga esto al principio de un archivo de {kind} que esté a su lado: #:schema {file}"
        ),
        Begun::ReportSchema { file } => {
            format!("{file} está escrito; toda respuesta a --json lo cumple")
        }
        Begun::Restored { file } => {
            format!("{file} está recuperado; rellénelo, y después: seatwright check {file}")
        }
        Begun::Demo { code, files, first: [setup, fill, home] } => format!(
            "Escritos los papeles de una persona inventada, {code}, en SVG, PDF y PNG:\n{files}\n\
             Mire primero {setup} (para terapeutas, junto a la silla),\n\
             después {fill} (dibujada desde abajo, para quien llena el cojín)\n\
             y {home} (para la pared de quien cuida).\n\n\
             Después, una persona suya:\n  \
             seatwright new client K-17.toml\n  \
             seatwright plan K-17.toml"
        ),
    }
}

pub(super) fn told(told: &Told<'_>) -> String {
    match told {
        Told::Holds { file, code, serial, entries, refilled } => {
            let serial = serial.map_or(String::new(), |own| format!(", serie {own}"));
            let entries: Vec<String> =
                entries.iter().map(|(at, on)| format!("entrada {at} del {on}")).collect();
            let refilled = refilled.map_or(String::new(), |on| {
                format!("; llenado con otro lote el {on}, puede haber celdas en su bolsa")
            });
            format!("{file}: {code}{serial}, {}{refilled}", entries.join(", "))
        }
        Told::Recall { holds, looked_at, batch } => {
            let files = counted(*looked_at, ["archivo de persona", "archivos de personas"]);
            format!("Con celdas del lote {batch}: {holds} de {files}.")
        }
        Told::Wrote { files } => format!("Escrito: {}.", list(files)),
        Told::DrawnBy { plugin, digest } => {
            format!("Dibujado por el complemento {plugin}, diseño {digest}.")
        }
        Told::PluginDraws { file, plugin, size, digest } => format!(
            "{file}: lo que el complemento {plugin} dibuja para {size}, resumen digital {digest}.\n\
             Las costuras están en milímetros y valen solo para este tamaño."
        ),
        Told::TrustInPlugins => TRUST.to_owned(),
        Told::NoPlugins => "No hay complementos. Se buscan en:".to_owned(),
        Told::NoneWasRun => {
            "Para esta lista no se ejecutó ninguno; `seatwright plugin show NAME` ejecuta uno y le pregunta."
                .to_owned()
        }
        Told::From { file } => format!("De {file}"),
        Told::Setting { ends, unit, standard, measure } => {
            setting((*ends, *unit), *standard, *measure)
        }
        Told::Compartments { count } => counted(*count, COMPARTMENTS),
        Told::NotDrawn { refused: true } => "rechazado".to_owned(),
        Told::NotDrawn { refused: false } => "MAL".to_owned(),
        Told::Pieces => "piezas".to_owned(),
        Told::PageIsOpen { folder, address } => format!(
            "La página de {folder} está abierta, solo en este ordenador:\n  {address}\n\
             La dirección se abre una vez. Se detiene con Ctrl-C; todo se guarda según responde."
        ),
        Told::NoBrowser => {
            "no se pudo abrir ningún navegador: abra usted la dirección".to_owned()
        }
        Told::Bodies => "cuerpos".to_owned(),
        Told::Bar { of } => format!("{{pos}} de {{len}} {of}, quedan {{eta}}"),
    }
}

fn setting(
    ([least, greatest], unit): ([f64; 2], &str),
    standard: Option<f64>,
    measure: Option<&str>,
) -> String {
    let without = match standard {
        Some(standard) => format!("{} si no se da ninguno", number(standard)),
        None => "hay que darlo o medirlo".to_owned(),
    };
    let measure = measure.map_or(String::new(), |own| format!("; medida de la persona: {own}"));
    format!("de {} a {} {unit}, {without}{measure}", number(least), number(greatest))
}
