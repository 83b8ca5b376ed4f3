//! Reads the goals: `[[goal]]`, the most important first.

use case::question::{Group, Question};
use case::text::WishFinding;
use case::{Client, FrontSides, Goal, Healing, SiteName, Want, WantKind};
use cushion::{Length, Side};

use crate::cursor::Table;

pub(crate) fn goals(table: &Table<'_>, oblique: bool) -> Option<Vec<Goal>> {
    let goals = table.entries(Group::Goal, goal)?;
    let wrong = |finding| table.remarks.error(table.key_span("goal"), finding);
    let has = |want: Want| goals.iter().any(|goal| goal.want == want);
    let (correct, accommodate) = (has(Want::CorrectObliquity), has(Want::AccommodateObliquity));
    if correct && accommodate {
        wrong(WishFinding::BothOfObliquity);
        return None;
    }
    if (correct || accommodate) && !oblique {
        wrong(WishFinding::NoObliquity);
        return None;
    }
    for (at, goal) in goals.iter().enumerate() {
        if goals[..at].iter().any(|earlier| earlier.want.id() == goal.want.id()) {
            wrong(WishFinding::GoalTwice(goal.want));
            return None;
        }
    }
    Some(goals)
}

fn goal(table: &Table<'_>) -> Option<Goal> {
    let kind = table.required(Question::GoalWant);
    let kind = kind.and_then(|value| value.choice(&WantKind::WORDS));
    let height = || table.required(Question::GoalHeight)?.number_in_range().map(Length::from_mm);
    let want = kind.and_then(|kind| match kind {
        WantKind::CorrectObliquity => Some(Want::CorrectObliquity),
        WantKind::AccommodateObliquity => Some(Want::AccommodateObliquity),
        WantKind::OffLoad => off_load(table),
        WantKind::Shelf => height().map(|height| Want::Shelf { height }),
        WantKind::LowerFront => lower_front(table),
        WantKind::MedialSupport => height().map(|height| Want::MedialSupport { height }),
        WantKind::LateralSupport => height().map(|height| Want::LateralSupport { height }),
        WantKind::EqualFirmness => Some(Want::EqualFirmness),
        WantKind::NearStock => Some(Want::NearStock),
    });
    let because = table.optional(Question::GoalBecause).and_then(|value| value.sentence());
    table.finish();
    Some(Goal { want: want?, because })
}

fn off_load(table: &Table<'_>) -> Option<Want> {
    let site = table.required(Question::GoalSite);
    let site = site.and_then(|value| value.choice(&SiteName::WORDS));
    let percent = table.required(Question::GoalPercent).and_then(|value| value.number_in_range());
    Some(Want::OffLoad { site: site?, share: percent? / 100.0 })
}

fn lower_front(table: &Table<'_>) -> Option<Want> {
    let sides = table.required(Question::GoalSide);
    let sides = sides.and_then(|value| value.choice(&FrontSides::WORDS));
    let by = table.required(Question::GoalBy).and_then(|value| value.number_in_range());
    Some(Want::LowerFront { sides: sides?, by: Length::from_mm(by?) })
}

/// Asks about goals that may not be meant so.
pub(crate) fn remark_on_goals(table: &Table<'_>, client: &Client) {
    let ask = |finding| table.remarks.remark(table.key_span("goal"), finding);
    if !client.goals.is_empty() && client.latest_weighing().is_none() {
        ask(WishFinding::NoWeightForGoals);
    }
    let injured: Vec<SiteName> =
        (client.skin.injuries.iter().filter(|own| own.state != Healing::Healed))
            .map(|own| own.site)
            .collect();
    let is_lost = |side: Side| client.posture.limb_loss.iter().any(|own| own.side == side);
    for goal in &client.goals {
        if let Want::LowerFront { sides: FrontSides::One(side), .. } = goal.want
            && is_lost(side)
        {
            ask(WishFinding::FrontOfLostLeg(side));
        }
        let Want::OffLoad { site: relieved, .. } = goal.want else { continue };
        let Some(mirrored) = other_side(relieved) else { continue };
        if injured.contains(&mirrored) && !injured.contains(&relieved) {
            ask(WishFinding::OtherSide { injured: mirrored, relieved });
        }
    }
}

/// The same place on the other side; none of the middle.
fn other_side(site: SiteName) -> Option<SiteName> {
    let other = |side| match side {
        Side::Left => Side::Right,
        Side::Right => Side::Left,
    };
    match site {
        SiteName::SeatBone(side) => Some(SiteName::SeatBone(other(side))),
        SiteName::Trochanter(side) => Some(SiteName::Trochanter(other(side))),
        SiteName::Thigh(side) => Some(SiteName::Thigh(other(side))),
        SiteName::Coccyx => None,
    }
}
