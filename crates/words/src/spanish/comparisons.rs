//! Spanish: two layouts beside each other.

use case::{ComparedMeasure, ComparedSizes, ComparedVerdict};
use cushion::{Pressure, Size};

use super::parts::decimal;
use crate::ComparisonTexts;

pub(super) const TEXTS: &ComparisonTexts = &ComparisonTexts {
    layout: "diseño",
    size: "tamaño mm",
    bodies: "cuerpos",
    pressure: "relleno kPa",
    whole_cells: "con celdas enteras kPa",
    compartments: "compartimentos",
    cells: "celdas",
    as_supplied: "de serie",
    litres: "litros",
    mass: "masa g",
    seams: "costuras mm",
    finest: "una celda, la más fina mm",
    coarsest: "la más gruesa mm",
    reach: "alcance mm",
    measure: "medida",
    unit: "unidad",
    difference: "B menos A",
    told_from: "se distingue desde",
    verdict: "en breve",
    harm: "de quienes se sientan en ambos",
    no_rest: "no llegan a reposo",
    bottomed: "casi tocan la base en algún lugar",
    little_left: "menos de 25 mm bajo un isquion",
    nobody: "Nadie tiene un tamaño en ambos: no se compara nada.",
    legend: "A y B: de los cuerpos que se sientan en ambos, lo que tienen como mucho 5, 50 y 95 de cada cien. B menos A: para cada cuerpo por separado, y después lo que tienen como mucho 25, 50 y 75 de cada cien. Con celdas enteras: la menor y la mayor presión de relleno sin carga de un compartimento. Una celda: cuánto cambia una celda lo que queda bajo un isquion, en los compartimentos para un isquion (en todos donde ninguno lo es), bajo el cuerpo de en medio; entre paréntesis el número del compartimento. Alcance: cuánto más alto queda un isquion con las más celdas en su lado y las menos en el otro. Oblicuidad: la propia de la persona, o una fija de 12 mm con el isquion izquierdo más bajo.",
    how_told: "Se distingue desde: cuánto se mueve la diferencia misma cuando cada cosa que no se sabe de la funda, las celdas y el cuerpo está en un extremo de su intervalo, igual en ambos cojines; de una malla a otra; y por celdas enteras; para el cuerpo ligero, el de en medio y el pesado, de los que se toma el mayor. Lo que es menos, o menos de 0,5 mm, 0,1 kPa, 0,5 %, 0,05 N m/grado o 0,1 grados (juicios, sin verificar), no es una diferencia que el modelo pueda distinguir. Las manos distinguen 5 mm de una altura.",
    limits: "Una estimación de un modelo que ningún cojín medido ha comprobado: compara diseños llenados por igual, no sustituye un ensayo de laboratorio ni una prueba, y nada sabe de cizalla, calor, humedad, desgaste ni facilidad de uso. Que no haya diferencia no es una aprobación. Decide el profesional responsable; las normas locales van primero.",
};

/// What is compared.
pub(super) fn measure(measure: ComparedMeasure) -> &'static str {
    match measure {
        ComparedMeasure::LeftUnder => "bajo el isquion izquierdo",
        ComparedMeasure::RightUnder => "bajo el isquion derecho",
        ComparedMeasure::Immersion => "inmersión de los isquiones",
        ComparedMeasure::BoneSurface => "presión superficial bajo el isquion que tiene más",
        ComparedMeasure::GreatestSurface => "mayor presión superficial",
        ComparedMeasure::MeanSurface => "presión superficial media",
        ComparedMeasure::PelvisShare => "parte que lleva la pelvis",
        ComparedMeasure::RollStiffness => "resiste inclinarse a un lado",
        ComparedMeasure::Pitch => "frente girado hacia arriba",
        ComparedMeasure::Oblique => "con oblicuidad: el isquion bajo queda más bajo en",
        ComparedMeasure::ObliqueUnder => "con oblicuidad: bajo el isquion bajo",
    }
}

/// The unit of a measure.
pub(super) fn unit(measure: ComparedMeasure) -> &'static str {
    match measure {
        ComparedMeasure::RollStiffness => "N m/grado",
        ComparedMeasure::Pitch => "grados",
        other => other.unit(),
    }
}

/// What a difference comes to.
pub(super) fn verdict(verdict: ComparedVerdict) -> &'static str {
    match verdict {
        ComparedVerdict::CannotTell => "el modelo no puede decirlo",
        ComparedVerdict::NoDifference => "ninguna diferencia que el modelo pueda distinguir",
        ComparedVerdict::More => "B tiene más",
        ComparedVerdict::Less => "B tiene menos",
        ComparedVerdict::ByBody => "difiere de un cuerpo a otro",
    }
}

/// For how many there are sizes.
pub(super) fn sizes(own: &ComparedSizes) -> String {
    let ComparedSizes { bodies, both, only: [first, second], neither, other_size } = own;
    let has = if *both == 1 { "1 cuerpo".to_owned() } else { format!("{both} cuerpos") };
    format!(
        "{has} de {bodies} con tamaño en ambos; {first} solo en A, {second} solo en B, {neither} en ninguno. De los que tienen ambos, {other_size} con otro tamaño en B."
    )
}

/// How both are filled.
pub(super) fn fill([first, second]: [Size; 2], pressure: Pressure, of: Option<usize>) -> String {
    let whose = match of {
        None => "que es el llenado de serie de ambos",
        Some(0) => "la menor de sus llenados de serie, la de A",
        Some(_) => "la menor de sus llenados de serie, la de B",
    };
    let kpa = decimal(pressure.to_kpa(), 2);
    format!(
        "A en {first} y B en {second}: ambos a una presión de relleno sin carga de {kpa} kPa, {whose}."
    )
}
