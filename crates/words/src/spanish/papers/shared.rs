//! Spanish: what several documents say.

use crate::SharedTexts;

pub(super) const CARD_DEFERS: &str = "Decide el profesional responsable; las normas locales van primero. Esta ficha no sustituye una valoración.";

pub(super) const TEXTS: &SharedTexts = &SharedTexts {
    front_edge: "BORDE DELANTERO (rodillas)",
    rear_edge: "BORDE TRASERO (espalda)",
    clients_left: "IZQUIERDA DE LA PERSONA",
    clients_right: "DERECHA DE LA PERSONA",
    clients_left_short: "Izquierda de la persona",
    clients_right_short: "Derecha de la persona",
    clients_left_alone: "IZQUIERDA",
    clients_right_alone: "DERECHA",
    front: "FRENTE",
    top: "ARRIBA",
    client: "Persona",
    layout: "Diseño",
    width_by_depth: "Anchura x profundidad",
    cell: "Celda",
    rated_for: "Peso máximo",
    cells_in_all: "Celdas en total",
    spare_cells: "Celdas de repuesto",
    plan_recorded: "Plan registrado",
    serial: "N.º de serie",
    layout_and_size: "Diseño y tamaño",
    plan_and_word: "Plan, clave",
    not_recorded: "no registrado",
    page: "Página",
    discs_and_numbers: "En un disco: el número de un compartimento. Sin disco: sus celdas. Barra gruesa: la izquierda de la persona.",
    superseded: "¿Sustituida? Táchela. Fecha ____________ Iniciales ________",
    total: "Total",
    numbers_from_below: "El cojín desde abajo, con el borde delantero arriba y los números de los compartimentos. La izquierda de la persona está a la derecha del dibujo.",
    attached_code: "El texto del código impreso, con que se recuperan las cantidades",
};
