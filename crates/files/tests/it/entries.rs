//! Entries of the record: what is written is read back, and what is wrong has its place.

use case::{
    Adjustment, Check, Cleaned, Date, Entry, Expected, Filled, FittingCheck, Move, Moved,
    PartsChecked, Place, Recount, Returned, Sides, SiteName, SkinAnswer, SkinSeen, Weighed,
    Withdrawn,
};
use cushion::{Length, Mass, Side};
use files::{append_entry, read_client, starter};

use crate::appending::recorded;

const DAY: Date = Date::constant(2026, 3, 2);

fn by() -> String {
    "OT".into()
}

fn filled(spare: Option<u32>) -> Filled {
    Filled {
        on: DAY,
        by: by(),
        cushion: Some(("row-six".into(), "440x400".parse().unwrap())),
        counts: vec![(1, 44), (2, 47)],
        spare,
        batch: Some("B-7".into()),
        serial: Some("SW \"1\"".into()),
        why: Some("as planned".into()),
    }
}

/// One of each kind but for plans, which have their own tests.
fn all() -> Vec<Entry> {
    let checks = vec![
        Check::read_whole("top left=safe").unwrap(),
        Check::read_whole("under right=31.5mm").unwrap(),
    ];
    let moves = vec![
        Move { from: Place::Spare, to: Place::Compartment(2), cells: 4 },
        Move { from: Place::Compartment(1), to: Place::Spare, cells: 1 },
    ];
    let (on, counts) = (DAY, vec![(1, 44), (2, 47)]);
    let none = Filled { cushion: None, batch: None, serial: None, why: None, ..filled(None) };
    vec![
        Entry::FittingCheck(FittingCheck { on, by: by(), passed: Some(false), found: None }),
        Entry::Adjustment(Adjustment {
            on,
            by: by(),
            checks: checks.clone(),
            moves: moves.clone(),
            why: Some("sits lower".into()),
        }),
        Entry::Recount(Recount { on, by: by(), counts: vec![(2, 43)], spare: Some(11) }),
        Entry::Recount(Recount { on, by: by(), counts: Vec::new(), spare: Some(0) }),
        Entry::Weighed(Weighed { on, by: by(), weight: Mass::from_kg(61.5) }),
        Entry::Filled(filled(Some(12))),
        Entry::Incoming(none),
        Entry::Checked(PartsChecked {
            on,
            by: by(),
            found: checks,
            transfer: true,
            reach: false,
            passed: None,
            why: None,
        }),
        Entry::Moved(Moved { on, by: by(), moves, why: None }),
        Entry::Returned(Returned { on, by: by(), entry: 1, counts, why: None }),
        Entry::Skin(SkinSeen { on, by: by(), site: SiteName::Coccyx, answer: SkinAnswer::Stays }),
        Entry::Cleaned(Cleaned { on, by: by(), why: Some("wet".into()) }),
        Entry::Withdrawn(Withdrawn { on, by: by(), entry: 2, because: "a mistake".into() }),
    ]
}

#[test]
fn each_entry_that_is_written_is_read_back() {
    let mut text = recorded();
    let before = read_client(&text).value.unwrap().record;
    for entry in all() {
        text = append_entry(&text, &entry).unwrap();
    }
    let read = read_client(&text);
    let record = read.value.unwrap_or_else(|| panic!("{:#?}", read.remarks)).record;
    assert_eq!(record[before.len()..], all());
    assert_eq!(read.remarks, [], "{text}");
}

#[test]
fn each_entry_keeps_the_schema() {
    let mut text = recorded();
    for entry in all() {
        text = append_entry(&text, &entry).unwrap();
    }
    crate::schemas::right(case::FileKind::Client, &text);
}

#[test]
fn what_a_plan_expected_is_read_back_to_a_tenth_of_a_millimetre() {
    let mut record = read_client(&recorded()).value.unwrap().record;
    let Some(Entry::Plan(mut plan)) = record.pop() else { panic!("no plan") };
    let expected = |left, lower| Expected {
        under: Sides { left: Length::from_mm(left), right: Length::from_mm(-2.0) },
        lower,
        weight: Mass::from_kg(60.0),
    };
    let lower = Some((Side::Left, Length::from_mm(4.5)));
    for (own, left, lower) in [(31.26, 31.3, lower), (31.0, 31.0, None)] {
        plan.expected = Some(expected(own, lower));
        let text = append_entry(&recorded(), &Entry::Plan(plan.clone())).unwrap();
        let record = read_client(&text).value.unwrap().record;
        let Some(Entry::Plan(read)) = record.last() else { panic!("{text}") };
        assert_eq!(read.expected, Some(expected(left, lower)), "{text}");
    }
}

/// The record with an entry by hand, and the first word said of it with its line within the entry.
#[track_caller]
fn said(entry: &str) -> (String, usize) {
    let before = recorded();
    let text = format!("{before}\n[[record]]\n{entry}");
    let read = read_client(&text);
    let first = read.remarks.first().unwrap_or_else(|| panic!("nothing is said of {entry}"));
    let line = text[..first.span.start].lines().count() - before.lines().count();
    (crate::said_of(first).message, line)
}

#[test]
fn what_is_wrong_with_an_entry_is_said_at_its_place() {
    let signed = "on = 2026-03-02\nby = \"OT\"\n";
    for (entry, expected) in [
        ("what = \"filled\"\non = 2026-03-02\ncounts = [{ number = 1, cells = 4 }]", "`by`"),
        (&*format!("what = \"filled\"\n{signed}"), "`counts`"),
        (&format!("what = \"filled\"\n{signed}counts = []"), "there are no counts"),
        (&format!("what = \"filled\"\n{signed}counts = [{{ number = 1, cells = -4 }}]"), "4"),
        (&format!("what = \"skin\"\n{signed}site = \"knee\"\nis = \"stays\""), "knee"),
        (&format!("what = \"skin\"\n{signed}site = \"coccyx\"\nis = \"red\""), "red"),
        (&format!("what = \"cleaned\"\n{signed}soap = true"), "soap"),
        (&format!("what = \"withdrawn\"\n{signed}entry = 1"), "`because`"),
        (
            &format!("what = \"withdrawn\"\n{signed}entry = 2\nbecause = \"x\""),
            "entry 2 of the record speaks of entry 2",
        ),
        (
            &format!(
                "what = \"filled\"\n{signed}layout = \"row-six\"\n\
                 counts = [{{ number = 1, cells = 4 }}]"
            ),
            "`size`",
        ),
        (
            &format!(
                "what = \"filled\"\n{signed}\
                 counts = [{{ number = 1, cells = 4 }}, {{ number = 1, cells = 5 }}]"
            ),
            "counted twice",
        ),
        (
            &format!("what = \"checked\"\n{signed}found = [\"top left=safe\"]\npassed = true"),
            "not finished",
        ),
        (
            &format!(
                "what = \"checked\"\n{signed}found = [\"under left=bone-felt\"]\npassed = true"
            ),
            "has not passed",
        ),
    ] {
        let (message, line) = said(entry);
        assert!(message.contains(expected), "{entry}: {message}");
        assert!(line >= 1, "{entry}: {message} at line {line}");
    }
}

#[test]
fn a_starter_has_no_record_and_an_entry_may_follow_it() {
    let text = append_entry(&starter::example(words::ENGLISH), &all()[5]).unwrap();
    assert_eq!(read_client(&text).value.unwrap().record, [all()[5].clone()]);
}
