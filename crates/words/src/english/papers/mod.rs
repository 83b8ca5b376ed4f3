//! English: what stands on the papers.
//!
//! Days are written as 2026-03-04 for those who keep records, and in words for carers.

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
use super::English;
use super::parts::{capital, cells, counted, inches, list, loud_side, mm, side};
use crate::{
    BasicWords, CheckedOn, FillCardTexts, GoalWords as _, HeightGaugeTexts, HistoryTexts, Language,
    LetterTexts, MeasuringFormTexts, OrderTexts, PaperWords, RangeTableTexts, RecordWords,
    ReviewTexts, SectionTexts, SetupCardTexts, SharedTexts, SurveyTexts, TagTexts, TakeHomeTexts,
    TemplateTexts, WashDayTexts,
};

impl PaperWords for English {
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
            Group::Injury => "past and present",
            Group::Call => "in their order",
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
            Question::InjurySite | Question::GoalSite => word.replace('-', " "),
            Question::Language => crate::by_tag(word).map_or(word, Language::own_name).to_owned(),
            _ => word.to_owned(),
        }
    }

    fn label_with_unit(&self, label: &str, unit: &str) -> String {
        format!("{label},\u{a0}{unit}")
    }

    fn measures_drawn(&self, measures: &[&str]) -> String {
        let measures: Vec<String> = measures.iter().map(|own| (*own).to_owned()).collect();
        let measures = list(&measures);
        format!("A seated person from the side and from above, with {measures}.")
    }

    fn form_foot(&self, page: usize, pages: usize, program: &str, printed: Date) -> String {
        format!(
            "Page {page} of {pages}. {program}, {printed}. Copy the answers into the client's file: the order is the same."
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
            Some(number) => format!("Layout revision {number}, digest {digest}."),
            None => format!("Layout digest {digest}."),
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
        let of = |number: Option<u8>| number.map_or("out".to_owned(), |own| own.to_string());
        let [left, right] = between.map(of);
        let ends = ends.map_or("closed".to_owned(), |[from, to]| format!("J{from}-J{to}"));
        format!("W{wall}: {left} | {right}, {seam}, {ends}, {:.1} mm", length.to_mm())
    }

    fn template_wall_number(&self, wall: usize) -> String {
        format!("W{wall}")
    }

    fn template_junction(&self, junction: usize) -> String {
        format!("J{junction}")
    }

    fn template_opening(&self, _: u8, length: Length) -> String {
        format!("opening {:.0} mm", length.to_mm())
    }

    fn template_allowance(&self, allowance: Length) -> String {
        format!("Seam allowance {:.0} mm, outside of every stitch line.", allowance.to_mm())
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
            "An arc is longer than its chord: compartment {number} is {chord:.0} mm wide and rises {rise:.0} mm above its walls, so the cloth over it is {arc:.1} mm, {:.1} % more, and no other asks for more.",
            extra * 100.0
        );
        let what = if is_cut_so {
            "The whole top is cut larger by that share, base and walls are not: ease the top in evenly from notch to notch."
        } else {
            "The top is not cut larger: its cloth must stretch by that share both ways. Cloth that does not needs a top that is cut larger."
        };
        format!("{why} {what}")
    }

    fn template_small_openings(&self, numbers: &[u8]) -> String {
        let numbers: Vec<String> = numbers.iter().map(u8::to_string).collect();
        format!(
            "No hand goes through the opening of {}: fill through a funnel, or choose a larger size.",
            list(&numbers)
        )
    }

    fn template_joins(&self, page: &str) -> String {
        format!("joins {page}")
    }

    fn template_piece_shows(&self, piece: &str) -> String {
        format!("{piece}: cut line, stitch lines, notches and grain, at true size")
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
        format!("{} in all, {spares} in the bag", cells(count))
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
        format!("Pattern drawn by the plugin {plugin}, layout {layout}.")
    }

    fn serial(&self, serial: &str) -> String {
        format!("Serial {serial}")
    }

    fn faults_from_above(&self, rings: usize) -> String {
        let rings = counted(rings, "ring");
        format!(
            "The seams of a layout that is wrong, from above, front edge up, with {rings} around what is wrong, each with the number of its remark. The client's left is on the left of the drawing."
        )
    }

    fn numbers_from_above(&self, compartments: usize) -> String {
        let compartments = counted(compartments, "compartment");
        format!(
            "The cushion from above, front edge up, with {compartments}, each with its number. The client's left is on the left of the drawing."
        )
    }

    fn setup_card_state(&self, standing: Standing<'_>) -> String {
        card_state(standing, "ESTIMATE until checked")
    }

    fn setup_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String {
        format!(
            "Plan of {}, {}, {}; layout {}, cell {}; printed {printed}.",
            plan.on, plan.by, plan.program, plan.layout_digest, plan.cell_digest
        )
    }

    fn reason_of_change(&self, compartments: &[u8], cells: i64, reason: &str) -> String {
        let numbers: Vec<String> = compartments.iter().map(u8::to_string).collect();
        let numbers = list(&numbers);
        format!("No. {numbers}, {}: {}", self.change(cells), reason.trim_end_matches('.'))
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
        most.map_or_else(|| "size not made".to_owned(), |most| self.weight(most))
    }

    fn rating_on_tag(&self, most: Option<Mass>) -> String {
        match most {
            Some(most) => format!("Client at most {}", self.weight(most)),
            None => "SIZE NOT MADE, not rated".to_owned(),
        }
    }

    fn left_under_bone(&self, left: &Spread<Length>) -> String {
        self.spread(left)
    }

    fn lower_in_short(&self, side: Option<Side>, by: Length) -> String {
        match side.filter(|_| by.to_mm() >= 0.5) {
            None => "level".to_owned(),
            Some(side) => format!("{}, {}", loud_side(side), self.length(by)),
        }
    }

    fn fitting_found(&self, check: &FittingCheck) -> String {
        let how = match check.passed {
            Some(true) => "passed",
            Some(false) => "DID NOT PASS",
            None => "no result written down",
        };
        let found = check.found.as_deref().map(|own| format!(": {}", own.trim_end_matches('.')));
        format!("{}, {}, fitting check, {how}{}.", check.on, check.by, found.unwrap_or_default())
    }

    fn entry_found(&self, entry: &Entry) -> String {
        format!("{}, {}, {}.", entry.on(), entry.by(), self.entry(entry))
    }

    fn checks_found(&self, adjustment: &Adjustment, counts: CheckedOn) -> String {
        let Adjustment { on, by, checks, .. } = adjustment;
        let counts = match counts {
            CheckedOn::CountsBefore => "before these counts",
            CheckedOn::TheseCounts => "on these counts",
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
                "Moves to this plan, from STOCK only: the cushion as supplied, never changed"
                    .to_owned()
            }
            CountedFrom::Plan(on) => format!("Moves to this plan, from the plan of {}", day(on)),
            CountedFrom::Recount(on) => {
                format!("Moves to this plan, from the recount of {}", day(on))
            }
            CountedFrom::Filled(on) | CountedFrom::Incoming(on) => {
                format!("Moves to this plan, from what was in the cushion on {}", day(on))
            }
            CountedFrom::Moved(on) | CountedFrom::Returned(on) => {
                format!("Moves still to be made to the latest plan, from the counts of {}", day(on))
            }
        }
    }

    fn counts_from_above(&self, compartments: usize) -> String {
        let compartments = counted(compartments, "compartment");
        format!(
            "The cushion from above, front edge up, with {compartments}, each with its number and count. The client's left is on the left of the drawing."
        )
    }

    fn fill_card_state(&self, standing: Standing<'_>) -> String {
        card_state(standing, "ESTIMATE: first fill")
    }

    fn fill_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String {
        format!("Plan of {}, {}; printed {printed}.", plan.on, plan.program)
    }

    fn pack_spares(&self, spares: u32) -> String {
        let spares = counted(spares as usize, "spare cell");
        format!("Pack {spares} in a closed bag with the client's code on it.")
    }

    fn pack_spares_of_stock(&self, spares: u32) -> String {
        let spares = counted(spares as usize, "spare cell");
        format!("Pack {spares} in a closed bag with the cushion's serial on it.")
    }

    fn height_to_measure(&self, height: &Spread<Length>) -> String {
        format!("{:.0}–{:.0}:", height.low.to_mm(), height.high.to_mm())
    }

    fn expected_mass(&self, mass: &Spread<Mass>) -> String {
        let [central, low, high] = [mass.central, mass.low, mass.high].map(|own| own.to_g());
        format!(
            "Expected then: {central:.0} g ({low:.0} to {high:.0}), an estimate with usual cloth from memory, without labels and outer cover."
        )
    }

    fn card_of_order(&self, order: &str, card: usize, cards: usize) -> String {
        format!("Order {order}, card {card} of {cards}.")
    }

    fn tags_of_order(&self, order: &str, sheet: usize, sheets: usize) -> String {
        format!("Order {order}, sheet {sheet} of {sheets}.")
    }

    fn tag_of_card(&self, card: usize) -> String {
        format!("Card {card}")
    }

    fn grams_with_range(&self, mass: &Spread<Mass>) -> String {
        let [central, low, high] = [mass.central, mass.low, mass.high].map(|own| own.to_g());
        format!("{central:.0} ({low:.0}–{high:.0})")
    }

    fn counts_from_below(&self, compartments: usize) -> String {
        let compartments = counted(compartments, "compartment");
        format!(
            "The cushion from below, front edge up, with {compartments}, each with its number and count. The client's left is on the right of the drawing."
        )
    }

    fn take_home_state(&self, standing: Standing<'_>) -> String {
        match (standing.state, standing.review) {
            (State::ToMeasure | State::ToPlan | State::Estimate, _) => {
                "NOT FITTED YET. DO NOT HAND OVER.".to_owned()
            }
            (State::NotSafe(_), _) => "NOT SAFE. DO NOT HAND OVER.".to_owned(),
            (State::Failed(_), _) => "IT DOES NOT FIT. DO NOT HAND OVER.".to_owned(),
            (State::Lapsed(_, Lapse::OtherCushion), _) => {
                "ANOTHER CUSHION. DO NOT HAND OVER.".to_owned()
            }
            (State::Lapsed(_, Lapse::Filling(_)), _) => {
                "BEING FILLED. DO NOT HAND OVER.".to_owned()
            }
            (State::Lapsed(_, Lapse::Counts(_) | Lapse::Recount(_)), _) => {
                "CELLS HAVE CHANGED. FIT IT AGAIN.".to_owned()
            }
            (State::Lapsed(_, Lapse::Weight(_)), _) => {
                "WEIGHT HAS CHANGED. FIT IT AGAIN.".to_owned()
            }
            (State::Lapsed(_, Lapse::Skin(..)), _) => "A MARK ON THE SKIN. DO NOT SIT.".to_owned(),
            (State::Fitted(_), Review::Overdue(due)) => {
                format!("LOOK AGAIN: OVERDUE SINCE {}.", day(due).to_uppercase())
            }
            (State::Fitted(looked), _) => {
                format!("Checked on {} by {}. Do not change it.", day(looked.on), looked.by)
            }
        }
    }

    fn sheet_in(&self, own_name: &str) -> String {
        format!(
            "For the therapist: this sheet is in {own_name}. It follows in English: go through it with the carer."
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
        let compartments = counted(pattern.compartments().len(), "compartment");
        let rating = match pattern.max_user_weight() {
            Some(most) => format!("for a client of {} at most", self.weight(most)),
            None => "in a size that is not made as yet, and not rated".to_owned(),
        };
        format!(
            "An adjustable cushion, {}, {}, of {compartments} with counted cells, {rating}: {} in it, and {} in a bag.",
            pattern.title(),
            self.size(pattern.size()),
            counted(cells as usize, "cell"),
            counted(spares as usize, "spare cell"),
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
            None => format!("{}. Nothing is expected of it yet.", capital(&self.goal(&goal.want))),
        };
        let because = goal.because.as_ref();
        let because = because.map(|own| format!(" Because: {}.", own.trim_end_matches('.')));
        said + &because.unwrap_or_default()
    }

    fn code(&self, code: &ClientCode) -> String {
        format!("Code {code}")
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
            SiteName::SeatBone(side) => format!("{} seat bone", loud_side(side)),
            SiteName::Coccyx => "tail bone".to_owned(),
            SiteName::Trochanter(side) => format!("{} hip", loud_side(side)),
            SiteName::Thigh(side) => format!("{} thigh", loud_side(side)),
        };
        format!("the sore at the {at} is larger, wetter, or smells")
    }

    fn sit_meanwhile(&self, what: &str) -> String {
        let what = what.trim_end_matches('.');
        format!("If you cannot use it, sit on: {what}. Never on the bare chair.")
    }

    fn all_pockets(&self, count: u32) -> String {
        format!("All pockets: {}.", cells(count))
    }

    fn keep_the_bag(&self, spares: u32) -> String {
        format!("In the bag now: {}.", counted(spares as usize, "spare cell"))
    }

    fn next_look(&self, on: Date) -> String {
        format!("Your therapist looks at it again by {}.", day(on))
    }

    fn take_home_foot(&self, (page, pages): (usize, usize), plan: Date, printed: Date) -> String {
        let (plan, printed) = (day(plan), day(printed));
        format!("Page {page} of {pages}. Plan of {plan}, printed {printed}. Old? Bin it.")
    }

    fn code_says(&self, text: &str) -> String {
        format!("A QR code that says {text}")
    }

    fn plan_in_short(&self, PlanMark { number, word }: &PlanMark) -> String {
        format!("Plan {number} · {word}")
    }

    fn page_of(&self, page: usize, pages: usize) -> String {
        format!("{page} of {pages}")
    }

    fn look_again(&self, review: Review) -> Option<String> {
        match review {
            Review::None => None,
            Review::Due(by) => Some(format!("Look again by {by}")),
            Review::Overdue(by) => Some(format!("REVIEW OVERDUE since {by}")),
        }
    }

    fn section_along(&self, of: Side) -> String {
        format!("From rear to front through the {} seat bone", side(of))
    }

    fn left_under(&self, place: SiteName, left: &Spread<Length>) -> String {
        format!("{}: {}", self.site(place), self.spread(left))
    }

    fn section_shows(&self, title: &str, sites: &[(SiteName, Spread<Length>)]) -> String {
        let left = |(site, left): &(SiteName, Spread<Length>)| self.left_under(*site, left);
        let sites: Vec<String> = sites.iter().map(left).collect();
        format!("{title}. Cushion under {}.", sites.join("; "))
    }

    fn length_axis(&self, of: &str) -> (String, LengthUnit) {
        let unit = match self.lengths {
            LengthUnit::Millimetres => "mm",
            LengthUnit::Inches => "in",
        };
        (self.label_with_unit(of, unit), self.lengths)
    }

    fn survey_of(&self, layout: &str) -> String {
        format!("Survey of {layout}")
    }

    fn spread_of_values(&self, low: f64, middle: f64, high: f64) -> String {
        format!("5, 50 and 95 of 100: {low:.1}, {middle:.1}, {high:.1}")
    }

    fn values_between(&self, low: &str, high: &str) -> String {
        format!("{low} to {high}")
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
        (State::NotSafe(on), _) => format!("NOT SAFE: cells of {on}"),
        (State::Failed(looked), _) => format!("FAILED: check of {}", looked.on),
        (State::Lapsed(_, Lapse::OtherCushion), _) => "LAPSED: another cushion".to_owned(),
        (State::Lapsed(_, Lapse::Filling(on)), _) => format!("LAPSED: being filled, {on}"),
        (State::Lapsed(_, Lapse::Counts(on)), _) => format!("LAPSED: counts changed, {on}"),
        (State::Lapsed(_, Lapse::Recount(on)), _) => format!("LAPSED: recount of {on}"),
        (State::Lapsed(_, Lapse::Weight(on)), _) => format!("LAPSED: weight of {on}"),
        (State::Lapsed(_, Lapse::Skin(on, _)), _) => format!("LAPSED: skin, {on}"),
        (State::Fitted(_), Review::Overdue(due)) => format!("OVERDUE: review was due {due}"),
        (State::Fitted(looked), _) => format!("Checked on {} by {}", looked.on, looked.by),
    }
}
