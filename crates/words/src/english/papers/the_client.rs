//! English: posture, skin and function as the cards tell them, a line each.

use case::{
    Category, Flexibility, Function, Healing, LimbLoss, LossLevel, MeasuredAt, PelvicObliquity,
    Posture, PressureInjury, Propulsion, Sensation, SittingBalance, Skin, Tilt, WeightShift,
};

use super::super::English;
use super::super::parts::{capital, loud_side, side};
use crate::BasicWords;

/// Posture.
pub(super) fn posture(say: English, posture: &Posture) -> Vec<String> {
    let mut said = Vec::new();
    said.extend(posture.obliquity.map(|own| obliquity(say, &own)));
    said.extend(posture.tilt.map(|own| {
        let way = match own.direction {
            Tilt::Anterior => "forward",
            Tilt::Posterior => "backward",
        };
        format!("Pelvis tilted {way}{}, {}.", degrees(own.degrees), fixed(own.fixed))
    }));
    said.extend(posture.rotation.map(|own| {
        let (forward, by) = (loud_side(own.forward), degrees(Some(own.degrees)));
        format!("Pelvis turned, {forward} side in front{by}, {}.", fixed(own.fixed))
    }));
    said.extend(posture.windswept.map(|own| {
        let by = degrees(Some(own.degrees));
        format!("Windswept: knees to the client's {}{by}.", loud_side(own.to))
    }));
    let shorter = [("truly", posture.truly_shorter), ("seemingly", posture.apparently_shorter)];
    said.extend(shorter.into_iter().filter_map(|(how, shorter)| {
        let (whose, by) = shorter?;
        Some(format!("{} leg {how} shorter by {}.", loud_side(whose), say.length(by)))
    }));
    let flexion = posture.hip_flexion;
    said.extend([("LEFT", flexion.left), ("RIGHT", flexion.right)].into_iter().filter_map(
        |(whose, flexion)| {
            let stiff = flexion.filter(|degrees| *degrees < 90.0)?;
            Some(format!("{whose} hip bends to {stiff}° only."))
        },
    ));
    said.extend(posture.limb_loss.iter().map(limb_loss));
    said.extend(posture.balance.map(|own| {
        match own {
            SittingBalance::HandsFree => "Sits hands free.",
            SittingBalance::HandsNeeded => "Sits with hands needed.",
            SittingBalance::Propped => "Sits propped only.",
        }
        .to_owned()
    }));
    said
}

fn obliquity(say: English, own: &PelvicObliquity) -> String {
    let at = match own.at {
        MeasuredAt::SeatBones => "at the seat bones",
        MeasuredAt::Asis => "at the front of the pelvis",
    };
    let flexibility = match own.flexibility {
        Flexibility::Fixed => "fixed".to_owned(),
        Flexibility::Flexible => "flexible".to_owned(),
        Flexibility::Partly { reducible } => {
            format!("{} of it can be taken away", say.length(reducible))
        }
    };
    format!("{} side LOWER by {} {at}, {flexibility}.", loud_side(own.lower), say.length(own.by))
}

fn limb_loss(own: &LimbLoss) -> String {
    let level = match own.level {
        LossLevel::BelowKnee => "below the knee",
        LossLevel::AboveKnee => "above the knee",
        LossLevel::Hip => "at the hip",
    };
    format!("{} leg lost {level}.", loud_side(own.side))
}

fn degrees(degrees: Option<f64>) -> String {
    degrees.map_or_else(String::new, |degrees| format!(" by {degrees}°"))
}

fn fixed(is: bool) -> &'static str {
    if is { "fixed" } else { "flexible" }
}

/// Skin.
pub(super) fn skin(say: English, skin: &Skin) -> Vec<String> {
    let mut said: Vec<String> = skin.injuries.iter().map(|own| injury(say, own)).collect();
    let feeling = skin.sensation.map(|own| match own {
        Sensation::Intact => "feeling as usual",
        Sensation::Impaired => "feeling impaired",
        Sensation::Absent => "no feeling",
    });
    let shift = skin.weight_shift.map(|own| match own {
        WeightShift::Able => "can shift weight",
        WeightShift::Limited => "can shift weight a little",
        WeightShift::Unable => "cannot shift weight",
    });
    let side = skin.sensation_side.map(|side| format!(" on the {} side", loud_side(side)));
    let feeling = feeling.map(|own| own.to_owned() + &side.unwrap_or_default());
    let both: Vec<String> = feeling.into_iter().chain(shift.map(str::to_owned)).collect();
    if !both.is_empty() {
        said.push(format!("{}.", capital(&both.join("; "))));
    }
    said
}

fn injury(say: English, own: &PressureInjury) -> String {
    let category = match own.category {
        Category::One => "category 1",
        Category::Two => "category 2",
        Category::Three => "category 3",
        Category::Four => "category 4",
        Category::Unstageable => "unstageable",
        Category::DeepTissue => "deep tissue",
    };
    let state = match own.state {
        Healing::Open => "OPEN",
        Healing::Healing => "healing",
        Healing::Healed => "healed",
    };
    let site = capital(say.site(own.site));
    format!("{site}: injury, {category}, {state} (seen {}).", own.seen_on)
}

/// Function.
pub(super) fn function(own: &Function) -> Vec<String> {
    let mut said = Vec::new();
    said.extend(own.propulsion.map(|own| match own {
        Propulsion::Hands => "Moves the chair by hand.".to_owned(),
        Propulsion::Foot(foot) => {
            let other = side(foot.other());
            format!("Moves the chair with the {} foot; the {other} one rests.", loud_side(foot))
        }
        Propulsion::BothFeet => "Moves the chair with both feet.".to_owned(),
        Propulsion::Power => "Powered chair.".to_owned(),
        Propulsion::Pushed => "Is pushed.".to_owned(),
    }));
    let transfers = own.transfers.as_ref();
    said.extend(transfers.map(|own| format!("Transfers: {}.", own.trim_end_matches('.'))));
    said.extend(own.sitting_hours.map(|hours| match hours {
        1.0 => "Sits 1 hour a day.".to_owned(),
        hours => format!("Sits {hours} hours a day."),
    }));
    said
}
