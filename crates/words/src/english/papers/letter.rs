//! English: the letter with the reasons.

use case::question::Question;
use case::{Chair, Measures, Sides, Weighing};
use cushion::Length;

use super::super::English;
use crate::{LetterTexts, PaperWords};

pub(super) const TEXTS: &LetterTexts = &LetterTexts {
    title: "Why this cushion",
    subject: "Measures, findings, sizing, goals and what was tried, for whoever pays",
    to: &[&["To"], &["For (name, by hand)"]],
    what_it_is: "This letter gives the reasons from the client's file, and no others. What is said to be expected is an ESTIMATE until hands have checked it. Nothing is promised.",
    measured: "What was measured",
    nothing_measured: "No measure is written down.",
    measured_columns: ["Measure", "Found"],
    findings: "What was found",
    size: "Why this size",
    goals: "Goals, and what is expected of these counts (estimates)",
    no_goals: "No goals are written down.",
    tried: "What was planned, tried and found, oldest first",
    stands: "How the fitting stands",
    asked_for: "What is asked for",
    fields: &[&["Name", "Profession"], &["Signature", "Date"]],
    clinician_decides: "The treating clinician decides; local rules come first. This letter does not replace an assessment.",
};

/// What was measured, each with its name.
pub(super) fn measured(
    say: English,
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
        let sides = [("LEFT", own.left), ("RIGHT", own.right)].into_iter();
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
        weighing.map(|own| format!("{}, on {}", say.weight(own.weight), own.on)),
    );
    let inside = "Chair, ";
    let mut of_chair = |question, found: Option<String>| {
        let label = || inside.to_owned() + &say.label_on_form(question).to_lowercase();
        rows.extend(found.map(|found| [label(), found]));
    };
    of_chair(Question::InsideWidth, one(chair.inside_width));
    of_chair(Question::InsideDepth, one(chair.inside_depth));
    rows
}
