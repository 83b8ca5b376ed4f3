//! How many wait at once for an answer that takes long.
//!
//! A browser has six connections to one place for all its windows together, and who waits holds one. A
//! touch of a count waits for none of those; whoever finds too many waiting asks again after a while.

use std::sync::atomic::{AtomicUsize, Ordering};

/// The most that wait: of six connections four stay free.
const MOST: usize = 2;

/// Those who wait.
#[derive(Default)]
pub(crate) struct Waiting(AtomicUsize);

/// Somebody who waits, until it is dropped.
pub(crate) struct Waits<'a>(&'a AtomicUsize);

impl Waiting {
    /// Lets one more wait; none where too many do.
    pub(crate) fn one_more(&self) -> Option<Waits<'_>> {
        let more = |now: usize| (now < MOST).then_some(now + 1);
        self.0.fetch_update(Ordering::SeqCst, Ordering::SeqCst, more).ok()?;
        Some(Waits(&self.0))
    }
}

impl Drop for Waits<'_> {
    fn drop(&mut self) {
        self.0.fetch_sub(1, Ordering::SeqCst);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn few_wait_and_who_leaves_makes_room() {
        let waiting = Waiting::default();
        let mut those: Vec<Waits<'_>> = std::iter::from_fn(|| waiting.one_more()).collect();
        assert_eq!(those.len(), MOST);
        assert!(waiting.one_more().is_none());
        those.pop();
        assert!(waiting.one_more().is_some());
    }
}
