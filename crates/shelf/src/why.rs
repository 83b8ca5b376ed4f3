//! From the system's errors to reasons.

use std::fs::FileType;
use std::io::{self, ErrorKind};

use casework::{NoFile, Why};

/// Why the system refuses.
#[must_use]
pub fn why(error: &io::Error) -> Why {
    match error.kind() {
        ErrorKind::NotFound => Why::NotFound,
        ErrorKind::PermissionDenied => Why::NotAllowed,
        ErrorKind::AlreadyExists => Why::ThereAlready,
        ErrorKind::NotADirectory => Why::NotAFolder,
        ErrorKind::IsADirectory => Why::NotAFile(NoFile::Folder),
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => Why::DiskFull,
        ErrorKind::FileTooLarge => Why::TooLargeHere,
        ErrorKind::ReadOnlyFilesystem => Why::ReadOnlyDisk,
        _ => Why::System(error.to_string()),
    }
}

/// What something is that is no file.
///
/// # Errors
///
/// Fails where it is none.
pub(crate) fn must_be_file(kind: FileType) -> Result<(), Why> {
    if kind.is_file() { Ok(()) } else { Err(Why::NotAFile(no_file(kind))) }
}

#[cfg(unix)]
fn no_file(kind: FileType) -> NoFile {
    use std::os::unix::fs::FileTypeExt as _;
    if kind.is_dir() {
        NoFile::Folder
    } else if kind.is_block_device() || kind.is_char_device() {
        NoFile::Device
    } else if kind.is_fifo() {
        NoFile::Pipe
    } else {
        NoFile::Other
    }
}

#[cfg(not(unix))]
fn no_file(kind: FileType) -> NoFile {
    if kind.is_dir() { NoFile::Folder } else { NoFile::Other }
}
