//! Finds the faces that drawn seams cut out of the plane.

use kurbo::{Line, ParamCurveNearest, Point, Vec2};

use crate::draw::Drawing;
use crate::pattern::{EdgeIx, Ring};
use crate::vector::direction;

/// Straight ways stand for curves within this where a point is looked up, in millimetres.
const FLAT: f64 = 0.02;
/// How far from a node directions are compared, as a share of the stretch: stretches that leave
/// a node along one tangent have parted there.
const A_STEP_OFF: f64 = 0.01;

/// A face: what lies inside `outer` and outside all `holes`.
#[derive(Debug)]
pub(crate) struct Face {
    pub(crate) outer: Ring,
    pub(crate) holes: Vec<Ring>,
    /// The outer way as points.
    corners: Vec<Point>,
    area: f64,
}

/// All faces, and the ways around what lies in none.
#[derive(Debug)]
pub(crate) struct Faces {
    pub(crate) inside: Vec<Face>,
    /// Ways along the outside of everything.
    pub(crate) outside: Vec<Ring>,
}

/// A way along stretches, before it is known whether it goes around a face.
struct Cycle {
    ring: Ring,
    corners: Vec<Point>,
    area: f64,
}

/// Walks along every stretch on both sides, always taking the leftmost turn.
///
/// Each walk that closes counter-clockwise goes around a face; a clockwise one goes around an
/// island in some face, or around everything.
pub(crate) fn faces(drawing: &Drawing) -> Faces {
    let (around, holes): (Vec<Cycle>, Vec<Cycle>) =
        cycles(drawing).into_iter().partition(|cycle| cycle.area > 0.0);
    let mut faces = Faces {
        inside: around
            .into_iter()
            .map(|cycle| Face {
                outer: cycle.ring,
                holes: Vec::new(),
                corners: cycle.corners,
                area: cycle.area,
            })
            .collect(),
        outside: Vec::new(),
    };
    for hole in holes {
        // Any face around the island is larger than the island; its own faces are not around it.
        let start = hole.corners[0];
        let host =
            faces.smallest(|face| face.area > -hole.area + 1e-6 && encloses(&face.corners, start));
        match host {
            Some(face) => faces.inside[face].holes.push(hole.ring),
            None => faces.outside.push(hole.ring),
        }
    }
    faces
}

impl Faces {
    /// Returns the face in which a point lies.
    pub(crate) fn at(&self, point: Point) -> Option<usize> {
        self.smallest(|face| encloses(&face.corners, point))
    }

    fn smallest(&self, holds: impl Fn(&Face) -> bool) -> Option<usize> {
        (0..self.inside.len())
            .filter(|&face| holds(&self.inside[face]))
            .min_by(|&a, &b| self.inside[a].area.total_cmp(&self.inside[b].area))
    }
}

impl Face {
    /// Returns a point well inside: of a grid over the face, the one farthest from its seams.
    pub(crate) fn a_point(&self) -> Point {
        let bounds = kurbo::Rect::from_points(self.corners[0], self.corners[0]);
        let bounds = self.corners.iter().fold(bounds, |rect, point| rect.union_pt(*point));
        let grid = (1..20).flat_map(|i| (1..20).map(move |j| (i, j)));
        grid.map(|(i, j)| {
            Point::new(
                bounds.x0 + bounds.width() * f64::from(i) / 20.0,
                bounds.y0 + bounds.height() * f64::from(j) / 20.0,
            )
        })
        .filter(|point| encloses(&self.corners, *point))
        .max_by(|a, b| self.room(*a).total_cmp(&self.room(*b)))
        .unwrap_or(self.corners[0])
    }

    fn room(&self, point: Point) -> f64 {
        let corners = &self.corners;
        (0..corners.len())
            .map(|place| {
                let line = Line::new(corners[place], corners[(place + 1) % corners.len()]);
                line.nearest(point, FLAT).distance_sq
            })
            .fold(f64::INFINITY, f64::min)
    }
}

/// A side of a stretch: `2 k` along stretch k, `2 k + 1` against it.
fn cycles(drawing: &Drawing) -> Vec<Cycle> {
    let leaving = leaving_sides(drawing);
    let mut seen = vec![false; 2 * drawing.stretches.len()];
    let mut cycles = Vec::new();
    for first in 0..seen.len() {
        if seen[first] {
            continue;
        }
        let mut sides = Vec::new();
        let mut side = first;
        while !seen[side] {
            seen[side] = true;
            sides.push(side);
            side = next_side(drawing, &leaving, side);
        }
        cycles.push(cycle(drawing, &sides));
    }
    cycles
}

/// The sides that leave each node, counter-clockwise.
fn leaving_sides(drawing: &Drawing) -> Vec<Vec<usize>> {
    let mut leaving = vec![Vec::new(); drawing.nodes.len()];
    for (place, stretch) in drawing.stretches.iter().enumerate() {
        leaving[stretch.from.index()].push(2 * place);
        leaving[stretch.to.index()].push(2 * place + 1);
    }
    for sides in &mut leaving {
        sides.sort_by(|&a, &b| {
            let towards = |side| direction(heading(drawing, side));
            towards(a).total_cmp(&towards(b)).then(a.cmp(&b))
        });
    }
    leaving
}

/// The direction from a side's node to a point a little along it.
fn heading(drawing: &Drawing, side: usize) -> Vec2 {
    let chain = &drawing.stretches[side / 2].chain;
    let length = chain.length();
    if side.is_multiple_of(2) {
        chain.point_at(length * A_STEP_OFF) - chain.start()
    } else {
        chain.point_at(length * (1.0 - A_STEP_OFF)) - chain.end()
    }
}

/// The side that goes on from the end of `side`, taking the leftmost turn.
fn next_side(drawing: &Drawing, leaving: &[Vec<usize>], side: usize) -> usize {
    let stretch = &drawing.stretches[side / 2];
    let node = if side.is_multiple_of(2) { stretch.to } else { stretch.from };
    let sides = &leaving[node.index()];
    let back = sides.iter().position(|&other| other == side ^ 1).expect("every side has a twin");
    sides[(back + sides.len() - 1) % sides.len()]
}

fn cycle(drawing: &Drawing, sides: &[usize]) -> Cycle {
    let mut corners = Vec::new();
    let mut area = 0.0;
    let mut steps = Vec::new();
    for &side in sides {
        let chain = &drawing.stretches[side / 2].chain;
        let forward = side.is_multiple_of(2);
        let chain = if forward { chain.clone() } else { chain.reversed() };
        area += chain.pieces().iter().map(crate::Piece::swept_area).sum::<f64>();
        let line = chain.flatten(FLAT);
        corners.extend_from_slice(&line[..line.len() - 1]);
        steps.push((EdgeIx((side / 2) as u32), forward));
    }
    Cycle { ring: Ring { steps }, corners, area }
}

/// Whether a point lies inside a closed way, by counting what a ray to the right meets.
fn encloses(corners: &[Point], point: Point) -> bool {
    let mut inside = false;
    for place in 0..corners.len() {
        let (a, b) = (corners[place], corners[(place + 1) % corners.len()]);
        if (a.y > point.y) != (b.y > point.y) {
            let x = a.x + (point.y - a.y) / (b.y - a.y) * (b.x - a.x);
            inside ^= point.x < x;
        }
    }
    inside
}
