//! Spanish: what a review of a layout finds, and what to do.

use case::{ReviewFinding, ReviewKind, Said};
use cushion::{Length, Mass};

use super::parts::{decimal, kg, list, mm};

/// Says a finding, with its number and what to do.
pub(super) fn finding(own: &ReviewFinding) -> Said {
    let ReviewFinding { kind, size, sizes } = own;
    let message = message(kind);
    let so = if matches!(kind, ReviewKind::NobodySuits) { "igual" } else { "en menor medida" };
    let more = match sizes.len() {
        0 | 1 => String::new(),
        2 => format!("; {so} en 1 tamaño más"),
        many => format!("; {so} en {} tamaños más", many - 1),
    };
    Said { message: format!("en {size}: {message}{more}"), hint: Some(remedy(kind).to_owned()) }
}

/// What is found.
fn message(kind: &ReviewKind) -> String {
    match kind {
        ReviewKind::NoRest(percent, weight) => {
            format!("{} no llega a reposo con el llenado de serie", body(*percent, *weight))
        }
        ReviewKind::Bottoms(percent, weight, numbers) => {
            format!("{} casi toca la base en {}", body(*percent, *weight), compartments(numbers))
        }
        ReviewKind::LittleLeft(percent, weight, left) => format!(
            "a {} le quedan {} bajo un isquion, y 25 mm es el límite",
            body(*percent, *weight),
            mm(*left)
        ),
        ReviewKind::NobodySuits => "este tamaño no sirve a ningún cuerpo de la tabla".to_owned(),
        ReviewKind::BonesOnSeam(share) => format!(
            "hay isquiones a menos de 15 mm de una costura en {:.0} de 100 personas",
            share * 100.0
        ),
        ReviewKind::NoHand(number, opening) => {
            format!(
                "la abertura del compartimento {number} mide {}: no entra una mano",
                mm(*opening)
            )
        }
        ReviewKind::LittleReach(number, reach) => format!(
            "el compartimento {number}, para un isquion, sube su lado {} con las más celdas y las menos en su simétrico",
            tenths(*reach)
        ),
        ReviewKind::MuchForOne(number, change) => format!(
            "una celda en el compartimento {number} cambia lo que queda bajo un isquion en {}",
            tenths(*change)
        ),
        ReviewKind::Slack(percent, weight, numbers) => format!(
            "las celdas están flojas en {} bajo {}",
            compartments(numbers),
            body(*percent, *weight)
        ),
        ReviewKind::Jumps(jump, from) => format!(
            "el compartimento {} tiene {} celdas, y {} en {from}: unas {} irían con el cojín",
            jump.number, jump.is, jump.was, jump.expected
        ),
        ReviewKind::OtherCode { was, from, is } => {
            format!("el grupo de código es {is}, y {was} en {from}")
        }
    }
}

/// What to do.
fn remedy(kind: &ReviewKind) -> &'static str {
    match kind {
        ReviewKind::NoRest(..) | ReviewKind::Bottoms(..) | ReviewKind::LittleLeft(..) => {
            "suba las paredes o el abombado de serie, o rebaje el peso máximo del tamaño"
        }
        ReviewKind::NobodySuits => {
            "revíselo con cuerpos para los que se fabrica, como los de niños"
        }
        ReviewKind::BonesOnSeam(_) => {
            "aparte la costura de donde están los huesos, o ponga una isla entera bajo ellos"
        }
        ReviewKind::NoHand(..) => "hágalo mayor, llénelo con un embudo, o no fabrique el tamaño",
        ReviewKind::LittleReach(..) => {
            "las manos notan 5 mm: ensánchelo bajo el hueso, sepárelo de su simétrico, o amplíe su margen"
        }
        ReviewKind::MuchForOne(..) => {
            "hágalo mayor, o use celdas menores: se nota una cuenta equivocada dentro de la tolerancia"
        }
        ReviewKind::Slack(..) => {
            "no llevan nada de ese cuerpo: suba el llenado ahí, o deje que un plan añada celdas"
        }
        ReviewKind::Jumps(..) => "mire las costuras que no se mueven mientras el cojín crece",
        ReviewKind::OtherCode { .. } => "ponga ambos donde precios o papeles nombren un código",
    }
}

/// A body of the table, by its weight and how many are as light.
fn body(percent: u8, weight: Mass) -> String {
    format!("un cuerpo de {} (percentil {percent} por peso de los que admite)", kg(weight))
}

fn compartments(numbers: &[u8]) -> String {
    let all: Vec<String> = numbers.iter().map(u8::to_string).collect();
    let noun = if all.len() == 1 { "el compartimento" } else { "los compartimentos" };
    format!("{noun} {}", list(&all))
}

fn tenths(length: Length) -> String {
    format!("{} mm", decimal(length.to_mm(), 1))
}
