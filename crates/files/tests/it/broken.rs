//! Random damage to all our files: reading never panics, and what it says lies in the text.

use cushion::Severity;
use files::{
    BUILT_IN_CELLS, BUILT_IN_LAYOUTS, Known, check, read_cell, read_client, read_layout, starter,
};
use proptest::prelude::*;
use proptest::test_runner::RngSeed;

fn texts() -> Vec<String> {
    let built_in = BUILT_IN_LAYOUTS.iter().chain(BUILT_IN_CELLS).map(|text| text.text.to_owned());
    let starters = [starter::layout().to_owned(), starter::cell().to_owned()];
    let clients = [starter::client(words::ENGLISH), starter::example(words::ENGLISH)];
    built_in.chain(starters).chain(clients).chain([crate::appending::recorded()]).collect()
}

#[derive(Clone, Debug)]
enum Damage {
    DropLine(usize),
    DoubleLine(usize),
    SwapLines(usize, usize),
    ChangeByte(usize, u8),
    Cut(usize),
    Number(usize, &'static str),
    Insert(usize, &'static str),
}

fn damage() -> impl Strategy<Value = Damage> {
    let place = 0..10_000_usize;
    let number = prop::sample::select(vec![
        "nan",
        "-inf",
        "-1",
        "0",
        "1e300",
        "1e-300",
        "99999999999",
        "\"\"",
        "[]",
        "{}",
    ]);
    let piece = prop::sample::select(vec![
        "\0",
        "é",
        "\u{2028}",
        "[",
        "\"\"\"",
        " = ",
        "\n[[record]]\n",
        "#",
        "%",
    ]);
    prop_oneof![
        place.clone().prop_map(Damage::DropLine),
        place.clone().prop_map(Damage::DoubleLine),
        (place.clone(), place.clone()).prop_map(|(a, b)| Damage::SwapLines(a, b)),
        (place.clone(), 32..127_u8).prop_map(|(at, byte)| Damage::ChangeByte(at, byte)),
        place.clone().prop_map(Damage::Cut),
        (place.clone(), number).prop_map(|(at, number)| Damage::Number(at, number)),
        (place, piece).prop_map(|(at, piece)| Damage::Insert(at, piece)),
    ]
}

impl Damage {
    fn done_to(&self, text: &str) -> String {
        let mut lines: Vec<&str> = text.lines().collect();
        let count = lines.len().max(1);
        let border = |at: usize| {
            let at = at % (text.len() + 1);
            (0..=at).rev().find(|&at| text.is_char_boundary(at)).unwrap_or(0)
        };
        match *self {
            Self::DropLine(at) => {
                lines.remove(at % count);
            }
            Self::DoubleLine(at) => lines.insert(at % count, lines[at % count]),
            Self::SwapLines(a, b) => lines.swap(a % count, b % count),
            Self::ChangeByte(at, byte) => {
                let mut bytes = text.as_bytes().to_vec();
                let at = at % bytes.len().max(1);
                bytes[at] = byte;
                return String::from_utf8_lossy(&bytes).into_owned();
            }
            Self::Cut(at) => return text[..border(at)].to_owned(),
            Self::Number(at, number) => return with_number(text, at, number),
            Self::Insert(at, piece) => {
                let at = border(at);
                return format!("{}{piece}{}", &text[..at], &text[at..]);
            }
        }
        lines.join("\n")
    }
}

/// Puts `number` in the place of one of the numbers in a text.
fn with_number(text: &str, at: usize, number: &str) -> String {
    let starts: Vec<usize> = text
        .char_indices()
        .filter(|&(place, c)| {
            c.is_ascii_digit()
                && !text[..place].ends_with(|c: char| c.is_ascii_alphanumeric() || c == '.')
        })
        .map(|(place, _)| place)
        .collect();
    let Some(&start) = starts.get(at % starts.len().max(1)) else { return text.to_owned() };
    let length = text[start..].find(|c: char| !c.is_ascii_digit() && c != '.');
    let end = start + length.unwrap_or(text.len() - start);
    format!("{}{number}{}", &text[..start], &text[end..])
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 400,
        failure_persistence: None,
        rng_seed: RngSeed::Fixed(23),
        ..ProptestConfig::default()
    })]

    #[test]
    fn damaged_files_are_read_or_remarked_on(
        which in 0..9_usize,
        damages in prop::collection::vec(damage(), 1..4),
    ) {
        let texts = texts();
        let whole = &texts[which % texts.len()];
        let text = damages.iter().fold(whole.clone(), |text, damage| damage.done_to(&text));
        let remarks = check(&text, &Known::NOTHING).remarks;
        for remark in &remarks {
            prop_assert!(text.get(remark.span.clone()).is_some(), "{remark:?}");
            prop_assert!(!crate::said_of(remark).message.is_empty());
        }
        let is_error = |remark: &files::Remark| remark.severity == Severity::Error;
        for (value, remarks) in [
            { let read = read_layout(&text); (read.value.is_some(), read.remarks) },
            { let read = read_cell(&text); (read.value.is_some(), read.remarks) },
            { let read = read_client(&text); (read.value.is_some(), read.remarks) },
        ] {
            prop_assert_eq!(value, !remarks.iter().any(is_error), "{:?}", remarks);
        }
    }
}
