//! The pattern alone, at true size: to look at a layout while it is being written.

use cushion::{CompartmentIx, Pattern};
use words::Language;

use super::DocumentError;
use super::views::{EDGE_WORDS, View, draw_named};
use crate::page::{Page, Role};
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
    let mut page = Page::new(language, Paper::Custom { width, height }, pattern.title());
    let area = page.bounds().inset(-MARGIN);
    let alt = language.numbers_from_above(pattern.compartments().len());
    let numbers = |ix: CompartmentIx| (pattern[ix].number.to_string(), None);
    let block = page.block(Role::Figure { alt });
    draw_named(block, language.shared(), pattern, View::Above, area, numbers, 36.0)?;
    Ok(page)
}
