//! Spanish: the sewn-in tag.

use crate::TagTexts;

pub(super) const TEXTS: &TagTexts = &TagTexts {
    title: "Etiqueta del cojín",
    subject: "Cómo se pone, y los números de los compartimentos",
    drawing: "El cojín desde abajo, con el borde delantero arriba y los números de sus compartimentos. La izquierda de la persona está a la derecha del dibujo.",
    this_side_down: "Esta cara ABAJO. ARRIBA es la otra.",
    sides: "Desde abajo. Barra gruesa: izquierda de la persona.",
    fill_by_the_card: "¿Hay ficha? Siga la ficha.",
    fields: &[&["N.º de serie"], &["Lote", "Fecha"]],
    care: "No lavar, no usar lejía, no secar en secadora, no planchar, no limpiar en seco.",
    care_in_words: "Pase un paño. Lave solo la funda.",
    sheet_title: "Hoja de etiquetas del cojín",
    sheet_subject: "Etiquetas para recortar por las marcas",
};
