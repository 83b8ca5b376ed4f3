//! Finds seams that cross or touch where they share no point.

use std::collections::BTreeMap;

use kurbo::{Point, Rect};

use crate::draw::Drawing;
use crate::vector::length;

/// Straight ways stand for curves within this, in millimetres.
const FLAT: f64 = 0.02;
/// Around a shared node, seams may come this close, in millimetres: curves that leave a node at
/// a small angle are told apart only beyond the error of the straight ways.
const AROUND_NODE: f64 = 0.3;

/// A place where two stretches meet and should not.
#[derive(Debug, PartialEq)]
pub(crate) struct Crossing {
    /// Place of the first stretch.
    pub(crate) first: usize,
    /// Place of the second; the first again where a stretch crosses itself.
    pub(crate) second: usize,
    /// Where, in millimetres.
    pub(crate) at: Point,
}

/// A straight way of a stretch.
struct Way {
    stretch: usize,
    place: usize,
    reach: Rect,
}

/// Returns the first crossing of each pair of stretches, in their order.
///
/// Straight ways are looked at from left to right, each beside those that reach as far: drawings
/// of many short ways take little longer than their number.
pub(crate) fn crossings(drawing: &Drawing) -> Vec<Crossing> {
    let lines: Vec<Vec<Point>> =
        drawing.stretches.iter().map(|stretch| stretch.chain.flatten(FLAT)).collect();
    let mut first_of: BTreeMap<(usize, usize), (usize, usize, Point)> = BTreeMap::new();
    let mut beside: Vec<Way> = Vec::new();
    for way in ways(&lines) {
        beside.retain(|other| other.reach.x1 >= way.reach.x0);
        for other in &beside {
            let below = other.reach.y1 < way.reach.y0 || way.reach.y1 < other.reach.y0;
            if below || other.stretch == way.stretch {
                continue;
            }
            let (a, b) = if other.stretch < way.stretch { (other, &way) } else { (&way, other) };
            let (of, at) = ((b.stretch, a.stretch), (a.place, b.place));
            if first_of.get(&of).is_some_and(|known| (known.0, known.1) <= at) {
                continue;
            }
            let met = cross_point(&ends(&lines, a), &ends(&lines, b));
            let met = met.filter(|at| !excused(drawing, a.stretch, b.stretch, *at));
            if let Some(met) = met {
                first_of.insert(of, (at.0, at.1, met));
            }
        }
        beside.push(way);
    }
    for (stretch, line) in lines.iter().enumerate() {
        if let Some(at) = self_crossing(line) {
            first_of.insert((stretch, stretch), (0, 0, at));
        }
    }
    first_of
        .into_iter()
        .map(|((second, first), (_, _, at))| Crossing { first, second, at })
        .collect()
}

/// All straight ways, from left to right.
fn ways(lines: &[Vec<Point>]) -> Vec<Way> {
    let mut ways: Vec<Way> = Vec::new();
    for (stretch, line) in lines.iter().enumerate() {
        for (place, pair) in line.windows(2).enumerate() {
            let reach = Rect::from_points(pair[0], pair[1]).inflate(FLAT, FLAT);
            ways.push(Way { stretch, place, reach });
        }
    }
    ways.sort_by(|a, b| a.reach.x0.total_cmp(&b.reach.x0));
    ways
}

fn ends(lines: &[Vec<Point>], way: &Way) -> [Point; 2] {
    [lines[way.stretch][way.place], lines[way.stretch][way.place + 1]]
}

/// Whether a place is around a node that two stretches share.
fn excused(drawing: &Drawing, first: usize, second: usize, at: Point) -> bool {
    let (a, b) = (&drawing.stretches[first], &drawing.stretches[second]);
    let mut shared = [a.from, a.to].into_iter().filter(|node| *node == b.from || *node == b.to);
    shared.any(|node| drawing.nodes[node.index()].distance(at) < AROUND_NODE)
}

fn self_crossing(line: &[Point]) -> Option<Point> {
    let segments = line.len() - 1;
    let closed = line[0].distance(line[segments]) < FLAT;
    (0..segments).find_map(|a| {
        (a + 2..segments)
            .filter(|b| !(closed && a == 0 && *b == segments - 1))
            .find_map(|b| cross_point(&line[a..a + 2], &line[b..b + 2]))
    })
}

/// Returns where two segments meet: where they cross, or where an end lies on the other.
fn cross_point(a: &[Point], b: &[Point]) -> Option<Point> {
    let (along, other) = (a[1] - a[0], b[1] - b[0]);
    let turn = along.cross(other);
    let between = b[0] - a[0];
    if turn.abs() > 1e-12 * length(along) * length(other) {
        let (s, t) = (between.cross(other) / turn, between.cross(along) / turn);
        let inside = |share: f64| (0.0..=1.0).contains(&share);
        return (inside(s) && inside(t)).then(|| a[0].lerp(a[1], s));
    }
    // Parallel: they meet only where they lie on one line and overlap.
    let off = between.cross(along).abs() / length(along);
    if off > 1e-6 {
        return None;
    }
    let place = |point: Point| (point - a[0]).dot(along) / along.hypot2();
    let (from, to) = (place(b[0]).min(place(b[1])).max(0.0), place(b[0]).max(place(b[1])).min(1.0));
    // The middle of what they share: an end alone may be an excused node.
    (from <= to).then(|| a[0].lerp(a[1], (from + to) / 2.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn meet(a: [(f64, f64); 2], b: [(f64, f64); 2]) -> Option<Point> {
        let segment = |ends: [(f64, f64); 2]| ends.map(Point::from);
        cross_point(&segment(a), &segment(b))
    }

    #[test]
    fn segments_meet_where_they_should() {
        let across = [(0.0, 0.0), (2.0, 0.0)];
        assert_eq!(meet(across, [(1.0, -1.0), (1.0, 1.0)]), Some(Point::new(1.0, 0.0)));
        assert_eq!(meet(across, [(3.0, -1.0), (3.0, 1.0)]), None);
        assert_eq!(meet(across, [(0.0, 1.0), (2.0, 1.0)]), None);
        assert_eq!(meet(across, [(1.0, 0.0), (3.0, 0.0)]), Some(Point::new(1.5, 0.0)));
        assert_eq!(meet(across, [(3.0, 0.0), (4.0, 0.0)]), None);
    }
}
