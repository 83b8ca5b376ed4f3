//! The lock of a folder: whoever holds it is the only one to change files there.

use std::fs::{self, File, OpenOptions, TryLockError};
use std::io;
use std::path::Path;
use std::thread;
use std::time::{Duration, Instant};

use casework::{Doing, ShelfError, Why};

use crate::OURS;
use crate::target::shown;
use crate::why::why;

/// How long a lock is waited for. A `put` takes milliseconds; a stopped process would hold it
/// for ever.
const PATIENCE: Duration = Duration::from_secs(10);

/// How often it is looked whether the lock is free.
const LOOK: Duration = Duration::from_millis(2);

/// The lock of one folder, which is given back when this goes, or with the process.
#[derive(Debug)]
pub(crate) struct Locked {
    _file: File,
}

impl Locked {
    /// Locks a folder; `None` where the folder was removed while it was waited for.
    ///
    /// The folder itself is locked. Where the system cannot do that (not all network disks can),
    /// a file in it is, which stays there.
    pub(crate) fn folder(path: &Path) -> Result<Option<Self>, ShelfError> {
        let fail = |error: &io::Error| ShelfError::new(Doing::Lock, shown(path), why(error));
        let locked = match File::open(path).and_then(|folder| wait(folder, PATIENCE)) {
            Err(error) if error.kind() == io::ErrorKind::NotFound => return Ok(None),
            Err(error) if cannot_lock_folders(&error) => {
                let file = lock_file(path).and_then(|file| wait(file, PATIENCE));
                file.map_err(|error| fail(&error))?
            }
            done => done.map_err(|error| fail(&error))?,
        };
        let locked =
            locked.ok_or_else(|| ShelfError::new(Doing::Lock, shown(path), Why::Locked))?;
        Ok(is_still(&locked, path).then_some(Self { _file: locked }))
    }

    /// Removes what killed processes left in the folder, which is locked.
    pub(crate) fn sweep(&self, folder: &Path) {
        let entries = fs::read_dir(folder).into_iter().flatten().flatten();
        for entry in entries {
            let ours = entry.file_name().to_str().is_some_and(|name| {
                name.strip_prefix(OURS).is_some_and(|rest| rest != LOCK && !rest.is_empty())
            });
            if ours && entry.file_type().is_ok_and(|kind| kind.is_file()) {
                // What cannot be removed does no harm, and is tried again next time.
                let _ = fs::remove_file(entry.path());
            }
        }
    }
}

/// Waits for a lock; `None` where it is not free in time.
fn wait(file: File, most: Duration) -> io::Result<Option<File>> {
    let start = Instant::now();
    loop {
        match file.try_lock() {
            Ok(()) => return Ok(Some(file)),
            Err(TryLockError::WouldBlock) if start.elapsed() > most => return Ok(None),
            Err(TryLockError::WouldBlock) => thread::sleep(LOOK),
            Err(TryLockError::Error(error)) => return Err(error),
        }
    }
}

/// Whether it is the folder that cannot be locked here, which is so for every process.
#[cfg(unix)]
fn cannot_lock_folders(error: &io::Error) -> bool {
    let no = [libc::EBADF, libc::EINVAL, libc::ENOLCK, libc::ENOSYS, libc::EOPNOTSUPP];
    error.raw_os_error().is_some_and(|code| no.contains(&code))
}

#[cfg(not(unix))]
fn cannot_lock_folders(_error: &io::Error) -> bool {
    true
}

/// What the name of the lock file ends with.
const LOCK: &str = "lock";

/// The file that is locked where the folder cannot be.
fn lock_file(folder: &Path) -> io::Result<File> {
    let path = folder.join(format!("{OURS}{LOCK}"));
    OpenOptions::new().read(true).write(true).create(true).truncate(false).open(path)
}

/// Whether a path still leads to the folder that was opened.
#[cfg(unix)]
fn is_still(opened: &File, path: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let Ok(opened) = opened.metadata() else { return false };
    if !opened.is_dir() {
        return path.is_dir();
    }
    fs::metadata(path).is_ok_and(|there| (there.dev(), there.ino()) == (opened.dev(), opened.ino()))
}

#[cfg(not(unix))]
fn is_still(_opened: &File, path: &Path) -> bool {
    path.is_dir()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_lock_is_waited_for_and_then_given_up() {
        let folder = tempfile::tempdir().unwrap();
        let open = || File::open(folder.path()).unwrap();
        let first = wait(open(), Duration::ZERO).unwrap();
        assert!(first.is_some());
        assert!(wait(open(), Duration::from_millis(20)).unwrap().is_none());
        drop(first);
        assert!(wait(open(), Duration::ZERO).unwrap().is_some());
    }

    #[test]
    fn where_a_folder_cannot_be_locked_a_file_is_and_is_not_swept() {
        let folder = tempfile::tempdir().unwrap();
        let lock = wait(lock_file(folder.path()).unwrap(), Duration::ZERO).unwrap();
        assert!(lock.is_some());
        Locked::folder(folder.path()).unwrap().unwrap().sweep(folder.path());
        let second = wait(lock_file(folder.path()).unwrap(), Duration::ZERO).unwrap();
        assert!(second.is_none(), "it is the same file");
    }
}
