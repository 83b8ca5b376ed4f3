//! English: sections through the cushion.

use super::shared;
use crate::SectionTexts;

pub(super) const TEXTS: &SectionTexts = &SectionTexts {
    title: "Sections through the cushion",
    subject: "How deep the client is expected to sit in the cushion, drawn from the side and from behind",
    status: "ESTIMATE: CHECK BY HAND",
    under_client: "the cushion under the client",
    without_client: "its top without the client",
    underside: "the client's underside",
    seam: "a seam",
    site: "a place on the body, and from where to where it may lie",
    key: "Beside each place stands how much cushion remains under it and, in brackets, from how little to how much that may be. Heights are not exaggerated, and pressures are not drawn.",
    counts: "Counts",
    height: "height",
    from_the_middle: "from the middle",
    from_the_rear: "from the rear edge",
    limits: "Computed by a model that was not compared with a measured cushion. It replaces no check by hand.",
    across: "From left to right through the seat bones, seen from behind",
    clinician_decides: shared::CARD_DEFERS,
};
