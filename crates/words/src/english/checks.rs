//! English: checks, and what follows from them.

use case::{
    AdjustRefusal, Alarm, BodyError, BodyValue, BrokenLimit, ByHand, Check, Doubt, LookAt, Mistake,
    NextStep, SkinAnswer, Telling, Verdict, WhyNoPlan,
};
use cushion::Side;

use super::costs::counts_told_from;
use super::{English, parts};
use crate::{BasicWords, CheckWords, Said};

impl CheckWords for English {
    fn alarm(&self, alarm: &Alarm) -> String {
        match alarm {
            Alarm::BoneFelt { side, expected: None } => {
                format!("the {} seat bone was felt through the cushion", parts::side(*side))
            }
            Alarm::BoneFelt { side, expected: Some(expected) } => format!(
                "the {} seat bone was felt through the cushion ({} of cushion were expected)",
                parts::side(*side),
                self.length(*expected)
            ),
            Alarm::Mark { site, answer } => {
                let site = self.site(*site);
                match answer {
                    SkinAnswer::Open => format!("the skin at the {site} is open"),
                    SkinAnswer::Worse => format!("the injury at the {site} looks worse"),
                    SkinAnswer::Clear | SkinAnswer::Fades | SkinAnswer::Stays => {
                        format!("a mark at the {site} is still there after 30 minutes")
                    }
                }
            }
        }
    }

    fn limit(&self, limit: &BrokenLimit) -> String {
        match limit {
            // Rounded, what is missing would not show.
            BrokenLimit::Clearance { side, left, needed }
                if self.length(*left) == self.length(*needed) =>
            {
                format!(
                    "a little less than {} of cushion under the {} seat bone, which are needed",
                    self.length(*needed),
                    parts::side(*side)
                )
            }
            BrokenLimit::Clearance { side, left, needed } => format!(
                "{} of cushion under the {} seat bone, and {} are needed",
                self.length(*left),
                parts::side(*side),
                self.length(*needed)
            ),
            BrokenLimit::LowClearance { side, left, needed } => format!(
                "at the low end of what is plausible only {} of cushion remain under the {} \
                 seat bone, and {} are needed",
                self.length(*left),
                parts::side(*side),
                self.length(*needed)
            ),
            BrokenLimit::BottomsOut(numbers) => {
                let each: Vec<String> = numbers.iter().map(u8::to_string).collect();
                let noun = if each.len() == 1 { "compartment" } else { "compartments" };
                format!("the client bottoms out over {noun} {}", parts::list(&each))
            }
            BrokenLimit::Tips => "the client tips on this cushion".to_owned(),
            BrokenLimit::LeansAway => {
                "the trunk leans on: the cushion does not resist enough".to_owned()
            }
            BrokenLimit::NoRest => "where the client comes to rest was not found".to_owned(),
            BrokenLimit::NoRestOnStock => {
                "the client does not come to rest on the stock fill".to_owned()
            }
            BrokenLimit::InjuredSite { site, healed, rise, from } => format!(
                "the {} at the {} would get {:.0} % more pressure than on {}",
                if *healed { "healed injury" } else { "injury" },
                self.site(*site),
                rise * 100.0,
                counts_told_from(*from)
            ),
            BrokenLimit::TooHeavy { weight, rating } => format!(
                "the client weighs {} and this cushion is rated for {}",
                self.weight(*weight),
                self.weight(*rating)
            ),
        }
    }

    fn verdict(&self, verdict: Verdict, cells_move: bool) -> Option<&'static str> {
        match verdict {
            Verdict::AsPlanned => Some("As planned: stop. Leave the cells as they are."),
            Verdict::AsPlannedSoFar => {
                Some("As planned so far: leave the cells as they are. Checks are missing.")
            }
            Verdict::Stay | Verdict::Pinched => Some("Leave the cells as they are."),
            Verdict::ClientOff if !cells_move => Some("No cells are moved."),
            Verdict::ClientOff | Verdict::Asked | Verdict::Move => None,
        }
    }

    fn look_at(&self, look: LookAt) -> &'static str {
        match look {
            LookAt::SeatUnder => {
                "The seat under the cushion: does it sag, does anything lie on it?"
            }
            LookAt::WayRound => "Which way the cushion lies: FRONT to the front, TOP up.",
            LookAt::LeftAndRight => {
                "Left and right: does each numbered compartment hold what the card says?"
            }
            LookAt::PelvisBack => "The client: was the pelvis fully back?",
            LookAt::Leaks => "Leaks: press a handful of cells; soft ones are replaced one for one.",
            LookAt::LostCells => "Lost cells: count the compartments under the seat bones.",
            LookAt::LayersOnTop => "A pad, a towel or a sling on the cushion.",
            LookAt::Cover => "A cover that is too tight, or not on right.",
            LookAt::CellsAstray => "Cells that are lost or in the wrong compartment: count again.",
        }
    }

    fn doubt(&self, doubt: &Doubt) -> String {
        match doubt {
            Doubt::Contradiction(one, other) => {
                format!("\"{one}\" and \"{other}\" do not go together. Check both again.")
            }
            Doubt::Misfit(check) => format!(
                "\"{check}\" does not go with what else is known. Check it again; if it stays, \
                 look for a mistake in the set-up."
            ),
        }
    }

    fn left_out(&self, check: &Check) -> String {
        format!(
            "\"{check}\" does not go with what else is known and was left out. Check it again; if \
             it stays, look for a mistake in the set-up."
        )
    }

    fn next_step(&self, step: NextStep) -> String {
        let fixed = match step {
            NextStep::CheckUnder(side) => {
                return format!("Check under the {} seat bone too.", parts::side(side));
            }
            NextStep::CheckOnTop(side) => {
                return format!("Check on top, at the {} seat bone, too.", parts::side(side));
            }
            NextStep::FeelBeforeMoving(side) => {
                return format!(
                    "Pinched can mean bottomed or overfilled, and nothing is moved before a hand \
                     underneath has told which: check under the {} seat bone.",
                    parts::side(side)
                );
            }
            NextStep::FeelBeforeTaking(side) => return feel_before_taking(side),
            NextStep::CheckAgain => {
                "Pat the compartments level, wait 5 to 10 minutes, then make the checks again."
            }
            NextStep::FeelSmallMoves => {
                "So few cells may do little, since the wall between two compartments gives way first. Feel again before more are moved."
            }
            NextStep::PatFirst => "Pat the compartments level first and check on top again.",
            NextStep::TakeOutIfStillHeld => {
                "Likely overfilled, as enough is felt underneath. Only if the fingers are still held, take these few cells out into the spare bag, and feel underneath again."
            }
            NextStep::CauseFirst => {
                "If the fingers are still held: what is felt underneath does not say why, and no cell is moved before the cause is found."
            }
            NextStep::NoCellsForAMark => {
                "No cells are moved for a mark on the skin. The fitting has failed until the treating clinician has seen it."
            }
            NextStep::FeelAgain(side) => {
                return format!(
                    "One reading alone moves no cells here: feel under the {} seat bone a second \
                     time, and give that reading too.",
                    parts::side(side)
                );
            }
            NextStep::SetUpBeforeMoving(side) => return set_up_before_moving(side),
            NextStep::TellsMost(telling) => return tells_most(telling),
            NextStep::CountBeforeMoving => {
                "Much more cushion was expected there: count every compartment again and look at the seat under the cushion before any cell is moved."
            }
            NextStep::MoveWhileOff => {
                "Move the cells while the client is off, then feel underneath before they sit on it."
            }
            NextStep::AnotherCushion => {
                "If the set-up is right, this client needs another size or layout, or a new plan."
            }
            NextStep::Call => "Call whoever is responsible for the seating.",
        };
        fixed.to_owned()
    }

    fn mistake(&self, mistake: &Mistake) -> String {
        match mistake {
            Mistake::None => "Nothing is wrong with the set-up.".to_owned(),
            Mistake::Swapped => "Left and right were swapped when it was filled. Compare the \
                                 numbers at the openings with the card."
                .to_owned(),
            Mistake::TurnedRound => {
                "The cushion lies turned round. Look for FRONT on the tag.".to_owned()
            }
            Mistake::Leaks => {
                "Many cells leak. Press a handful: soft ones are replaced one for one.".to_owned()
            }
            Mistake::Forward(by) => format!(
                "The client sits some {} too far forward. Bring the pelvis fully back and check \
                 again.",
                self.length(*by)
            ),
            Mistake::Sag => {
                "The seat under the cushion sags. Put in a solid seat and check again.".to_owned()
            }
            Mistake::Short { number, id } => {
                format!("Compartment {number} ({id}) is about a quarter short of cells. Count it.")
            }
        }
    }

    fn after_checks(&self, checks: &[Check]) -> String {
        format!("after checks: {}", self.checks(checks))
    }

    fn body_error(&self, error: &BodyError) -> String {
        let (what, unit) = body_value(error.what);
        let BodyError { value, least, most, .. } = error;
        let value = (value * 1e3).round() / 1e3;
        format!("{what} of {value}{unit} is outside {least} to {most}{unit}")
    }

    fn plan_refusal(&self, why: &WhyNoPlan) -> Said {
        match why {
            WhyNoPlan::UnknownCompartment { known } => {
                let known: Vec<String> = known.iter().map(|id| format!("`{id}`")).collect();
                Said::new(
                    "the pattern has no such compartment",
                    format!("this pattern has {}", known.join(", ")),
                )
            }
            WhyNoPlan::TwoChanges => Said::new(
                "two changes are wanted for this compartment",
                "put both into one change, with one reason",
            ),
            WhyNoPlan::FewerThanNone { stock, change } => Said::new(
                format!(
                    "a change of {change:+} takes more than the {stock} cells of the stock fill"
                ),
                "take fewer cells",
            ),
            WhyNoPlan::NoSuchCrown { crown } => Said::new(
                format!("no count of this cell gives a crown of {}", self.length(*crown)),
                "ask for a change in cells, or a smaller one",
            ),
            WhyNoPlan::MoreThanTwice { stock, planned } => Said::new(
                format!("{planned} cells are more than twice the {stock} of the stock fill"),
                "check the number; such a change needs another layout or wall height",
            ),
            WhyNoPlan::NoBody(error) => Said::new(
                format!("the client's measures make no body: {}", self.body_error(error)),
                "check that measure, and those near it",
            ),
            WhyNoPlan::TooHeavy { weight, rating } => {
                let limit = BrokenLimit::TooHeavy { weight: *weight, rating: *rating };
                Said::new(
                    self.limit(&limit),
                    "take a size or a layout that is rated for this client",
                )
            }
            WhyNoPlan::ByHand(why) => by_hand(*why),
        }
    }

    fn adjust_refusal(&self, refusal: &AdjustRefusal) -> Said {
        const PRESS: &str = "press only at edges that a hand reaches, against the mirror partner";
        match refusal {
            AdjustRefusal::NoSuchCompartment(number) => Said::new(
                format!("there is no compartment {number}"),
                "take a number that is sewn at an opening",
            ),
            AdjustRefusal::Unreachable(number) => Said::new(
                format!(
                    "compartment {number} has no edge that can be reached under a sitting client"
                ),
                PRESS,
            ),
            AdjustRefusal::NoPartner(number) => Said::new(
                format!("compartment {number} has no partner on the other side to compare with"),
                PRESS,
            ),
            AdjustRefusal::NoWeight => Said::new(
                "the client was not weighed, and nothing can be said about checks without it",
                "weigh the client and write the weight into the file",
            ),
            AdjustRefusal::NoBody(error) => Said::new(
                format!("the client's measures make no body: {}", self.body_error(error)),
                "check that measure, and those near it",
            ),
        }
    }
}

/// What a body is made of, with its unit as it is written after a number.
fn body_value(what: BodyValue) -> (&'static str, &'static str) {
    match what {
        BodyValue::Weight => ("a body weight", " kg"),
        BodyValue::HipWidth => ("a hip width", " mm"),
        BodyValue::TrochanterWidth => ("a trochanter width", " mm"),
        BodyValue::SeatBoneSpacing => ("a seat bone spacing", " mm"),
        BodyValue::SeatBonesForward => ("a distance of the seat bones from the rear edge", " mm"),
        BodyValue::TrochanterStep => ("a step from seat bones to trochanters", " mm"),
        BodyValue::SkinSharpness => ("a share of the skin's radius", ""),
        BodyValue::TissueStiffness => ("a stiffness of soft tissue", " Pa/m"),
        BodyValue::ThighDepth => ("a thigh depth", " mm"),
        BodyValue::ThighOut => ("an outward angle of a thigh", " degrees"),
        BodyValue::ThighUp => ("an upward angle of a thigh", " degrees"),
        BodyValue::Windswept => ("a windswept angle", " degrees"),
        BodyValue::Obliquity => ("an obliquity", " mm"),
        BodyValue::SweptObliquity => {
            ("an obliquity at the seat bones, with thighs swept so far,", " mm")
        }
        BodyValue::ObliquityError => ("an error of the obliquity", " mm"),
        BodyValue::SeatShare => ("a share of the weight on the seat", ""),
        BodyValue::LoadForward => ("a distance of the load from the seat bones", " mm"),
        BodyValue::LoadRight => ("a distance of the load from the middle", " mm"),
        BodyValue::TrunkHeight => ("a trunk height", " mm"),
    }
}

/// Why a person decides, and how.
fn by_hand(why: ByHand) -> Said {
    const ASSESS: &str = "assess by hand and with a pressure reading; no counts are planned";
    match why {
        ByHand::HipLoss(side) => Said::new(
            format!(
                "a leg is lost at the {} hip, and what carries there is not in the model",
                parts::side(side)
            ),
            ASSESS,
        ),
        ByHand::SideGoalOnSaggingSling => Said::new(
            "the seat sags under the cushion, which turns and lowers it more than cells between \
             the sides can mend",
            "put a solid insert on the seat and answer that its base is solid, or leave the goals \
             about sides out; no counts are planned",
        ),
        ByHand::FixedTiltOnCoccyx => Said::new(
            "the pelvis is fixed in posterior tilt, and the coccyx that it sits on is injured",
            ASSESS,
        ),
    }
}

fn feel_before_taking(side: Side) -> String {
    let side = parts::side(side);
    format!(
        "Pinched can mean bottomed or overfilled. Nothing is taken from the {side} before a hand \
         underneath has told which: check under the {side} seat bone."
    )
}

fn set_up_before_moving(side: Side) -> String {
    format!(
        "The cells that were moved should have changed what is felt under the {} seat bone, and it \
         did not change. Look at the set-up first: which way round the cushion lies, what lies \
         under it, the counts. No cells before that.",
        parts::side(side)
    )
}

/// The check that would tell most, and why.
fn tells_most(telling: Telling) -> String {
    match telling {
        Telling::Under(side) => format!(
            "The check that would tell most now: feel under the {} seat bone, since how much \
             cushion remains there is what is least known.",
            parts::side(side)
        ),
        Telling::OnTop(side) => format!(
            "The check that would tell most now: on top, at the {} seat bone, since the pressure \
             there tells how the load is shared.",
            parts::side(side)
        ),
        Telling::Lower => "The check that would tell most now: which side of the pelvis is lower, \
                           and by how much, since how the client leans is what is least known."
            .to_owned(),
    }
}
