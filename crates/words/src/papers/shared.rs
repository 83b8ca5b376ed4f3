//! What several documents say.

/// What several documents say.
#[derive(Clone, Copy, Debug)]
pub struct SharedTexts {
    pub front_edge: &'static str,
    pub rear_edge: &'static str,
    pub clients_left: &'static str,
    pub clients_right: &'static str,
    /// Where the side of a drawing is too short for the words above.
    pub clients_left_short: &'static str,
    pub clients_right_short: &'static str,
    /// The side alone, in capitals, where the drawing can be of nobody else.
    pub clients_left_alone: &'static str,
    pub clients_right_alone: &'static str,
    pub front: &'static str,
    pub top: &'static str,
    pub client: &'static str,
    pub layout: &'static str,
    pub width_by_depth: &'static str,
    pub cell: &'static str,
    /// Heads the weight of the heaviest client that a size is rated for.
    pub rated_for: &'static str,
    pub cells_in_all: &'static str,
    pub spare_cells: &'static str,
    pub plan_recorded: &'static str,
    pub serial: &'static str,
    pub layout_and_size: &'static str,
    /// Heads the number of a plan and its check word.
    pub plan_and_word: &'static str,
    /// Stands there where the counts are in no record.
    pub not_recorded: &'static str,
    pub page: &'static str,
    /// What discs and plain numbers in a drawing stand for.
    pub discs_and_numbers: &'static str,
    /// The line by which a page is struck through once there is a newer one.
    pub superseded: &'static str,
    pub total: &'static str,
    /// What a drawing from below with numbers alone shows.
    pub numbers_from_below: &'static str,
    /// What the file says that is attached to a PDF: the same text as the printed code.
    pub attached_code: &'static str,
}
