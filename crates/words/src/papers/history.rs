//! The page of a client's record.

/// The page of a client's record.
#[derive(Clone, Copy, Debug)]
pub struct HistoryTexts {
    pub title: &'static str,
    pub subject: &'static str,
    /// What the drawings are, and that left and right are the client's.
    pub drawings: &'static str,
    /// Before what was expected of a plan.
    pub expected: &'static str,
    /// Before a weight.
    pub weight: &'static str,
}
