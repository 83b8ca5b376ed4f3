//! The coarse mesh before it is triangulated: nodes along the seams of one half or of the whole.

use case::MeshError;
use cushion::Point;
use kurbo::Vec2;

use super::net::{NetEdge, SeamCurve, SeamNet};

/// A segment may be this many times as long as the way to the nearest other segment.
///
/// More makes flat triangles in narrow places; less cuts up the sides of every corner that is
/// sharper than asin(1/2.5) = 24 degrees.
const LONGEST: f64 = 2.5;
/// A seam may leave a segment by this share of the segment's length.
///
/// Refining moves nodes from the segment to the seam: with more, the triangles beside a tight
/// bend come out flat; with less, roundings are cut up for nothing.
const DEEPEST: f64 = 0.07;
/// No segment is cut below this share of the mesh width.
const SHORTEST: f64 = 1.0 / 8.0;

/// A straight way between two nodes that triangles must not cross.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Bar {
    pub(crate) nodes: [u32; 2],
    pub(crate) sides: [Option<u32>; 2],
    pub(crate) follows: Follows,
}

/// What a bar runs along.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Follows {
    /// A seam's curve, between two parameters.
    Curve { curve: u32, at: [f64; 2] },
    /// The centre line, inside a compartment.
    Centre,
}

/// Nodes and bars of the right half, or of the whole, in millimetres.
#[derive(Debug)]
pub(crate) struct Sketch {
    pub(crate) points: Vec<Point>,
    pub(crate) bars: Vec<Bar>,
    pub(crate) curves: Vec<SeamCurve>,
}

impl Sketch {
    /// Puts nodes at about `width` along all seams, or along those of the right half.
    pub(crate) fn new(net: &SeamNet, half: bool, width: f64) -> Result<Self, MeshError> {
        let mut sketch = Self { points: Vec::new(), bars: Vec::new(), curves: Vec::new() };
        let mut seated: Vec<Option<u32>> = vec![None; net.junctions.len()];
        let mut on_centre = Vec::new();
        for edge in &net.edges {
            let side = net.side(edge);
            if half && side == Some(-1.0) {
                continue;
            }
            let along_centre = half && side == Some(0.0);
            sketch.add_edge(net, edge, &mut seated, along_centre, width);
            if along_centre {
                on_centre.push([edge.from, edge.to]);
            }
        }
        if half {
            sketch.close_along_centre(net, &mut seated, &on_centre, width)?;
        }
        sketch.cut_long_bars(width);
        if sketch.bars.is_empty() { Err(MeshError::Empty) } else { Ok(sketch) }
    }

    fn junction(&mut self, net: &SeamNet, seated: &mut [Option<u32>], junction: usize) -> u32 {
        *seated[junction].get_or_insert_with(|| {
            self.points.push(net.junctions[junction]);
            self.points.len() as u32 - 1
        })
    }

    fn add_edge(
        &mut self,
        net: &SeamNet,
        edge: &NetEdge,
        seated: &mut [Option<u32>],
        along_centre: bool,
        width: f64,
    ) {
        let from = self.junction(net, seated, edge.from);
        let to = self.junction(net, seated, edge.to);
        // What encloses something with itself, its mirror image or one other needs an inside.
        let centred = self.points[from as usize].x.abs() + self.points[to as usize].x.abs() < 1e-3;
        let twin = |other: &&NetEdge| {
            [other.from, other.to] == [edge.from, edge.to]
                || [other.to, other.from] == [edge.from, edge.to]
        };
        let least = if from == to {
            3.0
        } else if centred && !along_centre || net.edges.iter().filter(twin).count() > 1 {
            2.0
        } else {
            1.0
        };
        let parts = SeamCurve::smooth_parts(&edge.chain);
        let mut node = from;
        let last = parts.len() - 1;
        for (place, curve) in parts.into_iter().enumerate() {
            let least = if last == 0 { least } else { 1.0 };
            let steps = curve.divide((curve.length() / width).round().max(least) as usize);
            for (step, at) in steps.windows(2).enumerate() {
                let next = if place == last && step + 2 == steps.len() {
                    to
                } else {
                    self.points.push(curve.at(at[1]));
                    self.points.len() as u32 - 1
                };
                let follows =
                    Follows::Curve { curve: self.curves.len() as u32, at: [at[0], at[1]] };
                self.bars.push(Bar {
                    nodes: [node, next],
                    sides: [edge.left, edge.right],
                    follows,
                });
                node = next;
            }
            self.curves.push(curve);
        }
        if along_centre {
            for bar in &self.bars {
                if let Follows::Curve { curve, .. } = bar.follows
                    && curve as usize + last + 1 >= self.curves.len()
                {
                    bar.nodes.iter().for_each(|node| self.points[*node as usize].x = 0.0);
                }
            }
        }
    }

    /// Puts bars on those parts of the centre line that run inside a compartment.
    fn close_along_centre(
        &mut self,
        net: &SeamNet,
        seated: &mut [Option<u32>],
        seams: &[[usize; 2]],
        width: f64,
    ) -> Result<(), MeshError> {
        let mut stops: Vec<usize> = (0..net.junctions.len())
            .filter(|&stop| seated[stop].is_some() && net.junctions[stop].x.abs() < 1e-3)
            .collect();
        stops.sort_by(|a, b| net.junctions[*a].y.total_cmp(&net.junctions[*b].y));
        for pair in stops.windows(2) {
            let seam = |ends: &[usize; 2]| pair.contains(&ends[0]) && pair.contains(&ends[1]);
            if seams.iter().any(seam) {
                continue;
            }
            let (from, to) = (net.junctions[pair[0]], net.junctions[pair[1]]);
            let Some(compartment) = self.compartment_at(from.midpoint(to)) else { continue };
            let mut node = self.junction(net, seated, pair[0]);
            let end = self.junction(net, seated, pair[1]);
            let parts = (from.distance(to) / width).round().max(1.0) as usize;
            for part in 1..=parts {
                let next = if part == parts {
                    end
                } else {
                    self.points.push(from.lerp(to, part as f64 / parts as f64));
                    self.points.len() as u32 - 1
                };
                let sides = [Some(compartment); 2];
                self.bars.push(Bar { nodes: [node, next], sides, follows: Follows::Centre });
                node = next;
            }
        }
        for stop in stops {
            let node = seated[stop].ok_or(MeshError::Empty)?;
            self.points[node as usize].x = 0.0;
        }
        Ok(())
    }

    /// The compartment at a point of the centre line: the one on the near side of the first bar
    /// that a ray to the right meets. `None` outside.
    fn compartment_at(&self, point: Point) -> Option<u32> {
        // Off the heights of nodes, so that the ray passes through no node.
        let y = point.y + 1e-4 * std::f64::consts::E;
        let crossed = self.bars.iter().filter_map(|bar| {
            let [a, b] = bar.nodes.map(|node| self.points[node as usize]);
            if (a.y > y) == (b.y > y) {
                return None;
            }
            let x = a.x + (y - a.y) / (b.y - a.y) * (b.x - a.x);
            // Going up, the left hand is the near side.
            let near = if b.y > a.y { bar.sides[0] } else { bar.sides[1] };
            (x > 0.0).then_some((x, near))
        });
        crossed.min_by(|a, b| a.0.total_cmp(&b.0))?.1
    }

    /// Halves bars that are long for the room beside them or the bend of their seam, until none is.
    fn cut_long_bars(&mut self, width: f64) {
        // Each pass halves; below the shortest length nothing is cut.
        let passes = libm::log2(1.0 / SHORTEST).ceil() as usize + 2;
        for _ in 0..passes {
            let long: Vec<usize> =
                (0..self.bars.len()).filter(|&bar| self.is_long(bar, width)).collect();
            if long.is_empty() {
                return;
            }
            for bar in long {
                self.halve(bar);
            }
        }
    }

    fn ends(&self, bar: &Bar) -> [Point; 2] {
        bar.nodes.map(|node| self.points[node as usize])
    }

    /// How far a bar's seam is from the bar's middle.
    fn depth(&self, bar: &Bar) -> f64 {
        let [a, b] = self.ends(bar);
        match bar.follows {
            Follows::Centre => 0.0,
            Follows::Curve { curve, at } => {
                let curve = &self.curves[curve as usize];
                curve.at(curve.between(at[0], at[1])).distance(a.midpoint(b))
            }
        }
    }

    fn is_long(&self, place: usize, width: f64) -> bool {
        let bar = &self.bars[place];
        let [a, b] = self.ends(bar);
        let length = a.distance(b);
        if length < 2.0 * SHORTEST * width {
            return false;
        }
        if self.depth(bar) > DEEPEST * length {
            return true;
        }
        let room = length / LONGEST;
        self.bars.iter().any(|other| {
            let [c, d] = self.ends(other);
            let far = (length + c.distance(d)) / 2.0 + room;
            a.midpoint(b).distance_squared(c.midpoint(d)) < far * far
                && !other.nodes.iter().any(|node| bar.nodes.contains(node))
                && gap([a, b], [c, d]) < room
        })
    }

    fn halve(&mut self, place: usize) {
        let bar = self.bars[place];
        let [a, b] = self.ends(&bar);
        let (point, first, second) = match bar.follows {
            Follows::Centre => (a.midpoint(b), Follows::Centre, Follows::Centre),
            Follows::Curve { curve, at } => {
                let half = self.curves[curve as usize].between(at[0], at[1]);
                let mut point = self.curves[curve as usize].at(half);
                if a.x == 0.0 && b.x == 0.0 && point.x.abs() < 1e-3 {
                    point.x = 0.0;
                }
                let part = |from, to| Follows::Curve { curve, at: [from, to] };
                (point, part(at[0], half), part(half, at[1]))
            }
        };
        let node = self.points.len() as u32;
        self.points.push(point);
        self.bars[place] = Bar { nodes: [bar.nodes[0], node], follows: first, ..bar };
        self.bars.push(Bar { nodes: [node, bar.nodes[1]], follows: second, ..bar });
    }

    /// Whether a point keeps `clear` millimetres from all bars.
    pub(crate) fn is_clear(&self, point: Point, clear: f64) -> bool {
        !self.bars.iter().any(|bar| {
            let [a, b] = self.ends(bar);
            let reach = a.distance(b) / 2.0 + clear;
            a.midpoint(b).distance_squared(point) < reach * reach
                && distance_to(point, [a, b]) < clear
        })
    }
}

/// Least distance between two straight ways; zero where they cross.
fn gap(one: [Point; 2], other: [Point; 2]) -> f64 {
    let turn = |a: Point, b: Point, c: Point| (b - a).cross(c - a);
    let parted = |[a, b]: [Point; 2], [c, d]: [Point; 2]| turn(a, b, c) * turn(a, b, d) > 0.0;
    if !parted(one, other) && !parted(other, one) {
        return 0.0;
    }
    let ends = [
        distance_to(one[0], other),
        distance_to(one[1], other),
        distance_to(other[0], one),
        distance_to(other[1], one),
    ];
    ends.into_iter().fold(f64::INFINITY, f64::min)
}

/// Distance from a point to a straight way.
fn distance_to(point: Point, [a, b]: [Point; 2]) -> f64 {
    let along: Vec2 = b - a;
    let share = ((point - a).dot(along) / along.hypot2()).clamp(0.0, 1.0);
    point.distance(a + along * share)
}
