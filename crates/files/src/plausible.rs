//! Measures that are each possible and are not likely, together or alone.
//!
//! Outside source: ANSUR II (Gordon et al., NATICK/TR-15/007, 2014), fit adults. They are no
//! limits for clients, so these are remarks and never errors; children have none.

use case::question::Question;
use case::text::{ClientFinding, TextFinding};
use case::{Measures, Sides, Weighing};
use cushion::Length;

use crate::cursor::Table;

fn remark(table: &Table<'_>, question: Question, finding: impl Into<TextFinding>) {
    table.remarks.remark(table.place(question), finding);
}

/// Measures of anybody that do not go together.
pub(crate) fn remark_on(table: &Table<'_>, measures: &Measures) {
    let depths = [measures.thigh_depth.left, measures.thigh_depth.right];
    let deepest = depths.into_iter().flatten().reduce(Length::max);
    if let (Some(hip), Some(depth)) = (measures.hip_width, deepest)
        && hip > depth * 1.1
    {
        remark(table, Question::HipWidth, ClientFinding::HipsWiderThanThighs);
    }
    if let (Some(hip), Some(trochanters)) = (measures.hip_width, measures.trochanter_width)
        && trochanters > hip
    {
        remark(table, Question::TrochanterWidth, ClientFinding::TrochantersWiderThanHips);
    }
    if let [Some(left), Some(right)] = depths
        && (left - right).abs() > Length::from_mm(60.0)
    {
        remark(table, Question::ThighDepth, ClientFinding::ThighsDiffer);
    }
}

/// Whether an answer is outside of what is usual.
fn is_unusual(question: Question, sides: Sides<Option<Length>>) -> bool {
    let usual = question.row().usual;
    let both = [sides.left, sides.right].into_iter().flatten();
    usual.is_some_and(|usual| both.into_iter().any(|length| !usual.has(length.to_mm())))
}

/// Measures of an adult that hardly anybody has.
pub(crate) fn remark_on_adult(table: &Table<'_>, measures: &Measures, weighing: Option<&Weighing>) {
    if is_unusual(Question::ThighDepth, measures.thigh_depth) {
        remark(table, Question::ThighDepth, ClientFinding::LongThigh);
    }
    if is_unusual(Question::LowerLegLength, measures.lower_leg_length) {
        remark(table, Question::LowerLegLength, ClientFinding::LongLeg);
    }
    if let (Some(hips), Some(weighing)) = (measures.hip_width, weighing) {
        // Men 219 + 1.875 m, se 14; women 231 + 2.474 m, se 18 mm: three of each to the outside.
        let kg = weighing.weight.to_kg();
        let (least, most) = (219.0 + 1.875 * kg - 42.0, 231.0 + 2.474 * kg + 54.0);
        let mm = hips.to_mm();
        if mm < least || mm > most {
            let narrow = mm < least;
            let finding = ClientFinding::HipsForWeight { narrow, weight: weighing.weight };
            remark(table, Question::HipWidth, finding);
        }
    }
}
