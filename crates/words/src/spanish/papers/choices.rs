//! Spanish: the words of choices, as the form shows them to be ringed.
//!
//! The file keeps its own words, which are the same in every language; the comments of a starter
//! file list them.

/// A word of a choice; the file's own where there is none.
pub(super) fn word(of_file: &'static str) -> &'static str {
    match of_file {
        "left" => "izquierda",
        "right" => "derecha",
        "both" => "ambos",
        "level" => "nivel",
        "yes" => "sí",
        "no" => "no",
        _ => of_the_body(of_file).or_else(|| of_the_chair(of_file)).unwrap_or(of_file),
    }
}

fn of_the_body(of_file: &str) -> Option<&'static str> {
    Some(match of_file {
        "fixed" => "fija",
        "flexible" => "flexible",
        "partly" => "en parte",
        "seat bones" => "isquiones",
        "asis" => "asis",
        "anterior" => "anterior",
        "posterior" => "posterior",
        "below knee" => "bajo la rodilla",
        "above knee" => "sobre la rodilla",
        "hip" => "cadera",
        "hands free" => "manos libres",
        "hands needed" => "con las manos",
        "propped" => "con apoyo",
        "unstageable" => "no clasificable",
        "deep tissue" => "tejido profundo",
        "open" => "abierta",
        "healing" => "en curación",
        "healed" => "curada",
        "intact" => "normal",
        "impaired" => "reducida",
        "absent" => "ausente",
        "able" => "sí",
        "limited" => "un poco",
        "unable" => "no",
        "left-seat-bone" => "isquion izquierdo",
        "right-seat-bone" => "isquion derecho",
        "coccyx" => "cóccix",
        "left-trochanter" => "trocánter izquierdo",
        "right-trochanter" => "trocánter derecho",
        "left-thigh" => "muslo izquierdo",
        "right-thigh" => "muslo derecho",
        _ => return None,
    })
}

fn of_the_chair(of_file: &str) -> Option<&'static str> {
    Some(match of_file {
        "hands" => "manos",
        "left foot" => "pie izquierdo",
        "right foot" => "pie derecho",
        "both feet" => "dos pies",
        "power" => "eléctrica",
        "pushed" => "otra persona empuja",
        "solid" => "rígida",
        "sling" => "lona",
        "held" => "sujetos",
        "correct obliquity" => "corregir oblicuidad",
        "accommodate obliquity" => "acomodar oblicuidad",
        "off-load" => "descargar",
        "pre-ischial shelf" => "escalón preisquiático",
        "lower front" => "frente bajo",
        "medial support" => "soporte medial",
        "lateral support" => "soporte lateral",
        "equal firmness" => "misma firmeza",
        "near stock" => "cerca de serie",
        _ => return None,
    })
}
