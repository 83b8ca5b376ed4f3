//! The pelvis from behind, level or lower on one side.

use cushion::{Length, Side};
use kurbo::{Affine, BezPath, Ellipse, Point, Shape as _};
use words::Language;

use super::super::look::{ACCENT, PALE};
use super::WIDTH;
use super::sketch::{LINE, Sketch, mirrored, smooth};
use crate::color::Color;
use crate::page::{Align, Fill, Pen};
use crate::picture::Picture;
use crate::text::SetError;

/// Height of the picture, in millimetres.
const HEIGHT: f64 = 66.0;
/// How far the pelvis is turned in the drawing, in degrees: far enough to be seen at once.
const TURNED: f64 = 10.0;
/// Less than this is level, in millimetres, as for all that is said of it: hands tell no half
/// millimetre.
const LEVEL: f64 = 0.5;

/// The lowest point of the right seat bone from the middle of the pelvis, in millimetres.
const SEAT_BONE: Point = Point::new(9.2, 17.0);
/// The front point of the right side, which the bone hides.
const FRONT_POINT: Point = Point::new(18.0, -8.5);

/// The pelvis from behind, with which side is lower; the turn is the same whatever the
/// measure, which stands beside it.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn pelvis_picture(
    language: &dyn Language,
    lower: Option<Side>,
    by: Option<Length>,
) -> Result<Picture, SetError> {
    let lower = lower.filter(|_| by.is_none_or(|by| by.to_mm() >= LEVEL));
    let by = by.filter(|_| lower.is_some());
    let mut sketch = Sketch::new();
    let turn = match lower {
        None => 0.0,
        Some(Side::Left) => -TURNED,
        Some(Side::Right) => TURNED,
    };
    let place = Affine::translate((WIDTH / 2.0, 29.0))
        * Affine::rotate(turn.to_radians())
        * Affine::scale(1.35);
    sketch.pelvis(place);
    sketch.sides(language, [9.5, WIDTH - 9.5], 29.0, false)?;
    if lower.is_some() {
        let x = WIDTH / 2.0;
        sketch.between_seat_bones(place, x);
        if let Some(by) = by {
            let name = language.lower_by(by);
            sketch.name(Point::new(x, 62.0), 50.0, &name, Align::Centre)?;
        }
    }
    Ok(sketch.finish([WIDTH, HEIGHT], language.pelvis_shows(lower, by)))
}

impl Sketch {
    /// Draws the pelvis, whose middle is at the origin before it is placed.
    pub(super) fn pelvis(&mut self, place: Affine) {
        let wing = smooth(&[
            (4.5, -10.0),
            (9.0, -15.0),
            (14.0, -16.5),
            (18.2, -13.6),
            (18.8, -8.0),
            (16.4, -3.0),
            (13.8, 0.6),
            (14.2, 4.5),
            (12.8, 9.0),
            (12.0, 14.0),
            (9.2, 17.0),
            (6.6, 15.0),
            (6.2, 11.4),
            (3.6, 9.0),
            (0.6, 8.2),
            (0.6, 4.6),
            (4.6, 2.8),
            (7.2, -1.6),
            (6.0, -6.0),
        ]);
        let opening = Ellipse::new((8.6, 6.8), (2.2, 3.0), 0.2).to_path(1e-3);
        let sacrum = smooth(&[
            (-5.4, -11.0),
            (0.0, -12.2),
            (5.4, -11.0),
            (4.2, -4.0),
            (1.4, 2.0),
            (0.0, 6.0),
            (-1.4, 2.0),
            (-4.2, -4.0),
        ]);
        let both = |path: &BezPath| [place * path.clone(), place * mirrored(path)];
        self.silhouette(&both(&wing), PALE);
        for own in both(&opening) {
            self.block.path(own, Some(Fill::solid(Color::WHITE)), Some(LINE));
        }
        self.block.path(place * sacrum, Some(Fill::solid(PALE)), Some(LINE));
        for side in [-1.0, 1.0] {
            let at = |point: Point| place * Point::new(side * point.x, point.y);
            let seat_bone = at(SEAT_BONE - kurbo::Vec2::new(0.0, 1.0));
            self.block.circle(seat_bone, 1.5, Some(Fill::solid(ACCENT)), None);
            let front = Pen::solid(0.7, ACCENT);
            self.block.circle(at(FRONT_POINT), 1.5, Some(Fill::solid(Color::WHITE)), Some(front));
        }
    }

    /// Measures how much lower one seat bone is, at a place across.
    pub(super) fn between_seat_bones(&mut self, place: Affine, x: f64) {
        let [left, right] = seat_bones(place);
        for own in [left, right] {
            let beyond = if own.x < x { 4.0 } else { -4.0 };
            self.guide(Point::new(own.x - beyond, own.y), Point::new(x + beyond, own.y));
        }
        let (upper, lower) = if left.y < right.y { (left, right) } else { (right, left) };
        self.dimension(Point::new(x, upper.y), Point::new(x, lower.y));
    }
}

/// The lowest points of the seat bones, left then right.
pub(super) fn seat_bones(place: Affine) -> [Point; 2] {
    [-1.0, 1.0].map(|side| place * Point::new(side * SEAT_BONE.x, SEAT_BONE.y))
}
