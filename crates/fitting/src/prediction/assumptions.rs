//! From a client's file to the body that the mechanics knows.

use case::BodyError;
use case::{Base, Chair, Client, CushionSides, Sides};
use cushion::{Length, Mass, Pattern, Rim, Side};
use mechanics::{Obliquity, Parameters, SeatedClient, Stop};

use crate::advice::altitude::air_pressure;
use crate::goals::needs::oblique;
use crate::prediction::client_on_cushion::{ClientOnCushion, has_numbers};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::{Assumptions, Seat};

/// The depth of the cushion for which the usual places of seat bones and load are given, mm.
const USUAL_DEPTH: f64 = 400.0;

/// The client as they sit on a cushion of a size.
///
/// A small cushion is for a small body: where seat bones and load are scales with its depth from
/// the usual places on 400 mm, unless the file gives the seat bones' own.
///
/// What is fixed of an obliquity is built into the body. What is flexible is not: it is a load
/// that is off to the lower side, see [`leaning`].
fn upright(client: &Client, pattern: &Pattern, weight: Mass) -> Assumptions {
    let mut sitter = SeatedClient::new(weight);
    sitter.measures = client.measures.clone();
    let scale = (pattern.size().depth().to_mm() / USUAL_DEPTH).min(1.0);
    let forward = SeatedClient::SEAT_BONES_FORWARD * scale;
    sitter.seat_bones_forward = Some(client.seat.seat_bones_forward.unwrap_or(forward));
    sitter.load_forward = Some(SeatedClient::LOAD_FORWARD * scale);
    sitter.injured = Sides {
        left: client.skin.ever_injured(Side::Left),
        right: client.skin.ever_injured(Side::Right),
    };
    if let Some(oblique) = oblique(client) {
        let fixed = oblique.by - oblique.reducible;
        sitter.obliquity = Some(Obliquity::at_seat_bones(oblique.lower, fixed));
    }
    sitter.windswept = client.posture.windswept.map(|windswept| (windswept.to, windswept.degrees));
    if let Some(share) = client.seat.share {
        sitter.seat_share = share;
    }
    if let Some(height) = client.seat.trunk_height {
        sitter.trunk_height = height;
    }
    let mut parameters = Parameters::default();
    let air = |height: Option<Length>, usual| {
        height.and_then(air_pressure).map_or(usual, |pressure| pressure.to_pa())
    };
    parameters.sealing_pressure = air(client.altitudes.sealed, parameters.sealing_pressure);
    parameters.air_pressure = air(client.altitudes.home, parameters.air_pressure);
    parameters.outer_give =
        outer_give(parameters.outer_give, pattern.rim(), client.chair.cushion_sides);
    let seat = seat(&client.chair, pattern.size().width());
    Assumptions { parameters, sitter, cells: 1.0, seat }
}

/// By how much a sag may be off where the seat is a sling or nobody looked, where a sling was
/// measured, and where it is solid, mm; practice judgements.
const SAG_UNKNOWN: f64 = 15.0;
const SAG_MEASURED: f64 = 5.0;
const SAG_SOLID: f64 = 2.0;

/// The seat under a cushion so wide.
fn seat(chair: &Chair, cushion_width: Length) -> Seat {
    let width = chair.inside_width.unwrap_or(cushion_width);
    let (sag, within) = match (chair.base, chair.sling_sag) {
        (Some(Base::Solid), _) => (Length::ZERO, SAG_SOLID),
        (_, Some(measured)) => (measured, SAG_MEASURED),
        (_, None) => (Length::ZERO, SAG_UNKNOWN),
    };
    Seat { sag, within: Length::from_mm(within), width }
}

/// How much of their give the outer walls use: nothing where a boxed rim or the sides of the chair
/// hold them, else what is usual.
///
/// Where nobody looked, no chair is believed to hold them: that is the careful answer, since walls
/// that bow leave less clearance. A chair that holds the sides counts as if it held all outer walls:
/// the rear one stands before the back support, and how far the front one bows is left out.
pub(crate) fn outer_give(usual: f64, rim: Rim, sides: Option<CushionSides>) -> f64 {
    let held = rim == Rim::Boxed || sides == Some(CushionSides::Held);
    if held { 0.0 } else { usual }
}

/// Steps by which the line of a leaning client's load is found: each is a straight line's.
const LEAN_STEPS: usize = 3;

/// The client as they sit on a cushion: leaning, where the obliquity is flexible, by just what
/// was measured on the stock fill.
pub(crate) fn assumptions_of(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    stop: Stop<'_>,
) -> Result<Assumptions, BodyError> {
    let mut assumptions = upright(client, cushion.pattern(), weight);
    let Some(oblique) = oblique(client).filter(|oblique| oblique.reducible > Length::ZERO) else {
        return Ok(assumptions);
    };
    let (pattern, stock) = (cushion.pattern(), cushion.stock());
    let counts: Vec<f64> = pattern.indices().map(|ix| f64::from(stock[ix].cells.stock)).collect();
    let wanted = oblique.right_higher(false);
    for _ in 0..LEAN_STEPS {
        let seated = ClientOnCushion::new(cushion.coarse(), assumptions.clone(), stop)?;
        let answer = seated.rest(&counts, None);
        let Some(resting) = answer.resting().filter(|_| has_numbers(&answer.rest)) else { break };
        let now = [Side::Right, Side::Left]
            .map(|side| crate::prediction::predictor::clearance(&seated, resting, side));
        let spacing = assumptions
            .sitter
            .measures
            .seat_bone_spacing
            .unwrap_or(SeatedClient::SEAT_BONE_SPACING);
        // What is missing of the lean, times the stiffness against it, is a moment; over the
        // weight it is how much farther the load is to the side, left for a lower left.
        let roll = (wanted - (now[0] - now[1])) / spacing.to_m();
        let moment = roll * (resting.stiffness.roll - resting.stiffness.trunk);
        let by = -moment / seated.body().load().weight.to_n();
        let right = assumptions.sitter.load_right.to_m() + by;
        assumptions.sitter.load_right = Length::from_m(right.clamp(-0.1, 0.1));
    }
    Ok(assumptions)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outer_walls_are_held_by_a_boxed_rim_or_by_the_chair_and_by_nothing_that_is_not_known() {
        for (rim, sides, expected) in [
            (Rim::Soft, None, 0.5),
            (Rim::Soft, Some(CushionSides::Open), 0.5),
            (Rim::Soft, Some(CushionSides::Held), 0.0),
            (Rim::Boxed, None, 0.0),
            (Rim::Boxed, Some(CushionSides::Open), 0.0),
            (Rim::Boxed, Some(CushionSides::Held), 0.0),
        ] {
            assert_eq!(outer_give(0.5, rim, sides), expected, "{rim:?} {sides:?}");
        }
    }
}
