//! What is said of whole answers, beside their findings: headings of tables, summaries, closing
//! lines. A terminal shows them, and a page can.

use case::{
    Alarm, BrokenLimit, ComparedMeasure, ComparedSizes, ComparedVerdict, Costs, Date, GoalOutcome,
    PredictedSeat, Prediction, ReviewFinding, Said, SizeMargin, SizeMisfit, Spread, SurveySummary,
};
use cushion::{Class, Jump, Length, Mass, Pressure, Size};

/// Headings of tables and their fixed cells.
#[derive(Clone, Copy, Debug)]
#[allow(missing_docs, reason = "each is the English text under that name")]
pub struct TableTexts {
    pub number: &'static str,
    pub compartment: &'static str,
    pub area_cm2: &'static str,
    pub walls_mm: &'static str,
    pub crown_mm: &'static str,
    pub about_litres: &'static str,
    pub low: &'static str,
    pub stock: &'static str,
    pub high: &'static str,
    pub change: &'static str,
    pub planned: &'static str,
    pub reason: &'static str,
    pub cells: &'static str,
    pub grams: &'static str,
    pub plus_or_minus: &'static str,
    pub fill_kpa: &'static str,
    pub from: &'static str,
    pub to: &'static str,
    pub carries_n: &'static str,
    pub remarks: &'static str,
    pub site: &'static str,
    pub surface_kpa: &'static str,
    pub mmhg: &'static str,
    pub total: &'static str,
    pub bottomed: &'static str,
    pub slack: &'static str,
    pub entry: &'static str,
    pub day: &'static str,
    pub what: &'static str,
    pub by: &'static str,
    pub bag: &'static str,
    pub weight: &'static str,
    pub expected: &'static str,
    pub found: &'static str,
    pub layout: &'static str,
    pub revision: &'static str,
    pub digest: &'static str,
    pub sizes: &'static str,
    pub smallest: &'static str,
    pub largest: &'static str,
    pub rated_kg: &'static str,
    pub title: &'static str,
    pub size: &'static str,
    pub litres: &'static str,
    pub cells_g: &'static str,
    pub seams_mm: &'static str,
    pub any_size: &'static str,
}

/// What a supplier needs to make cushions: names of parts and fixed lines.
#[derive(Clone, Copy, Debug)]
#[allow(missing_docs, reason = "each is the English text under that name")]
pub struct PartsTexts {
    pub part: &'static str,
    pub each: &'static str,
    pub in_all: &'static str,
    pub unit: &'static str,
    pub cloth: &'static str,
    pub top: &'static str,
    pub base: &'static str,
    pub wall: &'static str,
    pub all_cloth: &'static str,
    pub seams: &'static str,
    pub thread: &'static str,
    pub openings: &'static str,
    pub closures: &'static str,
    pub cells: &'static str,
    pub spares: &'static str,
    /// Whence cloth, thread and closures are taken where nobody gave them.
    pub from_memory: &'static str,
    /// What is left out.
    pub left_out: &'static str,
}

/// What stands around two layouts beside each other.
#[derive(Clone, Copy, Debug)]
#[allow(missing_docs, reason = "each is the English text under that name")]
pub struct ComparisonTexts {
    /// Heads of columns.
    pub layout: &'static str,
    pub size: &'static str,
    pub bodies: &'static str,
    pub pressure: &'static str,
    pub whole_cells: &'static str,
    pub compartments: &'static str,
    pub cells: &'static str,
    pub as_supplied: &'static str,
    pub litres: &'static str,
    pub mass: &'static str,
    pub seams: &'static str,
    pub finest: &'static str,
    pub coarsest: &'static str,
    pub reach: &'static str,
    pub measure: &'static str,
    pub unit: &'static str,
    pub difference: &'static str,
    pub told_from: &'static str,
    pub verdict: &'static str,
    /// Above those who come to harm, and their rows.
    pub harm: &'static str,
    pub no_rest: &'static str,
    pub bottomed: &'static str,
    pub little_left: &'static str,
    /// Where nobody sits on both.
    pub nobody: &'static str,
    /// What the columns mean.
    pub legend: &'static str,
    /// When a difference is one.
    pub how_told: &'static str,
    pub limits: &'static str,
}

/// Lines that are always the same.
#[derive(Clone, Copy, Debug)]
pub struct FixedLines {
    /// Said wherever computed counts are shown.
    pub estimate: &'static str,
    /// Said with every prediction.
    pub model_limits: &'static str,
    /// Said with sizes.
    pub sizing_defers: &'static str,
    /// Said with grams.
    pub grams_of_today: &'static str,
    /// Above alarms.
    pub client_off_now: &'static str,
    /// Above places to look at.
    pub look_at_these: &'static str,
    /// Above answers that are asked again.
    pub clear_this_first: &'static str,
    /// Above mistakes.
    pub what_would_explain: &'static str,
    /// What to do after an alarm.
    pub nobody_sits: &'static str,
    /// What to do where limits cannot be kept.
    pub take_another_cushion: &'static str,
    /// What to do where the moves that are shown give an injury more pressure.
    pub keep_off_or_take: &'static str,
    /// What to do where the plan that is shown is the nearest safe one.
    pub nearest_safe_shown: &'static str,
    /// What to do where the weight is missing.
    pub weigh_the_client: &'static str,
    /// Before an entry of the record that was withdrawn.
    pub withdrawn: &'static str,
}

/// What is said of whole answers.
pub trait ReportWords {
    /// Headings of tables.
    fn table(&self) -> &'static TableTexts;

    /// Lines that are always the same.
    fn lines(&self) -> &'static FixedLines;

    /// Whence counts are: recorded on a day, or of a plan that is not recorded. A clause.
    fn whence(&self, recorded_on: Option<Date>) -> String;

    /// What is expected under the seat bones: a sentence.
    fn expected_seat(&self, seat: &PredictedSeat) -> String;

    /// What is left under the seat bones after moves: a sentence.
    fn expected_after_moves(&self, seat: &PredictedSeat) -> String;

    /// How a prediction ended: a sentence.
    fn ended(&self, prediction: &Prediction) -> String;

    /// How the client is expected to sit, in all numbers but those of tables: sentences.
    fn seat(&self, seat: &PredictedSeat) -> String;

    /// What counts change for the client, wanted or not: a heading, then a line each.
    fn costs(&self, costs: &Costs) -> Vec<String>;

    /// The same for paper, without the goals; it bears changes of pressure and no bare ones.
    fn costs_on_paper(&self, costs: &Costs) -> Vec<String>;

    /// What became of a goal, by its place from 1: sentences.
    fn ranked_goal(&self, place: usize, outcome: &GoalOutcome) -> String;

    /// How many cells are in the spare bag: a sentence.
    fn spare_cells(&self, cells: u32) -> String;

    /// A limit that is not kept after moves: a sentence.
    fn not_safe_yet(&self, limit: &BrokenLimit) -> String;

    /// Why the client comes off: a clause.
    fn client_off(&self, alarms: &[Alarm]) -> String;

    /// Why limits make a plan unsafe: a clause.
    fn not_safe(&self, limits: &[BrokenLimit]) -> String;

    /// Which goals are not reached, and why: a clause.
    fn goals_not_reached(&self, goals: &[GoalOutcome]) -> String;

    /// What a height at the front of the pelvis is at the seat bones, at least and at most: a
    /// sentence.
    fn at_the_seat_bones(&self, by: Length, ends: [Length; 2]) -> String;

    /// That nothing is planned for goals without a weight: a clause.
    fn nothing_planned(&self) -> &'static str;

    /// Which made size suits best: a sentence.
    fn best_size(&self, best: Option<Size>) -> String;

    /// That the file names another size than the best: a sentence.
    fn other_size_named(&self, named: Size, best: Size) -> String;

    /// What a size leaves free around the client: a sentence.
    fn size_leaves(&self, margins: &[SizeMargin]) -> String;

    /// Which other sizes suit, further from what is wanted: a sentence.
    fn sizes_suit_too(&self, sizes: &[Size]) -> String;

    /// The best size of a layout, with what it leaves free: a line.
    fn layout_with_size(&self, layout: &str, best: Size, margins: &[SizeMargin]) -> String;

    /// That no size of a layout suits, and why the nearest does not, where it is made in any: a
    /// line.
    fn layout_without_size(
        &self,
        layout: &str,
        nearest: Option<&(Size, Vec<SizeMisfit>)>,
    ) -> String;

    /// That a layout could not be looked at, and why: a line.
    fn layout_not_seen(&self, layout: &str, why: &str) -> String;

    /// Which layouts can be drawn in the size that is asked for: a sentence.
    fn can_be_drawn_so(&self, layouts: &[&str]) -> String;

    /// Why a size does not suit: a sentence.
    fn size_left(&self, size: Size, misfits: &[SizeMisfit]) -> String;

    /// Cells of a batch that was weighed, each so many grams: a clause.
    fn batch(&self, cells: u32, grams_of_one: f64) -> String;

    /// What a pattern is and how high its walls are: sentences.
    fn pattern(
        &self,
        title: &str,
        size: Size,
        class: Class,
        walls: Length,
        rating: Option<Mass>,
    ) -> String;

    /// What came out of a survey: sentences, each a line.
    fn survey_summary(&self, summary: &SurveySummary) -> Vec<String>;

    /// The code group of a declared class and width: sentences.
    fn code_group(&self, code: &str, describes: &str, wide: bool) -> String;

    /// Names of parts.
    fn parts(&self) -> &'static PartsTexts;

    /// Of what parts are told: so many of a layout at a size, with which allowance. A sentence.
    fn parts_of(&self, title: &str, size: Size, quantity: u32, allowance: Length) -> String;

    /// What stands around two layouts beside each other.
    fn comparison(&self) -> &'static ComparisonTexts;
    /// What is compared, without its unit.
    fn compared_measure(&self, measure: ComparedMeasure) -> &'static str;

    /// The unit in which it is told.
    fn compared_unit(&self, measure: ComparedMeasure) -> &'static str;
    /// What a difference comes to.
    fn compared_verdict(&self, verdict: ComparedVerdict) -> &'static str;
    /// For how many bodies two layouts have sizes: sentences.
    fn compared_sizes(&self, sizes: &ComparedSizes) -> String;
    /// How two cushions are filled: to which unloaded pressure, and that it is the lower one of their
    /// stock fills, that of the first (0) or the second (1), or of both. A sentence.
    fn compared_fill(&self, sizes: [Size; 2], pressure: Pressure, of: Option<usize>) -> String;
    /// What a review of a layout finds, with its number, and what to do.
    fn review_finding(&self, finding: &ReviewFinding) -> Said;

    /// How many cushions an order has, and how many cells they need, spare ones beside: a sentence.
    fn order_in_short(&self, order: &str, cushions: usize, cells: u32, spares: u32) -> String;

    /// What one finished cushion is expected to weigh, and of that cover and cells: a sentence.
    fn finished_mass(
        &self,
        all: &Spread<Mass>,
        cover: &Spread<Mass>,
        cells: &Spread<Mass>,
    ) -> String;

    /// By what a layout is known again: its name, its revision where it has one, and the digest of
    /// its text. A clause.
    fn layout_known_by(&self, layout: &str, revision: Option<u32>, digest: &str) -> String;

    /// In which sizes a layout is made, and which cell is counted with: a sentence.
    fn range_of(&self, title: &str, sizes: usize, cell: &str) -> String;

    /// A count that does not go with the cushion's growth from the next smaller size: a sentence.
    fn jump(&self, jump: &Jump, from: Size, to: Size) -> String;

    /// That no count jumps from one size to the next: a sentence.
    fn no_jumps(&self) -> &'static str;

    /// How the cells of a range are told: that the ends of the range stand in brackets.
    fn range_legend(&self) -> &'static str;

    /// That the counts of a layout are those of an earlier one, and how the revisions stand: a
    /// sentence.
    fn revision_stands(&self, was: Option<u32>, is: Option<u32>) -> String;

    /// The lengths of seams, in mm: a line.
    fn seam_lengths(&self, seams: &[(&str, Length)]) -> String;
}
