//! Draws the pieces of a template, whole or as far as they lie in a window.

use cushion::Chain;
use kurbo::{Affine, BezPath, Point, Rect};
use templates::{Drawn, Label, Layer, Piece};
use words::Language;

use super::super::look::{ACCENT, INK, SOFT, text};
use super::template_says;
use crate::font::Weight;
use crate::page::{Align, Block, Page, Pen, Role};
use crate::text::{SetError, Style, measure};

/// Straight ways stand for curves within this where they are cut by a window, in millimetres.
const FLAT: f64 = 0.01;

/// How a line looks: never by its colour alone.
pub(super) fn pen(layer: Layer) -> Pen {
    match layer {
        Layer::Cut => Pen::solid(0.5, INK),
        Layer::Stitch => Pen::dashed(0.3, INK, 3.0, 1.6),
        Layer::Notch => Pen::solid(0.5, INK),
        Layer::Opening => Pen::dashed(0.8, ACCENT, 6.0, 2.0),
        Layer::Grain => Pen::solid(0.25, SOFT),
        Layer::Left => Pen::solid(1.6, ACCENT),
    }
}

/// Where the sheet of a template lies on a page.
#[derive(Clone, Copy)]
pub(super) struct Window {
    /// From the sheet to the page.
    pub(super) place: Affine,
    /// The part of the page in which it is seen; all of it where none is given.
    pub(super) seen: Option<Rect>,
}

impl Window {
    /// The course of a line on the page, as far as it is seen.
    fn path(&self, chain: &Chain) -> BezPath {
        match self.seen {
            None => self.place * chain.to_path(),
            Some(seen) => within(&chain.flatten(FLAT), self.place, seen),
        }
    }

    /// Whether any of a piece's lines is seen.
    pub(super) fn shows(&self, piece: &Piece) -> bool {
        piece.lines.iter().any(|line| !self.path(&line.chain).elements().is_empty())
    }
}

/// Draws a piece: a block for each kind of line, and one for what is said.
pub(super) fn draw_piece(
    page: &mut Page,
    language: &dyn Language,
    piece: &Piece,
    window: Window,
) -> Result<(), SetError> {
    let id = piece.kind.id();
    for layer in Layer::ALL {
        let lines: Vec<&Drawn> = piece.lines.iter().filter(|own| own.layer == layer).collect();
        let paths: Vec<BezPath> = lines.iter().map(|own| window.path(&own.chain)).collect();
        if paths.iter().all(|path| path.elements().is_empty()) {
            continue;
        }
        let role = match layer {
            Layer::Cut => Role::Figure { alt: language.template_piece_shows(&id) },
            _ => Role::Artifact,
        };
        let block = page.block_called(format!("{id}-{}", layer.id()), role);
        for path in paths.into_iter().filter(|path| !path.elements().is_empty()) {
            block.path(path, None, Some(pen(layer)));
        }
    }
    let block = page.block_called(format!("{id}-words"), Role::Paragraph);
    let before = block.marks.len();
    for label in &piece.labels {
        set(block, language, label, window)?;
    }
    if block.marks.len() == before {
        page.blocks.pop();
    }
    Ok(())
}

/// Sets a label where all of it is seen.
fn set(
    block: &mut Block,
    language: &dyn Language,
    label: &Label,
    window: Window,
) -> Result<(), SetError> {
    let style = of_height(label.height);
    let words = template_says(language, &label.says);
    let at = window.place * label.at;
    if let Some(seen) = window.seen {
        let reach = measure(&words, &style)? / 2.0;
        let (sin, cos) = label.angle.to_radians().sin_cos();
        let along = kurbo::Vec2::new(cos, -sin) * reach;
        let around = Rect::from_points(at - along, at + along).inflate(label.height, label.height);
        if !seen.contains_rect(around) {
            return Ok(());
        }
    }
    block.turned_text(at, -label.angle, &words, &style, Align::Centre)?;
    Ok(())
}

/// Print whose capitals are so high, in millimetres.
fn of_height(height: f64) -> Style {
    let one = text(10.0, Weight::Bold, INK);
    Style { size_pt: 10.0 * height / one.cap_height(), ..one }
}

/// The parts of a way that lie in a rectangle of the page.
fn within(points: &[Point], place: Affine, seen: Rect) -> BezPath {
    let mut path = BezPath::new();
    let mut last: Option<Point> = None;
    for pair in points.windows(2) {
        let (a, b) = (place * pair[0], place * pair[1]);
        let Some((from, to)) = cut(a, b, seen) else {
            last = None;
            continue;
        };
        if last.is_none_or(|last| last.distance(from) > 1e-9) {
            path.move_to(from);
        }
        path.line_to(to);
        last = Some(to);
    }
    path
}

/// The part of a straight way in a rectangle (Liang and Barsky, ACM Transactions on Graphics 3, 1
/// (1984)).
fn cut(a: Point, b: Point, seen: Rect) -> Option<(Point, Point)> {
    let way = b - a;
    let (mut enters, mut leaves) = (0.0f64, 1.0f64);
    let edges = [
        (-way.x, a.x - seen.x0),
        (way.x, seen.x1 - a.x),
        (-way.y, a.y - seen.y0),
        (way.y, seen.y1 - a.y),
    ];
    for (towards, room) in edges {
        if towards == 0.0 {
            if room < 0.0 {
                return None;
            }
        } else if towards < 0.0 {
            enters = enters.max(room / towards);
        } else {
            leaves = leaves.min(room / towards);
        }
    }
    (enters < leaves).then(|| (a + way * enters, a + way * leaves))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_way_is_cut_at_the_window() {
        let seen = Rect::new(0.0, 0.0, 10.0, 10.0);
        let at = |x, y| Point::new(x, y);
        assert_eq!(cut(at(-5.0, 5.0), at(15.0, 5.0), seen), Some((at(0.0, 5.0), at(10.0, 5.0))));
        assert_eq!(cut(at(-5.0, 0.0), at(5.0, 10.0), seen), Some((at(0.0, 5.0), at(5.0, 10.0))));
        assert_eq!(cut(at(-5.0, 11.0), at(15.0, 11.0), seen), None);
        assert_eq!(cut(at(2.0, 3.0), at(4.0, 5.0), seen), Some((at(2.0, 3.0), at(4.0, 5.0))));
    }
}
