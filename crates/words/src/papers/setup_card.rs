//! The setup card, for the therapist at the chair.

/// The setup card.
#[derive(Clone, Copy, Debug)]
pub struct SetupCardTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub from_above: &'static str,
    pub from_below: &'static str,
    pub take_care: &'static str,
    /// What is to be minded of every cushion.
    pub cautions: &'static [&'static str],
    pub counts: &'static str,
    /// Heads: number, compartment, stock, change, planned, and three times what is found.
    pub count_columns: [&'static str; 8],
    pub checks: &'static str,
    /// Heads: the check, and three times what is found.
    pub check_columns: [&'static str; 4],
    pub check_rows: &'static [CheckTexts],
    pub order_of_a_fitting: &'static str,
    pub goals: &'static str,
    pub if_then: &'static str,
    /// Heads: what is found, what to do, what to expect elsewhere.
    pub if_then_columns: [&'static str; 3],
    pub if_then_note: &'static str,
    pub moves_from_below: &'static str,
    /// What the drawing of the moves shows.
    pub moves_drawing: &'static str,
    pub clinician_decides: &'static str,
}

/// A check by hand.
#[derive(Clone, Copy, Debug)]
pub struct CheckTexts {
    pub check: &'static str,
    /// The answers, of which one is ringed.
    pub answers: &'static str,
}
