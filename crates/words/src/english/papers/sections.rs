//! English: sections through the cushion.

use super::shared;
use crate::SectionTexts;

pub(super) const TEXTS: &SectionTexts = &SectionTexts {
    title: "Sections through the cushion",
    subject: "How deep the client is expected to sit in the cushion, drawn from the side and from behind",
    status: "ESTIMATE: CHECK BY HAND",
    key: "Hatched: the cushion under the client. Dashed: its top without the client. Heavy line: the client's underside. Upright lines: seams. Heights are not exaggerated, and pressures are not drawn.",
    limits: "Computed by a model that was not compared with a measured cushion. It replaces no check by hand.",
    across: "From left to right through the seat bones, seen from behind",
    scale_bar: "100 mm",
    clinician_decides: shared::CARD_DEFERS,
};
