//! Plane curves: straight pieces, true arcs and cubics, and chains of them.

use std::f64::consts::TAU;

use kurbo::{
    BezPath, CubicBez, Line, ParamCurve, ParamCurveArclen, ParamCurveDeriv, PathEl, Point, Vec2,
};

use crate::vector::{direction, length};

/// Accuracy of the length of a cubic, in millimetres: far below what a seam can be sewn to.
const LENGTH_ACCURACY: f64 = 1e-7;
/// No piece is cut shorter than this, in millimetres: what rounding leaves over is no piece.
const SHORTEST: f64 = 1e-6;

/// An arc that stands off by less is drawn straight, in millimetres: nobody can sew it, and the
/// centre would be so far away that areas lose their last digits.
const FLATTEST: f64 = 1e-3;

/// One piece of a curve, in millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Piece {
    /// Straight from one point to another.
    Line(Point, Point),
    /// A true arc.
    Arc {
        /// Its centre.
        center: Point,
        /// Its radius.
        radius: f64,
        /// Angle of its beginning, from the x axis towards y.
        start: f64,
        /// Angle that it goes through; counter-clockwise where positive.
        sweep: f64,
    },
    /// A cubic Bézier curve.
    Cubic(CubicBez),
}

impl Piece {
    /// Returns the arc from `from` to `to` whose middle stands `height` off the straight way, to
    /// the left hand where positive; a line where that is less than a micrometre.
    #[must_use]
    pub fn bow(from: Point, to: Point, height: f64) -> Self {
        let chord = to - from;
        if height.abs() < FLATTEST {
            return Self::Line(from, to);
        }
        let half = length(chord) / 2.0;
        // Signed distance from the centre to the chord's middle, along the left-hand normal.
        let radius = (half * half + height * height) / (2.0 * height);
        let left = Vec2::new(-chord.y, chord.x) / length(chord);
        let center = from.midpoint(to) + left * (height - radius);
        let start = direction(from - center);
        // A bow to the left hand turns clockwise.
        let sweep = -4.0 * libm::atan(height / half);
        Self::Arc { center, radius: radius.abs(), start, sweep }
    }

    /// Where it begins.
    #[must_use]
    pub fn start(&self) -> Point {
        self.eval(0.0)
    }

    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> Point {
        self.eval(1.0)
    }

    /// Returns the point at `t` in `0..=1`; `t` goes with the length on lines and arcs.
    #[must_use]
    pub fn eval(&self, t: f64) -> Point {
        match *self {
            Self::Line(from, to) => from.lerp(to, t),
            Self::Arc { center, radius, start, sweep } => {
                center + Vec2::from_angle(start + sweep * t) * radius
            }
            Self::Cubic(cubic) => cubic.eval(t),
        }
    }

    /// Returns the direction at `t`, of length 1.
    #[must_use]
    pub fn direction(&self, t: f64) -> Vec2 {
        let along = match *self {
            Self::Line(from, to) => to - from,
            Self::Arc { start, sweep, .. } => {
                let ray = Vec2::from_angle(start + sweep * t);
                Vec2::new(-ray.y, ray.x) * sweep.signum()
            }
            Self::Cubic(cubic) => cubic.deriv().eval(t).to_vec2(),
        };
        along / length(along)
    }

    /// Returns the same course the other way round.
    #[must_use]
    pub fn reversed(&self) -> Self {
        match *self {
            Self::Line(from, to) => Self::Line(to, from),
            Self::Arc { center, radius, start, sweep } => {
                Self::Arc { center, radius, start: start + sweep, sweep: -sweep }
            }
            Self::Cubic(c) => Self::Cubic(CubicBez::new(c.p3, c.p2, c.p1, c.p0)),
        }
    }

    /// Returns the mirror image in the centre line, x = 0.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        let flip = |point: Point| Point::new(-point.x, point.y);
        match *self {
            Self::Line(from, to) => Self::Line(flip(from), flip(to)),
            Self::Arc { center, radius, start, sweep } => {
                Self::Arc { center: flip(center), radius, start: TAU / 2.0 - start, sweep: -sweep }
            }
            Self::Cubic(c) => {
                Self::Cubic(CubicBez::new(flip(c.p0), flip(c.p1), flip(c.p2), flip(c.p3)))
            }
        }
    }

    /// Returns the length.
    #[must_use]
    pub fn length(&self) -> f64 {
        match *self {
            Self::Line(from, to) => from.distance(to),
            Self::Arc { radius, sweep, .. } => radius * sweep.abs(),
            Self::Cubic(cubic) => cubic.arclen(LENGTH_ACCURACY),
        }
    }

    /// Returns the parameter at `length` from the start.
    fn parameter_at(&self, length: f64) -> f64 {
        match self {
            Self::Line(..) | Self::Arc { .. } => (length / self.length()).clamp(0.0, 1.0),
            Self::Cubic(cubic) => cubic.inv_arclen(length, LENGTH_ACCURACY),
        }
    }

    /// Returns `t`, or the end that it is nearer to than [`SHORTEST`].
    fn held_off_ends(&self, t: f64) -> f64 {
        let short = SHORTEST / self.length();
        if t < short {
            0.0
        } else if t > 1.0 - short {
            1.0
        } else {
            t
        }
    }

    /// Returns the part between two parameters.
    fn part(&self, from: f64, to: f64) -> Self {
        match *self {
            Self::Line(a, b) => Self::Line(a.lerp(b, from), a.lerp(b, to)),
            Self::Arc { center, radius, start, sweep } => Self::Arc {
                center,
                radius,
                start: start + sweep * from,
                sweep: sweep * (to - from),
            },
            Self::Cubic(cubic) => Self::Cubic(cubic.subsegment(from..to)),
        }
    }

    /// Returns the area swept from the origin, positive counter-clockwise: the sum over a closed
    /// way is the area inside, exactly.
    #[must_use]
    pub fn swept_area(&self) -> f64 {
        match *self {
            Self::Line(from, to) => from.to_vec2().cross(to.to_vec2()) / 2.0,
            Self::Arc { center, radius, sweep, .. } => {
                let chord = self.end() - self.start();
                (radius * radius * sweep + center.to_vec2().cross(chord)) / 2.0
            }
            Self::Cubic(_) => {
                self.integrate(|point, velocity| point.to_vec2().cross(velocity) / 2.0)
            }
        }
    }

    /// Returns the first moment of the area swept: the sum over a closed way, over the area, is
    /// the centroid, exactly.
    #[must_use]
    pub fn swept_moment(&self) -> Vec2 {
        // Green's theorem: the triangle from the origin to a short step has its centroid at two
        // thirds of the way.
        Vec2::new(
            self.integrate(|point, velocity| point.to_vec2().cross(velocity) * point.x / 3.0),
            self.integrate(|point, velocity| point.to_vec2().cross(velocity) * point.y / 3.0),
        )
    }

    /// Integrates over the parameter, by Gauss's rule with eight points on each of `parts`.
    ///
    /// Exact for lines and cubics, whose integrands here are of degree 8 at most; on arcs the
    /// parts are so short that the error is below 1e-15 of the value.
    fn integrate(&self, integrand: impl Fn(Point, Vec2) -> f64) -> f64 {
        let parts = match self {
            Self::Arc { sweep, .. } => (sweep.abs() / 0.8).ceil().max(1.0) as usize,
            Self::Line(..) | Self::Cubic(_) => 1,
        };
        let width = 1.0 / parts as f64;
        let mut sum = 0.0;
        for part in 0..parts {
            for &(weight, node) in kurbo::common::GAUSS_LEGENDRE_COEFFS_8 {
                let t = (part as f64 + (node + 1.0) / 2.0) * width;
                sum += weight * width / 2.0 * integrand(self.eval(t), self.velocity(t));
            }
        }
        sum
    }

    /// Returns the derivative by the parameter.
    fn velocity(&self, t: f64) -> Vec2 {
        match *self {
            Self::Line(from, to) => to - from,
            Self::Arc { radius, start, sweep, .. } => {
                let ray = Vec2::from_angle(start + sweep * t);
                Vec2::new(-ray.y, ray.x) * (radius * sweep)
            }
            Self::Cubic(cubic) => cubic.deriv().eval(t).to_vec2(),
        }
    }

    /// Appends points so that the straight ways between them stay within `tolerance`; the end
    /// included, the start not.
    fn flatten_into(&self, tolerance: f64, points: &mut Vec<Point>) {
        let steps = match *self {
            Self::Line(..) => 1.0,
            Self::Arc { radius, sweep, .. } => {
                let step = 2.0 * libm::acos(1.0 - tolerance / radius.max(tolerance));
                (sweep.abs() / step).ceil()
            }
            // The error of n equal steps is at most |B''| / (8 n^2), and |B''| at most this.
            Self::Cubic(c) => {
                let first = length(c.p0.to_vec2() - 2.0 * c.p1.to_vec2() + c.p2.to_vec2());
                let last = length(c.p1.to_vec2() - 2.0 * c.p2.to_vec2() + c.p3.to_vec2());
                (6.0 * first.max(last) / (8.0 * tolerance)).sqrt().ceil()
            }
        }
        .max(1.0) as usize;
        points.extend((1..=steps).map(|step| self.eval(step as f64 / steps as f64)));
    }

    /// Returns the piece as path elements, without the move to its start; arcs become cubics
    /// that stay within a micrometre.
    fn path_elements(&self) -> Vec<PathEl> {
        match *self {
            Self::Line(_, to) => vec![PathEl::LineTo(to)],
            Self::Arc { center, radius, start, sweep } => {
                kurbo::Arc::new(center, (radius, radius), start, sweep, 0.0)
                    .append_iter(1e-3)
                    .collect()
            }
            Self::Cubic(c) => vec![PathEl::CurveTo(c.p1, c.p2, c.p3)],
        }
    }
}

impl From<Line> for Piece {
    fn from(line: Line) -> Self {
        Self::Line(line.p0, line.p1)
    }
}

/// Pieces joined end to start; at least one.
#[derive(Clone, Debug, PartialEq)]
pub struct Chain(Vec<Piece>);

impl Chain {
    /// Joins pieces, each of which begins where the one before ends.
    ///
    /// # Panics
    ///
    /// Panics if there is no piece.
    #[must_use]
    #[track_caller]
    pub fn new(pieces: Vec<Piece>) -> Self {
        assert!(!pieces.is_empty(), "a chain has at least one piece");
        Self(pieces)
    }

    /// The pieces.
    #[must_use]
    pub fn pieces(&self) -> &[Piece] {
        &self.0
    }

    /// The pieces, given away.
    #[must_use]
    pub fn into_pieces(self) -> Vec<Piece> {
        self.0
    }

    /// Where it begins.
    #[must_use]
    pub fn start(&self) -> Point {
        self.0[0].start()
    }

    /// Where it ends.
    #[must_use]
    pub fn end(&self) -> Point {
        self.0[self.0.len() - 1].end()
    }

    /// Returns the length in millimetres.
    #[must_use]
    pub fn length(&self) -> f64 {
        self.0.iter().map(Piece::length).sum()
    }

    /// Returns the same course the other way round.
    #[must_use]
    pub fn reversed(&self) -> Self {
        Self(self.0.iter().rev().map(Piece::reversed).collect())
    }

    /// Returns the mirror image in the centre line.
    #[must_use]
    pub fn mirrored(&self) -> Self {
        Self(self.0.iter().map(Piece::mirrored).collect())
    }

    /// Returns the chain that goes on with `next`.
    #[must_use]
    pub fn joined(mut self, next: Self) -> Self {
        self.0.extend(next.0);
        self
    }

    /// Returns the point at `length` millimetres from the start, held within the ends.
    #[must_use]
    pub fn point_at(&self, length: f64) -> Point {
        let (piece, t) = self.locate(length);
        self.0[piece].eval(t)
    }

    /// Returns the parts before and after `length` millimetres, which lies inside.
    #[must_use]
    pub fn split_at(&self, length: f64) -> (Self, Self) {
        let (piece, t) = self.locate(length);
        let t = self.0[piece].held_off_ends(t);
        let mut before = self.0[..piece].to_vec();
        let mut after = Vec::new();
        if t > 0.0 {
            before.push(self.0[piece].part(0.0, t));
        }
        if t < 1.0 {
            after.push(self.0[piece].part(t, 1.0));
        }
        after.extend_from_slice(&self.0[piece + 1..]);
        (Self::new(before), Self::new(after))
    }

    /// Returns `parts + 1` points at equal lengths along it, both ends included.
    #[must_use]
    pub fn divide(&self, parts: usize) -> Vec<Point> {
        let length = self.length();
        let inner = (1..parts).map(|part| self.point_at(length * part as f64 / parts as f64));
        std::iter::once(self.start()).chain(inner).chain([self.end()]).collect()
    }

    /// Returns points, both ends included, so that the straight ways between them stay within
    /// `tolerance` millimetres of the chain.
    #[must_use]
    pub fn flatten(&self, tolerance: f64) -> Vec<Point> {
        let mut points = vec![self.start()];
        for piece in &self.0 {
            piece.flatten_into(tolerance, &mut points);
        }
        points
    }

    /// Returns it as a path, for drawing.
    #[must_use]
    pub fn to_path(&self) -> BezPath {
        let elements = self.0.iter().flat_map(Piece::path_elements);
        std::iter::once(PathEl::MoveTo(self.start())).chain(elements).collect()
    }

    /// Finds the piece, and the parameter on it, at `length` from the start.
    fn locate(&self, length: f64) -> (usize, f64) {
        let mut left = length.max(0.0);
        for (place, piece) in self.0.iter().enumerate() {
            let own = piece.length();
            if left <= own {
                return (place, piece.parameter_at(left));
            }
            left -= own;
        }
        (self.0.len() - 1, 1.0)
    }
}
