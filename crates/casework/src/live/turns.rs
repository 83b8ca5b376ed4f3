//! Turns at the processor, which several live cases share: whoever waits for central numbers goes
//! before whoever waits for anything else.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;

/// The turns of one program.
///
/// A search for central numbers takes one processor, and as many go on beside each other as there
/// are. What comes after them (their spread, what a plan would be judged as) takes all, begins only
/// when nobody waits for central numbers, gives way as soon as somebody does, and begins anew.
#[derive(Debug)]
pub struct Turns {
    at_once: usize,
    busy: Mutex<usize>,
    changed: Condvar,
    /// How many wait for central numbers.
    wanted_first: AtomicUsize,
}

impl Default for Turns {
    /// As many at once as this machine has processors.
    fn default() -> Self {
        Self::new(thread::available_parallelism().map_or(1, usize::from))
    }
}

impl Turns {
    /// So many at once, at least one.
    #[must_use]
    pub fn new(at_once: usize) -> Self {
        Self {
            at_once: at_once.max(1),
            busy: Mutex::default(),
            changed: Condvar::new(),
            wanted_first: AtomicUsize::new(0),
        }
    }

    /// Waits for a turn for central numbers.
    pub(super) fn first(&self) -> Turn<'_> {
        self.wanted_first.fetch_add(1, Ordering::SeqCst);
        let full = |busy: &mut usize| *busy >= self.at_once;
        let waited = self.changed.wait_while(self.busy(), full);
        let mut busy = waited.unwrap_or_else(PoisonError::into_inner);
        self.wanted_first.fetch_sub(1, Ordering::SeqCst);
        *busy += 1;
        Turn { turns: self, takes: 1 }
    }

    /// Does work that comes after central numbers, anew as often as it has to give way; none once it
    /// is not wanted any more.
    ///
    /// `unwanted` is asked whenever something changed. The work has to end early where that is so, and
    /// where [`Self::is_wanted_first`]: what it returns then is thrown away.
    pub fn after<T>(
        &self,
        unwanted: &(dyn Fn() -> bool + Sync),
        mut work: impl FnMut() -> T,
    ) -> Option<T> {
        loop {
            let turn = self.for_later(unwanted)?;
            let done = work();
            // Whoever made it give way still waits for this turn.
            let gave_way = self.is_wanted_first();
            drop(turn);
            if unwanted() {
                return None;
            }
            if !gave_way {
                return Some(done);
            }
        }
    }

    /// Whether somebody waits for central numbers, so that other work should give way.
    #[must_use]
    pub fn is_wanted_first(&self) -> bool {
        self.wanted_first.load(Ordering::SeqCst) > 0
    }

    /// Wakes whoever waits to ask again whether it is wanted.
    pub(super) fn ask_again(&self) {
        // Nobody is between asking and waiting while this is held.
        drop(self.busy());
        self.changed.notify_all();
    }

    /// Waits for a turn for what comes later; none once it is not wanted any more.
    fn for_later(&self, unwanted: &(dyn Fn() -> bool + Sync)) -> Option<Turn<'_>> {
        let waits = |busy: &mut usize| !unwanted() && (*busy > 0 || self.is_wanted_first());
        let waited = self.changed.wait_while(self.busy(), waits);
        let mut busy = waited.unwrap_or_else(PoisonError::into_inner);
        if unwanted() {
            return None;
        }
        *busy += self.at_once;
        Some(Turn { turns: self, takes: self.at_once })
    }

    fn busy(&self) -> MutexGuard<'_, usize> {
        self.busy.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A turn, until it is dropped.
#[derive(Debug)]
pub(super) struct Turn<'a> {
    turns: &'a Turns,
    takes: usize,
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        *self.turns.busy() -= self.takes;
        self.turns.changed.notify_all();
    }
}

#[cfg(test)]
mod tests {
    use std::sync::Mutex;
    use std::sync::atomic::AtomicBool;

    use super::*;

    /// Waits until something is so, which other threads make so.
    fn until(is_so: impl Fn() -> bool) {
        while !is_so() {
            thread::yield_now();
        }
    }

    #[test]
    fn no_more_search_at_once_than_there_are_processors() {
        let turns = Turns::new(2);
        let (searching, most) = (AtomicUsize::new(0), AtomicUsize::new(0));
        thread::scope(|scope| {
            for _ in 0..8 {
                scope.spawn(|| {
                    let turn = turns.first();
                    let now = searching.fetch_add(1, Ordering::SeqCst) + 1;
                    most.fetch_max(now, Ordering::SeqCst);
                    for _ in 0..100 {
                        thread::yield_now();
                    }
                    searching.fetch_sub(1, Ordering::SeqCst);
                    drop(turn);
                });
            }
        });
        assert!(most.load(Ordering::SeqCst) <= 2);
        assert_eq!(*turns.busy(), 0);
    }

    #[test]
    fn central_numbers_go_before_what_waits_longer() {
        let turns = Turns::new(1);
        let order = Mutex::new(Vec::new());
        thread::scope(|scope| {
            let held = turns.first();
            let later =
                scope.spawn(|| turns.after(&|| false, || order.lock().unwrap().push("later")));
            let first = scope.spawn(|| {
                let _turn = turns.first();
                order.lock().unwrap().push("first");
            });
            until(|| turns.is_wanted_first());
            drop(held);
            first.join().unwrap();
            assert_eq!(later.join().unwrap(), Some(()));
        });
        assert_eq!(*order.lock().unwrap(), ["first", "later"]);
    }

    #[test]
    fn what_comes_later_gives_way_and_begins_anew() {
        let turns = Turns::new(2);
        let begun = AtomicUsize::new(0);
        thread::scope(|scope| {
            let later = scope.spawn(|| {
                turns.after(&|| false, || {
                    // The first time it would go on for ever.
                    if begun.fetch_add(1, Ordering::SeqCst) == 0 {
                        until(|| turns.is_wanted_first());
                    }
                })
            });
            until(|| begun.load(Ordering::SeqCst) == 1);
            drop(turns.first());
            assert_eq!(later.join().unwrap(), Some(()));
        });
        assert_eq!(begun.load(Ordering::SeqCst), 2);
    }

    #[test]
    fn nobody_waits_for_what_is_not_wanted_any_more() {
        let turns = Turns::new(1);
        let unwanted = AtomicBool::new(false);
        let held = turns.first();
        thread::scope(|scope| {
            let later = scope.spawn(|| {
                turns.after(&|| unwanted.load(Ordering::SeqCst), || panic!("it has no turn"))
            });
            unwanted.store(true, Ordering::SeqCst);
            turns.ask_again();
            assert_eq!(later.join().unwrap(), None::<()>);
        });
        drop(held);
        assert_eq!(*turns.busy(), 0);
    }
}
