//! Cutting and sewing templates.

/// Templates of a cover: the sheet at true size, and its tiles on paper.
#[derive(Clone, Copy, Debug)]
pub struct TemplateTexts {
    pub title: &'static str,
    pub tiles_title: &'static str,
    pub subject: &'static str,
    /// In the box beside the title.
    pub untested: &'static str,
    pub layout: &'static str,
    pub revision: &'static str,
    pub no_revision: &'static str,
    pub digest: &'static str,
    pub size: &'static str,
    pub walls: &'static str,
    pub printed: &'static str,
    /// What is said on pieces.
    pub top: &'static str,
    pub base: &'static str,
    pub grain: &'static str,
    pub upper_edge: &'static str,
    pub lower_edge: &'static str,
    /// Beside a piece of each line.
    pub cut: &'static str,
    pub stitch: &'static str,
    pub notch: &'static str,
    pub opening: &'static str,
    pub square: &'static str,
    /// How to work with it, each a sentence or two.
    pub mirror: &'static str,
    pub notches: &'static str,
    pub full_size: &'static str,
    pub scale_bar: &'static str,
    pub how_to_join: &'static [&'static str],
    pub map: &'static str,
    pub map_shows: &'static str,
    pub page: &'static str,
    pub trial: &'static str,
}
