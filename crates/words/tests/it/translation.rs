//! Each language says the same as English, sentence by sentence: in other words, with the same
//! numbers and the same sides.

use case::question::{Answer, Group, LANGUAGE_TAGS, Question, Unused};
use case::text::LengthUnit;
use case::{CheckOutcome, PredictedOutcome, SiteName};
use cushion::{Side, Words};
use words::{ENGLISH, LANGUAGES, Language, by_tag};

use crate::findings::{clauses, sentences};
use crate::papers::{of_a_comparison, of_a_review, of_count, others, texts_of_documents};
use crate::program::{not_done, told};
use crate::record::said_of_entries;
use crate::sweep::{check_errors, findings, plugin_faults, troubles};

/// All that a language says of the values of these tests, in an order that is the same in each.
fn everything(say: &dyn Language) -> Vec<String> {
    let mut all = clauses(say);
    all.extend(sentences(say));
    all.extend([0, 1, 2, 21].into_iter().flat_map(|count| of_count(say, count)));
    all.extend(others(say));
    all.extend(texts_of_documents(say).concat());
    all.extend(of_questions(say));
    all.extend(of_a_comparison(say));
    all.extend(told(say));
    all.extend(said_of_entries(say));
    let (findings, troubles) = (findings(), troubles());
    let (errors, faults) = (check_errors(), plugin_faults());
    let said = findings.iter().map(|own| say.about_text(own));
    let said = said.chain(troubles.iter().map(|own| say.trouble(own)));
    let said = said.chain(errors.iter().map(|own| say.no_check(own)));
    let said = said.chain(faults.iter().map(|own| say.plugin_fault(own)));
    let reviewed = of_a_review();
    let said = said.chain(reviewed.iter().map(|own| say.review_finding(own)));
    let said = said.chain(not_done(say));
    // A hint that is there in one language is there in each.
    all.extend(said.flat_map(|own| [own.message, own.hint.unwrap_or_default()]));
    all
}

fn of_questions(say: &dyn Language) -> Vec<String> {
    let mut all = vec![say.or().to_owned(), say.client_head().into(), say.record_head().into()];
    for question in Question::ALL {
        all.extend([say.label(*question), say.comment(*question)].map(str::to_owned));
        all.extend([say.label_on_form(*question), say.comment_on_form(*question).to_owned()]);
    }
    for group in Group::ALL {
        all.extend([say.group_comment(*group), say.group_heading(*group)].map(str::to_owned));
        all.push(say.group_comment_on_form(*group).to_owned());
    }
    let outcomes = [
        PredictedOutcome::AtRest,
        PredictedOutcome::Bottomed,
        PredictedOutcome::LeansAway,
        PredictedOutcome::Tipping,
        PredictedOutcome::OutOfSteps,
    ];
    all.extend(outcomes.map(|own| say.outcome(own).to_owned()));
    all.extend(SiteName::ALL.iter().map(|own| say.site(*own).to_owned()));
    all.extend([Side::Left, Side::Right].map(|own| say.side(own).to_owned()));
    all.extend([Answer::Reading, Answer::Plan].map(|own| say.answer(own).to_owned()));
    let whys = [Unused::ForReaders, Unused::NotModelled, Unused::NoRule];
    all.extend(whys.map(|own| say.unused(own).to_owned()));
    let checks = [CheckOutcome::Passed, CheckOutcome::NotFinished, CheckOutcome::Failed];
    all.extend(checks.map(|own| say.check_outcome(own).to_owned()));
    all
}

/// Each thing that is said, in English and in another language.
fn pairs() -> Vec<(String, String)> {
    let mut pairs = Vec::new();
    for unit in [LengthUnit::Millimetres, LengthUnit::Inches] {
        let english = everything(ENGLISH.with_lengths_in(unit));
        for other in LANGUAGES.into_iter().filter(|own| own.tag() != ENGLISH.tag()) {
            let other = everything(other.with_lengths_in(unit));
            assert_eq!(english.len(), other.len());
            pairs.extend(english.iter().cloned().zip(other));
        }
    }
    pairs
}

/// The words of a text, in small letters, without signs around them.
fn words_of(text: &str) -> Vec<String> {
    let words = text.split(|c: char| !c.is_alphanumeric());
    words.filter(|own| !own.is_empty()).map(str::to_lowercase).collect()
}

/// What a plugin says of itself, which these tests make up: it is the same in each language.
const OF_A_PLUGIN: &str = "There is no room";

#[test]
fn no_sentence_of_more_than_three_words_is_left_in_english() {
    let mut left: Vec<String> = Vec::new();
    for (english, other) in pairs() {
        let is_word = |own: &&String| own.chars().all(char::is_alphabetic);
        let prose = words_of(&english).iter().filter(is_word).count();
        let excused = english == OF_A_PLUGIN;
        left.extend((prose > 3 && english == other && !excused).then_some(english));
    }
    assert!(left.is_empty(), "{}", left.join("\n"));
}

#[test]
fn what_is_said_in_english_is_said_in_each_language() {
    let silent =
        pairs().into_iter().filter(|(english, other)| english.is_empty() != other.is_empty());
    let silent: Vec<_> = silent.collect();
    assert!(silent.is_empty(), "{silent:#?}");
}

/// The numbers of a text, in order of size, those after a decimal sign with a point.
fn numbers_of(text: &str) -> Vec<String> {
    let letters: Vec<char> = text.chars().collect();
    let mut numbers: Vec<String> = Vec::new();
    let mut at = 0;
    while at < letters.len() {
        let mut number = String::new();
        while let Some(c) = letters.get(at) {
            let before_digit = letters.get(at + 1).is_some_and(char::is_ascii_digit);
            match c {
                own if own.is_ascii_digit() => number.push(*own),
                '.' | ',' if !number.is_empty() && before_digit => number.push('.'),
                _ => break,
            }
            at += 1;
        }
        numbers.extend((!number.is_empty()).then_some(number));
        at += 1;
    }
    numbers.sort();
    numbers
}

#[test]
fn every_number_is_the_same_in_each_language() {
    let mut wrong = Vec::new();
    for (english, other) in pairs() {
        if numbers_of(&english) != numbers_of(&other) {
            wrong.push(format!("{english}\n  {other}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// In which "left" is what remains or is let be, and "right" is what is as it should be.
const NO_SIDES: [&str; 25] = [
    "left out",
    "left as it is",
    "left in the cold",
    " is left",
    " is right",
    "room left",
    "not right",
    "be right",
    "found it right",
    "put it right",
    "put right",
    "put these right",
    "on right",
    "right back",
    "are the sides right",
    "the year right",
    "the right file",
    "right angle",
    "right way round",
    "right kind",
    "was left",
    "must be left",
    "left blank",
    "put that right",
    "counts are right",
];

/// How often a text names the client's left and right, or the reader's.
fn sides_in_english(text: &str) -> [usize; 2] {
    let plain = NO_SIDES.iter().fold(text.to_lowercase(), |text, own| text.replace(own, ""));
    let words = words_of(&plain);
    ["left", "right"].map(|side| words.iter().filter(|own| *own == side).count())
}

fn sides_in_spanish(text: &str) -> [usize; 2] {
    // A word of a file that is told in brackets is one side.
    let told = [("left (izquierda)", "left"), ("right (derecha)", "right")];
    let words = words_of(&told.iter().fold(text.to_owned(), |text, (a, b)| text.replace(a, b)));
    // Words of files are the same in each language.
    [("izquierd", "left"), ("derech", "right")].map(|(side, of_file)| {
        words.iter().filter(|own| own.starts_with(side) || *own == of_file).count()
    })
}

#[test]
fn every_side_is_the_same_in_each_language() {
    let mut wrong = Vec::new();
    for (english, other) in pairs() {
        if sides_in_english(&english) != sides_in_spanish(&other) {
            wrong.push(format!("{english}\n  {other}"));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn decimals_stand_after_a_comma_in_spanish() {
    let spanish = by_tag("es").expect("it is there");
    assert_eq!(spanish.decimal(12.345, 1), "12,3");
    assert_eq!(spanish.number(0.5), "0,5");
    assert_eq!(ENGLISH.decimal(12.345, 1), "12.3");
}

#[test]
fn each_language_has_a_tag_of_its_own_by_which_files_name_it() {
    assert_eq!(LANGUAGES.map(Language::tag), LANGUAGE_TAGS);
    for own in LANGUAGES {
        assert!(Words::is_tag(own.tag()), "{own:?}");
        assert_eq!(by_tag(own.tag()).map(Language::own_name), Some(own.own_name()));
        for unit in [LengthUnit::Millimetres, LengthUnit::Inches] {
            assert_eq!(own.with_lengths_in(unit).tag(), own.tag());
        }
    }
    assert!(by_tag("xx").is_none());
}

/// A translation that no professional looked through says so in its own words and in English.
#[test]
fn only_what_was_translated_can_be_unreviewed_and_says_so_in_english_too() {
    assert_eq!(ENGLISH.unreviewed(), None);
    for own in LANGUAGES.into_iter().filter(|own| own.tag() != ENGLISH.tag()) {
        let line = own.unreviewed().expect("nobody looked through it");
        let [first, second] = line.split(" / ").collect::<Vec<_>>()[..] else { panic!("{line}") };
        assert!(!first.contains("Translation") && second.starts_with("Translation not "), "{line}");
    }
}
