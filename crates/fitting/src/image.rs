//! Of a question and its mirror image one is answered, by rule, and the answer of the other is its
//! mirror image: exactly, whatever sums round to on either side.

use std::fmt::Debug;

use case::{BrokenLimit, Client, NextStep, Partners};
use cushion::{Length, Pattern, Side};

/// Returns how to mirror a question that is to be answered by its image; none where it is answered
/// as it is, or where the cushion is not the same on both sides.
///
/// Of two images that differ, the one that is written first in the alphabet is answered: a rule
/// without a meaning, which is the same for both.
pub(crate) fn answered_by_its_image<Question: Debug>(
    pattern: &Pattern,
    own: &Question,
    image: impl FnOnce(&Partners) -> Question,
) -> Option<Partners> {
    let partners = Partners::of(pattern)?;
    let written = |question: &Question| format!("{question:?}");
    (written(&image(&partners)) < written(own)).then_some(partners)
}

/// Whether a question and its image are the same: then so are the two sides of its answer. Limb loss,
/// propulsion by one foot, one-sided measures and goals make them differ.
pub(crate) fn is_its_own_image<Question: Debug>(
    pattern: &Pattern,
    own: &Question,
    image: impl FnOnce(&Partners) -> Question,
) -> bool {
    let written = |question: &Question| format!("{question:?}");
    Partners::of(pattern).is_some_and(|partners| written(&image(&partners)) == written(own))
}

/// A client whose legs are as long on both sides where a tape cannot tell them apart: what of their
/// two sides is the same is not made another by 3 mm.
pub(crate) fn evened(client: &Client) -> Client {
    let mut even = client.clone();
    for sides in [&mut even.measures.thigh_depth, &mut even.measures.lower_leg_length] {
        if let (Some(left), Some(right)) = (sides.left, sides.right)
            && (left - right).abs() <= TAPE
        {
            sides.right = Some(left);
        }
    }
    even
}

/// What two measurements of one leg differ by, at most: common practice, no source.
const TAPE: Length = Length::from_mm(10.0);

/// Sentences about sides are told of the left first, also after mirroring: within a run of entries
/// of one group, those with a side are put in order.
pub(crate) fn left_first<T>(mut all: Vec<T>, group: impl Fn(&T) -> Option<(u8, Side)>) -> Vec<T> {
    let kind = |entry: &T| group(entry).map(|(kind, _)| kind);
    for run in all.chunk_by_mut(|a, b| kind(a).is_some() && kind(a) == kind(b)) {
        run.sort_by_key(|entry| group(entry).map(|(_, side)| side));
    }
    all
}

/// Limits as they are told: within a run of one kind the left first, and sites in their order.
pub(crate) fn limits_in_order(limits: Vec<BrokenLimit>) -> Vec<BrokenLimit> {
    let mut limits = left_first(limits, side_of_limit);
    let site = |limit: &BrokenLimit| match limit {
        BrokenLimit::InjuredSite { site, .. } => Some(*site),
        _ => None,
    };
    for run in limits.chunk_by_mut(|a, b| site(a).is_some() && site(b).is_some()) {
        run.sort_by_key(site);
    }
    limits
}

/// The group and side of a limit, as they are told.
fn side_of_limit(limit: &BrokenLimit) -> Option<(u8, Side)> {
    match limit {
        BrokenLimit::Clearance { side, .. } | BrokenLimit::LowClearance { side, .. } => {
            Some((0, *side))
        }
        BrokenLimit::BottomsOut(_)
        | BrokenLimit::Tips
        | BrokenLimit::LeansAway
        | BrokenLimit::NoRest
        | BrokenLimit::NoRestOnStock
        | BrokenLimit::InjuredSite { .. }
        | BrokenLimit::TooHeavy { .. } => None,
    }
}

/// The group and side of a step, as they are told.
pub(crate) fn side_of_step(step: &NextStep) -> Option<(u8, Side)> {
    match step {
        NextStep::CheckUnder(side) | NextStep::FeelBeforeTaking(side) => Some((0, *side)),
        NextStep::CheckOnTop(side) => Some((1, *side)),
        NextStep::FeelBeforeMoving(side) => Some((2, *side)),
        NextStep::FeelAgain(side) => Some((3, *side)),
        NextStep::SetUpBeforeMoving(side) => Some((4, *side)),
        NextStep::TellsMost(_)
        | NextStep::CheckAgain
        | NextStep::FeelSmallMoves
        | NextStep::PatFirst
        | NextStep::TakeOutIfStillHeld
        | NextStep::CauseFirst
        | NextStep::NoCellsForAMark
        | NextStep::CountBeforeMoving
        | NextStep::MoveWhileOff
        | NextStep::AnotherCushion
        | NextStep::Call => None,
    }
}
