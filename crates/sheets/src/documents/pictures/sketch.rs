//! What pictures of people and chairs are drawn with: rounded limbs, curves through points, strong
//! lines that measure.

use kurbo::{Affine, Arc, BezPath, Point, Rect, Shape as _, Vec2};
use words::Language;

use super::super::look::{ACCENT, INK, PALE, SOFT, text};
use super::super::views::BAR;
use crate::color::Color;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::picture::{Part, Picture, blank};
use crate::text::{SetError, Style, wrap};

/// An outline.
pub(super) const LINE: Pen = Pen::solid(0.6, INK);
/// What only helps to see: chairs, the far side.
pub(super) const LESS: Pen = Pen::solid(0.9, SOFT);
/// A line that measures.
const STRONG: Pen = Pen::solid(1.1, ACCENT);
/// The length of the head of an arrow, in millimetres.
const HEAD: f64 = 2.6;
/// The name of what is measured.
pub(super) const NAME: Style = text(11.5, Weight::Bold, ACCENT);
/// The client's sides, and the front.
pub(super) const SIDE: Style = text(9.5, Weight::Bold, INK);

/// A picture being drawn, in its own millimetres.
pub(super) struct Sketch {
    pub(super) block: Block,
}

impl Sketch {
    pub(super) const fn new() -> Self {
        Self { block: blank() }
    }

    /// The finished picture.
    pub(super) fn finish(self, size: [f64; 2], alt: impl Into<String>) -> Picture {
        let parts = vec![Part::of(None, self.block)];
        Picture { width: size[0], height: size[1], alt: alt.into(), parts }
    }

    /// Shapes that belong together, with one outline around all of them.
    pub(super) fn silhouette(&mut self, shapes: &[BezPath], fill: Color) {
        for shape in shapes {
            // Half of the line lies outside.
            let pen = Pen::solid(2.0 * LINE.width, INK);
            self.block.path(shape.clone(), Some(Fill::solid(INK)), Some(pen));
        }
        for shape in shapes {
            self.block.path(shape.clone(), Some(Fill::solid(fill)), None);
        }
    }

    /// A box with rounded corners.
    pub(super) fn rounded(&mut self, place: Rect, fill: Option<Color>, pen: Pen) {
        let path = place.to_rounded_rect(0.8).to_path(1e-2);
        self.block.path(path, fill.map(Fill::solid), Some(pen));
    }

    /// A point on the body by which one measures.
    pub(super) fn landmark(&mut self, at: Point) {
        self.block.circle(at, 1.1, Some(Fill::solid(INK)), None);
    }

    /// A thin broken line, from what is measured to the line that measures.
    pub(super) fn guide(&mut self, from: Point, to: Point) {
        self.block.line(from, to, &Pen::dashed(0.4, INK, 1.2, 1.2));
    }

    /// A line that measures, with a head at both ends; heads of a short one come from outside.
    pub(super) fn dimension(&mut self, from: Point, to: Point) {
        const SHORT: f64 = 3.0 * HEAD;
        let way = (to - from).normalize();
        if from.distance(to) > SHORT {
            let middle = from.midpoint(to);
            self.block.arrow(middle, from, HEAD, &STRONG);
            self.block.arrow(middle, to, HEAD, &STRONG);
        } else {
            let out = way * (2.4 * HEAD);
            self.block.arrow(from - out, from, HEAD, &STRONG);
            self.block.arrow(to + out, to, HEAD, &STRONG);
        }
    }

    /// An angle around a point that is measured, from one direction to another, in degrees
    /// clockwise on the page from the x axis.
    pub(super) fn angle(&mut self, middle: Point, radius: f64, [from, to]: [f64; 2]) {
        let head = (HEAD / radius).to_degrees() * (to - from).signum();
        let sweep = (to - head - from).to_radians();
        let arc = Arc::new(middle, (radius, radius), from.to_radians(), sweep, 0.0);
        let mut path = BezPath::new();
        path.move_to(middle + Vec2::from_angle(from.to_radians()) * radius);
        path.extend(arc.append_iter(1e-3));
        self.block.curved_arrow(&path, HEAD, &STRONG);
    }

    /// The name of what is measured, in lines as wide as there is room, around a height.
    pub(super) fn name(
        &mut self,
        at: Point,
        width: f64,
        name: &str,
        align: Align,
    ) -> Result<(), SetError> {
        let height = wrap(name, &NAME, width)?.len() as f64 * NAME.line_height();
        let left = at.x - align.shift(width);
        let top = Point::new(left, at.y - height / 2.0);
        self.block.paragraph(top, width, name, &NAME, align).map(drop)
    }

    /// The bar at the client's left and both sides in words, around a drawing from one place to
    /// another across, in the middle at a height. Seen from the front, the client's left is on the
    /// right.
    pub(super) fn sides(
        &mut self,
        language: &dyn Language,
        [from, to]: [f64; 2],
        y: f64,
        from_front: bool,
    ) -> Result<(), SetError> {
        const LONG: f64 = 22.0;
        let shared = language.shared();
        let mut sides = [shared.clients_left_short, shared.clients_right_short];
        let bar = if from_front { to + 2.0 } else { from - 2.0 };
        if from_front {
            sides.reverse();
        }
        let [top, end] = [y - LONG / 2.0, y + LONG / 2.0].map(|y| Point::new(bar, y));
        self.block.line(top, end, &Pen::solid(BAR, ACCENT));
        // Words keep clear of the bar, on both sides alike.
        let [left, right] = [from - 4.0, to + 4.0].map(|x| Point::new(x, y));
        self.block.turned_text(left, -90.0, sides[0], &SIDE, Align::Centre)?;
        self.block.turned_text(right, 90.0, sides[1], &SIDE, Align::Centre)?;
        Ok(())
    }

    /// The cushion, cut: pale and hatched.
    pub(super) fn cushion(&mut self, path: &BezPath) {
        self.block.path(path.clone(), Some(Fill::solid(PALE)), None);
        self.block.hatch(path, 45.0, 1.8, &Pen::solid(0.25, ACCENT));
        self.block.path(path.clone(), None, Some(LINE));
    }
}

/// A limb: two circles and what lies between them.
pub(super) fn limb(from: (f64, f64), wide: f64, to: (f64, f64), narrow: f64) -> BezPath {
    let (from, to) = (Point::from(from), Point::from(to));
    let way = to - from;
    let along = way.angle();
    // Where the common tangents touch.
    let lean = ((wide - narrow) / way.hypot()).clamp(-1.0, 1.0).acos();
    let round = std::f64::consts::TAU;
    let mut path = BezPath::new();
    path.move_to(from + Vec2::from_angle(along + lean) * wide);
    let back = Arc::new(from, (wide, wide), along + lean, round - 2.0 * lean, 0.0);
    path.extend(back.append_iter(1e-3));
    path.line_to(to + Vec2::from_angle(along - lean) * narrow);
    let end = Arc::new(to, (narrow, narrow), along - lean, 2.0 * lean, 0.0);
    path.extend(end.append_iter(1e-3));
    path.close_path();
    path
}

/// A closed curve through points.
pub(super) fn smooth(points: &[(f64, f64)]) -> BezPath {
    let all: Vec<Point> = points.iter().map(|own| Point::from(*own)).collect();
    let at = |place: usize| all[place % all.len()];
    let mut path = BezPath::new();
    path.move_to(at(0));
    for place in 0..all.len() {
        let (before, from) = (at(place + all.len() - 1), at(place));
        let (to, after) = (at(place + 1), at(place + 2));
        path.curve_to(from + (to - before) / 6.0, to - (after - from) / 6.0, to);
    }
    path.close_path();
    path
}

/// The same outline on the other side of x = 0.
pub(super) fn mirrored(path: &BezPath) -> BezPath {
    Affine::new([-1.0, 0.0, 0.0, 1.0, 0.0, 0.0]) * path.clone()
}
