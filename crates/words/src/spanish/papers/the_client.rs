//! Spanish: posture, skin and function as the cards tell them, a line each.

use case::{
    Category, Flexibility, Function, Healing, LimbLoss, LossLevel, MeasuredAt, PelvicObliquity,
    Posture, PressureInjury, Propulsion, Sensation, SittingBalance, Skin, Tilt, WeightShift,
};

use super::super::Spanish;
use super::super::parts::{capital, loud_hand, loud_side, number, side};
use crate::BasicWords;

/// Posture.
pub(super) fn posture(say: Spanish, posture: &Posture) -> Vec<String> {
    let mut said = Vec::new();
    said.extend(posture.obliquity.map(|own| obliquity(say, &own)));
    said.extend(posture.tilt.map(|own| {
        let way = match own.direction {
            Tilt::Anterior => "hacia delante",
            Tilt::Posterior => "hacia atrás",
        };
        format!("Pelvis basculada {way}{}, {}.", degrees(own.degrees), fixed(own.fixed))
    }));
    said.extend(posture.rotation.map(|own| {
        let (forward, by) = (loud_side(own.forward), degrees(Some(own.degrees)));
        format!("Pelvis girada, lado {forward} delante{by}, {}.", fixed(own.fixed))
    }));
    said.extend(posture.windswept.map(|own| {
        let by = degrees(Some(own.degrees));
        format!("En ráfaga: rodillas hacia la {} de la persona{by}.", loud_hand(own.to))
    }));
    let shorter =
        [("de verdad", posture.truly_shorter), ("en apariencia", posture.apparently_shorter)];
    said.extend(shorter.into_iter().filter_map(|(how, shorter)| {
        let (whose, by) = shorter?;
        Some(format!("Pierna {} más corta {how}: {}.", loud_hand(whose), say.length(by)))
    }));
    let flexion = posture.hip_flexion;
    said.extend([("IZQUIERDA", flexion.left), ("DERECHA", flexion.right)].into_iter().filter_map(
        |(whose, flexion)| {
            let stiff = flexion.filter(|degrees| *degrees < 90.0)?;
            Some(format!("La cadera {whose} flexiona solo hasta {}°.", number(stiff)))
        },
    ));
    said.extend(posture.limb_loss.iter().map(limb_loss));
    said.extend(posture.balance.map(|own| {
        match own {
            SittingBalance::HandsFree => "Se sienta con las manos libres.",
            SittingBalance::HandsNeeded => "Se sienta con ayuda de las manos.",
            SittingBalance::Propped => "Se sienta solo con apoyo.",
        }
        .to_owned()
    }));
    said
}

fn obliquity(say: Spanish, own: &PelvicObliquity) -> String {
    let at = match own.at {
        MeasuredAt::SeatBones => "en los isquiones",
        MeasuredAt::Asis => "en el frente de la pelvis",
    };
    let flexibility = match own.flexibility {
        Flexibility::Fixed => "oblicuidad fija".to_owned(),
        Flexibility::Flexible => "oblicuidad flexible".to_owned(),
        Flexibility::Partly { reducible } => {
            format!("se pueden quitar {} de ello", say.length(reducible))
        }
    };
    format!("Lado {} {} MÁS BAJO {at}, {flexibility}.", loud_side(own.lower), say.length(own.by))
}

fn limb_loss(own: &LimbLoss) -> String {
    let level = match own.level {
        LossLevel::BelowKnee => "por debajo de la rodilla",
        LossLevel::AboveKnee => "por encima de la rodilla",
        LossLevel::Hip => "en la cadera",
    };
    format!("Falta la pierna {} {level}.", loud_hand(own.side))
}

fn degrees(degrees: Option<f64>) -> String {
    degrees.map_or_else(String::new, |degrees| format!(": {}°", number(degrees)))
}

fn fixed(is: bool) -> &'static str {
    if is { "fija" } else { "flexible" }
}

/// Skin.
pub(super) fn skin(say: Spanish, skin: &Skin) -> Vec<String> {
    let mut said: Vec<String> = skin.injuries.iter().map(|own| injury(say, own)).collect();
    let feeling = skin.sensation.map(|own| match own {
        Sensation::Intact => "siente como siempre",
        Sensation::Impaired => "siente menos",
        Sensation::Absent => "no siente",
    });
    let shift = skin.weight_shift.map(|own| match own {
        WeightShift::Able => "puede mover el peso",
        WeightShift::Limited => "puede mover un poco el peso",
        WeightShift::Unable => "no puede mover el peso",
    });
    let side = skin.sensation_side.map(|side| format!(" del lado {}", loud_side(side)));
    let feeling = feeling.map(|own| own.to_owned() + &side.unwrap_or_default());
    let both: Vec<String> = feeling.into_iter().chain(shift.map(str::to_owned)).collect();
    if !both.is_empty() {
        said.push(format!("{}.", capital(&both.join("; "))));
    }
    said
}

fn injury(say: Spanish, own: &PressureInjury) -> String {
    let category = match own.category {
        Category::One => "categoría 1",
        Category::Two => "categoría 2",
        Category::Three => "categoría 3",
        Category::Four => "categoría 4",
        Category::Unstageable => "no clasificable",
        Category::DeepTissue => "de tejido profundo",
    };
    let state = match own.state {
        Healing::Open => "ABIERTA",
        Healing::Healing => "en curación",
        Healing::Healed => "curada",
    };
    let site = capital(say.site(own.site));
    format!("{site}: lesión, {category}, {state} (vista el {}).", own.seen_on)
}

/// Function.
pub(super) fn function(own: &Function) -> Vec<String> {
    let mut said = Vec::new();
    said.extend(own.propulsion.map(|own| match own {
        Propulsion::Hands => "Mueve la silla con las manos.".to_owned(),
        Propulsion::Foot(foot) => {
            let other = side(foot.other());
            format!("Mueve la silla con el pie {}; el {other} descansa.", loud_side(foot))
        }
        Propulsion::BothFeet => "Mueve la silla con los dos pies.".to_owned(),
        Propulsion::Power => "Silla eléctrica.".to_owned(),
        Propulsion::Pushed => "Otra persona empuja la silla.".to_owned(),
    }));
    let transfers = own.transfers.as_ref();
    said.extend(transfers.map(|own| format!("Transferencias: {}.", own.trim_end_matches('.'))));
    said.extend(own.sitting_hours.map(|hours| match hours {
        1.0 => "Se sienta 1 hora al día.".to_owned(),
        hours => format!("Se sienta {} horas al día.", number(hours)),
    }));
    said
}
