//! Alarms: the client comes off the cushion, the set-up is looked at, and cells are moved only
//! where a felt bone may be raised without harm.

use case::{Alarm, Check, NextStep, UnderAnswer};
use cushion::{CompartmentIx, Length, Side};
use mechanics::Parameters;

use crate::checks::expected::Expected;
use crate::checks::meaning::FELT_BELOW;
use crate::goals::aims::Quantity;
use crate::goals::wanted::under_site;

use case::SiteName;

/// Cushion from which a bone above it is far from bottoming: common practice, no source.
pub(crate) const ENOUGH_FELT: Length = Length::from_mm(35.0);
/// The share of its cells by which a compartment is raised at most at once: the body adapts.
const MOST_LIFTED: f64 = 0.35;
/// By how much more the pelvis may be turned by such a move, m of height between the seat bones:
/// about one degree at a usual spacing.
const NO_LEAN: f64 = 2e-3;
/// What cells must bring at least where no more may be moved at once, m: enough for a hand to tell
/// that it helps. The rest follows when it has felt again; with less, another size or layout is the
/// answer.
const LEAST_LIFT: f64 = 5e-3;
/// Times that the number of cells is looked for again: each is a straight line's.
const LOOKS: usize = 5;

impl Expected<'_> {
    /// The answers that bring the client off the cushion.
    pub(crate) fn alarms(&self) -> Vec<Alarm> {
        let alarm = |check: &Check| match *check {
            Check::Under { side, answer: UnderAnswer::BoneFelt } => {
                let expected = self.clearance(side).map(Length::from_m);
                Some(Alarm::BoneFelt { side, expected })
            }
            Check::Skin { site, answer } if answer.is_alarm() => Some(Alarm::Mark { site, answer }),
            _ => None,
        };
        let mut alarms: Vec<Alarm> = self.input.checks.iter().filter_map(alarm).collect();
        alarms.dedup();
        alarms
    }

    /// The counts in which every seat-bone compartment has so many cells more that a bone that was
    /// felt comes to the limit, or as near as one round may bring it; none where that is not safe,
    /// or where the set-up is to be doubted rather.
    ///
    /// A hand is never doubted here: the model's clearance is taken to be too large by what the
    /// hand says.
    pub(crate) fn lifted(&self, alarms: &[Alarm]) -> Option<Vec<u32>> {
        let mut felt = Vec::new();
        for alarm in alarms {
            match alarm {
                Alarm::BoneFelt { side, expected: Some(expected) } if *expected < ENOUGH_FELT => {
                    felt.push(*side);
                }
                // Where much was expected, or the skin has a mark, cells are not the answer.
                Alarm::BoneFelt { .. } | Alarm::Mark { .. } => return None,
            }
        }
        let limit = Parameters::default().clearance_limit;
        let lacks = |side: &Side| limit - FELT_BELOW.min(self.clearance(*side).unwrap_or(0.0));
        let lacking = felt.iter().map(lacks).fold(0.0, f64::max);
        let under = self.under_seat_bones();
        let most = under.iter().map(|at| self.most_more(*at)).min()?;
        let mut cells = 4.min(most);
        for _ in 0..LOOKS {
            let counts = self.raised(&under, cells);
            let filling = self.on(&counts)?;
            let gained = |side: &Side| {
                let then = Quantity::Clearance(*side).value(&filling);
                then.zip(self.clearance(*side)).map_or(0.0, |(then, now)| then - now)
            };
            let least = felt.iter().map(gained).fold(f64::INFINITY, f64::min);
            let worth = least >= if cells == most { LEAST_LIFT } else { lacking };
            if worth || cells == most || !(least > 0.0) {
                return (worth && self.harms_nobody(&filling)).then_some(counts);
            }
            let next = (f64::from(cells) * lacking / least).ceil();
            cells = (next as u32).clamp(cells + 1, most);
        }
        None
    }

    /// The compartments under the seat bones, each once.
    fn under_seat_bones(&self) -> Vec<CompartmentIx> {
        let both = [Side::Left, Side::Right].map(SiteName::SeatBone);
        let pattern = self.input.cushion.pattern();
        let under =
            both.into_iter().flat_map(|site| under_site(pattern, &self.meshes.coarse, site));
        let mut under: Vec<CompartmentIx> = under.collect();
        under.sort_unstable();
        under.dedup();
        under
    }

    /// How many cells more a compartment may get at once.
    fn most_more(&self, ix: CompartmentIx) -> u32 {
        let (cells, now) = (self.input.cushion.stock()[ix].cells, self.input.now[ix.index()]);
        let at_once = (MOST_LIFTED * f64::from(now)).floor() as u32;
        cells.high.saturating_sub(now).min(at_once)
    }

    fn raised(&self, under: &[CompartmentIx], cells: u32) -> Vec<u32> {
        let mut counts = self.input.now.to_vec();
        for ix in under {
            counts[ix.index()] += cells;
        }
        counts
    }

    /// Whether a filling neither loads an injury nor turns the pelvis.
    fn harms_nobody(&self, filling: &crate::goals::aims::Filling) -> bool {
        let higher = |filling| Quantity::RightHigher.value(filling);
        let turned = self.now.as_ref().and_then(higher).zip(higher(filling));
        !self.loads_an_injury(filling)
            && turned.is_some_and(|(now, then)| (then - now).abs() <= NO_LEAN)
    }
}

/// What is done about alarms, beside cells.
pub(crate) fn after(alarms: &[Alarm], lifted: bool) -> Vec<NextStep> {
    let much = |alarm: &Alarm| matches!(alarm, Alarm::BoneFelt { expected: Some(expected), .. } if *expected >= ENOUGH_FELT);
    let marked = alarms.iter().any(|alarm| matches!(alarm, Alarm::Mark { .. }));
    let steps = [
        marked.then_some(NextStep::NoCellsForAMark),
        alarms.iter().any(much).then_some(NextStep::CountBeforeMoving),
        Some(if lifted { NextStep::MoveWhileOff } else { NextStep::AnotherCushion }),
        Some(NextStep::Call),
    ];
    steps.into_iter().flatten().collect()
}
