//! Changing files: all of them or none.

use std::collections::{BTreeMap, BTreeSet};
use std::fs::{self, File, Metadata};
use std::io::{self, ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use casework::{Change, Doing, ShelfError, Was, Why};
use tempfile::{Builder, NamedTempFile, TempPath};

use crate::attributes::{keep, may_be_removed, may_be_replaced, usual_rights};
use crate::folders::{NewFolders, folder_of};
use crate::lock::Locked;
use crate::target::{Target, shown};
use crate::why::{must_be_file, why};
use crate::{OURS, reading};

/// How often a folder is made that others remove at the same time.
const TRIES: usize = 20;

/// Makes all changes or none, and the folders that they need.
pub(crate) fn all(fence: Option<&Path>, changes: &[Change]) -> Result<(), ShelfError> {
    let targets = changes.iter().map(|change| Target::of(fence, change));
    let mut targets = targets.collect::<Result<Vec<_>, _>>()?;
    // What goes from a folder that is not there is gone already.
    let not_there = |folder: &Path| matches!(folder.try_exists(), Ok(false));
    let is_gone =
        |target: &Target<'_>| target.change.bytes.is_none() && not_there(folder_of(&target.path));
    let missed =
        |target: &&Target<'_>| is_gone(target) && matches!(target.change.was, Was::Digest(_));
    if let Some(target) = targets.iter().find(missed) {
        return Err(target.error(Doing::Compare, Why::Gone));
    }
    targets.retain(|target| !is_gone(target));
    let mut made = NewFolders::default();
    // Locks go last, when nothing of ours is left in the folders.
    let mut locks = BTreeMap::new();
    let done = lock_folders(&mut targets, &mut made, &mut locks)
        .and_then(|()| change_locked(&targets, &locks));
    if done.is_err() {
        made.remove();
    }
    done
}

/// Makes and locks the folders of all targets, in one order everywhere, so that two never wait
/// for each other.
fn lock_folders(
    targets: &mut [Target<'_>],
    made: &mut NewFolders,
    locks: &mut BTreeMap<PathBuf, Locked>,
) -> Result<(), ShelfError> {
    for _ in 0..TRIES {
        for target in &mut *targets {
            if target.change.bytes.is_some() {
                made.make(folder_of(&target.path))?;
            }
            target.settle()?;
        }
        let folders: BTreeSet<PathBuf> =
            targets.iter().map(|target| folder_of(&target.path).to_owned()).collect();
        for folder in folders {
            let Some(locked) = Locked::folder(&folder)? else { break };
            locks.insert(folder, locked);
        }
        if targets.iter().all(|target| locks.contains_key(folder_of(&target.path))) {
            return Ok(());
        }
        locks.clear();
    }
    let folder = targets.first().map(|target| shown(folder_of(&target.path)));
    Err(ShelfError::new(Doing::Lock, folder.unwrap_or_default(), Why::NotFound))
}

/// Makes the changes in folders that are locked.
fn change_locked(
    targets: &[Target<'_>],
    locks: &BTreeMap<PathBuf, Locked>,
) -> Result<(), ShelfError> {
    locks.iter().for_each(|(folder, locked)| locked.sweep(folder));
    let mut paths = BTreeSet::new();
    if let Some(twice) = targets.iter().find(|target| !paths.insert(&target.path)) {
        return Err(twice.error(Doing::Compare, Why::Twice));
    }
    let mut waiting = Vec::new();
    for target in targets {
        let there = compared(target)?;
        waiting.push(Waiting { target, there, file: None });
    }
    for one in &mut waiting {
        one.write()?;
    }
    // Removals come last: a file is kept rather than lost.
    waiting.sort_by_key(|one| one.file.is_none());
    let mut placed = Vec::new();
    let in_place = waiting.into_iter().try_for_each(|one| {
        placed.push(one.place()?);
        Ok(())
    });
    let done = in_place.and_then(|()| locks.keys().try_for_each(|folder| sync(folder)));
    done.map_err(|error: ShelfError| {
        let not_undone = placed.into_iter().rev().filter_map(Placed::take_back).collect();
        ShelfError { not_undone, ..error }
    })
}

/// Compares a file with what its change replaces; returns what is there.
fn compared(target: &Target<'_>) -> Result<Option<Metadata>, ShelfError> {
    let there = is_replaced(target).map_err(|why| target.error(Doing::Compare, why))?;
    let fits = match (&there, &target.change.bytes) {
        (None, _) => Ok(()),
        (Some(there), Some(_)) => may_be_replaced(&target.path, there),
        (Some(there), None) => may_be_removed(&target.path, there),
    };
    fits.map_err(|why| target.error(Doing::Write, why))?;
    Ok(there)
}

/// Returns the file that is there, which is the one that the change replaces.
fn is_replaced(target: &Target<'_>) -> Result<Option<Metadata>, Why> {
    // A link that was followed is none any more; another one came meanwhile.
    let there = match fs::symlink_metadata(&target.path) {
        Ok(there) => Some(there),
        Err(error) if error.kind() == ErrorKind::NotFound => None,
        Err(error) => return Err(why(&error)),
    };
    match (target.change.was, &there) {
        (Was::Absent, None) | (Was::Any, None) => {}
        (Was::Absent, Some(_)) => return Err(Why::ThereAlready),
        (Was::Digest(_), None) => return Err(Why::Gone),
        (_, Some(there)) if there.is_symlink() => return Err(Why::Changed),
        (Was::Any, Some(there)) => must_be_file(there.file_type())?,
        (Was::Digest(was), Some(there)) => {
            must_be_file(there.file_type())?;
            if reading::digest(&target.path)? != was {
                return Err(Why::Changed);
            }
        }
    }
    Ok(there)
}

/// A change that was compared, and whose bytes may be on the disk already.
struct Waiting<'a> {
    target: &'a Target<'a>,
    there: Option<Metadata>,
    file: Option<TempPath>,
}

impl Waiting<'_> {
    /// Writes the bytes beside their place, down to the disk.
    fn write(&mut self) -> Result<(), ShelfError> {
        let Some(bytes) = &self.target.change.bytes else { return Ok(()) };
        let fail = |doing, error: io::Error| self.target.error(doing, why(&error));
        let mut file = beside(&self.target.path).map_err(|error| fail(Doing::Write, error))?;
        file.write_all(bytes).map_err(|error| fail(Doing::Write, error))?;
        if let Some(there) = &self.there {
            keep(file.as_file(), there).map_err(|why| self.target.error(Doing::Write, why))?;
        }
        file.as_file().sync_all().map_err(|error| fail(Doing::Sync, error))?;
        self.file = Some(file.into_temp_path());
        Ok(())
    }

    /// Gives the bytes their name, or takes the file away; what was there is kept aside.
    fn place(self) -> Result<Placed, ShelfError> {
        let Self { target, there, file } = self;
        let path = target.path.clone();
        let doing = if file.is_some() { Doing::Place } else { Doing::Remove };
        let fail = |error: &io::Error| target.error(doing, why(error));
        // Once more: writing has taken its time.
        let now = is_replaced(target).map_err(|why| target.error(Doing::Compare, why))?;
        if now.is_some() != there.is_some() {
            return Err(target.error(Doing::Compare, Why::Changed));
        }
        let name = target.change.name.clone();
        let before = match (&there, &file) {
            (None, _) => None,
            (Some(_), Some(_)) => Some(kept_aside(&path).map_err(|error| fail(&error))?),
            (Some(_), None) => Some(moved_aside(&path).map_err(|error| fail(&error))?),
        };
        if let Some(file) = file {
            let placed = match there {
                Some(_) => file.persist(&path),
                None => file.persist_noclobber(&path),
            };
            placed.map_err(|error| fail(&error.error))?;
        } else if there.is_none() {
            return Ok(Placed { name, path, before: None, new: false });
        }
        Ok(Placed { name, path, before, new: there.is_none() })
    }
}

/// A change that was made, and what was there before.
struct Placed {
    name: String,
    path: PathBuf,
    before: Option<TempPath>,
    new: bool,
}

impl Placed {
    /// Puts back what was there before; returns the name where that fails.
    fn take_back(self) -> Option<String> {
        let back = match self.before {
            Some(before) => before.persist(&self.path).map_err(|error| error.error),
            None if self.new => fs::remove_file(&self.path),
            None => Ok(()),
        };
        back.is_err().then_some(self.name)
    }
}

/// A new empty file in the folder of `path`.
fn beside(path: &Path) -> io::Result<NamedTempFile> {
    let mut builder = Builder::new();
    builder.prefix(OURS);
    if let Some(rights) = usual_rights() {
        builder.permissions(rights);
    }
    builder.tempfile_in(folder_of(path))
}

/// Keeps the file that has the name now under a second one; as a copy, where the disk has no
/// second names.
fn kept_aside(path: &Path) -> io::Result<TempPath> {
    let mut builder = Builder::new();
    builder.prefix(OURS);
    let linked = builder.make_in(folder_of(path), |aside| fs::hard_link(path, aside));
    if let Ok(linked) = linked {
        return Ok(linked.into_temp_path());
    }
    let copy = beside(path)?;
    io::copy(&mut File::open(path)?, &mut copy.as_file())?;
    let about = fs::metadata(path)?;
    keep(copy.as_file(), &about).map_err(|why| io::Error::other(format!("{why:?}")))?;
    Ok(copy.into_temp_path())
}

/// Takes the file away, to where it can be brought back from.
fn moved_aside(path: &Path) -> io::Result<TempPath> {
    let aside = beside(path)?.into_temp_path();
    fs::rename(path, &aside)?;
    Ok(aside)
}

/// Brings the names in a folder down to the disk, where it can do that.
fn sync(folder: &Path) -> Result<(), ShelfError> {
    match File::open(folder).and_then(|folder| folder.sync_all()) {
        Err(error) if !matches!(error.kind(), ErrorKind::InvalidInput | ErrorKind::Unsupported) => {
            Err(ShelfError::new(Doing::Sync, shown(folder), why(&error)))
        }
        _ => Ok(()),
    }
}
