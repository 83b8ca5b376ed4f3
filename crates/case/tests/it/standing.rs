//! What each entry does to the counts in the cushion and to the state of the fitting.

use case::{
    Adjustment, Beside, Check, CheckOutcome, CheckPart, CountedFrom, Entry, FittingCheck, Lapse,
    LayoutRef, Move, Place, Returned, Review, SiteName, SkinAnswer, SkinSeen, State, state,
};

use crate::record::{
    WHOLE, check_of, checked, client, day, filled, moved, numbered, plan, recount, withdrawn,
};

fn id(record: Vec<Entry>) -> &'static str {
    state(&client(record), day(20), Beside::default()).state.id()
}

#[track_caller]
fn lapsed(record: Vec<Entry>, expected: Lapse) {
    let client = client(record);
    let standing = state(&client, day(20), Beside::default());
    assert!(matches!(standing.state, State::Lapsed(_, lapse) if lapse == expected), "{standing:?}");
    assert_eq!(standing.fitted(), None);
}

#[track_caller]
fn holds(record: &[Entry], counts: [u32; 3], bag: i64) {
    let now = client(record.to_vec()).cushion_now().expect("something is known");
    let there: Vec<(u8, u32)> = now.counts.into_iter().collect();
    assert_eq!((there, now.bag), (numbered(counts), bag));
}

fn skin(of_march: i8, answer: SkinAnswer) -> Entry {
    let site = SiteName::Coccyx;
    Entry::Skin(SkinSeen { on: day(of_march), by: "nurse".into(), site, answer })
}

#[test]
fn a_fitting_goes_from_measures_to_fitted() {
    let mut unmeasured = client(Vec::new());
    unmeasured.weighing = None;
    assert_eq!(state(&unmeasured, day(1), Beside::default()).state, State::ToMeasure);
    assert_eq!(id(vec![]), "to-plan");
    let mut record = vec![plan(2, [52, 48, 50])];
    assert_eq!(id(record.clone()), "estimate");
    record.push(filled(3, [52, 47, 50]));
    assert_eq!(id(record.clone()), "estimate");
    // One more than the plan wanted in the second stays in the bag.
    holds(&record, [52, 47, 50], 21);
    record.push(checked(4));
    assert_eq!(id(record), "fitted");
}

#[test]
fn a_check_passes_only_with_all_of_its_parts() {
    assert_eq!(check_of(&WHOLE, 4).outcome(), CheckOutcome::Passed);
    for without in 0..WHOLE.len() {
        let mut found = WHOLE.to_vec();
        found.remove(without);
        let check = check_of(&found, 4);
        assert_eq!(check.outcome(), CheckOutcome::NotFinished, "{found:?}");
        assert_eq!(check.missing().len(), 1, "{found:?}");
        let record = vec![filled(3, [50; 3]), Entry::Checked(check)];
        assert_eq!(id(record), "estimate");
    }
    for (transfer, reach, missing) in
        [(false, true, CheckPart::Transfer), (true, false, CheckPart::Reach)]
    {
        let check = case::PartsChecked { transfer, reach, ..check_of(&WHOLE, 4) };
        assert_eq!((check.outcome(), check.missing()), (CheckOutcome::NotFinished, vec![missing]));
    }
    // A hand that did not find the bone has not looked.
    let mut found = WHOLE;
    found[2] = "under left=not-found";
    assert_eq!(check_of(&found, 4).outcome(), CheckOutcome::NotFinished);
    let unsaid = case::PartsChecked { passed: None, ..check_of(&WHOLE, 4) };
    assert_eq!(unsaid.outcome(), CheckOutcome::NotFinished);
}

#[test]
fn an_alarm_is_never_passed() {
    for (at, alarm) in [(2, "under left=bone-felt"), (4, "skin coccyx=stays")] {
        let mut found = WHOLE;
        found[at] = alarm;
        let check = check_of(&found, 4);
        assert_eq!(check.outcome(), CheckOutcome::Failed);
        assert_eq!(id(vec![filled(3, [50; 3]), Entry::Checked(check)]), "failed");
    }
}

#[test]
fn a_plan_proposes_and_changes_nothing_that_was_checked() {
    let fitted = vec![filled(3, [50; 3]), checked(4)];
    let mut record = fitted.clone();
    record.push(plan(5, [60, 40, 50]));
    holds(&record, [50; 3], 20);
    assert_eq!(id(record.clone()), "fitted");
    assert!(client(record.clone()).plan_is_proposed());
    record.push(filled(6, [60, 40, 50]));
    lapsed(record, Lapse::Counts(day(6)));
}

#[test]
fn moves_are_left_until_all_are_made_or_something_else_is_done() {
    let spare = |to, cells| Move { from: Place::Spare, to: Place::Compartment(to), cells };
    let proposed = vec![filled(3, [50; 3]), plan(5, [54, 46, 50])];
    let left = |more: Vec<Entry>| client([proposed.clone(), more].concat()).moves_are_left();
    let first = moved(6, vec![spare(1, 3)]);
    assert!(left(vec![]) && left(vec![first.clone()]));
    // One that is begun is no untouched proposal: papers speak of what lies in the cushion.
    assert!(!client([proposed.clone(), vec![first.clone()]].concat()).plan_is_proposed());
    let out = Move { from: Place::Compartment(2), to: Place::Spare, cells: 4 };
    let rest = moved(6, vec![spare(1, 1), out]);
    assert!(!left(vec![first.clone(), rest]));
    // Beyond the plan, or away from it, somebody did something else.
    assert!(!left(vec![moved(6, vec![spare(1, 5)])]));
    assert!(!left(vec![first.clone(), moved(6, vec![spare(3, 1)])]));
    assert!(!left(vec![first.clone(), filled(6, [53, 50, 50])]));
    // What was felt was felt on what lies there.
    assert!(!left(vec![first.clone(), checked(7)]));
    let stays = Entry::Adjustment(Adjustment {
        on: day(7),
        by: "OT".into(),
        checks: Vec::new(),
        moves: Vec::new(),
        why: None,
    });
    assert!(!left(vec![first, stays]));
}

#[test]
fn a_check_of_counts_that_nobody_recorded_is_none() {
    assert_eq!(id(vec![plan(2, [50; 3]), checked(4)]), "estimate");
}

#[test]
fn a_recount_lapses_beyond_what_handling_explains_and_says_what_to_put_back() {
    let fitted = vec![filled(3, [50; 3]), checked(4)];
    let with = |counts| [fitted.clone(), vec![recount(9, counts)]].concat();
    assert_eq!(id(with(vec![(2, 49)])), "fitted");
    let lost = with(vec![(2, 46)]);
    lapsed(lost.clone(), Lapse::Recount(day(9)));
    holds(&lost, [50, 46, 50], 20);
    let now = client(lost.clone()).cushion_now().unwrap();
    assert_eq!((now.to_put_back(), now.from), (vec![(2, 4)], CountedFrom::Recount(day(9))));
    // Put back, they are the counts that were checked.
    let back = Move { from: Place::Spare, to: Place::Compartment(2), cells: 4 };
    let put_back = [lost, vec![moved(10, vec![back])]].concat();
    holds(&put_back, [50; 3], 16);
    assert_eq!(id(put_back), "fitted");
}

#[test]
fn what_was_counted_before_a_check_the_check_has_seen() {
    let record = vec![filled(3, [50; 3]), recount(4, vec![(2, 46)]), checked(5)];
    assert_eq!(id(record.clone()), "fitted");
    assert_eq!(client(record.clone()).cushion_now().unwrap().to_put_back(), []);
    let counts = client([vec![plan(2, [50; 3])], record].concat()).counts_on_paper().unwrap();
    assert_eq!(counts.counts[1].planned, 46);
}

#[test]
fn a_plan_keeps_its_day_until_other_counts_are_put_in() {
    let on = |more: Vec<Entry>| {
        let record = [vec![plan(2, [52, 48, 50])], more].concat();
        client(record).counts_on_paper().unwrap().on
    };
    assert_eq!(on(vec![]), day(2));
    assert_eq!(on(vec![filled(3, [52, 48, 50])]), day(2));
    assert_eq!(on(vec![filled(3, [52, 48, 50]), recount(9, vec![(1, 52)]), checked(9)]), day(2));
    assert_eq!(on(vec![filled(3, [52, 48, 50]), filled(5, [50; 3])]), day(5));
}

#[test]
fn nothing_is_left_to_move_once_somebody_recorded_that_it_was_done() {
    let client = |more: Vec<Entry>| client([vec![plan(2, [52, 48, 50])], more].concat());
    let is_done = |more: Vec<Entry>| {
        let client = client(more);
        assert_eq!(client.nothing_is_left_to_move(), client.before_latest_plan().is_none());
        client.nothing_is_left_to_move()
    };
    // That a plan was carried out is believed, and nobody said so.
    assert!(!is_done(vec![]));
    let filled = filled(3, [52, 48, 50]);
    assert!(is_done(vec![filled.clone()]));
    assert!(!is_done(vec![filled.clone(), recount(4, vec![(2, 45)])]));
    let spare = |cells| Move { from: Place::Spare, to: Place::Compartment(2), cells };
    assert!(is_done(vec![filled.clone(), recount(4, vec![(2, 45)]), moved(5, vec![spare(3)])]));
    let proposed = vec![filled, plan(5, [52, 53, 50])];
    assert!(!is_done(proposed.clone()));
    // Of the moves that are left, those that were made are none.
    let begun = [proposed, vec![moved(6, vec![spare(3)])]].concat();
    assert!(!is_done(begun.clone()));
    assert_eq!(client(begun.clone()).before_latest_plan().unwrap().counts, [52, 51, 50]);
    assert!(is_done([begun, vec![moved(6, vec![spare(2)])]].concat()));
}

#[test]
fn the_serial_is_the_one_that_was_recorded_last_of_this_cushion() {
    let with = |of_march, serial: &str| match filled(of_march, [50; 3]) {
        Entry::Filled(own) => Entry::Filled(case::Filled { serial: Some(serial.into()), ..own }),
        other => other,
    };
    let of = |record: Vec<Entry>, in_file: Option<&str>| {
        let mut client = client(record);
        client.cushion.serial = in_file.map(str::to_owned);
        client.serial().map(str::to_owned)
    };
    assert_eq!(of(vec![], Some("A-1")).as_deref(), Some("A-1"));
    assert_eq!(of(vec![with(3, "T-1")], None).as_deref(), Some("T-1"));
    let again = vec![with(3, "T-1"), with(4, "T-2"), filled(5, [50; 3])];
    assert_eq!(of(again.clone(), Some("A-1")).as_deref(), Some("T-2"));
    let taken_back = [again, vec![withdrawn(6, 2)]].concat();
    assert_eq!(of(taken_back, Some("A-1")).as_deref(), Some("T-1"));
    // Of another cushion than the file names, the record knows no serial of this one.
    let mut other = client(vec![with(3, "T-1")]);
    other.cushion.size = "400x400".parse().unwrap();
    assert_eq!(other.serial(), None);
}

#[test]
fn a_return_is_a_new_estimate_until_it_is_checked() {
    let counts = numbered([50; 3]);
    let back = |of_march| {
        let (on, by, counts) = (day(of_march), "OT".into(), counts.clone());
        Entry::Returned(Returned { on, by, entry: 1, counts, why: None })
    };
    let mut record = vec![filled(3, [50; 3]), checked(4), filled(5, [60, 40, 50]), back(6)];
    holds(&record, [50; 3], 20);
    assert_eq!(id(record.clone()), "estimate");
    record.push(checked(7));
    assert_eq!(id(record), "fitted");
}

#[test]
fn a_withdrawn_entry_counts_for_nothing_and_a_withdrawal_can_be_withdrawn() {
    let mut record = vec![filled(3, [50; 3]), checked(4), filled(5, [60, 40, 50])];
    lapsed(record.clone(), Lapse::Counts(day(5)));
    record.push(withdrawn(6, 3));
    assert_eq!(id(record.clone()), "fitted");
    holds(&record, [50; 3], 20);
    record.push(withdrawn(7, 4));
    lapsed(record.clone(), Lapse::Counts(day(5)));
    // A check that was withdrawn has not been made.
    record.push(withdrawn(8, 2));
    assert_eq!(id(record), "estimate");
}

#[test]
fn a_mark_on_the_skin_lapses_and_one_that_fades_does_not() {
    let with = |answer| vec![filled(3, [50; 3]), checked(4), skin(6, answer)];
    for answer in [SkinAnswer::Clear, SkinAnswer::Fades] {
        assert_eq!(id(with(answer)), "fitted");
    }
    for answer in [SkinAnswer::Stays, SkinAnswer::Open, SkinAnswer::Worse] {
        lapsed(with(answer), Lapse::Skin(day(6), SiteName::Coccyx));
    }
    // What was seen before the check, the check has judged.
    assert_eq!(id(vec![filled(3, [50; 3]), skin(3, SkinAnswer::Stays), checked(4)]), "fitted");
}

#[test]
fn checks_that_find_it_otherwise_undo_a_fitting_and_others_do_not() {
    let found = |text: &str, moves: Vec<Move>| {
        let checks = vec![Check::read_whole(text).unwrap()];
        let own = Adjustment { on: day(6), by: "OT".into(), checks, moves, why: None };
        vec![filled(3, [50; 3]), checked(4), Entry::Adjustment(own)]
    };
    let step = Move { from: Place::Spare, to: Place::Compartment(1), cells: 2 };
    assert_eq!(id(found("under left=30mm", Vec::new())), "fitted");
    assert_eq!(id(found("under left=30mm", vec![step])), "estimate");
    assert_eq!(id(found("top left=tight", Vec::new())), "estimate");
    assert_eq!(id(found("under left=20mm", Vec::new())), "failed");
    lapsed(found("skin coccyx=open", Vec::new()), Lapse::Skin(day(6), SiteName::Coccyx));
}

#[test]
fn another_cushion_and_a_weight_that_breaks_a_limit_lapse() {
    let mut other = client(vec![filled(3, [50; 3]), checked(4)]);
    let heavy = Beside { weight_breaks_limit: true, ..Beside::default() };
    let heavier = state(&other, day(20), heavy).state;
    assert!(matches!(heavier, State::Lapsed(_, Lapse::Weight(_))), "{heavier:?}");
    other.cushion.layout = LayoutRef::Named { name: "ring".into(), parameters: <_>::default() };
    let lapsed = state(&other, day(20), Beside::default()).state;
    assert!(matches!(lapsed, State::Lapsed(_, Lapse::OtherCushion)), "{lapsed:?}");
}

#[test]
fn counts_that_break_a_limit_are_not_safe_until_hands_or_other_counts_mend_them() {
    let breaks = Beside { counts_break_limit: true, ..Beside::default() };
    let id = |record: Vec<Entry>, beside| state(&client(record), day(20), beside).state.id();
    assert_eq!(id(vec![filled(3, [50; 3])], breaks), "not-safe");
    assert_eq!(id(vec![filled(3, [50; 3])], Beside::default()), "estimate");
    // A check of other counts says nothing of these; one of these does.
    assert_eq!(id(vec![filled(3, [50; 3]), checked(4), filled(5, [20; 3])], breaks), "not-safe");
    assert_eq!(id(vec![filled(3, [50; 3]), checked(4)], breaks), "fitted");
    let found = client(vec![filled(3, [20; 3])]);
    assert!(state(&found, day(20), breaks).fitted().is_none());
}

#[test]
fn one_review_day_is_the_earlier_one() {
    let mut client = client(vec![filled(3, [50; 3]), checked(4)]);
    let with = |client: &case::Client, look_again, on| {
        let beside = Beside { look_again, ..Beside::default() };
        let standing = state(client, on, beside);
        (standing.review, standing.fitted().is_some())
    };
    assert_eq!(with(&client, None, day(20)), (Review::None, true));
    assert_eq!(with(&client, Some(day(9)), day(9)), (Review::Due(day(9)), true));
    client.next_review = Some(day(8));
    assert_eq!(with(&client, Some(day(9)), day(9)), (Review::Overdue(day(8)), false));
    client.next_review = Some(day(10));
    assert_eq!(with(&client, Some(day(9)), day(8)), (Review::Due(day(9)), true));
}

#[test]
fn a_record_from_before_fills_were_recorded_means_what_it_meant() {
    let old_check = |of_march, passed| {
        let (on, by) = (day(of_march), "OT".into());
        Entry::FittingCheck(FittingCheck { on, by, passed, found: None })
    };
    let first = vec![plan(2, [52, 48, 50])];
    holds(&first, [52, 48, 50], 20);
    let fitted = [first.clone(), vec![old_check(3, Some(true))]].concat();
    assert_eq!(id(fitted.clone()), "fitted");
    for passed in [None, Some(false)] {
        assert_ne!(id([first.clone(), vec![old_check(3, passed)]].concat()), "fitted");
    }
    // A plan after it was taken to be carried out, and nobody checked that.
    assert_eq!(id([fitted.clone(), vec![plan(4, [52, 48, 50])]].concat()), "estimate");
    // A recount is not: what was counted is in it, until something more is said.
    let counted = [fitted, vec![recount(5, vec![(1, 40)]), plan(6, [60, 48, 50])]].concat();
    holds(&counted, [40, 48, 50], 20);
    assert!(client(counted.clone()).plan_is_proposed());
    let after = [counted, vec![old_check(7, Some(true))]].concat();
    holds(&after, [60, 48, 50], 0);
    assert_eq!(id(after), "fitted");
}

fn found(of_march: i8, checks: &[&str], moves: Vec<Move>) -> Entry {
    let checks = checks.iter().map(|own| Check::read_whole(own).unwrap()).collect();
    Entry::Adjustment(Adjustment { on: day(of_march), by: "OT".into(), checks, moves, why: None })
}

/// A bone that is felt, a mark, less than 25 mm: nobody sits on, whatever was passed before, until other
/// cells are in the cushion or a whole check finds it right.
#[test]
fn what_ends_sitting_stands_until_it_is_mended_or_found_otherwise() {
    let passed = [filled(3, [50; 3]), checked(4)];
    for against in ["under left=bone-felt", "under right=24mm"] {
        let after = |more: &[Entry]| {
            id([passed.as_slice(), &[found(6, &[against], vec![])], more].concat())
        };
        assert_eq!(after(&[]), "failed", "{against}");
        // Neither a recount that finds all there, nor another look at something else.
        assert_eq!(after(&[recount(7, numbered([50; 3]))]), "failed", "{against}");
        assert_eq!(after(&[checked(7)]), "fitted", "{against}");
        assert_eq!(after(&[filled(7, [52, 50, 50])]), "estimate", "{against}");
        // The same cells again are what failed, by whatever entry they came back.
        let again = |counts: [u32; 3]| {
            let (on, by, entry) = (day(8), "OT".into(), 1);
            Entry::Returned(Returned { on, by, entry, counts: numbered(counts), why: None })
        };
        assert_eq!(after(&[again([50; 3])]), "failed", "{against}");
        assert_eq!(after(&[filled(7, [52, 50, 50]), again([50; 3])]), "failed", "{against}");
        assert_eq!(after(&[again([52, 50, 50])]), "estimate", "{against}");
    }
    // A mark as well, where nothing was passed before it; else that holds no longer.
    let seen = |passed: &[Entry]| {
        let mark = [found(6, &["skin coccyx=stays"], vec![]), skin(6, SkinAnswer::Open)];
        mark.map(|mark| id([passed, &[mark]].concat()))
    };
    assert_eq!(seen(&passed[..1]), ["failed"; 2]);
    assert_eq!(seen(&passed), ["lapsed"; 2]);
    // What is no more than a question leaves no more than an estimate.
    for asks in ["under left=not-found", "top left=tight", "press 2=slack"] {
        let record = [passed.as_slice(), &[found(6, &[asks], vec![])]].concat();
        assert_eq!(id(record), "estimate", "{asks}");
    }
    // Moves that are proposed have not been made.
    let spare = Move { from: Place::Spare, to: Place::Compartment(1), cells: 2 };
    let low = found(6, &["under left=20mm"], vec![spare]);
    let proposed = [passed.as_slice(), &[low, plan(6, [52, 50, 50])]].concat();
    assert_eq!(id(proposed.clone()), "failed");
    assert_eq!(id([proposed.as_slice(), &[moved(7, vec![spare])]].concat()), "estimate");
}

/// Cells that are counted on the day of a check, and were not touched between, lay there at the check.
#[test]
fn a_recount_on_the_day_of_a_check_says_what_it_was_made_on() {
    let begun = [plan(2, [50; 3]), filled(3, [50; 3])];
    let cells = |record: &[Entry]| -> Vec<Vec<u32>> {
        let client = client([begun.as_slice(), record].concat());
        client.rounds_found().iter().map(|own| own.cells.values().copied().collect()).collect()
    };
    let low = || found(6, &["under left=22mm"], vec![]);
    let fewer = |of_march| recount(of_march, vec![(1, 40)]);
    assert_eq!(cells(&[low(), fewer(6)]), [[40, 50, 50]]);
    assert_eq!(cells(&[low(), low(), fewer(6), low()]), [[40, 50, 50]; 3]);
    // Not of another day, nor where cells were put in between.
    assert_eq!(cells(&[low(), fewer(7)]), [[50; 3]]);
    assert_eq!(cells(&[low(), filled(6, [52; 3]), fewer(6)]), [[50; 3]]);
    assert_eq!(cells(&[found(5, &["under left=30mm"], vec![]), low(), fewer(6)])[0], [50; 3]);
}

/// The plan that is in the cushion, what hands found on its cells, and the skin as it was seen last.
#[test]
fn the_record_says_what_belongs_to_the_cells_that_are_there() {
    let low = || found(6, &["under left=20mm", "top left=safe"], vec![]);
    let record = vec![plan(2, [50; 3]), filled(3, [50; 3]), low(), plan(6, [52, 50, 50])];
    let own = client(record.clone());
    let there = |own: &case::Client| own.plan_carried_out().map(|plan| plan.on);
    // One that is proposed expects nothing of what is there; cells that are lost were meant to be.
    assert_eq!(there(&own), Some(day(2)));
    let lost = [record.as_slice(), &[recount(7, vec![(1, 49)])]].concat();
    assert_eq!(there(&client(lost)), Some(day(2)));
    let moved = client([record.as_slice(), &[filled(7, [52, 50, 50])]].concat());
    assert_eq!(there(&moved), Some(day(6)));
    assert_eq!(there(&client(vec![plan(2, [50; 3]), filled(3, [49, 50, 50])])), None);
    // Of what hands found only what ends sitting, and on no other cells.
    let against = |counts: [u32; 3]| moved.found_against(&numbered(counts).into_iter().collect());
    assert_eq!(against([50; 3]), [Check::read_whole("under left=20mm").unwrap()]);
    assert_eq!(against([52, 50, 50]), []);
    // The skin as it was seen last, wherever that stands.
    let seen = client(vec![
        filled(3, [50; 3]),
        checked(4),
        skin(5, SkinAnswer::Fades),
        found(6, &["skin left-seat-bone=clear"], vec![]),
    ]);
    assert_eq!(seen.skin_last_seen(SiteName::Coccyx), Some((day(5), SkinAnswer::Fades)));
    let left = SiteName::SeatBone(cushion::Side::Left);
    assert_eq!(seen.skin_last_seen(left), Some((day(6), SkinAnswer::Clear)));
    assert_eq!(seen.skin_last_seen(SiteName::Thigh(cushion::Side::Left)), None);
}
