//! English: the table that works without the program.

use case::{CardFinding, CostAtBone, Remedy, RemedyCost};

use super::{English, parts};
use crate::CardWords;

impl CardWords for English {
    fn card_finding(&self, found: &CardFinding) -> String {
        match found {
            CardFinding::BoneFelt => {
                "A seat bone felt through the cushion, left or right".to_owned()
            }
            CardFinding::Mark => {
                "A mark on the skin that is still there after 30 minutes, open skin, or an injury \
                 that looks worse"
                    .to_owned()
            }
            CardFinding::TooLow { side, limit } => {
                format!(
                    "Under {} felt under the {} seat bone",
                    self.length(*limit),
                    parts::side(*side)
                )
            }
            CardFinding::Pinched { side, felt } => format!(
                "{} seat bone pinched on top, and {} or more felt underneath",
                parts::capital(parts::side(*side)),
                self.length(*felt)
            ),
            CardFinding::Lower { side, by } => format!(
                "Pelvis lower on the {} by {} more than it should be (first rule out sag and \
                 uneven fill)",
                parts::side(*side),
                self.length(*by)
            ),
        }
    }

    fn remedy(&self, remedy: &Remedy) -> String {
        match remedy {
            Remedy::ClientOffLookAtSetUp => {
                "CLIENT OFF NOW. No cells by this table. Look at the seat (sag), FRONT and TOP, \
                 left and right, leaks, counts. Call."
                    .to_owned()
            }
            Remedy::ClientOff => "CLIENT OFF NOW. No cells. Call.".to_owned(),
            Remedy::PutIn { cells, into } => {
                format!("Put {} from the spare bag into compartment {into}.", parts::cells(*cells))
            }
            Remedy::TakeOut { cells, out_of } => format!(
                "Pat level, check again. Still pinched: take {} out of compartment {out_of} into \
                 the spare bag. Hand underneath first.",
                parts::cells(*cells)
            ),
            Remedy::MoveOver { cells, from, to } => {
                format!("Move {} from compartment {from} to {to}.", parts::cells(*cells))
            }
            Remedy::MoreThanAHandful => {
                "Needs more cells than a handful: client off, plan again, call.".to_owned()
            }
            Remedy::NoCells => "No cells: client off, call.".to_owned(),
        }
    }

    fn remedy_cost(&self, cost: &RemedyCost) -> String {
        let height = |at: &CostAtBone| parts::signed(at.height.to_mm()) + "\u{a0}mm";
        format!(
            "{}: {} under the bone, pressure {}. {}: {}, {}.",
            parts::capital(parts::side(cost.side)),
            height(&cost.there),
            pressure(cost.there.pressure),
            parts::capital(parts::side(cost.side.other())),
            height(&cost.other),
            pressure(cost.other.pressure)
        )
    }
}

/// A change of pressure with its spread: a fifth of itself at least.
fn pressure(share: f64) -> String {
    let (near, far) = (80.0 * share, 120.0 * share);
    let (low, high) = if share < 0.0 { (far, near) } else { (near, far) };
    if (low.round() - high.round()).abs() < 0.5 {
        return parts::signed(100.0 * share) + "\u{a0}%";
    }
    format!("{}\u{a0}to\u{a0}{}\u{a0}%", parts::signed(low), parts::signed(high))
}
