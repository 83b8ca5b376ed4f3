//! What nobody asks for: what a goal may cost, and what is spared unless a goal needs it.
//!
//! Harm is counted in units of which one is as bad as twenty cells of an adult's cushion are tedious.
//! Where no source is named, numbers are practice judgements.

use case::SiteName;
use cushion::{Pattern, Side, StockFill};

use crate::goals::aims::{Aim, Filling, Quantity};
use crate::goals::needs::Needs;

/// Degrees by which the front may be turned up or down for nothing, and one unit beyond.
const PITCH: [f64; 2] = [1.0, 0.7];
/// The same to a side, where no goal asks for it.
const ROLL: [f64; 2] = [0.5, 0.5];
/// The share of the load that may go to the other side, or between pelvis and thighs.
const SHARE: [f64; 2] = [0.03, 0.03];
/// The share by which the surface pressure of a site may rise. One unit beyond is that of half a
/// unit of harm, as there are seven sites.
pub(crate) const SITE: [f64; 2] = [0.10, 0.10 * std::f64::consts::SQRT_2];
/// Surface pressure below which a rise is counted against this, Pa, some 15 mmHg: a tenth of it is
/// nothing that anybody reads.
pub(crate) const LITTLE: f64 = 2e3;
/// Clearance that is kept in reserve, m, and one unit below it: at 28 mm nobody was moved without
/// cause by hands that tell 3 mm.
const RESERVE: [f64; 2] = [28e-3, 1.5e-3];

/// What is spared unless a goal needs it, and one tolerance of each: a pitch that a hand on the
/// pelvis tells, degrees;
const SPARED_PITCH: [f64; 2] = [1.9, 0.4];
/// a clearance so near to the limit that the next reading may be below, m: by less than a hand tells;
const SPARED_CLEARANCE: [f64; 2] = [27e-3, 1e-3];
/// counts below what the layout gives as low, as a share of that;
const SPARED_CELLS: f64 = 0.05;
/// and a site that carries more than a tenth more, which is told after every answer.
const SPARED_SITE: [f64; 2] = [0.11, 0.10];

/// What a goal is measured against: harm, of which the squares are added up.
pub(crate) fn harm(needs: &Needs, reference: &Filling) -> Vec<Aim> {
    let mut aims = vec![];
    let mut around = |quantity: Quantity, [free, unit]: [f64; 2]| {
        if let Some(value) = quantity.value(reference) {
            aims.push(Aim { rank: 0, quantity, least: value - free, most: value + free, unit });
        }
    };
    around(Quantity::Pitch, PITCH);
    around(Quantity::ThighShare, SHARE);
    if !needs.turns_the_pelvis() {
        around(Quantity::Roll, ROLL);
        around(Quantity::LeftShare, SHARE);
    }
    aims.extend(risen(reference, 0, SITE));
    aims.extend(reserve());
    aims
}

/// The clearance that is kept in reserve under each seat bone, as harm counts it.
pub(crate) fn reserve() -> [Aim; 2] {
    clearances(0, RESERVE)
}

/// What comes after all goals are met and before they are met closer: kept unless no counts without it
/// meet the goals.
pub(crate) fn spared(
    needs: &Needs,
    pattern: &Pattern,
    stock: &StockFill,
    reference: &Filling,
) -> Vec<Aim> {
    let rank = needs.spared_rank();
    let mut aims = risen(reference, rank, SPARED_SITE);
    aims.extend(clearances(rank, SPARED_CLEARANCE));
    if let Some(value) = Quantity::Pitch.value(reference) {
        let [free, unit] = SPARED_PITCH;
        let (least, most) = (value - free, value + free);
        aims.push(Aim { rank, quantity: Quantity::Pitch, least, most, unit });
    }
    aims.extend(pattern.indices().map(|ix| {
        let low = f64::from(stock[ix].cells.low).min(reference.counts[ix.index()]);
        let (most, unit) = (f64::INFINITY, (SPARED_CELLS * low).max(1.0));
        Aim { rank, quantity: Quantity::Count(ix), least: low, most, unit }
    }));
    aims
}

fn risen(reference: &Filling, rank: usize, [free, unit]: [f64; 2]) -> Vec<Aim> {
    let aim = |site: SiteName| {
        let quantity = Quantity::Surface(site);
        let value = quantity.value(reference)?;
        let counted = value.max(LITTLE);
        let (most, unit) = (value + free * counted, unit * counted);
        Some(Aim { rank, quantity, least: f64::NEG_INFINITY, most, unit })
    };
    SiteName::ALL.into_iter().filter_map(aim).collect()
}

fn clearances(rank: usize, [least, unit]: [f64; 2]) -> [Aim; 2] {
    [Side::Left, Side::Right].map(|side| {
        let (quantity, most) = (Quantity::Clearance(side), f64::INFINITY);
        Aim { rank, quantity, least, most, unit }
    })
}
