//! Live work: the newest counts win, and what is told is what a prediction from nothing tells.

use std::sync::Arc;
use std::sync::atomic::{AtomicU64, Ordering};
use std::thread;
use std::time::Duration;

use case::{CentralNumbers, CentralSeat, PredictedSeat, Prediction};
use casework::{
    LiveAnswer, LiveCase, LiveNumbers, OpenCase, PreparedCushions, Surroundings, Turns, Whose,
};
use cushion::{Length, Pressure, Side};
use files::BuiltIn;
use mechanics::Stop;
use testkit::{MemoryShelf, assert_near};

const FILE: &str = "T-4.toml";

/// What a search from the last answer and one from nothing may differ by. Both end at an
/// unbalanced force of 1e-9 of the load, and their sheets agree to far below a micrometre; it is
/// far below what is printed (0.1 mm, 0.1 kPa).
const LENGTH: f64 = 1e-7;
/// The same for pressures, Pa.
const PRESSURE: f64 = 1e-1;

fn case_of(layout: &str, weight: &str) -> Arc<OpenCase> {
    case_on(&PreparedCushions::default(), layout, weight)
}

fn case_on(cushions: &PreparedCushions, layout: &str, weight: &str) -> Arc<OpenCase> {
    let client = format!(
        "format = 1\nkind = \"client\"\nclient = \"T-4\"\n\
         [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = {{ left = 480, right = 480 }}\n\
         {weight}[cushion]\nlayout = \"{layout}\"\nsize = \"440x400\"\nspare_cells = 20\n"
    );
    let shelf = MemoryShelf::of([(FILE, client.as_str())]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    Arc::new(OpenCase::open_with(cushions, surroundings, FILE).unwrap())
}

fn case() -> Arc<OpenCase> {
    case_of("row-six", "[weight]\nkg = 72\nweighed_on = 2026-02-10\n")
}

fn stock(case: &OpenCase) -> Vec<u32> {
    case.cushion.stock().compartments.iter().map(|own| own.cells.stock).collect()
}

/// The counts with some cells more in one compartment.
fn with(counts: &[u32], at: usize, more: i32) -> Vec<u32> {
    let mut counts = counts.to_vec();
    counts[at] = counts[at].checked_add_signed(more).unwrap();
    counts
}

/// All that is told for the counts that were asked last.
fn told(live: &LiveCase) -> Vec<LiveAnswer> {
    let mut answers = Vec::new();
    while !answers.last().is_some_and(LiveAnswer::is_last) {
        answers.push(live.next_answer().unwrap());
    }
    answers
}

/// The central numbers and the spread of counts.
fn both(live: &LiveCase, counts: &[u32]) -> (CentralNumbers, Prediction) {
    let revision = live.ask(counts).unwrap();
    let answers = told(live);
    assert!(answers.iter().all(|answer| answer.revision == revision));
    let [LiveNumbers::Central(central), LiveNumbers::Spread(prediction)] =
        &answers.iter().map(|own| own.numbers.clone()).collect::<Vec<_>>()[..]
    else {
        panic!("{answers:?}")
    };
    (central.clone(), prediction.clone())
}

#[track_caller]
fn same_length(one: Length, other: Length) {
    assert_near(one.to_m(), other.to_m(), LENGTH);
}

#[track_caller]
fn same_pressure(one: Pressure, other: Pressure) {
    assert_near(one.to_pa(), other.to_pa(), PRESSURE);
}

/// That two seats are the same but for rounding.
fn same_central(one: &CentralSeat, other: &CentralSeat) {
    // Degrees: a slope of 1e-7 over the 100 mm from the middle to a seat bone is less than 1e-7 m.
    assert_near(one.roll_deg, other.roll_deg, 1e-5);
    assert_near(one.pitch_deg, other.pitch_deg, 1e-5);
    for side in [Side::Left, Side::Right] {
        same_length(one.clearance[side], other.clearance[side]);
        same_length(one.immersion[side], other.immersion[side]);
    }
    // A node more or less may touch with no force to speak of: some 20 mm2 of 80 000 mm2 each.
    assert_near(one.contact_area.to_m2(), other.contact_area.to_m2(), 1e-4);
    assert_near(one.mean_surface.to_pa(), other.mean_surface.to_pa(), 10.0);
    same_pressure(one.greatest_surface, other.greatest_surface);
    assert_eq!(one.compartments.len(), other.compartments.len());
    for (own, theirs) in one.compartments.iter().zip(&other.compartments) {
        assert_eq!((&own.id, own.cells, own.bottomed), (&theirs.id, theirs.cells, theirs.bottomed));
        same_pressure(own.fill, theirs.fill);
    }
    assert_eq!(one.sites.len(), other.sites.len());
    for (own, theirs) in one.sites.iter().zip(&other.sites) {
        assert_eq!(own.site, theirs.site);
        same_pressure(own.surface, theirs.surface);
        same_length(own.clearance, theirs.clearance);
    }
}

/// That the spreads of two seats are the same but for rounding.
fn same_spread(one: &PredictedSeat, other: &PredictedSeat) {
    for side in [Side::Left, Side::Right] {
        let (own, theirs) = (one.clearance[side], other.clearance[side]);
        same_length(own.low, theirs.low);
        same_length(own.high, theirs.high);
        assert!(own.low < own.central && own.central < own.high);
    }
    for (own, theirs) in one.compartments.iter().zip(&other.compartments) {
        same_pressure(own.fill.low, theirs.fill.low);
        same_pressure(own.fill.high, theirs.fill.high);
    }
    for (own, theirs) in one.sites.iter().zip(&other.sites) {
        same_pressure(own.surface.low, theirs.surface.low);
        same_pressure(own.surface.high, theirs.surface.high);
    }
}

#[test]
fn a_case_is_shared_between_threads() {
    fn is_shared<T: Send + Sync>() {}
    is_shared::<OpenCase>();
    is_shared::<LiveCase>();
}

#[test]
fn what_is_told_is_what_a_prediction_from_nothing_tells() {
    for layout in ["row-six", "curved-ten"] {
        let case = case_of(layout, "[weight]\nkg = 72\nweighed_on = 2026-02-10\n");
        let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
        let stock = stock(&case);
        // From nothing; a cell more; many cells fewer elsewhere, from that; and nearly back.
        let asked = [stock.clone(), with(&stock, 0, 1), with(&stock, 2, -15), with(&stock, 0, -1)];
        for counts in &asked {
            let (central, prediction) = both(&live, counts);
            let (expected, _) = case.predict(counts, Stop::never()).unwrap();
            assert_eq!(CentralNumbers::of(&prediction), central);
            assert_eq!(prediction.outcome, expected.outcome);
            same_central(&central.seated.unwrap(), &CentralNumbers::of(&expected).seated.unwrap());
            same_spread(&prediction.seated.unwrap(), &expected.seated.unwrap());
        }
    }
}

#[test]
fn of_many_counts_asked_at_once_the_last_are_answered() {
    let case = case();
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    let stock = stock(&case);
    let mut last = None;
    let counts = |time: u32| with(&stock, 1, (time % 7) as i32);
    for time in 0..50 {
        last = Some(live.ask(&counts(time)).unwrap());
    }
    let answers = told(&live);
    assert_eq!(answers.len(), 2);
    for answer in &answers {
        assert_eq!(Some(answer.revision), last);
    }
    let LiveNumbers::Central(central) = &answers[0].numbers else { panic!("{answers:?}") };
    assert_eq!(central.seated.as_ref().unwrap().compartments[1].cells, counts(49)[1]);
}

/// Whatever the moment at which newer counts come: before the search, within it, within that of
/// the spread, or after.
#[test]
fn no_answer_is_told_that_is_older_than_the_newest_counts() {
    let case = case();
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    let stock = stock(&case);
    let newest = AtomicU64::new(0);
    let mut told = 0;
    thread::scope(|scope| {
        scope.spawn(|| {
            for time in 0..40u32 {
                let revision = live.ask(&with(&stock, 1, (time % 5) as i32)).unwrap();
                newest.store(revision.number(), Ordering::SeqCst);
                thread::sleep(Duration::from_millis(u64::from(time * 13 % 60)));
            }
        });
        loop {
            let before = newest.load(Ordering::SeqCst);
            let answer = live.next_answer().unwrap();
            assert!(answer.revision.number() >= before, "{answer:?} after {before}");
            told += 1;
            if answer.revision.number() == 40 && answer.is_last() {
                break;
            }
        }
    });
    assert!(told >= 2);
    // An answer that nobody took is forgotten too.
    live.ask(&stock).unwrap();
    live.next_answer().unwrap();
    thread::sleep(Duration::from_millis(400));
    let revision = live.ask(&with(&stock, 0, 1)).unwrap();
    assert_eq!(live.next_answer().unwrap().revision, revision);
}

#[test]
fn ending_wakes_whoever_waits_and_dropping_ends_the_worker() {
    let case = case();
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    thread::scope(|scope| {
        let waits = scope.spawn(|| live.next_answer());
        live.end();
        assert!(waits.join().unwrap().is_none());
    });
    live.ask(&stock(&case)).unwrap();
    assert!(live.next_answer().is_none());
    drop(live);
    // While it meshes, and while it searches.
    for asked in [false, true] {
        let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
        if asked {
            live.ask(&stock(&case)).unwrap();
            live.next_answer().unwrap();
        }
        drop(live);
        // The worker's own hold on the case is gone.
        assert_eq!(Arc::strong_count(&case), 1);
    }
}

#[test]
fn counts_on_which_nobody_rests_have_no_numbers_and_the_next_have() {
    // A pelvis that is flexible does not hold itself up over an empty half.
    let flexible = "[weight]\nkg = 72\nweighed_on = 2026-02-10\n[posture]\nobliquity = { lower = \"left\", by = 6, at = \"seat bones\", is = \"flexible\" }\n";
    let case = case_of("row-six", flexible);
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    let stock = stock(&case);
    let expected = both(&live, &stock).1;
    // Nothing under one half of the pelvis, and nothing at all.
    let mut half = stock.clone();
    half[0] = 0;
    for counts in [half, vec![0; stock.len()]] {
        let (prediction, _) = case.predict(&counts, Stop::never()).unwrap();
        assert!(prediction.seated.is_none(), "{counts:?}");
        let revision = live.ask(&counts).unwrap();
        let answer = live.next_answer().unwrap();
        assert!(answer.is_last() && answer.revision == revision);
        let LiveNumbers::NoNumbers(outcome) = answer.numbers else { panic!("{answer:?}") };
        assert_eq!(outcome, prediction.outcome);
    }
    let (central, again) = both(&live, &stock);
    same_central(&central.seated.unwrap(), &CentralNumbers::of(&expected).seated.unwrap());
    same_spread(&again.seated.unwrap(), &expected.seated.unwrap());
}

#[test]
fn several_cases_work_at_once_and_keep_apart() {
    let cases = [60, 72, 84]
        .map(|kg| case_of("row-six", &format!("[weight]\nkg = {kg}\nweighed_on = 2026-02-10\n")));
    let turns = Arc::default();
    let lives =
        cases.each_ref().map(|case| LiveCase::start(Arc::clone(case), Arc::clone(&turns)).unwrap());
    let counts = with(&stock(&cases[0]), 3, 2);
    for live in &lives {
        live.ask(&counts).unwrap();
    }
    let mut pressures = Vec::new();
    for (live, case) in lives.iter().zip(&cases) {
        let answers = told(live);
        let LiveNumbers::Central(central) = &answers[0].numbers else { panic!("{answers:?}") };
        let central = central.seated.clone().unwrap();
        let (alone, _) = case.predict(&counts, Stop::never()).unwrap();
        same_central(&central, &CentralNumbers::of(&alone).seated.unwrap());
        pressures.push(central.mean_surface);
    }
    assert!(pressures.is_sorted() && pressures[0] < pressures[2], "{pressures:?}");
}

/// Two searches that begin elsewhere differ by rounding, so what is the same to the last bit was told again.
#[test]
fn what_was_told_before_is_told_again_in_this_window_and_in_others() {
    let (cushions, turns) = (PreparedCushions::default(), Arc::<Turns>::default());
    let window = |kg: u32| {
        let weight = format!("[weight]\nkg = {kg}\nweighed_on = 2026-02-10\n");
        let case = case_on(&cushions, "row-six", &weight);
        LiveCase::start(Arc::clone(&case), Arc::clone(&turns)).map(|live| (case, live)).unwrap()
    };
    let (case, first) = window(72);
    let (far, near) = (with(&stock(&case), 2, -9), with(&stock(&case), 0, 3));
    let (at_far, at_near) = (both(&first, &far), both(&first, &near));
    assert_eq!(both(&first, &far), at_far);
    // Another window begins there, and would have begun from nothing.
    let (_, second) = window(72);
    assert_eq!(both(&second, &near), at_near);
    // It goes on from where it is.
    let next = with(&near, 1, 1);
    let (expected, _) = case.predict(&next, Stop::never()).unwrap();
    let (central, prediction) = both(&second, &next);
    same_central(&central.seated.unwrap(), &CentralNumbers::of(&expected).seated.unwrap());
    same_spread(&prediction.seated.unwrap(), &expected.seated.unwrap());
    // Somebody else, or the same with another weight, is never told that.
    let (case, heavier) = window(73);
    let (expected, _) = case.predict(&near, Stop::never()).unwrap();
    let (central, prediction) = both(&heavier, &near);
    assert!(central.seated.as_ref().unwrap().mean_surface > at_near.0.seated.unwrap().mean_surface);
    same_central(&central.seated.unwrap(), &CentralNumbers::of(&expected).seated.unwrap());
    same_spread(&prediction.seated.unwrap(), &expected.seated.unwrap());
}

/// What was stopped is not kept: counts that were asked for a moment are told whole when they are asked
/// again.
#[test]
fn what_was_overtaken_is_found_when_it_is_asked_again() {
    let case = case();
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    let stock = stock(&case);
    let hasty = with(&stock, 0, 5);
    for time in 0..12u64 {
        live.ask(&hasty).unwrap();
        // Before the search, within it and within that of the spread.
        thread::sleep(Duration::from_millis(time * 20));
        live.ask(&with(&stock, 1, time as i32)).unwrap();
    }
    let (expected, _) = case.predict(&hasty, Stop::never()).unwrap();
    let (central, prediction) = both(&live, &hasty);
    same_central(&central.seated.unwrap(), &CentralNumbers::of(&expected).seated.unwrap());
    same_spread(&prediction.seated.unwrap(), &expected.seated.unwrap());
}

/// The mesh of a mirrored layout is its own mirror image, so the answers differ by rounding only.
#[test]
fn mirrored_counts_mirror() {
    let case = case();
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    let left = with(&stock(&case), 1, 6);
    // The compartments are numbered left, right, left, right.
    let mirrored: Vec<u32> = (0..left.len()).map(|at| left[at ^ 1]).collect();
    assert_ne!(left, mirrored);
    let one = both(&live, &left).0.seated.unwrap();
    let other = both(&live, &mirrored).0.seated.unwrap();
    assert!(one.lower_by > Length::from_mm(0.1), "{one:?}");
    same_length(one.clearance.left, other.clearance.right);
    same_length(one.clearance.right, other.clearance.left);
    assert_near(one.roll_deg, -other.roll_deg, 1e-5);
    assert_near(one.pitch_deg, other.pitch_deg, 1e-5);
    for at in 0..left.len() {
        same_pressure(one.compartments[at].fill, other.compartments[at ^ 1].fill);
    }
}

#[test]
fn nothing_starts_without_a_weight_and_nothing_is_asked_with_too_few_counts() {
    let error = LiveCase::start(case_of("row-six", ""), Arc::default()).err().unwrap();
    assert_eq!(error.whose, Whose::Writer);
    let case = case();
    let live = LiveCase::start(Arc::clone(&case), Arc::default()).unwrap();
    let stock = stock(&case);
    assert_eq!(live.ask(&stock[1..]).unwrap_err().whose, Whose::Asker);
    // It harms nothing that was refused.
    assert_eq!(live.ask(&stock).unwrap().number(), 1);
    assert!(live.next_answer().is_some());
}
