//! A fill, compartment by compartment: each count is kept at once, and nothing but the whole fill
//! fills the cushion.

use case::{Date, Entry, NotDone, StaleFilling, Trouble};
use casework::{
    Change, Counted, Done, OpenCase, Recorder, Shelf, Surroundings, Whose, record_done,
};
use files::BuiltIn;
use mechanics::Stop;
use testkit::MemoryShelf;

const DAY: Date = Date::constant(2026, 3, 2);
const FILE: &str = "T-1.toml";
const CLIENT: &str = "format = 1\nkind = \"client\"\nclient = \"T-1\"\n\
     [measures]\nunits = \"mm\"\nhip_width = 400\nthigh_depth = { left = 480, right = 480 }\n\
     [weight]\nkg = 72\nweighed_on = 2026-02-10\n\
     [cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n";
const OT: Recorder<'_> = Recorder { by: "OT", because: None, on: DAY, language: words::ENGLISH };

fn open(shelf: &MemoryShelf) -> OpenCase {
    OpenCase::open(Surroundings { shelf, layouts: &BuiltIn }, FILE).unwrap()
}

fn text(shelf: &MemoryShelf) -> String {
    String::from_utf8(shelf.read(FILE).unwrap()).unwrap()
}

/// A client with a plan.
fn planned() -> MemoryShelf {
    let shelf = MemoryShelf::of([(FILE, CLIENT)]);
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    assert!(case.record_plan(&shelf, &plan, false, &OT).unwrap());
    shelf
}

fn keep(shelf: &MemoryShelf, number: u8, cells: u32) -> bool {
    open(shelf).keep_counted(shelf, number, cells, &OT).unwrap()
}

fn put(shelf: &MemoryShelf) -> Vec<(u8, u32)> {
    open(shelf).client.value.filling_goes_on().map(case::Filling::put).unwrap_or_default()
}

fn done(shelf: &MemoryShelf, done: &Done) -> Result<(), Trouble> {
    let surroundings = Surroundings { shelf, layouts: &BuiltIn };
    record_done(surroundings, FILE, done, &OT).map(drop).map_err(|error| *error.what)
}

fn fill(counts: Option<Vec<(u8, u32)>>) -> Done {
    Done::Filled(Counted { counts, ..Counted::default() })
}

#[test]
fn each_count_is_kept_at_once_and_the_record_takes_the_place_of_all() {
    let shelf = planned();
    let before = text(&shelf);
    assert!(keep(&shelf, 1, 44));
    assert!(keep(&shelf, 2, 47));
    assert_eq!(put(&shelf), [(1, 44), (2, 47)]);
    assert!(open(&shelf).client.value.cushion_now().is_none_or(|now| !now.from.is_told()));
    // Each in its turn, and none twice.
    for number in [2, 4, 9] {
        assert!(!keep(&shelf, number, 40));
    }
    open(&shelf).count_again(&shelf, 2).unwrap();
    assert_eq!(put(&shelf), [(1, 44)]);
    for number in 2..=6 {
        assert!(keep(&shelf, number, 40));
    }
    // One is counted again, and no other count is lost for it.
    open(&shelf).count_again(&shelf, 3).unwrap();
    assert_eq!(put(&shelf), [(1, 44), (2, 40), (4, 40), (5, 40), (6, 40)]);
    assert!(!keep(&shelf, 4, 41) && keep(&shelf, 3, 41));
    assert_eq!(put(&shelf)[2], (3, 41));
    assert!(!keep(&shelf, 7, 40));
    let counts = put(&shelf);
    assert_eq!(counts.len(), 6);
    done(&shelf, &fill(Some(counts.clone()))).unwrap();
    let after = text(&shelf);
    assert!(after.starts_with(&before) && !after.contains("filling"), "{after}");
    let case = open(&shelf);
    let Some(Entry::Filled(own)) = case.client.value.record.last() else { panic!("{after}") };
    assert_eq!(own.counts, counts);
}

#[test]
fn a_fill_that_is_given_up_leaves_the_file_as_it_was() {
    let shelf = planned();
    let before = text(&shelf);
    assert!(keep(&shelf, 1, 44));
    open(&shelf).count_again(&shelf, 1).unwrap();
    assert_eq!(text(&shelf), before);
    assert!(keep(&shelf, 1, 44) && keep(&shelf, 2, 44));
    open(&shelf).give_fill_up(&shelf).unwrap();
    assert_eq!(text(&shelf), before);
}

#[test]
fn a_fill_that_is_going_on_is_no_filled_cushion() {
    let shelf = planned();
    done(&shelf, &fill(None)).unwrap();
    assert!(keep(&shelf, 1, 44));
    let passed = Done::Checked {
        found: vec![case::Check::read("under", "left=30mm").unwrap()],
        transfer: true,
        reach: true,
        passed: Some(true),
    };
    let before = text(&shelf);
    let Err(Trouble::NotDone { why, .. }) = done(&shelf, &passed) else { panic!("it passed") };
    assert_eq!(why, NotDone::FillGoesOn { counted: 1, of: 6 });
    assert_eq!(text(&shelf), before);
    // Half a fill is no fill either.
    let half = done(&shelf, &fill(Some(put(&shelf))));
    let Err(Trouble::NotDone { why, .. }) = half else { panic!("half of it was recorded") };
    assert_eq!(why, NotDone::NoCountFor(vec![2, 3, 4, 5, 6]));
    // What hands see that is wrong is always recorded.
    let mark = Done::Skin(vec![(case::SiteName::Coccyx, case::SkinAnswer::Stays)]);
    done(&shelf, &mark).unwrap();
    assert_eq!(put(&shelf), [(1, 44)]);
    done(&shelf, &fill(None)).unwrap();
    done(&shelf, &passed).unwrap();
}

#[test]
fn a_fill_for_other_counts_is_not_gone_on_with_and_the_next_count_takes_its_place() {
    let shelf = planned();
    assert!(keep(&shelf, 1, 44) && keep(&shelf, 2, 47));
    let planned = |text: &str| {
        let at = text.rfind("planned = ").unwrap() + "planned = ".len();
        (at, text[at..].split([' ', '}']).next().unwrap().to_owned())
    };
    // Another plan of one cell more.
    let record = text(&shelf);
    let entry = record[record.find("[[record]]").unwrap()..].to_owned();
    let (at, cells) = planned(&entry);
    let more = (cells.parse::<u32>().unwrap() + 1).to_string();
    let mut other = entry.clone();
    other.replace_range(at..at + cells.len(), &more);
    let total = open(&shelf).client.value.latest_plan().unwrap().total();
    let other = other.replace(&format!("total = {total}"), &format!("total = {}", total + 1));
    shelf.put(&[Change::output(FILE, format!("{record}\n{other}"))]).unwrap();
    let so_far = open(&shelf).client.value.filling_so_far().unwrap();
    assert_eq!((so_far.counted, so_far.stale), (2, Some(StaleFilling::OtherCounts)));
    assert_eq!(put(&shelf), []);
    assert!(!keep(&shelf, 3, 40));
    assert!(keep(&shelf, 1, 40));
    assert_eq!(put(&shelf), [(1, 40)]);
}

#[test]
fn a_fill_is_signed_and_written_over_nobodys_edit() {
    let shelf = planned();
    let before = text(&shelf);
    let nobody = Recorder { by: " ", ..OT };
    let error = open(&shelf).keep_counted(&shelf, 1, 44, &nobody).unwrap_err();
    assert_eq!(*error.what, Trouble::NotSigned);
    let case = open(&shelf);
    let edited = before.replace("spare_cells = 20", "spare_cells = 30");
    shelf.put(&[Change::output(FILE, edited.clone())]).unwrap();
    let error = case.keep_counted(&shelf, 1, 44, &OT).unwrap_err();
    assert_eq!(error.whose, Whose::Keeper);
    assert_eq!(text(&shelf), edited);
}
