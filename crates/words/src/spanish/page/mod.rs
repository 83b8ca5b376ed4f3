//! Spanish: the page beside the chair.

mod texts;

use case::{
    Check, Date, Lapse, MeasuredAt, PressAnswer, Review, SiteChange, SkinAnswer, Standing, State,
    TopAnswer, UnderAnswer,
};
use cushion::{Length, Mass, Pressure, Side};

use super::Spanish;
use super::costs::more_or_less;
use super::papers::day;
use super::parts::{
    capital, cells, counted, decimal, hand, kg, lb, list, loud_side, number, percent, side, signed,
};
use crate::page::PageTexts;
use crate::{BasicWords, PageWords};

impl PageWords for Spanish {
    fn page(&self) -> &'static PageTexts {
        texts::TEXTS
    }

    fn step_of(&self, step: &str, at: usize, of: usize) -> String {
        format!("{step}, paso {at} de {of}")
    }

    fn body_weight(&self, weight: Mass, in_pounds: bool) -> String {
        if in_pounds { format!("{} ({})", lb(weight), kg(weight)) } else { kg(weight) }
    }

    fn state_in_short(&self, standing: Standing<'_>) -> String {
        match (standing.state, standing.review) {
            (State::ToMeasure, _) => "Por medir".to_owned(),
            (State::ToPlan, _) => "Por planificar".to_owned(),
            (State::Estimate, _) => "Estimación: sin comprobar".to_owned(),
            (State::NotSafe(_), _) => "No es seguro: corríjalo".to_owned(),
            (State::Failed(_), _) => "No superado: la persona, fuera del cojín".to_owned(),
            (State::Lapsed(_, lapse), _) => format!("Caducado: {}", lapsed(lapse)),
            (State::Fitted(_), Review::Overdue(_)) => "Revisión atrasada".to_owned(),
            (State::Fitted(_), _) => "Ajustado".to_owned(),
        }
    }

    fn review_in_short(&self, standing: Standing<'_>) -> String {
        match standing.review {
            Review::None => "Sin fecha de revisión".to_owned(),
            Review::Due(by) => format!("Revisar antes del {}", day(by)),
            Review::Overdue(by) => format!("Revisión atrasada desde el {}", day(by)),
        }
    }

    fn day(&self, on: Date) -> String {
        day(on)
    }

    fn changed_meanwhile(&self, now: Option<&str>) -> String {
        match now {
            Some(now) => format!(
                "Entretanto alguien escribió aquí \u{201c}{now}\u{201d}, y eso está en el archivo. ¿Qué es lo \
                 correcto?"
            ),
            None => "Entretanto alguien quitó esta respuesta. ¿Qué es lo correcto?".to_owned(),
        }
    }

    fn need_another_look(&self, count: usize) -> String {
        if count == 1 {
            "1 respuesta necesita otra mirada".to_owned()
        } else {
            format!("{count} respuestas necesitan otra mirada")
        }
    }

    fn still_missing(&self, count: usize) -> String {
        if count == 1 {
            "1 respuesta falta o no es correcta".to_owned()
        } else {
            format!("{count} respuestas faltan o no son correctas")
        }
    }

    fn answer_too(&self, label: &str) -> String {
        format!("Falta también la respuesta a «{label}».")
    }

    fn goes_only_with(&self, label: &str, answers: &str) -> String {
        format!("Esto solo va con «{label}»: {answers}. Bórrelo o cambie aquella respuesta.")
    }

    fn entry_of_list(&self, group: &str, at: usize) -> String {
        format!("{group}, entrada {at}")
    }

    fn obliquity_means(&self, lower: Side, [least, most]: [Length; 2]) -> String {
        let by = if (most - least).to_mm() < 1.0 {
            self.length(least)
        } else {
            self.lengths(least, most)
        };
        format!("El lado {} de la persona está {by} MÁS BAJO en los isquiones.", loud_side(lower))
    }

    fn depth_goes_by(&self, own: Side) -> String {
        format!(
            "La profundidad va por el muslo {} de la persona: falta la pierna {}, y su muslo no cuenta.",
            side(own),
            hand(own.other())
        )
    }

    fn compartment_said(&self, number: u8, words: &str, count: u32) -> String {
        format!("{number}, {words}: {}", cells(count))
    }

    fn step_said(&self, more: bool, number: u8, words: &str) -> String {
        let more = if more { "más" } else { "menos" };
        format!("Una celda {more} en el {number}, {words}")
    }

    fn change_from_stock(&self, cells: i64) -> String {
        format!("{} frente a la serie", signed(cells as f64))
    }

    fn all_cells_said(&self, all: u32, stock: u32) -> String {
        let change = i64::from(all) - i64::from(stock);
        let all = cells(all);
        match change {
            0 => format!("{all} en total, como en el llenado de serie."),
            own if own > 0 => format!("{all} en total, {own} más que en el llenado de serie."),
            own => format!("{all} en total, {} menos que en el llenado de serie.", -own),
        }
    }

    fn range(&self, low: &str, high: &str) -> String {
        format!("{low} a {high}")
    }

    fn plain_length(&self, length: Length) -> String {
        self.length(length)
    }

    fn lean(&self, roll_deg: f64) -> String {
        turned(roll_deg, ["lado derecho arriba", "lado izquierdo arriba"])
    }

    fn slope(&self, pitch_deg: f64) -> String {
        turned(pitch_deg, ["frente arriba", "frente abajo"])
    }

    fn site_pressure(&self, pressure: Pressure) -> String {
        format!("{} kPa", decimal(pressure.to_kpa(), 1))
    }

    fn site_change(&self, change: &SiteChange) -> String {
        if change.has_share() { more_or_less(change.rise()) } else { "desde nada".to_owned() }
    }

    fn shares(&self, left: f64, right: f64) -> String {
        format!("izquierda {}, derecha {}", percent(left), percent(right))
    }

    fn compartment_of(&self, at: usize, of: usize) -> String {
        format!("Compartimento {at} de {of}")
    }

    fn put_in(&self, count: u32, number: u8) -> String {
        format!("Ponga {} en el compartimento\u{a0}{number}", cells(count))
    }

    fn other_than_planned(&self, number: u8, planned: u32, put_in: u32) -> String {
        format!(
            "El compartimento {number} tiene {} y no {planned}, como estaba previsto.",
            cells(put_in)
        )
    }

    fn move_of(&self, at: usize, of: usize) -> String {
        format!("Movimiento {at} de {of}")
    }

    fn expected_and_found(&self, of: Side, expected: Length, found: Option<Length>) -> String {
        let expected = format!(
            "Bajo el isquion {} de la persona se esperaban {}",
            side(of),
            self.length(expected)
        );
        match found {
            Some(found) => format!("{expected}; la mano halló {}.", self.length(found)),
            None => format!("{expected}."),
        }
    }

    fn expected_lower(&self, lower: Option<Side>, by: Length) -> String {
        format!("Se esperaba: {}.", self.lower(lower, by))
    }

    fn too_little_felt(&self, of: Side, least: Length) -> String {
        format!(
            "Bajo el isquion {} de la persona se palparon menos de {} de cojín. La persona sale del \
             cojín, y se sienta otra vez sobre estas celdas solo si allí se palpa al menos eso.",
            side(of),
            self.length(least)
        )
    }

    fn check_lacks(&self, parts: &[&str]) -> String {
        let parts: Vec<String> = parts.iter().map(|part| (*part).to_owned()).collect();
        format!("Aún no se puede pasar. Falta todavía: {}.", list(&parts))
    }

    fn check_said(&self, check: &Check) -> String {
        capital(&self.found(check)) + "."
    }

    fn page_of_paper(&self, paper: &str, page: usize, pages: usize) -> String {
        format!("{paper}: página {page} de {pages}, como se imprime. Ábrala para leerla.")
    }

    fn return_to(&self, entry: usize) -> String {
        format!(
            "Registrar que las cantidades de tras la entrada {entry} están otra vez en el cojín"
        )
    }

    fn withdraw(&self, entry: usize) -> String {
        format!("La entrada {entry} fue un error")
    }

    fn to_put_back(&self, number: u8, count: i64) -> String {
        let many = cells(u32::try_from(count.unsigned_abs()).unwrap_or(u32::MAX));
        if count < 0 {
            format!("Saque {many} del número {number}.")
        } else {
            format!("Vuelva a poner {many} en el número {number}.")
        }
    }

    fn record_has_grown(&self, entries: usize) -> String {
        format!(
            "Entretanto alguien registró algo: el registro tiene ahora {}. De este formulario no se \
             registró nada. Así está ahora.",
            counted(entries, ["entrada", "entradas"])
        )
    }

    fn line_of_file(&self, line: usize) -> String {
        format!("Línea {line}.")
    }
}

impl Spanish {
    /// What hands found: a clause.
    pub(super) fn found(self, check: &Check) -> String {
        match check {
            Check::Top { side: at, answer } => {
                let fingers = match answer {
                    TopAnswer::Safe => "suben y bajan",
                    TopAnswer::Tight => "salen, pero no suben ni bajan",
                    TopAnswer::Pinched => "quedan presos",
                };
                format!("los dedos sobre el isquion {} de la persona {fingers}", side(*at))
            }
            Check::Under { side: at, answer } => {
                let found = match answer {
                    UnderAnswer::Felt(felt) => format!("{} de cojín", self.length(*felt)),
                    UnderAnswer::BoneFelt => "SE NOTA EL HUESO".to_owned(),
                    UnderAnswer::NotFound => "no se halló el hueso".to_owned(),
                };
                format!("bajo el isquion {} de la persona: {found}", side(*at))
            }
            Check::Press { number, answer } => {
                let feels = match answer {
                    PressAnswer::Slack => "más flojo que",
                    PressAnswer::Like => "igual que",
                    PressAnswer::Tight => "más duro que",
                };
                format!("el compartimento {number} está {feels} su pareja")
            }
            Check::Lower { lower, by, at } => {
                let at = match at {
                    MeasuredAt::SeatBones => "en los isquiones",
                    MeasuredAt::Asis => "en el frente de la pelvis",
                };
                match lower {
                    None => self.lower(None, *by),
                    own => format!("{} {at}", self.lower(*own, *by)),
                }
            }
            Check::Reading { site, pressure } => {
                format!("{}: una lectura de {:.0} mmHg", self.site(*site), pressure.to_mmhg())
            }
            Check::Skin { site, answer } => {
                let skin = match answer {
                    SkinAnswer::Clear => "como antes",
                    SkinAnswer::Fades => "una marca que se va",
                    SkinAnswer::Stays => "una marca que QUEDA",
                    SkinAnswer::Open => "piel ABIERTA",
                    SkinAnswer::Worse => "PEOR que antes",
                };
                format!("piel en el {}: {skin}", self.site(*site))
            }
        }
    }
}

fn lapsed(lapse: Lapse) -> &'static str {
    match lapse {
        Lapse::OtherCushion => "otro cojín",
        Lapse::Filling(_) => "se está llenando",
        Lapse::Counts(_) => "otras cantidades",
        Lapse::Recount(_) => "el recuento se desvía",
        Lapse::Skin(..) => "marca en la piel",
        Lapse::Weight(_) => "cambió el peso",
    }
}

/// A turn in tenths of a degree, with the way in which it goes: the first words where it is above
/// zero.
fn turned(degrees: f64, [positive, negative]: [&str; 2]) -> String {
    let tenths = (degrees.abs() * 10.0).round() / 10.0;
    if tenths < 0.05 {
        return "nada".to_owned();
    }
    format!("{}\u{b0}, {}", number(tenths), if degrees < 0.0 { negative } else { positive })
}
