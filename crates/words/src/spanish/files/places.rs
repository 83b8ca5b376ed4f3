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
        "beside the hip" => "al lado de la cadera",
        "beside the thigh" => "al lado del muslo",
        "between the thighs" => "entre los muslos",
        "in front of the seat bone" => "delante del hueso de sentarse",
        "in the middle, under both seat bones" => "en el centro, bajo los dos huesos de sentarse",
        "under both seat bones" => "bajo los dos huesos de sentarse",
        "under the seat bone" => "bajo el hueso de sentarse",
        "under the thigh" => "bajo el muslo",
        "ring around the seat bones" => "anillo en torno a los huesos de sentarse",
        "beside the ring" => "al lado del anillo",
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
