//! Spanish: how questions are called and explained.

use case::FileKind;
use case::question::{Answer, Group, Question, Unused, Use};

macro_rules! prose {
    ($($name:ident: $label:literal, $comment:literal;)+) => {
        /// How a question is called on a form and in a sentence, without an article.
        pub(super) fn label(question: Question) -> &'static str {
            match question {
                $(Question::$name => $label,)+
            }
        }

        /// What to write, for the line of a starter file; empty where the key says it.
        pub(super) fn comment(question: Question) -> &'static str {
            match question {
                $(Question::$name => $comment,)+
            }
        }
    };
}

prose! {
    Format: "formato", "";
    FileKind: "tipo de archivo", "";
    Code: "código de la persona", "un código con alguna cifra, nunca un nombre";
    Child: "menor de edad", "lo que se sabe de adultos no vale entonces";
    NextReview: "próxima revisión", "cuándo se revisa otra vez la preparación";
    Language: "lengua para quien cuida", "de la hoja para casa y la del día de lavado; si no, la del programa";
    Units: "unidad de longitud", "de todas las longitudes de este archivo";
    TakenOn: "día de las medidas", "";
    TakenBy: "quién midió", "iniciales o una función";
    HipWidth: "anchura de cadera", "mayor anchura de cadera o muslos";
    TrochanterWidth: "anchura de trocánteres", "entre los lados de fuera de los trocánteres";
    ThighDepth: "longitud de muslo", "de detrás de la nalga a detrás de la rodilla";
    LowerLegLength: "longitud de pierna", "de detrás de la rodilla a bajo el talón, con zapatos";
    ExternalKneeWidth: "anchura exterior de rodillas", "entre los lados de fuera de las rodillas";
    SeatBoneSpacing: "distancia entre isquiones", "entre los puntos más bajos de los isquiones; solo si se midió";
    WeightKg: "peso corporal", "como se sienta, con ropa";
    WeightLb: "peso corporal", "como se sienta, con ropa";
    WeighedOn: "día del pesaje", "";
    ObliquityLower: "lado más bajo de la pelvis", "qué lado de la pelvis está más bajo";
    ObliquityBy: "oblicuidad", "cuánto";
    ObliquityAt: "punto en que se mide la oblicuidad", "en la asis es cerca del doble";
    ObliquityIs: "flexibilidad", "";
    ObliquityReducible: "parte reducible de la oblicuidad", "cuánto se puede quitar con la mano";
    TiltDirection: "basculación", "";
    TiltIs: "flexibilidad", "";
    TiltDegrees: "ángulo", "";
    RotationForward: "lado adelantado de la pelvis", "qué lado de la pelvis está delante";
    RotationDegrees: "ángulo", "";
    RotationIs: "flexibilidad", "";
    WindsweptTo: "lado de las rodillas", "ambas rodillas hacia ese lado";
    WindsweptDegrees: "ángulo", "";
    TrulyShorterSide: "pierna más corta", "";
    TrulyShorterBy: "diferencia de las piernas", "hueso con hueso";
    ApparentlyShorterSide: "pierna más corta", "";
    ApparentlyShorterBy: "diferencia de las piernas", "porque la pelvis está girada";
    HipFlexion: "flexión de cadera", "grados que flexiona cada cadera: 90 es un ángulo recto";
    PoplitealAngle: "ángulo poplíteo", "grados";
    Tone: "tono muscular", "con sus palabras";
    Balance: "equilibrio sentado", "";
    LimbLossSide: "lado de la pérdida", "";
    LimbLossLevel: "nivel de la pérdida", "";
    Sensation: "sensibilidad", "lo que siente donde se sienta";
    SensationSide: "lado de la sensibilidad", "si es de un solo lado";
    WeightShift: "capacidad de mover el peso", "si alivia la carga por sus medios";
    InjurySite: "sitio", "";
    InjuryCategory: "categoría", "en los términos de la guía internacional";
    InjuryIs: "estado de una lesión", "";
    InjurySeenOn: "día en que se vio", "";
    Propulsion: "propulsión", "cómo se mueve la silla";
    Transfers: "transferencias", "cómo sube y baja la persona";
    Continence: "continencia", "";
    SittingHours: "tiempo en la silla", "horas al día";
    Cover: "funda", "";
    Pad: "empapador sobre el cojín", "";
    Sling: "arnés bajo la persona", "un arnés de grúa que se queda ahí";
    SealedM: "altura sobre el mar", "donde se sellaron las celdas";
    HomeM: "altura sobre el mar", "donde vive la persona";
    SeatShare: "parte del peso sobre el asiento", "del peso corporal";
    SeatBonesForward: "distancia de los isquiones al borde trasero", "desde el borde trasero del cojín";
    TrunkHeight: "altura del tronco inclinado", "a qué altura está el peso que sigue una inclinación; 0 si el tronco queda en su sitio";
    InsideWidth: "anchura interior de la silla", "anchura libre entre los lados";
    InsideDepth: "profundidad interior de la silla", "del respaldo al borde delantero del asiento";
    SeatBase: "base del asiento", "sobre qué está el cojín";
    SlingSag: "hundimiento de la lona", "en el centro";
    CushionSides: "estado de los lados", "del cojín: held donde los paneles del reposabrazos o los protectores tocan ambos";
    FootrestHeight: "altura del reposapiés a la base del asiento", "del reposapiés hasta la base del asiento";
    ChairTilt: "basculación de la silla", "grados que está echada atrás";
    ChairNotes: "notas sobre la silla", "";
    LayoutOfCushion: "diseño", "un diseño incluido (row-six, island-eight, curved-ten), la ruta de un archivo o plugin:NAME";
    LayoutParameters: "parámetros del diseño", "del diseño de un complemento";
    SizeOfCushion: "tamaño", "anchura x profundidad en mm, como \"440x400\", o \"17x16in\"";
    CellOfCushion: "celda", "una celda incluida o la ruta de un archivo";
    SpareCells: "celdas de repuesto", "cuántas hay en la bolsa de repuesto";
    SerialOfCushion: "número de serie", "como en su etiqueta";
    FirstFile: "archivo del primer cojín", "si este es el segundo cojín de la misma persona";
    GoalWant: "objetivo", "";
    GoalSite: "sitio", "";
    GoalPercent: "parte que quitar", "de la presión ahí, en %";
    GoalHeight: "altura", "sobre lo que hay al lado";
    GoalSide: "lado del frente", "";
    GoalBy: "altura", "";
    GoalBecause: "motivo", "";
    ChangeOf: "compartimento", "por su id, como pelvis-left";
    ChangeCells: "cambio en celdas", "más que en el llenado de serie, o menos";
    ChangeCrown: "cambio del abombamiento", "";
    ChangeReason: "motivo", "";
    CarerNotes: "notas para quien cuida", "frases cortas";
    Meanwhile: "asiento entretanto", "dónde sentarse mientras el cojín se lava o se arregla";
    Emergency: "número de ayuda urgente", "el número de emergencias del lugar";
    PressureRelief: "alivio de presión", "lo que dice el profesional, en una frase";
    SitMinutes: "mayor tiempo sentado", "minutos seguidos, según el profesional";
    SitTimes: "veces en la silla al día", "veces al día";
    CallWho: "a quién llamar", "un servicio o una función";
    CallPhone: "número de teléfono", "";
    CallHours: "horas", "cuándo contestan";
    FillingOn: "día en que empezó el llenado", "";
    FillingBy: "quién llena y cuenta", "";
    FillingAfter: "entradas anteriores", "cuántas tenía el registro cuando empezó";
    FillingNumber: "número del compartimento", "como está cosido en su abertura";
    FillingPlanned: "celdas que hay que poner", "";
    FillingFirst: "primera cuenta", "de las celdas puestas";
    FillingSecond: "segunda cuenta", "de las mismas celdas";
    PlanWhat: "entrada", "";
    PlanOn: "día del plan", "";
    PlanBy: "quién registró el plan", "";
    PlanLayout: "diseño del plan", "";
    PlanSize: "tamaño del plan", "";
    PlanTotal: "celdas en total", "";
    PlanProgram: "programa", "con el que se hizo";
    PlanLayoutDigest: "resumen digital del diseño", "";
    PlanCellDigest: "resumen digital de la celda", "";
    PlanParametersDigest: "resumen digital de los parámetros del modelo", "";
    PlanDrawnBy: "complemento del plan", "";
    PlanWhy: "motivo del plan", "";
    PlanCountId: "compartimento", "";
    PlanCountNumber: "número del compartimento", "como está cosido en su abertura";
    PlanCountStock: "celdas como llegó", "";
    PlanCountPlanned: "celdas para esta persona", "";
    ExpectedLeft: "cojín bajo el isquion izquierdo", "";
    ExpectedRight: "cojín bajo el isquion derecho", "";
    ExpectedLower: "lado más bajo de la pelvis", "";
    ExpectedLowerBy: "cuánto más bajo está", "";
    ExpectedKg: "peso corporal", "";
    FilledWhat: "entrada", "";
    FilledOn: "día del llenado", "";
    FilledBy: "quién llenó", "";
    FilledLayout: "diseño del cojín", "";
    FilledSize: "tamaño del cojín", "";
    FilledSpare: "celdas de repuesto", "contadas en la bolsa";
    FilledBatch: "lote de las celdas", "con el que se hallan si hay que retirarlas";
    FilledSerial: "número de serie", "como en la etiqueta del cojín";
    FilledWhy: "motivo", "";
    FilledNumber: "número del compartimento", "como está cosido en su abertura";
    FilledCells: "celdas puestas", "";
    IncomingWhat: "entrada", "";
    IncomingOn: "día de la cuenta", "";
    IncomingBy: "quién contó", "";
    IncomingLayout: "diseño del cojín", "";
    IncomingSize: "tamaño del cojín", "";
    IncomingSpare: "celdas de repuesto", "contadas en la bolsa";
    IncomingBatch: "lote de las celdas", "con el que se hallan si hay que retirarlas";
    IncomingSerial: "número de serie", "como en la etiqueta del cojín";
    IncomingWhy: "motivo", "";
    IncomingNumber: "número del compartimento", "como está cosido en su abertura";
    IncomingCells: "celdas halladas", "";
    CheckedWhat: "entrada", "";
    CheckedOn: "día de la comprobación", "";
    CheckedBy: "quién comprobó", "";
    CheckedFound: "comprobaciones", "cada una como en el ejemplo; la piel tras 30 minutos";
    CheckedTransfer: "transferencia probada", "";
    CheckedReach: "alcance probado", "";
    CheckedPassed: "si se pasó", "con todo lo de arriba; si no, está incompleta";
    CheckedWhy: "nota sobre la comprobación", "";
    CheckWhat: "entrada", "";
    CheckOn: "día de la comprobación", "";
    CheckBy: "quién comprobó", "";
    CheckPassed: "si se pasó", "hasta que lo diga, los papeles dicen SIN AJUSTAR TODAVÍA";
    CheckFound: "hallazgo", "en una frase";
    AdjustmentWhat: "entrada", "";
    AdjustmentOn: "día de la corrección", "";
    AdjustmentBy: "quién corrigió", "";
    AdjustmentFound: "comprobaciones", "cada una como en el ejemplo";
    AdjustmentWhy: "motivo de la corrección", "";
    MoveFrom: "lugar de las celdas", "";
    MoveTo: "lugar de las celdas", "";
    MoveCells: "celdas movidas", "";
    RecountWhat: "entrada", "";
    RecountOn: "día del recuento", "";
    RecountBy: "quién contó", "";
    RecountSpare: "celdas de repuesto", "contadas en la bolsa";
    RecountNumber: "número del compartimento", "como está cosido en su abertura";
    RecountCells: "celdas contadas", "";
    WeighingWhat: "entrada", "";
    WeighingOn: "día del pesaje", "";
    WeighingBy: "quién pesó", "";
    WeighingKg: "peso corporal", "";
    SkinSeenWhat: "entrada", "";
    SkinSeenOn: "día de la mirada", "";
    SkinSeenBy: "quién miró", "";
    SkinSeenSite: "sitio", "";
    SkinSeenIs: "estado de la piel", "una marca que sigue 30 minutos es una alarma";
    MovedWhat: "entrada", "";
    MovedOn: "día de los movimientos", "";
    MovedBy: "quién movió las celdas", "";
    MovedWhy: "motivo", "";
    MovedFrom: "lugar de las celdas", "";
    MovedTo: "lugar de las celdas", "";
    MovedCells: "celdas movidas", "";
    ReturnedWhat: "entrada", "";
    ReturnedOn: "día de la vuelta atrás", "";
    ReturnedBy: "quién puso las celdas", "";
    ReturnedEntry: "entrada anterior", "tras la cual las cantidades eran así, desde 1";
    ReturnedWhy: "motivo", "";
    ReturnedNumber: "número del compartimento", "como está cosido en su abertura";
    ReturnedCells: "celdas puestas", "";
    CleanedWhat: "entrada", "";
    CleanedOn: "día de la limpieza", "";
    CleanedBy: "quién limpió", "";
    CleanedWhy: "motivo", "";
    WithdrawnWhat: "entrada", "";
    WithdrawnOn: "día de la retirada", "";
    WithdrawnBy: "quién retira", "";
    WithdrawnEntry: "entrada anterior", "que no cuenta para nada, desde 1";
    WithdrawnBecause: "motivo", "";
    LayoutFormat: "formato", "";
    LayoutKind: "tipo de archivo", "";
    LayoutName: "nombre del diseño", "a-z, 0-9 y guiones; así lo llama la línea de órdenes";
    LayoutTitle: "título del diseño", "así lo llaman las páginas";
    LayoutAbout: "finalidad del diseño", "para quién es, en una frase";
    LayoutClass: "clase", "";
    LayoutRevision: "revisión", "un número entero que sube siempre que cambia una cantidad del llenado de serie";
    LayoutMirror: "simetría", "se escribe la mitad derecha de la persona, la izquierda se hace";
    WallHeight: "altura de pared", "altura de cada costura sobre el asiento, lleno";
    Rim: "borde", "boxed donde un borde rígido o en caja mantiene rectas las paredes de fuera";
    StockCrown: "abombamiento de serie", "mayor subida de un compartimento sobre sus paredes, de la anchura";
    RatingFrom: "origen de los pesos máximos", "cómo se hallaron los pesos, en una frase";
    MadeSizeSize: "tamaño de fabricación", "anchura x profundidad";
    MaxUserWeight: "peso máximo", "la persona de más peso en este tamaño";
    PointOn: "costura del punto", "la costura en que está el punto";
    PointFrom: "punto de partida", "";
    PointTo: "punto de llegada", "";
    PointAt: "camino por la costura", "hasta dónde, del uno al otro";
    SeamThrough: "puntos de la costura", "los puntos por los que pasa, en orden";
    SeamBow: "comba", "cuánto se apartan los arcos, hacia la mano izquierda al avanzar";
    SeamCurve: "curva", "una curva suave por todos los puntos";
    SeamClosed: "costura cerrada", "una isla";
    CompartmentSeed: "semilla", "un punto dentro del compartimento";
    CompartmentNumber: "número del compartimento", "como está cosido en su abertura";
    CompartmentNumbers: "números del compartimento", "de la mitad izquierda y la mitad derecha";
    CompartmentWords: "palabras para quien cuida", "en inglés, o por lengua: { en = \"...\", es = \"...\" }";
    CompartmentFor: "finalidad", "";
    CellFormat: "formato", "";
    CellKind: "tipo de archivo", "";
    CellName: "nombre de la celda", "a-z, 0-9 y guiones";
    CellTitle: "título de la celda", "así lo llaman las páginas";
    CellEdge: "borde de la celda", "lado del cuadrado plano, antes de inflar";
    CellVolume: "volumen inflado", "tensa y libre: sumerja celdas en agua";
    CellVolumeRule: "regla del volumen", "el volumen sale del borde";
    FilmMass: "masa de la película", "de una celda: pese un lote contado a mano";
    PackingBulk: "relleno a granel", "parte de un espacio grande que llenan las celdas vertidas";
    PackingWall: "efecto de pared", "lo que las paredes quitan de eso";
    PackingSource: "origen del relleno", "de dónde salen los dos números";
}

/// What stands above or beside the heading of a group of the client's file.
pub(super) fn group_comment(group: Group) -> &'static str {
    match group {
        Group::Measures => "en posición sentada, con la ropa de usar el cojín",
        Group::Posture => "todo lo que se sepa",
        Group::LimbLoss => "Partes perdidas de las piernas.",
        Group::Injury => "Lesiones por presión, pasadas y presentes.",
        Group::Layers => "lo que hay sobre el cojín",
        Group::Altitude => "metros sobre el mar",
        Group::Seat => "solo lo que se averiguó",
        Group::Chair => "en las mismas unidades que las medidas",
        Group::Goal => "Qué debe hacer el cojín, lo más importante primero.",
        Group::Change => "Cambios fijos desde el llenado de serie, uno por compartimento.",
        Group::Carer => "para la hoja para casa",
        Group::Call => "A quién llamar, por orden.",
        Group::Filling => {
            "hasta dónde llegó el llenado en curso; ningún cojín está lleno antes de estar en el registro"
        }
        Group::Filled => "Lo que de verdad se puso, cada compartimento con sus celdas:",
        Group::Checked => {
            "La comprobación posterior; se pasa con todas sus partes, si no está incompleta:"
        }
        Group::Recount => "Más tarde, lo que se contó otra vez:",
        Group::Weighing => "O pesado otra vez:",
        Group::SkinSeen => "O visto en la piel:",
        _ => "",
    }
}

/// The first lines of a client's file.
pub(super) const CLIENT_HEAD: &str = "\
El archivo de una persona. Izquierda y derecha son siempre las de la persona.
Ponga sus respuestas en lugar de \"fill in\". Lo que no se midió es mejor dejarlo: empiece su línea
con #. Una línea que empieza con # es un ejemplo; quite el # para usarla, en un bloque con su
encabezado. Revise el archivo antes de planificar con él.";

/// The lines above the record of a client's file.
pub(super) const RECORD_HEAD: &str = "\
El registro, lo más antiguo primero, cada entrada con su día y con quien la hizo. Los planes se
añaden al final como propuestas; lo que se hizo se añade después de hacerlo. El programa nunca cambia
ni quita lo que está aquí: un error se retira con una entrada posterior.";

/// Before other words that could be written.
pub(super) const OR: &str = "o";

/// What the program answers.
pub(super) fn answer(answer: Answer) -> &'static str {
    match answer {
        Answer::Reading => "cómo se lee el archivo",
        Answer::Sizing => "el tamaño",
        Answer::Plan => "las cantidades",
        Answer::Prediction => "cómo se espera que se siente la persona",
        Answer::Cautions => "en qué fijarse",
        Answer::Mistakes => "qué error explicaría una comprobación",
        Answer::Pattern => "el patrón y su llenado de serie",
        Answer::Papers => "los papeles",
        Answer::ReCheck => "cuándo revisar",
    }
}

/// Which answers change nothing that the program says, and why: a sentence for each reason.
pub(super) fn unused_answers(answers: &[(Question, Unused)]) -> Vec<String> {
    let on_card = |question: Question| matches!(question.row().changes, Use::OnCard(_));
    let of = |reason, printed: bool| {
        let keys: Vec<String> = (answers.iter())
            .filter(|(question, why)| *why == reason && on_card(*question) == printed)
            .map(|(question, _)| format!("`{}`", question.path()))
            .collect();
        let what = if printed {
            "está en la ficha de ajuste y no cambia nada que se calcule"
        } else {
            "no cambia ninguna respuesta"
        };
        (!keys.is_empty()).then(|| format!("{what}, pues {}: {}", unused(reason), keys.join(", ")))
    };
    let reasons = [Unused::ForReaders, Unused::NotModelled, Unused::NoRule];
    reasons
        .into_iter()
        .flat_map(|reason| [false, true].map(|printed| of(reason, printed)))
        .flatten()
        .collect()
}

/// Why an answer to a question is not used.
pub(super) fn unused(why: Unused) -> &'static str {
    match why {
        Unused::ForReaders => "es para quien lee el archivo",
        Unused::NotModelled => "el modelo del cuerpo no lo tiene",
        Unused::NoRule => "ninguna regla con fuente dice qué se sigue de ello",
    }
}

/// How a kind of file is called.
pub(super) fn file_title(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Layout => "Seatwright: archivo de diseño",
        FileKind::Cell => "Seatwright: archivo de celda",
        FileKind::Client => "Seatwright: archivo de la persona",
    }
}
