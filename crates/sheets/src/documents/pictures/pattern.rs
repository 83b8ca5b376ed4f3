//! A pattern from above or from below, each compartment a part that a page can find and colour.

use cushion::{Chain, CompartmentIx, Pattern, Ring};
use kurbo::{Affine, BezPath, Rect};
use words::Language;

use super::super::labels::Ground;
use super::super::views::{
    EDGE_WORDS, Named, Placed, View, draw_seams, height_of, place_labels, place_on_page,
};
use super::{LETTERS, WIDTH};
use crate::color::Color;
use crate::page::Fill;
use crate::picture::{Part, Picture, blank};
use crate::text::SetError;

/// Draws the pattern with its edges named in words and a bar at the client's left; in each
/// compartment stands its number, with what `label` says of its cells.
///
/// Each compartment is one part: its outline, closed and white, then its label. What lies over all
/// of them is in the last part.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn pattern_picture(
    language: &dyn Language,
    pattern: &Pattern,
    view: View,
    label: impl Fn(CompartmentIx) -> (String, Option<String>),
) -> Result<Picture, SetError> {
    let area = area_of(pattern);
    let named = Named::of(language.shared(), pattern, view, area, LETTERS.edges)?;
    let place = place_on_page(pattern, view, named.inner);
    let labels = place_labels(pattern, place, &label, LETTERS.numbers, named.bar)?;
    let (mut parts, mut over) = (Vec::new(), blank());
    draw_seams(&mut over, pattern, place);
    for (ix, own) in pattern.indices().zip(&labels) {
        let mut block = blank();
        block.path(outline(pattern, ix, place), Some(Fill::even_odd(Color::WHITE)), None);
        match own {
            Placed::Inside(own, middle) => own.set(&mut block, *middle)?,
            Placed::Outside(own) => {
                // Other compartments must not hide it.
                own.line(&mut over);
                own.disc(&mut block)?;
            }
        }
        parts.push(Part::of(Some(pattern[ix].number), block));
    }
    named.draw(&mut over, language.shared())?;
    parts.push(Part::of(None, over));
    let counted = pattern.indices().any(|ix| label(ix).1.is_some());
    let compartments = pattern.compartments().len();
    let alt = match (view, counted) {
        (View::Above, true) => language.counts_from_above(compartments),
        (View::Below, true) => language.counts_from_below(compartments),
        (View::Above, false) => language.numbers_from_above(compartments),
        (View::Below, false) => language.shared().numbers_from_below.to_owned(),
    };
    Ok(Picture { width: area.width(), height: area.height(), alt, parts })
}

/// The whole picture of a pattern.
pub(super) fn area_of(pattern: &Pattern) -> Rect {
    Rect::new(0.0, 0.0, WIDTH, height_of(pattern, WIDTH))
}

/// The outline of a compartment with its islands, each ring closed; to be filled even-odd.
pub(super) fn outline(pattern: &Pattern, ix: CompartmentIx, place: Affine) -> BezPath {
    let closed = |ring: &Ring| {
        let mut path = place * Chain::new(pattern.pieces(ring).collect()).to_path();
        path.close_path();
        path
    };
    let own = &pattern[ix];
    std::iter::once(&own.outer).chain(&own.holes).flat_map(closed).collect()
}

/// Where a page can lay controls over the picture of a pattern.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ControlPlace {
    /// The number of the compartment.
    pub compartment: u8,
    /// The middle of the place, as shares of the picture's width and height, 0 to 1 from the top
    /// left corner.
    pub at: [f64; 2],
    /// How wide a box may be there that is a third as high, in millimetres of the picture.
    pub room: f64,
}

/// Finds in each compartment the place with most room for controls, in the order of the numbers;
/// it fits the picture that [`pattern_picture`] draws.
#[must_use]
pub fn places(pattern: &Pattern, view: View) -> Vec<ControlPlace> {
    const THREE_TIMES_AS_WIDE: f64 = 3.0;
    let area = area_of(pattern);
    let place = place_on_page(pattern, view, area.inset(-EDGE_WORDS));
    let of = |ix| {
        let (middle, room) = Ground::of(pattern, ix, place).widest(THREE_TIMES_AS_WIDE);
        let at = [middle.x / area.width(), middle.y / area.height()];
        ControlPlace { compartment: pattern[ix].number, at, room }
    };
    pattern.indices().map(of).collect()
}
