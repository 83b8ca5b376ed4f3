//! Spanish: what carers call the compartments of the layouts that are ours, whose files say it in
//! English.
//!
//! It stands here and not in the layout files: a file with other text has another digest, and every
//! plan that was recorded for it would count as made for a layout that was changed.

use cushion::Words;

/// The words of a compartment: its author's in this language, else ours for those we know, else its
/// author's in English.
pub(super) fn words<'a>(words: &'a Words, tag: &str) -> &'a str {
    let own = words.in_language(tag);
    if own == words.in_language(Words::ENGLISH) { known(own).unwrap_or(own) } else { own }
}

fn known(english: &str) -> Option<&'static str> {
    Some(match english {
        "at the hip" => "en la cadera",
        "behind the knee" => "detrás de la rodilla",
        "beside the hip" => "junto a la cadera",
        "beside the thigh" => "junto al muslo",
        "between the thighs" => "entre los muslos",
        "in front of the seat bone" => "ante el isquion",
        "in the middle, under both seat bones" => "en el centro, bajo los dos isquiones",
        "under both seat bones" => "bajo los dos isquiones",
        "under the seat bone" => "bajo el isquion",
        "under the thigh" => "bajo el muslo",
        "ring around the seat bones" => "anillo en torno a los isquiones",
        "beside the ring" => "junto al anillo",
        "around the relief" => "alrededor del alivio",
        _ => return None,
    })
}

/// The title of a layout: ours for those we know, else its author's.
pub(in crate::spanish) fn title_of(english: &str) -> &str {
    match english {
        "Three rows by two sides" => "Tres filas por dos lados",
        "Relief island with surround" => "Isla de alivio con contorno",
        "Curved ten with side supports" => "Diez curvos con soportes laterales",
        _ => english,
    }
}
