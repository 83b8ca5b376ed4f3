//! What checks on a cushion teach about the client and about it.

use case::{BodyError, Check, Client, Taught, TaughtOfCushion};
use cushion::Mass;
use mechanics::Stop;

use crate::checks::adjust::{MOST_EARLIER, can_be_made};
use crate::checks::estimate::{EstimateMeshes, Round, estimate};
use crate::goals::aims::real;
use crate::prediction::assumptions::assumptions_of;
use crate::prediction::prepared::PreparedCushion;
use crate::prediction::unknowns::Unknown;

/// Returns what was learnt, from what is usual for the client's file, by what hands found on a
/// cushion: each round with the cells that lay in it then, in the pattern's order. Checks that
/// nobody can make there are left out, and of many rounds the newest are learnt from.
///
/// # Errors
///
/// Returns what in the client's measures is no body's.
///
/// # Panics
///
/// Panics unless each round has a count for each compartment.
pub fn taught(
    client: &Client,
    cushion: &PreparedCushion,
    weight: Mass,
    found: &[(Vec<u32>, Vec<Check>)],
    stop: Stop<'_>,
) -> Result<Taught, BodyError> {
    let pattern = cushion.pattern();
    let round = |(counts, checks): &(Vec<u32>, Vec<Check>)| {
        assert_eq!(counts.len(), pattern.compartments().len(), "a count for each compartment");
        let can = |check: &&Check| can_be_made(pattern, check).is_ok();
        Round { counts: real(counts), checks: checks.iter().filter(can).copied().collect() }
    };
    let newest = &found[found.len().saturating_sub(MOST_EARLIER)..];
    let rounds: Vec<Round> = newest.iter().map(round).collect();
    let usual = assumptions_of(client, cushion, weight, stop)?;
    let learnt = estimate(EstimateMeshes::of(cushion), pattern, &usual, &rounds, stop)?;
    let place = |unknown: Unknown| {
        let at = Unknown::ALL.iter().position(|own| *own == unknown);
        at.map_or(0.0, |at| learnt.places[at])
    };
    Ok(Taught {
        seat_share: place(Unknown::SeatShare),
        sharpness: place(Unknown::Sharpness),
        load_forward: place(Unknown::LoadForward),
        load_right: place(Unknown::LoadRight),
        left_lower: place(Unknown::Skew),
        trunk: place(Unknown::Trunk),
        own_roll_stiffness: place(Unknown::OwnRollStiffness),
        cushion: TaughtOfCushion {
            inner_give: place(Unknown::InnerGive),
            outer_give: place(Unknown::OuterGive),
            sag: place(Unknown::Sag),
            taut_tension: place(Unknown::TautTension),
            slack: place(Unknown::Slack),
            migration: place(Unknown::Migration),
            void_pressure: place(Unknown::VoidPressure),
            packing: place(Unknown::Packing),
        },
    })
}
