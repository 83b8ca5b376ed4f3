//! Spanish: what is said of the record.

use case::{
    CardCode, Check, CheckOutcome, CheckPart, CountedFrom, Entry, Expected, Filled, FillingSoFar,
    Lapse, Move, NoCardCode, OtherCushion, OtherPapers, PartsChecked, Place, RecordNote, Restored,
    Review, StaleFilling, Standing, State,
};
use cushion::Side;

use super::Spanish;
use super::folder;
use super::parts::cells;
use super::restoring;
use crate::{BasicWords as _, RecordWords};

impl RecordWords for Spanish {
    fn standing(&self, standing: Standing<'_>) -> String {
        let state = match standing.state {
            State::ToMeasure => {
                "Estado: POR MEDIR. Antes hacen falta la anchura de cadera y el peso.".to_owned()
            }
            State::ToPlan => {
                "Estado: POR PLANIFICAR. No se planificó nada y no se puso nada.".to_owned()
            }
            State::Estimate => {
                "Estado: ESTIMACIÓN. No consta ninguna comprobación completa de estas cantidades."
                    .to_owned()
            }
            State::NotSafe(on) => format!(
                "Estado: NO ES SEGURO. Lo que se puso el {on} rompe un límite, según la estimación. Corríjalo antes de que la persona se siente."
            ),
            State::Fitted(looked) => {
                format!("Estado: AJUSTADO. Comprobado el {} por {}.", looked.on, looked.by)
            }
            State::Failed(looked) => format!(
                "Estado: NO VÁLIDO. La comprobación del {} por {} halló que no está bien.",
                looked.on, looked.by
            ),
            State::Lapsed(looked, lapse) => {
                format!(
                    "Estado: CADUCADO. Comprobado el {}, pero {}.",
                    looked.on,
                    self.lapse(lapse)
                )
            }
        };
        match standing.review {
            Review::None => state,
            Review::Due(by) => format!("{state} Revise antes del {by}."),
            Review::Overdue(by) => format!("{state} Revisión ATRASADA desde el {by}."),
        }
    }

    fn counted_from(&self, from: CountedFrom) -> String {
        match from {
            CountedFrom::Stock => "como llegó".to_owned(),
            CountedFrom::Plan(on) => format!("plan del {on}"),
            CountedFrom::Filled(on) => format!("llenado el {on}"),
            CountedFrom::Incoming(on) => format!("comprobación de entrada del {on}"),
            CountedFrom::Recount(on) => format!("recuento del {on}"),
            CountedFrom::Moved(on) => format!("movimientos del {on}"),
            CountedFrom::Returned(on) => format!("vuelta atrás del {on}"),
        }
    }

    fn begins_from(&self, from: CountedFrom) -> String {
        match from.on().filter(|_| !from.is_told()) {
            Some(on) => format!("cantidades registradas el {on}"),
            None => format!("cantidades que hay ahora en el cojín ({})", self.counted_from(from)),
        }
    }

    fn check_part(&self, part: CheckPart) -> &'static str {
        check_part(part)
    }

    fn check_outcome(&self, outcome: CheckOutcome) -> &'static str {
        match outcome {
            CheckOutcome::Passed => "superada",
            CheckOutcome::NotFinished => "incompleta",
            CheckOutcome::Failed => "no superada",
        }
    }

    fn checked(&self, check: &PartsChecked) -> String {
        let outcome = check.outcome();
        let missing = check.missing();
        match outcome {
            CheckOutcome::Passed => "La comprobación se pasó.".to_owned(),
            CheckOutcome::Failed => "La comprobación no se pasó.".to_owned(),
            CheckOutcome::NotFinished => not_finished(&missing),
        }
    }

    fn bag(&self, left: i64) -> String {
        let count = cells(u32::try_from(left.unsigned_abs()).unwrap_or(u32::MAX));
        if left < 0 {
            format!(
                "A la bolsa de repuesto no le llega, por {count}: se sacaron más de las que tenía. Cuéntela."
            )
        } else {
            format!("La bolsa de repuesto tiene {count}.")
        }
    }

    fn bag_after(&self, left: i64) -> String {
        let count = cells(u32::try_from(left.unsigned_abs()).unwrap_or(u32::MAX));
        if left < 0 {
            format!("Para estos movimientos no llega, por {count}.")
        } else {
            format!("Tras estos movimientos tiene {count}.")
        }
    }

    fn counts(&self, counts: &[(u8, u32)]) -> String {
        let counts = counts.iter().map(|(number, cells)| format!("{cells} en el número {number}"));
        counts.collect::<Vec<_>>().join(", ")
    }

    fn entries(&self, count: usize) -> String {
        if count == 1 { "1 entrada".to_owned() } else { format!("{count} entradas") }
    }

    fn entry(&self, entry: &Entry) -> String {
        let why =
            |why: &Option<String>| why.as_ref().map_or(String::new(), |why| format!("; {why}"));
        match entry {
            Entry::Plan(own) => {
                let counts: Vec<(u8, u32)> =
                    own.counts.iter().map(|own| (own.number, own.planned)).collect();
                let counts = self.counts(&counts);
                format!("plan: {} ({counts}){}", cells(own.total()), why(&own.why))
            }
            Entry::FittingCheck(own) => {
                let outcome = match own.passed {
                    Some(true) => "superada",
                    Some(false) => "no superada",
                    None => "incompleta",
                };
                format!("comprobación del ajuste: {outcome}{}", why(&own.found))
            }
            Entry::Adjustment(own) => format!(
                "comprobaciones: {}; {}{}",
                self.checks(&own.checks),
                self.moves(&own.moves, "nada propuesto"),
                why(&own.why)
            ),
            Entry::Recount(own) => match own.spare {
                Some(spare) if own.counts.is_empty() => {
                    format!("recuento solo de la bolsa de repuesto: {}", cells(spare))
                }
                spare => {
                    format!("recuento: {}{}", self.counts(&own.counts), in_bag(spare))
                }
            },
            Entry::Weighed(own) => format!("pesaje: {}", self.weight(own.weight)),
            Entry::Filled(own) => format!("llenado: {}", self.filled(own)),
            Entry::Incoming(own) => format!("comprobación de entrada: {}", self.filled(own)),
            Entry::Checked(own) => {
                let outcome = self.check_outcome(own.outcome());
                let found = match own.found.as_slice() {
                    [] => String::new(),
                    found => format!("; {}", self.checks(found)),
                };
                format!("comprobación: {outcome}{found}{}", why(&own.why))
            }
            Entry::Moved(own) => {
                format!("movido: {}{}", self.moves(&own.moves, "nada"), why(&own.why))
            }
            Entry::Returned(own) => format!(
                "vuelta a la entrada {}: {}{}",
                own.entry,
                self.counts(&own.counts),
                why(&own.why)
            ),
            Entry::Skin(own) => self.found(&Check::Skin { site: own.site, answer: own.answer }),
            Entry::Cleaned(own) => format!("limpiado{}", why(&own.why)),
            Entry::Withdrawn(own) => format!("retira la entrada {}; {}", own.entry, own.because),
        }
    }

    fn expected(&self, own: &Expected) -> String {
        let (side, by) =
            own.lower.map_or((None, cushion::Length::ZERO), |(side, by)| (Some(side), by));
        format!(
            "{} bajo el isquion izquierdo y {} bajo el derecho, {}, con {}",
            self.length(own.under.left),
            self.length(own.under.right),
            self.lower(side, by),
            self.weight(own.weight)
        )
    }

    fn beside_the_other(
        &self,
        other: &OtherCushion,
        (total, here): (u32, Option<&Expected>),
    ) -> Vec<String> {
        let said = |own: &Expected| format!("esperado {}", RecordWords::expected(self, own));
        let unknown = || "no se registró nada de lo que se esperaba".to_owned();
        let there = other.expected.as_ref().map_or_else(unknown, said);
        let here = here.map_or_else(|| "no se sabe nada de lo que se espera".to_owned(), said);
        let taught = if other.taught {
            "Lo que las comprobaciones de allí enseñaron de cómo se sienta la persona se cree aquí para empezar."
        } else {
            "No se aprende nada de él: allí no se registraron comprobaciones, o su diseño ya no está como era."
        };
        vec![
            format!("Junto al otro cojín, {} {} del {}:", other.layout, other.size, other.on),
            format!("  Allí: {}; {there}.", cells(other.cells)),
            format!("  Aquí: {}; {here}.", cells(total)),
            format!("  {taught} Sus cantidades no se toman."),
        ]
    }

    fn is_proposed(&self) -> &'static str {
        "Esto es una propuesta. Lo que de verdad se pone o se mueve se registra después de hacerlo."
    }

    fn record_note(&self, note: &RecordNote) -> String {
        match note {
            RecordNote::Believed(plan) => {
                format!("Nadie registró qué se puso: se toma el plan del {plan} por hecho.")
            }
            RecordNote::PutBack { number, cells } => put_back(*number, *cells),
            RecordNote::BagShort { cells } => self.bag(-cells),
            RecordNote::NotFinished { missing } => not_finished(missing),
            RecordNote::Filling(own) => filling(own),
        }
    }

    fn other_papers(&self, papers: &OtherPapers) -> String {
        folder::warning(papers)
    }

    fn restored(&self, restored: &Restored) -> String {
        restoring::told(restored)
    }

    fn restored_from(&self, code: &CardCode) -> String {
        restoring::why(code)
    }

    fn restored_by(&self) -> &'static str {
        restoring::BY
    }

    fn restored_head(&self, code: &CardCode) -> String {
        restoring::head(code)
    }

    fn no_card_code(&self, why: NoCardCode) -> String {
        restoring::no_code(why)
    }

    fn which_papers_hold(&self, papers: &OtherPapers) -> String {
        folder::note(papers)
    }

    fn sit_at_most(&self, minutes: u32, times: u32) -> String {
        let times = match times {
            1 => "una vez al día".to_owned(),
            2 => "dos veces al día".to_owned(),
            times => format!("{times} veces al día"),
        };
        format!("Como mucho {minutes} minutos seguidos en la silla, {times}.")
    }
}

impl Spanish {
    fn lapse(&self, lapse: Lapse) -> String {
        match lapse {
            Lapse::OtherCushion => "el archivo nombra ahora otro cojín".to_owned(),
            Lapse::Filling(on) => format!("un llenado empezado el {on} no está registrado"),
            Lapse::Counts(on) => format!("se pusieron otras cantidades el {on}"),
            Lapse::Recount(on) => {
                format!("el recuento del {on} se desvía más de lo que explica el manejo")
            }
            Lapse::Skin(on, site) => {
                format!("se vio una marca en el {} el {on}", self.site(site))
            }
            Lapse::Weight(on) => format!("con el peso del {on} se rompe un límite"),
        }
    }

    /// What hands found: clauses.
    pub(super) fn checks(&self, checks: &[Check]) -> String {
        checks.iter().map(|check| self.found(check)).collect::<Vec<_>>().join("; ")
    }

    fn filled(&self, own: &Filled) -> String {
        let total = own.counts.iter().map(|own| own.1).sum();
        let mut said = format!("{} ({})", cells(total), self.counts(&own.counts));
        let more = [
            Some(in_bag(own.spare)),
            own.batch.as_ref().map(|batch| format!(", lote {batch}")),
            own.serial.as_ref().map(|serial| format!(", serie {serial}")),
            own.why.as_ref().map(|why| format!("; {why}")),
        ];
        said.extend(more.into_iter().flatten());
        said
    }

    fn moves(&self, moves: &[Move], none: &str) -> String {
        let place = |place| match place {
            Place::Compartment(number) => format!("el número {number}"),
            Place::Spare => "la bolsa de repuesto".to_owned(),
        };
        let one = |own: &Move| {
            format!("{} desde {} hasta {}", cells(own.cells), place(own.from), place(own.to))
        };
        if moves.is_empty() {
            return none.to_owned();
        }
        moves.iter().map(one).collect::<Vec<_>>().join(", ")
    }
}

/// What was counted in the spare bag, after what was counted elsewhere.
fn in_bag(spare: Option<u32>) -> String {
    spare.map_or(String::new(), |spare| format!(", {spare} en la bolsa de repuesto"))
}

/// Cells to be put back into a compartment, or taken out of it where it is negative.
fn put_back(number: u8, by: i64) -> String {
    let count = cells(u32::try_from(by.unsigned_abs()).unwrap_or(u32::MAX));
    if by > 0 {
        format!("Vuelva a poner {count} en el número {number}.")
    } else {
        format!("Saque {count} del número {number}.")
    }
}

/// What a check lacks that is not finished.
fn not_finished(missing: &[CheckPart]) -> String {
    if missing.is_empty() {
        return "La comprobación no está completa: nadie dice si se pasó.".to_owned();
    }
    format!("La comprobación no está completa: sin mirar: {}.", list_of_parts(missing))
}

/// How far a fill is that was begun.
fn filling(own: &FillingSoFar) -> String {
    let FillingSoFar { on, by, counted, of, stale } = own;
    let begun = format!(
        "{by} empezó el {on} un llenado, con {counted} de {of} compartimentos llenos y contados"
    );
    let then = match stale {
        None => {
            ", y aún no está registrado. Hasta entonces nadie se sienta en el cojín: lo que hay dentro no es lo que dice el registro."
        }
        Some(StaleFilling::OtherCounts) => {
            ". Ahora hay otras cantidades planificadas, así que nada de ello se usa. Vacíe lo que se llenó y empiece de nuevo."
        }
        Some(StaleFilling::Since) => {
            ". Desde entonces se hizo otra cosa con el cojín y está en el registro, así que nada de ello se usa."
        }
    };
    format!("{begun}{then}")
}

/// A part of a fitting check.
fn check_part(part: CheckPart) -> &'static str {
    match part {
        CheckPart::Top(Side::Left) => "dedos sobre el isquion izquierdo",
        CheckPart::Top(Side::Right) => "dedos sobre el isquion derecho",
        CheckPart::Under(Side::Left) => "una mano bajo el lado izquierdo",
        CheckPart::Under(Side::Right) => "una mano bajo el lado derecho",
        CheckPart::Skin => "la piel tras 30 minutos",
        CheckPart::Transfer => "una transferencia",
        CheckPart::Reach => "el alcance",
    }
}

/// Parts of a check in a row.
pub(super) fn list_of_parts(parts: &[CheckPart]) -> String {
    let named: Vec<&str> = parts.iter().map(|part| check_part(*part)).collect();
    named.join(", ")
}
