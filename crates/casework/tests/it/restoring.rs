//! A client's file made of the code on a card: whole, never more than an estimate, or refused.

use case::{
    CardCode, CodePart, Date, DigestHead, Entry, NotRestored, PlanMark, Trouble, check_word,
};
use casework::{
    Lost, RestoredFile, Sourced, Surroundings, WorkError, pattern, restored, stock_fill,
};
use cushion::{Layout, Pattern};
use files::{BUILT_IN_LAYOUTS, BuiltIn, MOST_SIGNS};
use testkit::MemoryShelf;

const DAY: Date = Date::constant(2026, 3, 4);

fn head(digits: &str) -> DigestHead {
    DigestHead::new(digits).unwrap()
}

/// The code of a built-in layout in a size, with counts and a check word that belong to it.
fn code(layout: &Sourced<Layout>, pattern: &Pattern, counts: Vec<u32>) -> CardCode {
    let cell = surroundings(&MemoryShelf::default()).cell(None).unwrap();
    let (name, size) = (pattern.layout().to_string(), pattern.size());
    let digests = [layout.digest(), cell.digest()];
    // The check word, written down anew: layout, size and digests, then a line for each compartment.
    let each = pattern.compartments().iter().zip(&counts);
    let each = each.map(|(own, cells)| format!("{} {} {cells}\n", own.number, own.id));
    let text = format!("{name} {size} {} {}\n{}", digests[0], digests[1], each.collect::<String>());
    let word = check_word(&files::digest(&text));
    CardCode {
        layout: name,
        layout_digest: DigestHead::of(&digests[0]),
        cell: cell.value.name.to_string(),
        cell_digest: DigestHead::of(&digests[1]),
        size,
        counts,
        mark: PlanMark { number: 12, word },
        serial: Some("SW-2026-0142".to_owned()),
        client: None,
    }
}

fn surroundings(shelf: &MemoryShelf) -> Surroundings<'_> {
    Surroundings { shelf, layouts: &BuiltIn }
}

fn made_of(code: &CardCode, more: Lost<'_>) -> Result<RestoredFile, WorkError> {
    let text = files::card_text(code).unwrap();
    let lost = Lost { text: &text, ..more };
    let shelf = MemoryShelf::default();
    restored(surroundings(&shelf), &lost, "K-17.toml", (DAY, words::ENGLISH))
}

/// A code of six compartments.
fn usual() -> CardCode {
    let shelf = MemoryShelf::default();
    let mut layout = surroundings(&shelf).layout("row-six", "440x400".parse().unwrap()).unwrap();
    let cell = surroundings(&shelf).cell(None).unwrap();
    let made = pattern(&mut layout, "440x400".parse().unwrap(), &cell.value).unwrap();
    code(&layout, &made, vec![44, 47, 30, 30, 31, 31])
}

fn why(made: Result<RestoredFile, WorkError>) -> NotRestored {
    match *made.unwrap_err().what {
        Trouble::NotRestored(why) => why,
        other => panic!("{other:?}"),
    }
}

/// Every built-in layout in every size that is made, with twice the cells of the stock fill: more
/// than any plan has.
#[test]
fn the_largest_counts_of_every_made_size_come_back() {
    let shelf = MemoryShelf::default();
    let around = surroundings(&shelf);
    let cell = around.cell(None).unwrap();
    for built_in in BUILT_IN_LAYOUTS {
        let sizes = files::read_layout(built_in.text).value.unwrap().sizes;
        assert!(sizes.len() > 1);
        for size in sizes.into_iter().map(|made| made.size) {
            let mut layout = around.layout(built_in.name, size).unwrap();
            let drawn = pattern(&mut layout, size, &cell.value).unwrap();
            let stock = stock_fill(&mut layout, &drawn, &cell.value).unwrap();
            let counts = stock.compartments.iter().map(|own| 2 * own.cells.high);
            let own = code(&layout, &drawn, counts.collect());
            let text = files::card_text(&own).unwrap();
            assert!(text.len() <= MOST_SIGNS, "{text}");
            let made = made_of(&own, Lost::default()).unwrap();
            assert_eq!(made.restored.code, own, "{text}");
            let whole = filled_in(&made.text);
            let read = files::read_client(&whole);
            let client = read.value.unwrap_or_else(|| panic!("{:?}", read.remarks));
            let numbers = drawn.compartments().iter().map(|at| at.number);
            let wanted: Vec<(u8, u32)> = numbers.zip(own.counts.iter().copied()).collect();
            let now = client.cushion_now().unwrap();
            assert_eq!(now.counts.into_iter().collect::<Vec<_>>(), wanted);
            assert_eq!(now.from, case::CountedFrom::Filled(DAY));
            assert_eq!((client.cushion.size, client.cushion.serial), (size, own.serial));
        }
    }
}

/// The same file with its blanks filled in.
fn filled_in(text: &str) -> String {
    let answers = [
        ("client", "K-17"),
        ("measures.taken_on", "2026-03-04"),
        ("measures.taken_by", "OT"),
        ("measures.hip_width", "380"),
        ("measures.thigh_depth.left", "480"),
        ("measures.thigh_depth.right", "480"),
        ("weight.kg", "60"),
        ("weight.weighed_on", "2026-03-04"),
        ("cushion.spare_cells", "20"),
    ];
    let set =
        |text: String, (key, value): (&str, &str)| files::set(&text, key, value).unwrap().text;
    answers.into_iter().fold(text.to_owned(), set)
}

#[test]
fn a_restored_file_is_never_fitted() {
    let made = made_of(&usual(), Lost::default()).unwrap();
    assert!(made.text.starts_with("# RESTORED FROM A CODE, NOT CHECKED"), "{}", made.text);
    let read = files::read_client(&made.text);
    assert!(read.value.is_none(), "what is blank is refused");
    let client = files::read_client(&filled_in(&made.text)).value.unwrap();
    let [Entry::Filled(filled)] = client.record.as_slice() else { panic!("{:?}", client.record) };
    assert!(filled.why.as_deref().is_some_and(|why| why.contains("an estimate until")));
    let standing = case::state(&client, DAY, case::Beside::default());
    assert_eq!(standing.state, case::State::Estimate);
}

#[test]
fn what_is_needed_and_not_there_is_named() {
    let mut own = usual();
    own.layout = "row-four".to_owned();
    let (part, name) = (CodePart::Layout, "row-four".to_owned());
    let needed = NotRestored::Needed { part, name, head: own.layout_digest.clone() };
    assert_eq!(why(made_of(&own, Lost::default())), needed);
    let mut own = usual();
    own.cell = "ball-40".to_owned();
    let (part, name) = (CodePart::Cell, "ball-40".to_owned());
    let needed = NotRestored::Needed { part, name, head: own.cell_digest.clone() };
    assert_eq!(why(made_of(&own, Lost::default())), needed);
    let mut own = usual();
    own.layout_digest = head("0123456789");
    let other = why(made_of(&own, Lost::default()));
    assert!(
        matches!(&other, NotRestored::OtherText { part: CodePart::Layout, name, head, .. }
            if name == "row-six" && *head == own.layout_digest),
        "{other:?}"
    );
    let mut own = usual();
    own.cell_digest = head("0123456789");
    let other = why(made_of(&own, Lost::default()));
    assert!(matches!(other, NotRestored::OtherText { part: CodePart::Cell, .. }), "{other:?}");
}

/// Codes whose last part goes with the rest, and which no card of ours has.
#[test]
fn made_up_counts_are_refused() {
    let mut own = usual();
    own.counts[0] += 1;
    let word = own.mark.word.clone();
    assert_eq!(why(made_of(&own, Lost::default())), NotRestored::OtherWord { word });
    let mut own = usual();
    own.counts.push(30);
    let more = why(made_of(&own, Lost::default()));
    assert!(
        matches!(more, NotRestored::OtherCompartments { counts: 7, compartments: 6, .. }),
        "{more:?}"
    );
}

#[test]
fn the_serial_of_another_cushion_is_refused() {
    let of = |serial| Lost { serial: Some(serial), ..Lost::default() };
    assert!(made_of(&usual(), of(" SW-2026-0142 ")).is_ok());
    let (given, coded) = ("SW-2026-0143".to_owned(), "SW-2026-0142".to_owned());
    let other = NotRestored::OtherSerial { given: given.clone(), coded };
    assert_eq!(why(made_of(&usual(), of("SW-2026-0143"))), other);
    let without = CardCode { serial: None, ..usual() };
    assert_eq!(why(made_of(&without, of("SW-2026-0143"))), NotRestored::NoSerial { given });
}
