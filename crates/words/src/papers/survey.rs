//! The page of a survey.

/// The page of a survey.
#[derive(Clone, Copy, Debug)]
pub struct SurveyTexts {
    pub subject: &'static str,
    pub estimate: &'static str,
    pub limits: &'static str,
    /// What is drawn, each beside a piece of it.
    pub bar: &'static str,
    pub most_bodies: &'static str,
    /// What the upright axis counts.
    pub bodies: &'static str,
    pub sizes: &'static str,
    pub width_by_depth: &'static str,
    pub cells: &'static str,
    pub millimetres: &'static str,
    pub kilopascals: &'static str,
    /// The name of the step of those who have no size.
    pub no_size: &'static str,
    pub no_size_note: &'static str,
    pub cells_in_all: &'static str,
    pub cells_changed: &'static str,
    pub left_under_lower_seat_bone: &'static str,
    pub left_at_the_low_end: &'static str,
    pub under_left_seat_bone: &'static str,
    pub at_the_high_end: &'static str,
    pub no_values: &'static str,
}
