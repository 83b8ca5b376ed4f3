//! The worker of a live case: takes the newest counts, tells the central numbers, then the spread.

use cushion::Mass;
use fitting::LivePredictor;
use mechanics::Stop;

use super::LiveNumbers;
use super::mailbox::Mailbox;
use crate::open_case::OpenCase;

/// Ends the mailbox when the worker ends, even by a panic: nobody waits for ever.
struct EndsWithWorker<'a>(&'a Mailbox);

impl Drop for EndsWithWorker<'_> {
    fn drop(&mut self) {
        self.0.end();
    }
}

/// Works until the mailbox is ended.
pub(super) fn work(case: &OpenCase, weight: Mass, mailbox: &Mailbox) {
    let _ends = EndsWithWorker(mailbox);
    let overtaken = || mailbox.is_overtaken();
    let stop = Stop::when(&overtaken);
    let found = case.as_found(Stop::never());
    let mut predictor = LivePredictor::new(&case.cushion, &found.client, weight, stop);
    while let Some((revision, counts)) = mailbox.take_asked() {
        let predictor = match &mut predictor {
            Ok(predictor) => predictor,
            Err(error) => {
                mailbox.post(revision, LiveNumbers::NoBody(case.no_body(*error)));
                continue;
            }
        };
        // What was told to stop is overtaken, and so it is not posted.
        let central = predictor.central(&counts);
        if central.seated.is_none() {
            mailbox.post(revision, LiveNumbers::NoNumbers(central.outcome));
        } else if mailbox.post(revision, LiveNumbers::Central(central))
            && let Some(prediction) = predictor.with_spread()
        {
            mailbox.post(revision, LiveNumbers::Spread(prediction));
        }
    }
}
