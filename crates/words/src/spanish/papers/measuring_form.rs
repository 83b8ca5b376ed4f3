//! Spanish: the blank measuring form.

use case::question::{Group, Question};

use crate::MeasuringFormTexts;

pub(super) const TEXTS: &MeasuringFormTexts = &MeasuringFormTexts {
    title: "Formulario de medidas",
    subject: "Qué se mide y se decide, en el orden del archivo de la persona",
    sides_are_the_clients: "Izquierda y derecha son las de la persona",
    how_to_answer: "Rodee la palabra correcta. Escriba los días como 2026-01-31. Deje en blanco lo que nadie sabe.",
    clinician_decides: "Decide el profesional responsable; las normas locales van primero. Este formulario no sustituye una valoración.",
    how_to_sit: "En posición sentada, tan erguida como se pueda mantener, con la ropa y los zapatos de usar el cojín. Escriba lo que mide, no lo que espera.",
    measure: "Medida",
    from_where_to_where: "De dónde a dónde",
    from_the_side: "De lado",
    from_above: "Desde arriba, rodillas arriba",
    yes: "sí",
    no: "no",
    sketch: "Esquema desde arriba: zonas dañadas, hacia dónde se inclina",
    notes: "Notas",
    print_at_full_size: "Imprima al 100 %, sin ajustar a la página. Cada lado de este cuadrado mide entonces 100 mm. Mídalo antes de fiarse de un dibujo a tamaño real.",
    square: "Un cuadrado de 100 mm por 100 mm, para comprobar la escala de la impresión y para dibujar. El borde delantero está arriba, la izquierda de la persona a la izquierda.",
};

/// What a group is about.
pub(super) fn group_heading(group: Group) -> &'static str {
    match group {
        Group::Client => "Persona",
        Group::Measures => "Medidas del cuerpo",
        Group::Weight => "Peso corporal",
        Group::Posture => "Postura",
        Group::Obliquity => "Oblicuidad pélvica",
        Group::Tilt => "Basculación pélvica",
        Group::Rotation => "Rotación pélvica",
        Group::Windswept => "Piernas en ráfaga",
        Group::TrulyShorter => "Pierna más corta",
        Group::ApparentlyShorter => "Pierna que parece más corta",
        Group::LimbLoss => "Amputación",
        Group::Skin => "Piel",
        Group::Injury => "Lesiones por presión",
        Group::Function => "Función",
        Group::Layers => "Capas",
        Group::Altitude => "Altitud",
        Group::Seat => "Carga sobre el asiento",
        Group::Chair => "Silla",
        Group::Cushion | Group::Layout => "Cojín",
        Group::Goal => "Objetivos",
        Group::Change => "Cambios deseados",
        Group::Carer => "Quien cuida",
        Group::Call => "A quién llamar",
        Group::Filling => "Llenado en curso",
        Group::FillingCount => "Cantidades hasta ahora",
        Group::Plan => "Plan",
        Group::PlanCount => "Cantidades planificadas",
        Group::FittingCheck => "Comprobación del ajuste",
        Group::Adjustment => "Corrección",
        Group::Move | Group::MovedMove => "Movimientos",
        Group::Recount => "Recuento",
        Group::RecountCount | Group::IncomingCount => "Cantidades halladas",
        Group::Weighing => "Pesaje",
        Group::PlanExpected => "Esperado del plan",
        Group::Filled => "Llenado",
        Group::FilledCount | Group::ReturnedCount => "Cantidades puestas",
        Group::Incoming => "Comprobación de entrada",
        Group::Checked => "Comprobación por partes",
        Group::SkinSeen => "Piel vista",
        Group::Moved => "Celdas movidas",
        Group::Returned => "Vuelta atrás",
        Group::Cleaned => "Limpieza",
        Group::Withdrawn => "Retirada",
        Group::SitAtMost => "Tiempo sentado, según el profesional",
        Group::MadeSize => "Tamaños de fabricación",
        Group::Points => "Puntos",
        Group::Seams => "Costuras",
        Group::Compartments => "Compartimentos",
        Group::Cell => "Celda",
        Group::Packing => "Relleno",
    }
}

/// How a question is called where the heading of its group says the rest.
pub(super) fn label(question: Question) -> Option<&'static str> {
    Some(match question {
        Question::Language => "lengua de quien cuida",
        Question::TakenOn => "medido el",
        Question::TakenBy => "medido por",
        Question::WeightKg | Question::WeightLb => "peso",
        Question::WeighedOn => "pesado el",
        Question::ObliquityLower => "lado más bajo",
        Question::ObliquityAt => "medido en",
        Question::ObliquityReducible => "reducible en",
        Question::RotationForward => "lado adelantado",
        Question::WindsweptTo => "rodillas a la",
        Question::TrulyShorterSide | Question::ApparentlyShorterSide => "lado",
        Question::ObliquityBy | Question::TrulyShorterBy | Question::ApparentlyShorterBy => {
            "cuánto"
        }
        Question::LimbLossSide | Question::GoalSide | Question::SensationSide => "lado",
        Question::LimbLossLevel => "nivel",
        Question::InjuryIs => "estado",
        Question::InjurySeenOn => "visto el",
        Question::SealedM => "altura donde se sellaron las celdas",
        Question::HomeM => "altura donde vive la persona",
        Question::SeatShare => "parte del peso",
        Question::SeatBonesForward => "isquiones desde el borde trasero",
        Question::InsideWidth => "anchura interior",
        Question::InsideDepth => "profundidad interior",
        Question::FootrestHeight => "reposapiés a base del asiento",
        Question::ChairTilt => "echada atrás",
        Question::ChairNotes => "notas",
        Question::GoalPercent => "menos presión",
        Question::GoalBy => "más bajo en",
        Question::ChangeCells => "celdas",
        Question::ChangeCrown => "abombamiento",
        Question::SitMinutes => "minutos seguidos, como mucho",
        Question::SitTimes => "veces al día",
        Question::CallWho => "quién",
        Question::CallPhone => "teléfono",
        _ => return None,
    })
}

/// What to write by hand, where a file's comment speaks of the file.
pub(super) fn comment(question: Question) -> Option<&'static str> {
    Some(match question {
        Question::Units => "de todas las longitudes de este formulario",
        Question::CushionSides => {
            "del cojín: sujetos, si el reposabrazos o un protector toca los dos"
        }
        Question::SeatShare => "del peso corporal, como 0,65",
        Question::ChangeOf => "su número o sus palabras",
        Question::ChangeCells => "+\u{a0}más, –\u{a0}menos",
        Question::ChangeCrown => "+\u{a0}más alto, –\u{a0}más bajo",
        Question::SizeOfCushion => "anchura x profundidad",
        Question::Code => "con una cifra, nunca un nombre",
        Question::Child
        | Question::NextReview
        | Question::Language
        | Question::ObliquityLower
        | Question::ObliquityBy
        | Question::RotationForward
        | Question::WindsweptTo
        | Question::SealedM
        | Question::HomeM
        | Question::SeatBonesForward
        | Question::FootrestHeight
        | Question::ChairTilt
        | Question::SpareCells
        | Question::LayoutOfCushion
        | Question::CellOfCushion
        | Question::SerialOfCushion
        | Question::SitMinutes
        | Question::SitTimes
        | Question::PressureRelief
        | Question::PoplitealAngle => "",
        Question::ObliquityReducible => "se quita con la mano",
        Question::InsideDepth => "del respaldo al borde delantero",
        Question::TrunkHeight => {
            "del peso que sigue una inclinación; 0 si el tronco queda en su sitio"
        }
        Question::HipFlexion => "90 es un ángulo recto",
        Question::SittingHours => "al día",
        Question::GoalSite => "dónde descargar",
        Question::GoalPercent => "ahí",
        Question::GoalHeight => "de un soporte",
        Question::GoalSide => "de un frente bajo",
        Question::GoalBy => "en el frente",
        _ => return None,
    })
}
