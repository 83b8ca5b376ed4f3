//! The limits that come before every goal.

use case::{BrokenLimit, PredictedOutcome, Prediction, Spread, Want};
use cushion::{Length, Pattern, Side};
use mechanics::Parameters;

use crate::goals::aims::{Aim, Filling, Quantity};
use crate::goals::needs::Needs;

/// The least fill pressure that counts as a compartment in use, Pa: what its own cover weighs.
const IN_USE: f64 = 50.0;
/// How much more surface pressure an injured site may get, as a share of that at the stock fill:
/// what nobody can tell from the stock fill.
const NO_MORE: f64 = 0.02;

/// One tolerance of the pressure at an injured site, as a share of that at the stock fill, and at
/// least, Pa. Limits are kept before all else, so that it only weighs one limit against another.
const INJURED_UNIT: f64 = 0.05;
const LEAST_INJURED_UNIT: f64 = 50.0;
/// One tolerance of a height that a limit is about, m: only weighs one limit against another.
const HEIGHT_UNIT: f64 = 1e-3;

/// How much the pelvis may be turned to a side where no goal asks for it, m of height between the
/// seat bones. Asymmetries below 10 mm are ignored in practice (from memory); this is well below.
const NO_NEW_LEAN: f64 = 3e-3;

/// The clearance that is needed under each seat bone, m: the limit on the central estimate, and
/// the least clearance at the low end, which lies so far below.
pub(crate) fn needed(below: [f64; 2]) -> [f64; 2] {
    let parameters = Parameters::default();
    below.map(|below| parameters.clearance_limit.max(parameters.least_clearance + below))
}

/// The limits on a filling as aims of rank zero; `needed` is the clearance under the left and the
/// right seat bone, m.
pub(crate) fn limits(
    needs: &Needs,
    pattern: &Pattern,
    stock: &Filling,
    needed: [f64; 2],
) -> Vec<Aim> {
    let at_least =
        |quantity, least, unit| Aim { rank: 0, quantity, least, most: f64::INFINITY, unit };
    let mut aims = vec![
        at_least(Quantity::Clearance(Side::Left), needed[0], HEIGHT_UNIT),
        at_least(Quantity::Clearance(Side::Right), needed[1], HEIGHT_UNIT),
    ];
    aims.extend(pattern.indices().map(|ix| {
        // What lies loose at the stock fill may go on lying loose.
        let pressure = stock.resting.compartments[ix.index()].pressure.to_pa();
        at_least(Quantity::Fill(ix), IN_USE.min(pressure), IN_USE)
    }));
    let turns = |goal: &case::Goal| {
        matches!(goal.want, Want::CorrectObliquity | Want::AccommodateObliquity)
    };
    if !needs.goals.iter().any(turns) {
        let quantity = Quantity::RightHigher;
        let now = quantity.value(stock).unwrap_or(0.0);
        let (least, most) = (now - NO_NEW_LEAN, now + NO_NEW_LEAN);
        aims.push(Aim { rank: 0, quantity, least, most, unit: HEIGHT_UNIT });
    }
    for site in &needs.injured {
        let quantity = Quantity::Surface(*site);
        if let Some(now) = quantity.value(stock) {
            let most = now * (1.0 + NO_MORE);
            let unit = (INJURED_UNIT * now).max(LEAST_INJURED_UNIT);
            aims.push(Aim { rank: 0, quantity, least: f64::NEG_INFINITY, most, unit });
        }
    }
    aims
}

/// Which limits a prediction does not keep; none where the client may be seated so, to be checked
/// by hand.
#[must_use]
pub fn broken(prediction: &Prediction) -> Vec<BrokenLimit> {
    let parameters = Parameters::default();
    let Some(seat) = &prediction.seated else {
        return vec![match prediction.outcome {
            PredictedOutcome::Tipping => BrokenLimit::Tips,
            PredictedOutcome::LeansAway => BrokenLimit::LeansAway,
            PredictedOutcome::AtRest
            | PredictedOutcome::Bottomed
            | PredictedOutcome::OutOfSteps => BrokenLimit::NoRest,
        }];
    };
    let mut broken = Vec::new();
    let limit = Length::from_m(parameters.clearance_limit);
    let least = Length::from_m(parameters.least_clearance);
    for side in [Side::Left, Side::Right] {
        let Spread { central, low, .. } = seat.clearance[side];
        if central < limit {
            broken.push(BrokenLimit::Clearance { side, left: central, needed: limit });
        } else if low < least {
            let left = low.max(Length::ZERO);
            broken.push(BrokenLimit::LowClearance { side, left, needed: least });
        }
    }
    let bottomed = seat.compartments.iter().filter(|compartment| compartment.bottomed);
    let numbers: Vec<u8> = bottomed.map(|compartment| compartment.number).collect();
    broken.extend((!numbers.is_empty()).then_some(BrokenLimit::BottomsOut(numbers)));
    broken
}
