//! Held fingers: bottomed or overfilled, which only a hand underneath tells.

use case::{Check, LookAt, NextStep, TopAnswer};
use cushion::{Length, Side};
use mechanics::Parameters;

use crate::checks::alarms::ENOUGH_FELT;
use crate::checks::expected::{Expected, felt_under};
use crate::checks::meaning::HAND;
use crate::goals::needs::Needs;
use crate::search::few_out::FewOut;
use crate::search::steps::Search;

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
    /// than was expected; nor more than hands felt before, by what a hand tells.
    fn is_overfilled(&self, side: Side) -> bool {
        let both = felt_under(self.input.checks, side).zip(self.clearance(side));
        both.is_some_and(|(felt, expected)| {
            let felt_before = !self.was_felt(side) || felt.to_m() <= expected + HAND;
            felt >= ENOUGH_FELT && felt.to_m() >= expected - HAND && felt_before
        })
    }

    /// A few cells out from under each of these bones; none where that would harm.
    fn eased(&self, sides: &[Side]) -> Option<Vec<u32>> {
        let now = self.now.as_ref()?;
        let clearance = |side| {
            let felt = felt_under(self.input.checks, side).map(Length::to_m);
            let expected = self.clearance(side).filter(|_| felt.is_none() || self.was_felt(side));
            // A hand that feels more than hands did before may err: the less of both is left surely.
            felt.into_iter().chain(expected).reduce(f64::min)
        };
        let few_out = FewOut {
            search: &Search::solving_only(self.input.cushion, &self.meshes),
            needs: &Needs::of(self.input.client),
            now,
            clearance: [clearance(Side::Left)?, clearance(Side::Right)?],
            sides,
        };
        Some(few_out.found()?.counts.iter().map(|count| *count as u32).collect())
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
