//! Spanish: whole answers, beside their findings.

use case::text::LengthUnit;
use case::{
    Alarm, BrokenLimit, ComparedMeasure, ComparedSizes, ComparedVerdict, Costs, Date, GoalOutcome,
    NoSize, PredictedSeat, Prediction, ReviewFinding, Said, SizeMargin, SizeMisfit, Spread,
    SurveyFault, SurveySummary,
};
use cushion::{Class, Jump, Length, Mass, Pressure, Size};

use super::files::text_of_layout;
use super::{Spanish, comparisons, parts, reviews};
use crate::{
    BasicWords, CautionWords, CheckWords, ComparisonTexts, FixedLines, GoalWords, PartsTexts,
    ReportWords, TableTexts,
};

const TABLE: TableTexts = TableTexts {
    number: "n.º",
    compartment: "compartimento",
    area_cm2: "área cm2",
    walls_mm: "paredes mm",
    crown_mm: "abombado mm",
    about_litres: "unos l",
    low: "bajo",
    stock: "serie",
    high: "alto",
    change: "cambio",
    planned: "plan",
    reason: "motivo",
    cells: "celdas",
    grams: "gramos",
    plus_or_minus: "más o menos",
    fill_kpa: "relleno kPa",
    from: "de",
    to: "a",
    carries_n: "lleva N",
    remarks: "observaciones",
    site: "sitio",
    surface_kpa: "superficie kPa",
    mmhg: "mmHg",
    total: "total",
    bottomed: "toca fondo",
    slack: "flojo",
    entry: "entrada",
    day: "día",
    what: "qué",
    by: "por",
    bag: "bolsa de repuesto",
    weight: "peso, kg",
    expected: "esperado",
    found: "hallado",
    layout: "diseño",
    revision: "revisión",
    digest: "resumen digital",
    sizes: "tamaños",
    smallest: "el menor",
    largest: "el mayor",
    rated_kg: "máximo kg",
    title: "título",
    size: "tamaño mm",
    litres: "litros",
    cells_g: "celdas g",
    seams_mm: "costuras mm",
    any_size: "el pedido",
};

const PARTS: PartsTexts = PartsTexts {
    part: "material",
    each: "cada uno",
    in_all: "en total",
    unit: "unidad",
    cloth: "tela",
    top: "pieza de arriba",
    base: "base",
    wall: "pared",
    all_cloth: "toda la tela",
    seams: "costuras",
    thread: "hilo de coser",
    openings: "aberturas",
    closures: "cierres",
    cells: "celdas",
    spares: "celdas de repuesto",
    from_memory: "Lo que no se dio de tela, hilo y cierres es de memoria, sin verificar: pese los suyos y delo.",
    left_out: "Sin etiquetas, celdas de repuesto, funda ni restos del corte.",
};

const LINES: FixedLines = FixedLines {
    estimate: "Una estimación hasta que alguien lo compruebe con sus manos. Decide el profesional responsable.",
    model_limits: "Entre paréntesis: lo plausible, de cálculos en los márgenes de lo que no se sabe. El modelo no se comparó con un cojín medido: presiones hasta un 30 %, sus cambios hasta un 10 a 20 %. Ninguna presión es segura.",
    sizing_defers: "El tamaño sigue reglas de la práctica; decide el profesional responsable.",
    grams_of_today: "Solo para este lote, báscula y día: pese un lote nuevo otro día. Pese las celdas sin bolsa ni recipiente. Donde importe la cantidad, cuente.",
    client_off_now: "LA PERSONA, FUERA DEL COJÍN YA.",
    look_at_these: "Después mire esto:",
    clear_this_first: "No se mueve nada antes de aclarar esto:",
    what_would_explain: "Qué lo explicaría, lo más probable primero:",
    nobody_sits: "nadie se sienta en él antes de hallar la causa y de que una mano por debajo esté segura",
    keep_off_or_take: "la persona no se sienta en el cojín; los movimientos mostrados son los que menos cargan la lesión, y --nearest-safe los toma",
    nearest_safe_shown: "el plan mostrado es el seguro más cercano; --nearest-safe lo toma",
    take_another_cushion: "tome otro tamaño, diseño o altura de pared; las cantidades mostradas son las más cercanas",
    withdrawn: "RETIRADA: ",
    weigh_the_client: "pese a la persona y añada [weight] con `kg = ...` y `weighed_on = ...`",
};

impl Spanish {
    /// What a size leaves free, one after the other.
    fn margins(self, margins: &[SizeMargin]) -> String {
        let margins: Vec<String> = margins.iter().map(|own| self.size_margin(own)).collect();
        match margins.as_slice() {
            [] => "nada que se sepa: no se midieron cadera, muslos, peso ni silla".to_owned(),
            some => some.join(", "),
        }
    }
}

impl ReportWords for Spanish {
    fn table(&self) -> &'static TableTexts {
        &TABLE
    }

    fn lines(&self) -> &'static FixedLines {
        &LINES
    }

    fn whence(&self, recorded_on: Option<Date>) -> String {
        match recorded_on {
            Some(on) => format!("cantidades registradas el {on}"),
            None => "cantidades de un plan que no está registrado".to_owned(),
        }
    }

    fn expected_seat(&self, seat: &PredictedSeat) -> String {
        format!(
            "Esperado: {}; queda bajo los isquiones: izquierdo {}, derecho {}.",
            self.lower(seat.lower_side, seat.lower_by),
            self.spread(&seat.clearance.left),
            self.spread(&seat.clearance.right)
        )
    }

    fn expected_after_moves(&self, seat: &PredictedSeat) -> String {
        format!(
            "Esperado entonces: quedan {} bajo el isquion izquierdo, {} bajo el derecho.",
            self.spread(&seat.clearance.left),
            self.spread(&seat.clearance.right)
        )
    }

    fn ended(&self, prediction: &Prediction) -> String {
        format!("Resultado: {}.", self.outcome(prediction.outcome))
    }

    fn seat(&self, seat: &PredictedSeat) -> String {
        let trunk = match seat.trunk_stiffness {
            0.0 => String::new(),
            trunk => format!(" El tronco inclinado toma {} de ello.", parts::decimal(trunk, 1)),
        };
        format!(
            "En los isquiones {}.\nEn grados, el cojín los gira desde como quedan por sí solos: {}, {}.\nCojín que queda bajo los isquiones: izquierdo {}, derecho {}.\nInmersión: {} y {}. La piel toca en {:.0} cm2, presión media {}.\nA inclinarse a un lado se resiste con {} N m por grado.{trunk}",
            self.lower(seat.lower_side, seat.lower_by),
            turned(&seat.roll_deg, ["izquierda", "derecha"]),
            turned(&seat.pitch_deg, ["frente arriba", "frente abajo"]),
            self.spread(&seat.clearance.left),
            self.spread(&seat.clearance.right),
            self.length(seat.immersion.left),
            self.length(seat.immersion.right),
            seat.contact_area.to_cm2(),
            spread_kpa(&seat.mean_surface),
            parts::decimal(seat.roll_stiffness, 1),
        )
    }

    fn costs(&self, costs: &Costs) -> Vec<String> {
        self.cost_lines(costs)
    }

    fn costs_on_paper(&self, costs: &Costs) -> Vec<String> {
        self.cost_lines_on_paper(costs)
    }

    fn ranked_goal(&self, place: usize, outcome: &GoalOutcome) -> String {
        format!("Objetivo {place}. {}", self.goal_outcome(outcome))
    }

    fn spare_cells(&self, cells: u32) -> String {
        format!("Celdas de repuesto en la bolsa: {cells}.")
    }

    fn not_safe_yet(&self, limit: &BrokenLimit) -> String {
        format!("AÚN NO ES SEGURO: {}.", self.limit(limit))
    }

    fn client_off(&self, alarms: &[Alarm]) -> String {
        let alarms: Vec<String> = alarms.iter().map(|own| self.alarm(own)).collect();
        format!("la persona, fuera del cojín ya: {}", alarms.join("; "))
    }

    fn not_safe(&self, limits: &[BrokenLimit]) -> String {
        let limits: Vec<String> = limits.iter().map(|own| self.limit(own)).collect();
        format!("no es posible con seguridad: {}", limits.join("; "))
    }

    fn goals_not_reached(&self, goals: &[GoalOutcome]) -> String {
        let missed = goals.iter().filter(|goal| !goal.met).map(|goal| match goal.why {
            Some(why) => format!("{} ({})", self.goal(&goal.want), self.shortfall(why)),
            None => self.goal(&goal.want),
        });
        let missed: Vec<String> = missed.collect();
        format!("no todo lo que se quiere es posible con seguridad: {}", missed.join("; "))
    }

    fn nothing_planned(&self) -> &'static str {
        "sin el peso de la persona no se planifica nada para los objetivos"
    }

    fn at_the_seat_bones(&self, by: Length, [low, high]: [Length; 2]) -> String {
        let (by, low, high) = (self.length(by), self.length(low), self.length(high));
        if low == high {
            return format!(
                "{by} en el frente de la pelvis son {low} en los isquiones, por su distancia."
            );
        }
        format!(
            "{by} en el frente de la pelvis son {low} a {high} en los isquiones, cuya distancia no se midió."
        )
    }

    fn best_size(&self, best: Option<Size>) -> String {
        match best {
            Some(size) => {
                format!("El tamaño de fabricación que mejor sirve: {}.", self.size_in_words(size))
            }
            None => "No sirve ningún tamaño de fabricación.".to_owned(),
        }
    }

    fn other_size_named(&self, named: Size, best: Size) -> String {
        let (named, best) = (self.size_in_words(named), self.size_in_words(best));
        format!("El archivo nombra {named}, no {best}.")
    }

    fn size_leaves(&self, margins: &[SizeMargin]) -> String {
        format!("Deja {}.", self.margins(margins))
    }

    fn sizes_suit_too(&self, sizes: &[Size]) -> String {
        let sizes: Vec<String> = sizes.iter().map(|size| self.size_in_words(*size)).collect();
        let suit = if sizes.len() == 1 { "también sirve" } else { "también sirven" };
        format!(
            "Más lejos de la anchura y la profundidad que se quieren, {suit}: {}.",
            sizes.join("; ")
        )
    }

    fn layout_with_size(&self, layout: &str, best: Size, margins: &[SizeMargin]) -> String {
        format!("{layout}: {}, con {}.", self.size_in_words(best), self.margins(margins))
    }

    fn layout_without_size(
        &self,
        layout: &str,
        nearest: Option<&(Size, Vec<SizeMisfit>)>,
    ) -> String {
        let Some((size, misfits)) = nearest else {
            return format!("{layout}: no se fabrica en ningún tamaño.");
        };
        let misfits: Vec<String> = misfits.iter().map(|own| self.size_misfit(own)).collect();
        format!(
            "{layout}: no sirve ninguno; el más cercano es {}, pero {}.",
            self.size_in_words(*size),
            misfits.join("; ")
        )
    }

    fn layout_not_seen(&self, layout: &str, why: &str) -> String {
        format!("{layout}: no se miró: {why}.")
    }

    fn can_be_drawn_so(&self, layouts: &[&str]) -> String {
        format!("Diseños que se pueden dibujar así: {}.", layouts.join(", "))
    }

    fn size_left(&self, size: Size, misfits: &[SizeMisfit]) -> String {
        let misfits: Vec<String> = misfits.iter().map(|own| self.size_misfit(own)).collect();
        format!("No {}: {}.", self.size_in_words(size), misfits.join("; "))
    }

    fn batch(&self, cells: u32, grams_of_one: f64) -> String {
        format!("celdas de {} g según un lote de {cells}", parts::decimal(grams_of_one, 2))
    }

    fn pattern(
        &self,
        title: &str,
        size: Size,
        class: Class,
        walls: Length,
        rating: Option<Mass>,
    ) -> String {
        let rating = match rating {
            None => "no se fabrica en este tamaño, así que no tiene peso máximo".to_owned(),
            Some(rating) => format!("peso máximo {}", parts::kg(rating)),
        };
        format!(
            "{}, {} x {} mm, {}\nParedes de {} mm de alto; {rating}.",
            text_of_layout(title),
            tenths(size.width()),
            tenths(size.depth()),
            class_words(class),
            tenths(walls)
        )
    }

    fn survey_summary(&self, summary: &SurveySummary) -> Vec<String> {
        let SurveySummary { bodies, sized, planned, .. } = summary;
        let mut said = vec![match (bodies, sized) {
            (1, 0) => "1 cuerpo; no se fabrica un tamaño para él.".to_owned(),
            (1, _) => "1 cuerpo; se fabrica un tamaño para él.".to_owned(),
            _ => format!("{bodies} cuerpos; se fabrica un tamaño para {sized} de ellos."),
        }];
        if *sized > 0 {
            let percent = 100.0 * *planned as f64 / *sized as f64;
            said.push(format!(
                "Un plan dentro de todos los límites: {planned} de {sized} ({} %).",
                parts::decimal(percent, 1)
            ));
        }
        let without = summary.without_size.iter().map(|(why, count)| match why {
            NoSize::TooHeavy => format!(
                "Sin tamaño, {count}: con más peso que el máximo de los tamaños que van con las medidas."
            ),
            NoSize::Measures => format!("Sin tamaño, {count}: ningún tamaño de fabricación va con las medidas."),
        });
        let not_safe = summary.not_safe.iter().map(|(why, count)| {
            let why = match why {
                SurveyFault::Clearance => "quedaría muy poco cojín bajo un isquion",
                SurveyFault::BottomsOut => "el cuerpo toca fondo",
                SurveyFault::InjuredSite => "un sitio con una lesión recibiría más presión",
                SurveyFault::NoRest => "el cuerpo no queda en reposo",
                SurveyFault::Refused => "no se hace plan para su peso o sus medidas",
            };
            format!("Fuera de los límites, {count}: {why}.")
        });
        said.extend(without.chain(not_safe));
        said
    }

    fn code_group(&self, code: &str, describes: &str, wide: bool) -> String {
        let width =
            if wide { "anchura de 22 pulgadas o más" } else { "anchura de menos de 22 pulgadas" };
        format!(
            "Grupo HCPCS de la clase y la anchura declaradas, si es regulable con lo que se entrega: {code} ({describes}, {width}, cualquier profundidad). La verificación del código corresponde al fabricante y al pagador."
        )
    }

    fn parts(&self) -> &'static PartsTexts {
        &PARTS
    }

    fn parts_of(&self, title: &str, size: Size, quantity: u32, allowance: Length) -> String {
        let many = parts::counted(quantity as usize, ["cojín", "cojines"]);
        let title = text_of_layout(title);
        format!("{title}, {size} mm: {many}, margen de costura de {:.0} mm.", allowance.to_mm())
    }

    fn comparison(&self) -> &'static ComparisonTexts {
        comparisons::TEXTS
    }

    fn compared_unit(&self, measure: ComparedMeasure) -> &'static str {
        comparisons::unit(measure)
    }

    fn compared_measure(&self, measure: ComparedMeasure) -> &'static str {
        comparisons::measure(measure)
    }

    fn compared_verdict(&self, verdict: ComparedVerdict) -> &'static str {
        comparisons::verdict(verdict)
    }

    fn compared_sizes(&self, sizes: &ComparedSizes) -> String {
        comparisons::sizes(sizes)
    }

    fn compared_fill(&self, sizes: [Size; 2], pressure: Pressure, of: Option<usize>) -> String {
        comparisons::fill(sizes, pressure, of)
    }

    fn review_finding(&self, finding: &ReviewFinding) -> Said {
        reviews::finding(finding)
    }

    fn order_in_short(&self, order: &str, cushions: usize, to_fill: u32, spares: u32) -> String {
        format!(
            "Pedido {order}: {}, {} para llenar, {spares} de repuesto.",
            parts::counted(cushions, ["cojín", "cojines"]),
            parts::cells(to_fill)
        )
    }

    fn finished_mass(
        &self,
        all: &Spread<Mass>,
        cover: &Spread<Mass>,
        cells: &Spread<Mass>,
    ) -> String {
        let said = |own: &Spread<Mass>| {
            let [central, low, high] = [own.central, own.low, own.high].map(|own| own.to_g());
            format!("{central:.0} g ({low:.0} a {high:.0})")
        };
        format!(
            "Un cojín acabado pesa {}: cubierta {}, celdas {}.",
            said(all),
            said(cover),
            said(cells)
        )
    }

    fn layout_known_by(&self, layout: &str, revision: Option<u32>, digest: &str) -> String {
        match revision {
            Some(number) => format!("diseño {layout}, revisión {number}, resumen digital {digest}"),
            None => format!("diseño {layout}, sin revisión, resumen digital {digest}"),
        }
    }

    fn range_of(&self, title: &str, sizes: usize, cell: &str) -> String {
        let (title, sizes) = (text_of_layout(title), parts::counted(sizes, ["tamaño", "tamaños"]));
        format!("{title}: {sizes}, con cantidades de la celda {cell}.")
    }

    fn jump(&self, jump: &Jump, from: Size, to: Size) -> String {
        let Jump { number, id, was, is, expected, .. } = jump;
        format!(
            "Salto: el compartimento {number} ({id}) pasa de {was} en {from} a {is} en {to}; con el cojín irían unas {expected}."
        )
    }

    fn no_jumps(&self) -> &'static str {
        "Ninguna cantidad salta: cada una va con el cojín de un tamaño a otro, salvo una cuarta parte como mucho."
    }

    fn range_legend(&self) -> &'static str {
        "Celdas de serie, y entre paréntesis el margen; un ! marca una cantidad que salta desde el tamaño menor anterior."
    }

    fn revision_stands(&self, was: Option<u32>, is: Option<u32>) -> String {
        let (was, is) = (was.unwrap_or(1), is.unwrap_or(1));
        if is > was {
            format!("la revisión subió de {was} a {is}: las cantidades pueden ser otras")
        } else {
            format!("cada cantidad es la del diseño anterior: la revisión {is} puede quedar")
        }
    }

    fn seam_lengths(&self, seams: &[(&str, Length)]) -> String {
        let seams: Vec<String> =
            seams.iter().map(|(name, length)| format!("{name} {:.0}", length.to_mm())).collect();
        format!("Costuras (mm): {}", seams.join(", "))
    }
}

fn class_words(class: Class) -> &'static str {
    match class {
        Class::General => "uso general",
        Class::SkinProtection => "protección de la piel",
        Class::Positioning => "posicionamiento",
        Class::SkinProtectionAndPositioning => "protección de la piel y posicionamiento",
    }
}

/// Millimetres with a decimal only where there is one.
fn tenths(length: Length) -> String {
    parts::number((length.to_mm() * 10.0).round() / 10.0)
}

impl Spanish {
    /// A length with its spread.
    pub(super) fn spread(self, spread: &Spread<Length>) -> String {
        let Spread { central, low, high } = spread;
        match self.lengths {
            LengthUnit::Millimetres => {
                format!("{} ({:.0} a {:.0})", parts::mm(*central), low.to_mm(), high.to_mm())
            }
            LengthUnit::Inches => format!(
                "{} in ({} a {}), {} mm ({:.0} a {:.0})",
                parts::inches(*central),
                parts::inches(*low),
                parts::inches(*high),
                central.to_mm().round(),
                low.to_mm(),
                high.to_mm()
            ),
        }
    }
}

/// A turn in degrees with its spread, each with the way in which it goes: the first word where it
/// is above zero.
fn turned(spread: &Spread<f64>, [above, below]: [&str; 2]) -> String {
    let one = |degrees: f64| {
        let tenths = (degrees * 10.0).round() / 10.0;
        match tenths {
            0.0 => "0,0".to_owned(),
            _ => format!(
                "{} {}",
                if tenths > 0.0 { above } else { below },
                parts::decimal(tenths.abs(), 1)
            ),
        }
    };
    format!("{} ({} a {})", one(spread.central), one(spread.low), one(spread.high))
}

/// A pressure with its spread.
fn spread_kpa(spread: &Spread<Pressure>) -> String {
    let Spread { central, low, high } = spread;
    let [central, low, high] = [central, low, high].map(|own| parts::decimal(own.to_kpa(), 1));
    format!("{central} kPa ({low} a {high})")
}
