//! English: the page of a survey.

use crate::SurveyTexts;

pub(super) const TEXTS: &SurveyTexts = &SurveyTexts {
    subject: "How a layout serves many bodies: sizes, counts, heights and pressures",
    estimate: "ESTIMATE",
    limits: "Computed for bodies from a table, none of them a client. It says how the layout spreads, not what is right for anybody.",
    sizes: "Sizes (mm)",
    no_size: "none",
    no_size_note: "none: no made size suits measures and weight",
    cells_in_all: "Cells in all",
    cells_changed: "Cells changed from the stock fill",
    left_under_lower_seat_bone: "Left under the lower seat bone (mm)",
    left_at_the_low_end: "The same at the low end (mm)",
    under_left_seat_bone: "Under the left seat bone (kPa)",
    no_values: "no values",
};
