//! When papers may call a plan checked, and what they say of cells that moved.

use case::{
    Adjustment, Check, CountedFrom, Entry, PartsChecked, RecordedPlan, Recount, SkinSeen,
    UnderAnswer, Weighed, Withdrawn, day_after,
};
use cushion::{Length, Side};
use sheets::{ClientPapers, Document, Paper, fill_order, setup_card, take_home};

use crate::papers::{Case, DAY, checked, texts};

fn words(document: &Document) -> String {
    document.pages.iter().flat_map(texts).collect::<Vec<_>>().join(" ")
}

/// All three papers that tell how the fitting stands.
fn all(papers: &ClientPapers<'_>) -> [String; 3] {
    let setup = setup_card(papers, Paper::A4).unwrap();
    let fill = fill_order(papers, Paper::A4).unwrap();
    [words(&take_home(papers, Paper::A4).unwrap()), words(&setup), words(&fill)]
}

#[track_caller]
fn check_unfit(papers: &ClientPapers<'_>, sheet: &str, card: &str) {
    let [take_home, setup, fill] = all(papers);
    assert!(take_home.contains(sheet), "{sheet} is not in: {take_home}");
    assert!(setup.contains(card), "{card} is not in: {setup}");
    for said in [&take_home, &setup, &fill] {
        assert!(!said.contains("Checked on"), "{said}");
    }
    assert!(take_home.contains("An estimate until checked."), "{take_home}");
}

#[track_caller]
fn check_fit(papers: &ClientPapers<'_>) {
    for said in all(papers) {
        assert!(said.contains("Checked on") && !said.to_uppercase().contains("ESTIMATE"), "{said}");
    }
}

fn recount(case: &Case, more_in_first: u32) -> Entry {
    let counts = case.plan.counts.iter().enumerate();
    let counts =
        counts.map(|(at, own)| (own.number, own.planned + if at == 0 { more_in_first } else { 0 }));
    Entry::Recount(Recount { on: DAY, by: "carer".into(), counts: counts.collect(), spare: None })
}

const NOT_FITTED: &str = "NOT FITTED YET. DO NOT HAND OVER.";
const ESTIMATE: &str = "ESTIMATE until checked";

#[test]
fn only_a_check_that_says_it_passed_makes_a_fitting() {
    let case = || Case::of("row-six", "440x400");
    check_fit(&case().then(checked(Some(true))).papers());
    let failed = "IT DOES NOT FIT. DO NOT HAND OVER.";
    for (passed, sheet, card) in
        [(None, NOT_FITTED, ESTIMATE), (Some(false), failed, "FAILED: check of 2026-03-04")]
    {
        check_unfit(&case().then(checked(passed)).papers(), sheet, card);
        // A later check that did not pass undoes one that did.
        let undone = case().fitted().then(checked(passed));
        check_unfit(&undone.papers(), sheet, card);
    }
    check_fit(&case().then(checked(Some(false))).fitted().papers());
}

#[test]
fn a_check_lapses_when_the_counts_change_after_it() {
    let case = Case::of("row-six", "440x400").fitted();
    let same = recount(&case, 0);
    let miscounted = recount(&case, 1);
    let other = recount(&case, 2);
    // One cell is what hands miscount by.
    check_fit(&Case::of("row-six", "440x400").fitted().then(miscounted).papers());
    check_fit(&Case::of("row-six", "440x400").fitted().then(same).papers());
    let lapsed = Case::of("row-six", "440x400").fitted().then(other.clone());
    check_unfit(
        &lapsed.papers(),
        "CELLS HAVE CHANGED. FIT IT AGAIN.",
        "LAPSED: recount of 2026-03-04",
    );
    // What was counted before the check, the check has seen.
    let seen = Case::of("row-six", "440x400").then(other).fitted();
    let counted = seen.client.counts_on_paper().expect("there is a plan");
    assert_eq!(counted.counts[0].planned, case.plan.counts[0].planned + 2);
    check_fit(&ClientPapers { plan: &counted, ..seen.papers() });
    let moved = Adjustment {
        on: DAY,
        by: "OT".into(),
        checks: vec![Check::read_whole("top left=tight").unwrap()],
        moves: Vec::new(),
        why: None,
    };
    let adjusted = Case::of("row-six", "440x400").fitted().then(Entry::Adjustment(moved));
    check_unfit(&adjusted.papers(), NOT_FITTED, ESTIMATE);
    let plan = Entry::Plan(case.plan.clone());
    check_unfit(&Case::of("row-six", "440x400").fitted().then(plan).papers(), NOT_FITTED, ESTIMATE);
}

#[test]
fn a_check_lapses_when_the_review_is_past() {
    let mut case = Case::of("row-six", "440x400").fitted();
    case.client.next_review = Some(DAY);
    check_fit(&case.papers());
    let late = ClientPapers { date: day_after(DAY, 1), ..case.papers() };
    check_unfit(
        &late,
        "OVERDUE SINCE 4\u{a0}MARCH\u{a0}2026.",
        "OVERDUE: review was due 2026-03-04",
    );
}

#[test]
fn a_check_lapses_when_a_new_weight_breaks_a_limit() {
    let weighed = |kg| {
        Entry::Weighed(Weighed { on: DAY, by: "clinic".into(), weight: cushion::Mass::from_kg(kg) })
    };
    let case = Case::of("row-six", "440x400").then(weighed(60.0)).fitted();
    assert_eq!(case.client.weight_since_check(), None);
    let same = Case::of("row-six", "440x400").then(weighed(60.0)).fitted().then(weighed(60.0));
    assert_eq!(same.client.weight_since_check(), None);
    let heavier = case.then(weighed(90.0));
    let now = heavier.client.weight_since_check().expect("it is another weight");
    assert_eq!(now.weight.to_kg(), 90.0);
    check_fit(&heavier.papers());
    let breaks = ClientPapers {
        beside: case::Beside { weight_breaks_limit: true, ..<_>::default() },
        ..heavier.papers()
    };
    check_unfit(&breaks, "WEIGHT HAS CHANGED. FIT IT AGAIN.", "LAPSED: weight of 2026-03-04");
}

#[test]
fn moves_go_out_from_what_was_recorded_before_the_plan() {
    let case = Case::of("row-six", "440x400");
    let before = |case: &Case| case.client.before_latest_plan().expect("there is a plan");
    let stock: Vec<u32> = case.plan.counts.iter().map(|own| own.stock).collect();
    let planned: Vec<u32> = case.plan.counts.iter().map(|own| own.planned).collect();
    let first = before(&case);
    assert_eq!((first.from, &first.counts), (CountedFrom::Stock, &stock));
    let next = RecordedPlan { on: day_after(DAY, 9), ..case.plan.clone() };
    let planned_again = Case::of("row-six", "440x400").then(Entry::Plan(next.clone()));
    let again = before(&planned_again);
    assert_eq!((again.from, &again.counts), (CountedFrom::Plan(DAY), &planned));
    // Only the first compartment was counted; the others are as planned.
    let one = Recount {
        on: DAY,
        by: "carer".into(),
        counts: vec![(case.plan.counts[0].number, 5)],
        spare: None,
    };
    let counted =
        Case::of("row-six", "440x400").then(Entry::Recount(one)).then(Entry::Plan(next.clone()));
    let counted = before(&counted);
    assert_eq!(counted.from, CountedFrom::Recount(DAY));
    assert_eq!((counted.counts[0], &counted.counts[1..]), (5, &planned[1..]));
    // Another cushion's counts are none of this one's.
    let other = RecordedPlan { size: "400x400".parse().unwrap(), ..next };
    let other = before(&Case::of("row-six", "440x400").then(Entry::Plan(other)));
    assert_eq!((other.from, &other.counts), (CountedFrom::Stock, &stock));
}

#[test]
fn the_bag_holds_what_is_left_after_the_moves() {
    let mut case = Case::of("row-six", "440x400");
    case.client.cushion.spare_cells = 200;
    let stock: u32 = case.plan.counts.iter().map(|own| own.stock).sum();
    let left = 200 + stock - case.plan.total();
    assert!(left < 200, "the plan takes cells from the bag");
    let [take_home, setup, fill] = all(&case.papers());
    assert!(take_home.contains(&format!("In the bag now: {left} spare cells.")), "{take_home}");
    assert!(setup.contains(&format!(" {left} ")), "{setup}");
    assert!(fill.contains(&format!("Pack {left} spare cells")), "{fill}");
    // Cells that burst are not in the bag, and those that replace them come out of it.
    let lost = Recount {
        on: DAY,
        by: "carer".into(),
        counts: vec![(1, case.plan.counts[0].planned - 3)],
        spare: None,
    };
    case.client.record.push(Entry::Recount(lost));
    assert_eq!(case.client.spare_cells_left(), i64::from(left));
    case.client.record.push(Entry::Plan(case.plan.clone()));
    assert_eq!(case.client.spare_cells_left(), i64::from(left) - 3);
    case.client.cushion.spare_cells = 0;
    assert!(case.client.spare_cells_left() < 0);
}

#[test]
fn the_setup_card_tells_what_was_found_unless_it_was_withdrawn() {
    let parts = Entry::Checked(PartsChecked {
        on: DAY,
        by: "OT".into(),
        found: Vec::new(),
        transfer: true,
        reach: false,
        passed: None,
        why: Some("slides on the board".into()),
    });
    let skin = Entry::Skin(SkinSeen {
        on: DAY,
        by: "carer".into(),
        site: case::SiteName::Coccyx,
        answer: case::SkinAnswer::Fades,
    });
    let case = Case::of("row-six", "440x400").then(parts).then(skin);
    let said = |case: &Case| words(&setup_card(&case.papers(), Paper::A4).unwrap());
    let (slides, fades) = ("slides on the board", "carer, skin at the coccyx: a mark that fades");
    assert!(said(&case).contains(slides) && said(&case).contains(fades), "{}", said(&case));
    let entry = case.client.record.len() - 1;
    let case = case.then(Entry::Withdrawn(Withdrawn {
        on: DAY,
        by: "OT".into(),
        entry,
        because: "another client's".into(),
    }));
    assert!(!said(&case).contains(slides) && said(&case).contains(fades), "{}", said(&case));
}

#[test]
fn the_setup_card_says_on_which_counts_a_check_was_made() {
    let felt = Check::Under { side: Side::Left, answer: UnderAnswer::Felt(Length::from_mm(30.0)) };
    let adjustment = Entry::Adjustment(Adjustment {
        on: DAY,
        by: "OT".into(),
        checks: vec![felt],
        moves: Vec::new(),
        why: None,
    });
    let said = |case: &Case| words(&setup_card(&case.papers(), Paper::A4).unwrap());
    let (on, before) = ("OT, on these counts: ", "OT, before these counts: ");
    let case = Case::of("row-six", "440x400").then(adjustment);
    assert!(said(&case).contains(on) && !said(&case).contains(before), "{}", said(&case));
    let again = case.plan.clone();
    let case = case.then(Entry::Plan(again));
    assert!(!said(&case).contains(on) && said(&case).contains(before), "{}", said(&case));
}

#[test]
fn the_setup_card_says_from_what_its_moves_go_out() {
    let mut case = Case::of("row-six", "440x400");
    let step = case::Move { from: case::Place::Spare, to: case::Place::Compartment(1), cells: 4 };
    case.extras.moves = vec![step];
    for (from, said) in [
        (CountedFrom::Stock, "from STOCK only"),
        (CountedFrom::Plan(DAY), "from the plan of 4\u{a0}March\u{a0}2026"),
        (CountedFrom::Recount(DAY), "from the recount of 4\u{a0}March\u{a0}2026"),
    ] {
        case.extras.moves_from = Some(from);
        let card = words(&setup_card(&case.papers(), Paper::A4).unwrap());
        assert!(card.contains(said), "{said} is not in: {card}");
    }
}
