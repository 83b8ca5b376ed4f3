//! Spanish: what hands, eyes and readings found, as people say it.

use case::{Check, MeasuredAt, PressAnswer, SkinAnswer, TopAnswer, UnderAnswer};

use super::Spanish;
use super::parts::{number, side};
use crate::BasicWords as _;

/// A check with its answer: a clause.
pub(super) fn check_by_hand(check: &Check) -> String {
    // As many digits as were written down.
    let tidy = |own: f64| number((own * 1e3).round() / 1e3);
    match check {
        Check::Top { side: own, answer } => {
            let answer = match answer {
                TopAnswer::Safe => "libre",
                TopAnswer::Tight => "duro",
                TopAnswer::Pinched => "atrapado",
            };
            format!("por arriba, isquion {}: {answer}", side(*own))
        }
        Check::Under { side: own, answer } => {
            let answer = match answer {
                UnderAnswer::BoneFelt => "se nota el hueso".to_owned(),
                UnderAnswer::NotFound => "no se halló el hueso".to_owned(),
                UnderAnswer::Felt(felt) => format!("{} mm", tidy(felt.to_mm())),
            };
            format!("por debajo, isquion {}: {answer}", side(*own))
        }
        Check::Press { number, answer } => {
            let answer = match answer {
                PressAnswer::Slack => "flojo",
                PressAnswer::Like => "igual",
                PressAnswer::Tight => "duro",
            };
            format!("al apretar el compartimento {number}: {answer}")
        }
        Check::Lower { lower: None, .. } => "pelvis nivelada".to_owned(),
        Check::Lower { lower: Some(own), by, at } => {
            let at = match at {
                MeasuredAt::Asis => " en el frente de la pelvis",
                MeasuredAt::SeatBones => "",
            };
            format!("lado más bajo{at}: el {}, {} mm", side(*own), tidy(by.to_mm()))
        }
        Check::Reading { site, pressure } => {
            format!(
                "presión en el {}: {} mmHg",
                Spanish::new().site(*site),
                tidy(pressure.to_mmhg())
            )
        }
        Check::Skin { site, answer } => {
            format!("piel en el {}: {}", Spanish::new().site(*site), skin_answer(*answer))
        }
    }
}

/// How the skin looked.
pub(super) fn skin_answer(answer: SkinAnswer) -> &'static str {
    match answer {
        SkinAnswer::Clear => "limpia",
        SkinAnswer::Fades => "la marca se va",
        SkinAnswer::Stays => "la marca queda",
        SkinAnswer::Open => "abierta",
        SkinAnswer::Worse => "peor",
    }
}
