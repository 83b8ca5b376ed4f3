//! What stands on the papers.
//!
//! A text that is always the same is a field of the texts of its document: a language gives one
//! value for each document, and the compiler asks for every field. What has a value in it is a
//! sentence of [`PaperWords`].

#![allow(missing_docs, reason = "a field of texts is named for what it says")]

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
mod wash_day;

use case::question::{Group, Question};
use case::text::LengthUnit;
use case::{
    Adjustment, Chair, ClientCode, Contact, CountedFrom, Date, Digest, Entry, FittingCheck,
    Function, Goal, GoalOutcome, Measures, Place, PlanMark, Posture, RecordedPlan, Review,
    SiteName, Skin, Spread, Standing, Weighing,
};
use cushion::{Length, Mass, Pattern, Side, Size};

pub use self::fill_card::FillCardTexts;
pub use self::height_gauge::HeightGaugeTexts;
pub use self::history::HistoryTexts;
pub use self::letter::LetterTexts;
pub use self::measuring_form::MeasuringFormTexts;
pub use self::order::OrderTexts;
pub use self::range_table::RangeTableTexts;
pub use self::review::ReviewTexts;
pub use self::sections::SectionTexts;
pub use self::setup_card::{CheckTexts, DefinedCheckTexts, Foretold, SetupCardTexts};
pub use self::shared::SharedTexts;
pub use self::survey::SurveyTexts;
pub use self::tag::TagTexts;
pub use self::take_home::{PassageTexts, StepTexts, TakeHomeTexts, WrittenTableTexts};
pub use self::template::TemplateTexts;
pub use self::wash_day::WashDayTexts;

/// The counts on which checks were made, as a paper of counts names them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckedOn {
    /// Those before the paper's: the checks led to these.
    CountsBefore,
    /// The paper's own.
    TheseCounts,
}

/// What stands on the papers.
pub trait PaperWords {
    /// What several documents say.
    fn shared(&self) -> &'static SharedTexts;
    /// The setup card.
    fn setup_card(&self) -> &'static SetupCardTexts;
    /// The fill cards.
    fn fill_card(&self) -> &'static FillCardTexts;
    /// The sewn-in tag.
    fn sewn_in_tag(&self) -> &'static TagTexts;
    /// The take-home sheet.
    fn take_home(&self) -> &'static TakeHomeTexts;
    /// The sheet for the day of a wash.
    fn wash_day(&self) -> &'static WashDayTexts;
    /// The height gauge.
    fn height_gauge(&self) -> &'static HeightGaugeTexts;
    /// The letter with the reasons.
    fn letter(&self) -> &'static LetterTexts;
    /// The page of a record.
    fn history(&self) -> &'static HistoryTexts;
    /// The blank measuring form.
    fn measuring_form(&self) -> &'static MeasuringFormTexts;
    /// The sheet of sections.
    fn sections(&self) -> &'static SectionTexts;
    /// The papers of an order.
    fn order(&self) -> &'static OrderTexts;
    /// The printed range of a layout.
    fn range_table(&self) -> &'static RangeTableTexts;
    /// The review of a layout.
    fn review(&self) -> &'static ReviewTexts;
    /// Cutting and sewing templates.
    fn template(&self) -> &'static TemplateTexts;
    /// The page of a survey.
    fn survey(&self) -> &'static SurveyTexts;

    /// The name of a layout, with its revision where it has one.
    fn layout_with_revision(&self, layout: &str, revision: Option<u32>) -> String;
    /// Of which layout a page is: its revision where it has one, and the digest of its text.
    fn layout_digest(&self, revision: Option<u32>, digest: &Digest) -> String;
    /// Cells as supplied with the ends of their range, and whether the count jumps.
    fn cells_with_range(&self, low: u32, stock: u32, high: u32, jumps: bool) -> String;
    /// A wall strip: its number, the compartments at its hands, its seam, the junctions at its ends
    /// and its length between the stitches.
    fn template_wall(
        &self,
        wall: usize,
        between: [Option<u8>; 2],
        seam: &str,
        ends: Option<[usize; 2]>,
        length: Length,
    ) -> String;
    /// A wall strip by its number.
    fn template_wall_number(&self, wall: usize) -> String;
    /// A junction by its number.
    fn template_junction(&self, junction: usize) -> String;
    /// An opening, so long.
    fn template_opening(&self, number: u8, length: Length) -> String;
    /// How much cloth is left outside of stitch lines: a sentence.
    fn template_allowance(&self, allowance: Length) -> String;
    /// The extra cloth of the top, a share of it, with its reason: the compartment that asks most,
    /// its chord, its rise and its arc; whether it is cut so or the cloth must stretch. Sentences.
    fn template_crown(&self, extra: f64, number: u8, spans: [Length; 3], is_cut_so: bool)
    -> String;
    /// Openings through which no hand goes: a sentence.
    fn template_small_openings(&self, numbers: &[u8]) -> String;
    /// Which way a page of a template joins its neighbours.
    fn template_joins(&self, page: &str) -> String;
    /// What a piece of a template shows, in words for those who cannot see it.
    fn template_piece_shows(&self, piece: &str) -> String;
    /// A size with its unit.
    fn size(&self, size: Size) -> String;
    /// How many cells a cushion holds, and its bag.
    fn all_cells(&self, cells: u32, spares: u32) -> String;
    /// A number of cells, on a label.
    fn cells_in_drawing(&self, count: u32) -> String;
    /// A number of cells to count, and how many it may be off.
    fn cells_within(&self, count: u32, tolerance: u32) -> String;
    /// By how many cells something changes.
    fn change(&self, cells: i64) -> String;
    /// The plugin that drew the pattern, and the digest of the layout that it drew.
    fn drawn_by(&self, plugin: &str, layout: &Digest) -> String;
    /// What a drawing of the cushion from above shows: numbers alone.
    fn numbers_from_above(&self, compartments: usize) -> String;
    /// What a drawing of a wrong layout from above shows: seams, and rings around so many faults.
    fn faults_from_above(&self, rings: usize) -> String;

    /// The serial of the cushion.
    fn serial(&self, serial: &str) -> String;

    /// How the fitting stands, on the setup card.
    fn setup_card_state(&self, standing: Standing<'_>) -> String;
    /// What the setup card was made from.
    fn setup_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String;
    /// Why the counts of some compartments differ from the stock fill.
    fn reason_of_change(&self, compartments: &[u8], cells: i64, reason: &str) -> String;
    /// Posture as far as it is written down: sentences, a line each.
    fn posture(&self, posture: &Posture) -> Vec<String>;
    /// Skin as far as it is written down: sentences, a line each.
    fn skin(&self, skin: &Skin) -> Vec<String>;
    /// Function as far as it is written down: sentences, a line each.
    fn function(&self, function: &Function) -> Vec<String>;
    /// For how heavy a client a size is rated; that it is none of those that are made.
    fn rating(&self, most: Option<Mass>) -> String;
    /// For how heavy a client a size is rated, on the tag; that it is none of those that are made.
    fn rating_on_tag(&self, most: Option<Mass>) -> String;
    /// How much cushion is expected to be left under a seat bone, with what is plausible.
    fn left_under_bone(&self, left: &Spread<Length>) -> String;
    /// Which side is expected to be lower, and by how much, in a word or two.
    fn lower_in_short(&self, side: Option<Side>, by: Length) -> String;
    /// What a fitting check found: a sentence.
    fn fitting_found(&self, check: &FittingCheck) -> String;
    /// What else was found on the cushion or the skin, and is in the record: a sentence.
    fn entry_found(&self, entry: &Entry) -> String;
    /// What checks by hand found, on these counts or on those before: a sentence.
    fn checks_found(&self, adjustment: &Adjustment, on: CheckedOn) -> String;
    /// Where cells are, in a table of moves.
    fn place(&self, place: Place) -> String;
    /// From what the moves to a plan go out.
    fn moves_from(&self, from: CountedFrom) -> String;
    /// What the large drawing of the setup card shows.
    fn counts_from_above(&self, compartments: usize) -> String;

    /// How the fitting stands, on the fill card.
    fn fill_card_state(&self, standing: Standing<'_>) -> String;
    /// What the fill card was made from.
    fn fill_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String;
    /// What to do with the spare cells.
    fn pack_spares(&self, spares: u32) -> String;
    /// What to do with the spare cells of a cushion that is no client's yet.
    fn pack_spares_of_stock(&self, spares: u32) -> String;
    /// How high a compartment is expected to stand, before the room to write what was measured.
    fn height_to_measure(&self, height: &Spread<Length>) -> String;
    /// What the finished cushion is expected to weigh, and what is not in it: a sentence.
    fn expected_mass(&self, mass: &Spread<Mass>) -> String;
    /// Which card of an order it is: a sentence.
    fn card_of_order(&self, order: &str, card: usize, cards: usize) -> String;
    /// Which sheet of an order's tags it is: a sentence.
    fn tags_of_order(&self, order: &str, sheet: usize, sheets: usize) -> String;
    /// To which card a tag belongs.
    fn tag_of_card(&self, card: usize) -> String;
    /// A mass with its range, without its unit.
    fn grams_with_range(&self, mass: &Spread<Mass>) -> String;
    /// What the large drawing of the fill card shows.
    fn counts_from_below(&self, compartments: usize) -> String;

    /// How the fitting stands, for carers.
    fn take_home_state(&self, standing: Standing<'_>) -> String;
    /// To whoever hands over a sheet that is in another language, called by its own name: which it
    /// is, and that the two go through it together.
    fn sheet_in(&self, own_name: &str) -> String;
    /// A height beside its mark on the gauge.
    fn height_on_gauge(&self, height: Length) -> String;
    /// Of which client and plan a gauge is that was cut out.
    fn whose_gauge(&self, code: &ClientCode, mark: &PlanMark) -> String;

    /// What a letter asks for: the pattern with so many cells in it, and so many spare.
    fn asked_for(&self, pattern: &Pattern, cells: u32, spares: u32) -> String;
    /// What was measured of client and chair, each with its name; what was not is left out.
    fn measured(
        &self,
        measures: &Measures,
        weighing: Option<&Weighing>,
        chair: &Chair,
    ) -> Vec<[String; 2]>;
    /// A goal with its reason, and what is expected of it where that is known: sentences.
    fn goal_in_letter(&self, goal: &Goal, outcome: Option<&GoalOutcome>) -> String;

    /// By which code the client is known.
    fn code(&self, code: &ClientCode) -> String;
    /// Whom to call, and when they answer.
    fn call(&self, contact: &Contact) -> String;
    /// When a known sore forbids to sit.
    fn sore_is_worse(&self, site: SiteName) -> String;
    /// What to sit on meanwhile.
    fn sit_meanwhile(&self, what: &str) -> String;
    /// How many cells there are in all pockets.
    fn all_pockets(&self, cells: u32) -> String;
    /// How many cells are in the bag.
    fn keep_the_bag(&self, spares: u32) -> String;
    /// When the set-up is looked at again.
    fn next_look(&self, on: Date) -> String;
    /// Which page it is, and how to tell an old sheet.
    fn take_home_foot(&self, page: (usize, usize), plan: Date, printed: Date) -> String;
    /// The number of a plan and its check word.
    fn plan_in_short(&self, mark: &PlanMark) -> String;
    /// What a printed code says, for those who cannot see it: a sentence.
    fn code_says(&self, text: &str) -> String;

    /// Which page of how many it is.
    fn page_of(&self, page: usize, pages: usize) -> String;
    /// Until when what a page says holds, where that is known.
    fn look_again(&self, review: Review) -> Option<String>;

    /// What a group of questions is about, as a heading.
    fn group_heading(&self, group: Group) -> &'static str;
    /// What is said beside the heading of a group; empty where that says it.
    fn group_comment_on_form(&self, group: Group) -> &'static str;
    /// How a question is called above the room for its answer, under the heading of its group.
    fn label_on_form(&self, question: Question) -> String;
    /// What to write in answer to a question; empty where its label says it.
    fn comment_on_form(&self, question: Question) -> &'static str;
    /// One of the words of a choice, to be ringed.
    fn word_on_form(&self, question: Question, word: &'static str) -> String;
    /// The head of a column in which numbers have a unit.
    fn label_with_unit(&self, label: &str, unit: &str) -> String;
    /// What the drawing of the measures shows.
    fn measures_drawn(&self, measures: &[&str]) -> String;
    /// Which page of the form it is, what it was made by, and where its answers go.
    fn form_foot(&self, page: usize, pages: usize, program: &str, printed: Date) -> String;

    /// The title of a section from rear to front.
    fn section_along(&self, side: Side) -> String;
    /// How much cushion is left under a place on the body.
    fn left_under(&self, site: SiteName, left: &Spread<Length>) -> String;
    /// What a section shows: its title, and the places with the cushion left under them.
    fn section_shows(&self, title: &str, sites: &[(SiteName, Spread<Length>)]) -> String;
    /// What an axis measures, and the unit in which lengths are read first.
    fn length_axis(&self, of: &str) -> (String, LengthUnit);

    /// The title of a survey.
    fn survey_of(&self, layout: &str) -> String;
    /// Below what 5, 50 and 95 of 100 values are.
    fn spread_of_values(&self, low: f64, middle: f64, high: f64) -> String;
    /// From one value to another.
    fn values_between(&self, low: &str, high: &str) -> String;
    /// What a histogram shows: how many bodies each step has.
    fn histogram_shows(&self, title: &str, steps: &[(&str, u32)]) -> String;
}
