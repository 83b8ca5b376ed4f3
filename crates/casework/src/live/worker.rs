//! The worker of a live case: takes the newest counts, tells the central numbers, then the spread.

use std::sync::atomic::{AtomicBool, Ordering};

use cushion::Mass;
use fitting::LivePredictor;
use mechanics::Stop;

use super::LiveNumbers;
use super::mailbox::Mailbox;
use super::told_before::Sitter;
use super::turns::Turns;
use crate::open_case::OpenCase;

/// Ends the mailbox when the worker ends, even by a panic: nobody waits for ever.
struct EndsWithWorker<'a>(&'a Mailbox);

impl Drop for EndsWithWorker<'_> {
    fn drop(&mut self) {
        self.0.end();
    }
}

/// Works until the mailbox is ended, whenever it has a turn.
pub(super) fn work(case: &OpenCase, weight: Mass, mailbox: &Mailbox, turns: &Turns) {
    let _ends = EndsWithWorker(mailbox);
    let gives_way = AtomicBool::new(false);
    let overtaken = || mailbox.is_overtaken();
    // The predictor keeps one question for all its searches; only a spread gives way.
    let stops = || overtaken() || gives_way.load(Ordering::SeqCst) && turns.is_wanted_first();
    let found = case.as_found(Stop::never());
    let turn = turns.first();
    let mut predictor =
        LivePredictor::new(&case.cushion, &found.client, weight, Stop::when(&stops));
    drop(turn);
    let (sitter, told) = (Sitter::new(&case.cushion, &found.client), &turns.told);
    while mailbox.wait_for_counts() {
        // The newest counts are taken when it is their turn.
        let turn = turns.first();
        let Some((revision, counts)) = mailbox.take_asked() else { continue };
        let predictor = match &mut predictor {
            Ok(predictor) => predictor,
            Err(error) => {
                mailbox.post(revision, LiveNumbers::NoBody(case.no_body(*error)));
                continue;
            }
        };
        let central = told.central(&sitter, &counts).unwrap_or_else(|| {
            let central = predictor.central(&counts);
            // What was told to stop is overtaken, and so it is neither kept nor posted.
            if !overtaken() {
                told.keep(&sitter, &counts, &central);
            }
            central
        });
        drop(turn);
        if central.seated.is_none() {
            mailbox.post(revision, LiveNumbers::NoNumbers(central.outcome));
        } else if mailbox.post(revision, LiveNumbers::Central(central)) {
            let mut found = |gives| {
                gives_way.store(gives, Ordering::SeqCst);
                let spread = predictor.spread_of(&counts);
                gives_way.store(false, Ordering::SeqCst);
                spread
            };
            let known = || told.spread(&sitter, &counts);
            // Somebody else may have found it while this waited.
            let waited =
                || turns.after(&overtaken, |gives| known().or_else(|| found(gives))).flatten();
            if let Some(prediction) = known().or_else(waited) {
                told.keep_spread(&sitter, &counts, &prediction);
                mailbox.post(revision, LiveNumbers::Spread(prediction));
            }
        }
    }
}
