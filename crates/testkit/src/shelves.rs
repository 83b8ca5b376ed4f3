//! A shelf in memory, and one on which everything can go wrong.

use std::collections::{BTreeMap, BTreeSet};
use std::panic::panic_any;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use casework::{BytesDigest, Change, Doing, Shelf, ShelfError, Tell, Was, Watch, Why};

/// Files in memory; names are words between slashes. A clone is the same shelf.
#[derive(Clone, Debug, Default)]
pub struct MemoryShelf {
    files: Arc<Mutex<BTreeMap<String, Vec<u8>>>>,
    watches: Arc<Mutex<Watches>>,
}

/// A file that is watched, and who is told.
struct Watched {
    name: String,
    tell: Arc<dyn Fn() + Send + Sync>,
}

/// Who watches which file, each under a number of its own.
#[derive(Default)]
struct Watches {
    given: usize,
    kept: BTreeMap<usize, Watched>,
}

impl core::fmt::Debug for Watches {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{} watches", self.kept.len())
    }
}

/// Ends a watch of a shelf in memory.
struct EndOfWatch(Arc<Mutex<Watches>>, usize);

impl Drop for EndOfWatch {
    fn drop(&mut self) {
        self.0.lock().unwrap_or_else(PoisonError::into_inner).kept.remove(&self.1);
    }
}

impl MemoryShelf {
    /// A shelf with files of these names and texts.
    #[must_use]
    pub fn of<'a>(files: impl IntoIterator<Item = (&'a str, &'a str)>) -> Self {
        let files = files.into_iter().map(|(name, text)| (name.to_owned(), text.into()));
        Self { files: Arc::new(Mutex::new(files.collect())), watches: Arc::default() }
    }

    /// How many files are watched now.
    #[must_use]
    pub fn watched(&self) -> usize {
        self.watches().kept.len()
    }

    fn watches(&self) -> MutexGuard<'_, Watches> {
        self.watches.lock().unwrap_or_else(PoisonError::into_inner)
    }

    /// All files, as they are now.
    #[must_use]
    pub fn files(&self) -> BTreeMap<String, Vec<u8>> {
        self.lock().clone()
    }

    /// The text of a file.
    ///
    /// # Panics
    ///
    /// Panics where there is no such file, or it is no text.
    #[must_use]
    #[track_caller]
    pub fn text(&self, name: &str) -> String {
        let bytes = self.lock().get(name).cloned().expect("a test asks for files that are there");
        String::from_utf8(bytes).expect("a test asks for texts")
    }

    fn lock(&self) -> MutexGuard<'_, BTreeMap<String, Vec<u8>>> {
        self.files.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Shelf for MemoryShelf {
    fn read(&self, name: &str) -> Result<Vec<u8>, ShelfError> {
        let found = self.lock().get(name).cloned();
        found.ok_or_else(|| ShelfError::new(Doing::Read, name, Why::NotFound))
    }

    fn list(&self, folder: &str) -> Result<Vec<String>, ShelfError> {
        let prefix = if folder.is_empty() { String::new() } else { format!("{folder}/") };
        let inside = |name: &&String| {
            name.strip_prefix(&prefix).is_some_and(|rest| !rest.is_empty() && !rest.contains('/'))
        };
        Ok(self.lock().keys().filter(inside).cloned().collect())
    }

    fn put(&self, changes: &[Change]) -> Result<(), ShelfError> {
        let mut files = self.lock();
        once(changes)?;
        changes.iter().try_for_each(|change| compare(&files, change))?;
        changes.iter().for_each(|change| make(&mut files, change));
        drop(files);
        let told: Vec<_> = (self.watches().kept.values())
            .filter(|own| changes.iter().any(|change| change.name == own.name))
            .map(|own| Arc::clone(&own.tell))
            .collect();
        told.iter().for_each(|tell| tell());
        Ok(())
    }

    fn beside(&self, name: &str, other: &str) -> String {
        match name.rsplit_once('/') {
            Some((folder, _)) => format!("{folder}/{other}"),
            None => other.to_owned(),
        }
    }

    fn watch(&self, name: &str, tell: Tell) -> Option<Watch> {
        let mut watches = self.watches();
        watches.given += 1;
        let number = watches.given;
        let own = Watched { name: name.to_owned(), tell: tell.into() };
        watches.kept.insert(number, own);
        Some(Watch::of(EndOfWatch(Arc::clone(&self.watches), number)))
    }
}

/// Refuses two changes of one file.
fn once(changes: &[Change]) -> Result<(), ShelfError> {
    let mut names = BTreeSet::new();
    match changes.iter().find(|change| !names.insert(&change.name)) {
        Some(twice) => Err(ShelfError::new(Doing::Compare, &twice.name, Why::Twice)),
        None => Ok(()),
    }
}

/// Says whether a change replaces what is there.
fn compare(files: &BTreeMap<String, Vec<u8>>, change: &Change) -> Result<(), ShelfError> {
    let why = match (change.was, files.get(&change.name)) {
        (Was::Any, _) | (Was::Absent, None) => return Ok(()),
        (Was::Absent, Some(_)) => Why::ThereAlready,
        (Was::Digest(_), None) => Why::Gone,
        (Was::Digest(was), Some(there)) if BytesDigest::of(there) == was => return Ok(()),
        (Was::Digest(_), Some(_)) => Why::Changed,
    };
    Err(ShelfError::new(Doing::Compare, &change.name, why))
}

fn make(files: &mut BTreeMap<String, Vec<u8>>, change: &Change) {
    match &change.bytes {
        Some(bytes) => files.insert(change.name.clone(), bytes.clone()),
        None => files.remove(&change.name),
    };
}

/// What happens on a [`FaultyShelf`].
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The step fails, as on a full or broken disk.
    Fails,
    /// The process ends before the step: a panic with [`Ended`] takes its place.
    Ends,
}

/// With what a [`FaultyShelf`] panics where the process ends; to be caught by the test.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Ended;

/// A shelf in memory on which one step fails or is the end of the process.
///
/// A `read` or `list` is one step. A `put` takes the steps that one on a disk takes: each file is
/// compared, then each is written beside its place and synced, then each gets its name. Where the
/// process ends between names, the files that have theirs keep them; a step that fails leaves
/// all as it was.
#[derive(Debug)]
pub struct FaultyShelf {
    files: MemoryShelf,
    fault: Fault,
    at: usize,
    steps: AtomicUsize,
}

impl FaultyShelf {
    /// Where step number `at`, counted from 0, goes wrong; none does if there are fewer.
    #[must_use]
    pub fn new(files: MemoryShelf, fault: Fault, at: usize) -> Self {
        Self { files, fault, at, steps: AtomicUsize::new(0) }
    }

    /// How many steps were taken so far, with the one that went wrong.
    #[must_use]
    pub fn steps(&self) -> usize {
        self.steps.load(Ordering::SeqCst)
    }

    fn step(&self, doing: Doing, name: &str) -> Result<(), ShelfError> {
        if self.steps.fetch_add(1, Ordering::SeqCst) != self.at {
            return Ok(());
        }
        match self.fault {
            Fault::Fails => Err(ShelfError::new(doing, name, Why::System("a fault".to_owned()))),
            Fault::Ends => panic_any(Ended),
        }
    }
}

impl Shelf for FaultyShelf {
    fn read(&self, name: &str) -> Result<Vec<u8>, ShelfError> {
        self.step(Doing::Read, name)?;
        self.files.read(name)
    }

    fn list(&self, folder: &str) -> Result<Vec<String>, ShelfError> {
        self.step(Doing::List, folder)?;
        self.files.list(folder)
    }

    fn put(&self, changes: &[Change]) -> Result<(), ShelfError> {
        let mut files = self.files.lock();
        once(changes)?;
        for change in changes {
            self.step(Doing::Compare, &change.name)?;
            compare(&files, change)?;
        }
        for change in changes.iter().filter(|change| change.bytes.is_some()) {
            self.step(Doing::Write, &change.name)?;
            self.step(Doing::Sync, &change.name)?;
        }
        let before = files.clone();
        for change in changes {
            let doing = if change.bytes.is_some() { Doing::Place } else { Doing::Remove };
            if let Err(error) = self.step(doing, &change.name) {
                *files = before;
                return Err(error);
            }
            make(&mut files, change);
        }
        Ok(())
    }

    fn beside(&self, name: &str, other: &str) -> String {
        self.files.beside(name, other)
    }
}

#[cfg(test)]
mod tests {
    use std::panic::{AssertUnwindSafe, catch_unwind};

    use super::*;
    use crate::assert_keeps_the_promises;

    #[test]
    fn the_shelf_in_memory_keeps_the_promises() {
        assert_keeps_the_promises(&MemoryShelf::default(), &str::to_owned);
        let at = usize::MAX;
        let faulty = FaultyShelf::new(MemoryShelf::default(), Fault::Fails, at);
        assert_keeps_the_promises(&faulty, &str::to_owned);
    }

    /// The shelf's own faults: what fails changes nothing, what ends keeps each file whole.
    #[test]
    fn a_put_of_two_files_goes_wrong_at_each_of_its_steps() {
        let old = [("a", "old"), ("b", "old")];
        let changes = [Change::output("a", "new"), Change::output("b", "new")];
        let (mut failed, mut mixed) = (0, 0);
        // Each file is compared, written, synced and placed.
        for at in 0..=8 {
            let files = MemoryShelf::of(old);
            let shelf = FaultyShelf::new(files.clone(), Fault::Fails, at);
            match shelf.put(&changes) {
                Ok(()) => assert_eq!((at, files.text("b")), (8, "new".to_owned())),
                Err(_) => {
                    failed += 1;
                    assert_eq!(files.files(), MemoryShelf::of(old).files());
                }
            }
            let files = MemoryShelf::of(old);
            let shelf = FaultyShelf::new(files.clone(), Fault::Ends, at);
            let ended = catch_unwind(AssertUnwindSafe(|| shelf.put(&changes)));
            assert_eq!(ended.is_err(), at < 8);
            mixed += usize::from(files.text("a") != files.text("b"));
        }
        assert_eq!((failed, mixed), (8, 1));
    }
}
