//! Spanish: the sheet for the day of a wash.

use super::take_home::{BURST, BURST_CELL, COUNT_TWICE};
use crate::{PassageTexts, WashDayTexts};

pub(super) const TEXTS: &WashDayTexts = &WashDayTexts {
    title: "Día de lavado",
    subject: "Orden del trabajo, recuento y etiquetas de bolsas para lavar un cojín",
    order_of_work: "Orden del trabajo",
    small_cells: "Las celdas son pequeñas. Use una bandeja. Lejos de niños y animales.",
    from_below: "Desde abajo, aberturas arriba",
    burst_cell: PassageTexts { heading: BURST, sentences: &BURST_CELL },
    count_twice: COUNT_TWICE,
    count: "Cuente al sacar, cuente al meter",
    columns: ["Bolsillo", "Dónde", "Celdas", "Salen", "Entran"],
    fields: &[&["En la bolsa", "Fecha", "Nombre"]],
    bag_labels: "Recorte una etiqueta por bolsa",
};
