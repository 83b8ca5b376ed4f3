//! Openings: slits in the base, through which a hand fills a compartment.

use cushion::{CompartmentIx, Length, Pattern, Point, widest_place};
use kurbo::Vec2;

/// The longest slit that is drawn: a hand, and some more to work a closure.
///
/// From memory, unverified: a hand is some 78 mm across the knuckles.
const LONGEST: f64 = 110.0;
/// Cloth left at each end of a slit, to sew a closure on, in millimetres. Common practice, no
/// source.
const MARGIN: f64 = 12.0;
/// A slit that is shorter lets no hand in, in millimetres; see [`LONGEST`].
const HAND: f64 = 78.0;

/// A slit in the base.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// The number of the compartment, sewn at it.
    pub number: u8,
    /// Its middle, in the pattern's frame: from above.
    pub middle: Point,
    /// Its length.
    pub length: Length,
    /// Whether it runs from side to side, else from rear to front.
    pub across: bool,
}

impl Opening {
    /// The opening of a compartment: at its widest place, along its longer way.
    pub(crate) fn of(pattern: &Pattern, ix: CompartmentIx) -> Self {
        let (width, middle) = widest_place(pattern, ix);
        let corners = corners(pattern, ix);
        let room = |along: Vec2| room(&corners, middle, along);
        let across = room(Vec2::new(1.0, 0.0)) >= room(Vec2::new(0.0, 1.0));
        let along = if across { Vec2::new(1.0, 0.0) } else { Vec2::new(0.0, 1.0) };
        let most = (room(along) - 2.0 * MARGIN).max(width.to_mm() / 2.0);
        let length = Length::from_mm(LONGEST.min(most));
        Self { number: pattern[ix].number, middle, length, across }
    }

    /// Whether a hand goes through it.
    #[must_use]
    pub fn lets_a_hand_in(&self) -> bool {
        self.length.to_mm() >= HAND
    }

    /// Its ends, in the pattern's frame.
    #[must_use]
    pub fn ends(&self) -> [Point; 2] {
        let half = self.length.to_mm() / 2.0;
        let along = if self.across { Vec2::new(half, 0.0) } else { Vec2::new(0.0, half) };
        [self.middle - along, self.middle + along]
    }
}

/// All walls of a compartment as straight pieces.
fn corners(pattern: &Pattern, ix: CompartmentIx) -> Vec<[Point; 2]> {
    let compartment = &pattern[ix];
    let rings = std::iter::once(&compartment.outer).chain(&compartment.holes);
    let mut sides = Vec::new();
    for piece in rings.flat_map(|ring| pattern.pieces(ring)) {
        let points = cushion::Chain::new(vec![piece]).flatten(0.1);
        sides.extend(points.windows(2).map(|pair| [pair[0], pair[1]]));
    }
    sides
}

/// Twice the way from a point to the nearest wall along a direction and against it.
fn room(sides: &[[Point; 2]], from: Point, along: Vec2) -> f64 {
    let mut least = f64::INFINITY;
    for [a, b] in sides {
        let (to_a, side) = (*a - from, *b - *a);
        let across = along.cross(side);
        if across.abs() < 1e-12 {
            continue;
        }
        let (way, share) = (to_a.cross(side) / across, to_a.cross(along) / across);
        if (0.0..=1.0).contains(&share) {
            least = least.min(way.abs());
        }
    }
    2.0 * least
}
