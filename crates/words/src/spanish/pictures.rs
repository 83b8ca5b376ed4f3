//! Spanish: what pictures on a screen say.

use case::question::{Drawing, Question, QuestionWords as _};
use case::{Move, Place, SiteName, Spread};
use cushion::{Length, Side};

use super::{Spanish, parts};
use crate::{BasicWords as _, PaperWords as _, PictureWords};

impl PictureWords for Spanish {
    fn spare_bag(&self) -> &'static str {
        "Bolsa de repuesto"
    }

    fn move_shows(&self, from: Place, to: Place, cells: u32) -> String {
        let moved = self.a_move(&Move { from, to, cells });
        format!(
            "{moved} El cojín se ve desde abajo, con el borde delantero arriba. La izquierda de la persona está a la derecha del dibujo."
        )
    }

    fn least_left(&self, least: Length) -> String {
        format!("al menos {}", self.length(least))
    }

    fn left_in_short(&self, left: &Spread<Length>) -> String {
        self.left_under_bone(left)
    }

    fn section_picture_shows(
        &self,
        title: &str,
        sites: &[(SiteName, Spread<Length>)],
        least: Length,
    ) -> String {
        let shown = match sites {
            [] => format!("{title}."),
            _ => self.section_shows(title, sites),
        };
        let least = self.length(least);
        format!("{shown} Esto es una estimación. La línea en {least} es lo menos que debe quedar.")
    }

    fn measure_name(&self, drawing: Drawing) -> &'static str {
        match drawing {
            Drawing::HipWidth => self.label(Question::HipWidth),
            Drawing::TrochanterWidth => self.label(Question::TrochanterWidth),
            Drawing::ThighDepth => self.label(Question::ThighDepth),
            Drawing::LowerLegLength => self.label(Question::LowerLegLength),
            Drawing::KneeWidth => self.label(Question::ExternalKneeWidth),
            Drawing::SeatBoneSpacing => self.label(Question::SeatBoneSpacing),
            Drawing::Obliquity => self.label(Question::ObliquityBy),
            Drawing::Tilt => self.label(Question::TiltDirection),
            Drawing::Rotation => "rotación",
            Drawing::Windswept => "piernas en ráfaga",
            Drawing::HipFlexion => self.label(Question::HipFlexion),
            Drawing::PoplitealAngle => self.label(Question::PoplitealAngle),
            Drawing::LegDifference => self.label(Question::TrulyShorterBy),
            Drawing::ChairWidth => "anchura interior",
            Drawing::ChairDepth => "profundidad interior",
            Drawing::SlingSag => "hundimiento de la lona",
            Drawing::Footrest => "reposapiés a base del asiento",
            Drawing::ChairTilt => self.label(Question::ChairTilt),
            Drawing::SeatBonesForward => "borde trasero a isquiones",
            Drawing::Crown => "abombamiento",
        }
    }

    fn how_it_is_measured(&self, drawing: Drawing) -> &'static str {
        match drawing {
            Drawing::HipWidth => {
                "Anchura de cadera, vista desde arriba: siente erguida a la persona y mida en recto por lo más ancho de la cadera o los muslos, entre dos tablas sostenidas de pie a los lados. La izquierda de la persona está a la izquierda del dibujo."
            }
            Drawing::TrochanterWidth => {
                "Anchura de trocánteres, vista desde arriba: palpe el punto de hueso en el lado de fuera de cada cadera y mida en recto entre los lados de fuera de ambos. La izquierda de la persona está a la izquierda del dibujo."
            }
            Drawing::ThighDepth => {
                "Longitud de muslo, vista de lado: mida a nivel a lo largo del muslo, de detrás de la nalga a detrás de la rodilla."
            }
            Drawing::LowerLegLength => {
                "Longitud de pierna, vista de lado: mida en vertical hacia abajo, de detrás de la rodilla a bajo el talón, con zapatos."
            }
            Drawing::KneeWidth => {
                "Anchura exterior de rodillas, vista desde arriba: mida en recto entre los lados de fuera de las rodillas, como se tienen al sentarse. La izquierda de la persona está a la izquierda del dibujo."
            }
            Drawing::SeatBoneSpacing => {
                "Distancia entre isquiones, vista desde atrás: mida entre los puntos más bajos de los dos isquiones. La izquierda de la persona está a la izquierda del dibujo."
            }
            Drawing::Obliquity => {
                "Oblicuidad, vista desde atrás: mida cuánto más bajo está el isquion del lado más bajo que el otro. En el dibujo está más bajo el lado izquierdo de la persona, y la izquierda de la persona está a la izquierda."
            }
            Drawing::Tilt => {
                "Basculación, vista de lado: mire la línea del punto de hueso de atrás de la pelvis al de su frente, y mida el ángulo entre ella y una línea nivelada. En el dibujo la pelvis está basculada hacia atrás."
            }
            Drawing::Rotation => {
                "Rotación, vista desde arriba: mida el ángulo entre la línea por los dos puntos del frente de la pelvis y una línea recta de lado a lado del asiento. En el dibujo está delante el lado derecho de la persona, y la izquierda de la persona está a la izquierda."
            }
            Drawing::Windswept => {
                "Piernas en ráfaga, vistas desde arriba: mida el ángulo entre los muslos y el frente. En el dibujo ambas rodillas van hacia la derecha de la persona, y la izquierda de la persona está a la izquierda."
            }
            Drawing::HipFlexion => {
                "Flexión de cadera, vista de lado: mida el ángulo hasta el que el muslo sube desde la línea recta del tronco. Un ángulo recto entre tronco y muslo son 90 grados."
            }
            Drawing::PoplitealAngle => {
                "Ángulo poplíteo, visto de lado: mida en la rodilla el ángulo entre el muslo y la pierna."
            }
            Drawing::LegDifference => {
                "Diferencia de las piernas, vista de lado: con la pelvis sujeta en recto y las piernas juntas, mida cuánto queda una rodilla detrás de la otra."
            }
            Drawing::ChairWidth
            | Drawing::ChairDepth
            | Drawing::SlingSag
            | Drawing::Footrest
            | Drawing::ChairTilt
            | Drawing::SeatBonesForward
            | Drawing::Crown => on_the_chair(drawing).unwrap_or_default(),
        }
    }

    fn body_shows(&self) -> &'static str {
        "Un cuerpo sentado visto desde atrás, con los muslos debajo. Hay un círculo en cada sitio que se puede elegir: ambos isquiones, el cóccix, ambos trocánteres y ambos muslos. La izquierda de la persona está a la izquierda del dibujo."
    }

    fn lower_by(&self, by: Length) -> String {
        self.length(by)
    }

    fn pelvis_shows(&self, lower: Option<Side>, by: Option<Length>) -> String {
        let how = match (lower, by) {
            (Some(side), None) => {
                format!("el lado {} de la persona está MÁS BAJO", parts::loud_side(side))
            }
            (side, by) => self.lower(side, by.unwrap_or(Length::from_mm(0.0))),
        };
        let drawn = if lower.is_some() { " El giro no está dibujado a escala." } else { "" };
        format!(
            "La pelvis vista desde atrás: {how}.{drawn} La izquierda de la persona está a la izquierda del dibujo."
        )
    }
}

/// How something of a chair or a cushion is measured; none of a body.
fn on_the_chair(drawing: Drawing) -> Option<&'static str> {
    Some(match drawing {
        Drawing::ChairWidth => {
            "Anchura interior, vista desde delante: mida la anchura libre entre los lados de la silla. La izquierda de la persona está a la derecha del dibujo."
        }
        Drawing::ChairDepth => {
            "Profundidad interior, vista de lado: mida a nivel, del frente del respaldo al borde delantero del asiento."
        }
        Drawing::SlingSag => {
            "Hundimiento de la lona, visto desde delante: ponga una regla recta sobre los dos tubos laterales y mida de ella a la lona, hacia abajo, en el centro. La izquierda de la persona está a la derecha del dibujo."
        }
        Drawing::Footrest => {
            "Reposapiés a base del asiento, visto de lado: mida en vertical hacia arriba, de la cara superior del reposapiés a la de la base del asiento, sin el cojín."
        }
        Drawing::ChairTilt => {
            "Basculación de la silla, vista de lado: mida el ángulo entre la base del asiento y una línea nivelada. En el dibujo la silla está echada atrás."
        }
        Drawing::SeatBonesForward => {
            "Borde trasero a isquiones, visto de lado: mida a nivel, del borde trasero del cojín hacia delante hasta bajo los isquiones."
        }
        Drawing::Crown => {
            "Abombamiento, un compartimento cortado y visto de lado: cuánto sube el centro de su cara superior sobre las costuras de sus paredes."
        }
        _ => return None,
    })
}
