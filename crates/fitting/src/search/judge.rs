//! What becomes of the goals on a filling: reached or not, by how much, and why not.

use case::{GoalNumber, GoalOutcome, Shortfall, Want};
use cushion::{Length, Side};
use mechanics::Parameters;

use crate::goals::aims::{Aim, Filling, Quantity};
use crate::goals::needs::Needs;
use crate::goals::wanted::{LEFT_BY_TISSUE, NEAR_STOCK, Wanted};
use crate::prediction::prepared::PreparedCushion;

/// How near to the limit a clearance must be for it to be why a goal is missed, m: what the search
/// keeps spare, and what whole cells step by.
const AT_THE_LIMIT: f64 = 2e-3;

/// Looks at what a plan reaches.
pub(crate) struct Judge<'a> {
    pub(crate) needs: &'a Needs,
    pub(crate) cushion: &'a PreparedCushion,
    /// Compartments whose counts are fixed.
    pub(crate) fixed: &'a [bool],
    /// Whether counts were looked for that reach it, as far as the limits let them.
    pub(crate) searched: bool,
    pub(crate) stock: &'a Filling,
    pub(crate) filling: &'a Filling,
}

impl Judge<'_> {
    /// What becomes of a goal.
    pub(crate) fn outcome(&self, wanted: &Wanted) -> GoalOutcome {
        let aims = match &wanted.aims {
            Ok(aims) => aims,
            Err(why) => return refused(wanted.want, *why),
        };
        let met = match wanted.want {
            Want::NearStock => self.changed() <= NEAR_STOCK * self.stock.counts.iter().sum::<f64>(),
            _ => aims
                .iter()
                .filter(|aim| !aim.goes_with())
                .all(|aim| aim.misses(self.filling) <= 1.0),
        };
        GoalOutcome {
            want: wanted.want,
            wanted: number(wanted.want, self.needs),
            reached: self.reached(wanted.want, aims),
            met,
            why: (!met).then(|| match wanted.want {
                Want::NearStock if self.needs.goals.len() > 1 => Shortfall::OtherGoals,
                _ => self.why_not(aims),
            }),
        }
    }

    /// Cells by which the counts differ from the stock fill.
    fn changed(&self) -> f64 {
        let pairs = self.filling.counts.iter().zip(&self.stock.counts);
        pairs.map(|(count, stock)| (count - stock).abs()).sum()
    }

    /// The number that the plan reaches.
    fn reached(&self, want: Want, aims: &[Aim]) -> Option<GoalNumber> {
        let value = |quantity: &Quantity| quantity.value(self.filling);
        let of_all = aims.iter().filter_map(|aim| Some((aim, value(&aim.quantity)?)));
        Some(match want {
            Want::CorrectObliquity | Want::AccommodateObliquity => {
                lower(Length::from_m(value(&Quantity::RightHigher)?))
            }
            Want::OffLoad { site, .. } => {
                let quantity = Quantity::Surface(site);
                let stock = quantity.value(self.stock)?;
                GoalNumber::Relief(LEFT_BY_TISSUE * (1.0 - value(&quantity)? / stock))
            }
            Want::LowerFront { .. } => {
                let by = |(aim, top): (&Aim, f64)| {
                    aim.quantity.value(self.stock).map_or(0.0, |stock| stock - top)
                };
                GoalNumber::FrontLower(Length::from_m(of_all.map(by).reduce(f64::min)?))
            }
            Want::Shelf { .. } | Want::MedialSupport { .. } | Want::LateralSupport { .. } => {
                let steps = of_all.filter(|(aim, _)| matches!(aim.quantity, Quantity::Step { .. }));
                let least = steps.map(|(_, step)| step).reduce(f64::min)?;
                GoalNumber::Higher(Length::from_m(least))
            }
            Want::EqualFirmness => {
                GoalNumber::Apart(of_all.map(|(_, share)| share.abs()).reduce(f64::max)?)
            }
            Want::NearStock => GoalNumber::Changed(self.changed().round() as u32),
        })
    }

    /// The likeliest reason that more is not reached.
    fn why_not(&self, aims: &[Aim]) -> Shortfall {
        let limit = Parameters::default().clearance_limit + AT_THE_LIMIT;
        for side in [Side::Left, Side::Right] {
            let clearance = Quantity::Clearance(side).value(self.filling);
            if clearance.is_some_and(|clearance| clearance < limit) {
                return Shortfall::Clearance(side);
            }
        }
        let stock = self.cushion.stock();
        let pattern = self.cushion.pattern();
        let full = pattern.indices().zip(&self.filling.counts).find(|(ix, count)| {
            **count >= f64::from(stock[*ix].cells.high) && !self.fixed[ix.index()]
        });
        if let Some((ix, _)) = full {
            return Shortfall::Full(pattern[ix].number);
        }
        let is_met = |aim: &Aim| aim.misses(self.filling) <= 1.0;
        let steps = || aims.iter().filter(|aim| matches!(aim.quantity, Quantity::Step { .. }));
        if steps().next().is_some() && steps().all(is_met) {
            return Shortfall::SeatWouldFall;
        }
        match (self.searched, aims.iter().any(|aim| aim.rank > 2)) {
            (false, _) => Shortfall::TheseCounts,
            // The first goal has the ranks 1 and 2.
            (true, true) => Shortfall::Rank,
            (true, false) => Shortfall::OutOfReach,
        }
    }
}

/// A goal without aims.
pub(crate) fn refused(want: Want, why: Shortfall) -> GoalOutcome {
    let wanted = number(want, &Needs::default());
    GoalOutcome { want, wanted, reached: None, met: false, why: Some(why) }
}

/// Which side is lower, where the right seat bone is so much higher than the left one.
fn lower(right_higher: Length) -> GoalNumber {
    let side = match right_higher.to_m() {
        higher if higher > 0.0 => Some(Side::Left),
        higher if higher < 0.0 => Some(Side::Right),
        _ => None,
    };
    GoalNumber::Lower { side, by: right_higher.abs() }
}

/// The number that a goal wants.
fn number(want: Want, needs: &Needs) -> GoalNumber {
    let oblique = |corrected| needs.oblique.map_or(0.0, |oblique| oblique.right_higher(corrected));
    match want {
        Want::CorrectObliquity => lower(Length::from_m(oblique(true))),
        Want::AccommodateObliquity => lower(Length::from_m(oblique(false))),
        Want::OffLoad { share, .. } => GoalNumber::Relief(share),
        Want::Shelf { height }
        | Want::MedialSupport { height }
        | Want::LateralSupport { height } => GoalNumber::Higher(height),
        Want::LowerFront { by, .. } => GoalNumber::FrontLower(by),
        Want::EqualFirmness => GoalNumber::Apart(0.0),
        Want::NearStock => GoalNumber::Changed(0),
    }
}
