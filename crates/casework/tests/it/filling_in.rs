//! Filling in a client's file answer by answer: what is right is kept at once, nothing is lost, and
//! what somebody else wrote meanwhile is never overwritten.

use case::question::{Group, Question};
use case::text::LengthUnit;
use case::{ClientCode, Date};
use casework::{
    Answered, Blank, Draft, NotWritten, PreparedCushions, Stop, Surroundings, Typed, TypedIn,
    TypedLength, plan_stands, roster,
};
use files::BuiltIn;
use testkit::MemoryShelf;

const DAY: Date = Date::constant(2026, 3, 2);
const MM: TypedIn = TypedIn { lengths: TypedLength::Millimetres, pounds: false };

fn begun(shelf: &MemoryShelf) -> Draft {
    let code = ClientCode::new("T-1").unwrap();
    Draft::begin(shelf, &code, LengthUnit::Millimetres, words::ENGLISH).unwrap()
}

/// Answers as somebody types them who was shown what the file has.
fn typed(draft: &Draft, answers: &[(&str, &str)]) -> Vec<Typed> {
    let one = |(key, words): &(&str, &str)| {
        let blank = Blank::from_key(key).unwrap_or_else(|| panic!("{key} is no blank"));
        let seen = Some(draft.answer(&blank).unwrap_or_default());
        Typed { blank, words: (*words).to_owned(), seen }
    };
    answers.iter().map(one).collect()
}

/// The file after answers that are all written.
fn after(draft: &Draft, answers: &[(&str, &str)]) -> Draft {
    let Answered { draft, refused, .. } = draft.answered(&typed(draft, answers), MM);
    assert_eq!(refused, []);
    draft
}

const WHOLE: [(&str, &str); 11] = [
    ("measures.taken_on", "2026-02-10"),
    ("measures.taken_by", "OT"),
    ("measures.hip_width", "40 cm"),
    ("measures.thigh_depth.left", "480"),
    ("measures.thigh_depth.right", "480"),
    ("weight.kg", "150 lb"),
    ("weight.weighed_on", "2026-02-10"),
    ("cushion.layout", "row-six"),
    ("cushion.size", "440x400"),
    ("cushion.spare_cells", "20"),
    ("skin.sensation", "impaired"),
];

#[test]
fn a_new_client_is_right_once_everything_is_answered() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    assert!(draft.client().is_none(), "nothing was measured");
    assert!(!draft.missing().is_empty());
    let whole = after(&draft, &WHOLE);
    draft.keep(&shelf, &whole).unwrap();
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let client = surroundings.client("T-1.toml").unwrap().value;
    assert_eq!(client.measures.hip_width.map(|own| own.to_mm().round()), Some(400.0));
    // 150 lb by the definition of the pound.
    let weight = client.weighing.unwrap().weight.to_kg();
    assert!((weight - 68.038_855_5).abs() < 1e-6, "{weight}");
    assert!(Draft::begin(&shelf, &client.code, LengthUnit::Millimetres, words::ENGLISH).is_err());
}

#[test]
fn what_goes_only_with_another_answer_is_named_where_it_is_left_out() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    let lower = |is| {
        let all = [
            ("posture.obliquity.lower", "left"),
            ("posture.obliquity.by", "12"),
            ("posture.obliquity.at", "seat bones"),
            ("posture.obliquity.is", is),
            ("posture.obliquity.reducible", "5"),
        ];
        draft.answered(&typed(&draft, &all), MM)
    };
    let reducible = Blank::from_key("posture.obliquity.reducible").unwrap();
    let fixed = lower("fixed");
    assert_eq!((fixed.left_out, fixed.draft.answer(&reducible)), (vec![reducible], None));
    let partly = lower("partly");
    assert_eq!((partly.left_out, partly.draft.answer(&reducible)), (vec![], Some("5".to_owned())));
    // A blank that nobody filled in is nothing that could be left out.
    assert_eq!(
        draft.answered(&typed(&draft, &[("posture.obliquity.reducible", "")]), MM).left_out,
        []
    );
}

#[test]
fn a_blank_that_was_left_blank_takes_nobodys_answer_away() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    let untouched = typed(&draft, &[("measures.trochanter_width", "")]);
    let theirs = after(&draft, &[("measures.trochanter_width", "371")]);
    let Answered { draft: next, refused, .. } = theirs.answered(&untouched, MM);
    let width = Blank::from_key("measures.trochanter_width").unwrap();
    assert_eq!((refused, next.answer(&width)), (vec![], Some("371".to_owned())));
    // Whoever saw an answer and takes it away is told that another stands there.
    let emptied = typed(
        &after(&draft, &[("measures.trochanter_width", "365")]),
        &[("measures.trochanter_width", "")],
    );
    let Answered { draft: next, refused, .. } = theirs.answered(&emptied, MM);
    assert_eq!((refused.len(), next.answer(&width)), (1, Some("371".to_owned())));
}

#[test]
fn what_is_wrong_is_told_and_the_rest_is_written() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    let both = [("measures.hip_width", "4o2"), ("measures.trochanter_width", "370")];
    let Answered { draft: next, refused, .. } = draft.answered(&typed(&draft, &both), MM);
    let keys: Vec<String> = refused.iter().map(|own| own.typed.blank.key()).collect();
    assert_eq!(keys, ["measures.hip_width"]);
    assert_eq!(refused[0].typed.words, "4o2");
    assert_eq!(next.answer(&Blank::of(Question::TrochanterWidth)).as_deref(), Some("370"));
    assert_eq!(next.answer(&Blank::of(Question::HipWidth)), None);
    // 37 mm is no hip: the file is refused it with the reason that a check of the file gives.
    let small = draft.answered(&typed(&draft, &[("measures.hip_width", "37")]), MM);
    assert!(matches!(small.refused[0].why, NotWritten::Wrong(_)), "{:?}", small.refused);
}

#[test]
fn an_answer_is_taken_away_and_a_group_with_its_last() {
    let shelf = MemoryShelf::of([]);
    let draft = after(&begun(&shelf), &WHOLE);
    let oblique = after(
        &draft,
        &[
            ("posture.obliquity.lower", "left"),
            ("posture.obliquity.by", "12"),
            ("posture.obliquity.at", "seat bones"),
            ("posture.obliquity.is", "partly"),
            ("posture.obliquity.reducible", "5"),
        ],
    );
    assert!(oblique.client().unwrap().posture.obliquity.is_some());
    // What goes only with another answer goes away with it.
    let fixed =
        after(&oblique, &[("posture.obliquity.is", "fixed"), ("posture.obliquity.reducible", "5")]);
    assert!(fixed.client().is_some());
    let one_side = after(&draft, &[("skin.sensation", "absent"), ("skin.sensation_side", "left")]);
    assert_eq!(one_side.client().unwrap().skin.sensation_side, Some(cushion::Side::Left));
    let feels = after(&one_side, &[("skin.sensation", "intact"), ("skin.sensation_side", "left")]);
    assert_eq!(feels.client().unwrap().skin.sensation_side, None);
    let none = [
        ("posture.obliquity.lower", ""),
        ("posture.obliquity.by", ""),
        ("posture.obliquity.at", ""),
        ("posture.obliquity.is", ""),
        ("posture.obliquity.reducible", ""),
    ];
    let level = after(&fixed, &none);
    assert_eq!(level.client().unwrap().posture.obliquity, None);
}

#[test]
fn nobodys_answer_is_overwritten_unseen() {
    let shelf = MemoryShelf::of([]);
    let draft = after(&begun(&shelf), &WHOLE);
    let mine = typed(&draft, &[("measures.hip_width", "402")]);
    let theirs = after(&draft, &[("measures.hip_width", "410"), ("skin.sensation", "absent")]);
    let Answered { draft: next, refused, .. } = theirs.answered(&mine, MM);
    assert_eq!(refused[0].why, NotWritten::Meanwhile(Some("410".to_owned())));
    assert_eq!(next.answer(&Blank::of(Question::HipWidth)).as_deref(), Some("410"));
    // What was shown and not touched takes nothing back.
    let untouched = typed(&draft, &[("skin.sensation", "impaired"), ("measures.hip_width", "400")]);
    let Answered { draft: next, refused, .. } = theirs.answered(&untouched, MM);
    assert_eq!(refused, []);
    assert_eq!(next.answer(&Blank::of(Question::Sensation)).as_deref(), Some("absent"));
    // The file itself is compared too.
    draft.keep(&shelf, &theirs).unwrap_err();
}

#[test]
fn the_same_answer_typed_in_another_unit_is_nobody_elses() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    let mine = typed(&draft, &[("measures.hip_width", "40 cm"), ("weight.weighed_on", "")]);
    let kept = after(&draft, &[("measures.hip_width", "40 cm")]);
    // The box was kept as it was left, and the whole form is sent with what it was shown with.
    let Answered { draft: again, refused, .. } = kept.answered(&mine, MM);
    assert_eq!(refused, []);
    assert_eq!(again.answer(&Blank::of(Question::HipWidth)).as_deref(), Some("400"));
}

#[test]
fn entries_of_lists_come_go_and_change_places() {
    let shelf = MemoryShelf::of([]);
    let draft = after(&begun(&shelf), &WHOLE);
    let goals = after(
        &draft,
        &[
            ("goal.1.want", "off-load"),
            ("goal.1.site", "left-seat-bone"),
            ("goal.1.percent", "10 %"),
            ("goal.2.want", "near stock"),
        ],
    );
    assert_eq!(goals.entries(Group::Goal), 2);
    let swapped = goals.with_entry_at(Group::Goal, 2, 1).unwrap();
    let first = |draft: &Draft| draft.answer(&Blank::in_entry(Question::GoalWant, 1));
    assert_eq!(first(&swapped).as_deref(), Some("near stock"));
    let one = swapped.without_entry(Group::Goal, 1).unwrap();
    assert_eq!((one.entries(Group::Goal), first(&one).as_deref()), (1, Some("off-load")));
    assert!(one.without_entry(Group::Goal, 2).is_err());
}

#[test]
fn the_unlikely_is_asked_and_kept() {
    let asked = |depth: &str| {
        let shelf = MemoryShelf::of([]);
        let both = [("measures.thigh_depth.left", depth), ("measures.thigh_depth.right", depth)];
        let draft = after(&begun(&shelf), &both);
        let blank = Blank::from_key("measures.thigh_depth.left").unwrap();
        assert_eq!(draft.answer(&blank).as_deref(), Some(depth));
        draft.about(&blank, &draft.remarks(DAY)).len()
    };
    assert_eq!((asked("700"), asked("480")), (1, 0));
}

#[test]
fn the_roster_has_every_clients_file_right_or_not() {
    let shelf =
        MemoryShelf::of([("notes.toml", "a = 1\n"), ("x.toml", "format = 1\nkind = \"layout\"\n")]);
    let draft = begun(&shelf);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let listed = roster(&PreparedCushions::default(), surroundings, DAY).unwrap();
    assert_eq!(listed.len(), 1);
    assert_eq!((listed[0].draft.code().as_str(), listed[0].standing(DAY)), ("T-1", None));
    draft.keep(&shelf, &after(&draft, &WHOLE)).unwrap();
    let listed = roster(&PreparedCushions::default(), surroundings, DAY).unwrap();
    assert!(matches!(listed[0].standing(DAY).unwrap().state, case::State::ToPlan));
}

#[test]
fn own_counts_are_judged_as_a_plans_are() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    draft.keep(&shelf, &after(&draft, &WHOLE)).unwrap();
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let case = casework::OpenCase::open(surroundings, "T-1.toml").unwrap();
    let plan = case.plan(DAY, Stop::never()).unwrap();
    let counts: Vec<u32> = plan.counts.iter().map(|own| own.planned).collect();
    let judged = case.judged(&counts, DAY, Stop::never()).unwrap();
    assert_eq!((&judged.not_safe, &judged.goals), (&plan.not_safe, &plan.goals));
    let under = |own: &case::Plan| {
        own.prediction.as_ref().and_then(|it| it.seated.clone()).unwrap().clearance
    };
    // Both are searched to the same residual, from other starts: far below what hands tell.
    let off = under(&judged).left.central.to_mm() - under(&plan).left.central.to_mm();
    assert!(off.abs() < 0.1, "{off} mm");
    // Nearly empty under the seat bones: never to be taken.
    let few: Vec<u32> = counts.iter().map(|count| count / 3).collect();
    let unsafe_counts = case.judged(&few, DAY, Stop::never()).unwrap();
    assert!(!unsafe_counts.not_safe.is_empty());
    assert!(!plan_stands(&unsafe_counts, &case.client.value, true));
    assert!(case.judged(&counts[1..], DAY, Stop::never()).is_err());
}

/// After checks there is one body: counts are planned and judged for the client as hands found them to
/// sit, as predictions are.
#[test]
fn after_checks_counts_are_judged_on_the_body_that_was_found() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    draft.keep(&shelf, &after(&draft, &WHOLE)).unwrap();
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let open = || casework::OpenCase::open(surroundings, "T-1.toml").unwrap();
    let recorder =
        casework::Recorder { by: "OT", because: None, on: DAY, language: words::ENGLISH };
    let before = open();
    let plan = before.plan(DAY, Stop::never()).unwrap();
    assert!(before.record_plan(&shelf, &plan, false, &recorder).unwrap());
    let checks = ["left=28mm", "right=44mm"].map(|own| case::Check::read("under", own).unwrap());
    let case = open();
    let now = case.counts_now(DAY, Stop::never()).unwrap();
    let adjusted = case.adjust(&now, &checks, DAY, Stop::never()).unwrap();
    assert!(case.record_adjustment(&shelf, &checks, &adjusted, false, &recorder).unwrap());
    let case = open();
    let left = |own: &case::Prediction| own.seated.as_ref().unwrap().clearance.left.central.to_mm();
    let counts = &now.counts;
    let judged = case.judged(counts, DAY, Stop::never()).unwrap().prediction.unwrap();
    let (predicted, _) = case.predict(counts, Stop::never()).unwrap();
    // Two searches for one balance, to the same residual: far below what hands tell.
    let off = left(&judged) - left(&predicted);
    assert!(off.abs() < 0.1, "{off} mm");
    let assumed = left(plan.prediction.as_ref().unwrap());
    assert!((left(&judged) - assumed).abs() > 1.0, "nothing was learnt from {assumed} mm");
    let again = case.plan(DAY, Stop::never()).unwrap();
    let counts: Vec<u32> = again.counts.iter().map(|own| own.planned).collect();
    let (predicted, _) = case.predict(&counts, Stop::never()).unwrap();
    let off = left(again.prediction.as_ref().unwrap()) - left(&predicted);
    assert!(off.abs() < 0.1, "{off} mm");
}

#[test]
fn what_only_an_editor_mends_is_told_from_what_is_missing() {
    let shelf = MemoryShelf::of([]);
    let draft = begun(&shelf);
    assert!(draft.wrong(|_| false).is_none() && !draft.missing().is_empty());
    let whole = after(&draft, &WHOLE);
    draft.keep(&shelf, &whole).unwrap();
    assert!(whole.wrong(|_| false).is_none());
    let text = String::from_utf8(casework::Shelf::read(&shelf, "T-1.toml").unwrap()).unwrap();
    for (line, with) in
        [("hip_width = 400", "hip_width = = 400"), ("hip_width = 400", "hip_widht = 400")]
    {
        assert!(text.contains(line));
        let text = text.replacen(line, with, 1);
        let shelf = MemoryShelf::of([("T-1.toml", text.as_str())]);
        let draft = Draft::open(Surroundings { shelf: &shelf, layouts: &BuiltIn }, "T-1.toml");
        let wrong = draft.unwrap().wrong(|own| own == Question::HipWidth).unwrap();
        let lines: Vec<_> = wrong.remarks.iter().map(|own| wrong.line_of(own).1).collect();
        assert!(lines.iter().all(|own| own.contains(with)), "{lines:?}");
        assert!(!lines.is_empty());
    }
    // What stands in a box is mended there.
    let text = text.replacen("hip_width = 400", "hip_width = 4", 1);
    let shelf = MemoryShelf::of([("T-1.toml", text.as_str())]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let draft = Draft::open(surroundings, "T-1.toml").unwrap();
    assert!(draft.wrong(|own| own == Question::HipWidth).is_none());
    assert!(draft.wrong(|own| own == Question::ThighDepth).is_some());
}
