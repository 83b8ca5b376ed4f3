//! Spanish: the table that works without the program.

use case::{CardFinding, CostAtBone, Remedy, RemedyCost};

use super::{Spanish, parts};
use crate::CardWords;

impl CardWords for Spanish {
    fn card_finding(&self, found: &CardFinding) -> String {
        match found {
            CardFinding::BoneFelt => {
                "Un isquion que se nota a través del cojín, izquierdo o derecho".to_owned()
            }
            CardFinding::Mark => {
                "Una marca en la piel que sigue tras 30 minutos, piel abierta o una lesión con peor aspecto"
                    .to_owned()
            }
            CardFinding::TooLow { side, limit } => {
                format!(
                    "Menos de {} bajo el isquion {}",
                    self.length(*limit),
                    parts::side(*side)
                )
            }
            CardFinding::Pinched { side, felt } => format!(
                "Isquion {} atrapado por arriba, y {} o más por debajo",
                parts::side(*side),
                self.length(*felt)
            ),
            CardFinding::Lower { side, by } => format!(
                "Pelvis más baja a la {} en {} más de lo debido (descarte antes hundimiento del asiento y llenado desigual)",
                parts::hand(*side),
                self.length(*by)
            ),
        }
    }

    fn remedy(&self, remedy: &Remedy) -> String {
        match remedy {
            Remedy::ClientOffLookAtSetUp => {
                "PERSONA FUERA YA. No mueva celdas. Mire asiento (hundido), FRENTE y ARRIBA, izquierda y derecha, fugas, cantidades. Llame."
                    .to_owned()
            }
            Remedy::ClientOff => "PERSONA FUERA YA. No mueva celdas. Llame.".to_owned(),
            Remedy::PutIn { cells, into } => {
                format!("Ponga {} de la bolsa de repuesto en el compartimento {into}.", parts::cells(*cells))
            }
            Remedy::TakeOut { cells, out_of } => format!(
                "Alise, compruebe. Si sigue atrapado: pase {} del compartimento {out_of} a la bolsa. Antes, la mano por debajo.",
                parts::cells(*cells)
            ),
            Remedy::MoveOver { cells, from, to } => {
                format!("Pase {} del compartimento {from} al {to}.", parts::cells(*cells))
            }
            Remedy::MoreThanAHandful => {
                "Hace falta más que un puñado de celdas: persona fuera, nuevo plan, llame.".to_owned()
            }
            Remedy::NoCells => "No mueva celdas. Persona fuera. Llame.".to_owned(),
        }
    }

    fn remedy_cost(&self, cost: &RemedyCost) -> String {
        let height = |at: &CostAtBone| parts::signed(at.height.to_mm()) + "\u{a0}mm";
        format!(
            "{}: {} bajo el isquion, presión {}. {}: {}, {}.",
            parts::capital(parts::side(cost.side)),
            height(&cost.there),
            pressure(cost.there.pressure),
            parts::capital(parts::side(cost.side.other())),
            height(&cost.other),
            pressure(cost.other.pressure)
        )
    }
}

/// A change of pressure with its spread: a fifth of itself at least.
fn pressure(share: f64) -> String {
    let (near, far) = (80.0 * share, 120.0 * share);
    let (low, high) = if share < 0.0 { (far, near) } else { (near, far) };
    if (low.round() - high.round()).abs() < 0.5 {
        return parts::signed(100.0 * share) + "\u{a0}%";
    }
    format!("{}\u{a0}a\u{a0}{}\u{a0}%", parts::signed(low), parts::signed(high))
}
