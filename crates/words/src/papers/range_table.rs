//! The printed range of a layout.

/// The range of a layout: counts, masses and seams at every made size.
#[derive(Clone, Copy, Debug)]
pub struct RangeTableTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub estimate: &'static str,
    pub layout: &'static str,
    pub revision: &'static str,
    pub no_revision: &'static str,
    pub digest: &'static str,
    pub cell: &'static str,
    pub sizes: &'static str,
    pub printed: &'static str,
    /// Above the tables.
    pub counts: &'static str,
    pub seams: &'static str,
    pub jumps: &'static str,
    pub from_above: &'static str,
    /// Heads of columns.
    pub size: &'static str,
    pub rated: &'static str,
    pub in_all: &'static str,
    pub litres: &'static str,
    pub cells_g: &'static str,
    pub all_seams: &'static str,
    /// How counts are told.
    pub legend: &'static str,
    /// What masses and litres are, and what they are not.
    pub limits: &'static str,
    pub clinician_decides: &'static str,
}
