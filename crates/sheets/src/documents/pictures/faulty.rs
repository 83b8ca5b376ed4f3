//! What can be drawn of a layout that is wrong, with a ring around each place where it is.

use cushion::Sketch;
use kurbo::{Affine, Point, Rect};
use words::Language;

use super::super::look::{INK, text};
use super::super::views::{EDGE_WORDS, name_edges};
use super::{LETTERS, WIDTH};
use crate::font::Weight;
use crate::page::{Align, Pen};
use crate::picture::{Part, Picture, blank};
use crate::text::SetError;

/// Radius of a ring, in millimetres.
const RING: f64 = 2.4;

/// Draws the seams of a layout from above, and a ring around each place of a fault; at each ring
/// stands the number that `numbers` has for its fault.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn faulty_picture(
    language: &dyn Language,
    sketch: &Sketch,
    numbers: &[usize],
) -> Result<Picture, SetError> {
    // A ring at the edge, and the number beside it, have room as well.
    let around = EDGE_WORDS + 2.0 * RING;
    let (width, depth) = (sketch.size.width().to_mm(), sketch.size.depth().to_mm());
    let scale = (WIDTH - 2.0 * around) / width;
    let drawn = Rect::new(around, around, WIDTH - around, around + depth * scale);
    let place = Affine::new([scale, 0.0, 0.0, -scale, drawn.center().x, drawn.y1]);
    let mut block = blank();
    for seam in &sketch.seams {
        block.path(place * seam.to_path(), None, Some(Pen::solid(0.3, INK)));
    }
    let texts = language.shared();
    let edges = text(LETTERS.edges, Weight::Bold, INK);
    name_edges(&mut block, texts, drawn, [texts.clients_left, texts.clients_right], &edges)?;
    let style = text(LETTERS.numbers, Weight::Bold, INK);
    for (at, number) in sketch.places.iter().zip(numbers) {
        let Some(at) = at.map(|at| place * at) else { continue };
        block.circle(at, RING, None, Some(Pen::solid(0.5, INK)));
        let beside = Point::new(at.x + RING + 0.4, at.y - RING);
        block.text(beside, &number.to_string(), &style, Align::Left)?;
    }
    let alt = language.faults_from_above(sketch.places.iter().flatten().count());
    let height = drawn.y1 + around;
    Ok(Picture { width: WIDTH, height, alt, parts: vec![Part::of(None, block)] })
}
