//! The pattern alone, at true size: to look at a layout while it is being written.

use cushion::{CompartmentIx, Pattern, Sketch};
use kurbo::{Affine, Point, Rect};
use words::Language;

use super::DocumentError;
use super::look::{INK, text};
use super::views::{EDGE_WORDS, View, draw_named, name_edges};
use crate::font::Weight;
use crate::page::{Align, Page, Pen, Role};
use crate::paper::Paper;

/// White around the words at the edges, in millimetres.
const MARGIN: f64 = 6.0;

/// Composes a page as large as the cushion needs, with the pattern from above and its numbers.
///
/// A millimetre of the cushion is a millimetre of the page.
///
/// # Errors
///
/// Fails where a number finds no room.
pub fn drawing(language: &dyn Language, pattern: &Pattern) -> Result<Page, DocumentError> {
    let around = 2.0 * (MARGIN + EDGE_WORDS);
    let size = pattern.size();
    let (width, height) = (size.width().to_mm() + around, size.depth().to_mm() + around);
    let mut page = Page::new(
        language,
        Paper::Custom { width, height },
        language.text_of_layout(pattern.title()),
    );
    let area = page.bounds().inset(-MARGIN);
    let alt = language.numbers_from_above(pattern.compartments().len());
    let numbers = |ix: CompartmentIx| (pattern[ix].number.to_string(), None);
    let block = page.block(Role::Figure { alt });
    draw_named(block, language.shared(), pattern, View::Above, area, numbers, 36.0)?;
    Ok(page)
}

/// Radius of the ring around a fault, in millimetres.
const RING: f64 = 7.0;

/// Composes a page with what can be drawn of a wrong layout, from above at true size: its seams,
/// and a ring around each place of a fault with a number, `first` for the first of them.
///
/// # Errors
///
/// Fails where a number cannot be set.
pub fn faulty_drawing(
    language: &dyn Language,
    title: &str,
    sketch: &Sketch,
    first: usize,
) -> Result<Page, DocumentError> {
    let around = 2.0 * (MARGIN + EDGE_WORDS + 2.0 * RING);
    let (width, depth) = (sketch.size.width().to_mm(), sketch.size.depth().to_mm());
    let paper = Paper::Custom { width: width + around, height: depth + around };
    let mut page = Page::new(language, paper, title);
    let rear = Point::new((width + around) / 2.0, depth + around / 2.0);
    let place = Affine::new([1.0, 0.0, 0.0, -1.0, rear.x, rear.y]);
    let rings = sketch.places.iter().flatten().count();
    let block = page.block(Role::Figure { alt: language.faults_from_above(rings) });
    for seam in &sketch.seams {
        block.path(place * seam.to_path(), None, Some(Pen::solid(0.5, INK)));
    }
    let half = width / 2.0;
    let box_of_size =
        Rect::from_points(place * Point::new(-half, 0.0), place * Point::new(half, depth));
    let (texts, edges) = (language.shared(), text(9.5, Weight::Bold, INK));
    let sides = [texts.clients_left, texts.clients_right];
    name_edges(block, texts, box_of_size, sides, &edges)?;
    let style = text(24.0, Weight::Bold, INK);
    for (number, at) in sketch.places.iter().enumerate() {
        let Some(at) = at.map(|at| place * at) else { continue };
        block.circle(at, RING, None, Some(Pen::solid(1.0, INK)));
        let beside = Point::new(at.x + RING + 1.0, at.y - RING);
        block.text(beside, &(first + number).to_string(), &style, Align::Left)?;
    }
    Ok(page)
}
