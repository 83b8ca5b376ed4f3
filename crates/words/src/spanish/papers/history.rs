//! Spanish: the page of a client's record.

use crate::HistoryTexts;

pub(super) const TEXTS: &HistoryTexts = &HistoryTexts {
    title: "Historial",
    subject: "Qué se planificó, se hizo y se halló en un cojín, lo más antiguo primero",
    drawings: "Los dibujos son desde arriba, con el borde delantero arriba; la barra está a la izquierda de la persona. Muestran las celdas tras una entrada, donde cambiaron; los de un plan son lo que propone.",
    expected: "Esperado",
    weight: "Peso",
};
