//! Another cushion of the same client: how they sit is believed to begin with, counts never.

use case::{Check, Date, Taught};
use casework::{Counted, Done, OpenCase, Recorder, Shelf, Surroundings, WorkError, record_done};
use cushion::Side;
use files::BuiltIn;
use mechanics::Stop;
use testkit::MemoryShelf;

const DAY: Date = Date::constant(2026, 3, 2);
const OT: Recorder<'_> = Recorder { by: "OT", because: None, on: DAY, language: words::ENGLISH };

fn client(code: &str, layout: &str, more: &str) -> String {
    format!(
        "format = 1\nkind = \"client\"\nclient = \"{code}\"\n\
         [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = {{ left = 480, right = 480 }}\n\
         [weight]\nkg = 72\nweighed_on = 2026-02-10\n\
         [cushion]\nlayout = \"{layout}\"\nsize = \"440x400\"\nspare_cells = 20\n{more}"
    )
}

fn open(shelf: &MemoryShelf, file: &str) -> OpenCase {
    OpenCase::open(Surroundings { shelf, layouts: &BuiltIn }, file).unwrap()
}

/// A client whose pelvis was found lower on a side of their first cushion, by the record.
fn found_lower(side: &str) -> MemoryShelf {
    let shelf = MemoryShelf::of([("T-1.toml", client("T-1", "row-six", "").as_str())]);
    record_lower(&shelf, side);
    shelf
}

/// Records a plan, and then that the pelvis is lower on a side.
fn record_lower(shelf: &MemoryShelf, side: &str) {
    let case = open(shelf, "T-1.toml");
    let plan = case.plan(DAY, Stop::never()).unwrap();
    assert!(case.record_plan(shelf, &plan, false, &OT).unwrap());
    let case = open(shelf, "T-1.toml");
    let checks = [Check::read("lower", &format!("{side}=14mm")).unwrap()];
    let now = case.counts_now(DAY, Stop::never()).unwrap();
    let adjusted = case.adjust(&now, &checks, DAY, Stop::never()).unwrap();
    assert!(case.record_adjustment(shelf, &checks, &adjusted, false, &OT).unwrap());
}

fn taught(shelf: &MemoryShelf, file: &str) -> Taught {
    let case = open(shelf, file);
    assert!(case.other.as_ref().is_some_and(|other| other.taught && other.layout == "row-six"));
    let [taught] = case.client.value.taught.as_slice() else { panic!("one lesson") };
    *taught
}

/// The same file with another layout.
fn on_another_layout(shelf: &MemoryShelf) -> MemoryShelf {
    let text = String::from_utf8(shelf.read("T-1.toml").unwrap()).unwrap();
    let moved = text.replacen("layout = \"row-six\"", "layout = \"curved-ten\"", 1);
    MemoryShelf::of([("T-1.toml", moved.as_str())])
}

#[test]
fn another_layout_keeps_how_the_client_sits_and_no_counts() {
    let shelf = on_another_layout(&found_lower("left"));
    let own = taught(&shelf, "T-1.toml");
    assert_eq!(own, own.of_the_client(), "nothing of the cushion is kept");
    assert!(own.load_right < 0.0 || own.left_lower > 0.0, "{own:?}");
    let case = open(&shelf, "T-1.toml");
    let stock: Vec<u32> =
        case.cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    let fresh = MemoryShelf::of([("T-2.toml", client("T-2", "curved-ten", "").as_str())]);
    let plain = open(&fresh, "T-2.toml");
    assert!(plain.client.value.taught.is_empty());
    assert!(plain.other.is_none());
    let lower = |case: &OpenCase| {
        let (prediction, _) = case.predict(&stock, Stop::never()).unwrap();
        prediction.seated.unwrap().lower_side
    };
    // On the new stock fill, where both begin.
    assert_eq!((lower(&plain), lower(&case)), (None, Some(Side::Left)));
    assert!(case.counts_now(DAY, Stop::never()).is_err(), "the counts are those of the other one");
}

#[test]
fn a_mirrored_client_teaches_the_mirror_image() {
    let left = taught(&on_another_layout(&found_lower("left")), "T-1.toml");
    let right = taught(&on_another_layout(&found_lower("right")), "T-1.toml");
    // Sums round differently on the two sides.
    let near = |a: f64, b: f64| testkit::assert_near(a, b, 1e-6);
    near(left.load_right, -right.load_right);
    near(left.left_lower, -right.left_lower);
    near(left.seat_share, right.seat_share);
    near(left.own_roll_stiffness, right.own_roll_stiffness);
}

#[test]
fn a_second_cushion_names_the_file_of_the_first() {
    let shelf = found_lower("left");
    let second = client("T-1B", "curved-ten", "first_file = \"T-1.toml\"\n");
    shelf.put(&[casework::Change::output("T-1B.toml", second)]).unwrap();
    let moved = taught(&on_another_layout(&shelf), "T-1.toml");
    assert_eq!(taught(&shelf, "T-1B.toml"), moved);
    // The first goes on as it is.
    assert!(open(&shelf, "T-1.toml").other.is_none());
}

#[test]
fn a_first_file_that_is_not_there_is_told_at_its_key() {
    let second = client("T-1B", "curved-ten", "first_file = \"T-9.toml\"\n");
    let shelf = MemoryShelf::of([("T-1B.toml", second.as_str())]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let error = OpenCase::open(surroundings, "T-1B.toml").err().unwrap();
    assert_at_first_file(error, &second);
}

/// Fails unless an error points at the value of the key.
#[track_caller]
fn assert_at_first_file(error: WorkError, text: &str) {
    let file = error.file.expect("the file of the second cushion");
    let [remark] = file.remarks.as_slice() else { panic!("one remark: {:?}", file.remarks) };
    assert!(text[remark.span.clone()].starts_with("\"T-"), "{:?}", &text[remark.span.clone()]);
    let before = &text[..remark.span.start];
    assert!(before.ends_with("first_file = "), "{before}");
}

#[test]
fn a_file_that_names_itself_as_the_first_is_told_at_its_key() {
    let second = client("T-1B", "curved-ten", "first_file = \"T-1B.toml\"\n");
    let shelf = MemoryShelf::of([("T-1B.toml", second.as_str())]);
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    let error = OpenCase::open(surroundings, "T-1B.toml").err().unwrap();
    assert_at_first_file(error, &second);
}

/// Cells that were counted on another drawing say nothing of how the client sits.
#[test]
fn nothing_is_learnt_from_a_layout_that_was_changed() {
    let drawn = files::built_in_layout("row-six").unwrap();
    let own = client("T-1", "./mine.toml", "");
    let shelf = MemoryShelf::of([("T-1.toml", own.as_str()), ("./mine.toml", drawn)]);
    record_lower(&shelf, "left");
    let text = String::from_utf8(shelf.read("T-1.toml").unwrap()).unwrap();
    let moved = text.replacen("layout = \"./mine.toml\"", "layout = \"curved-ten\"", 1);
    for (drawn, learnt) in [(drawn.to_owned(), true), (format!("{drawn}# changed\n"), false)] {
        let files = [("T-1.toml", moved.as_str()), ("./mine.toml", drawn.as_str())];
        let case = open(&MemoryShelf::of(files), "T-1.toml");
        assert_eq!(case.other.as_ref().map(|other| other.taught), Some(learnt));
        assert_eq!(case.client.value.taught.len(), usize::from(learnt));
    }
}

/// What hands found on this cushion says more than what is usual.
#[test]
fn predictions_begin_from_what_was_found_on_this_cushion() {
    let lower = |shelf: &MemoryShelf| {
        let case = open(shelf, "T-1.toml");
        let counts = case.counts_now(DAY, Stop::never()).unwrap().counts;
        let (prediction, _) = case.predict(&counts, Stop::never()).unwrap();
        prediction.seated.unwrap().lower_side
    };
    let fresh = MemoryShelf::of([("T-1.toml", client("T-1", "row-six", "").as_str())]);
    assert_eq!(lower(&fresh), None);
    assert_eq!(lower(&found_lower("left")), Some(Side::Left));
    assert_eq!(lower(&found_lower("right")), Some(Side::Right));
}

/// What is in the old cushion is what somebody recorded, whatever was planned; and of the new one the
/// plan says what is expected.
#[test]
fn old_and_new_are_told_by_the_record() {
    let shelf = MemoryShelf::of([("T-1.toml", client("T-1", "row-six", "").as_str())]);
    let plan = open(&shelf, "T-1.toml").plan(DAY, Stop::never()).unwrap();
    assert!(open(&shelf, "T-1.toml").record_plan(&shelf, &plan, false, &OT).unwrap());
    let case = open(&shelf, "T-1.toml");
    let (planned, expected) = case.cells_here();
    assert_eq!(planned, plan.total_planned());
    assert!(expected.is_some());
    let there = open(&on_another_layout(&shelf), "T-1.toml").other.unwrap();
    assert_eq!((there.cells, there.expected.as_ref()), (planned, expected));
    // Three more are put in than were planned.
    let mut counts: Vec<(u8, u32)> =
        plan.counts.iter().map(|own| (own.number, own.planned)).collect();
    counts[0].1 += 3;
    let filled = Counted { counts: Some(counts), spare: None, batch: None, serial: None };
    let filled = Done::Filled(filled);
    record_done(Surroundings { shelf: &shelf, layouts: &BuiltIn }, "T-1.toml", &filled, &OT)
        .unwrap();
    assert_eq!(open(&shelf, "T-1.toml").cells_here(), (planned + 3, None));
    let moved = open(&on_another_layout(&shelf), "T-1.toml");
    let there = moved.other.as_ref().unwrap();
    assert_eq!((there.cells, &there.expected), (planned + 3, &None));
    // Nobody planned or filled the new one.
    assert_eq!(moved.cells_here(), (moved.cushion.stock().total(), None));
}
