//! What is said of files: of every finding and every trouble something, in one sentence.

use std::collections::BTreeSet;

use case::Said;
use case::question::{Group, Question};
use case::text::{DesignFinding, TextFinding};
use cushion::{FaultKind, Length};
use words::{ENGLISH, LANGUAGES};

use crate::sweep::{check_errors, findings, plugin_faults, troubles};

/// What is wrong with a sentence or a hint; nothing where it is right.
fn wrong(text: &str) -> Option<&'static str> {
    // A hint may show braces, as in `{ left = 1 }`: what was not filled in has no space.
    let unfilled = text.match_indices('{').any(|(at, _)| {
        let within = &text[at + 1..];
        within.find('}').is_some_and(|end| !within[..end].contains(' '))
    });
    [
        (text.trim().is_empty(), "it says nothing"),
        (text != text.trim(), "it begins or ends with a space"),
        (text.contains("  "), "it has two spaces"),
        (text.contains('\n'), "it has a line break"),
        (unfilled, "something was not filled in"),
        (text.ends_with('.') && !text.ends_with("..."), "it ends with a full stop"),
        (text.contains("seatwright ") || text.contains("--"), "it names a command"),
    ]
    .into_iter()
    .find_map(|(is, what)| is.then_some(what))
}

#[track_caller]
fn is_right(said: &Said, of: &dyn std::fmt::Debug) {
    for text in [Some(&said.message), said.hint.as_ref()].into_iter().flatten() {
        assert_eq!(wrong(text), None, "{text:?} of {of:?}");
    }
}

#[test]
fn the_rules_for_sentences_find_what_is_wrong() {
    assert_eq!(wrong("write { left = 1 }, as in [x, y]"), None);
    for bad in ["", " a", "a  b", "a {} b", "a {name} b", "a.", "see `seatwright check`"] {
        assert!(wrong(bad).is_some(), "{bad:?}");
    }
}

#[test]
fn every_finding_and_every_trouble_is_swept_and_has_an_id_of_its_own() {
    let ids = TextFinding::ids();
    let distinct: BTreeSet<&str> = ids.iter().copied().collect();
    assert_eq!(distinct.len(), ids.len(), "an id is there twice");
    let swept: BTreeSet<&str> = findings().iter().map(TextFinding::id).collect();
    assert_eq!(swept, distinct);
}

#[test]
fn findings_and_troubles_are_said_in_one_sentence() {
    for language in LANGUAGES {
        for finding in findings() {
            is_right(&language.about_text(&finding), &finding);
        }
        for trouble in troubles() {
            is_right(&language.trouble(&trouble), &trouble);
        }
        for error in check_errors() {
            is_right(&language.no_check(&error), &error);
        }
        for fault in plugin_faults() {
            is_right(&language.plugin_fault(&fault), &fault);
        }
    }
}

#[test]
fn every_question_has_a_name_without_an_article() {
    for language in LANGUAGES {
        for question in Question::ALL {
            let label = language.label(*question);
            assert_eq!(wrong(label), None, "{question:?}");
            let comment = language.comment(*question);
            assert!(comment.is_empty() || wrong(comment).is_none(), "{question:?}: {comment}");
        }
        for group in Group::ALL {
            let comment = language.group_comment(*group);
            assert!(comment.is_empty() || !comment.contains("  "), "{group:?}: {comment}");
        }
    }
}

#[test]
fn a_crown_is_told_apart_from_the_most_that_the_model_is_good_to() {
    let [crown, most] = [18.3, 17.9].map(Length::from_mm);
    let fault = FaultKind::CrownTooHigh { crown, most };
    let said = ENGLISH.about_text(&TextFinding::from(DesignFinding::Fault(fault, Vec::new())));
    let wanted =
        "a crown of 18.3 mm is more than an eighth of the width; the model is good to 17.9 mm";
    assert!(said.message.contains(wanted), "{}", said.message);
}
