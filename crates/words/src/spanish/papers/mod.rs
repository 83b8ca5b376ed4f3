//! Spanish: what stands on the papers.
//!
//! Days are written as 2026-03-04 for those who keep records, and in words for carers.

mod choices;
mod dates;
mod fill_card;
mod height_gauge;
mod history;
mod letter;
mod measuring_form;
mod order;
mod range_table;
mod review;
mod sections;
mod setup_card;
mod shared;
mod survey;
mod tag;
mod take_home;
mod template;
mod the_client;
mod wash_day;

use case::question::{Group, Question, QuestionWords};
use case::text::LengthUnit;
use case::{
    Adjustment, Chair, ClientCode, Contact, CountedFrom, Date, Digest, Entry, FittingCheck,
    Function, Goal, GoalOutcome, Lapse, Measures, Place, PlanMark, Posture, RecordedPlan, Review,
    SiteName, Skin, Spread, Standing, State, Weighing,
};
use cushion::{Length, Mass, Pattern, Side, Size};

pub(super) use self::dates::day;
use super::Spanish;
use super::files::text_of_layout;
use super::parts::{
    COMPARTMENTS, SPARE_CELLS, capital, cells, counted, decimal, inches, list, loud_side, mm, side,
};
use crate::{
    BasicWords, CheckedOn, FillCardTexts, GoalWords as _, HeightGaugeTexts, HistoryTexts, Language,
    LetterTexts, MeasuringFormTexts, OrderTexts, PaperWords, RangeTableTexts, RecordWords,
    ReviewTexts, SectionTexts, SetupCardTexts, SharedTexts, SurveyTexts, TagTexts, TakeHomeTexts,
    TemplateTexts, WashDayTexts,
};

impl PaperWords for Spanish {
    fn shared(&self) -> &'static SharedTexts {
        shared::TEXTS
    }

    fn setup_card(&self) -> &'static SetupCardTexts {
        match self.lengths {
            LengthUnit::Millimetres => setup_card::TEXTS,
            LengthUnit::Inches => setup_card::TEXTS_IN_INCHES,
        }
    }

    fn fill_card(&self) -> &'static FillCardTexts {
        fill_card::TEXTS
    }

    fn sewn_in_tag(&self) -> &'static TagTexts {
        tag::TEXTS
    }

    fn take_home(&self) -> &'static TakeHomeTexts {
        take_home::TEXTS
    }

    fn wash_day(&self) -> &'static WashDayTexts {
        wash_day::TEXTS
    }

    fn height_gauge(&self) -> &'static HeightGaugeTexts {
        height_gauge::TEXTS
    }

    fn letter(&self) -> &'static LetterTexts {
        letter::TEXTS
    }

    fn history(&self) -> &'static HistoryTexts {
        history::TEXTS
    }

    fn measuring_form(&self) -> &'static MeasuringFormTexts {
        measuring_form::TEXTS
    }

    fn group_heading(&self, group: Group) -> &'static str {
        measuring_form::group_heading(group)
    }

    fn group_comment_on_form(&self, group: Group) -> &'static str {
        match group {
            Group::Injury => "pasadas y presentes",
            Group::Call => "por orden",
            Group::Chair | Group::Altitude | Group::LimbLoss => "",
            _ => self.group_comment(group),
        }
    }

    fn label_on_form(&self, question: Question) -> String {
        capital(measuring_form::label(question).unwrap_or_else(|| self.label(question)))
    }

    fn comment_on_form(&self, question: Question) -> &'static str {
        measuring_form::comment(question).unwrap_or_else(|| self.comment(question))
    }

    fn word_on_form(&self, question: Question, word: &'static str) -> String {
        match question {
            Question::Units => word.to_owned(),
            Question::Language => crate::by_tag(word).map_or(word, Language::own_name).to_owned(),
            Question::CushionSides if word == "open" => "libres".to_owned(),
            _ => choices::word(word).to_owned(),
        }
    }

    fn label_with_unit(&self, label: &str, unit: &str) -> String {
        format!("{label},\u{a0}{unit}")
    }

    fn measures_drawn(&self, measures: &[&str]) -> String {
        let measures: Vec<String> = measures.iter().map(|own| (*own).to_owned()).collect();
        let measures = list(&measures);
        format!("Una persona sentada vista de lado y desde arriba, con {measures}.")
    }

    fn form_foot(&self, page: usize, pages: usize, program: &str, printed: Date) -> String {
        format!(
            "Página {page} de {pages}. {program}, {printed}. Copie las respuestas en el archivo de la persona: mismo orden, con las palabras inglesas del archivo."
        )
    }

    fn sections(&self) -> &'static SectionTexts {
        sections::TEXTS
    }

    fn order(&self) -> &'static OrderTexts {
        order::TEXTS
    }

    fn range_table(&self) -> &'static RangeTableTexts {
        range_table::TEXTS
    }

    fn review(&self) -> &'static ReviewTexts {
        review::TEXTS
    }

    fn template(&self) -> &'static TemplateTexts {
        template::TEXTS
    }

    fn survey(&self) -> &'static SurveyTexts {
        survey::TEXTS
    }

    fn layout_with_revision(&self, layout: &str, revision: Option<u32>) -> String {
        match revision {
            Some(number) => format!("{layout} rev. {number}"),
            None => layout.to_owned(),
        }
    }

    fn layout_digest(&self, revision: Option<u32>, digest: &Digest) -> String {
        match revision {
            Some(number) => format!("Revisión {number} del diseño, resumen digital {digest}."),
            None => format!("Resumen digital del diseño {digest}."),
        }
    }

    fn cells_with_range(&self, low: u32, stock: u32, high: u32, jumps: bool) -> String {
        let mark = if jumps { "!" } else { "" };
        format!("{stock}{mark} ({low}-{high})")
    }

    fn template_wall(
        &self,
        wall: usize,
        between: [Option<u8>; 2],
        seam: &str,
        ends: Option<[usize; 2]>,
        length: Length,
    ) -> String {
        let of = |number: Option<u8>| number.map_or("fuera".to_owned(), |own| own.to_string());
        let [left, right] = between.map(of);
        let ends = ends.map_or("cerrada".to_owned(), |[from, to]| format!("J{from}-J{to}"));
        format!("W{wall}: {left} | {right}, {seam}, {ends}, {} mm", decimal(length.to_mm(), 1))
    }

    fn template_wall_number(&self, wall: usize) -> String {
        format!("W{wall}")
    }

    fn template_junction(&self, junction: usize) -> String {
        format!("J{junction}")
    }

    fn template_opening(&self, _: u8, length: Length) -> String {
        format!("abertura {:.0} mm", length.to_mm())
    }

    fn template_allowance(&self, allowance: Length) -> String {
        format!(
            "Margen de costura de {:.0} mm, por fuera de toda línea de costura.",
            allowance.to_mm()
        )
    }

    fn template_crown(
        &self,
        extra: f64,
        number: u8,
        spans: [Length; 3],
        is_cut_so: bool,
    ) -> String {
        let [chord, rise, arc] = spans.map(|own| own.to_mm());
        let why = format!(
            "Un arco es más largo que su cuerda: el compartimento {number} tiene {chord:.0} mm de ancho y sube {rise:.0} mm sobre sus paredes, así que la tela sobre él mide {} mm, un {} % más, y ningún otro pide más.",
            decimal(arc, 1),
            decimal(extra * 100.0, 1)
        );
        let what = if is_cut_so {
            "Toda la pieza de arriba se corta mayor en esa parte, la base y las paredes no: reparta la de arriba por igual de piquete a piquete."
        } else {
            "La pieza de arriba no se corta mayor: su tela debe ceder esa parte en ambos sentidos. Una tela que no cede necesita una pieza de arriba cortada mayor."
        };
        format!("{why} {what}")
    }

    fn template_small_openings(&self, numbers: &[u8]) -> String {
        let numbers: Vec<String> = numbers.iter().map(u8::to_string).collect();
        format!(
            "Ninguna mano entra por la abertura de {}: llene con un embudo, o elija un tamaño mayor.",
            list(&numbers)
        )
    }

    fn template_joins(&self, page: &str) -> String {
        format!("une con {page}")
    }

    fn template_piece_shows(&self, piece: &str) -> String {
        format!("{piece}: línea de corte, líneas de costura, piquetes e hilo, a tamaño real")
    }

    fn size(&self, size: Size) -> String {
        let mm = size.to_string().replace('x', " x ") + "\u{a0}mm";
        match self.lengths {
            LengthUnit::Millimetres => mm,
            LengthUnit::Inches => {
                let (width, depth) = (inches(size.width()), inches(size.depth()));
                format!("{width} x {depth}\u{a0}in ({mm})")
            }
        }
    }

    fn all_cells(&self, count: u32, spares: u32) -> String {
        format!("Total: {}; bolsa: {spares}", cells(count))
    }

    fn cells_in_drawing(&self, count: u32) -> String {
        cells(count).replace(' ', "\u{a0}")
    }

    fn cells_within(&self, count: u32, tolerance: u32) -> String {
        if tolerance == 0 { count.to_string() } else { format!("{count} ± {tolerance}") }
    }

    fn change(&self, cells: i64) -> String {
        if cells == 0 { "0".to_owned() } else { format!("{cells:+}").replace('-', "–") }
    }

    fn drawn_by(&self, plugin: &str, layout: &Digest) -> String {
        format!("Patrón del complemento {plugin}, diseño {layout}.")
    }

    fn serial(&self, serial: &str) -> String {
        format!("N.º de serie {serial}")
    }

    fn faults_from_above(&self, rings: usize) -> String {
        let rings = counted(rings, ["círculo", "círculos"]);
        format!(
            "Las costuras de un diseño que está mal, desde arriba, con el borde delantero arriba, y {rings} alrededor de lo que está mal, cada uno con el número de su observación. La izquierda de la persona está a la izquierda del dibujo."
        )
    }

    fn numbers_from_above(&self, compartments: usize) -> String {
        let compartments = counted(compartments, COMPARTMENTS);
        format!(
            "El cojín desde arriba, con el borde delantero arriba y {compartments}, cada uno con su número. La izquierda de la persona está a la izquierda del dibujo."
        )
    }

    fn setup_card_state(&self, standing: Standing<'_>) -> String {
        card_state(standing, "ESTIMACIÓN hasta comprobar")
    }

    fn setup_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String {
        format!(
            "Plan del {}, {}, {}; diseño {}, celda {}; impreso el {printed}.",
            plan.on, plan.by, plan.program, plan.layout_digest, plan.cell_digest
        )
    }

    fn reason_of_change(&self, compartments: &[u8], cells: i64, reason: &str) -> String {
        let numbers: Vec<String> = compartments.iter().map(u8::to_string).collect();
        let numbers = list(&numbers);
        format!("N.º {numbers}, {}: {}", self.change(cells), reason.trim_end_matches('.'))
    }

    fn posture(&self, posture: &Posture) -> Vec<String> {
        the_client::posture(*self, posture)
    }

    fn skin(&self, skin: &Skin) -> Vec<String> {
        the_client::skin(*self, skin)
    }

    fn function(&self, function: &Function) -> Vec<String> {
        the_client::function(function)
    }

    fn rating(&self, most: Option<Mass>) -> String {
        most.map_or_else(|| "tamaño no fabricado".to_owned(), |most| self.weight(most))
    }

    fn rating_on_tag(&self, most: Option<Mass>) -> String {
        match most {
            Some(most) => format!("Persona de {} como mucho", self.weight(most)),
            None => "TAMAÑO NO FABRICADO, sin peso máximo".to_owned(),
        }
    }

    fn left_under_bone(&self, left: &Spread<Length>) -> String {
        self.spread(left)
    }

    fn lower_in_short(&self, side: Option<Side>, by: Length) -> String {
        match side.filter(|_| by.to_mm() >= 0.5) {
            None => "nivelada".to_owned(),
            Some(side) => format!("{}, {}", loud_side(side), self.length(by)),
        }
    }

    fn fitting_found(&self, check: &FittingCheck) -> String {
        let how = match check.passed {
            Some(true) => "superada",
            Some(false) => "NO SUPERADA",
            None => "sin resultado escrito",
        };
        let found = check.found.as_deref().map(|own| format!(": {}", own.trim_end_matches('.')));
        format!(
            "{}, {}, comprobación del ajuste, {how}{}.",
            check.on,
            check.by,
            found.unwrap_or_default()
        )
    }

    fn entry_found(&self, entry: &Entry) -> String {
        format!("{}, {}, {}.", entry.on(), entry.by(), self.entry(entry))
    }

    fn checks_found(&self, adjustment: &Adjustment, counts: CheckedOn) -> String {
        let Adjustment { on, by, checks, .. } = adjustment;
        let counts = match counts {
            CheckedOn::CountsBefore => "antes de estas cantidades",
            CheckedOn::TheseCounts => "con estas cantidades",
        };
        format!("{on}, {by}, {counts}: {}.", self.checks(checks))
    }

    fn place(&self, place: Place) -> String {
        match place {
            Place::Compartment(number) => number.to_string(),
            Place::Spare => setup_card::TEXTS.bag.to_owned(),
        }
    }

    fn moves_from(&self, from: CountedFrom) -> String {
        match from {
            CountedFrom::Stock => {
                "Movimientos hasta este plan, solo desde el LLENADO DE SERIE: el cojín como llegó, nunca cambiado"
                    .to_owned()
            }
            CountedFrom::Plan(on) => format!("Movimientos hasta este plan, desde el plan del {}", day(on)),
            CountedFrom::Recount(on) => {
                format!("Movimientos hasta este plan, desde el recuento del {}", day(on))
            }
            CountedFrom::Filled(on) | CountedFrom::Incoming(on) => {
                format!("Movimientos hasta este plan, desde lo que había en el cojín el {}", day(on))
            }
            CountedFrom::Moved(on) | CountedFrom::Returned(on) => {
                format!("Movimientos que quedan hasta el último plan, desde las cantidades del {}", day(on))
            }
        }
    }

    fn counts_from_above(&self, compartments: usize) -> String {
        let compartments = counted(compartments, COMPARTMENTS);
        format!(
            "El cojín desde arriba, con el borde delantero arriba y {compartments}, cada uno con su número y su cantidad. La izquierda de la persona está a la izquierda del dibujo."
        )
    }

    fn fill_card_state(&self, standing: Standing<'_>) -> String {
        card_state(standing, "ESTIMACIÓN: primer llenado")
    }

    fn fill_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String {
        format!("Plan del {}, {}; impreso el {printed}.", plan.on, plan.program)
    }

    fn pack_spares(&self, spares: u32) -> String {
        let spares = counted(spares as usize, SPARE_CELLS);
        format!("Meta {spares} en una bolsa cerrada y marcada con el código de la persona.")
    }

    fn pack_spares_of_stock(&self, spares: u32) -> String {
        let spares = counted(spares as usize, SPARE_CELLS);
        format!("Meta {spares} en una bolsa cerrada y marcada con el número de serie del cojín.")
    }

    fn height_to_measure(&self, height: &Spread<Length>) -> String {
        format!("{:.0}–{:.0}:", height.low.to_mm(), height.high.to_mm())
    }

    fn expected_mass(&self, mass: &Spread<Mass>) -> String {
        let [central, low, high] = [mass.central, mass.low, mass.high].map(|own| own.to_g());
        format!(
            "Se esperan entonces {central:.0} g ({low:.0} a {high:.0}), una estimación (peso usual de la tela, de memoria), sin etiquetas ni funda."
        )
    }

    fn card_of_order(&self, order: &str, card: usize, cards: usize) -> String {
        format!("Pedido {order}, ficha {card} de {cards}.")
    }

    fn tags_of_order(&self, order: &str, sheet: usize, sheets: usize) -> String {
        format!("Pedido {order}, hoja {sheet} de {sheets}.")
    }

    fn tag_of_card(&self, card: usize) -> String {
        format!("Ficha {card}")
    }

    fn grams_with_range(&self, mass: &Spread<Mass>) -> String {
        let [central, low, high] = [mass.central, mass.low, mass.high].map(|own| own.to_g());
        format!("{central:.0} ({low:.0}–{high:.0})")
    }

    fn counts_from_below(&self, compartments: usize) -> String {
        let compartments = counted(compartments, COMPARTMENTS);
        format!(
            "El cojín desde abajo, con el borde delantero arriba y {compartments}, cada uno con su número y su cantidad. La izquierda de la persona está a la derecha del dibujo."
        )
    }

    fn take_home_state(&self, standing: Standing<'_>) -> String {
        match (standing.state, standing.review) {
            (State::ToMeasure | State::ToPlan | State::Estimate, _) => {
                "SIN AJUSTAR TODAVÍA. NO LO ENTREGUE.".to_owned()
            }
            (State::NotSafe(_), _) => "NO ES SEGURO. NO LO ENTREGUE.".to_owned(),
            (State::Failed(_), _) => "NO ESTÁ BIEN. NO LO ENTREGUE.".to_owned(),
            (State::Lapsed(_, Lapse::OtherCushion), _) => {
                "ES OTRO COJÍN. NO LO ENTREGUE.".to_owned()
            }
            (State::Lapsed(_, Lapse::Filling(_)), _) => {
                "SE ESTÁ LLENANDO. NO LO ENTREGUE.".to_owned()
            }
            (State::Lapsed(_, Lapse::Counts(_) | Lapse::Recount(_)), _) => {
                "CAMBIARON LAS CELDAS. AJUSTE OTRA VEZ.".to_owned()
            }
            (State::Lapsed(_, Lapse::Weight(_)), _) => {
                "CAMBIÓ EL PESO. AJUSTE OTRA VEZ.".to_owned()
            }
            (State::Lapsed(_, Lapse::Skin(..)), _) => {
                "UNA MARCA EN LA PIEL. NO SENTARSE.".to_owned()
            }
            (State::Fitted(_), Review::Overdue(due)) => {
                format!("REVISIÓN ATRASADA DESDE EL {}.", day(due).to_uppercase())
            }
            (State::Fitted(looked), _) => {
                format!("Comprobado el {} por {}. No lo cambie.", day(looked.on), looked.by)
            }
        }
    }

    fn sheet_in(&self, own_name: &str) -> String {
        format!(
            "Para terapeutas: esta hoja está en {own_name}. Después sigue en español: repásela con quien cuida."
        )
    }

    fn height_on_gauge(&self, height: Length) -> String {
        match self.lengths {
            LengthUnit::Millimetres => mm(height),
            LengthUnit::Inches => format!("{} in", inches(height)),
        }
    }

    fn whose_gauge(&self, code: &ClientCode, mark: &PlanMark) -> String {
        format!("{code}, plan {}, {}", mark.number, mark.word)
    }

    fn asked_for(&self, pattern: &Pattern, cells: u32, spares: u32) -> String {
        let compartments = counted(pattern.compartments().len(), COMPARTMENTS);
        let rating = match pattern.max_user_weight() {
            Some(most) => format!("para una persona de {} como mucho", self.weight(most)),
            None => "en un tamaño que aún no se fabrica, sin peso máximo".to_owned(),
        };
        format!(
            "Un cojín regulable, diseño «{}», {}, de {compartments} con celdas contadas, {rating}: {} dentro, y {} en una bolsa.",
            text_of_layout(pattern.title()),
            self.size(pattern.size()),
            self.cells(cells),
            counted(spares as usize, SPARE_CELLS),
        )
    }

    fn measured(
        &self,
        measures: &Measures,
        weighing: Option<&Weighing>,
        chair: &Chair,
    ) -> Vec<[String; 2]> {
        letter::measured(*self, measures, weighing, chair)
    }

    fn goal_in_letter(&self, goal: &Goal, outcome: Option<&GoalOutcome>) -> String {
        let said = match outcome {
            Some(outcome) => self.goal_outcome(outcome),
            None => format!("{}. Aún no se espera nada de ello.", capital(&self.goal(&goal.want))),
        };
        let because = goal.because.as_ref();
        let because = because.map(|own| format!(" Motivo: {}.", own.trim_end_matches('.')));
        said + &because.unwrap_or_default()
    }

    fn code(&self, code: &ClientCode) -> String {
        format!("Código {code}")
    }

    fn call(&self, contact: &Contact) -> String {
        let Contact { who, phone, hours } = contact;
        // A number is dialled whole, so it stands on one line.
        let phone = phone.replace(' ', "\u{a0}");
        match hours {
            Some(hours) => format!("{who}: {phone}, {hours}"),
            None => format!("{who}: {phone}"),
        }
    }

    fn sore_is_worse(&self, site: SiteName) -> String {
        // Carers know no trochanter.
        let at = match site {
            SiteName::SeatBone(side) => format!("hueso de sentarse {}", loud_side(side)),
            SiteName::Coccyx => "hueso de la cola".to_owned(),
            SiteName::Trochanter(side) => format!("lado {} de la cadera", loud_side(side)),
            SiteName::Thigh(side) => format!("muslo {}", loud_side(side)),
        };
        format!("la llaga del {at} crece, supura o huele")
    }

    fn sit_meanwhile(&self, what: &str) -> String {
        let what = what.trim_end_matches('.');
        format!("Si no puede usarlo, use: {what}. Nunca la silla sin cojín.")
    }

    fn all_pockets(&self, count: u32) -> String {
        format!("En todos los bolsillos: {}.", cells(count))
    }

    fn keep_the_bag(&self, spares: u32) -> String {
        format!("En la bolsa ahora: {}.", counted(spares as usize, SPARE_CELLS))
    }

    fn next_look(&self, on: Date) -> String {
        format!("Su terapeuta lo revisa antes del {}.", day(on))
    }

    fn take_home_foot(&self, (page, pages): (usize, usize), plan: Date, printed: Date) -> String {
        let (plan, printed) = (day(plan), day(printed));
        format!("Pág. {page} de {pages}. Plan: {plan}. Impreso: {printed}. Hoja vieja: tírela.")
    }

    fn code_says(&self, text: &str) -> String {
        format!("Un código QR que dice {text}")
    }

    fn plan_in_short(&self, PlanMark { number, word }: &PlanMark) -> String {
        format!("Plan {number} · {word}")
    }

    fn page_of(&self, page: usize, pages: usize) -> String {
        format!("{page} de {pages}")
    }

    fn look_again(&self, review: Review) -> Option<String> {
        match review {
            Review::None => None,
            Review::Due(by) => Some(format!("Revisar antes del {by}")),
            Review::Overdue(by) => Some(format!("REVISIÓN ATRASADA desde el {by}")),
        }
    }

    fn section_along(&self, of: Side) -> String {
        format!("De atrás adelante por el isquion {}", side(of))
    }

    fn left_under(&self, place: SiteName, left: &Spread<Length>) -> String {
        format!("{}: {}", self.site(place), self.spread(left))
    }

    fn section_shows(&self, title: &str, sites: &[(SiteName, Spread<Length>)]) -> String {
        let left = |(site, left): &(SiteName, Spread<Length>)| self.left_under(*site, left);
        let sites: Vec<String> = sites.iter().map(left).collect();
        format!("{title}. Cojín que queda bajo {}.", sites.join("; "))
    }

    fn length_axis(&self, of: &str) -> (String, LengthUnit) {
        let unit = match self.lengths {
            LengthUnit::Millimetres => "mm",
            LengthUnit::Inches => "in",
        };
        (self.label_with_unit(of, unit), self.lengths)
    }

    fn survey_of(&self, layout: &str) -> String {
        format!("Estudio de {layout}")
    }

    fn spread_of_values(&self, low: f64, middle: f64, high: f64) -> String {
        let [low, middle, high] = [low, middle, high].map(|own| decimal(own, 1));
        format!("5, 50 y 95 de 100: {low}; {middle}; {high}")
    }

    fn values_between(&self, low: &str, high: &str) -> String {
        format!("{low} a {high}")
    }

    fn histogram_shows(&self, title: &str, steps: &[(&str, u32)]) -> String {
        let steps: Vec<String> =
            steps.iter().map(|(name, count)| format!("{name}: {count}")).collect();
        format!("{title}. {}", steps.join("; "))
    }
}

/// The state of a fitting, for therapists and fillers; `estimate` where nobody found it right yet.
fn card_state(standing: Standing<'_>, estimate: &str) -> String {
    match (standing.state, standing.review) {
        (State::ToMeasure | State::ToPlan | State::Estimate, _) => estimate.to_owned(),
        (State::NotSafe(on), _) => format!("NO ES SEGURO: celdas del {on}"),
        (State::Failed(looked), _) => format!("NO PASÓ: comprobación del {}", looked.on),
        (State::Lapsed(_, Lapse::OtherCushion), _) => "CADUCADO: otro cojín".to_owned(),
        (State::Lapsed(_, Lapse::Filling(on)), _) => format!("CADUCADO: se está llenando, {on}"),
        (State::Lapsed(_, Lapse::Counts(on)), _) => format!("CADUCADO: otras cantidades, {on}"),
        (State::Lapsed(_, Lapse::Recount(on)), _) => format!("CADUCADO: recuento del {on}"),
        (State::Lapsed(_, Lapse::Weight(on)), _) => format!("CADUCADO: peso del {on}"),
        (State::Lapsed(_, Lapse::Skin(on, _)), _) => format!("CADUCADO: piel, {on}"),
        (State::Fitted(_), Review::Overdue(due)) => format!("ATRASADO: revisión del {due}"),
        (State::Fitted(looked), _) => format!("Comprobado el {} por {}", looked.on, looked.by),
    }
}
