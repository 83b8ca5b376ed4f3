//! The two drawings of a pattern: from above, as the client sits, and from below, as it is
//! filled. The front edge is up in both, so the sides change places.

use cushion::{CompartmentIx, Pattern};
use kurbo::{Affine, Point, Rect};

use super::look::{ACCENT, INK, PALE, text};
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style, measure};
use crate::words::english as words;

/// From which side a pattern is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// As the client sits: the client's left is on the left of the page.
    Above,
    /// As it is filled, turned over sideways: the client's left is on the right of the page.
    Below,
}

/// Returns the place on the page of a point of the pattern, for a drawing that fills `area`.
#[must_use]
pub fn place_on_page(pattern: &Pattern, view: View, area: Rect) -> Affine {
    let (width, depth) = (pattern.size().width().to_mm(), pattern.size().depth().to_mm());
    let scale = (area.width() / width).min(area.height() / depth);
    let across = match view {
        View::Above => scale,
        View::Below => -scale,
    };
    let rear = Point::new(area.center().x, area.center().y + depth * scale / 2.0);
    Affine::new([across, 0.0, 0.0, -scale, rear.x, rear.y])
}

/// Draws the seams, and a text of one or two lines in each compartment.
///
/// The first line is set large. Where a text is wider than its compartment it is set smaller,
/// down to what can still be read.
pub(super) fn draw(
    block: &mut Block,
    pattern: &Pattern,
    view: View,
    area: Rect,
    label: impl Fn(CompartmentIx) -> (String, Option<String>),
    size_pt: f64,
) -> Result<(), SetError> {
    let place = place_on_page(pattern, view, area);
    for edge in pattern.edges() {
        let pen = Pen::solid(if edge.is_outer() { 0.9 } else { 0.5 }, INK);
        block.path(place * edge.chain.to_path(), None, Some(pen));
    }
    for ix in pattern.indices() {
        let (large, small) = label(ix);
        let at = place * pattern[ix].seed;
        let room = room_at_seed(pattern, ix) * place.as_coeffs()[3].abs() * 0.85;
        let number = at_most(&large, text(size_pt, Weight::Bold, ACCENT), room)?;
        let Some(small) = small else {
            let baseline = at.y + number.cap_height() / 2.0;
            block.text(Point::new(at.x, baseline), &large, &number, Align::Centre)?;
            continue;
        };
        let count = at_most(&small, text(size_pt * 0.72, Weight::SemiBold, INK), room)?;
        block.text(Point::new(at.x, at.y - 0.4), &large, &number, Align::Centre)?;
        let baseline = at.y + count.cap_height() + 1.6;
        block.text(Point::new(at.x, baseline), &small, &count, Align::Centre)?;
    }
    Ok(())
}

/// How wide a line can be that is centred on the seed of a compartment and touches no seam, in
/// millimetres of the cushion.
fn room_at_seed(pattern: &Pattern, compartment: CompartmentIx) -> f64 {
    let seed = pattern[compartment].seed;
    let around = pattern
        .edges()
        .iter()
        .filter(|edge| edge.left == Some(compartment) || edge.right == Some(compartment));
    let mut nearest = f64::INFINITY;
    for edge in around {
        for pair in edge.chain.flatten(0.5).windows(2) {
            let (from, to) = (pair[0] - seed, pair[1] - seed);
            if (from.y < 0.0) != (to.y < 0.0) {
                let across = from.x + (to.x - from.x) * from.y / (from.y - to.y);
                nearest = nearest.min(across.abs());
            }
        }
    }
    2.0 * nearest
}

/// The least size of a text in a drawing, in points.
const LEAST_PT: f64 = 6.5;

/// The style, or a smaller one in which the text fits the room.
fn at_most(words: &str, style: Style, room: f64) -> Result<Style, SetError> {
    let width = measure(words, &style)?;
    if width <= room {
        return Ok(style);
    }
    let size_pt = (style.size_pt * room / width).max(LEAST_PT);
    Ok(Style { size_pt, ..style })
}

/// White kept around a drawing for the words at its edges, in millimetres.
pub(super) const EDGE_WORDS: f64 = 6.0;

/// Draws the pattern with all four edges named in words.
pub(super) fn draw_named(
    block: &mut Block,
    pattern: &Pattern,
    view: View,
    area: Rect,
    label: impl Fn(CompartmentIx) -> (String, Option<String>),
    size_pt: f64,
) -> Result<(), SetError> {
    let inner = area.inset(-EDGE_WORDS);
    draw(block, pattern, view, inner, label, size_pt)?;
    let place = place_on_page(pattern, view, inner);
    let half = pattern.size().width().to_mm() / 2.0;
    let depth = pattern.size().depth().to_mm();
    let drawn = Rect::from_points(place * Point::new(-half, 0.0), place * Point::new(half, depth));
    let style = text(if size_pt > 12.0 { 9.0 } else { 7.0 }, Weight::Bold, INK);
    let gap = 1.8;
    let middle = drawn.center();
    let (left, right) = match view {
        View::Above => (words::CLIENTS_LEFT, words::CLIENTS_RIGHT),
        View::Below => (words::CLIENTS_RIGHT, words::CLIENTS_LEFT),
    };
    block.text(Point::new(middle.x, drawn.y0 - gap), words::FRONT_EDGE, &style, Align::Centre)?;
    let below = drawn.y1 + gap + style.cap_height();
    block.text(Point::new(middle.x, below), words::REAR_EDGE, &style, Align::Centre)?;
    let at_left = Point::new(drawn.x0 - gap, middle.y);
    block.turned_text(at_left, -90.0, left, &style, Align::Centre)?;
    let at_right = Point::new(drawn.x1 + gap, middle.y);
    block.turned_text(at_right, 90.0, right, &style, Align::Centre)?;
    Ok(())
}

/// Draws a plain cushion with an arrow to its front, for pictures of how to hold it.
pub(super) fn plain(block: &mut Block, area: Rect) {
    block.path(
        kurbo::Shape::to_path(&area.to_rounded_rect(3.0), 1e-2),
        Some(Fill::solid(PALE)),
        Some(Pen::solid(0.5, INK)),
    );
}
