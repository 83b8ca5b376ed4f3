//! The blank form asks what the client's file asks, in its order.

use case::question::{Form, Group, Kind, Question};
use case::text::LengthUnit;
use sheets::{Document, PAPERS, Paper, Role};
use words::ENGLISH;

use crate::papers::{blank_form, texts};
use crate::sweep::faults;

fn words(document: &Document) -> String {
    document.pages.iter().flat_map(texts).collect::<Vec<_>>().join(" ").replace('\u{a0}', " ")
}

fn is_of_record(group: Group) -> bool {
    group.is_of_work() || group != group.parent() && is_of_record(group.parent())
}

/// The questions of the client's file that somebody answers beside the client.
fn asked() -> Vec<Question> {
    let is_asked = |own: &Question| {
        let row = own.row();
        let of_files = matches!(row.kind, Kind::Just(_) | Kind::Word(_) | Kind::Parameters);
        own.is_on_form() && !of_files
    };
    Question::ALL.iter().copied().filter(is_asked).collect()
}

#[test]
fn every_question_of_the_file_is_asked_in_its_order() {
    for paper in PAPERS {
        let said = words(&blank_form(LengthUnit::Millimetres, paper));
        let mut from = said.find("Leave out what nobody knows.").unwrap();
        for question in asked() {
            if question == Question::WeightLb {
                // Pounds are another way to write the same weight.
                assert!(said[from..].contains(" or lb "), "{}", &said[from..]);
                continue;
            }
            let label = ENGLISH.label_on_form(question);
            let at = said[from..].find(&label);
            from += at.unwrap_or_else(|| panic!("{question:?} is not after: {}", &said[..from]));
        }
    }
}

#[test]
fn every_word_of_a_choice_can_be_ringed() {
    let said = words(&blank_form(LengthUnit::Millimetres, Paper::A4));
    for question in asked().into_iter().filter(|own| *own != Question::Units) {
        let Kind::Choice(choices) = question.row().kind else { continue };
        for word in choices {
            assert!(said.contains(&ENGLISH.word_on_form(question, word)), "{question:?}: {word}");
        }
    }
}

#[test]
fn nothing_of_the_record_is_asked() {
    let said = words(&blank_form(LengthUnit::Millimetres, Paper::A4));
    let asked: Vec<String> = asked().into_iter().map(|own| ENGLISH.label_on_form(own)).collect();
    let recorded = Question::ALL.iter().filter(|own| is_of_record(own.row().group));
    let labels: Vec<String> = recorded.map(|own| ENGLISH.label_on_form(*own)).collect();
    // What is recorded may be called as what is asked: a weight, a compartment.
    let own = labels.iter().filter(|label| !asked.contains(label) && *label != "Body weight");
    assert!(own.clone().count() > 20, "{labels:?}");
    for label in own {
        assert!(!said.contains(label.as_str()), "{label}");
    }
}

#[test]
fn lengths_are_asked_in_the_unit_of_the_form() {
    let count = |unit, text: &str| {
        let form = blank_form(unit, Paper::A4);
        form.pages.iter().flat_map(texts).filter(|own| own == text).count()
    };
    let lengths = asked().into_iter().filter(|own| matches!(own.row().kind, Kind::Length(_)));
    let lengths: usize = lengths.map(|own| if own.row().each_side { 2 } else { 1 }).sum();
    // Once more where the form says its unit.
    assert_eq!(count(LengthUnit::Millimetres, "mm"), lengths + 1);
    assert_eq!(count(LengthUnit::Millimetres, "in"), 0);
    assert_eq!(count(LengthUnit::Inches, "in"), lengths + 1);
    assert_eq!(count(LengthUnit::Inches, "mm"), 0);
}

#[test]
fn what_there_may_be_several_of_is_a_table() {
    let form = blank_form(LengthUnit::Millimetres, Paper::A4);
    let blocks = form.pages.iter().enumerate();
    let mut tables: Vec<(usize, usize)> = Vec::new();
    for (page, block) in blocks.flat_map(|(at, page)| page.blocks.iter().map(move |own| (at, own)))
    {
        if let Role::Cell { table, .. } = block.role
            && !tables.contains(&(page, table))
        {
            tables.push((page, table));
        }
    }
    let lists = Group::ALL.iter().filter(|own| own.root() == Group::Client && !is_of_record(**own));
    let lists = lists.filter(|own| own.form() == Form::List).count();
    // And the measures.
    assert_eq!(tables.len(), lists + 1);
}

#[test]
fn nothing_on_the_form_is_printed_over_and_each_page_says_which_it_is() {
    for (paper, unit) in PAPERS
        .into_iter()
        .zip([LengthUnit::Millimetres, LengthUnit::Inches])
        .chain([(Paper::Letter, LengthUnit::Millimetres), (Paper::A4, LengthUnit::Inches)])
    {
        let form = blank_form(unit, paper);
        let found = faults(&format!("{paper:?} {unit:?}"), &form);
        assert!(found.is_empty(), "{} faults:\n{}", found.len(), found.join("\n"));
        let of = form.pages.len();
        assert_eq!(of, 4, "two sheets of paper, printed on both sides");
        for (at, page) in form.pages.iter().enumerate() {
            let said = texts(page).join(" ");
            assert!(said.contains(&format!("Page {} of {of}.", at + 1)), "{said}");
            assert!(said.contains("Code of the client"), "{said}");
        }
    }
}
