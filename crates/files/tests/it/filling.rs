//! A fill that goes on: what is written is read back and taken away again without a trace, and what
//! is wrong has its place.

use case::text::{RecordFinding, TextFinding};
use case::{Client, Date, Filling, FillingCount, NotAppended, StaleFilling};
use files::{Severity, append_entry, read_client, remove, set, starter, with_filling};

use crate::appending::recorded as planned;

/// A file whose plan is for its cushion.
fn recorded() -> String {
    set(&planned(), "cushion.size", "431.8x406.4").unwrap().text
}

/// The plan of `recorded` with its first compartment filled, one cell more than planned.
fn begun() -> Filling {
    let count = |number, planned, put| FillingCount { number, planned, put };
    Filling {
        on: Date::constant(2026, 3, 2),
        by: "OT \"north\"".into(),
        after: 1,
        counts: vec![count(1, 78, Some(79)), count(2, 72, None)],
    }
}

fn client(text: &str) -> Client {
    let read = read_client(text);
    read.value.unwrap_or_else(|| panic!("{:#?}", read.remarks))
}

#[test]
fn how_far_a_fill_is_is_read_back_and_leaves_no_trace() {
    let more = Filling {
        counts: begun().counts.iter().map(|own| FillingCount { put: Some(3), ..*own }).collect(),
        ..begun()
    };
    for before in [
        recorded(),
        recorded().trim_end().to_owned(),
        recorded().replace('\n', "\r\n"),
        format!("{}\n# the last word\n", recorded()),
        format!("\u{feff}{}", recorded()),
    ] {
        let first = with_filling(&before, Some(&begun())).unwrap();
        assert_eq!(client(&first).filling, Some(begun()), "{first}");
        let second = with_filling(&first, Some(&more)).unwrap();
        assert_eq!(client(&second).filling, Some(more.clone()), "{second}");
        assert_eq!(second.matches("[filling]").count(), 1, "{second}");
        assert_eq!(before.contains("\r\n"), !second.replace("\r\n", "").contains('\n'));
        assert_eq!(with_filling(&second, None).unwrap(), before);
        assert_eq!(remove(&second, "filling").unwrap().text, before);
        assert_eq!(with_filling(&before, None).unwrap(), before);
    }
}

#[test]
fn entries_may_follow_a_fill_that_was_written_by_hand_at_the_end() {
    let block = with_filling(&recorded(), Some(&begun())).unwrap();
    let at = block.find("[filling]").unwrap();
    let end = at + block[at..].find("]\n").unwrap() + 1;
    let end = end + block[end..].find("\n]\n").unwrap() + 3;
    let last = format!("{}\n{}", recorded(), &block[at..end]);
    let plan = client(&last).record[0].clone();
    let followed = append_entry(&last, &plan).unwrap();
    let read = client(&followed);
    assert_eq!((read.record.len(), read.filling), (2, Some(begun())), "{followed}");
    let without = with_filling(&followed, None).unwrap();
    assert_eq!((client(&without).record.len(), client(&without).filling), (2, None), "{without}");
}

#[test]
fn a_fill_keeps_the_schema() {
    let text = with_filling(&recorded(), Some(&begun())).unwrap();
    crate::schemas::right(case::FileKind::Client, &text);
}

/// The file with lines of a fill by hand.
fn by_hand(lines: &str) -> String {
    let text = recorded();
    let record = text.find("[[record]]\nwhat = \"plan\"").unwrap();
    format!("{}[filling]\n{lines}\n\n{}", &text[..record], &text[record..])
}

#[test]
fn what_is_wrong_with_a_fill_is_said_at_its_place() {
    let signed = "on = 2026-03-02\nby = \"OT\"\nafter = 1\n";
    let of = |counts: &str| format!("{signed}counts = [{counts}]");
    let one = "{ number = 1, planned = 78 }";
    for (lines, expected, line) in [
        (format!("by = \"OT\"\nafter = 1\ncounts = [{one}]"), "`on`", 0),
        (format!("on = 2026-03-02\nafter = 1\ncounts = [{one}]"), "`by`", 0),
        (format!("on = 2026-03-02\nby = \"OT\"\ncounts = [{one}]"), "`after`", 0),
        (signed.to_owned(), "`counts`", 0),
        (of(""), "there are no counts", 4),
        (of(one).replace("after = 1", "after = 2"), "begun after entry 2, and there are 1", 3),
        (of(one).replace("after = 1", "after = -1"), "-1", 3),
        (of(one).replace("\"OT\"", "\" \""), "", 2),
        (of("{ number = 1, planned = 78, first = 79 }"), "`second`", 4),
        (of("{ number = 1, planned = 78, second = 79 }"), "`first`", 4),
        (of("{ number = 1, planned = 78, first = 79, second = 78 }"), "are 79 and 78", 4),
        (of("{ number = 1, planned = 78, first = 7.5, second = 7.5 }"), "whole", 4),
        (of("{ number = 1, planned = 78, first = nan, second = nan }"), "", 4),
        (of("{ number = 1, planned = 78, first = 500001, second = 500001 }"), "500001", 4),
        (of("{ number = 0, planned = 78 }"), "0", 4),
        (of("{ planned = 78 }"), "`number`", 4),
        (of("{ number = 1 }"), "`planned`", 4),
        (of("{ number = 1, planned = 78, third = 78 }"), "`third`", 4),
        (of(&format!("{one}, {one}")), "counted twice", 4),
        (format!("{}\nspare = 3", of(one)), "`spare`", 5),
    ] {
        let text = by_hand(&lines);
        let lines_before = |at: usize| text[..at].matches('\n').count();
        let head = lines_before(text.find("[filling]").unwrap());
        let read = read_client(&text);
        assert_eq!(read.value.and_then(|own| own.filling), None, "{lines}");
        let first = read.remarks.iter().find(|own| own.severity == Severity::Error);
        let first = first.unwrap_or_else(|| panic!("nothing is said of {lines}"));
        let message = crate::said_of(first).message;
        assert!(message.contains(expected), "{lines}: {message}");
        let at = lines_before(first.span.start);
        assert_eq!(at - head, line, "{lines}: {message}");
    }
}

#[test]
fn a_fill_is_told_of_in_the_file_and_is_never_the_record() {
    let text = with_filling(&recorded(), Some(&begun())).unwrap();
    let read = read_client(&text);
    let TextFinding::Record(RecordFinding::Filling(own)) = &read.remarks[0].finding else {
        panic!("{:?}", read.remarks)
    };
    assert_eq!((own.counted, own.of, own.stale), (1, 2, None));
    assert_eq!(&text[read.remarks[0].span.clone()], "filling");
    let (with, without) = (client(&text), client(&recorded()));
    assert_eq!(with.record, without.record);
    assert_eq!(with.cushion_now(), without.cushion_now());
    assert_eq!(with.counts_on_paper(), without.counts_on_paper());
}

#[test]
fn a_fill_in_another_form_is_left_to_hands() {
    for (line, is_table) in
        [("filling = 3", false), ("filling = []", false), ("filling = {}", true)]
    {
        let head = starter::example(words::ENGLISH);
        let text = head.replacen("kind = \"client\"", &format!("kind = \"client\"\n{line}"), 1);
        assert_eq!(read_client(&text).value, None, "{line}");
        let written = with_filling(&text, None);
        match is_table {
            true => assert_eq!(written, Ok(head)),
            false => assert_eq!(written, Err(NotAppended::FillingForm)),
        }
    }
    // More cells than a file takes would make a wrong file.
    let mut more = begun();
    more.counts[0].put = Some(500_001);
    assert_eq!(with_filling(&recorded(), Some(&more)), Err(NotAppended::FillingForm));
}

#[test]
fn nothing_of_a_fill_is_begun_by_a_key() {
    assert!(set(&recorded(), "filling.counts", "[]").is_err());
    assert!(set(&recorded(), "filling", "{}").is_err());
    assert!(remove(&recorded(), "filling").is_err());
    let begun = with_filling(&recorded(), Some(&begun())).unwrap();
    let other = set(&begun, "cushion.size", "400x400").unwrap().text;
    assert_eq!(client(&other).filling_so_far().unwrap().stale, Some(StaleFilling::OtherCounts));
}
