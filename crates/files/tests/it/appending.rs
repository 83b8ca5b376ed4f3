//! Plans appended to a client's file.

use case::{Date, Digest, Entry, NotAppended, RecordedCount, RecordedPlan};
use cushion::Name;
use files::{append_entry, read_client, starter};

fn plan() -> RecordedPlan {
    let count = |id: &str, number, stock, planned| RecordedCount {
        id: Name::new(id).unwrap(),
        number,
        stock,
        planned,
    };
    RecordedPlan {
        on: Date::constant(2026, 3, 1),
        by: "OT \"north\"".into(),
        layout: "row-six".into(),
        size: "431.8x406.4".parse().unwrap(),
        counts: vec![count("rear-left", 1, 70, 78), count("rear-right", 2, 70, 72)],
        program: "seatwright 0.1.0".into(),
        layout_digest: Digest::new("0123456789abcdef").unwrap(),
        cell_digest: Digest::new("0123456789abcdee").unwrap(),
        parameters_digest: Digest::new("0123456789abcded").unwrap(),
        drawn_by: None,
        why: Some("for bring the pelvis level".into()),
        expected: None,
    }
}

/// The starter with the plan in its record.
pub(crate) fn recorded() -> String {
    append_entry(&starter::example(words::ENGLISH), &Entry::Plan(plan())).unwrap()
}

#[test]
fn what_is_written_is_read_back() {
    let client = read_client(&recorded()).value.unwrap();
    assert_eq!(client.record, [Entry::Plan(plan())]);
    let drawn = RecordedPlan { drawn_by: Some("rings 1.2".into()), ..plan() };
    let twice = append_entry(&recorded(), &Entry::Plan(drawn.clone())).unwrap();
    let client = read_client(&twice).value.unwrap();
    assert_eq!(client.record, [Entry::Plan(plan()), Entry::Plan(drawn)]);
}

#[test]
fn what_a_person_wrote_stays_byte_for_byte() {
    for before in [
        starter::example(words::ENGLISH),
        starter::example(words::ENGLISH).trim_end().to_owned(),
        starter::example(words::ENGLISH).replace('\n', "\r\n"),
        format!("{}\n# the last word\n\n\n", starter::example(words::ENGLISH)),
    ] {
        let after = append_entry(&before, &Entry::Plan(plan())).unwrap();
        assert!(after.starts_with(&before));
        assert!(read_client(&after).value.is_some());
        assert_eq!(before.contains("\r\n"), !after.replace("\r\n", "").contains('\n'));
    }
}

#[test]
fn a_record_that_is_no_list_is_refused() {
    assert_eq!(append_entry("record = 3\n", &Entry::Plan(plan())), Err(NotAppended::RecordForm));
    let broken = append_entry("record = \n", &Entry::Plan(plan()));
    assert!(matches!(broken, Err(NotAppended::NotToml(_))), "{broken:?}");
}
