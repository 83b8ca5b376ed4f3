//! Spanish: the printed range of a layout.

use crate::RangeTableTexts;

pub(super) const TEXTS: &RangeTableTexts = &RangeTableTexts {
    title: "Tabla de la gama",
    subject: "Un diseño en cada tamaño de fabricación: cantidades de serie con su margen, masas y costuras",
    estimate: "ESTIMACIÓN hasta contar",
    layout: "Diseño",
    revision: "Revisión",
    no_revision: "ninguna escrita",
    digest: "Resumen digital",
    cell: "Celda",
    sizes: "Tamaños de fabricación",
    printed: "Impreso",
    counts: "Celdas de cada compartimento",
    seams: "Longitud de las costuras, mm",
    jumps: "Mire esto",
    from_above: "Números, desde arriba",
    size: "Tamaño, mm",
    rated: "Máx., kg",
    in_all: "Total",
    litres: "Litros",
    cells_g: "Celdas, g",
    all_seams: "Total",
    legend: "Celdas de serie, y entre paréntesis el margen, desde donde las celdas apenas llegan a las paredes hasta la cara superior más alta para la que vale el modelo. Una columna para dos números es de compartimentos simétricos, con las mismas cantidades. Un ! marca una cantidad que salta desde el tamaño menor anterior.",
    limits: "Los litros son aproximados. Las celdas pesan lo que su archivo dice de la película, sin el aire de dentro. Una costura mide lo que se cose por arriba, sin márgenes de costura.",
    clinician_decides: "El profesional responsable decide todo cambio; las normas locales van primero.",
};
