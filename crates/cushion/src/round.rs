//! Rounds the corners of a straight seam with true arcs.

use kurbo::{Point, Vec2};

use crate::curve::{Chain, Piece};
use crate::vector::{direction, length};

/// Below this turn, in radians, a corner is straight and there is nothing to round.
const NO_TURN: f64 = 1e-9;

/// The corners of a seam, each with the radius of its rounding where it has one.
pub(crate) struct Rounding<'a> {
    /// The corners in order; for a closed seam, the first once more at the end.
    pub(crate) stops: &'a [(Point, Option<f64>)],
    pub(crate) closed: bool,
}

/// One rounded corner: an arc in two halves, and how much it takes from the stretches beside it.
struct Corner {
    taken: f64,
    arc: Option<Piece>,
}

/// Returns the spans between the stops; a rounded stop lies in the middle of its arc.
///
/// # Errors
///
/// Returns the place of the stop whose rounding has no room.
pub(crate) fn rounded(seam: &Rounding<'_>) -> Result<Vec<Chain>, usize> {
    let last = seam.stops.len() - 1;
    let corners: Vec<Corner> = (0..=last).map(|stop| seam.corner(stop)).collect();
    (0..last)
        .map(|span| {
            let (from, to) = (seam.stops[span].0, seam.stops[span + 1].0);
            let length = from.distance(to);
            let (before, after) = (&corners[span], &corners[span + 1]);
            if before.taken + after.taken > length {
                return Err(if before.taken > after.taken { span } else { span + 1 });
            }
            let along = (to - from) / length;
            let line = Piece::Line(from + along * before.taken, to - along * after.taken);
            let mut pieces = Vec::new();
            pieces.extend(before.arc.map(|arc| half(arc, true)));
            if before.taken + after.taken < length - 1e-9 {
                pieces.push(line);
            }
            pieces.extend(after.arc.map(|arc| half(arc, false)));
            Ok(Chain::new(pieces))
        })
        .collect()
}

impl Rounding<'_> {
    fn corner(&self, stop: usize) -> Corner {
        let sharp = Corner { taken: 0.0, arc: None };
        let last = self.stops.len() - 1;
        let (here, Some(radius)) = self.stops[stop] else { return sharp };
        let (back, ahead) = match (stop, self.closed) {
            (0, true) => (last - 1, 1),
            (stop, true) if stop == last => (last - 1, 1),
            (0, false) => return sharp,
            (stop, false) if stop == last => return sharp,
            _ => (stop - 1, stop + 1),
        };
        let into = unit(here - self.stops[back].0);
        let out = unit(self.stops[ahead].0 - here);
        let turn = libm::atan2(into.cross(out), into.dot(out));
        if turn.abs() < NO_TURN || radius <= 0.0 {
            return sharp;
        }
        let taken = radius * libm::tan(turn.abs() / 2.0);
        let begin = here - into * taken;
        let left = Vec2::new(-into.y, into.x) * turn.signum();
        let center = begin + left * radius;
        let start = direction(begin - center);
        Corner { taken, arc: Some(Piece::Arc { center, radius, start, sweep: turn }) }
    }
}

/// The second half of an arc, or the first.
fn half(arc: Piece, second: bool) -> Piece {
    let Piece::Arc { center, radius, start, sweep } = arc else { return arc };
    let half = sweep / 2.0;
    Piece::Arc { center, radius, start: if second { start + half } else { start }, sweep: half }
}

fn unit(vector: Vec2) -> Vec2 {
    vector / length(vector)
}
