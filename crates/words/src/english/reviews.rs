//! English: what a review of a layout finds, and what to do.

use case::{ReviewFinding, ReviewKind, Said};
use cushion::{Length, Mass};

use super::parts::{kg, list, mm};

/// Says a finding, with its number and what to do.
pub(super) fn finding(own: &ReviewFinding) -> Said {
    let ReviewFinding { kind, size, sizes } = own;
    let message = message(kind);
    let so = if matches!(kind, ReviewKind::NobodySuits) { "so also" } else { "less of it" };
    let more = match sizes.len() {
        0 | 1 => String::new(),
        2 => format!("; {so} at 1 more size"),
        many => format!("; {so} at {} more sizes", many - 1),
    };
    Said { message: format!("at {size}: {message}{more}"), hint: Some(remedy(kind).to_owned()) }
}

/// What is found.
fn message(kind: &ReviewKind) -> String {
    match kind {
        ReviewKind::NoRest(percent, weight) => {
            format!("{} comes to no rest on the stock fill", body(*percent, *weight))
        }
        ReviewKind::Bottoms(percent, weight, numbers) => {
            format!(
                "{} is nearly on the base in {}",
                body(*percent, *weight),
                compartments(numbers)
            )
        }
        ReviewKind::LittleLeft(percent, weight, left) => format!(
            "{} has {} of cushion under a seat bone, and 25 mm is the limit",
            body(*percent, *weight),
            mm(*left)
        ),
        ReviewKind::NobodySuits => "no body of the table suits this size".to_owned(),
        ReviewKind::BonesOnSeam(share) => {
            format!("seat bones lie within 15 mm of a seam in {:.0} of 100 people", share * 100.0)
        }
        ReviewKind::NoHand(number, opening) => {
            format!("the opening of compartment {number} is {} long: no hand goes in", mm(*opening))
        }
        ReviewKind::LittleReach(number, reach) => format!(
            "compartment {number}, for a seat bone, lifts its side by {} with its most cells and the fewest in its mirror image",
            tenths(*reach)
        ),
        ReviewKind::MuchForOne(number, change) => format!(
            "one cell in compartment {number} changes what remains under a seat bone by {}",
            tenths(*change)
        ),
        ReviewKind::Slack(percent, weight, numbers) => {
            format!(
                "cells lie loose in {} under {}",
                compartments(numbers),
                body(*percent, *weight)
            )
        }
        ReviewKind::Jumps(jump, from) => format!(
            "compartment {} has {} cells, and {} at {from}: some {} would go with the cushion",
            jump.number, jump.is, jump.was, jump.expected
        ),
        ReviewKind::OtherCode { was, from, is } => {
            format!("the code group is {is}, and {was} at {from}")
        }
    }
}

/// What to do.
fn remedy(kind: &ReviewKind) -> &'static str {
    match kind {
        ReviewKind::NoRest(..) | ReviewKind::Bottoms(..) | ReviewKind::LittleLeft(..) => {
            "raise the walls or the stock crown, or rate the size for less"
        }
        ReviewKind::NobodySuits => "review it with bodies for whom it is made, such as children's",
        ReviewKind::BonesOnSeam(_) => {
            "move the seam away from where the bones are, or lay a whole island under them"
        }
        ReviewKind::NoHand(..) => {
            "make it larger, fill it through a funnel, or do not make the size"
        }
        ReviewKind::LittleReach(..) => {
            "hands tell 5 mm: widen it under the bone, part it from its mirror image, or raise its range"
        }
        ReviewKind::MuchForOne(..) => {
            "enlarge it, or use smaller cells: a miscount within the tolerance is felt"
        }
        ReviewKind::Slack(..) => {
            "they carry nothing of such a body: raise the fill there, or let a plan put cells in"
        }
        ReviewKind::Jumps(..) => {
            "look at the seams that stay where they are while the cushion grows"
        }
        ReviewKind::OtherCode { .. } => "list both wherever prices or papers name a code",
    }
}

/// A body of the table, by its weight and how many are as light.
fn body(percent: u8, weight: Mass) -> String {
    format!("a body of {} (percentile {percent} by weight of those that it suits)", kg(weight))
}

fn compartments(numbers: &[u8]) -> String {
    let all: Vec<String> = numbers.iter().map(u8::to_string).collect();
    let noun = if all.len() == 1 { "compartment" } else { "compartments" };
    format!("{noun} {}", list(&all))
}

fn tenths(length: Length) -> String {
    format!("{:.1} mm", length.to_mm())
}
