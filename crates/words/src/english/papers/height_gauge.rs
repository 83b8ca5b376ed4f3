//! English: the height gauge.

use crate::HeightGaugeTexts;

pub(super) const TEXTS: &HeightGaugeTexts = &HeightGaugeTexts {
    title: "Height gauge",
    subject: "How high each compartment should stand after patting level, at full size",
    how_sure: "Heights are ESTIMATES, with the range that is plausible. Counts decide: outside the grey, count again before you move a cell.",
    how_to_use: "How to use it",
    steps: &[
        "Lay the cushion on a table, top up, cover off. Nobody sits on it. Pat every compartment level.",
        "Stand the gauge upright beside the cushion, its lower edge on the table.",
        "Lay a ruler over the middle of a compartment, level, out to the gauge. It should meet the grey of that number; the line is what is expected.",
    ],
    nothing_under_a_client: "Nothing goes under a client but a hand: no gauge, no bar, no ruler.",
    cut_out: "The gauge: cut out along the broken line",
    drawing: "A gauge at full size, with a scale in millimetres. Each compartment has a column with its number: a grey bar over the plausible heights, and a line at the expected one. The table says the same in numbers.",
    on_the_table: "This edge stands on the table",
    unit: "mm",
    too_high: "A compartment is higher than this paper: measure with a ruler, by the table.",
    check_the_print: "Before you cut: is it printed at full size?",
    line: "This line is 100 mm. Is it not? Print again at 100 %, not fitted to the page.",
    bar: "This bar is 25 mm, about a thumb's width. Lay your thumb on it: how does 25 mm feel?",
    measures_drawn: "A line of 100 mm and a bar of 25 mm, to measure the print and to compare a thumb with.",
    heights: "Heights after patting level",
    columns: ["No.", "Compartment", "Cells", "Expected height (range)", "Measured"],
    fields: &[&["Measured by", "Date"]],
};
