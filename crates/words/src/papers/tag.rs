//! The tag that is sewn to the cover.

/// The sewn-in tag.
#[derive(Clone, Copy, Debug)]
pub struct TagTexts {
    pub title: &'static str,
    pub subject: &'static str,
    /// What its drawing shows.
    pub drawing: &'static str,
    pub this_side_down: &'static str,
    pub sides: &'static str,
    pub fill_by_the_card: &'static str,
    /// Rows of fields to write in, the first for the serial alone.
    pub fields: &'static [&'static [&'static str]],
    /// What the signs of care say.
    pub care: &'static str,
    /// Beside the signs.
    pub care_in_words: &'static str,
    pub sheet_title: &'static str,
    pub sheet_subject: &'static str,
}
