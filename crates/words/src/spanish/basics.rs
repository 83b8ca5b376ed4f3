//! Spanish: parts of what is said.

use case::{Move, Place, PredictedOutcome, SiteName};
use cushion::{Length, Side};

use super::{Spanish, parts};
use crate::BasicWords;

impl BasicWords for Spanish {
    fn side(&self, side: Side) -> &'static str {
        parts::hand(side)
    }

    fn site(&self, site: SiteName) -> &'static str {
        match site {
            SiteName::SeatBone(Side::Left) => "isquion izquierdo",
            SiteName::SeatBone(Side::Right) => "isquion derecho",
            SiteName::Coccyx => "cóccix",
            SiteName::Trochanter(Side::Left) => "trocánter izquierdo",
            SiteName::Trochanter(Side::Right) => "trocánter derecho",
            SiteName::Thigh(Side::Left) => "muslo izquierdo",
            SiteName::Thigh(Side::Right) => "muslo derecho",
        }
    }

    fn decimal(&self, number: f64, decimals: usize) -> String {
        parts::decimal(number, decimals)
    }

    fn number(&self, number: f64) -> String {
        parts::number(number)
    }

    fn cells(&self, cells: u32) -> String {
        parts::cells(cells)
    }

    fn lower(&self, side: Option<Side>, by: Length) -> String {
        // Hands tell no half millimetre.
        match side.filter(|_| by.to_mm() >= 0.5) {
            None => "la pelvis está nivelada".to_owned(),
            Some(side) => format!(
                "el lado {} de la persona está {} MÁS BAJO",
                parts::loud_side(side),
                self.length(by)
            ),
        }
    }

    fn a_move(&self, own: &Move) -> String {
        let from = match own.from {
            Place::Compartment(number) => format!("del compartimento {number}"),
            Place::Spare => "de la bolsa de repuesto".to_owned(),
        };
        let to = match own.to {
            Place::Compartment(number) => format!("al compartimento {number}"),
            Place::Spare => "a la bolsa de repuesto".to_owned(),
        };
        format!("Pase {} {from} {to}.", parts::cells(own.cells))
    }

    fn outcome(&self, outcome: PredictedOutcome) -> &'static str {
        match outcome {
            PredictedOutcome::AtRest => "en reposo",
            PredictedOutcome::Bottomed => "toca fondo",
            PredictedOutcome::LeansAway => "se inclina sin parar",
            PredictedOutcome::Tipping => "vuelca",
            PredictedOutcome::OutOfSteps => "no hallado a tiempo",
        }
    }
}
