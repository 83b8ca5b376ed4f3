//! English: the page of a survey.

use crate::SurveyTexts;

pub(super) const TEXTS: &SurveyTexts = &SurveyTexts {
    subject: "How a layout serves many bodies: sizes, counts, heights and pressures",
    estimate: "ESTIMATE",
    limits: "Computed for bodies from a table, none of them a client. It says how the layout spreads, not what is right for anybody.",
    bar: "how many bodies have a value from one mark to the next",
    most_bodies: "where 90 of 100 bodies lie, and the body in the middle",
    bodies: "bodies",
    sizes: "Sizes",
    width_by_depth: "width x depth (mm)",
    cells: "cells",
    millimetres: "mm",
    kilopascals: "kPa",
    no_size: "none",
    no_size_note: "none: no made size suits measures and weight",
    cells_in_all: "Cells in all",
    cells_changed: "Cells changed from the stock fill",
    left_under_lower_seat_bone: "Cushion under the lower seat bone, expected",
    left_at_the_low_end: "The same, the least that is plausible",
    under_left_seat_bone: "Pressure under the left seat bone, expected",
    at_the_high_end: "The same, the most that is plausible",
    no_values: "no values",
};
