//! Predictions that begin at the last one.

use std::cell::Cell;

use case::CentralNumbers;
use cushion::{Length, Mass};
use fitting::{LivePredictor, Spacings};
use mechanics::Stop;
use testkit::assert_near;

use crate::clients::{client, cushion};

/// That two are the same but for where their searches began: both end at 1e-9 of the load, which
/// is worth far less than a nanometre.
#[track_caller]
fn assert_same(one: &CentralNumbers, other: &CentralNumbers) {
    assert_eq!(one.outcome, other.outcome);
    let [one, other] = [one, other].map(|own| own.seated.as_ref().unwrap().clearance);
    assert_near(one.left.to_m(), other.left.to_m(), 1e-9);
    assert_near(one.right.to_m(), other.right.to_m(), 1e-9);
}

/// A cushion without a single cell: an answer, though one without numbers, and then the next.
#[test]
fn a_cushion_without_cells_has_an_answer_without_numbers() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(16.0)));
    let client = client("row-six", "440x400");
    let mut live =
        LivePredictor::new(&cushion, &client, Mass::from_kg(72.0), Stop::never()).unwrap();
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    let first = live.central(&stock);
    assert!(live.central(&vec![0; stock.len()]).seated.is_none());
    assert_same(&live.central(&stock), &first);
}

/// What was told to stop leaves nothing behind: the next question is answered as if it had never
/// been asked.
#[test]
fn a_question_that_was_stopped_spoils_none_of_the_next() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let client = client("row-six", "440x400");
    let weight = Mass::from_kg(72.0);
    let (asked, until) = (Cell::new(0u32), Cell::new(u32::MAX));
    let question = || {
        asked.set(asked.get() + 1);
        asked.get() >= until.get()
    };
    let stop = Stop::when(&question);
    let mut live = LivePredictor::new(&cushion, &client, weight, stop).unwrap();
    assert!(live.with_spread().is_none());
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    let mut more = stock.clone();
    more[0] += 3;
    let first = live.central(&stock);
    assert!(first.seated.is_some());
    asked.set(0);
    let expected = live.central(&more);
    let questions = asked.get();
    live.central(&stock);
    assert!(questions >= 2);
    for k in 1..=questions {
        asked.set(0);
        until.set(k);
        assert!(live.central(&more).seated.is_none());
        assert!(live.with_spread().is_none());
        until.set(u32::MAX);
        let again = live.central(&more);
        assert_same(&again, &expected);
        assert_eq!(CentralNumbers::of(&live.with_spread().unwrap()), again);
        assert_same(&live.central(&stock), &first);
    }
}
