//! The letter with the reasons, for whoever pays.

/// The letter with the reasons.
#[derive(Clone, Copy, Debug)]
pub struct LetterTexts {
    pub title: &'static str,
    pub subject: &'static str,
    /// Room for whom it is to.
    pub to: &'static [&'static [&'static str]],
    /// What the letter is, and what it is not.
    pub what_it_is: &'static str,
    pub measured: &'static str,
    pub nothing_measured: &'static str,
    /// Heads: what was measured, and what was found.
    pub measured_columns: [&'static str; 2],
    pub findings: &'static str,
    pub size: &'static str,
    /// That the goals are those of the file, and what is said of each an estimate.
    pub goals: &'static str,
    pub no_goals: &'static str,
    pub tried: &'static str,
    pub stands: &'static str,
    pub asked_for: &'static str,
    /// Rows of fields to write in.
    pub fields: &'static [&'static [&'static str]],
    pub clinician_decides: &'static str,
}
