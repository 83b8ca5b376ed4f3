//! English: the printed range of a layout.

use crate::RangeTableTexts;

pub(super) const TEXTS: &RangeTableTexts = &RangeTableTexts {
    title: "Range table",
    subject: "A layout at every made size: counts as supplied with their range, masses and seams",
    estimate: "ESTIMATE until counted",
    layout: "Layout",
    revision: "Revision",
    no_revision: "none written",
    digest: "Digest",
    cell: "Cell",
    sizes: "Made sizes",
    printed: "Printed",
    counts: "Cells in each compartment",
    seams: "Length of seams, mm",
    jumps: "Look at these",
    from_above: "Numbers, from above",
    size: "Size, mm",
    rated: "Rated, kg",
    in_all: "All",
    litres: "Litres",
    cells_g: "Cells, g",
    all_seams: "All",
    legend: "Cells as supplied, in brackets the range from where the cells just reach the walls to the highest top that the model is good for. A column for two numbers is for mirror images, which have the same counts. A ! marks a count that jumps from the next smaller size.",
    limits: "Litres are rough. Cells weigh what the cell file says of their film, without the air in them. A seam is as long as it is sewn along the top, without allowances.",
    clinician_decides: "The treating clinician decides on any change; local rules come first.",
};
