//! How a chair is measured, and a compartment: pictures without a person.

use kurbo::{Affine, BezPath, Point, Rect, Shape as _};
use words::Language;

use super::super::look::{INK, PALE, SOFT};
use super::WIDTH;
use super::sketch::{LESS, Sketch};
use crate::color::Color;
use crate::page::{Align, Fill, Pen};
use crate::text::SetError;

/// A point of a picture.
const fn p(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

const MIDDLE: f64 = WIDTH / 2.0;
/// The front of the back support, and the front edge of the seat; its top, in millimetres.
const BACK: f64 = 22.0;
const FRONT: f64 = 60.0;
const SEAT: f64 = 38.0;
/// The hub of the wheel.
const HUB: Point = Point::new(28.0, 47.0);
/// What a chair's tubes and boards are drawn with.
const FRAME: Pen = Pen::solid(0.7, INK);

/// A chair from the front.
impl Sketch {
    pub(super) fn chair_width(
        &mut self,
        language: &dyn Language,
        name: &str,
    ) -> Result<(), SetError> {
        for wheel in [13.6, WIDTH - 13.6] {
            self.rounded(Rect::new(wheel - 1.8, 22.0, wheel + 1.8, 58.0), None, LESS);
        }
        self.rounded(Rect::new(22.0, 5.0, 62.0, 37.0), None, LESS);
        self.rounded(Rect::new(17.4, 40.0, WIDTH - 17.4, 44.0), Some(PALE), FRAME);
        for side in [-1.0, 1.0] {
            let at = |x: f64| MIDDLE + side * x;
            let panel = Rect::from_points(p(at(21.0), 23.0), p(at(24.0), 40.0));
            self.rounded(panel, Some(PALE), FRAME);
            let rest = Rect::from_points(p(at(20.0), 20.0), p(at(25.0), 23.0));
            self.rounded(rest, Some(Color::WHITE), FRAME);
            self.block.line(p(at(17.0), 44.6), p(at(17.0), 56.0), &LESS);
            self.block.line(p(at(17.0), 56.0), p(at(6.0), 56.0), &LESS);
        }
        self.dimension(p(MIDDLE - 21.0, 31.0), p(MIDDLE + 21.0, 31.0));
        self.name(p(MIDDLE, 26.0), 38.0, name, Align::Centre)?;
        self.sides(language, [9.5, WIDTH - 9.5], 38.0, true)
    }

    pub(super) fn sling_sag(
        &mut self,
        language: &dyn Language,
        name: &str,
    ) -> Result<(), SetError> {
        const SAG: f64 = 15.0;
        let (rail, top) = (24.0, 22.0);
        let at = |side: f64, x: f64| MIDDLE + side * x;
        let mut sling = BezPath::new();
        sling.move_to(p(at(-1.0, rail), top));
        sling.curve_to(
            p(at(-1.0, 0.55 * rail), top + SAG),
            p(at(-1.0, 0.4 * rail), top + SAG),
            p(MIDDLE, top + SAG),
        );
        sling.curve_to(
            p(at(1.0, 0.4 * rail), top + SAG),
            p(at(1.0, 0.55 * rail), top + SAG),
            p(at(1.0, rail), top),
        );
        self.block.path(sling, None, Some(Pen::solid(1.3, INK)));
        for side in [-1.0, 1.0] {
            let x = at(side, rail + 0.5);
            self.block.line(p(x, top + 3.0), p(x, 58.0), &LESS);
            let (fill, middle) = (Some(Fill::solid(Color::WHITE)), p(x, top + 2.9));
            self.block.circle(middle, 2.9, fill, Some(FRAME));
        }
        let edge = Rect::new(at(-1.0, rail + 6.0), top - 3.6, at(1.0, rail + 6.0), top - 0.7);
        self.rounded(edge, Some(PALE), FRAME);
        self.dimension(p(MIDDLE, top - 0.3), p(MIDDLE, top + SAG - 0.7));
        self.name(p(MIDDLE, 45.0), 50.0, name, Align::Centre)?;
        self.sides(language, [9.0, WIDTH - 9.0], 40.0, true)
    }
}

/// A chair from the side, its front to the right.
impl Sketch {
    fn chair(&mut self, place: Affine, with_footrest: bool) {
        self.block.circle(HUB, 12.0, None, Some(LESS));
        self.block.circle(HUB, 1.2, None, Some(LESS));
        self.block.circle(p(56.0, 54.6), 4.4, None, Some(LESS));
        // What carries the seat stays level.
        let base = [HUB, p(54.0, HUB.y), p(56.0, 54.6)];
        self.block.open_path(&base, &Pen::solid(1.1, SOFT));
        let tube = |own: &mut Self, points: &[Point]| {
            let points: Vec<Point> = points.iter().map(|point| place * *point).collect();
            own.block.open_path(&points, &Pen::solid(1.1, SOFT));
        };
        tube(self, &[p(BACK - 1.8, 7.0), p(14.5, 7.0)]);
        let boards = [
            Rect::new(BACK - 3.4, 6.0, BACK, SEAT + 3.0),
            Rect::new(BACK, SEAT, FRONT, SEAT + 3.0),
        ];
        for board in boards {
            let path = place * board.to_rounded_rect(0.8).to_path(1e-2);
            self.block.path(path, Some(Fill::solid(PALE)), Some(FRAME));
        }
        if with_footrest {
            tube(self, &[p(FRONT - 1.0, SEAT + 3.4), p(68.0, 56.4)]);
            let plate = Rect::new(66.0, 56.0, 79.0, 58.0);
            let path = place * plate.to_rounded_rect(0.6).to_path(1e-2);
            self.block.path(path, Some(Fill::solid(PALE)), Some(FRAME));
        }
    }

    pub(super) fn chair_depth(&mut self, name: &str) -> Result<(), SetError> {
        self.chair(Affine::IDENTITY, true);
        let y = SEAT - 6.0;
        self.guide(p(FRONT, SEAT), p(FRONT, y - 2.0));
        self.dimension(p(BACK, y), p(FRONT, y));
        self.name(p(f64::midpoint(BACK, FRONT), y - 5.0), 36.0, name, Align::Centre)
    }

    pub(super) fn footrest(&mut self, name: &str) -> Result<(), SetError> {
        self.chair(Affine::IDENTITY, true);
        let x = 74.0;
        self.guide(p(FRONT, SEAT), p(x + 2.0, SEAT));
        self.dimension(p(x, SEAT), p(x, 56.0));
        self.name(p(WIDTH - 1.0, SEAT - 6.0), 56.0, name, Align::Right)
    }

    pub(super) fn chair_tilt(&mut self, name: &str) -> Result<(), SetError> {
        const TURN: f64 = 13.0;
        let turn = Affine::rotate(-TURN.to_radians());
        let place = Affine::translate(HUB.to_vec2()) * turn * Affine::translate(-HUB.to_vec2());
        self.chair(place, false);
        let corner = place * p(BACK, SEAT);
        self.guide(corner, corner + kurbo::Vec2::new(54.0, 0.0));
        let along = (place * p(FRONT, SEAT) - corner).normalize();
        self.guide(corner, corner + along * 54.0);
        self.angle(corner, 49.0, [0.0, -TURN]);
        self.name(p(WIDTH - 2.0, 18.0), 56.0, name, Align::Right)
    }
}

/// A compartment, cut.
impl Sketch {
    pub(super) fn crown(&mut self, name: &str) -> Result<(), SetError> {
        const CROWN: f64 = 13.0;
        let (wall, top, base) = (22.0, 32.0, 54.0);
        let at = |x: f64| MIDDLE + x;
        let bulge = |from: f64, to: f64, high: f64, left: f64, right: f64| {
            let mut path = BezPath::new();
            path.move_to(p(from, base));
            path.line_to(p(from, left));
            let third = (to - from) / 3.2;
            // A cubic stands three quarters as high as its handles.
            let handle = |y: f64| y - high * 4.0 / 3.0;
            path.curve_to(
                p(from + third, handle(left)),
                p(to - third, handle(right)),
                p(to, right),
            );
            path.line_to(p(to, base));
            path.close_path();
            path
        };
        self.cushion(&bulge(4.0, at(-wall), 3.0, top, top));
        self.cushion(&bulge(at(wall), WIDTH - 4.0, 3.0, top, top));
        self.cushion(&bulge(at(-wall), at(wall), CROWN, top, top));
        for side in [-wall, wall] {
            self.block.line(p(at(side), base), p(at(side), top), &Pen::solid(1.0, INK));
        }
        self.block.line(p(2.0, base), p(WIDTH - 2.0, base), &Pen::solid(1.0, INK));
        self.guide(p(at(-wall - 5.0), top), p(at(wall + 5.0), top));
        self.guide(p(MIDDLE - 6.0, top - CROWN), p(MIDDLE + 6.0, top - CROWN));
        self.dimension(p(MIDDLE, top - CROWN), p(MIDDLE, top));
        self.name(p(MIDDLE, 12.0), 40.0, name, Align::Centre)
    }
}
