//! Chains moved, enlarged, and made of what any cutter knows: straight pieces and arcs.

use cushion::{Chain, Piece, Point};
use kurbo::Vec2;

/// Straight pieces stand for smooth curves within this, in millimetres: a tenth of what is asked, so
/// that the lengths of whole covers agree to a hundredth too.
const FLAT: f64 = 0.001;

/// The same chain at another place.
#[must_use]
pub fn moved(chain: &Chain, by: Vec2) -> Chain {
    let piece = |own: &Piece| match *own {
        Piece::Line(a, b) => Piece::Line(a + by, b + by),
        Piece::Arc { center, radius, start, sweep } => {
            Piece::Arc { center: center + by, radius, start, sweep }
        }
        Piece::Cubic(c) => {
            Piece::Cubic(kurbo::CubicBez::new(c.p0 + by, c.p1 + by, c.p2 + by, c.p3 + by))
        }
    };
    Chain::new(chain.pieces().iter().map(piece).collect())
}

/// The same chain so many times as large, from the origin.
pub(crate) fn enlarged(chain: &Chain, times: f64) -> Chain {
    let at = |point: Point| (point.to_vec2() * times).to_point();
    let piece = |own: &Piece| match *own {
        Piece::Line(a, b) => Piece::Line(at(a), at(b)),
        Piece::Arc { center, radius, start, sweep } => {
            Piece::Arc { center: at(center), radius: radius * times, start, sweep }
        }
        Piece::Cubic(c) => {
            Piece::Cubic(kurbo::CubicBez::new(at(c.p0), at(c.p1), at(c.p2), at(c.p3)))
        }
    };
    Chain::new(chain.pieces().iter().map(piece).collect())
}

/// The same chain of straight pieces and arcs alone, within a hundredth of a millimetre.
#[must_use]
pub fn straight_and_arcs(chain: &Chain) -> Chain {
    let mut pieces = Vec::new();
    for own in chain.pieces() {
        match own {
            Piece::Cubic(_) => {
                let points = Chain::new(vec![*own]).flatten(FLAT);
                pieces.extend(points.windows(2).map(|pair| Piece::Line(pair[0], pair[1])));
            }
            Piece::Line(..) | Piece::Arc { .. } => pieces.push(*own),
        }
    }
    Chain::new(pieces)
}

/// A straight line.
pub(crate) fn line(from: Point, to: Point) -> Chain {
    Chain::new(vec![Piece::Line(from, to)])
}

/// A closed way through points.
pub(crate) fn polygon(points: &[Point]) -> Chain {
    let next = |at: usize| points[(at + 1) % points.len()];
    let sides = (0..points.len()).map(|at| Piece::Line(points[at], next(at)));
    Chain::new(sides.filter(|own| own.length() > 0.0).collect())
}

/// A rectangle with its lower left corner at a point.
pub(crate) fn rectangle(at: Point, width: f64, height: f64) -> Chain {
    let corner = |x: f64, y: f64| at + Vec2::new(x * width, y * height);
    polygon(&[corner(0.0, 0.0), corner(1.0, 0.0), corner(1.0, 1.0), corner(0.0, 1.0)])
}
