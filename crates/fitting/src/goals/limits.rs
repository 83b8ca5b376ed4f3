//! The limits that come before every goal.

use case::{BrokenLimit, PredictedOutcome, Prediction, SiteName, Spread, ToldFrom};
use cushion::{Length, Pattern, Side};
use mechanics::Parameters;

use crate::goals::aims::{Aim, Filling, Quantity};
use crate::goals::needs::Needs;

/// The least fill pressure that counts as a compartment in use, Pa: what its own cover weighs.
const IN_USE: f64 = 50.0;
/// How much more surface pressure a site with an injury that is not healed may get, as a share of
/// that of the reference: what two meshes differ by, and nobody can tell.
pub(crate) const NO_MORE: f64 = 0.01;
/// The same of a site with a healed injury, or of one that feels nothing: a practice judgement.
pub(crate) const A_LITTLE_MORE: f64 = 0.05;

/// By how much more, as a share, a search's answer may lie above what it aimed at: what whole cells and
/// two meshes differ by.
const OFF_BY_MESHES: f64 = 0.04;

/// A rise that nobody can tell, however little a site carries, Pa, less than 1 mmHg.
const NOTHING_TO_TELL: f64 = 100.0;

/// One tolerance of the pressure at an injured site, as a share of that of the reference, and
/// at least, Pa. Limits are kept before all else, so that it only weighs one limit against another.
const INJURED_UNIT: f64 = 0.05;
const LEAST_INJURED_UNIT: f64 = 50.0;
/// One tolerance of a height that a limit is about, m: only weighs one limit against another.
const HEIGHT_UNIT: f64 = 1e-3;

/// Degrees by which the pelvis may be turned to a side where no goal asks for it: what is left of one
/// degree, which is 2 mm between the seat bones, for what two meshes differ by. Asymmetries below
/// 10 mm are ignored in practice (from memory).
const NO_NEW_LEAN: f64 = 0.9;
/// Degrees by which the front may be turned up or down by a goal, whatever it is: with what two meshes
/// differ by four degrees, or 30 mm over the depth of a seat; a practice judgement. Less is what is
/// spared, see [`crate::goals::harm`].
const MOST_PITCH: f64 = 3.8;
/// The same for a client who slides forward: how far the front may fall, and rise.
const SLIDER_FALLS: f64 = 0.4;
const SLIDER_RISES: f64 = 0.9;
/// One tolerance of a turn, degrees: only weighs one limit against another.
const TURN_UNIT: f64 = 0.5;

/// What may not get worse: the counts that are departed from, and those on which a fitting check was
/// passed.
#[derive(Clone, Copy)]
pub(crate) struct Reference<'a> {
    /// The stock fill before a first set-up, later what is in the cushion.
    pub(crate) now: &'a Filling,
    /// The last counts on which a check was passed, where there are some; never counts that failed.
    pub(crate) passed: Option<&'a Filling>,
}

impl Reference<'_> {
    /// The lower pressure at a site, Pa, of what is now and what was passed.
    pub(crate) fn surface(&self, site: SiteName) -> Option<f64> {
        let surface = |filling| Quantity::Surface(site).value(filling);
        let now = surface(self.now)?;
        Some(self.passed.and_then(surface).map_or(now, |passed| passed.min(now)))
    }
}

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
    reference: Reference<'_>,
    needed: [f64; 2],
) -> Vec<Aim> {
    let at_least =
        |quantity, least, unit| Aim { rank: 0, quantity, least, most: f64::INFINITY, unit };
    let mut aims = vec![
        at_least(Quantity::Clearance(Side::Left), needed[0], HEIGHT_UNIT),
        at_least(Quantity::Clearance(Side::Right), needed[1], HEIGHT_UNIT),
    ];
    aims.extend(pattern.indices().map(|ix| {
        // What lies loose at the reference may go on lying loose.
        let pressure = reference.now.resting.compartments[ix.index()].pressure.to_pa();
        at_least(Quantity::Fill(ix), IN_USE.min(pressure), IN_USE)
    }));
    aims.extend(turns(needs, reference.now));
    for (site, share) in needs.careful() {
        if let Some(now) = reference.surface(site) {
            let quantity = Quantity::Surface(site);
            let most = now + (share * now).max(NOTHING_TO_TELL);
            let unit = (INJURED_UNIT * now).max(LEAST_INJURED_UNIT);
            aims.push(Aim { rank: 0, quantity, least: f64::NEG_INFINITY, most, unit });
        }
    }
    aims
}

/// How far the pelvis may be turned from how it is.
fn turns(needs: &Needs, now: &Filling) -> Vec<Aim> {
    let around = |quantity: Quantity, [falls, rises]: [f64; 2]| {
        let value = quantity.value(now)?;
        let (least, most) = (value - falls, value + rises);
        Some(Aim { rank: 0, quantity, least, most, unit: TURN_UNIT })
    };
    let roll = (!needs.turns_the_pelvis()).then(|| around(Quantity::Roll, [NO_NEW_LEAN; 2]));
    let pitch = if needs.slides && !needs.lowers_the_front() {
        [SLIDER_FALLS, SLIDER_RISES]
    } else {
        [MOST_PITCH; 2]
    };
    roll.flatten().into_iter().chain(around(Quantity::Pitch, pitch)).collect()
}

/// Whether one filling loads a site more than another, by more than anybody can tell.
pub(crate) fn loads_more(site: SiteName, now: &Filling, then: &Filling) -> bool {
    let surface = |filling| Quantity::Surface(site).value(filling);
    surface(now).zip(surface(then)).is_some_and(|(now, then)| then > now * (1.0 + NO_MORE))
}

/// The sites with an injury to which a filling gives more than it may: beyond what the search aims at, more
/// than whole cells and two meshes differ by.
pub(crate) fn overloaded(
    needs: &Needs,
    reference: Reference<'_>,
    from: ToldFrom,
    filling: &Filling,
) -> Vec<BrokenLimit> {
    let overloaded = |(site, share): (SiteName, f64)| {
        let then = Quantity::Surface(site).value(filling)?;
        let now = reference.surface(site)?;
        let present = Quantity::Surface(site).value(reference.now);
        // Of two references the lower one is what may not get worse.
        let from = if present > Some(now) { ToldFrom::Passed } else { from };
        let most = (now * (1.0 + share + OFF_BY_MESHES)).max(now + NOTHING_TO_TELL);
        let rise = if now > 0.0 { then / now - 1.0 } else { 1.0 };
        let healed = !needs.injured.contains(&site);
        (then > most).then_some(BrokenLimit::InjuredSite { site, healed, rise, from })
    };
    let is_injury = |site: SiteName| needs.injured.contains(&site) || needs.healed.contains(&site);
    let injuries = needs.careful().into_iter().filter(|(site, _)| is_injury(*site));
    injuries.filter_map(overloaded).collect()
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
