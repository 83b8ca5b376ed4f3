//! Held fingers: bottomed or overfilled, which only a hand underneath tells.

use case::{Check, LookAt, NextStep, SiteName, TopAnswer};
use cushion::{CompartmentIx, Length, Side};
use mechanics::Parameters;

use crate::checks::alarms::ENOUGH_FELT;
use crate::checks::expected::{Expected, felt_under};
use crate::checks::meaning::HAND;
use crate::goals::aims::{Filling, Quantity};
use crate::goals::wanted::under_site;

/// Clearance that is left where cells are taken out from under a bone, m: the limit of 25 mm and
/// how finely a hand tells it.
const LEFT_OVER: f64 = 28e-3;
/// The most cells that are taken out at once: a few, and then felt again.
const A_FEW: u32 = 6;
/// The share of a compartment that is taken out at once at most.
const A_FEW_SHARE: f64 = 0.10;
/// The share of the surface pressure that is to go.
const EASED: f64 = 0.10;
/// How much more a site with an injury, or one that a goal takes load off, may get by it, as a share: what
/// nobody can tell.
const NO_MORE: f64 = 0.01;

/// What is done about held fingers.
pub(crate) struct Pinched {
    /// The counts after the moves; none where nothing is moved.
    pub(crate) counts: Option<Vec<u32>>,
    /// Where to look.
    pub(crate) look_at: &'static [LookAt],
    /// What is next.
    pub(crate) next: Vec<NextStep>,
}

impl Expected<'_> {
    /// What is done where fingers were held; nothing where they were not, or where so little was
    /// felt that the clearance has to be mended first.
    pub(crate) fn pinched(&self) -> Option<Pinched> {
        let checks = self.input.checks;
        let held =
            |side: &Side| checks.contains(&Check::Top { side: *side, answer: TopAnswer::Pinched });
        let sides: Vec<Side> = [Side::Left, Side::Right].into_iter().filter(held).collect();
        let unfelt: Vec<Side> =
            sides.iter().copied().filter(|side| felt_under(checks, *side).is_none()).collect();
        if !unfelt.is_empty() {
            return Some(first_feel(&unfelt));
        }
        let limit = Length::from_m(Parameters::default().clearance_limit);
        let short = |side| felt_under(checks, side).is_some_and(|felt| felt < limit);
        if sides.is_empty() || [Side::Left, Side::Right].into_iter().any(short) {
            return None;
        }
        let counts = if sides.iter().all(|side| self.is_overfilled(*side)) {
            self.eased(&sides)
        } else {
            None
        };
        Some(counts.map_or_else(look_for_the_cause, take_out))
    }

    /// Whether so much was felt under a bone that held fingers mean too many cells, and not less
    /// than was expected.
    fn is_overfilled(&self, side: Side) -> bool {
        let felt = felt_under(self.input.checks, side);
        let expected = self.clearance(side);
        felt.zip(expected)
            .is_some_and(|(felt, expected)| felt >= ENOUGH_FELT && felt.to_m() >= expected - HAND)
    }

    /// A few cells out from under each of these bones; none where that would harm.
    fn eased(&self, sides: &[Side]) -> Option<Vec<u32>> {
        let (mut counts, mut filling) = (self.input.now.to_vec(), None);
        for _ in 0..A_FEW {
            let mut next = counts.clone();
            for side in sides.iter().filter(|side| !self.is_eased(filling.as_ref(), **side)) {
                let under = under_site(
                    self.input.cushion.pattern(),
                    &self.meshes.coarse,
                    SiteName::SeatBone(*side),
                );
                let under = under.into_iter().map(CompartmentIx::index);
                let at = under.max_by_key(|at| (counts[*at], *at))?;
                let most = (A_FEW_SHARE * f64::from(self.input.now[at])).floor() as u32;
                if self.input.now[at] - next[at] < most {
                    next[at] -= 1;
                }
            }
            if next == counts {
                break;
            }
            let then = self.on(&next)?;
            if !self.leaves_enough(&then) || self.loads_what_is_spared(&then, NO_MORE) {
                break;
            }
            (counts, filling) = (next, Some(then));
        }
        (counts != self.input.now).then_some(counts)
    }

    /// Whether a filling presses a seat bone so much less that fingers are free.
    fn is_eased(&self, filling: Option<&Filling>, side: Side) -> bool {
        let quantity = Quantity::Surface(SiteName::SeatBone(side));
        let now = self.now.as_ref().and_then(|now| quantity.value(now));
        let then = filling.and_then(|filling| quantity.value(filling));
        now.zip(then).is_some_and(|(now, then)| then <= (1.0 - EASED) * now)
    }

    /// Whether enough is left under both bones, as the hand or else the model says.
    fn leaves_enough(&self, then: &Filling) -> bool {
        [Side::Left, Side::Right].into_iter().all(|side| {
            let model = self.clearance(side).zip(Quantity::Clearance(side).value(then));
            model.is_some_and(|(now, after)| {
                let felt = felt_under(self.input.checks, side).map_or(now, Length::to_m);
                felt + after - now >= LEFT_OVER
            })
        })
    }
}

fn first_feel(sides: &[Side]) -> Pinched {
    let next = sides.iter().map(|side| NextStep::FeelBeforeMoving(*side)).collect();
    Pinched { counts: None, look_at: &[], next }
}

fn take_out(counts: Vec<u32>) -> Pinched {
    let next = vec![NextStep::PatFirst, NextStep::TakeOutIfStillHeld];
    Pinched { counts: Some(counts), look_at: &[], next }
}

/// Cells that lie unevenly, or a hand that came in askew, hold fingers too: that is tried first.
fn look_for_the_cause() -> Pinched {
    let next = vec![NextStep::PatFirst, NextStep::CauseFirst];
    Pinched { counts: None, look_at: &LookAt::AFTER_A_PINCH, next }
}
