//! The mailbox of a worker: one slot for what is asked, and the answers to it.

use std::collections::VecDeque;
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};

use super::{LiveAnswer, LiveNumbers, Revision};

/// What asker and worker share.
#[derive(Debug, Default)]
pub(super) struct Mailbox {
    inside: Mutex<Inside>,
    changed: Condvar,
}

#[derive(Debug, Default)]
struct Inside {
    /// The newest revision.
    newest: u64,
    /// The newest counts, until the worker takes them.
    asked: Option<Vec<u32>>,
    /// What was found for the newest counts, until it is taken.
    answers: VecDeque<LiveAnswer>,
    ended: bool,
}

impl Mailbox {
    /// Puts counts into the slot, in place of what was there; returns their revision.
    pub(super) fn ask(&self, counts: &[u32]) -> u64 {
        let mut inside = self.lock();
        inside.newest += 1;
        inside.asked = Some(counts.to_vec());
        inside.answers.clear();
        self.changed.notify_all();
        inside.newest
    }

    /// Waits until counts are asked about; `false` once the work is ended.
    pub(super) fn wait_for_counts(&self) -> bool {
        let waiting = |inside: &mut Inside| !inside.ended && inside.asked.is_none();
        !self.wait_while(waiting).ended
    }

    /// Takes the newest counts; none where there are none, or the work is ended.
    pub(super) fn take_asked(&self) -> Option<(Revision, Vec<u32>)> {
        let mut inside = self.lock();
        if inside.ended {
            return None;
        }
        let counts = inside.asked.take()?;
        Some((Revision(inside.newest), counts))
    }

    /// Whether there is no use in going on with the counts that were taken last.
    pub(super) fn is_overtaken(&self) -> bool {
        let inside = self.lock();
        inside.ended || inside.asked.is_some()
    }

    /// Posts what was found for a revision; returns whether it is still the newest.
    pub(super) fn post(&self, revision: Revision, numbers: LiveNumbers) -> bool {
        let mut inside = self.lock();
        let wanted = !inside.ended && inside.newest == revision.0;
        if wanted {
            inside.answers.push_back(LiveAnswer { revision, numbers });
            self.changed.notify_all();
        }
        wanted
    }

    /// Waits for an answer and takes it; none once the work is ended.
    pub(super) fn take_answer(&self) -> Option<LiveAnswer> {
        let waiting = |inside: &mut Inside| !inside.ended && inside.answers.is_empty();
        self.wait_while(waiting).answers.pop_front()
    }

    /// Ends the work.
    pub(super) fn end(&self) {
        let mut inside = self.lock();
        inside.ended = true;
        inside.answers.clear();
        self.changed.notify_all();
    }

    fn lock(&self) -> MutexGuard<'_, Inside> {
        self.inside.lock().unwrap_or_else(PoisonError::into_inner)
    }

    fn wait_while(&self, waiting: impl Fn(&mut Inside) -> bool) -> MutexGuard<'_, Inside> {
        let inside = self.changed.wait_while(self.lock(), waiting);
        inside.unwrap_or_else(PoisonError::into_inner)
    }
}

#[cfg(test)]
mod tests {
    use case::PredictedOutcome;

    use super::*;

    const NUMBERS: LiveNumbers = LiveNumbers::NoNumbers(PredictedOutcome::Tipping);

    #[test]
    fn newer_counts_take_the_place_of_older_ones() {
        let mailbox = Mailbox::default();
        assert!(!mailbox.is_overtaken());
        for count in 1..=3 {
            assert_eq!(mailbox.ask(&[count]), u64::from(count));
        }
        assert!(mailbox.is_overtaken());
        let (revision, counts) = mailbox.take_asked().unwrap();
        assert_eq!((revision, counts), (Revision(3), vec![3]));
        assert!(!mailbox.is_overtaken());
    }

    #[test]
    fn what_was_found_for_older_counts_is_never_told() {
        let mailbox = Mailbox::default();
        mailbox.ask(&[1]);
        let (first, _) = mailbox.take_asked().unwrap();
        assert!(mailbox.post(first, NUMBERS));
        // It waits to be taken while newer counts come in, and another comes after them.
        mailbox.ask(&[2]);
        assert!(!mailbox.post(first, NUMBERS));
        let (second, _) = mailbox.take_asked().unwrap();
        assert!(!mailbox.post(first, NUMBERS));
        assert!(mailbox.post(second, NUMBERS));
        assert_eq!(mailbox.take_answer().unwrap().revision, second);
        assert!(mailbox.lock().answers.is_empty());
    }

    #[test]
    fn once_it_is_ended_nothing_is_taken_or_told() {
        let mailbox = Mailbox::default();
        mailbox.ask(&[1]);
        let (first, _) = mailbox.take_asked().unwrap();
        mailbox.post(first, NUMBERS);
        mailbox.ask(&[2]);
        mailbox.end();
        assert!(mailbox.is_overtaken() && !mailbox.post(Revision(2), NUMBERS));
        assert!(mailbox.take_asked().is_none() && mailbox.take_answer().is_none());
    }
}
