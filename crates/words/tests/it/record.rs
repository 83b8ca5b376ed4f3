//! What is said of entries of the record: in words, as whoever was not there reads them.

use case::text::LengthUnit;
use case::{
    Adjustment, Check, Date, Entry, Filled, Move, Moved, PartsChecked, Place, Recount, Returned,
    SiteName, SkinAnswer, SkinSeen, Weighed, Withdrawn,
};
use cushion::Mass;
use words::{ENGLISH, Language};

use crate::findings::languages;

const DAY: Date = Date::constant(2026, 3, 4);

fn checks(said: &[&str]) -> Vec<Check> {
    said.iter().map(|own| Check::read_whole(own).expect("it is a check")).collect()
}

fn recount(counts: Vec<(u8, u32)>, spare: Option<u32>) -> Entry {
    Entry::Recount(Recount { on: DAY, by: "carer".into(), counts, spare })
}

fn checked(found: Vec<Check>) -> Entry {
    Entry::Checked(PartsChecked {
        on: DAY,
        by: "OT".into(),
        found,
        transfer: true,
        reach: true,
        passed: Some(true),
        why: Some("after a new cover".into()),
    })
}

/// Entries of each kind but plans and fitting checks as a whole.
fn entries() -> Vec<Entry> {
    let by = || "OT".to_owned();
    let moves = vec![
        Move { from: Place::Spare, to: Place::Compartment(7), cells: 3 },
        Move { from: Place::Compartment(1), to: Place::Compartment(2), cells: 1 },
    ];
    let filled = Filled {
        on: DAY,
        by: by(),
        cushion: None,
        counts: vec![(1, 36), (2, 62)],
        spare: Some(11),
        batch: Some("B-7".into()),
        serial: Some("T-0301".into()),
        why: None,
    };
    let found = checks(&[
        "top left=tight",
        "top right=pinched",
        "under left=20mm",
        "under right=bone-felt",
        "press 3=slack",
        "lower left=14mm@asis",
        "lower level",
        "reading coccyx=60mmHg",
        "skin coccyx=fades",
    ]);
    vec![
        Entry::Adjustment(Adjustment {
            on: DAY,
            by: by(),
            checks: found.clone(),
            moves: moves.clone(),
            why: None,
        }),
        recount(vec![(1, 36), (2, 62)], None),
        recount(vec![(2, 43)], Some(11)),
        recount(Vec::new(), Some(11)),
        Entry::Weighed(Weighed { on: DAY, by: by(), weight: Mass::from_kg(72.5) }),
        Entry::Incoming(filled.clone()),
        Entry::Filled(filled),
        checked(found),
        checked(Vec::new()),
        Entry::Moved(Moved { on: DAY, by: by(), moves, why: None }),
        Entry::Moved(Moved { on: DAY, by: by(), moves: Vec::new(), why: None }),
        Entry::Returned(Returned {
            on: DAY,
            by: by(),
            entry: 2,
            counts: vec![(1, 36), (2, 62)],
            why: None,
        }),
        Entry::Skin(SkinSeen {
            on: DAY,
            by: by(),
            site: SiteName::Coccyx,
            answer: SkinAnswer::Stays,
        }),
        Entry::Withdrawn(Withdrawn { on: DAY, by: by(), entry: 3, because: "a mistake".into() }),
    ]
}

/// What is said of each.
pub(crate) fn said_of_entries(say: &dyn Language) -> Vec<String> {
    entries().iter().flat_map(|own| [say.entry(own), say.entry_found(own)]).collect()
}

#[test]
fn no_entry_is_said_in_the_words_that_a_command_takes() {
    for say in languages() {
        for said in said_of_entries(say) {
            let is_plain =
                !said.contains(['=', '@']) && !said.contains(": ,") && !said.contains("; ;");
            assert!(is_plain, "{said}");
        }
    }
}

#[test]
fn what_was_counted_and_moved_is_said_with_its_place() {
    let said = |at: usize| ENGLISH.entry(&entries()[at]);
    assert_eq!(said(1), "recount: 36 in number 1, 62 in number 2");
    assert_eq!(said(2), "recount: 43 in number 2, 11 in the spare bag");
    assert_eq!(said(3), "recount of the spare bag alone: 11 cells");
    assert_eq!(
        said(6),
        "filled: 98 cells (36 in number 1, 62 in number 2), 11 in the spare bag, batch B-7, serial T-0301"
    );
    assert_eq!(said(8), "checked: not finished; after a new cover");
    assert_eq!(
        said(9),
        "moved: 3 cells from the spare bag to number 7, 1 cell from number 1 to number 2"
    );
}

#[test]
fn what_hands_felt_is_said_in_the_unit_of_whoever_measures() {
    let said = |unit| ENGLISH.with_lengths_in(unit).entry(&entries()[0]);
    let felt = "under the client's left seat bone: 20 mm of cushion";
    assert!(said(LengthUnit::Millimetres).contains(felt), "{}", said(LengthUnit::Millimetres));
    let felt = "under the client's left seat bone: 0.8 in (20 mm) of cushion";
    assert!(said(LengthUnit::Inches).contains(felt), "{}", said(LengthUnit::Inches));
    let lower = "the client's LEFT side is LOWER by 14 mm at the front of the pelvis";
    assert!(said(LengthUnit::Millimetres).contains(lower), "{}", said(LengthUnit::Millimetres));
}
