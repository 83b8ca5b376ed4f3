//! Moves that may do little: walls between compartments give way, and swallow the first cells.
//!
//! A wall of height h and length L that hangs slack sweeps up to `A L` to either side, with
//! `A = h^2 / (2 pi)` (see [`mechanics`]). With half of its give used, cells of the volume v that go
//! from one of its sides to the other do hardly anything before `A L / (1.1 v)` of them have gone:
//! some four adult cells for a wall of 60 by 190 mm.

use case::{Move, Place};
use cushion::{CompartmentIx, Length, Pattern, Volume};

use crate::prediction::prepared::PreparedCushion;

/// Room that a poured cell takes of a wall's sweep, over its own volume: voids come with it, and
/// neighbours give way.
const ROOM: f64 = 1.1;

/// The most cells among those moves that a wall may swallow; none where there is no such move.
///
/// From and to the spare bag nothing is swallowed by the wall between two compartments.
#[must_use]
pub fn small_moves(cushion: &PreparedCushion, moves: &[Move]) -> Option<u32> {
    let pattern = cushion.pattern();
    let at = |place: Place| match place {
        Place::Compartment(number) => pattern.by_number(number),
        Place::Spare => None,
    };
    let small = moves.iter().filter(|step| {
        at(step.from).zip(at(step.to)).is_some_and(|(from, to)| {
            f64::from(step.cells) <= swallowed(pattern, cushion.each(), [from, to])
        })
    });
    small.map(|step| step.cells).max()
}

/// Cells that the wall between two compartments swallows; where they are no neighbours, the lesser
/// of what the longest walls of the two do.
fn swallowed(pattern: &Pattern, each: Volume, pair: [CompartmentIx; 2]) -> f64 {
    let between = shared(pattern, pair[0], pair[1]);
    let wall = if between > Length::ZERO {
        between
    } else {
        let longest = pair.map(|own| {
            let others = pattern.indices().filter(|other| *other != own);
            others.map(|other| shared(pattern, own, other)).fold(Length::ZERO, Length::max)
        });
        longest[0].min(longest[1])
    };
    let height = pattern.wall_height().to_m();
    let reach = height * height / std::f64::consts::TAU;
    reach * wall.to_m() / (ROOM * each.to_m3())
}

/// How long a wall two compartments share.
fn shared(pattern: &Pattern, one: CompartmentIx, other: CompartmentIx) -> Length {
    let both = pattern.edges().iter().filter(|edge| {
        [edge.left, edge.right] == [Some(one), Some(other)]
            || [edge.left, edge.right] == [Some(other), Some(one)]
    });
    both.map(|edge| Length::from_mm(edge.chain.length())).fold(Length::ZERO, |sum, own| sum + own)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: independent rival models, some 4 cells for a wall of 60 by 190 mm.
    #[test]
    fn a_wall_swallows_by_its_height_and_length() {
        let pattern = testkit::pattern("row-six", "440x400");
        let number = |number| pattern.by_number(number).expect("it is there");
        let pair = [number(1), number(2)];
        let length = shared(&pattern, pair[0], pair[1]).to_mm();
        // The layout's centre seam from the rear edge to the seat seam: 68 % of 400 mm less 83 mm.
        assert!((length - 189.0).abs() < 1.0, "{length}");
        let each = Volume::from_ml(27.0);
        // 80 mm high: 0.080^2 / 2 pi x 0.189 m over 1.1 x 27 ml.
        let cells = swallowed(&pattern, each, pair);
        assert!((cells - 6.48).abs() < 0.05, "{cells}");
        assert_eq!(cells, swallowed(&pattern, each, [pair[1], pair[0]]));
        // Far apart, it is by walls of their own.
        assert!(swallowed(&pattern, each, [number(1), number(6)]) > 0.0);
    }
}
