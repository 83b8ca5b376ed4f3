//! Pictures for carers: a person on the cushion, and what hands do. Chair and wheels are thin and
//! grey, a helper wears the dark sleeve.

use kurbo::{Arc, BezPath, Point, Rect, Shape as _, Vec2};
use words::Language;

use super::super::look::{ACCENT, INK, PALE, SOFT};
use crate::color::Color;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style};

/// A picture, one for each step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Picture {
    /// The cushion on the chair from above, front and top named.
    WayRound,
    /// Two hands pat the cushion.
    Pat,
    /// A person sits right back.
    SitBack,
    /// A hand goes in under the cushion.
    HandUnder,
    /// The hand below the left seat bone, from behind.
    LeftBone,
    /// The hand below the right seat bone.
    RightBone,
    /// The skin in a mirror.
    Mirror,
    /// A mark on the skin, and half an hour.
    Again,
}

impl Picture {
    /// In the order of the steps.
    pub(super) const STEPS: [Self; 8] = [
        Self::WayRound,
        Self::Pat,
        Self::SitBack,
        Self::HandUnder,
        Self::LeftBone,
        Self::RightBone,
        Self::Mirror,
        Self::Again,
    ];
}

/// Height of a picture, in millimetres.
pub(super) const HEIGHT: f64 = 44.0;
/// Its width.
const WIDTH: f64 = 88.0;

const LINE: Pen = Pen::solid(0.5, INK);
const CHAIR: Pen = Pen::solid(1.0, SOFT);
const ARROW: Pen = Pen::solid(1.0, ACCENT);

/// Draws a picture into the middle of an area that is as high; labels have a style.
pub(super) fn draw(
    block: &mut Block,
    language: &dyn Language,
    which: Picture,
    area: Rect,
    label: &Style,
) -> Result<(), SetError> {
    let origin = Point::new(area.center().x - WIDTH / 2.0, area.y0);
    let mut sketch = Sketch { block, origin };
    let shared = language.shared();
    match which {
        Picture::WayRound => {
            sketch.way_round();
            sketch.text(44.0, 6.0, shared.front, label)?;
            sketch.text(44.0, 33.0, shared.top, label)
        }
        Picture::Pat => {
            sketch.pat();
            Ok(())
        }
        Picture::SitBack => {
            sketch.chair_from_side(27.0);
            sketch.cushion(31.0, 22.5, 57.0, 27.0);
            sketch.bar((33.0, 25.8), (55.0, 25.8));
            sketch.person_from_side();
            sketch.arrow((28.0, 14.5), (41.5, 14.5));
            Ok(())
        }
        Picture::HandUnder => {
            sketch.hand_under();
            Ok(())
        }
        Picture::LeftBone => {
            sketch.hand_below(38.0, shared.clients_left_alone, (12.5, 14.0), label)
        }
        Picture::RightBone => {
            sketch.hand_below(50.0, shared.clients_right_alone, (75.5, 14.0), label)
        }
        Picture::Mirror => {
            sketch.mirror();
            Ok(())
        }
        Picture::Again => {
            sketch.hips(60.0);
            let mark = kurbo::Ellipse::new(sketch.at(53.5, 26.0), (3.4, 2.6), 0.3).to_path(1e-2);
            sketch.block.hatch(&mark, 35.0, 0.9, &Pen::solid(0.35, INK));
            sketch.block.path(mark, None, Some(LINE));
            sketch.clock(18.0, 15.0);
            sketch.text(18.0, 38.0, language.take_home().half_an_hour, label)
        }
    }
}

/// A picture being drawn, in its own millimetres.
struct Sketch<'a> {
    block: &'a mut Block,
    origin: Point,
}

impl Sketch<'_> {
    fn at(&self, x: f64, y: f64) -> Point {
        self.origin + Vec2::new(x, y)
    }

    fn text(&mut self, x: f64, y: f64, words: &str, style: &Style) -> Result<(), SetError> {
        let at = self.at(x, y);
        self.block.text(at, words, style, Align::Centre).map(drop)
    }

    fn line(&mut self, from: (f64, f64), to: (f64, f64), pen: &Pen) {
        let (from, to) = (self.at(from.0, from.1), self.at(to.0, to.1));
        self.block.line(from, to, pen);
    }

    fn arrow(&mut self, from: (f64, f64), to: (f64, f64)) {
        let (from, to) = (self.at(from.0, from.1), self.at(to.0, to.1));
        self.block.arrow(from, to, 2.8, &ARROW);
    }

    fn circle(&mut self, x: f64, y: f64, radius: f64, fill: Option<Color>, pen: Pen) {
        let at = self.at(x, y);
        self.block.circle(at, radius, fill.map(Fill::solid), Some(pen));
    }

    fn rounded(&mut self, place: Rect, radius: f64, fill: Option<Color>, pen: Pen) {
        let place = place + self.origin.to_vec2();
        let path = place.to_rounded_rect(radius).to_path(1e-2);
        self.block.path(path, fill.map(Fill::solid), Some(pen));
    }

    /// Parts of a body that belong together: each a bent line, so wide, with one outline.
    fn body(&mut self, limbs: &[(&[(f64, f64)], f64)], fill: Color) {
        const OUTLINE: f64 = 1.0;
        for (less, color) in [(0.0, INK), (OUTLINE, fill)] {
            for (points, width) in limbs {
                let points: Vec<Point> = points.iter().map(|own| self.at(own.0, own.1)).collect();
                self.block.open_path(&points, &Pen::solid(width - less, color));
            }
        }
    }

    /// A closed shape through points, in one line.
    fn filled(&mut self, points: &[(f64, f64)], fill: Color) {
        let points: Vec<Point> = points.iter().map(|own| self.at(own.0, own.1)).collect();
        self.block.polygon(&points, Some(Fill::solid(fill)), Some(LINE));
    }

    /// The cushion, cut: pale and hatched.
    fn cushion(&mut self, x0: f64, y0: f64, x1: f64, y1: f64) {
        let place = Rect::new(x0, y0, x1, y1) + self.origin.to_vec2();
        let path = place.to_rounded_rect(1.2).to_path(1e-2);
        self.block.path(path.clone(), Some(Fill::solid(PALE)), None);
        self.block.hatch(&path, 45.0, 1.3, &Pen::solid(0.2, ACCENT));
        self.block.path(path, None, Some(LINE));
    }

    /// The bar that marks the client's left.
    fn bar(&mut self, from: (f64, f64), to: (f64, f64)) {
        self.line(from, to, &Pen::solid(1.4, ACCENT));
    }

    /// The chair from the client's left, with the seat at a height.
    fn chair_from_side(&mut self, seat: f64) {
        self.circle(53.0, 31.0, 11.5, None, CHAIR);
        self.circle(27.0, 39.0, 3.4, None, CHAIR);
        self.line((29.0, seat), (60.0, seat), &CHAIR);
        self.line((60.0, seat), (62.5, 6.0), &CHAIR);
        self.line((62.5, 6.0), (66.0, 6.0), &CHAIR);
        self.line((29.0, seat), (22.0, 37.5), &CHAIR);
        self.line((22.0, 37.5), (16.0, 37.5), &CHAIR);
    }

    /// A person on a cushion whose top is at 22.5.
    fn person_from_side(&mut self) {
        let leg: &[(f64, f64)] = &[(53.5, 19.5), (33.0, 19.5)];
        let shin: &[(f64, f64)] = &[(32.0, 20.0), (24.5, 33.0)];
        let foot: &[(f64, f64)] = &[(23.5, 35.0), (18.5, 35.4)];
        let trunk: &[(f64, f64)] = &[(54.0, 12.0), (54.0, 18.5)];
        self.body(&[(foot, 3.2), (shin, 4.8), (leg, 6.4), (trunk, 9.0)], Color::WHITE);
        self.body(&[(&[(53.0, 12.0), (48.0, 16.6), (40.0, 16.6)], 2.8)], PALE);
        self.circle(52.5, 4.4, 3.4, Some(Color::WHITE), LINE);
    }

    /// A helper's arm with a flat hand at its end.
    fn helper(&mut self, sleeve: &[(f64, f64)], hand: &[(f64, f64)], width: f64) {
        self.body(&[(hand, width)], Color::WHITE);
        self.body(&[(sleeve, width + 2.4)], ACCENT);
    }

    fn hand_under(&mut self) {
        self.chair_from_side(27.8);
        self.cushion(31.0, 20.5, 57.0, 25.0);
        self.bar((33.0, 23.8), (55.0, 23.8));
        let here = self.origin;
        self.origin = here - Vec2::new(0.0, 2.0);
        let feet = self.origin.y;
        self.origin.y = feet + 1.2;
        self.person_from_side();
        self.origin = here;
        self.circle(52.0, 19.4, 1.2, Some(INK), LINE);
        self.helper(&[(86.0, 34.0), (70.0, 27.6)], &[(69.0, 27.0), (51.0, 26.4)], 2.4);
        self.arrow((78.0, 22.0), (66.0, 22.0));
    }

    /// A person from behind, the hand below the seat bone at `x`; words for the side and where.
    fn hand_below(
        &mut self,
        x: f64,
        side: &str,
        words: (f64, f64),
        label: &Style,
    ) -> Result<(), SetError> {
        for wheel in [21.0, 63.0] {
            self.rounded(Rect::new(wheel, 18.0, wheel + 4.0, 43.5), 1.8, None, CHAIR);
        }
        self.line((26.0, 40.0), (62.0, 40.0), &CHAIR);
        self.cushion(28.0, 28.0, 60.0, 35.5);
        let arms: [&[(f64, f64)]; 2] = [
            &[(35.0, 13.0), (31.0, 19.0), (31.0, 25.0)],
            &[(53.0, 13.0), (57.0, 19.0), (57.0, 25.0)],
        ];
        self.body(&[(arms[0], 3.4), (arms[1], 3.4)], PALE);
        let trunk: [(f64, f64); 9] = [
            (44.0, 9.2),
            (50.0, 9.4),
            (53.6, 12.0),
            (52.2, 19.0),
            (55.2, 28.0),
            (32.8, 28.0),
            (35.8, 19.0),
            (34.4, 12.0),
            (38.0, 9.4),
        ];
        self.filled(&trunk, Color::WHITE);
        self.circle(44.0, 4.6, 3.8, Some(Color::WHITE), LINE);
        for bone in [38.0, 50.0] {
            let mut path = BezPath::new();
            path.move_to(self.at(bone - 2.6, 22.0));
            path.curve_to(
                self.at(bone - 2.4, 31.0),
                self.at(bone + 2.4, 31.0),
                self.at(bone + 2.6, 22.0),
            );
            let pen = if bone == x { Pen::solid(1.1, INK) } else { Pen::solid(0.6, SOFT) };
            self.block.path(path, Some(Fill::solid(Color::WHITE)), Some(pen));
        }
        self.helper(&[(x, 41.0), (x, 40.6)], &[(x, 39.4), (x, 37.8)], 4.2);
        self.thumb_of_cushion(x, 29.2, 35.0);
        self.bar((17.5, 18.0), (17.5, 43.0));
        self.text(words.0, words.1, side, label)
    }

    /// Two points and a block between: a thumb of cushion.
    fn thumb_of_cushion(&mut self, x: f64, top: f64, bottom: f64) {
        let middle = (top + bottom) / 2.0;
        for tip in [top, bottom] {
            let (from, to) = (self.at(x, middle), self.at(x, tip));
            self.block.arrow(from, to, 2.4, &Pen::solid(1.6, ACCENT));
        }
    }

    fn way_round(&mut self) {
        for wheel in [21.0, 63.0] {
            self.rounded(Rect::new(wheel, 15.0, wheel + 4.0, 43.0), 1.8, None, CHAIR);
        }
        self.line((28.0, 41.5), (60.0, 41.5), &Pen::solid(2.0, SOFT));
        self.rounded(Rect::new(29.0, 9.0, 59.0, 38.0), 4.0, Some(PALE), Pen::solid(0.8, INK));
        self.arrow((44.0, 24.0), (44.0, 11.5));
        self.bar((26.9, 19.0), (26.9, 30.0));
    }

    fn pat(&mut self) {
        for wheel in [15.0, 69.0] {
            self.rounded(Rect::new(wheel, 18.0, wheel + 4.0, 43.5), 1.8, None, CHAIR);
        }
        self.line((20.0, 38.0), (68.0, 38.0), &CHAIR);
        self.cushion(22.0, 26.0, 66.0, 37.4);
        // From behind, as the hand goes under.
        self.bar((11.5, 18.0), (11.5, 43.0));
        for side in [-1.0, 1.0] {
            let x = |by: f64| 44.0 + side * by;
            let hand = [(x(13.0), 20.0), (x(9.0), 24.4), (x(3.0), 24.6)];
            self.helper(&[(x(34.0), 3.5), (x(14.0), 19.0)], &hand, 2.8);
            self.arrow((x(5.5), 9.0), (x(5.5), 19.0));
        }
    }

    /// Hips and thighs from behind, with two rings over the seat bones.
    fn hips(&mut self, x: f64) {
        let arms: [&[(f64, f64)]; 2] =
            [&[(x - 11.0, 2.5), (x - 16.5, 16.0)], &[(x + 11.0, 2.5), (x + 16.5, 16.0)]];
        self.body(&[(arms[0], 4.0), (arms[1], 4.0)], Color::WHITE);
        let shirt = [(x - 10.0, 0.5), (x + 10.0, 0.5), (x + 9.6, 13.5), (x - 9.6, 13.5)];
        self.filled(&shirt, Color::WHITE);
        let half = [(9.6, 13.5), (13.4, 20.0), (13.6, 28.0), (11.8, 43.0), (1.2, 43.0)];
        let right = half.iter().map(|own| (x + own.0, own.1));
        let left = half.iter().rev().map(|own| (x - own.0, own.1));
        let trousers: Vec<_> = right.chain([(x, 32.0)]).chain(left).collect();
        self.filled(&trousers, PALE);
        self.line((x, 18.0), (x, 32.0), &LINE);
        self.bar((x - 20.0, 18.0), (x - 20.0, 43.0));
        for side in [-6.5, 6.5] {
            let ring = Pen::dashed(0.7, ACCENT, 1.2, 1.6);
            self.circle(x + side, 26.0, 4.8, None, ring);
        }
    }

    fn mirror(&mut self) {
        self.hips(24.0);
        self.line((36.5, 26.0), (55.0, 19.5), &Pen::dashed(0.5, INK, 1.6, 1.6));
        // A long handle with a hand, a frame, and the rings again in the glass.
        self.line((66.0, 27.0), (78.0, 41.0), &Pen::solid(2.2, INK));
        self.body(&[(&[(80.0, 36.5), (74.0, 38.5)], 3.4)], Color::WHITE);
        self.rounded(
            Rect::new(55.0, 8.0, 76.0, 28.0),
            2.5,
            Some(Color::WHITE),
            Pen::solid(1.4, INK),
        );
        self.rounded(Rect::new(57.0, 10.0, 74.0, 26.0), 1.5, None, Pen::solid(0.3, SOFT));
        for side in [-4.0, 4.0] {
            self.circle(65.5 + side, 18.0, 2.9, None, Pen::dashed(0.6, ACCENT, 0.9, 1.2));
        }
    }

    fn clock(&mut self, x: f64, y: f64) {
        let (centre, radius) = (self.at(x, y), 11.0);
        self.circle(x, y, radius, Some(Color::WHITE), Pen::solid(0.8, INK));
        let inner = radius - 2.0;
        let half = std::f64::consts::FRAC_PI_2;
        let arc = Arc::new(centre, (inner, inner), -half, 2.0 * half, 0.0);
        let mut sector = BezPath::new();
        sector.move_to(centre);
        sector.line_to(centre - Vec2::new(0.0, inner));
        sector.extend(arc.append_iter(1e-2));
        sector.close_path();
        self.block.path(sector, Some(Fill::solid(PALE)), Some(Pen::solid(0.5, INK)));
    }
}
