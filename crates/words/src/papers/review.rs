//! The review of a layout.

/// The review of a layout, on paper and on a terminal.
#[derive(Clone, Copy, Debug)]
pub struct ReviewTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub estimate: &'static str,
    pub layout: &'static str,
    pub digest: &'static str,
    pub cell: &'static str,
    pub sizes: &'static str,
    pub bodies: &'static str,
    pub printed: &'static str,
    /// Above the parts.
    pub findings: &'static str,
    pub no_findings: &'static str,
    pub sizes_from_above: &'static str,
    pub by_size: &'static str,
    pub by_compartment: &'static str,
    /// Heads of columns.
    pub size: &'static str,
    pub rated: &'static str,
    pub suits: &'static str,
    pub code: &'static str,
    pub bone_to_seam: &'static str,
    pub on_seam: &'static str,
    pub left: &'static str,
    pub bottomed: &'static str,
    pub slack: &'static str,
    pub opening: &'static str,
    pub number: &'static str,
    pub purpose: &'static str,
    pub cells: &'static str,
    pub width: &'static str,
    pub under_left: &'static str,
    pub under_right: &'static str,
    pub lifts: &'static str,
    pub pitch: &'static str,
    /// What the columns and the dots mean, and whence they are.
    pub legend: &'static str,
    pub sources: &'static str,
    pub limits: &'static str,
    pub clinician_decides: &'static str,
}
