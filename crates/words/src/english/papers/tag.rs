//! English: the sewn-in tag.

use crate::TagTexts;

pub(super) const TEXTS: &TagTexts = &TagTexts {
    title: "Cushion tag",
    subject: "Which way round, and the numbers of the compartments",
    drawing: "The cushion from below, front edge up, with the numbers of its compartments. The client's left is on the right of the drawing.",
    this_side_down: "This side DOWN. The other side is the TOP.",
    sides: "Seen from below. Thick bar: the client's left.",
    fill_by_the_card: "If this cushion has a setup card, fill by the card.",
    fields: &[&["Serial"], &["Batch", "Date"]],
    care: "Do not wash, do not bleach, do not dry in a dryer, do not iron, do not dry clean.",
    care_in_words: "Wipe. Wash the outer cover only.",
    sheet_title: "Sheet of cushion tags",
    sheet_subject: "Tags to be cut out along the marks",
};
