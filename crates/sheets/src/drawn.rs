//! Small signs drawn as paths: check boxes, ticks, crosses, arrows, write-on lines, hatches.
//!
//! They are paths because no face of ours has them as characters.

use kurbo::{BezPath, Line, Point, Rect, Vec2};

use crate::color::Color;
use crate::page::{Block, Fill, Pen};

impl Block {
    /// Draws an empty box to be ticked by hand, its side in millimetres.
    pub fn check_box(&mut self, top_left: Point, side: f64, pen: &Pen) -> &mut Self {
        let square = Rect::from_origin_size(top_left, (side, side));
        self.rect(square, Some(Fill::solid(Color::WHITE)), Some(pen.clone()))
    }

    /// Draws a tick in a square of a side in millimetres.
    pub fn tick(&mut self, top_left: Point, side: f64, pen: &Pen) -> &mut Self {
        let at = |x: f64, y: f64| top_left + Vec2::new(x, y) * side;
        self.open_path(&[at(0.12, 0.55), at(0.4, 0.85), at(0.9, 0.12)], pen)
    }

    /// Draws a cross in a square of a side in millimetres.
    pub fn cross(&mut self, top_left: Point, side: f64, pen: &Pen) -> &mut Self {
        let at = |x: f64, y: f64| top_left + Vec2::new(x, y) * side;
        self.line(at(0.12, 0.12), at(0.88, 0.88), pen);
        self.line(at(0.88, 0.12), at(0.12, 0.88), pen)
    }

    /// Draws straight lines from point to point.
    pub fn open_path(&mut self, points: &[Point], pen: &Pen) -> &mut Self {
        let mut path = BezPath::new();
        for (index, point) in points.iter().enumerate() {
            if index == 0 {
                path.move_to(*point);
            } else {
                path.line_to(*point);
            }
        }
        self.path(path, None, Some(pen.clone()))
    }

    /// Draws a polygon.
    pub fn polygon(&mut self, points: &[Point], fill: Option<Fill>, pen: Option<Pen>) -> &mut Self {
        let mut path = BezPath::new();
        for (index, point) in points.iter().enumerate() {
            if index == 0 {
                path.move_to(*point);
            } else {
                path.line_to(*point);
            }
        }
        path.close_path();
        self.path(path, fill, pen)
    }

    /// Draws an arrow whose tip is at `to`; the head is `head` millimetres long.
    ///
    /// Draws nothing where the two points are the same.
    pub fn arrow(&mut self, from: Point, to: Point, head: f64, pen: &Pen) -> &mut Self {
        let way = to - from;
        if way.hypot() == 0.0 {
            return self;
        }
        let along = way.normalize();
        let across = Vec2::new(-along.y, along.x);
        // The pen's round end would stick out of the tip.
        let neck = to - along * head;
        self.line(from, neck, pen);
        let wing = across * (head * 0.45);
        self.polygon(&[to, neck + wing, neck - wing], Some(Fill::solid(pen.color)), None)
    }

    /// Draws an arrow along a path, which ends in the head.
    pub fn curved_arrow(&mut self, path: &BezPath, head: f64, pen: &Pen) -> &mut Self {
        let Some((to, way)) = end_of(path) else { return self };
        self.path(path.clone(), None, Some(pen.clone()));
        let along = way.normalize();
        let across = Vec2::new(-along.y, along.x) * (head * 0.45);
        let tip = to + along * head;
        self.polygon(&[tip, to + across, to - across], Some(Fill::solid(pen.color)), None)
    }

    /// Draws the parts of parallel lines that lie inside a path (even-odd): `angle` in degrees,
    /// clockwise on the page from the x axis, `spacing` between lines in millimetres.
    pub fn hatch(&mut self, inside: &BezPath, angle: f64, spacing: f64, pen: &Pen) -> &mut Self {
        let lines = hatch_lines(inside, angle, spacing);
        let mut path = BezPath::new();
        for line in lines {
            path.move_to(line.p0);
            path.line_to(line.p1);
        }
        if path.elements().is_empty() {
            return self;
        }
        self.path(path, None, Some(pen.clone()))
    }
}

/// Where a path ends, and its direction there; `None` for one without length.
fn end_of(path: &BezPath) -> Option<(Point, Vec2)> {
    use kurbo::{ParamCurve as _, ParamCurveDeriv as _, PathSeg};
    let last = path.segments().last()?;
    let way = match last {
        PathSeg::Line(line) => line.p1 - line.p0,
        PathSeg::Quad(quad) => quad.deriv().eval(1.0).to_vec2(),
        PathSeg::Cubic(cubic) => cubic.deriv().eval(1.0).to_vec2(),
    };
    (way.hypot() > 0.0).then(|| (last.end(), way))
}

/// The parts of parallel lines inside a path, in order.
fn hatch_lines(inside: &BezPath, angle: f64, spacing: f64) -> Vec<Line> {
    use kurbo::{ParamCurve as _, PathSeg};
    let (sin, cos) = crate::page::turn(angle);
    let along = Vec2::new(cos, sin);
    let across = Vec2::new(-sin, cos);
    // Drawing accuracy, far below what print shows.
    let mut flat: Vec<Line> = Vec::new();
    let mut closed = BezPath::new();
    kurbo::flatten(inside, 0.02, |element| closed.push(element));
    for segment in closed.segments() {
        if let PathSeg::Line(line) = segment {
            flat.push(line);
        }
    }
    if flat.is_empty() || spacing <= 0.0 {
        return Vec::new();
    }
    let heights = flat.iter().map(|line| line.p0.to_vec2().dot(across));
    let (low, high) =
        heights.fold((f64::MAX, f64::MIN), |(low, high), h| (low.min(h), high.max(h)));
    let mut lines = Vec::new();
    let mut step = (low / spacing).floor() + 0.5;
    while step * spacing < high {
        let height = step * spacing;
        let mut cuts: Vec<f64> = flat
            .iter()
            .filter_map(|line| {
                let (a, b) = (line.p0.to_vec2().dot(across), line.p1.to_vec2().dot(across));
                let crosses = (a <= height) != (b <= height);
                crosses.then(|| line.eval((height - a) / (b - a)).to_vec2().dot(along))
            })
            .collect();
        cuts.sort_by(f64::total_cmp);
        for pair in cuts.chunks_exact(2) {
            let at = |t: f64| (along * t + across * height).to_point();
            lines.push(Line::new(at(pair[0]), at(pair[1])));
        }
        step += 1.0;
    }
    lines
}
