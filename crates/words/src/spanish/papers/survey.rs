//! Spanish: the page of a survey.

use crate::SurveyTexts;

pub(super) const TEXTS: &SurveyTexts = &SurveyTexts {
    subject: "Cómo sirve un diseño a muchos cuerpos: tamaños, cantidades, alturas y presiones",
    estimate: "ESTIMACIÓN",
    limits: "Calculado para cuerpos de una tabla, ninguno es una persona atendida. Dice cómo se reparte el diseño, no qué conviene a nadie.",
    bar: "cuántos cuerpos tienen un valor de una marca a la siguiente",
    most_bodies: "donde están 90 de 100 cuerpos, y el cuerpo del medio",
    bodies: "cuerpos",
    sizes: "Tamaños",
    width_by_depth: "anchura x profundidad (mm)",
    cells: "celdas",
    millimetres: "mm",
    kilopascals: "kPa",
    no_size: "ninguno",
    no_size_note: "ninguno: ningún tamaño va con medidas y peso",
    cells_in_all: "Celdas en total",
    cells_changed: "Celdas cambiadas desde el llenado de serie",
    left_under_lower_seat_bone: "Queda bajo el isquion más bajo, esperado",
    left_at_the_low_end: "Lo mismo, lo menos plausible",
    under_left_seat_bone: "Presión bajo el isquion izquierdo, esperada",
    at_the_high_end: "Lo mismo, lo más plausible",
    no_values: "sin valores",
};
