//! The blank measuring form.

/// The blank measuring form; its questions are those of the client's file.
#[derive(Clone, Copy, Debug)]
pub struct MeasuringFormTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub sides_are_the_clients: &'static str,
    pub how_to_answer: &'static str,
    pub clinician_decides: &'static str,
    pub how_to_sit: &'static str,
    /// Heads the names of measures.
    pub measure: &'static str,
    /// Heads how measures are taken.
    pub from_where_to_where: &'static str,
    pub from_the_side: &'static str,
    pub from_above: &'static str,
    pub yes: &'static str,
    pub no: &'static str,
    pub sketch: &'static str,
    pub notes: &'static str,
    pub print_at_full_size: &'static str,
    /// What the square shows.
    pub square: &'static str,
}
