//! The fill cards, for whoever counts cells into the cover.

/// The fill cards: of one client, and of a size as supplied.
#[derive(Clone, Copy, Debug)]
pub struct FillCardTexts {
    pub title_for_one_client: &'static str,
    pub title_as_supplied: &'static str,
    pub subject: &'static str,
    pub estimate_until_counted: &'static str,
    pub printed: &'static str,
    pub from_below: &'static str,
    pub turn_it_over: &'static str,
    pub turning_steps: &'static [&'static str],
    pub openings: &'static str,
    /// What the pictures of the turning show.
    pub turning_pictures: &'static str,
    /// Heads: number, compartment, cells, first and second count, shut, height.
    pub columns: [&'static str; 7],
    pub count_do_not_measure: &'static str,
    pub how_to_finish: &'static str,
    /// Rows of fields to write in.
    pub fields: &'static [&'static [&'static str]],
    pub clinician_decides: &'static str,
}
