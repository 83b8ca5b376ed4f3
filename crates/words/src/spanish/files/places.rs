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
        "in front of the seat bone" => "delante del isquion",
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

/// What the file of a layout says of it: ours for those we know, else its author's.
pub(in crate::spanish) fn text_of_layout(english: &str) -> &str {
    match english {
        "Three rows by two sides" => "Tres filas por dos lados",
        "Relief island with surround" => "Isla de alivio con contorno",
        "Curved ten with side supports" => "Diez curvos con soportes laterales",
        "For a client whose pelvis needs even support or a modest change from side to side, and whose legs may need different heights in front." => {
            "Para quien necesita un apoyo parejo de la pelvis, o un cambio moderado de un lado a otro, y quizá alturas distintas delante para cada pierna."
        }
        "For a client whose seat bones or tail bone need relief: the island can be filled lower while the parts around it take the load." => {
            "Para quien necesita alivio en los isquiones o el cóccix: la isla se llena menos y lo que la rodea lleva la carga."
        }
        "For a client who slides forward, leans, or whose legs fall to one side: the row in front of the seat bones and the side supports can be built up." => {
            "Para quien se desliza hacia delante, se inclina o deja caer las piernas a un lado: la fila delante de los isquiones y los soportes laterales se pueden llenar más."
        }
        "The heaviest client, as wide as the size is for, who keeps 25 mm under both seat bones at the stock fill in the model, with 65 % of the weight on the seat; and no more than is common for the size. No cushion was tested." => {
            "La persona más pesada, de la anchura para la que es el tamaño, que conserva 25 mm bajo los dos isquiones con el llenado de serie en el modelo, con el 65 % del peso en el asiento; y no más de lo que es usual para el tamaño. No se probó ningún cojín."
        }
        _ => english,
    }
}
