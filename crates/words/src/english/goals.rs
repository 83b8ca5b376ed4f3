//! English: goals and counts.

use case::{
    CountReason, FrontSides, GoalNumber, GoalOutcome, OtherCount, Shortfall, SinceRecorded, Want,
};
use cushion::Length;

use super::{English, parts};
use crate::{BasicWords, GoalWords};

/// A change of pressure is known to a fifth of itself at best.
const FIFTH: f64 = 0.2;

impl GoalWords for English {
    fn goal(&self, want: &Want) -> String {
        match *want {
            Want::CorrectObliquity => "bring the pelvis level".to_owned(),
            Want::AccommodateObliquity => {
                "leave the obliquity, fill the gap and share the load".to_owned()
            }
            Want::OffLoad { site, share } => {
                format!(
                    "take {} of the pressure off the {}",
                    parts::percent(share),
                    self.site(site)
                )
            }
            Want::Shelf { height } => format!("a pre-ischial shelf of {}", self.length(height)),
            Want::LowerFront { sides: FrontSides::One(side), by } => {
                format!("lower the {} front by {}", parts::side(side), self.length(by))
            }
            Want::LowerFront { sides: FrontSides::Both, by } => {
                format!("lower the front by {}", self.length(by))
            }
            Want::MedialSupport { height } => {
                format!("a medial thigh support of {}", self.length(height))
            }
            Want::LateralSupport { height } => {
                format!("lateral supports of {}", self.length(height))
            }
            Want::EqualFirmness => "equal firmness in all compartments".to_owned(),
            Want::NearStock => "stay near the stock fill".to_owned(),
        }
    }

    fn goal_outcome(&self, outcome: &GoalOutcome) -> String {
        let goal = parts::capital(&self.goal(&outcome.want));
        let why = outcome.why.map(|why| parts::capital(&self.shortfall(why)));
        let why = why.map_or_else(String::new, |why| format!(" {why}."));
        match &outcome.reached {
            None => format!("{goal}: NOT DONE.{why}"),
            Some(reached) => {
                let clauses = [Some(self.expected(reached)), self.wanted(&outcome.wanted)];
                let expected = clauses.into_iter().flatten().collect::<Vec<_>>().join("; ");
                let met = if outcome.met { "met" } else { "NOT REACHED" };
                format!("{goal}: {met}. Expected: {expected}.{why}")
            }
        }
    }

    fn shortfall(&self, why: Shortfall) -> String {
        match why {
            Shortfall::Clearance(side) => format!(
                "more would leave too little cushion under the {} seat bone",
                parts::side(side)
            ),
            Shortfall::Full(number) => format!(
                "compartment {number} is as full as the estimate is good for; more needs a layout \
                 that is higher there"
            ),
            Shortfall::Rank => "limits and the goals before it come first".to_owned(),
            Shortfall::OtherGoals => "limits and the other goals need these changes".to_owned(),
            Shortfall::OutOfReach => {
                "no counts of this layout reach it within the limits".to_owned()
            }
            Shortfall::TheseCounts => "these counts do not reach it".to_owned(),
            Shortfall::SeatWouldFall => {
                "the step is there, but made by lowering what is beside it, which supports nobody"
                    .to_owned()
            }
            Shortfall::FixedObliquity => {
                "the obliquity is fixed: accommodate it, a fixed pelvis is not forced level"
                    .to_owned()
            }
            Shortfall::InjuredLowSide(side) => format!(
                "the {} seat bone is injured, and levelling would build up under it",
                parts::side(side)
            ),
            Shortfall::FixedPosteriorTilt => {
                "the pelvis is fixed in posterior tilt and would slide over a shelf".to_owned()
            }
            Shortfall::StiffHip => {
                "a hip bends less than 90 degrees, and a shelf would roll the pelvis back"
                    .to_owned()
            }
            Shortfall::NoObliquity => {
                "no obliquity is written down in the client's file".to_owned()
            }
            Shortfall::NothingToTake(site) => {
                format!("the {} carries next to nothing already", self.site(site))
            }
            Shortfall::NoSeamForShelf => {
                "this layout has no seam close in front of the seat bones; a shelf needs a layout \
                 with one"
                    .to_owned()
            }
            Shortfall::NoFront => {
                "this layout has no compartment of its own at that front".to_owned()
            }
            Shortfall::NoCompartments => "this layout has no compartments for it".to_owned(),
            Shortfall::NothingBeside => {
                "this layout has nothing beside it to be higher than".to_owned()
            }
            Shortfall::NoRestOnStock => {
                "the client does not come to rest on the stock fill".to_owned()
            }
            Shortfall::NoRest => "the client does not come to rest on these counts".to_owned(),
        }
    }

    fn count_reason<'a>(&self, reason: &'a CountReason) -> &'a str {
        match reason {
            CountReason::Wish(why) => why,
            CountReason::Goals => "for the goals",
        }
    }

    fn since_recorded(&self, since: &SinceRecorded) -> String {
        match since {
            SinceRecorded::LayoutEdited { shown } | SinceRecorded::CellEdited { shown } => {
                format!("{shown} was changed since the plan was recorded")
            }
            SinceRecorded::OtherCounts { recorded, counts } => {
                format!(
                    "a fresh plan would have {}; the recorded counts of {recorded} are printed",
                    others(counts)
                )
            }
            SinceRecorded::OtherWeight { then, now, counts } => {
                let fresh = match counts.as_deref() {
                    None => "a fresh plan would not keep the limits".to_owned(),
                    Some([]) => "a fresh plan would have the same counts".to_owned(),
                    Some(counts) => format!("a fresh plan would have {}", others(counts)),
                };
                format!(
                    "the client weighs {:.1} kg now, and the plan was made for {:.1} kg: {fresh}; the recorded counts are printed",
                    now.to_kg(),
                    then.to_kg()
                )
            }
        }
    }

    fn plan_reason(&self, goals: &[GoalOutcome], wishes: &[&str]) -> Option<String> {
        let goals = goals.iter().map(|own| match own.met {
            true => self.goal(&own.want),
            false => format!("{} (not reached)", self.goal(&own.want)),
        });
        let all: Vec<String> = goals.chain(wishes.iter().map(|&wish| wish.to_owned())).collect();
        (!all.is_empty()).then(|| all.join("; "))
    }
}

impl English {
    /// The number that is expected: a clause.
    pub(super) fn expected(&self, reached: &GoalNumber) -> String {
        match reached {
            GoalNumber::Relief(share) => {
                let (near, far) = ((1.0 - FIFTH) * share, (1.0 + FIFTH) * share);
                if (100.0 * far).round() == 0.0 {
                    return "the same as at the stock fill".to_owned();
                }
                let way = if *share < 0.0 { "MORE" } else { "less" };
                format!(
                    "{} {way} than at the stock fill, soft tissue allowed for",
                    range(near, far)
                )
            }
            GoalNumber::Lower { side, by } => self.lower(*side, *by),
            GoalNumber::Higher(by) => self.up_or_down(*by, "higher", "LOWER"),
            GoalNumber::FrontLower(by) => self.up_or_down(*by, "lower", "HIGHER"),
            GoalNumber::Apart(share) => {
                format!("firmness differs by {} at most", parts::percent(*share))
            }
            GoalNumber::Changed(0) => "no cell is changed".to_owned(),
            GoalNumber::Changed(1) => "1 cell is changed".to_owned(),
            GoalNumber::Changed(cells) => format!("{cells} cells are changed"),
        }
    }

    /// The number that is wanted, where the goal's own words do not say it: a clause.
    fn wanted(self, wanted: &GoalNumber) -> Option<String> {
        match wanted {
            GoalNumber::Lower { side, by } => Some(match side.filter(|_| by.to_mm() >= 0.5) {
                None => "level is wanted".to_owned(),
                Some(side) => {
                    format!("{} on the {} is wanted", self.length(*by), parts::loud_side(side))
                }
            }),
            GoalNumber::Higher(by) | GoalNumber::FrontLower(by) => {
                Some(format!("{} is wanted", self.length(*by)))
            }
            GoalNumber::Relief(_) | GoalNumber::Apart(_) | GoalNumber::Changed(_) => None,
        }
    }

    /// So much one way, or the other where negative.
    fn up_or_down(self, by: Length, forward: &str, back: &str) -> String {
        let way = match by.to_mm().round() {
            0.0 => return "no difference".to_owned(),
            rounded if rounded < 0.0 => back,
            _ => forward,
        };
        format!("{} {way}", self.length(by.abs()))
    }
}

/// Two shares in whole per cent, the smaller first, or one where they are the same.
fn range(near: f64, far: f64) -> String {
    let whole = |share: f64| (share * 100.0).abs().round();
    if whole(near) == whole(far) {
        return parts::percent(near);
    }
    format!("{:.0} to {:.0} %", whole(near), whole(far))
}

/// Counts that a fresh plan would have otherwise.
fn others(counts: &[OtherCount]) -> String {
    let other = counts.iter().map(|own| {
        let OtherCount { id, number, fresh, recorded } = own;
        format!("{fresh} in compartment {number} ({id}), recorded are {recorded}")
    });
    other.collect::<Vec<_>>().join("; ")
}
