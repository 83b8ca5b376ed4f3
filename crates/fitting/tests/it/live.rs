//! Predictions that begin at the last one.

use std::sync::atomic::{AtomicU32, Ordering::Relaxed};

use case::CentralNumbers;
use cushion::{Length, Mass};
use fitting::{LivePredictor, Spacings};
use mechanics::Stop;

use crate::clients::{client, cushion};

/// What was told to stop leaves nothing behind: the next question is answered as if it had never
/// been asked.
#[test]
fn a_question_that_was_stopped_spoils_none_of_the_next() {
    let cushion = cushion("row-six", "440x400", Spacings::all(Length::from_mm(12.0)));
    let client = client("row-six", "440x400");
    let weight = Mass::from_kg(72.0);
    let (asked, until) = (AtomicU32::new(0), AtomicU32::new(u32::MAX));
    let question = || {
        asked.fetch_add(1, Relaxed);
        asked.load(Relaxed) >= until.load(Relaxed)
    };
    let stop = Stop::when(&question);
    let mut live = LivePredictor::new(&cushion, &client, weight, stop).unwrap();
    assert!(live.with_spread().is_none());
    let stock: Vec<u32> = cushion.stock().compartments.iter().map(|own| own.cells.stock).collect();
    let mut more = stock.clone();
    more[0] += 3;
    let first = live.central(&stock);
    assert!(first.seated.is_some());
    asked.store(0, Relaxed);
    let expected = live.central(&more);
    let questions = asked.load(Relaxed);
    let back = live.central(&stock);
    assert!(questions >= 2);
    for k in 1..=questions {
        asked.store(0, Relaxed);
        until.store(k, Relaxed);
        assert!(live.central(&more).seated.is_none());
        assert!(live.with_spread().is_none());
        until.store(u32::MAX, Relaxed);
        same(&live.central(&more), &expected);
        same(&CentralNumbers::of(&live.with_spread().unwrap()), &expected);
        same(&live.central(&stock), &back);
    }
}

/// Fails unless both rest alike: a search from another start ends within a millionth of the load of
/// the same answer, which is far less than a nanometre.
#[track_caller]
fn same(actual: &CentralNumbers, expected: &CentralNumbers) {
    assert_eq!(actual.outcome, expected.outcome);
    let (actual, expected) = (actual.seated.as_ref().unwrap(), expected.seated.as_ref().unwrap());
    for (actual, expected) in [
        (actual.clearance.left, expected.clearance.left),
        (actual.clearance.right, expected.clearance.right),
        (actual.lower_by, expected.lower_by),
    ] {
        assert!((actual.to_m() - expected.to_m()).abs() < 1e-9, "{actual:?} {expected:?}");
    }
    let pressure = actual.mean_surface.to_pa() / expected.mean_surface.to_pa();
    assert!((pressure - 1.0).abs() < 1e-7, "{pressure}");
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
    same(&live.central(&stock), &first);
}
