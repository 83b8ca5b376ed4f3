//! Spanish: the letter with the reasons.

use case::question::Question;
use case::{Chair, Measures, Sides, Weighing};
use cushion::Length;

use super::super::Spanish;
use crate::{LetterTexts, PaperWords};

pub(super) const TEXTS: &LetterTexts = &LetterTexts {
    title: "Por qué este cojín",
    subject: "Medidas, hallazgos, tamaño, objetivos y lo que se probó, para quien paga",
    to: &[&["Dirigida a"], &["Sobre (nombre, a mano)"]],
    what_it_is: "Esta carta da los motivos que constan en el archivo de la persona, y ningún otro. Lo que se llama esperado es una ESTIMACIÓN hasta que unas manos lo comprueben. No se promete nada.",
    measured: "Qué se midió",
    nothing_measured: "No consta ninguna medida.",
    measured_columns: ["Medida", "Hallado"],
    findings: "Qué se halló",
    size: "Por qué este tamaño",
    goals: "Objetivos, y qué se espera de estas cantidades (estimaciones)",
    no_goals: "No constan objetivos.",
    tried: "Qué se planificó, se probó y se halló, lo más antiguo primero",
    stands: "Cómo está el ajuste",
    asked_for: "Qué se pide",
    fields: &[&["Nombre", "Profesión"], &["Firma", "Fecha"]],
    clinician_decides: "Decide el profesional responsable; las normas locales van primero. Esta carta no sustituye una valoración.",
};

/// What was measured, each with its name.
pub(super) fn measured(
    say: Spanish,
    measures: &Measures,
    weighing: Option<&Weighing>,
    chair: &Chair,
) -> Vec<[String; 2]> {
    let mut rows = Vec::new();
    let mut row = |question, found: Option<String>| {
        rows.extend(found.map(|found| [say.label_on_form(question), found]));
    };
    let one = |own: Option<Length>| own.map(|own| say.length(own));
    let both = |own: &Sides<Option<Length>>| {
        let sides = [("IZQUIERDA", own.left), ("DERECHA", own.right)].into_iter();
        let said: Vec<String> =
            sides.filter_map(|(side, own)| Some(format!("{side} {}", one(own)?))).collect();
        (!said.is_empty()).then(|| said.join(", "))
    };
    row(Question::HipWidth, one(measures.hip_width));
    row(Question::TrochanterWidth, one(measures.trochanter_width));
    row(Question::ThighDepth, both(&measures.thigh_depth));
    row(Question::LowerLegLength, both(&measures.lower_leg_length));
    row(Question::ExternalKneeWidth, one(measures.external_knee_width));
    row(Question::SeatBoneSpacing, one(measures.seat_bone_spacing));
    let taken = measures.taken.as_ref();
    row(Question::TakenOn, taken.map(|own| format!("{}, {}", own.on, own.by)));
    row(
        Question::WeightKg,
        weighing.map(|own| format!("{}, el {}", say.weight(own.weight), own.on)),
    );
    let inside = "Silla, ";
    let mut of_chair = |question, found: Option<String>| {
        let label = || inside.to_owned() + &say.label_on_form(question).to_lowercase();
        rows.extend(found.map(|found| [label(), found]));
    };
    of_chair(Question::InsideWidth, one(chair.inside_width));
    of_chair(Question::InsideDepth, one(chair.inside_depth));
    rows
}
