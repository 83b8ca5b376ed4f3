//! Turns at the processor, which several live cases share: whoever waits for central numbers goes
//! before whoever waits for anything else.

use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use super::told_before::ToldBefore;

/// How long nobody has had a turn for central numbers before anything else begins: whoever touches
/// several counts, or several who touch at once, ask again within this, and work that gives way to
/// them is lost. Nobody sees a range so much later.
const QUIET: Duration = Duration::from_millis(100);

/// How often other work gives way before it does no more: where somebody touches a count all the time, it
/// would never end; and nobody minds a fifth of a second now and then.
const MOST_GIVEN_WAY: usize = 4;

/// The turns of one program, and what was told in them: whoever has a turn first looks whether somebody
/// asked the same before.
///
/// A search for central numbers takes one processor, and as many go on beside each other as there
/// are. What comes after them (their spread, what a plan would be judged as) takes all, begins only
/// when nobody waits for central numbers and for a moment nobody has, gives way as soon as somebody
/// does, and begins anew; a few times, and then it goes on.
#[derive(Debug)]
pub struct Turns {
    at_once: usize,
    quiet: Duration,
    now: Mutex<Now>,
    changed: Condvar,
    /// How many wait for central numbers.
    wanted_first: AtomicUsize,
    /// What was told of counts before.
    pub(super) told: ToldBefore,
}

#[derive(Debug, Default)]
struct Now {
    /// How many processors are taken.
    busy: usize,
    /// How many turns for central numbers have ended.
    first_ended: u64,
    /// How many had when nobody asked for a moment.
    first_ended_before_quiet: u64,
}

impl Default for Turns {
    /// As many at once as this machine has processors.
    fn default() -> Self {
        Self::new(thread::available_parallelism().map_or(1, usize::from), QUIET)
    }
}

impl Turns {
    /// So many at once, at least one, and so long a moment.
    #[must_use]
    pub fn new(at_once: usize, quiet: Duration) -> Self {
        Self {
            at_once: at_once.max(1),
            quiet,
            now: Mutex::default(),
            changed: Condvar::new(),
            wanted_first: AtomicUsize::new(0),
            told: ToldBefore::default(),
        }
    }

    /// Waits for a turn for central numbers.
    pub(super) fn first(&self) -> Turn<'_> {
        self.wanted_first.fetch_add(1, Ordering::SeqCst);
        let full = |now: &mut Now| now.busy >= self.at_once;
        let waited = self.changed.wait_while(self.now(), full);
        let mut now = waited.unwrap_or_else(PoisonError::into_inner);
        self.wanted_first.fetch_sub(1, Ordering::SeqCst);
        now.busy += 1;
        Turn { turns: self, takes: 1, is_first: true }
    }

    /// Does work that comes after central numbers, anew as often as it has to give way; none once it
    /// is not wanted any more.
    ///
    /// `unwanted` is asked whenever something changed, with all turns held: it must wait for nobody who
    /// asks about counts. The work has to end early where that is so, and,
    /// if it is told that it gives way, where [`Self::is_wanted_first`]: what it returns then is thrown
    /// away.
    pub fn after<T>(
        &self,
        unwanted: &(dyn Fn() -> bool + Sync),
        mut work: impl FnMut(bool) -> T,
    ) -> Option<T> {
        let mut given_way = 0;
        loop {
            let gives_way = given_way < MOST_GIVEN_WAY;
            let turn = self.for_later(unwanted, gives_way)?;
            let done = work(gives_way);
            // Whoever made it give way still waits for this turn.
            let gave_way = gives_way && self.is_wanted_first();
            drop(turn);
            if unwanted() {
                return None;
            }
            if !gave_way {
                return Some(done);
            }
            given_way += 1;
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
        drop(self.now());
        self.changed.notify_all();
    }

    /// Waits for a turn for what comes later, in a quiet moment where that is to be; none once it is not
    /// wanted any more.
    fn for_later(&self, unwanted: &(dyn Fn() -> bool + Sync), in_quiet: bool) -> Option<Turn<'_>> {
        let mut now = self.now();
        while !unwanted() {
            let seen = now.first_ended;
            if now.busy > 0 || self.is_wanted_first() {
                now = self.changed.wait(now).unwrap_or_else(PoisonError::into_inner);
            } else if in_quiet && seen != now.first_ended_before_quiet {
                let waited = self.changed.wait_timeout(now, self.quiet);
                let (again, waited) = waited.unwrap_or_else(PoisonError::into_inner);
                now = again;
                if waited.timed_out() && now.first_ended == seen {
                    now.first_ended_before_quiet = seen;
                }
            } else {
                now.busy += self.at_once;
                return Some(Turn { turns: self, takes: self.at_once, is_first: false });
            }
        }
        None
    }

    fn now(&self) -> MutexGuard<'_, Now> {
        self.now.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// A turn, until it is dropped.
#[derive(Debug)]
pub(super) struct Turn<'a> {
    turns: &'a Turns,
    takes: usize,
    is_first: bool,
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        let mut now = self.turns.now();
        now.busy -= self.takes;
        if self.is_first {
            now.first_ended += 1;
        }
        drop(now);
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
        let turns = Turns::new(2, Duration::ZERO);
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
        assert_eq!(turns.now().busy, 0);
    }

    #[test]
    fn central_numbers_go_before_what_waits_longer() {
        let turns = Turns::new(1, Duration::ZERO);
        let order = Mutex::new(Vec::new());
        thread::scope(|scope| {
            let held = turns.first();
            let later =
                scope.spawn(|| turns.after(&|| false, |_| order.lock().unwrap().push("later")));
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
        let turns = Turns::new(2, Duration::ZERO);
        let begun = AtomicUsize::new(0);
        thread::scope(|scope| {
            let later = scope.spawn(|| {
                turns.after(&|| false, |_| {
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
    fn what_gave_way_often_enough_goes_on_whoever_asks() {
        let turns = Turns::new(2, Duration::ZERO);
        let begun = AtomicUsize::new(0);
        thread::scope(|scope| {
            let later = scope.spawn(|| {
                turns.after(&|| false, |gives_way| {
                    begun.fetch_add(1, Ordering::SeqCst);
                    // Somebody asks each time, the last time in vain.
                    until(|| turns.is_wanted_first());
                    gives_way
                })
            });
            for time in 1..=MOST_GIVEN_WAY + 1 {
                until(|| begun.load(Ordering::SeqCst) == time);
                drop(turns.first());
            }
            assert_eq!(later.join().unwrap(), Some(false));
        });
        assert_eq!(begun.load(Ordering::SeqCst), MOST_GIVEN_WAY + 1);
    }

    #[test]
    fn nobody_waits_for_what_is_not_wanted_any_more() {
        let turns = Turns::new(1, Duration::ZERO);
        let unwanted = AtomicBool::new(false);
        let held = turns.first();
        thread::scope(|scope| {
            let later = scope.spawn(|| {
                turns.after(&|| unwanted.load(Ordering::SeqCst), |_| panic!("it has no turn"))
            });
            unwanted.store(true, Ordering::SeqCst);
            turns.ask_again();
            assert_eq!(later.join().unwrap(), None::<()>);
        });
        drop(held);
        assert_eq!(turns.now().busy, 0);
    }

    #[test]
    fn what_comes_later_waits_until_nobody_asks_again() {
        // So long that it ends only where nobody asks for it.
        let turns = Turns::new(1, Duration::from_secs(3600));
        let unwanted = AtomicBool::new(false);
        thread::scope(|scope| {
            drop(turns.first());
            let later = scope.spawn(|| {
                turns.after(&|| unwanted.load(Ordering::SeqCst), |_| {
                    panic!("somebody may ask again")
                })
            });
            // They do, again and again, and have to wait for nothing.
            (0..20).for_each(|_| drop(turns.first()));
            unwanted.store(true, Ordering::SeqCst);
            turns.ask_again();
            assert_eq!(later.join().unwrap(), None::<()>);
        });
        let short = Turns::new(1, Duration::from_millis(1));
        drop(short.first());
        assert_eq!(short.after(&|| false, |_| ()), Some(()));
    }
}
