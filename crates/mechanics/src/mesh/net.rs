//! What is meshed: seams as curves between junctions, and which compartment lies on each side.

use cushion::{Chain, Pattern, Piece, Point};
use kurbo::ParamCurveArclen;

/// Ends of seams closer than this are one junction, in millimetres.
const SAME_PLACE: f64 = 1e-3;
/// Cosine of the kink at which a seam is taken to have a corner: about one degree.
const CORNER: f64 = 0.999_85;
/// Accuracy of lengths along cubics, in millimetres: nodes need not stand at better places.
const LENGTH_ACCURACY: f64 = 1e-4;

/// A stretch of seam between two junctions.
#[derive(Clone, Debug, PartialEq)]
pub struct NetEdge {
    /// Where it begins: place in the net's junctions.
    pub from: usize,
    /// Where it ends.
    pub to: usize,
    /// Its course, in millimetres.
    pub chain: Chain,
    /// The compartment to the left hand; none outside.
    pub left: Option<u32>,
    /// The compartment to the right hand; none outside.
    pub right: Option<u32>,
}

/// Seams and junctions as the mesh wants them, in millimetres.
#[derive(Clone, Debug, PartialEq)]
pub struct SeamNet {
    pub(crate) junctions: Vec<Point>,
    pub(crate) edges: Vec<NetEdge>,
    pub(crate) compartments: usize,
    pub(crate) mirrored: bool,
}

impl SeamNet {
    /// Joins seams that are given with the compartment to the left hand and to the right.
    ///
    /// Ends within a micrometre of each other become one junction. With `mirrored`, the mesh is
    /// made mirror symmetric where the seams are.
    #[must_use]
    pub fn new(seams: Vec<(Chain, Option<u32>, Option<u32>)>, mirrored: bool) -> Self {
        let mut junctions: Vec<Point> = Vec::new();
        let mut junction = |at: Point| {
            junctions.iter().position(|other| other.distance(at) < SAME_PLACE).unwrap_or_else(
                || {
                    junctions.push(at);
                    junctions.len() - 1
                },
            )
        };
        let edges: Vec<NetEdge> = seams
            .into_iter()
            .map(|(chain, left, right)| {
                let (from, to) = (junction(chain.start()), junction(chain.end()));
                NetEdge { from, to, chain, left, right }
            })
            .collect();
        let sides = edges.iter().flat_map(|edge| [edge.left, edge.right]).flatten();
        let compartments = sides.max().map_or(0, |last| last as usize + 1);
        Self { junctions, edges, compartments, mirrored }
    }

    /// For each compartment its mirror image, or `None` where the seams are not symmetric.
    pub(crate) fn mirror(&self) -> Option<Vec<u32>> {
        let mut image: Vec<Option<u32>> = vec![None; self.compartments];
        let middles: Vec<Point> =
            self.edges.iter().map(|edge| edge.chain.point_at(edge.chain.length() / 2.0)).collect();
        for (edge, middle) in self.edges.iter().zip(&middles) {
            self.side(edge)?;
            let other = middles.iter().position(|m| m.distance(flip(*middle)) < SAME_PLACE)?;
            let other = &self.edges[other];
            let start = flip(edge.chain.start());
            let along = other.chain.start().distance(start) < SAME_PLACE;
            let (left, right) = if along {
                (other.right, other.left)
            } else if other.chain.end().distance(start) < SAME_PLACE {
                (other.left, other.right)
            } else {
                return None;
            };
            for (own, theirs) in [(edge.left, left), (edge.right, right)] {
                match (own, theirs) {
                    (None, None) => {}
                    (Some(own), Some(theirs)) => {
                        if image[own as usize].is_some_and(|known| known != theirs) {
                            return None;
                        }
                        image[own as usize] = Some(theirs);
                    }
                    _ => return None,
                }
            }
        }
        image.into_iter().collect()
    }

    /// On which side of the centre line an edge lies: `Some(0.0)` along it, `None` across it.
    pub(crate) fn side(&self, edge: &NetEdge) -> Option<f64> {
        let points = edge.chain.flatten(0.5);
        let far = |sign: f64| points.iter().any(|point| point.x * sign > SAME_PLACE);
        match (far(-1.0), far(1.0)) {
            (false, false) => Some(0.0),
            (true, false) => Some(-1.0),
            (false, true) => Some(1.0),
            (true, true) => None,
        }
    }
}

impl From<&Pattern> for SeamNet {
    fn from(pattern: &Pattern) -> Self {
        let edge = |edge: &cushion::Edge| NetEdge {
            from: edge.from.index(),
            to: edge.to.index(),
            chain: edge.chain.clone(),
            left: edge.left.map(|ix| ix.index() as u32),
            right: edge.right.map(|ix| ix.index() as u32),
        };
        Self {
            junctions: pattern.nodes().to_vec(),
            edges: pattern.edges().iter().map(edge).collect(),
            compartments: pattern.compartments().len(),
            mirrored: pattern.is_mirrored(),
        }
    }
}

/// The mirror image in the centre line.
pub(crate) fn flip(point: Point) -> Point {
    Point::new(-point.x, point.y)
}

/// A smooth stretch of a seam, without corners; a parameter is the number of the piece plus the
/// parameter on it.
#[derive(Clone, Debug)]
pub(crate) struct SeamCurve {
    pieces: Vec<Piece>,
    /// Length at the end of each piece, in millimetres.
    ends: Vec<f64>,
}

impl SeamCurve {
    /// Cuts a chain at its corners.
    pub(crate) fn smooth_parts(chain: &Chain) -> Vec<Self> {
        let mut parts: Vec<Vec<Piece>> = Vec::new();
        for piece in chain.pieces() {
            let goes_on = parts
                .last()
                .and_then(|part| part.last())
                .is_some_and(|before| before.direction(1.0).dot(piece.direction(0.0)) > CORNER);
            match parts.last_mut() {
                Some(part) if goes_on => part.push(*piece),
                _ => parts.push(vec![*piece]),
            }
        }
        parts.into_iter().map(Self::new).collect()
    }

    fn new(pieces: Vec<Piece>) -> Self {
        let mut length = 0.0;
        let ends = pieces
            .iter()
            .map(|piece| {
                length += piece.length();
                length
            })
            .collect();
        Self { pieces, ends }
    }

    /// The length in millimetres.
    pub(crate) fn length(&self) -> f64 {
        self.ends[self.ends.len() - 1]
    }

    /// The parameter of its end.
    pub(crate) fn last(&self) -> f64 {
        self.pieces.len() as f64
    }

    /// Returns the point at a parameter, in millimetres.
    pub(crate) fn at(&self, parameter: f64) -> Point {
        let piece = (parameter as usize).min(self.pieces.len() - 1);
        self.pieces[piece].eval(parameter - piece as f64)
    }

    /// Returns the parameters of `parts + 1` points at equal lengths, both ends included.
    pub(crate) fn divide(&self, parts: usize) -> Vec<f64> {
        let step = self.length() / parts as f64;
        let inner = (1..parts).map(|part| self.parameter_at(step * part as f64));
        std::iter::once(0.0).chain(inner).chain([self.last()]).collect()
    }

    /// Returns a parameter about half way, by length, between two.
    ///
    /// On one piece it is the middle of the parameters, which on cubics is off the middle of the
    /// length by a share that falls with the square of the step.
    pub(crate) fn between(&self, from: f64, to: f64) -> f64 {
        let piece = from.floor();
        if to <= piece + 1.0 {
            return f64::midpoint(from, to);
        }
        let half = self.parameter_at(f64::midpoint(self.length_at(from), self.length_at(to)));
        if from < half && half < to { half } else { f64::midpoint(from, to) }
    }

    fn begin(&self, piece: usize) -> f64 {
        if piece == 0 { 0.0 } else { self.ends[piece - 1] }
    }

    fn length_at(&self, parameter: f64) -> f64 {
        let piece = (parameter as usize).min(self.pieces.len() - 1);
        let share = parameter - piece as f64;
        self.begin(piece) + share * (self.ends[piece] - self.begin(piece))
    }

    fn parameter_at(&self, length: f64) -> f64 {
        let piece = self.ends.partition_point(|end| *end < length).min(self.pieces.len() - 1);
        let along = length - self.begin(piece);
        let share = match &self.pieces[piece] {
            Piece::Cubic(cubic) => cubic.inv_arclen(along, LENGTH_ACCURACY),
            Piece::Line(..) | Piece::Arc { .. } => along / (self.ends[piece] - self.begin(piece)),
        };
        piece as f64 + share.clamp(0.0, 1.0)
    }
}
