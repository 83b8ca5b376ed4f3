//! One body on two cushions: what it has on each, and the least difference that the model can tell.

use case::{
    BodyError, Both, Client, ComparedMeasure, ComparedSeat, ComparedValues, Flexibility,
    MeasuredAt, PelvicObliquity, PredictedOutcome, Sides, TRIED_OBLIQUITY,
};
use cushion::{Force, Mass, Pressure, Side};
use mechanics::{Body, Resting, SiteName, Stop};

use crate::advice::review::stock_counts;
use crate::goals::aims::real;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::client_on_cushion::{
    Answer, ClientOnCushion, MeshedCushion, has_numbers, index_of,
};
use crate::prediction::predictor::{clearance, outcome_of};
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::{Assumptions, Unknown};
use crate::search::side_by_side::side_by_side;

/// Where in the values those begin that are found with an obliquity.
const OBLIQUE: usize = ComparedMeasure::COUNT - 2;

/// Returns the whole counts with which an unloaded cushion comes nearest to a fill pressure in each of
/// its compartments, in the pattern's order; those as supplied at the pressure of the stock fill.
#[must_use]
pub fn counts_at_pressure(cushion: &PreparedCushion, pressure: Pressure) -> Vec<u32> {
    if pressure == cushion.stock().pressure {
        return stock_counts(cushion);
    }
    real_counts(cushion, pressure).into_iter().map(|count| count.round() as u32).collect()
}

/// The same, not rounded.
fn real_counts(cushion: &PreparedCushion, pressure: Pressure) -> Vec<f64> {
    let count = |ix| cushion.unloaded().at_pressure(ix, pressure).count.max(0.0);
    cushion.pattern().indices().map(count).collect()
}

/// Returns how a client sits on a cushion with these counts: as they are, and with an obliquity of
/// [`TRIED_OBLIQUITY`] where they have none of their own.
///
/// Who is no body to the model comes to no rest.
///
/// # Panics
///
/// Panics unless there is a count for each compartment.
#[must_use]
pub fn compared_seat(
    (cushion, counts): (&PreparedCushion, &[u32]),
    client: &Client,
    weight: Mass,
) -> ComparedSeat {
    let nothing = ComparedSeat {
        outcome: PredictedOutcome::OutOfSteps,
        values: [None; ComparedMeasure::COUNT],
    };
    let counts = real(counts);
    let Some([level, oblique]) = both_postures(cushion, client, weight) else { return nothing };
    let Some((outcome, mut values)) = on(cushion.fine(), level, &counts, client) else {
        return nothing;
    };
    // Some who are a body as they are would be none with it.
    let tried = on(cushion.fine(), oblique, &counts, client);
    let tried = tried.map_or([None; ComparedMeasure::COUNT], |(_, values)| values);
    values[OBLIQUE..].copy_from_slice(&tried[OBLIQUE..]);
    ComparedSeat { outcome, values }
}

/// Says whether a client's measures make a body to sit on a cushion.
///
/// # Errors
///
/// Returns what in them is no body's.
pub fn is_a_body(
    cushion: &PreparedCushion,
    client: &Client,
    weight: Mass,
) -> Result<(), BodyError> {
    let assumptions = assumptions_of(client, cushion, weight, Stop::never())?;
    Body::of_client(&assumptions.sitter).map(|_| ())
}

/// What is assumed of a client as they are, and with an obliquity; none of whom is no body.
fn both_postures(
    cushion: &PreparedCushion,
    client: &Client,
    weight: Mass,
) -> Option<[Assumptions; 2]> {
    let of = |client: &Client| assumptions_of(client, cushion, weight, Stop::never()).ok();
    Some([of(client)?, of(&made_oblique(client))?])
}

/// A client with an obliquity: their own, or the one that is tried.
fn made_oblique(client: &Client) -> Client {
    let tried = PelvicObliquity {
        lower: Side::Left,
        by: TRIED_OBLIQUITY,
        at: MeasuredAt::SeatBones,
        flexibility: Flexibility::Fixed,
    };
    let mut oblique = client.clone();
    oblique.posture.obliquity = Some(client.posture.obliquity.unwrap_or(tried));
    oblique
}

/// The side that is lower of an oblique client.
fn low_side(client: &Client) -> Side {
    client.posture.obliquity.map_or(Side::Left, |own| own.lower)
}

/// How a body with these assumptions sits; none where it is no body.
fn on(
    cushion: &MeshedCushion,
    assumptions: Assumptions,
    counts: &[f64],
    client: &Client,
) -> Option<(PredictedOutcome, ComparedValues)> {
    let seated = ClientOnCushion::new(cushion, assumptions, Stop::never()).ok()?;
    let answer = seated.rest(counts, None);
    Some((outcome_of(&answer.rest), values(&seated, &answer, low_side(client))))
}

/// The values of an answer, in the order of [`ComparedMeasure::ALL`].
fn values(seated: &ClientOnCushion<'_>, answer: &Answer, low: Side) -> ComparedValues {
    let resting = answer.resting().filter(|_| has_numbers(&answer.rest));
    let Some(resting) = resting else { return [None; ComparedMeasure::COUNT] };
    let under = |side| clearance(seated, resting, side) * 1e3;
    let bones = |of: &dyn Fn(&mechanics::SiteRest) -> f64| {
        [Side::Left, Side::Right].map(|side| {
            let at = index_of(seated.body(), SiteName::SeatBone(side));
            at.map_or(0.0, |at| of(&resting.sites[at]))
        })
    };
    let [deep, deep_right] = bones(&|site| site.immersion.to_mm());
    let [surface, surface_right] = bones(&|site| site.pressure.to_kpa());
    let load = seated.body().load().weight.to_n();
    let high = if low == Side::Left { Side::Right } else { Side::Left };
    let of = |measure| match measure {
        ComparedMeasure::LeftUnder => under(Side::Left),
        ComparedMeasure::RightUnder => under(Side::Right),
        ComparedMeasure::Immersion => 0.5 * (deep + deep_right),
        ComparedMeasure::BoneSurface => surface.max(surface_right),
        ComparedMeasure::GreatestSurface => resting.greatest_disc(seated.model()).1.to_kpa(),
        ComparedMeasure::MeanSurface => load / resting.contact_area.to_m2() / 1e3,
        ComparedMeasure::PelvisShare => pelvis_share(resting),
        ComparedMeasure::RollStiffness => resting.stiffness.roll.to_radians(),
        ComparedMeasure::Pitch => libm::atan(resting.pose[2]).to_degrees(),
        ComparedMeasure::Oblique => under(high) - under(low),
        ComparedMeasure::ObliqueUnder => under(low),
    };
    ComparedMeasure::ALL.map(|measure| Some(of(measure)))
}

/// What the pelvis carries of all that is carried, in a hundred.
fn pelvis_share(resting: &Resting) -> f64 {
    let sum = |of: Sides<Force>| of.left.to_n() + of.right.to_n();
    let (pelvis, thighs) = (sum(resting.regions.pelvis), sum(resting.regions.thighs));
    100.0 * pelvis / (pelvis + thighs)
}

/// Returns the least difference between two cushions that the model can tell for a client, measure by
/// measure; `clients` are the same person, for the size of each. None where the client comes to no
/// rest on one of them, or would not with an unknown at an end of its range.
///
/// It is how far the difference itself moves: where each unknown is at the ends of its range, on both
/// cushions alike, since cloth, cells and client are the same; from one mesh to another; and from
/// whole cells to the very pressure. These are put together as if independent.
///
/// # Panics
///
/// Panics unless there is a count for each compartment.
#[must_use]
pub fn least_told(
    cushions: Both<(&PreparedCushion, &[u32])>,
    clients: Both<&Client>,
    weight: Mass,
    pressure: Pressure,
) -> ComparedValues {
    let mut told = [None; ComparedMeasure::COUNT];
    for oblique in [false, true] {
        let [Some(first), Some(second)] =
            [0, 1].map(|at| OneSide::new(cushions[at], clients[at], (weight, pressure), oblique))
        else {
            continue;
        };
        let places = if oblique { OBLIQUE..ComparedMeasure::COUNT } else { 0..OBLIQUE };
        for at in places {
            told[at] = first.least_told(&second, at);
        }
    }
    told
}

/// A client on one cushion, with all that moves the numbers.
struct OneSide {
    /// On the mesh whose numbers are given.
    fine: ComparedValues,
    /// On the mesh on which unknowns are moved.
    rough: ComparedValues,
    /// The same with counts that are not rounded.
    unrounded: ComparedValues,
    /// The same with each unknown at the low and the high end of its range, in turns.
    moved: Vec<ComparedValues>,
}

impl OneSide {
    /// Asks all; none where the client comes to no rest.
    fn new(
        (cushion, counts): (&PreparedCushion, &[u32]),
        client: &Client,
        (weight, pressure): (Mass, Pressure),
        oblique: bool,
    ) -> Option<Self> {
        let [level, tried] = both_postures(cushion, client, weight)?;
        let assumptions = if oblique { tried } else { level };
        let (counts, low) = (real(counts), low_side(client));
        let (_, fine) = on(cushion.fine(), assumptions.clone(), &counts, client)?;
        let seated = ClientOnCushion::new(cushion.rough(), assumptions, Stop::never()).ok()?;
        let answer = seated.rest(&counts, None);
        let resting = answer.resting().filter(|_| has_numbers(&answer.rest))?;
        let exact = seated.rest(&real_counts(cushion, pressure), Some(resting));
        // What leans a client to a side is looked at in a fitting check, as in every spread.
        let counted = Unknown::ALL.into_iter().filter(|own| oblique || !own.leans_aside());
        let questions: Vec<(Unknown, f64)> =
            counted.flat_map(|own| [(own, -1.0), (own, 1.0)]).collect();
        let moved = side_by_side(&questions, |(unknown, place)| {
            let moved = unknown.moved(&seated.assumptions, *place);
            let seated = ClientOnCushion::new(cushion.rough(), moved, Stop::never());
            let values = |seated: ClientOnCushion<'_>| {
                values(&seated, &seated.rest(&counts, Some(resting)), low)
            };
            seated.map_or([None; ComparedMeasure::COUNT], values)
        });
        let unrounded = values(&seated, &exact, low);
        Some(Self { fine, rough: values(&seated, &answer, low), unrounded, moved })
    }

    /// How far the difference to another cushion moves in one measure; none where it has no number
    /// somewhere.
    fn least_told(&self, other: &Self, at: usize) -> Option<f64> {
        let difference = |own: &ComparedValues, there: &ComparedValues| Some(there[at]? - own[at]?);
        let usual = difference(&self.rough, &other.rough)?;
        let off = |own, there| Some((difference(own, there)? - usual).abs());
        let mesh = off(&self.fine, &other.fine)?;
        let rounding = off(&self.unrounded, &other.unrounded)?;
        let mut sum = mesh * mesh + rounding * rounding;
        for (own, there) in self.moved.chunks(2).zip(other.moved.chunks(2)) {
            let ends = [off(&own[0], &there[0])?, off(&own[1], &there[1])?];
            sum += ends[0].max(ends[1]).powi(2);
        }
        Some(sum.sqrt())
    }
}

#[cfg(test)]
mod tests {
    use cushion::Length;

    use super::*;
    use crate::prediction::prepared::Spacings;

    fn cushion(layout: &str) -> PreparedCushion {
        let pattern = testkit::pattern(layout, "440x400");
        let spacings = Spacings::all(Length::from_mm(16.0));
        PreparedCushion::new(&pattern, &testkit::cell(), spacings).expect("it can be filled")
    }

    /// Half a cell more than the nearest count is at or above the pressure, half a cell less at or
    /// below it.
    #[test]
    fn counts_are_the_whole_ones_that_come_nearest_to_a_pressure() {
        for layout in ["row-six", "island-eight", "curved-ten"] {
            let cushion = cushion(layout);
            let stock = cushion.stock().pressure;
            assert_eq!(counts_at_pressure(&cushion, stock), stock_counts(&cushion));
            for share in [0.6, 0.9, 1.3] {
                let pressure = stock * share;
                let counts = counts_at_pressure(&cushion, pressure);
                for (ix, count) in cushion.pattern().indices().zip(counts) {
                    let at =
                        |off: f64| cushion.unloaded().at_count(ix, f64::from(count) + off).pressure;
                    // Rounding of the root that is found.
                    let near = 1.0 + 1e-9;
                    assert!(at(-0.5) <= pressure * near && pressure <= at(0.5) * near, "{layout}");
                }
            }
        }
    }
}
