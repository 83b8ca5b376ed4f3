//! Recording: no edit is ever lost, and what is not safe never becomes a plan.

use case::{BrokenLimit, Check, CountedFrom, Date, Entry, LayoutRef, Likeness};
use casework::{
    Counted, Done, OpenCase, PreparedCushions, Recorder, Shelf, Surroundings, Whose, plan_stands,
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

fn shelf() -> MemoryShelf {
    MemoryShelf::of([(FILE, CLIENT)])
}

fn open(shelf: &MemoryShelf) -> OpenCase {
    OpenCase::open(Surroundings { shelf, layouts: &BuiltIn }, FILE).unwrap()
}

fn text(shelf: &MemoryShelf) -> String {
    String::from_utf8(shelf.read(FILE).unwrap()).unwrap()
}

const OT: Recorder<'_> = Recorder { by: "OT", because: None, on: DAY, language: words::ENGLISH };

#[test]
fn an_edit_that_was_saved_meanwhile_is_told_and_kept() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    let edited = CLIENT.replace("spare_cells = 20", "spare_cells = 30");
    shelf.put(&[casework::Change::output(FILE, edited.clone())]).unwrap();
    let error = case.record_plan(&shelf, &plan, false, &OT).unwrap_err();
    assert_eq!(error.whose, Whose::Keeper);
    let said = words::ENGLISH.trouble(&error.what);
    assert!(said.message.contains("changed") && said.hint.is_some(), "{said:?}");
    assert_eq!(text(&shelf), edited);
}

#[test]
fn of_two_that_record_at_once_the_second_is_told() {
    let shelf = shelf();
    let (first, second) = (open(&shelf), open(&shelf));
    let plan = first.plan(DAY, Stop::never()).unwrap();
    assert!(first.record_plan(&shelf, &plan, false, &OT).unwrap());
    let after_first = text(&shelf);
    let checks = [Check::read("under", "left=bone-felt").unwrap()];
    let now = second.counts_now(DAY, Stop::never()).unwrap();
    let adjusted = second.adjust(&now, &checks, DAY, Stop::never()).unwrap();
    let told = second.record_adjustment(&shelf, &checks, &adjusted, false, &OT).unwrap_err();
    assert_eq!(told.whose, Whose::Keeper);
    assert_eq!(text(&shelf), after_first);
}

#[test]
fn a_plan_that_does_not_stand_is_not_recorded() {
    let shelf = shelf();
    let case = open(&shelf);
    let mut plan = case.plan(DAY, Stop::never()).unwrap();
    assert!(plan_stands(&plan, &case.client.value, false));
    plan.not_safe.push(BrokenLimit::Tips);
    // Not even where the nearest safe plan would be taken.
    for nearest_safe in [false, true] {
        assert!(!case.record_plan(&shelf, &plan, nearest_safe, &OT).unwrap());
    }
    assert_eq!(text(&shelf), CLIENT);
}

#[test]
fn an_adjustment_that_is_not_safe_records_what_was_found_and_neither_moves_nor_counts() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    case.record_plan(&shelf, &plan, false, &OT).unwrap();
    let case = open(&shelf);
    let now = case.counts_now(DAY, Stop::never()).unwrap();
    let checks = [Check::read("under", "left=18mm").unwrap()];
    let mut adjusted = case.adjust(&now, &checks, DAY, Stop::never()).unwrap();
    assert!(!adjusted.moves.is_empty());
    adjusted.not_safe = vec![BrokenLimit::Tips];
    assert!(case.record_adjustment(&shelf, &checks, &adjusted, false, &OT).unwrap());
    let record = open(&shelf).client.value.record;
    assert_eq!(record.len(), 2, "{record:?}");
    let Entry::Adjustment(found) = &record[1] else { panic!("{record:?}") };
    assert_eq!((&found.checks[..], found.moves.len()), (&checks[..], 0));
}

#[test]
fn nobody_signs_with_an_empty_name() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    for by in ["", "  ", "OT\nand another"] {
        let recorder = Recorder { by, ..OT };
        let error = case.record_plan(&shelf, &plan, false, &recorder).unwrap_err();
        assert_eq!(error.whose, Whose::Asker);
    }
    assert_eq!(text(&shelf), CLIENT);
}

#[test]
fn one_identity_says_whether_a_record_is_for_this_cushion() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    case.record_plan(&shelf, &plan, false, &OT).unwrap();
    let mut case = open(&shelf);
    let recorded = case.client.value.latest_plan().unwrap().clone();
    assert_eq!(case.identity().likeness(&recorded), Likeness::Same);
    // A comment in the layout's file: the counts fit, what was found on them says nothing.
    case.layout.file.text.push_str("# a comment\n");
    let edited = Likeness::Edited { layout: true, cell: false };
    assert_eq!(case.identity().likeness(&recorded), edited);
    assert!(case.is_for_this_cushion(&recorded).is_ok());
    // Another layout with the same ids is another cushion.
    let named = LayoutRef::File("copy-of-row-six.toml".to_owned());
    case.client.value.cushion.layout = named;
    assert_eq!(case.identity().likeness(&recorded), Likeness::Other);
    assert!(case.is_for_this_cushion(&recorded).is_err());
}

#[test]
fn checks_on_another_layout_with_the_same_ids_are_no_evidence() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    case.record_plan(&shelf, &plan, false, &OT).unwrap();
    let case = open(&shelf);
    let now = case.counts_now(DAY, Stop::never()).unwrap();
    let earlier = [Check::read("under", "left=45mm").unwrap()];
    let adjusted = case.adjust(&now, &earlier, DAY, Stop::never()).unwrap();
    case.record_adjustment(&shelf, &earlier, &adjusted, false, &OT).unwrap();
    let mut case = open(&shelf);
    let press = [Check::read("under", "right=31mm").unwrap()];
    let with = case.adjust(&now, &press, DAY, Stop::never()).unwrap();
    case.layout.file.text.push_str("# drawn anew\n");
    let without = case.adjust(&now, &press, DAY, Stop::never()).unwrap();
    // What was found before moves the expectation only on the same cushion.
    assert_ne!(with.prediction, without.prediction);
}

/// Adds what was done, on the day of the tests.
fn done(shelf: &dyn Shelf, what: &Done) -> Result<casework::Recorded, casework::WorkError> {
    casework::record_done(Surroundings { shelf, layouts: &BuiltIn }, FILE, what, &OT)
}

#[test]
fn what_was_done_is_added_and_a_person_s_text_stays() {
    let shelf = shelf();
    let recorded = done(&shelf, &Done::Weighed(cushion::Mass::from_kg(74.0))).unwrap();
    assert!(text(&shelf).starts_with(CLIENT));
    assert_eq!(recorded.entries().map(|own| own.0).collect::<Vec<_>>(), [1]);
    // Nothing was planned and nothing put in, so nothing can have been moved.
    let before = text(&shelf);
    let error = done(&shelf, &Done::Moved(None)).unwrap_err();
    assert_eq!(error.whose, Whose::Asker);
    assert_eq!(text(&shelf), before);
    // Without a word on who it was, nothing is written either.
    let nobody = Recorder { by: " ", ..OT };
    let surroundings = Surroundings { shelf: &shelf, layouts: &BuiltIn };
    assert!(casework::record_done(surroundings, FILE, &Done::Cleaned, &nobody).is_err());
    assert_eq!(text(&shelf), before);
}

#[test]
fn a_plan_is_a_proposal_and_adjust_begins_from_what_was_counted() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    assert!(case.record_plan(&shelf, &plan, false, &OT).unwrap());
    let planned: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
    // Nobody said what was put in: the plan is taken to be.
    let believed = open(&shelf).counts_now(DAY, Stop::never()).unwrap();
    assert_eq!((believed.counts, believed.from), (planned.clone(), Some(CountedFrom::Plan(DAY))));
    let counts = planned.iter().zip(1_u8..).map(|(cells, number)| (number, cells - 2)).collect();
    let counted = Counted { counts: Some(counts), ..Counted::default() };
    done(&shelf, &Done::Filled(counted)).unwrap();
    let now = open(&shelf).counts_now(DAY, Stop::never()).unwrap();
    assert_eq!(now.counts, planned.iter().map(|cells| cells - 2).collect::<Vec<_>>());
    assert_eq!(now.from, Some(CountedFrom::Filled(DAY)));
    // Another plan changes nothing in the cushion.
    let again = open(&shelf);
    let plan = again.plan(DAY, Stop::never()).unwrap();
    assert!(again.record_plan(&shelf, &plan, false, &OT).unwrap());
    assert_eq!(open(&shelf).counts_now(DAY, Stop::never()).unwrap(), now);
}

#[test]
fn counts_that_break_a_limit_are_a_fact_and_not_safe_until_they_are_mended() {
    let shelf = shelf();
    let case = open(&shelf);
    let plan = case.plan(DAY, Stop::never()).unwrap();
    assert!(case.record_plan(&shelf, &plan, false, &OT).unwrap());
    let planned: Vec<u32> = plan.counts.iter().map(|count| count.planned).collect();
    let stands = || open(&shelf).standing(DAY).state.id();
    let fill = |less: u32| {
        let counts = planned.iter().zip(1_u8..).map(|(own, number)| (number, own - less));
        let counted = Counted { counts: Some(counts.collect()), ..Counted::default() };
        done(&shelf, &Done::Filled(counted)).unwrap();
    };
    fill(0);
    assert_eq!(stands(), "estimate");
    // A third of the cells under a seat bone is missing.
    fill(15);
    assert_eq!(stands(), "not-safe");
    let listed = casework::roster(
        &PreparedCushions::default(),
        Surroundings { shelf: &shelf, layouts: &BuiltIn },
        DAY,
    )
    .unwrap();
    assert_eq!(listed[0].standing(DAY).unwrap().state.id(), "not-safe");
    // Others than were planned are not unsafe for that alone.
    fill(1);
    assert_eq!(stands(), "estimate");
    fill(15);
    fill(0);
    assert_eq!(stands(), "estimate");
}
