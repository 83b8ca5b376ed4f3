//! What pictures on a screen say, and what is said for them to whoever does not see them.

use case::question::Drawing;
use case::{Place, SiteName, Spread};
use cushion::{Length, Side};

/// What pictures on a screen say.
///
/// What stands for a picture is a sentence or more, each with its full stop, and names the
/// client's sides wherever the picture has them.
pub trait PictureWords {
    /// What the spare bag is called, beside its drawing.
    fn spare_bag(&self) -> &'static str;
    /// What a picture of a move shows: from below, with the two places.
    fn move_shows(&self, from: Place, to: Place, cells: u32) -> String;
    /// The least cushion that must be left, beside its line.
    fn least_left(&self, least: Length) -> String;
    /// How much cushion is left under a place, on a line of its own.
    fn left_in_short(&self, left: &Spread<Length>) -> String;
    /// What the picture of a section shows: its title, the places with the cushion left under
    /// them, the least that must be left.
    fn section_picture_shows(
        &self,
        title: &str,
        sites: &[(SiteName, Spread<Length>)],
        least: Length,
    ) -> String;
    /// What a drawing measures, in a word or two.
    fn measure_name(&self, drawing: Drawing) -> &'static str;
    /// How it is measured.
    fn how_it_is_measured(&self, drawing: Drawing) -> &'static str;
    /// What the picture with places to be chosen shows.
    fn body_shows(&self) -> &'static str;
    /// By how much a side of the pelvis is lower, beside the drawing.
    fn lower_by(&self, by: Length) -> String;
    /// What the picture of the pelvis shows.
    fn pelvis_shows(&self, lower: Option<Side>, by: Option<Length>) -> String;
}
