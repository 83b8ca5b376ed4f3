//! What a file has beside its bytes, and keeps.

use std::fs::{self, File, Metadata, OpenOptions};
use std::io::ErrorKind;
use std::path::Path;

use casework::Why;

use crate::why::why;

/// Refuses a file that whoever set it up wants kept, or that cannot be replaced as it is.
pub(crate) fn may_be_replaced(path: &Path, about: &Metadata) -> Result<(), Why> {
    may_be_removed(path, about)?;
    match names(about) {
        // Some disks do not count.
        0 | 1 => Ok(()),
        names => Err(Why::HardLinked { names }),
    }
}

/// Refuses a file that nobody, or not this user, may write to.
pub(crate) fn may_be_removed(path: &Path, about: &Metadata) -> Result<(), Why> {
    if about.permissions().readonly() {
        return Err(Why::ReadOnlyFile);
    }
    // Nothing is written: opening says whether it could be.
    let opened = OpenOptions::new().write(true).open(path);
    opened.map(drop).map_err(|error| why(&error))
}

/// Gives a new file the owner and the mode of the one that it replaces.
pub(crate) fn keep(new: &File, old: &Metadata) -> Result<(), Why> {
    keep_owner(new, old)?;
    new.set_permissions(old.permissions()).map_err(|error| why(&error))
}

#[cfg(unix)]
fn names(about: &Metadata) -> u64 {
    use std::os::unix::fs::MetadataExt as _;
    about.nlink()
}

#[cfg(unix)]
fn keep_owner(new: &File, old: &Metadata) -> Result<(), Why> {
    use std::os::unix::fs::{MetadataExt as _, fchown};
    let about = new.metadata().map_err(|error| why(&error))?;
    if (about.uid(), about.gid()) == (old.uid(), old.gid()) {
        return Ok(());
    }
    fchown(new, Some(old.uid()), Some(old.gid())).map_err(|error| match error.kind() {
        ErrorKind::PermissionDenied => Why::OtherOwner,
        _ => why(&error),
    })
}

#[cfg(not(unix))]
fn names(_about: &Metadata) -> u64 {
    1
}

#[cfg(not(unix))]
fn keep_owner(_new: &File, _old: &Metadata) -> Result<(), Why> {
    Ok(())
}

/// How a new file may be used: as any other that the user writes, not by the user alone.
#[cfg(unix)]
pub(crate) fn usual_rights() -> Option<fs::Permissions> {
    use std::os::unix::fs::PermissionsExt as _;
    Some(fs::Permissions::from_mode(0o666))
}

#[cfg(not(unix))]
pub(crate) fn usual_rights() -> Option<fs::Permissions> {
    None
}
