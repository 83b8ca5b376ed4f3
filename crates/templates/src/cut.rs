//! Cut lines: stitch lines with the seam allowance outside of them.

use cushion::{Chain, Piece, Point};
use i_overlay::mesh::float::outline::offset::OutlineOffset;
use i_overlay::mesh::float::style::{LineJoin, OutlineStyle};
use kurbo::Vec2;

use crate::chains::{polygon, straight_and_arcs};

/// Pieces whose directions differ by less run on smoothly, in radians.
const SMOOTH: f64 = 1e-6;
/// Straight pieces stand for the stitch line within this where it is not offset piece by piece, in
/// millimetres.
const FLAT: f64 = 0.002;
/// Step around a corner there, in radians: within 0.002 mm of the arc for an allowance of 15 mm.
const STEP: f64 = 0.03;

/// Returns the line outside of a closed stitch line, counter-clockwise, at a distance in
/// millimetres; corners that stick out are rounded.
///
/// Piece by piece where that closes, so that arcs stay arcs; else, where the line is dented or has
/// smooth curves, from straight pieces within some thousandths of a millimetre.
#[must_use]
pub fn cut_line(stitch: &Chain, allowance: f64) -> Chain {
    if allowance <= 0.0 {
        return straight_and_arcs(stitch);
    }
    piece_by_piece(stitch, allowance).unwrap_or_else(|| from_flat(stitch, allowance))
}

/// The offset pieces, with an arc at each corner; none where a corner is dented.
fn piece_by_piece(stitch: &Chain, allowance: f64) -> Option<Chain> {
    let pieces = stitch.pieces();
    let mut made = Vec::new();
    for (at, own) in pieces.iter().enumerate() {
        made.push(beside(own, allowance)?);
        let next = &pieces[(at + 1) % pieces.len()];
        let (before, after) = (own.direction(1.0), next.direction(0.0));
        let turn = libm::atan2(before.cross(after), before.dot(after));
        if turn > SMOOTH {
            let right = Vec2::new(before.y, -before.x);
            let start = libm::atan2(right.y, right.x);
            made.push(Piece::Arc { center: own.end(), radius: allowance, start, sweep: turn });
        } else if turn < -SMOOTH {
            return None;
        }
    }
    Some(Chain::new(made))
}

/// A piece at its right hand, which is outside of a counter-clockwise way.
fn beside(piece: &Piece, by: f64) -> Option<Piece> {
    match *piece {
        Piece::Line(from, to) => {
            let along = piece.direction(0.0);
            let right = Vec2::new(along.y, -along.x) * by;
            Some(Piece::Line(from + right, to + right))
        }
        Piece::Arc { center, radius, start, sweep } => {
            let radius = if sweep > 0.0 { radius + by } else { radius - by };
            // A hollow that is sharper than the allowance would turn inside out.
            (radius > 0.5).then_some(Piece::Arc { center, radius, start, sweep })
        }
        Piece::Cubic(_) => None,
    }
}

/// The outline of the flattened stitch line.
fn from_flat(stitch: &Chain, allowance: f64) -> Chain {
    let points = stitch.flatten(FLAT);
    let shape: Vec<[f64; 2]> =
        points[..points.len() - 1].iter().map(|point| [point.x, point.y]).collect();
    let style = OutlineStyle::new(allowance).line_join(LineJoin::Round(STEP));
    let outlines = shape.outline(&style);
    let outer = outlines.first().and_then(|shape| shape.first());
    let points: Vec<Point> =
        outer.map_or(points, |line| line.iter().map(|[x, y]| Point::new(*x, *y)).collect());
    polygon(&points)
}
