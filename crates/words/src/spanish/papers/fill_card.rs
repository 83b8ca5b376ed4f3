//! Spanish: the fill cards.

use crate::FillCardTexts;

pub(super) const TEXTS: &FillCardTexts = &FillCardTexts {
    title_for_one_client: "Llenado a medida",
    title_as_supplied: "Llenado de serie",
    subject: "Cantidades para llenar la cubierta, dibujada desde abajo",
    estimate_until_counted: "ESTIMACIÓN hasta contar",
    printed: "Impreso",
    from_below: "Desde abajo, como se llena",
    turn_it_over: "Dé la vuelta al cojín",
    turning_steps: &[
        "Cara de ARRIBA arriba, borde delantero lejos de usted.",
        "Dele la vuelta como a una página. El frente sigue lejos.",
        "Las aberturas miran hacia usted. La IZQUIERDA de la persona está ahora a la DERECHA de usted. Guíese por los números.",
    ],
    openings: "ABERTURAS",
    turning_pictures: "La cubierta está con la cara de arriba hacia arriba, su frente lejos de usted y la izquierda de la persona a la izquierda de usted; se gira de lado; las aberturas miran hacia usted, el frente sigue lejos de usted y la izquierda de la persona está a la derecha de usted.",
    columns: [
        "N.º",
        "Compartimento",
        "Celdas",
        "Primera cuenta, iniciales",
        "Segunda cuenta, iniciales",
        "Cerrado",
        "Altura tras alisar, mm",
    ],
    count_do_not_measure: "Cuente las celdas, nunca las mida por volumen. Otra persona cuenta otra vez. Aparte toda celda blanda.",
    how_to_finish: "Cierre cada abertura cuando su segunda cuenta sea correcta. Alise todos los compartimentos con la cara de arriba hacia arriba y tome las alturas.",
    fields: &[
        &["Lote de celdas", "Selladas el", "Altitud de sellado, m"],
        &["Masa al acabar, g", "Celdas de repuesto", "Todo cerrado"],
        &["Llenado por, fecha", "Contado otra vez por, fecha"],
    ],
    clinician_decides: "El profesional responsable decide todo cambio; las normas locales van primero.",
};
