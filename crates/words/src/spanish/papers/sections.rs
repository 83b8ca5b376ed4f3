//! Spanish: sections through the cushion.

use super::shared;
use crate::SectionTexts;

pub(super) const TEXTS: &SectionTexts = &SectionTexts {
    title: "Cortes por el cojín",
    subject: "Cuánto se espera que se hunda la persona en el cojín, visto de lado y desde atrás",
    status: "ESTIMACIÓN: COMPRUEBE CON LA MANO",
    under_client: "el cojín bajo la persona",
    without_client: "su cara superior sin la persona",
    underside: "la parte de abajo de la persona",
    seam: "una costura",
    site: "un punto del cuerpo, y desde dónde hasta dónde puede estar",
    key: "Junto a cada punto está cuánto cojín queda bajo él y, entre paréntesis, desde cuán poco hasta cuánto puede ser. Las alturas no están exageradas, y las presiones no se dibujan.",
    counts: "Cantidades",
    height: "altura",
    from_the_middle: "desde el centro",
    from_the_rear: "desde el borde trasero",
    limits: "Calculado con un modelo que no se comparó con un cojín medido. No sustituye ninguna comprobación con la mano.",
    across: "De izquierda a derecha por los isquiones, visto desde atrás",
    clinician_decides: shared::CARD_DEFERS,
};
