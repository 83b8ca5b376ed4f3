//! English: what several documents say.

use crate::SharedTexts;

pub(super) const CARD_DEFERS: &str = "The treating clinician decides; local rules come first. This card does not replace an assessment.";

pub(super) const TEXTS: &SharedTexts = &SharedTexts {
    front_edge: "FRONT EDGE (knees)",
    rear_edge: "REAR EDGE (back)",
    clients_left: "CLIENT'S LEFT",
    clients_right: "CLIENT'S RIGHT",
    clients_left_short: "Client's left",
    clients_right_short: "Client's right",
    clients_left_alone: "LEFT",
    clients_right_alone: "RIGHT",
    front: "FRONT",
    top: "TOP",
    client: "Client",
    layout: "Layout",
    width_by_depth: "Width x depth",
    cell: "Cell",
    rated_for: "Client at most",
    cells_in_all: "Cells in all",
    spare_cells: "Spare cells",
    plan_recorded: "Plan recorded",
    serial: "Cushion serial",
    layout_and_size: "Layout and size",
    plan_and_word: "Plan, check word",
    not_recorded: "not recorded",
    page: "Page",
    discs_and_numbers: "In a disc: the number of a compartment. Plain: its cells. Thick bar: the client's left.",
    superseded: "Superseded: strike this page through. Date ____________ Initials ________",
    total: "Total",
    numbers_from_below: "The cushion from below, front edge up, with the numbers of the compartments. The client's left is on the right of the drawing.",
    attached_code: "The text of the printed code, by which the counts are found again",
};
