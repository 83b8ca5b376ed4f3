//! Sections through the cushion under the client.

/// The sheet of sections.
#[derive(Clone, Copy, Debug)]
pub struct SectionTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub status: &'static str,
    /// What the lines are.
    pub key: &'static str,
    pub limits: &'static str,
    pub across: &'static str,
    pub scale_bar: &'static str,
    pub clinician_decides: &'static str,
}
