//! Spanish: cautions, sizes and the next look.

use case::{
    AltitudeNote, Caution, Date, HeightEffect, NoSizeToMake, SizeMargin, SizeMisfit, SizeToMake,
    SizingRule, Source, WhyReCheck,
};
use cushion::{Length, Mass, Side};

use super::{Spanish, parts};
use crate::{BasicWords, CautionWords};

impl CautionWords for Spanish {
    fn caution(&self, caution: &Caution) -> String {
        match caution {
            Caution::Layers { pad, sling } => layers(*pad, *sling),
            Caution::OpenInjury { site, seen_on } => open_injury(self.site(*site), *seen_on),
            Caution::CannotProtectSkin => CANNOT_PROTECT_SKIN.to_owned(),
            Caution::SmallObliquity { lower, by } => small_obliquity(*lower, &self.length(*by)),
            Caution::LowSideLoaded { lower } => low_side(*lower),
            Caution::FootPropels => FOOT_PROPELS.to_owned(),
            Caution::Size(misfits) => {
                let misfits: Vec<String> =
                    misfits.iter().map(|own| self.size_misfit(own)).collect();
                format!("El tamaño no va con las medidas: {}.", misfits.join("; "))
            }
            Caution::Altitude(note) => altitude(*note),
            Caution::ReCheck { due, .. } => {
                let because: Vec<String> =
                    due.because.iter().map(|why| self.why_re_check(why)).collect();
                format!("Revise como tarde el {}: {}.", due.by, because.join("; "))
            }
            Caution::Empty { number } => empty(*number),
            Caution::FewCells { number, cells, least } => few_cells(*number, *cells, *least),
            Caution::ManyCells { number, cells, most } => many_cells(*number, *cells, *most),
            Caution::NoRating { size } => no_rating(&self.size_in_words(*size)),
            Caution::NoWeight => NO_WEIGHT.to_owned(),
            Caution::OldWeight { weighed_on } => {
                format!("El peso corporal es del {weighed_on}. Pese de nuevo a la persona.")
            }
            Caution::HeightChanged => HEIGHT_CHANGED.to_owned(),
            Caution::SmallMoves { cells } => small_moves(*cells),
            Caution::Spares { needed, there } => spares(*needed, *there),
            Caution::SlingSeat => SLING_SEAT.to_owned(),
            Caution::WiderThanChair => WIDER_THAN_CHAIR.to_owned(),
            Caution::DeeperThanSeat => {
                "El cojín es más profundo que el asiento de la silla.".to_owned()
            }
        }
    }

    fn source(&self, source: Source) -> &'static str {
        match source {
            Source::CommonPractice => "práctica común, sin fuente",
            Source::Model => "los límites del propio modelo",
            Source::LayoutFile => "el archivo del diseño",
            Source::SizingRules => "las reglas de tamaño",
            Source::CanScip => "guía canadiense de práctica en lesión medular (CAN-SCIP)",
            Source::SpinalCordMedicine2014 => {
                "Consortium for Spinal Cord Medicine, Pressure Ulcer Prevention and Treatment Following SCI, 2.ª ed., 2014"
            }
            Source::Heinrichs2020 => {
                "Heinrichs, Kirby y otros, Disabil Rehabil Assist Technol, 2020"
            }
            Source::Iso2533 => "norma ISO 2533",
            Source::SeatWidth => {
                "entre la anchura de cadera (paquete básico de la OMS, visto en parte) y 50 mm más (apuntes de examen de ortopedia); el más ancho que sirve son 20 mm sobre eso, por los saltos entre tamaños: una estimación"
            }
            Source::SeatDepth => {
                "apuntes de examen de ortopedia; el paquete básico de la OMS da de 30 a 60 mm (de memoria); el menos profundo que sirve es una estimación"
            }
        }
    }

    fn size_misfit(&self, misfit: &SizeMisfit) -> String {
        match misfit {
            SizeMisfit::Narrow { hips } => {
                format!("es más estrecho que la cadera, {}", self.length(*hips))
            }
            SizeMisfit::Wide { most } => {
                format!("es más de {} más ancho que la cadera", self.length(*most))
            }
            SizeMisfit::Deep { least } => {
                format!(
                    "deja menos de {} tras la rodilla de la pierna más corta",
                    self.length(*least)
                )
            }
            SizeMisfit::Shallow { short } => {
                format!("acaba {} detrás de la rodilla", self.length(*short))
            }
            SizeMisfit::Rating { rating } => format!("su peso máximo es {}", self.weight(*rating)),
            SizeMisfit::WiderThanChair => "es más ancho que la silla por dentro".to_owned(),
            SizeMisfit::DeeperThanSeat => "es más profundo que el asiento".to_owned(),
        }
    }

    fn size_margin(&self, margin: &SizeMargin) -> String {
        size_margin(*self, margin)
    }

    fn size_to_make(&self, size: &SizeToMake) -> String {
        let SizeToMake { made, widths: [narrow, wide], depths: [shallow, deep] } = *size;
        format!(
            "Pregunte a un proveedor si puede hacer un cojín de {}, para {} o más: también sirven una anchura de {} y una profundidad de {}. Solo quien lo fabrica puede fijar el peso máximo.",
            self.size_in_words(made.size),
            self.weight(made.max_user_weight),
            self.lengths(narrow, wide),
            self.lengths(shallow, deep)
        )
    }

    fn no_size_to_make(&self, why: &NoSizeToMake) -> String {
        no_size_to_make(*self, why)
    }

    fn sizing_rule(&self, rule: &SizingRule) -> String {
        match rule {
            SizingRule::Width { wanted, room, within: [least, most] } => format!(
                "Anchura {}: la cadera con ropa y {}; nunca más estrecho que la cadera. Sirven {}.",
                self.length(*wanted),
                self.length(*room),
                self.lengths(*least, *most)
            ),
            SizingRule::Depth { wanted, room, within: [least, most] } => format!(
                "Profundidad {}: la longitud de muslo más corta menos {}, dos o tres dedos tras la rodilla. Mida ambas piernas; la profundidad sigue a la más corta. Sirven {}.",
                self.length(*wanted),
                self.length(*room),
                self.lengths(*least, *most)
            ),
            SizingRule::ChairWidth { inside } => {
                format!("No más ancho que la silla por dentro, {}.", self.length(*inside))
            }
            SizingRule::ChairDepth { inside } => {
                format!("No más profundo que el asiento de la silla, {}.", self.length(*inside))
            }
            SizingRule::Rating { weight } => {
                format!("Para el peso de la persona, {}, o más.", self.weight(*weight))
            }
        }
    }

    fn height_effect(&self, effect: &HeightEffect) -> String {
        match effect {
            HeightEffect::Footrest { side, too_low_by } => {
                let way = if *too_low_by > Length::ZERO { "bajo" } else { "alto" };
                format!(
                    "El reposapiés {} queda unos {} demasiado {way} para la pierna con este cojín (reste el cojín comprimido). Ajústelo de nuevo.",
                    parts::side(*side),
                    self.length(too_low_by.abs())
                )
            }
            HeightEffect::FrontEdge { side, least, most } => format!(
                "El pie {} impulsa: el borde delantero cargado va mejor de 25 a 51 mm (1 a 2 in) por debajo de la longitud de pierna con el zapato puesto, es decir, a {} del suelo.",
                parts::side(*side),
                self.lengths(*least, *most)
            ),
            HeightEffect::Seated { height } => format!(
                "La persona queda unos {} sobre la base del asiento: mire transferencias, frenos, reposapiés y mesa.",
                self.length(*height)
            ),
        }
    }

    fn why_re_check(&self, why: &WhyReCheck) -> String {
        match why {
            WhyReCheck::AfterFitting(on) => format!("tres meses tras el ajuste del {on}"),
            WhyReCheck::AfterLastLook(on) => format!("dos años tras la última revisión del {on}"),
            WhyReCheck::Review(on) => format!("la revisión está fijada para el {on}"),
            WhyReCheck::Weight { then, now, plan } => format!(
                "el peso pasó de {} a {} desde el plan del {plan}",
                self.weight(*then),
                self.weight(*now)
            ),
            WhyReCheck::Losing { number, cells, planned } => {
                format!(
                    "el compartimento {number} tiene {cells} de {planned} celdas y está perdiendo"
                )
            }
            WhyReCheck::Clearance { side, felt } => format!(
                "se nota menos bajo el isquion {}, {} la última vez",
                parts::side(*side),
                self.length(*felt)
            ),
        }
    }
}

fn size_margin(say: Spanish, margin: &SizeMargin) -> String {
    let said = |by: Length, free: &str, lacking: &str| {
        // What is said to be lacking rounds to a millimetre at least.
        let words = if by.to_mm().round() < 0.0 { lacking } else { free };
        format!("{} {words}", say.length(by.abs()))
    };
    match *margin {
        SizeMargin::BesideHips(in_all) => said(
            in_all * 0.5,
            "libres a cada lado de la cadera",
            "de falta a cada lado de la cadera",
        ),
        SizeMargin::BehindKnee(by) => said(by, "libres tras la rodilla", "más allá de la rodilla"),
        SizeMargin::BelowRating(by) => {
            let words = if by < Mass::ZERO { "por encima de" } else { "por debajo de" };
            format!("{} {words} su peso máximo", say.weight(by.abs()))
        }
        SizeMargin::InChairWidth(by) => {
            said(by, "libres en la anchura de la silla", "más ancho que la silla por dentro")
        }
        SizeMargin::InChairDepth(by) => {
            said(by, "libres en la profundidad del asiento", "más profundo que el asiento")
        }
    }
}

fn no_size_to_make(say: Spanish, why: &NoSizeToMake) -> String {
    let length = |length: Length| say.length(length);
    match *why {
        NoSizeToMake::HipsNotMeasured => {
            "Mida la cadera: sin ella no se puede pedir una anchura.".to_owned()
        }
        NoSizeToMake::ThighsNotMeasured => {
            "Mida ambos muslos: sin ellos no se puede pedir una profundidad.".to_owned()
        }
        NoSizeToMake::NotWeighed => {
            "Pese a la persona: sin el peso no se puede pedir un peso máximo.".to_owned()
        }
        NoSizeToMake::WidthNotDrawn { wanted } => {
            format!("No se dibuja ningún cojín de {} de ancho.", length(wanted))
        }
        NoSizeToMake::DepthNotDrawn { wanted } => {
            format!("No se dibuja ningún cojín de {} de profundidad.", length(wanted))
        }
        NoSizeToMake::ChairTooNarrow { least, inside } => format!(
            "Mire antes la silla: mide {} por dentro, y la cadera necesita {}.",
            length(inside),
            length(least)
        ),
        NoSizeToMake::SeatTooShallow { least, inside } => format!(
            "Mire antes la silla: su asiento tiene {} de profundidad, y los muslos necesitan {}.",
            length(inside),
            length(least)
        ),
        NoSizeToMake::LayoutNotDrawn { size } => format!(
            "Serviría un cojín de {}, pero no se puede dibujar así: tome otro diseño.",
            say.size_in_words(size)
        ),
    }
}

const CANNOT_PROTECT_SKIN: &str = "La sensibilidad o los cambios de apoyo no bastan para proteger la piel. Decida quién alivia la presión, de 1 a 2 minutos cada 30 minutos, y quién mira la piel.";
const FOOT_PROPELS: &str = "La persona se impulsa con un pie, y ningún objetivo baja el frente. Mida el borde delantero cargado frente a la pierna con el zapato puesto: lo mejor es de 25 a 51 mm (1 a 2 in) por debajo.";
const NO_WEIGHT: &str = "No consta el peso corporal. Pese a la persona: sin él no se puede comprobar ni el peso máximo ni el plan.";
const HEIGHT_CHANGED: &str = "Este plan sube o baja a la persona. Ajuste de nuevo los reposapiés, y compruebe transferencias, frenos y mesa.";
const SLING_SEAT: &str = "La silla tiene un asiento de lona. Descarte antes que se hunda, o ponga un asiento rígido: el hundimiento deshace lo que hacen los compartimentos.";
const WIDER_THAN_CHAIR: &str =
    "El cojín es más ancho que la silla por dentro: quedará apretado y más alto.";

fn layers(pad: bool, sling: bool) -> String {
    let (what, it) = match (pad, sling) {
        (true, true) => ("Hay un empapador y un arnés sobre el cojín.", "los"),
        (true, false) => ("Hay un empapador sobre el cojín.", "lo"),
        (false, _) => ("Hay un arnés sobre el cojín.", "lo"),
    };
    format!(
        "{what} Cada capa quita parte de lo que hacen las celdas: haga las comprobaciones sin retirar{it}, y retíre{it} donde se pueda."
    )
}

fn open_injury(site: &str, seen_on: Date) -> String {
    format!(
        "Una lesión por presión abierta en el {site} ({seen_on}). El profesional responsable decide si la persona se sienta y cuánto."
    )
}

fn small_obliquity(lower: Side, by: &str) -> String {
    format!(
        "El lado {} de la persona está {by} MÁS BAJO en los isquiones. Menos de 10 mm se suele dejar.",
        parts::loud_side(lower)
    )
}

fn low_side(lower: Side) -> String {
    format!(
        "Llenar más el lado bajo carga su isquion: compruebe primero el lado {}.",
        parts::side(lower)
    )
}

fn empty(number: u8) -> String {
    format!(
        "El compartimento {number} quedaría vacío. Un cojín nunca se usa con un compartimento vacío."
    )
}

fn few_cells(number: u8, cells: u32, least: u32) -> String {
    format!(
        "El compartimento {number} recibe {}; menos de {least} dejan floja su cara superior. Compruebe antes con la mano si toca fondo en ese lado.",
        parts::cells(cells)
    )
}

fn many_cells(number: u8, cells: u32, most: u32) -> String {
    format!(
        "El compartimento {number} recibe {}; por encima de {most} la estimación no es buena. Puede quedar duro e inestable.",
        parts::cells(cells)
    )
}

fn no_rating(size: &str) -> String {
    format!("El diseño no se fabrica en el tamaño {size}; no hay peso máximo para él.")
}

fn spares(needed: u32, there: u32) -> String {
    format!(
        "El plan necesita {} de la bolsa de repuesto, y en ella hay {there}.",
        parts::cells(needed)
    )
}

fn altitude(note: AltitudeNote) -> String {
    match note {
        AltitudeNote::Moved { sealed, home, grows } => {
            let (more, firmer) = if grows > 0.0 { ("más", "más firme") } else { ("menos", "más blando") };
            format!(
                "Las celdas se sellaron a {:.0} m y la persona vive a {:.0} m: las celdas flojas ocupan allí un {} {more}, hasta donde su película las deja, y el cojín queda {firmer}. Compruebe con la mano en casa; cambie las cantidades solo después.",
                sealed.to_m(),
                home.to_m(),
                parts::percent(grows)
            )
        }
        AltitudeNote::CellsAtHome { sealed, home } => format!(
            "Tras esa comprobación, cerca de {} en casa hacen lo que {sealed} donde se sellaron.",
            parts::cells(home)
        ),
        AltitudeNote::Travel => "En un avión las celdas se hinchan (hasta un tercio a una altitud de cabina de 2438 m): no cambie nada, compruebe con la mano en vuelo y tras aterrizar. Un cojín que pasó frío está de un 7 a un 10 % más blando: deje antes que se temple."
            .to_owned(),
    }
}

fn small_moves(cells: u32) -> String {
    format!(
        "Pasar {} o menos de un compartimento a otro puede hacer poco: primero cede la pared entre ellos. Palpe de nuevo antes de pasar más.",
        parts::cells(cells)
    )
}
