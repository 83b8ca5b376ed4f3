//! Spanish: the setup card.

use cushion::Side;

use super::shared;
use crate::{CheckTexts, DefinedCheckTexts, Foretold, SetupCardTexts};

const TOP_ANSWERS: &str = "libre / duro / atrapado";
const PRESS_ANSWERS: &str = "flojo / igual / duro";
const SKIN_ANSWERS: &str = "limpia / se va / queda";
const PRESS: &str = "Apretar, ___ frente a ___";

const fn row(
    check: &'static str,
    side: Option<Side>,
    foretold: Foretold,
    answers: &'static str,
) -> CheckTexts {
    CheckTexts { check, side, foretold, answers }
}

const LEFT: Option<Side> = Some(Side::Left);
const RIGHT: Option<Side> = Some(Side::Right);

/// The rows, with room for lengths in a unit.
const fn rows(under: &'static str, lower: &'static str) -> [CheckTexts; 9] {
    [
        row("Por arriba, IZQUIERDA", LEFT, Foretold::Nothing, TOP_ANSWERS),
        row("Por arriba, DERECHA", RIGHT, Foretold::Nothing, TOP_ANSWERS),
        row("Por debajo, IZQUIERDA", LEFT, Foretold::LeftUnder(Side::Left), under),
        row("Por debajo, DERECHA", RIGHT, Foretold::LeftUnder(Side::Right), under),
        row("Lado más bajo de la pelvis", None, Foretold::LowerSide, lower),
        row(PRESS, None, Foretold::Nothing, PRESS_ANSWERS),
        row(PRESS, None, Foretold::Nothing, PRESS_ANSWERS),
        row("Piel, isquion IZQUIERDO", LEFT, Foretold::Nothing, SKIN_ANSWERS),
        row("Piel, isquion DERECHO", RIGHT, Foretold::Nothing, SKIN_ANSWERS),
    ]
}

/// For whoever measures in millimetres.
pub(super) const TEXTS: &SetupCardTexts = &SetupCardTexts {
    title: "Ficha de ajuste",
    subject: "Cantidades y comprobaciones de un cojín, para el terapeuta",
    parts: ["Preparar", "Comprobar y cambiar", "Mover"],

    from_above: "Desde arriba, como se sienta la persona",
    the_client: "La persona",
    name: "Nombre",
    nothing_known: "No consta nada de postura, piel ni función.",
    goals: "Objetivos, el más importante primero",
    take_care: "Tenga cuidado",
    cautions: &[
        "Alise cada compartimento antes de cada comprobación.",
        "Atrapado: o toca fondo o sobra relleno. Compruebe por debajo antes de sacar celdas de ese lado.",
        "Un cambio cada vez. Después compruebe otra vez ambos lados.",
    ],
    counts: "Cantidades",
    count_columns: ["N.º", "Compartimento", "Serie", "Cambio", "Dejar en", "Contado"],
    bone_columns: ["Bajo los isquiones", "IZQUIERDA DE LA PERSONA", "DERECHA DE LA PERSONA"],
    expected_under_bones: "Cojín que queda, esperado",
    found: "Qué halló el ajuste",
    nothing_found: "Aún no hay nada registrado para estas cantidades.",
    code_is_for: "¿Se perdió el archivo? Este código recupera las cantidades, por comprobar otra vez.",

    how_to_check: "Funda real, frenos puestos, sin anillos, con permiso. Alise, persona del todo atrás, espere 5 a 10 minutos. Ambos lados.",
    defined: &[
        DefinedCheckTexts {
            name: "Por arriba",
            how: "Meta los dedos entre isquion y cojín.",
            words: "libre (safe): las yemas suben y bajan; duro (tight): solo salen; atrapado (pinched): quedan presas",
        },
        DefinedCheckTexts {
            name: "Por debajo",
            how: "Meta la mano plana bajo el cojín, bajo el hueso más bajo. El ancho de un pulgar son unos 25 mm.",
            words: "cuánto cojín queda entre mano y hueso; hueso (bone-felt): pare y baje a la persona",
        },
        DefinedCheckTexts {
            name: "Apretar",
            how: "Apriete con dos dedos el borde de un compartimento, y después el de su pareja del otro lado.",
            words: "frente a su pareja: flojo (slack), igual (like), duro (tight)",
        },
        DefinedCheckTexts {
            name: "Piel",
            how: "Mire cuando la persona baja del cojín, y otra vez tras 30 minutos.",
            words: "limpia (clear): como antes; se va (fades): tras 30 min; queda (stays): no sentar, no mover celdas",
        },
    ],
    checks: "Lo que halla: rodee la palabra, escriba el número",
    check_columns: ["Lados de la persona", "Esperado", "Hallado", "Al sentarse", "Tras 30 min"],
    signed: "Fecha, iniciales",
    check_rows: &rows("____ mm / hueso", "I / nivel / D, ____ mm"),
    order_of_a_fitting: "Llene, compruebe ambos lados, cambie una cosa, compruebe tras 30 minutos. Flojo: ¿se inclina al otro lado?",
    if_then: "Si halla ..., entonces ...",
    if_then_columns: ["Si halla", "entonces", "y efecto en otros sitios"],
    if_then_note: "Estimado para estas cantidades. Una línea cada vez: mueva, alise, siente a la persona, espere, compruebe otra vez en ambos lados. Si dos hallazgos se contradicen, compruebe antes otra vez. Los cambios de presión pueden errar en una quinta parte o más; los de altura pueden ser la mitad o el doble, pues nadie sabe cuánto ceden las paredes.",

    all_moved: "No queda nada por pasar: según el registro, estas celdas están en el cojín.",
    moves_from_below: "Desde abajo, con las aberturas hacia usted: celdas de más (+) o de menos (–) en cada compartimento.",
    moves_drawing: "El cojín desde abajo, con el borde delantero arriba, y cuántas celdas de más o de menos recibe cada compartimento. La izquierda de la persona está a la derecha del dibujo.",
    moves: "Movimientos, una línea cada vez",
    move_columns: ["Pase", "de", "a", "Hecho"],
    bag: "bolsa",
    while_you_move: "Mientras mueve",
    move_steps: &[
        "Dele la vuelta de lado, como a una página. La IZQUIERDA de la persona está ahora a la DERECHA de usted. Guíese por los números.",
        "Un compartimento abierto cada vez. Cuente al sacar a la mano, cuente otra vez al meter, ciérrelo.",
        "¿Dentro hay otras cantidades que aquí? Pare y cuente otra vez.",
        "Al final: ARRIBA hacia arriba, alise, compruebe ambos lados.",
    ],
    spare_bag: "La bolsa de repuesto",
    bag_rows: ["Antes", "Cambio", "Después", "Contado"],
    move_fields: &[&["Movido por, fecha", "Contado otra vez por, fecha"]],
    clinician_decides: shared::CARD_DEFERS,
};

/// For whoever measures in inches.
pub(super) const TEXTS_IN_INCHES: &SetupCardTexts =
    &SetupCardTexts { check_rows: &rows("____ in / hueso", "I / nivel / D, ____ in"), ..*TEXTS };
