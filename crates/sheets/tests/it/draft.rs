//! A third language, begun as a draft: a type of its own that says what it has and leaves the rest
//! to English. Papers need nothing else of it.

use case::question::{Answer, Drawing, Group, Question, QuestionWords, Unused};
use case::text::{EditError, LengthUnit, TextFinding};
use case::*;
use cushion::{
    Class, Compartment, FaultKind, Jump, Length, Mass, Pattern, Pressure, Side, Size, SizeError,
    Words,
};
use sheets::PAPERS;
use words::*;

use crate::papers::Case;

#[derive(Debug)]
struct Draft;

/// Leaves what is listed of a trait to English; what the draft says itself stands after it.
macro_rules! delegated {
    ($of:ident:
        $(fn $name:ident $(<$lifetime:lifetime>)? (&self $(, $value:ident: $type:ty)* $(,)?) -> $said:ty;)+
        $({ $($own:item)+ })?
    ) => {
        impl $of for Draft {
            $(fn $name $(<$lifetime>)? (&self $(, $value: $type)*) -> $said {
                ENGLISH.$name($($value),*)
            })+
            $($($own)+)?
        }
    };
}

delegated! { BasicWords:
    fn side(&self, side: Side) -> &'static str;
    fn site(&self, site: SiteName) -> &'static str;
    fn decimal(&self, number: f64, decimals: usize) -> String;
    fn number(&self, number: f64) -> String;
    fn lower(&self, side: Option<Side>, by: Length) -> String;
    fn a_move(&self, own: &Move) -> String;
    fn outcome(&self, outcome: PredictedOutcome) -> &'static str;
    {
        fn cells(&self, cells: u32) -> String {
            format!("{cells} zellen")
        }
    }
}

delegated! { GoalWords:
    fn goal(&self, want: &Want) -> String;
    fn goal_outcome(&self, outcome: &GoalOutcome) -> String;
    fn shortfall(&self, why: Shortfall) -> String;
    fn count_reason<'a>(&self, reason: &'a CountReason) -> &'a str;
    fn since_recorded(&self, since: &SinceRecorded) -> String;
    fn plan_reason(&self, goals: &[GoalOutcome], wishes: &[&str]) -> Option<String>;
}

delegated! { CautionWords:
    fn caution(&self, caution: &Caution) -> String;
    fn source(&self, source: Source) -> &'static str;
    fn size_misfit(&self, misfit: &SizeMisfit) -> String;
    fn size_margin(&self, margin: &SizeMargin) -> String;
    fn size_to_make(&self, size: &SizeToMake) -> String;
    fn no_size_to_make(&self, why: &NoSizeToMake) -> String;
    fn sizing_rule(&self, rule: &SizingRule) -> String;
    fn height_effect(&self, effect: &HeightEffect) -> String;
    fn why_re_check(&self, why: &WhyReCheck) -> String;
}

delegated! { CheckWords:
    fn alarm(&self, alarm: &Alarm) -> String;
    fn limit(&self, limit: &BrokenLimit) -> String;
    fn verdict(&self, verdict: Verdict, cells_move: bool) -> Option<&'static str>;
    fn look_at(&self, look: LookAt) -> &'static str;
    fn doubt(&self, doubt: &Doubt) -> String;
    fn left_out(&self, check: &Check) -> String;
    fn next_step(&self, step: NextStep) -> String;
    fn mistake(&self, mistake: &Mistake) -> String;
    fn after_checks(&self, checks: &[Check]) -> String;
    fn body_error(&self, error: &BodyError) -> String;
    fn plan_refusal(&self, why: &WhyNoPlan) -> Said;
    fn adjust_refusal(&self, refusal: &AdjustRefusal) -> Said;
}

delegated! { CardWords:
    fn card_finding(&self, found: &CardFinding) -> String;
    fn remedy(&self, remedy: &Remedy) -> String;
    fn remedy_cost(&self, cost: &RemedyCost) -> String;
}

delegated! { ProgramWords:
    fn told(&self, told: &Told<'_>) -> String;
    fn begun(&self, begun: &Begun<'_>) -> String;
    fn done(&self, done: &Done<'_>) -> String;
    fn contour(&self, said: &ContourSaid<'_>) -> String;
    fn contour_number(&self, number: ContourNumber) -> String;
    fn level(&self, level: Level) -> &'static str;
    fn file_kind(&self, kind: FileKind) -> &'static str;
    fn call_fault(&self, fault: &CallFault<'_>) -> Said;
    fn output_fault(&self, fault: &OutputFault<'_>) -> Said;
    fn supplier_fault(&self, fault: &SupplierFault<'_>) -> Said;
    fn file_fault(&self, fault: &FileFault<'_>) -> Said;
    fn program_fault(&self, fault: &ProgramFault<'_>) -> Said;
    fn page_fault(&self, fault: &PageFault<'_>) -> Said;
    fn advice(&self, advice: &Advice<'_>) -> String;
}

delegated! { RecordWords:
    fn standing(&self, standing: Standing<'_>) -> String;
    fn counted_from(&self, from: CountedFrom) -> String;
    fn begins_from(&self, from: CountedFrom) -> String;
    fn check_part(&self, part: CheckPart) -> &'static str;
    fn check_outcome(&self, outcome: CheckOutcome) -> &'static str;
    fn checked(&self, check: &PartsChecked) -> String;
    fn bag(&self, cells: i64) -> String;
    fn bag_after(&self, cells: i64) -> String;
    fn counts(&self, counts: &[(u8, u32)]) -> String;
    fn entries(&self, count: usize) -> String;
    fn entry(&self, entry: &Entry) -> String;
    fn expected(&self, expected: &Expected) -> String;
    fn record_note(&self, note: &RecordNote) -> String;
    fn other_papers(&self, papers: &OtherPapers) -> String;
    fn which_papers_hold(&self, papers: &OtherPapers) -> String;
    fn restored(&self, restored: &Restored) -> String;
    fn restored_from(&self, code: &CardCode) -> String;
    fn restored_by(&self) -> &'static str;
    fn restored_head(&self, code: &CardCode) -> String;
    fn no_card_code(&self, why: NoCardCode) -> String;
    fn is_proposed(&self) -> &'static str;
    fn beside_the_other(&self, other: &OtherCushion, here: (u32, Option<&Expected>)) -> Vec<String>;
    fn sit_at_most(&self, minutes: u32, times: u32) -> String;
}

delegated! { PaperWords:
    fn range_table(&self) -> &'static RangeTableTexts;
    fn order(&self) -> &'static OrderTexts;
    fn review(&self) -> &'static ReviewTexts;
    fn card_of_order(&self, order: &str, card: usize, cards: usize) -> String;
    fn tags_of_order(&self, order: &str, sheet: usize, sheets: usize) -> String;
    fn tag_of_card(&self, card: usize) -> String;
    fn grams_with_range(&self, mass: &Spread<Mass>) -> String;
    fn template(&self) -> &'static TemplateTexts;
    fn layout_with_revision(&self, layout: &str, revision: Option<u32>) -> String;
    fn layout_digest(&self, revision: Option<u32>, digest: &Digest) -> String;
    fn cells_with_range(&self, low: u32, stock: u32, high: u32, jumps: bool) -> String;
    fn template_wall(&self, wall: usize, between: [Option<u8>; 2], seam: &str, ends: Option<[usize; 2]>, length: Length) -> String;
    fn template_wall_number(&self, wall: usize) -> String;
    fn template_junction(&self, junction: usize) -> String;
    fn template_opening(&self, number: u8, length: Length) -> String;
    fn template_allowance(&self, allowance: Length) -> String;
    fn template_crown(&self, extra: f64, number: u8, spans: [Length; 3], is_cut_so: bool) -> String;
    fn template_small_openings(&self, numbers: &[u8]) -> String;
    fn template_joins(&self, page: &str) -> String;
    fn template_piece_shows(&self, piece: &str) -> String;
    fn height_to_measure(&self, height: &Spread<Length>) -> String;
    fn expected_mass(&self, mass: &Spread<Mass>) -> String;
    fn shared(&self) -> &'static SharedTexts;
    fn setup_card(&self) -> &'static SetupCardTexts;
    fn fill_card(&self) -> &'static FillCardTexts;
    fn sewn_in_tag(&self) -> &'static TagTexts;
    fn take_home(&self) -> &'static TakeHomeTexts;
    fn wash_day(&self) -> &'static WashDayTexts;
    fn height_gauge(&self) -> &'static HeightGaugeTexts;
    fn letter(&self) -> &'static LetterTexts;
    fn history(&self) -> &'static HistoryTexts;
    fn measuring_form(&self) -> &'static MeasuringFormTexts;
    fn sections(&self) -> &'static SectionTexts;
    fn survey(&self) -> &'static SurveyTexts;
    fn size(&self, size: Size) -> String;
    fn all_cells(&self, cells: u32, spares: u32) -> String;
    fn cells_in_drawing(&self, count: u32) -> String;
    fn cells_within(&self, count: u32, tolerance: u32) -> String;
    fn change(&self, cells: i64) -> String;
    fn drawn_by(&self, plugin: &str, layout: &Digest) -> String;
    fn numbers_from_above(&self, compartments: usize) -> String;
    fn faults_from_above(&self, rings: usize) -> String;
    fn serial(&self, serial: &str) -> String;
    fn setup_card_state(&self, standing: Standing<'_>) -> String;
    fn setup_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String;
    fn reason_of_change(&self, compartments: &[u8], cells: i64, reason: &str) -> String;
    fn posture(&self, posture: &Posture) -> Vec<String>;
    fn skin(&self, skin: &Skin) -> Vec<String>;
    fn function(&self, function: &Function) -> Vec<String>;
    fn rating(&self, most: Option<Mass>) -> String;
    fn rating_on_tag(&self, most: Option<Mass>) -> String;
    fn left_under_bone(&self, left: &Spread<Length>) -> String;
    fn lower_in_short(&self, side: Option<Side>, by: Length) -> String;
    fn fitting_found(&self, check: &FittingCheck) -> String;
    fn entry_found(&self, entry: &Entry) -> String;
    fn checks_found(&self, adjustment: &Adjustment, on: CheckedOn) -> String;
    fn place(&self, place: Place) -> String;
    fn moves_from(&self, from: CountedFrom) -> String;
    fn counts_from_above(&self, compartments: usize) -> String;
    fn fill_card_state(&self, standing: Standing<'_>) -> String;
    fn fill_card_origin(&self, plan: &RecordedPlan, printed: Date) -> String;
    fn pack_spares(&self, spares: u32) -> String;
    fn pack_spares_of_stock(&self, spares: u32) -> String;
    fn counts_from_below(&self, compartments: usize) -> String;
    fn sheet_in(&self, own_name: &str) -> String;
    fn height_on_gauge(&self, height: Length) -> String;
    fn whose_gauge(&self, code: &ClientCode, mark: &PlanMark) -> String;
    fn asked_for(&self, pattern: &Pattern, cells: u32, spares: u32) -> String;
    fn measured(&self, measures: &Measures, weighing: Option<&Weighing>, chair: &Chair) -> Vec<[String; 2]>;
    fn goal_in_letter(&self, goal: &Goal, outcome: Option<&GoalOutcome>) -> String;
    fn code(&self, code: &ClientCode) -> String;
    fn call(&self, contact: &Contact) -> String;
    fn sore_is_worse(&self, site: SiteName) -> String;
    fn sit_meanwhile(&self, what: &str) -> String;
    fn all_pockets(&self, cells: u32) -> String;
    fn keep_the_bag(&self, spares: u32) -> String;
    fn next_look(&self, on: Date) -> String;
    fn take_home_foot(&self, page: (usize, usize), plan: Date, printed: Date) -> String;
    fn plan_in_short(&self, mark: &PlanMark) -> String;
    fn code_says(&self, text: &str) -> String;
    fn page_of(&self, page: usize, pages: usize) -> String;
    fn look_again(&self, review: Review) -> Option<String>;
    fn group_heading(&self, group: Group) -> &'static str;
    fn group_comment_on_form(&self, group: Group) -> &'static str;
    fn label_on_form(&self, question: Question) -> String;
    fn comment_on_form(&self, question: Question) -> &'static str;
    fn word_on_form(&self, question: Question, word: &'static str) -> String;
    fn label_with_unit(&self, label: &str, unit: &str) -> String;
    fn measures_drawn(&self, measures: &[&str]) -> String;
    fn form_foot(&self, page: usize, pages: usize, program: &str, printed: Date) -> String;
    fn section_along(&self, side: Side) -> String;
    fn left_under(&self, site: SiteName, left: &Spread<Length>) -> String;
    fn section_shows(&self, title: &str, sites: &[(SiteName, Spread<Length>)]) -> String;
    fn length_axis(&self, of: &str) -> (String, LengthUnit);
    fn survey_of(&self, layout: &str) -> String;
    fn spread_of_values(&self, low: f64, middle: f64, high: f64) -> String;
    fn values_between(&self, low: &str, high: &str) -> String;
    fn histogram_shows(&self, title: &str, steps: &[(&str, u32)]) -> String;
    {
        fn take_home_state(&self, _: Standing<'_>) -> String {
            "ENTWURF. NICHT AUSHAENDIGEN.".to_owned()
        }
    }
}

delegated! { ReportWords:
    fn comparison(&self) -> &'static ComparisonTexts;
    fn compared_measure(&self, measure: ComparedMeasure) -> &'static str;
    fn compared_unit(&self, measure: ComparedMeasure) -> &'static str;
    fn compared_verdict(&self, verdict: ComparedVerdict) -> &'static str;
    fn compared_sizes(&self, sizes: &ComparedSizes) -> String;
    fn compared_fill(&self, sizes: [Size; 2], pressure: Pressure, of: Option<usize>) -> String;
    fn parts(&self) -> &'static PartsTexts;
    fn review_finding(&self, finding: &ReviewFinding) -> Said;
    fn order_in_short(&self, order: &str, cushions: usize, cells: u32, spares: u32) -> String;
    fn parts_of(&self, title: &str, size: Size, quantity: u32, allowance: Length) -> String;
    fn finished_mass(&self, all: &Spread<Mass>, cover: &Spread<Mass>, cells: &Spread<Mass>) -> String;
    fn layout_known_by(&self, layout: &str, revision: Option<u32>, digest: &str) -> String;
    fn range_of(&self, title: &str, sizes: usize, cell: &str) -> String;
    fn jump(&self, jump: &Jump, from: Size, to: Size) -> String;
    fn no_jumps(&self) -> &'static str;
    fn range_legend(&self) -> &'static str;
    fn revision_stands(&self, was: Option<u32>, is: Option<u32>) -> String;
    fn table(&self) -> &'static TableTexts;
    fn lines(&self) -> &'static FixedLines;
    fn whence(&self, recorded_on: Option<Date>) -> String;
    fn expected_seat(&self, seat: &PredictedSeat) -> String;
    fn expected_after_moves(&self, seat: &PredictedSeat) -> String;
    fn ended(&self, prediction: &Prediction) -> String;
    fn seat(&self, seat: &PredictedSeat) -> String;
    fn costs(&self, costs: &Costs) -> Vec<String>;
    fn costs_on_paper(&self, costs: &Costs) -> Vec<String>;
    fn ranked_goal(&self, place: usize, outcome: &GoalOutcome) -> String;
    fn spare_cells(&self, cells: u32) -> String;
    fn not_safe_yet(&self, limit: &BrokenLimit) -> String;
    fn client_off(&self, alarms: &[Alarm]) -> String;
    fn not_safe(&self, limits: &[BrokenLimit]) -> String;
    fn goals_not_reached(&self, goals: &[GoalOutcome]) -> String;
    fn at_the_seat_bones(&self, by: Length, ends: [Length; 2]) -> String;
    fn nothing_planned(&self) -> &'static str;
    fn best_size(&self, best: Option<Size>) -> String;
    fn other_size_named(&self, named: Size, best: Size) -> String;
    fn size_leaves(&self, margins: &[SizeMargin]) -> String;
    fn sizes_suit_too(&self, sizes: &[Size]) -> String;
    fn layout_with_size(&self, layout: &str, best: Size, margins: &[SizeMargin]) -> String;
    fn layout_without_size(&self, layout: &str, nearest: Option<&(Size, Vec<SizeMisfit>)>) -> String;
    fn layout_not_seen(&self, layout: &str, why: &str) -> String;
    fn can_be_drawn_so(&self, layouts: &[&str]) -> String;
    fn size_left(&self, size: Size, misfits: &[SizeMisfit]) -> String;
    fn batch(&self, cells: u32, grams_of_one: f64) -> String;
    fn pattern(&self, title: &str, size: Size, class: Class, walls: Length, rating: Option<Mass>) -> String;
    fn survey_summary(&self, summary: &SurveySummary) -> Vec<String>;
    fn code_group(&self, code: &str, describes: &str, wide: bool) -> String;
    fn seam_lengths(&self, seams: &[(&str, Length)]) -> String;
}

delegated! { QuestionWords:
    fn label(&self, question: Question) -> &'static str;
    fn comment(&self, question: Question) -> &'static str;
    fn group_comment(&self, group: Group) -> &'static str;
    fn unused(&self, why: Unused) -> &'static str;
    fn file_title(&self, kind: FileKind) -> &'static str;
    fn client_head(&self) -> &'static str;
    fn record_head(&self) -> &'static str;
    fn or(&self) -> &'static str;
}

delegated! { FileWords:
    fn about_text(&self, finding: &TextFinding) -> Said;
    fn trouble(&self, trouble: &Trouble) -> Said;
    fn no_check(&self, error: &CheckError) -> Said;
    fn about_edit(&self, error: &EditError) -> Said;
    fn no_layout(&self, error: &LayoutError) -> Said;
    fn plugin_fault(&self, kind: &PluginFaultKind) -> Said;
    fn layout_fault(&self, kind: &FaultKind) -> Said;
    fn no_size(&self, error: SizeError) -> String;
    fn place_of<'a>(&self, words: &'a Words) -> &'a str;
    fn text_of_layout<'a>(&self, text: &'a str) -> &'a str;
    fn compartment(&self, compartment: &Compartment) -> String;
    fn body_measure(&self, measure: BodyMeasure) -> &'static str;
    fn answer(&self, answer: Answer) -> &'static str;
    fn unused_answers(&self, answers: &[(Question, Unused)]) -> Vec<String>;
    fn count(&self, errors: usize, remarks: usize) -> String;
}

delegated! { PageWords:
    fn page(&self) -> &'static page::PageTexts;
    fn step_of(&self, step: &str, at: usize, of: usize) -> String;
    fn body_weight(&self, weight: Mass, in_pounds: bool) -> String;
    fn state_in_short(&self, standing: Standing<'_>) -> String;
    fn review_in_short(&self, standing: Standing<'_>) -> String;
    fn day(&self, on: Date) -> String;
    fn changed_meanwhile(&self, now: Option<&str>) -> String;
    fn need_another_look(&self, count: usize) -> String;
    fn still_missing(&self, count: usize) -> String;
    fn answer_too(&self, label: &str) -> String;
    fn goes_only_with(&self, label: &str, answers: &str) -> String;
    fn entry_of_list(&self, group: &str, at: usize) -> String;
    fn obliquity_means(&self, lower: Side, ends: [Length; 2]) -> String;
    fn depth_goes_by(&self, side: Side) -> String;
    fn compartment_said(&self, number: u8, words: &str, cells: u32) -> String;
    fn step_said(&self, more: bool, number: u8, words: &str) -> String;
    fn change_from_stock(&self, cells: i64) -> String;
    fn all_cells_said(&self, cells: u32, stock: u32) -> String;
    fn range(&self, low: &str, high: &str) -> String;
    fn plain_length(&self, length: Length) -> String;
    fn lean(&self, roll_deg: f64) -> String;
    fn slope(&self, pitch_deg: f64) -> String;
    fn site_pressure(&self, pressure: Pressure) -> String;
    fn site_change(&self, change: &SiteChange) -> String;
    fn shares(&self, left: f64, right: f64) -> String;
    fn compartment_of(&self, at: usize, of: usize) -> String;
    fn put_in(&self, cells: u32, number: u8) -> String;
    fn other_than_planned(&self, number: u8, planned: u32, put_in: u32) -> String;
    fn move_of(&self, at: usize, of: usize) -> String;
    fn expected_and_found(&self, side: Side, expected: Length, found: Option<Length>) -> String;
    fn expected_lower(&self, lower: Option<Side>, by: Length) -> String;
    fn too_little_felt(&self, side: Side, least: Length) -> String;
    fn check_lacks(&self, parts: &[&str]) -> String;
    fn check_said(&self, check: &Check) -> String;
    fn to_put_back(&self, number: u8, cells: i64) -> String;
    fn line_of_file(&self, line: usize) -> String;
    fn page_of_paper(&self, paper: &str, page: usize, pages: usize) -> String;
    fn return_to(&self, entry: usize) -> String;
    fn withdraw(&self, entry: usize) -> String;
    fn record_has_grown(&self, entries: usize) -> String;
}

delegated! { PictureWords:
    fn spare_bag(&self) -> &'static str;
    fn move_shows(&self, from: Place, to: Place, cells: u32) -> String;
    fn least_left(&self, least: Length) -> String;
    fn left_in_short(&self, left: &Spread<Length>) -> String;
    fn section_picture_shows(&self, title: &str, sites: &[(SiteName, Spread<Length>)], least: Length) -> String;
    fn measure_name(&self, drawing: Drawing) -> &'static str;
    fn how_it_is_measured(&self, drawing: Drawing) -> &'static str;
    fn body_shows(&self) -> &'static str;
    fn lower_by(&self, by: Length) -> String;
    fn pelvis_shows(&self, lower: Option<Side>, by: Option<Length>) -> String;
}

impl Language for Draft {
    fn tag(&self) -> &'static str {
        "de"
    }

    fn own_name(&self) -> &'static str {
        "Deutsch"
    }

    fn unreviewed(&self) -> Option<&'static str> {
        Some("Entwurf / Translation not reviewed")
    }

    fn with_lengths_in(&self, _: LengthUnit) -> &'static dyn Language {
        &Draft
    }
}

#[test]
fn a_draft_of_a_third_language_makes_every_paper_and_needs_nothing_else() {
    let case = Case { language: &Draft, ..Case::of("row-six", "440x400") };
    for paper in PAPERS {
        for document in crate::sweep::all(&case, paper) {
            assert_eq!(document.language, "de");
            for page in &document.pages {
                let said: Vec<String> = page.texts().map(|run| run.shaped.text()).collect();
                let line = "Entwurf / Translation not reviewed";
                assert!(said.iter().any(|own| own == line), "{}: {said:?}", document.title);
            }
        }
    }
    let sheet = sheets::take_home(&case.papers(), PAPERS[0]).unwrap();
    let said: Vec<String> = sheet.pages[0].texts().map(|run| run.shaped.text()).collect();
    assert!(said.iter().any(|own| own.starts_with("ENTWURF")), "{said:?}");
    assert!(said.iter().any(|own| own == "Your cushion, each day"), "{said:?}");
}
