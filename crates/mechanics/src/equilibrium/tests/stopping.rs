//! A search that is told to stop ends at once, and one that is only asked is not disturbed.

use std::sync::atomic::{AtomicU32, Ordering::Relaxed};

use super::super::nested::Searches;
use super::super::rest::{Question, Start};
use super::super::results::{Outcome, Rest, Resting};
use super::scenes::{Scene, hard_cases};
use crate::Stop;

/// The answer where the question is answered with `true` from the one of this number to the one of
/// that number, and how often it was asked.
fn asked(scene: &Scene, near: Option<&Resting>, searches: Searches, yes: [u32; 2]) -> (Rest, u32) {
    let asked = AtomicU32::new(0);
    let question = || {
        asked.fetch_add(1, Relaxed);
        yes[0] <= asked.load(Relaxed) && asked.load(Relaxed) <= yes[1]
    };
    let stop = Stop::when(&question);
    let Scene { model, cells, seated, parameters } = scene;
    let rest = Question { model, cells, seated, parameters, stop }
        .answer(Start { near, ..Start::default() }, searches);
    (rest, asked.load(Relaxed))
}

const NEVER: [u32; 2] = [1, 0];

#[track_caller]
fn check(scene: &Scene, near: Option<&Resting>, searches: Searches, every: usize) {
    let Scene { model, cells, seated, parameters } = scene;
    let question = Question { model, cells, seated, parameters, stop: Stop::never() };
    let undisturbed = question.answer(Start { near, ..Start::default() }, searches);
    let (rest, questions) = asked(scene, near, searches, NEVER);
    assert_eq!(rest.evidence, undisturbed.evidence);
    let (one, other) = (rest.resting.expect("it rests"), undisturbed.resting.expect("it rests"));
    assert_eq!((one.pose, one.sheet, one.reactions), (other.pose, other.sheet, other.reactions));
    assert!(questions > 2, "before the search and before each step: {questions}");
    for number in (1..=questions).step_by(every).chain([questions]) {
        // Once told to, it ends, whether the answer would be the same again or not.
        for last in [number, u32::MAX] {
            let (rest, asked) = asked(scene, near, searches, [number, last]);
            assert_eq!(rest.outcome, Outcome::Stopped, "question {number} of {questions}");
            assert!(rest.resting.is_none());
            assert_eq!(asked, number, "it goes on after it was told to stop");
        }
    }
}

#[test]
fn a_search_that_is_told_to_stop_ends_within_a_step() {
    for scene in hard_cases() {
        check(&scene, None, Searches::All, 1);
        let (rest, _) = asked(&scene, None, Searches::All, NEVER);
        let mut near = rest.resting.expect("it rests");
        near.pose[1] += 0.02;
        check(&scene, Some(&near), Searches::All, 1);
    }
}

#[test]
fn the_slow_search_stops_too() {
    // Some hundred steps: each in a dozen.
    check(&hard_cases()[0], None, Searches::BarrierOnly, 12);
}
