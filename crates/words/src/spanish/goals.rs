//! Spanish: goals and counts.

use case::{
    CountReason, FrontSides, GoalNumber, GoalOutcome, OtherCount, Shortfall, SinceRecorded, Want,
};
use cushion::Length;

use super::{Spanish, parts};
use crate::{BasicWords, GoalWords};

/// A change of pressure is known to a fifth of itself at best.
const FIFTH: f64 = 0.2;

impl GoalWords for Spanish {
    fn goal(&self, want: &Want) -> String {
        match *want {
            Want::CorrectObliquity => "nivelar la pelvis".to_owned(),
            Want::AccommodateObliquity => {
                "dejar la oblicuidad, rellenar el hueco y repartir la carga".to_owned()
            }
            Want::OffLoad { site, share } => {
                format!(
                    "quitar un {} de la presión en el {}",
                    parts::percent(share),
                    self.site(site)
                )
            }
            Want::Shelf { height } => {
                format!("un escalón preisquiático de {}", self.length(height))
            }
            Want::LowerFront { sides: FrontSides::One(side), by } => {
                format!("bajar el frente {} {}", parts::side(side), self.length(by))
            }
            Want::LowerFront { sides: FrontSides::Both, by } => {
                format!("bajar el frente {}", self.length(by))
            }
            Want::MedialSupport { height } => {
                format!("un soporte medial de muslo de {}", self.length(height))
            }
            Want::LateralSupport { height } => {
                format!("soportes laterales de {}", self.length(height))
            }
            Want::EqualFirmness => "la misma firmeza en todos los compartimentos".to_owned(),
            Want::NearStock => "quedar cerca del llenado de serie".to_owned(),
        }
    }

    fn goal_outcome(&self, outcome: &GoalOutcome) -> String {
        let goal = parts::capital(&self.goal(&outcome.want));
        let why = outcome.why.map(|why| parts::capital(&self.shortfall(why)));
        let why = why.map_or_else(String::new, |why| format!(" {why}."));
        match &outcome.reached {
            None => format!("{goal}: NO HECHO.{why}"),
            Some(reached) => {
                let clauses = [Some(self.expected(reached)), self.wanted(&outcome.wanted)];
                let expected = clauses.into_iter().flatten().collect::<Vec<_>>().join("; ");
                let met = if outcome.met { "cumplido" } else { "NO ALCANZADO" };
                format!("{goal}: {met}. Esperado: {expected}.{why}")
            }
        }
    }

    fn shortfall(&self, why: Shortfall) -> String {
        match why {
            Shortfall::Clearance(side) => format!(
                "más dejaría muy poco cojín bajo el isquion {}",
                parts::side(side)
            ),
            Shortfall::Full(number) => format!(
                "el compartimento {number} está tan lleno como vale la estimación; más necesita un diseño más alto ahí"
            ),
            Shortfall::Rank => "los límites y los objetivos anteriores van primero".to_owned(),
            Shortfall::OtherGoals => "los límites y los demás objetivos necesitan estos cambios".to_owned(),
            Shortfall::OutOfReach => {
                "ninguna cantidad de este diseño lo alcanza dentro de los límites".to_owned()
            }
            Shortfall::TheseCounts => "estas cantidades no lo alcanzan".to_owned(),
            Shortfall::SeatWouldFall => {
                "el escalón está, pero hecho bajando lo de al lado, y eso no sostiene a nadie"
                    .to_owned()
            }
            Shortfall::FixedObliquity => {
                "la oblicuidad es fija: acomódela, una pelvis fija no se nivela a la fuerza"
                    .to_owned()
            }
            Shortfall::InjuredLowSide(side) => format!(
                "el isquion {} está lesionado, y nivelar rellenaría bajo él",
                parts::side(side)
            ),
            Shortfall::FixedPosteriorTilt => {
                "la pelvis está fija en basculación posterior y resbalaría sobre un escalón".to_owned()
            }
            Shortfall::StiffHip => {
                "una cadera flexiona menos de 90 grados, y un escalón echaría la pelvis atrás"
                    .to_owned()
            }
            Shortfall::NoObliquity => {
                "no consta ninguna oblicuidad en el archivo de la persona".to_owned()
            }
            Shortfall::NothingToTake(site) => {
                format!("el {} ya no lleva casi nada", self.site(site))
            }
            Shortfall::NoSeamForShelf => {
                "este diseño no tiene una costura cerca por delante de los isquiones; un escalón necesita un diseño que la tenga"
                    .to_owned()
            }
            Shortfall::NoFront => {
                "este diseño no tiene un compartimento propio en ese frente".to_owned()
            }
            Shortfall::NoCompartments => "este diseño no tiene compartimentos para ello".to_owned(),
            Shortfall::NothingBeside => {
                "este diseño no tiene nada al lado sobre lo que subir".to_owned()
            }
            Shortfall::NoRestOnStock => {
                "la persona no queda en reposo con el llenado de serie".to_owned()
            }
            Shortfall::NoRest => "la persona no queda en reposo con estas cantidades".to_owned(),
        }
    }

    fn count_reason<'a>(&self, reason: &'a CountReason) -> &'a str {
        match reason {
            CountReason::Wish(why) => why,
            CountReason::Goals => "por los objetivos",
        }
    }

    fn since_recorded(&self, since: &SinceRecorded) -> String {
        match since {
            SinceRecorded::LayoutEdited { shown } | SinceRecorded::CellEdited { shown } => {
                format!("{shown} se cambió después de registrar el plan")
            }
            SinceRecorded::OtherCounts { recorded, counts } => {
                format!(
                    "un plan nuevo tendría {}; se imprimen las cantidades registradas el {recorded}",
                    others(counts)
                )
            }
            SinceRecorded::OtherWeight { then, now, counts } => {
                let fresh = match counts.as_deref() {
                    None => "un plan nuevo no guardaría los límites".to_owned(),
                    Some([]) => "un plan nuevo tendría las mismas cantidades".to_owned(),
                    Some(counts) => format!("un plan nuevo tendría {}", others(counts)),
                };
                format!(
                    "la persona pesa ahora {} kg, y el plan se hizo para {} kg: {fresh}; se imprimen las cantidades registradas",
                    parts::decimal(now.to_kg(), 1),
                    parts::decimal(then.to_kg(), 1)
                )
            }
        }
    }

    fn plan_reason(&self, goals: &[GoalOutcome], wishes: &[&str]) -> Option<String> {
        let goals = goals.iter().map(|own| match own.met {
            true => self.goal(&own.want),
            false => format!("{} (no alcanzado)", self.goal(&own.want)),
        });
        let all: Vec<String> = goals.chain(wishes.iter().map(|&wish| wish.to_owned())).collect();
        (!all.is_empty()).then(|| all.join("; "))
    }
}

impl Spanish {
    /// The number that is expected: a clause.
    pub(super) fn expected(&self, reached: &GoalNumber) -> String {
        match reached {
            GoalNumber::Relief(share) => {
                let (near, far) = ((1.0 - FIFTH) * share, (1.0 + FIFTH) * share);
                if (100.0 * far).round() == 0.0 {
                    return "igual que con el llenado de serie".to_owned();
                }
                let way = if *share < 0.0 { "MÁS" } else { "menos" };
                format!(
                    "{} {way} que con el llenado de serie, contando el tejido blando",
                    range(near, far)
                )
            }
            GoalNumber::Lower { side, by } => self.lower(*side, *by),
            GoalNumber::Higher(by) => self.up_or_down(*by, "más alto", "MÁS BAJO"),
            GoalNumber::FrontLower(by) => self.up_or_down(*by, "más bajo", "MÁS ALTO"),
            GoalNumber::Apart(share) => {
                format!("la firmeza difiere un {} como mucho", parts::percent(*share))
            }
            GoalNumber::Changed(0) => "no cambia ninguna celda".to_owned(),
            GoalNumber::Changed(1) => "cambia 1 celda".to_owned(),
            GoalNumber::Changed(cells) => format!("cambian {cells} celdas"),
        }
    }

    /// The number that is wanted, where the goal's own words do not say it: a clause.
    fn wanted(self, wanted: &GoalNumber) -> Option<String> {
        match wanted {
            GoalNumber::Lower { side, by } => Some(match side.filter(|_| by.to_mm() >= 0.5) {
                None => "se quiere nivelada".to_owned(),
                Some(side) => {
                    format!(
                        "se quiere {} MÁS BAJO el lado {}",
                        self.length(*by),
                        parts::loud_side(side)
                    )
                }
            }),
            GoalNumber::Higher(by) | GoalNumber::FrontLower(by) => {
                Some(format!("se quieren {}", self.length(*by)))
            }
            GoalNumber::Relief(_) | GoalNumber::Apart(_) | GoalNumber::Changed(_) => None,
        }
    }

    /// So much one way, or the other where negative.
    fn up_or_down(self, by: Length, forward: &str, back: &str) -> String {
        let way = match by.to_mm().round() {
            0.0 => return "sin diferencia".to_owned(),
            rounded if rounded < 0.0 => back,
            _ => forward,
        };
        format!("{} {way}", self.length(by.abs()))
    }
}

/// Two shares in whole per cent, the smaller first, or one where they are the same.
fn range(near: f64, far: f64) -> String {
    let whole = |share: f64| (share * 100.0).abs().round();
    if whole(near) == whole(far) {
        return parts::percent(near);
    }
    format!("{:.0} a {:.0} %", whole(near), whole(far))
}

/// Counts that a fresh plan would have otherwise.
fn others(counts: &[OtherCount]) -> String {
    let other = counts.iter().map(|own| {
        let OtherCount { id, number, fresh, recorded } = own;
        format!("{fresh} en el compartimento {number} ({id}), registradas hay {recorded}")
    });
    other.collect::<Vec<_>>().join("; ")
}
