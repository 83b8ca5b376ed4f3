//! English: two layouts beside each other.

use case::{ComparedMeasure, ComparedSizes, ComparedVerdict};
use cushion::{Pressure, Size};

use crate::ComparisonTexts;

pub(super) const TEXTS: &ComparisonTexts = &ComparisonTexts {
    layout: "layout",
    size: "size mm",
    bodies: "bodies",
    pressure: "fill kPa",
    whole_cells: "with whole cells kPa",
    compartments: "compartments",
    cells: "cells",
    as_supplied: "as supplied",
    litres: "litres",
    mass: "mass g",
    seams: "seams mm",
    finest: "a cell, finest mm",
    coarsest: "coarsest mm",
    reach: "reach mm",
    measure: "measure",
    unit: "unit",
    difference: "B less A",
    told_from: "told from",
    verdict: "in short",
    harm: "of those who sit on both",
    no_rest: "come to no rest",
    bottomed: "nearly on the base somewhere",
    little_left: "less than 25 mm under a seat bone",
    nobody: "Nobody has a size in both: nothing is compared.",
    legend: "A and B: of the bodies that sit on both, what 5, 50 and 95 of a hundred have at most. B less A: for each body by itself, then what 25, 50 and 75 of a hundred have at most. With whole cells: the lowest and the highest unloaded fill pressure of a compartment. A cell: how much one cell changes what remains under a seat bone, in the compartments for a seat bone (in all where none is), under the middle one of the bodies; in brackets the number of the compartment. Reach: how much higher a seat bone stands with the most cells on its side and the fewest on the other. Obliquity: the client's own, or a fixed one of 12 mm with the left seat bone lower.",
    how_told: "Told from: how far the difference itself moves where each thing that is not known of cover, cells and body is at an end of its range, on both cushions alike; from one mesh to another; and for whole cells; for the light, the middle and the heavy one of the bodies, the most of which is taken. What is less, or less than 0.5 mm, 0.1 kPa, 0.5 %, 0.05 N m/degree or 0.1 degrees (judgements, unverified), is no difference that the model can tell. Hands tell 5 mm of a height.",
    limits: "An estimate of a model that no measured cushion has tested: it compares layouts that are filled alike, replaces neither a laboratory test nor a trial, and knows nothing of shear, heat, moisture, wear or ease of use. No difference is no approval. The treating clinician decides; local rules come first.",
};

/// What is compared.
pub(super) fn measure(measure: ComparedMeasure) -> &'static str {
    match measure {
        ComparedMeasure::LeftUnder => "under the left seat bone",
        ComparedMeasure::RightUnder => "under the right seat bone",
        ComparedMeasure::Immersion => "immersion of the seat bones",
        ComparedMeasure::BoneSurface => "surface pressure under the seat bone that has more",
        ComparedMeasure::GreatestSurface => "greatest surface pressure",
        ComparedMeasure::MeanSurface => "mean surface pressure",
        ComparedMeasure::PelvisShare => "share that the pelvis carries",
        ComparedMeasure::RollStiffness => "resists leaning to a side",
        ComparedMeasure::Pitch => "front turned up",
        ComparedMeasure::Oblique => "with an obliquity: the low seat bone stays lower by",
        ComparedMeasure::ObliqueUnder => "with an obliquity: under the low seat bone",
    }
}

/// What a difference comes to.
pub(super) fn verdict(verdict: ComparedVerdict) -> &'static str {
    match verdict {
        ComparedVerdict::CannotTell => "the model cannot tell",
        ComparedVerdict::NoDifference => "no difference that the model can tell",
        ComparedVerdict::More => "B has more",
        ComparedVerdict::Less => "B has less",
        ComparedVerdict::ByBody => "differs from body to body",
    }
}

/// For how many there are sizes.
pub(super) fn sizes(own: &ComparedSizes) -> String {
    let ComparedSizes { bodies, both, only: [first, second], neither, other_size } = own;
    let has = if *both == 1 { "has" } else { "have" };
    format!(
        "{} of {bodies} {has} a size in both; {first} in A alone, {second} in B alone, {neither} in neither. Of those with both, {other_size} with another size in B.",
        bodies_of(*both)
    )
}

fn bodies_of(count: usize) -> String {
    if count == 1 { "1 body".to_owned() } else { format!("{count} bodies") }
}

/// How both are filled.
pub(super) fn fill([first, second]: [Size; 2], pressure: Pressure, of: Option<usize>) -> String {
    let whose = match of {
        None => "which is the stock fill of both",
        Some(0) => "the lower one of their stock fills, that of A",
        Some(_) => "the lower one of their stock fills, that of B",
    };
    let kpa = pressure.to_kpa();
    format!(
        "A in {first} and B in {second}: both at an unloaded fill pressure of {kpa:.2} kPa, {whose}."
    )
}
