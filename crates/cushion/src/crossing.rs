//! Finds seams that cross or touch where they share no point.

use kurbo::{Point, Rect};

use crate::draw::Drawing;

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

/// Returns the first crossing of each pair of stretches.
pub(crate) fn crossings(drawing: &Drawing) -> Vec<Crossing> {
    let lines: Vec<Vec<Point>> =
        drawing.stretches.iter().map(|stretch| stretch.chain.flatten(FLAT)).collect();
    let boxes: Vec<Rect> = lines.iter().map(|line| around(line)).collect();
    let mut found = Vec::new();
    for second in 0..lines.len() {
        for first in 0..=second {
            if boxes[first].overlaps(boxes[second]) {
                let at = if first == second {
                    self_crossing(&lines[first])
                } else {
                    let shared = shared_nodes(drawing, first, second);
                    meeting(&lines[first], &lines[second], &shared)
                };
                found.extend(at.map(|at| Crossing { first, second, at }));
            }
        }
    }
    found
}

fn around(line: &[Point]) -> Rect {
    let start = Rect::from_points(line[0], line[0]);
    line.iter().fold(start, |rect, point| rect.union_pt(*point)).inflate(FLAT, FLAT)
}

fn shared_nodes(drawing: &Drawing, first: usize, second: usize) -> Vec<Point> {
    let (a, b) = (&drawing.stretches[first], &drawing.stretches[second]);
    [a.from, a.to]
        .into_iter()
        .filter(|node| *node == b.from || *node == b.to)
        .map(|node| drawing.nodes[node.index()])
        .collect()
}

fn meeting(first: &[Point], second: &[Point], shared: &[Point]) -> Option<Point> {
    first.windows(2).find_map(|a| {
        let reach = Rect::from_points(a[0], a[1]).inflate(FLAT, FLAT);
        second.windows(2).find_map(|b| {
            let near = reach.overlaps(Rect::from_points(b[0], b[1]).inflate(FLAT, FLAT));
            let at = near.then(|| cross_point(a, b)).flatten()?;
            let excused = shared.iter().any(|node| node.distance(at) < AROUND_NODE);
            (!excused).then_some(at)
        })
    })
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
    if turn.abs() > 1e-12 * along.hypot() * other.hypot() {
        let (s, t) = (between.cross(other) / turn, between.cross(along) / turn);
        let inside = |share: f64| (0.0..=1.0).contains(&share);
        return (inside(s) && inside(t)).then(|| a[0].lerp(a[1], s));
    }
    // Parallel: they meet only where they lie on one line and overlap.
    let off = between.cross(along).abs() / along.hypot();
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
