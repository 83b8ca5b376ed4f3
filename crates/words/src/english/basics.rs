//! English: parts of what is said.

use case::{Move, Place, PredictedOutcome, SiteName};
use cushion::{Length, Side};

use super::{English, parts};
use crate::BasicWords;

impl BasicWords for English {
    fn side(&self, side: Side) -> &'static str {
        parts::side(side)
    }

    fn site(&self, site: SiteName) -> &'static str {
        match site {
            SiteName::SeatBone(Side::Left) => "left seat bone",
            SiteName::SeatBone(Side::Right) => "right seat bone",
            SiteName::Coccyx => "coccyx",
            SiteName::Trochanter(Side::Left) => "left trochanter",
            SiteName::Trochanter(Side::Right) => "right trochanter",
            SiteName::Thigh(Side::Left) => "left thigh",
            SiteName::Thigh(Side::Right) => "right thigh",
        }
    }

    fn decimal(&self, number: f64, decimals: usize) -> String {
        format!("{number:.decimals$}")
    }

    fn number(&self, number: f64) -> String {
        number.to_string()
    }

    fn cells(&self, cells: u32) -> String {
        parts::cells(cells)
    }

    fn lower(&self, side: Option<Side>, by: Length) -> String {
        // Hands tell no half millimetre.
        match side.filter(|_| by.to_mm() >= 0.5) {
            None => "the pelvis is level".to_owned(),
            Some(side) => format!(
                "the client's {} side is LOWER by {}",
                parts::loud_side(side),
                self.length(by)
            ),
        }
    }

    fn a_move(&self, own: &Move) -> String {
        let place = |place| match place {
            Place::Compartment(number) => format!("compartment {number}"),
            Place::Spare => "the spare bag".to_owned(),
        };
        format!("Move {} from {} to {}.", parts::cells(own.cells), place(own.from), place(own.to))
    }

    fn outcome(&self, outcome: PredictedOutcome) -> &'static str {
        match outcome {
            PredictedOutcome::AtRest => "at rest",
            PredictedOutcome::Bottomed => "bottomed out",
            PredictedOutcome::LeansAway => "leans away",
            PredictedOutcome::Tipping => "tips",
            PredictedOutcome::OutOfSteps => "not found in time",
        }
    }
}
