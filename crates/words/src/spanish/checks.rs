//! Spanish: checks, and what follows from them.

use case::{
    AdjustRefusal, Alarm, BodyError, BodyValue, BrokenLimit, ByHand, Check, Doubt, LookAt, Mistake,
    NextStep, SkinAnswer, Telling, Verdict, WhyNoPlan,
};
use cushion::Side;

use super::costs::counts_told_from;
use super::{Spanish, parts};
use crate::{BasicWords, CheckWords, Said};

impl CheckWords for Spanish {
    fn alarm(&self, alarm: &Alarm) -> String {
        match alarm {
            Alarm::BoneFelt { side, expected: None } => {
                format!("se notó el isquion {} a través del cojín", parts::side(*side))
            }
            Alarm::BoneFelt { side, expected: Some(expected) } => format!(
                "se notó el isquion {} a través del cojín (se esperaban {} de cojín)",
                parts::side(*side),
                self.length(*expected)
            ),
            Alarm::Mark { site, answer } => {
                let site = self.site(*site);
                match answer {
                    SkinAnswer::Open => format!("la piel está abierta en el {site}"),
                    SkinAnswer::Worse => format!("la lesión del {site} tiene peor aspecto"),
                    SkinAnswer::Clear | SkinAnswer::Fades | SkinAnswer::Stays => {
                        format!("una marca en el {site} sigue tras 30 minutos")
                    }
                }
            }
        }
    }

    fn limit(&self, limit: &BrokenLimit) -> String {
        match limit {
            // Rounded, what is missing would not show.
            BrokenLimit::Clearance { side, left, needed }
                if self.length(*left) == self.length(*needed) =>
            {
                format!(
                    "algo menos de {} de cojín bajo el isquion {}, que hacen falta",
                    self.length(*needed),
                    parts::side(*side)
                )
            }
            BrokenLimit::Clearance { side, left, needed } => format!(
                "{} de cojín bajo el isquion {}, y hacen falta {}",
                self.length(*left),
                parts::side(*side),
                self.length(*needed)
            ),
            BrokenLimit::LowClearance { side, left, needed } => format!(
                "en el extremo bajo de lo plausible quedan solo {} de cojín bajo el isquion {}, y hacen falta {}",
                self.length(*left),
                parts::side(*side),
                self.length(*needed)
            ),
            BrokenLimit::BottomsOut(numbers) => {
                let each: Vec<String> = numbers.iter().map(u8::to_string).collect();
                let noun = if each.len() == 1 { "el compartimento" } else { "los compartimentos" };
                format!("la persona toca fondo sobre {noun} {}", parts::list(&each))
            }
            BrokenLimit::Tips => "la persona vuelca en este cojín".to_owned(),
            BrokenLimit::LeansAway => {
                "el tronco se sigue inclinando: el cojín no resiste lo bastante".to_owned()
            }
            BrokenLimit::NoRest => "no se halló dónde queda en reposo la persona".to_owned(),
            BrokenLimit::NoRestOnStock => {
                "la persona no queda en reposo con el llenado de serie".to_owned()
            }
            BrokenLimit::InjuredSite { site, healed, rise, from } => format!(
                "la {} del {} recibiría un {:.0} % más de presión que con {}",
                if *healed { "lesión curada" } else { "lesión" },
                self.site(*site),
                rise * 100.0,
                counts_told_from(*from)
            ),
            BrokenLimit::TooHeavy { weight, rating } => format!(
                "la persona pesa {} y el peso máximo de este cojín es {}",
                self.weight(*weight),
                self.weight(*rating)
            ),
        }
    }

    fn verdict(&self, verdict: Verdict, cells_move: bool) -> Option<&'static str> {
        match verdict {
            Verdict::AsPlanned => Some("Como estaba previsto: pare. Deje las celdas como están."),
            Verdict::AsPlannedSoFar => Some(
                "Hasta aquí como estaba previsto: deje las celdas como están. Faltan comprobaciones.",
            ),
            Verdict::Stay | Verdict::Pinched => Some("Deje las celdas como están."),
            Verdict::ClientOff if !cells_move => Some("No se mueve ninguna celda."),
            Verdict::ClientOff | Verdict::Asked | Verdict::Move => None,
        }
    }

    fn look_at(&self, look: LookAt) -> &'static str {
        match look {
            LookAt::SeatUnder => "El asiento bajo el cojín: ¿se hunde, hay algo encima?",
            LookAt::WayRound => {
                "Cómo está puesto el cojín: FRENTE hacia delante, ARRIBA hacia arriba."
            }
            LookAt::LeftAndRight => {
                "Izquierda y derecha: ¿tiene cada compartimento numerado lo que dice la ficha?"
            }
            LookAt::PelvisBack => "La persona: ¿estaba la pelvis del todo atrás?",
            LookAt::Leaks => {
                "Fugas: apriete un puñado de celdas; las blandas se cambian una por una."
            }
            LookAt::LostCells => "Celdas perdidas: cuente los compartimentos bajo los isquiones.",
            LookAt::LayersOnTop => "Un empapador, una toalla o un arnés sobre el cojín.",
            LookAt::Cover => "Una funda demasiado justa o mal puesta.",
            LookAt::CellsAstray => "Celdas perdidas o en otro compartimento: cuente otra vez.",
        }
    }

    fn doubt(&self, doubt: &Doubt) -> String {
        match doubt {
            Doubt::Contradiction(one, other) => {
                format!("\"{one}\" y \"{other}\" no van juntas. Compruebe ambas otra vez.")
            }
            Doubt::Misfit(check) => format!(
                "\"{check}\" no va con lo demás que se sabe. Compruébelo otra vez; si sigue así, busque un error en la preparación."
            ),
        }
    }

    fn left_out(&self, check: &Check) -> String {
        format!(
            "\"{check}\" no va con lo demás que se sabe y no se tuvo en cuenta. Compruébelo otra vez; si sigue así, busque un error en la preparación."
        )
    }

    fn next_step(&self, step: NextStep) -> String {
        let fixed = match step {
            NextStep::CheckUnder(side) => {
                return format!("Compruebe también bajo el isquion {}.", parts::side(side));
            }
            NextStep::CheckOnTop(side) => {
                return format!(
                    "Compruebe también por arriba, en el isquion {}.",
                    parts::side(side)
                );
            }
            NextStep::FeelBeforeMoving(side) => {
                return format!(
                    "Atrapado: o toca fondo o sobra relleno, y no se mueve nada antes de que una mano por debajo diga cuál: compruebe bajo el isquion {}.",
                    parts::side(side)
                );
            }
            NextStep::FeelBeforeTaking(side) => return feel_before_taking(side),
            NextStep::CheckAgain => {
                "Alise los compartimentos, espere de 5 a 10 minutos y repita las comprobaciones."
            }
            NextStep::FeelSmallMoves => {
                "Tan pocas celdas pueden hacer poco, pues primero cede la pared entre dos compartimentos. Palpe de nuevo antes de mover más."
            }
            NextStep::PatFirst => "Alise antes los compartimentos y compruebe otra vez por arriba.",
            NextStep::TakeOutIfStillHeld => {
                "Seguramente sobra relleno, pues por debajo se nota bastante. Solo si los dedos siguen atrapados, saque estas pocas celdas a la bolsa de repuesto y palpe otra vez por debajo."
            }
            NextStep::CauseFirst => {
                "Si los dedos siguen atrapados: lo que se nota por debajo no dice por qué, y no se mueve ninguna celda antes de hallar la causa."
            }
            NextStep::NoCellsForAMark => {
                "Por una marca en la piel no se mueve ninguna celda. El ajuste no vale hasta que lo vea el profesional responsable."
            }
            NextStep::FeelAgain(side) => {
                return format!(
                    "Aquí una sola lectura no mueve celdas: palpe por segunda vez bajo el isquion {}, y dé también esa lectura.",
                    parts::side(side)
                );
            }
            NextStep::SetUpBeforeMoving(side) => return set_up_before_moving(side),
            NextStep::TellsMost(telling) => return tells_most(telling),
            NextStep::CountBeforeMoving => {
                "Se esperaba mucho más cojín ahí: cuente otra vez cada compartimento y mire el asiento bajo el cojín antes de mover ninguna celda."
            }
            NextStep::MoveWhileOff => {
                "Mueva las celdas mientras la persona está fuera del cojín; después palpe por debajo antes de que se siente."
            }
            NextStep::AnotherCushion => {
                "Si la preparación es correcta, esta persona necesita otro tamaño o diseño, o un plan nuevo."
            }
            NextStep::Call => "Llame a quien lleva el asiento.",
        };
        fixed.to_owned()
    }

    fn mistake(&self, mistake: &Mistake) -> String {
        match mistake {
            Mistake::None => "No hay nada mal en la preparación.".to_owned(),
            Mistake::Swapped => "Izquierda y derecha se cambiaron al llenar. Compare los números de las aberturas con la ficha."
                .to_owned(),
            Mistake::TurnedRound => {
                "El cojín está girado. Busque FRENTE en la etiqueta.".to_owned()
            }
            Mistake::Leaks => {
                "Muchas celdas pierden aire. Apriete un puñado: las blandas se cambian una por una.".to_owned()
            }
            Mistake::Forward(by) => format!(
                "La persona está unos {} demasiado adelante. Lleve la pelvis del todo atrás y compruebe otra vez.",
                self.length(*by)
            ),
            Mistake::Sag => {
                "El asiento bajo el cojín se hunde. Ponga un asiento rígido y compruebe otra vez.".to_owned()
            }
            Mistake::Short { number, id } => {
                format!("Al compartimento {number} ({id}) le falta cerca de un cuarto de las celdas. Cuéntelo.")
            }
        }
    }

    fn after_checks(&self, checks: &[Check]) -> String {
        format!("tras comprobaciones: {}", self.checks(checks))
    }

    fn body_error(&self, error: &BodyError) -> String {
        let (what, unit) = body_value(error.what);
        let BodyError { value, least, most, .. } = error;
        let value = parts::number((value * 1e3).round() / 1e3);
        let (least, most) = (parts::number(*least), parts::number(*most));
        format!("{what} de {value}{unit} no está entre {least} y {most}{unit}")
    }

    fn plan_refusal(&self, why: &WhyNoPlan) -> Said {
        match why {
            WhyNoPlan::UnknownCompartment { known } => {
                let known: Vec<String> = known.iter().map(|id| format!("`{id}`")).collect();
                Said::new(
                    "el patrón no tiene ese compartimento",
                    format!("este patrón tiene {}", known.join(", ")),
                )
            }
            WhyNoPlan::TwoChanges => Said::new(
                "se piden dos cambios para este compartimento",
                "júntelos en un cambio, con un motivo",
            ),
            WhyNoPlan::FewerThanNone { stock, change } => Said::new(
                format!(
                    "un cambio de {change:+} quita más que las {stock} celdas del llenado de serie"
                ),
                "quite menos celdas",
            ),
            WhyNoPlan::NoSuchCrown { crown } => Said::new(
                format!(
                    "con esta celda, ninguna cantidad da un abombamiento de {}",
                    self.length(*crown)
                ),
                "pida un cambio en celdas, o uno menor",
            ),
            WhyNoPlan::MoreThanTwice { stock, planned } => Said::new(
                format!("{planned} celdas son más del doble de las {stock} del llenado de serie"),
                "revise el número; un cambio así necesita otro diseño u otra altura de pared",
            ),
            WhyNoPlan::NoBody(error) => Said::new(
                format!(
                    "con las medidas de la persona no resulta un cuerpo: {}",
                    self.body_error(error)
                ),
                "revise esa medida y las cercanas",
            ),
            WhyNoPlan::TooHeavy { weight, rating } => {
                let limit = BrokenLimit::TooHeavy { weight: *weight, rating: *rating };
                Said::new(
                    self.limit(&limit),
                    "tome un tamaño o un diseño con peso máximo para esta persona",
                )
            }
            WhyNoPlan::ByHand(why) => by_hand(*why),
        }
    }

    fn adjust_refusal(&self, refusal: &AdjustRefusal) -> Said {
        const PRESS: &str =
            "apriete solo bordes que alcance una mano, y compare con el del otro lado";
        match refusal {
            AdjustRefusal::NoSuchCompartment(number) => Said::new(
                format!("no hay compartimento {number}"),
                "tome un número cosido en una abertura",
            ),
            AdjustRefusal::Unreachable(number) => Said::new(
                format!(
                    "el compartimento {number} no tiene ningún borde que se alcance bajo una persona sentada"
                ),
                PRESS,
            ),
            AdjustRefusal::NoPartner(number) => Said::new(
                format!(
                    "el compartimento {number} no tiene pareja en el otro lado con que comparar"
                ),
                PRESS,
            ),
            AdjustRefusal::NoWeight => Said::new(
                "no se pesó a la persona, y sin eso no se puede decir nada de las comprobaciones",
                "pese a la persona y escriba el peso en el archivo",
            ),
            AdjustRefusal::NoBody(error) => Said::new(
                format!(
                    "con las medidas de la persona no resulta un cuerpo: {}",
                    self.body_error(error)
                ),
                "revise esa medida y las cercanas",
            ),
        }
    }
}

/// What a body is made of, with its unit as it is written after a number.
fn body_value(what: BodyValue) -> (&'static str, &'static str) {
    match what {
        BodyValue::Weight => ("un peso corporal", " kg"),
        BodyValue::HipWidth => ("una anchura de cadera", " mm"),
        BodyValue::TrochanterWidth => ("una anchura de trocánteres", " mm"),
        BodyValue::SeatBoneSpacing => ("una distancia entre isquiones", " mm"),
        BodyValue::SeatBonesForward => ("una distancia de los isquiones al borde trasero", " mm"),
        BodyValue::TrochanterStep => ("un escalón de los isquiones a los trocánteres", " mm"),
        BodyValue::SkinSharpness => ("una parte del radio de la piel", ""),
        BodyValue::TissueStiffness => ("una rigidez del tejido blando", " Pa/m"),
        BodyValue::ThighDepth => ("una longitud de muslo", " mm"),
        BodyValue::ThighOut => ("un ángulo de muslo hacia fuera", " grados"),
        BodyValue::ThighUp => ("un ángulo de muslo hacia arriba", " grados"),
        BodyValue::Windswept => ("un ángulo de piernas en ráfaga", " grados"),
        BodyValue::Obliquity => ("una oblicuidad", " mm"),
        BodyValue::SweptObliquity => {
            ("una oblicuidad en los isquiones, con los muslos tan en ráfaga,", " mm")
        }
        BodyValue::ObliquityError => ("un error de la oblicuidad", " mm"),
        BodyValue::SeatShare => ("una parte del peso sobre el asiento", ""),
        BodyValue::LoadForward => ("una distancia de la carga a los isquiones", " mm"),
        BodyValue::LoadRight => ("una distancia de la carga al centro", " mm"),
        BodyValue::TrunkHeight => ("una altura de tronco", " mm"),
    }
}

/// Why a person decides, and how.
fn by_hand(why: ByHand) -> Said {
    const ASSESS: &str =
        "valore con la mano y con una lectura de presión; no se planifican cantidades";
    match why {
        ByHand::HipLoss(side) => Said::new(
            format!(
                "falta una pierna desde la cadera {}, y lo que apoya ahí no está en el modelo",
                parts::hand(side)
            ),
            ASSESS,
        ),
        ByHand::SideGoalOnSaggingSling => Said::new(
            "el asiento se hunde bajo el cojín, y eso lo gira y lo baja más de lo que arreglan celdas entre los lados",
            "ponga una base rígida en el asiento y responda que la base es rígida, o quite los objetivos sobre los lados; no se planifican cantidades",
        ),
        ByHand::FixedTiltOnCoccyx => Said::new(
            "la pelvis está fija en basculación posterior, y el cóccix sobre el que se apoya está lesionado",
            ASSESS,
        ),
    }
}

fn feel_before_taking(side: Side) -> String {
    let side = parts::side(side);
    format!(
        "Atrapado: o toca fondo o sobra relleno. No se saca nada del lado {side} antes de que una mano por debajo diga cuál: compruebe bajo el isquion {side}."
    )
}

fn set_up_before_moving(side: Side) -> String {
    format!(
        "Las celdas que se movieron debían cambiar lo que se nota bajo el isquion {}, y no cambió. Mire antes la preparación: cómo está puesto el cojín, qué hay debajo, las cantidades. Antes de eso, ninguna celda.",
        parts::side(side)
    )
}

/// The check that would tell most, and why.
fn tells_most(telling: Telling) -> String {
    match telling {
        Telling::Under(side) => format!(
            "La comprobación que más diría ahora: palpe bajo el isquion {}, pues cuánto cojín queda ahí es lo que menos se sabe.",
            parts::side(side)
        ),
        Telling::OnTop(side) => format!(
            "La comprobación que más diría ahora: por arriba, en el isquion {}, pues la presión ahí dice cómo se reparte la carga.",
            parts::side(side)
        ),
        Telling::Lower => "La comprobación que más diría ahora: qué lado de la pelvis está más bajo, y cuánto, pues cómo se inclina la persona es lo que menos se sabe."
            .to_owned(),
    }
}
