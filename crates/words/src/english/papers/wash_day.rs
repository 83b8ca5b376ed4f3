//! English: the sheet for the day of a wash.

use super::take_home::{BURST, BURST_CELL, COUNT_TWICE};
use crate::{PassageTexts, WashDayTexts};

pub(super) const TEXTS: &WashDayTexts = &WashDayTexts {
    title: "Wash day",
    subject: "Order of work, recount and bag labels for the wash of one cushion",
    order_of_work: "Order of work",
    small_cells: "Cells are small. Work on a tray. Keep them from children and pets.",
    from_below: "From below, openings up",
    burst_cell: PassageTexts { heading: BURST, sentences: &BURST_CELL },
    count_twice: COUNT_TWICE,
    count: "Count out, count back in",
    columns: ["Pocket", "Where", "Cells", "Out", "In"],
    fields: &[&["In the bag", "Date", "Name"]],
    bag_labels: "Cut out a label for each bag",
};
