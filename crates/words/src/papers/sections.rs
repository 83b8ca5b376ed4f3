//! Sections through the cushion under the client.

/// The sheet of sections.
#[derive(Clone, Copy, Debug)]
pub struct SectionTexts {
    pub title: &'static str,
    pub subject: &'static str,
    pub status: &'static str,
    /// What is drawn, each beside a piece of it.
    pub under_client: &'static str,
    pub without_client: &'static str,
    pub underside: &'static str,
    pub seam: &'static str,
    pub site: &'static str,
    /// What the drawings are not.
    pub key: &'static str,
    /// Whose counts they are.
    pub counts: &'static str,
    /// What the axes measure.
    pub height: &'static str,
    pub from_the_middle: &'static str,
    pub from_the_rear: &'static str,
    pub limits: &'static str,
    pub across: &'static str,
    pub clinician_decides: &'static str,
}
