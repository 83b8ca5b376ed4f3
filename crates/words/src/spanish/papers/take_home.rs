//! Spanish: the take-home sheet.

use crate::{PassageTexts, StepTexts, TakeHomeTexts, WrittenTableTexts};

pub(super) const COUNT_TWICE: &str = "Cuente dos veces. ¿A solas? Cuente, espere y cuente.";
pub(super) const BURST: &str = "Una celda rota";
pub(super) const BURST_CELL: [&str; 2] = [
    "Saque una y meta una de la bolsa, en el mismo bolsillo.",
    "¿Más de 3, o la bolsa vacía? Llame: la clínica le envía más.",
];

const NOTHING_ON_IT: &str = "Nada encima, solo su funda.";

const WHERE: [&str; 2] = [
    "Una persona sentada vista desde atrás. La mano de quien ayuda entra bajo el cojín, bajo el hueso de sentarse IZQUIERDO.",
    "Una persona sentada vista desde atrás. La mano de quien ayuda entra bajo el cojín, bajo el hueso de sentarse DERECHO.",
];

const fn step(
    heading: &'static str,
    is_for_a_helper: bool,
    picture: &'static str,
    actions: &'static [&'static str],
) -> StepTexts {
    StepTexts { heading, is_for_a_helper, picture, actions }
}

const STEPS: [StepTexts; 8] = [
    step(
        "Bien puesto",
        true,
        "El cojín desde arriba en una silla: la cara de arriba hacia arriba, el frente en las rodillas.",
        &["ARRIBA arriba, etiqueta abajo.", "FRENTE hacia las rodillas.", NOTHING_ON_IT],
    ),
    step(
        "Alisar",
        true,
        "Dos manos de quien ayuda alisan el cojín en la silla.",
        &["Alise cada bolsillo con la mano.", "Sin bultos ni huecos."],
    ),
    step(
        "Del todo atrás",
        false,
        "Una persona en una silla vista de lado, con la cadera contra el respaldo.",
        &["Ponga los frenos.", "La cadera del todo atrás.", "10 minutos sin moverse."],
    ),
    step(
        "Mano por debajo",
        true,
        "De lado: la mano plana de quien ayuda entra desde atrás bajo el cojín.",
        &[
            "Sin anillos. Póngase detrás.",
            "Palma arriba, mano plana.",
            "Meta la mano bajo el cojín.",
        ],
    ),
    step(
        "Hueso IZQUIERDO",
        true,
        WHERE[0],
        &["Pare bajo el hueso.", "¿Un pulgar de cojín, o más?"],
    ),
    step("Hueso DERECHO", true, WHERE[1], &["Pare bajo el hueso.", "¿Un pulgar de cojín, o más?"]),
    step(
        "Mirar la piel",
        false,
        "Una persona desde atrás, y un espejo de mango largo que muestra la piel sobre los huesos de sentarse.",
        &[
            "Mire cada vez que baje del cojín.",
            "Mire la piel de los dos huesos.",
            "¿A solas? Use un espejo.",
        ],
    ),
    step(
        "Mirar otra vez",
        false,
        "Un reloj de 30 minutos, y una marca en la piel sobre un hueso de sentarse.",
        &["Pase 30 minutos sin sentarse.", "¿Sigue la marca? No use la silla.", "Llame."],
    ),
];

pub(super) const TEXTS: &TakeHomeTexts = &TakeHomeTexts {
    title: "Hoja para casa",
    subject: "Cómo usar, comprobar y rellenar un cojín, para quien cuida",
    name: "Nombre:",
    same_for_therapist: "Para terapeutas: lo mismo en español. No es para la pared.",

    heading: "Su cojín, cada día",
    stop: "No se siente en él si",
    stop_bone: "nota un hueso a través del cojín",
    stop_marks: &[
        "una marca en la piel sigue tras 30 minutos",
        "la piel está abierta, húmeda, caliente, dura o hinchada",
    ],
    stop_new_marks: &[
        "una marca nueva sigue tras 30 minutos",
        "otra zona de piel está abierta, húmeda, caliente, dura o hinchada",
    ],
    stop_pockets: "hay un bolsillo abierto, vacío, con bultos o mal llenado",
    stop_then: "Baje. Vaya a la cama. Llame. ¿No contestan? Siga en cama.",
    get_help_now: "Pida ayuda ya",
    number_to_call: "Número:",
    emergency_signs: &[
        "Mancha o costra negra",
        "Llaga y fiebre o escalofríos",
        "Piel abierta que huele mal",
        "Lesión de médula, T6 o más alta: dolor fuerte de cabeza y sudor",
    ],
    call: "Llame a",
    who_and_phone: "Quién y teléfono:",
    call_the_same_day: PassageTexts {
        heading: "Llame el mismo día",
        sentences: &["Marca nueva, o usted se ladea.", "Una caída.", "Otra silla u otro peso."],
    },
    notes_for_you: "Para usted",
    ask_how_long: "No use la silla hasta que enfermería diga cuánto tiempo.",
    sit_for: ["Siéntese", "como mucho."],
    relief_every: ["Alce o incline el cuerpo cada", "durante"],
    blank_lines: "¿Hay una línea vacía? Pregunte antes de usarlo.",
    meanwhile: "Si no puede usarlo, use:",
    care_team: "¿Su equipo de salud dice otra cosa? Haga lo que diga.",

    steps_heading: "Sentarse, palpar, mirar",
    how_often: [
        ("1 2 3:", Some("cada vez")),
        ("4 5 6:", None),
        ("7 8:", Some("cada vez que baje")),
    ],
    you: "Usted",
    helper: "Ayudante",
    steps: STEPS,
    thumb: "La barra mide 25 mm: un pulgar. Ponga el pulgar encima.",
    after_the_hand: "Blando, sin hueso: bien. Poco cojín o un bulto duro: baje y llame.",
    dark_skin: "Piel oscura: toque también. Si está caliente, dura, hinchada o esponjosa, es una marca. Una mancha morada o con brillo también.",
    half_an_hour: "30 min",
    nothing_on_it: NOTHING_ON_IT,
    before_the_steps: PassageTexts {
        heading: "El primer día, o tras un cambio",
        sentences: &[
            "Mire la piel tras 30 minutos, 1 hora y 2 horas.",
            "Sin marca, puede estar más tiempo. Con marca, no.",
        ],
    },
    after_the_steps: PassageTexts {
        heading: "Avión, calor y frío",
        sentences: &[
            "En un avión, no cambie nada. Palpe por debajo en vuelo y al llegar.",
            "No lo deje en el coche con calor o frío. Deje que se temple antes de usarlo.",
            "¿Se muda a más altura o a menos? Llame antes.",
        ],
    },

    cells_heading: "Celdas, lavado y notas",
    cells_in_each_pocket: "Celdas en cada bolsillo",
    openings_up: "Desde abajo, aberturas arriba:",
    pocket: "Bolsillo",
    cells: "Celdas",
    counts_are_an_estimate: "Una estimación hasta comprobar.",
    washing: "Lavado",
    washing_steps: &[
        "Quite la funda. Lave solo la funda. Que se seque un día.",
        "¿Seco por dentro? Ponga la funda, bien puesta.",
        "¿Mojado por dentro? Dé la vuelta al cojín, como a una página.",
        "Abra un bolsillo. Sus celdas van a una bolsa con su número.",
        "Seque celdas y bolsillo con un paño. Cuente al meterlas. Cierre.",
        "Después, otro bolsillo. Nunca dos abiertos.",
        "ARRIBA arriba. Alise. Palpe por debajo.",
    ],
    about_cells: &[
        PassageTexts {
            heading: "Contar otra vez",
            sentences: &["Cuente si un bolsillo se nota bajo, y tras lavar.", COUNT_TWICE],
        },
        PassageTexts {
            heading: BURST,
            sentences: &[
                BURST_CELL[0],
                BURST_CELL[1],
                "Celdas lejos de niños y animales: se pueden ahogar.",
            ],
        },
    ],

    tables: &[
        WrittenTableTexts {
            heading: "Marcas en la piel",
            columns: &["Fecha", "Dónde, IZQUIERDA o DERECHA", "¿Se fue en 30 min?", "Nombre"],
        },
        WrittenTableTexts {
            heading: "Celdas que salen y entran, y lavados",
            columns: &["Fecha", "Bolsillo", "Salen", "Entran", "En bolsa", "Lavado", "Nombre"],
        },
    ],
    shown: "Me mostraron los pasos 1 a 8 y los pude hacer yo.",
    signed: &[&["Usted o quien ayuda, fecha"], &["Terapeuta, fecha"]],
    code_is_for: "Para la clínica: este código guarda sus celdas.",
};
