//! The page of a survey.

/// The page of a survey.
#[derive(Clone, Copy, Debug)]
pub struct SurveyTexts {
    pub subject: &'static str,
    pub estimate: &'static str,
    pub limits: &'static str,
    pub sizes: &'static str,
    /// The name of the step of those who have no size.
    pub no_size: &'static str,
    pub no_size_note: &'static str,
    pub cells_in_all: &'static str,
    pub cells_changed: &'static str,
    pub left_under_lower_seat_bone: &'static str,
    pub left_at_the_low_end: &'static str,
    pub under_left_seat_bone: &'static str,
    pub no_values: &'static str,
}
