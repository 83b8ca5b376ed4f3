//! Reading a file whole, without waiting for what is no file.

use std::fs::{self, File, OpenOptions};
use std::io::Read as _;
use std::path::Path;

use casework::{BytesDigest, Why};

use crate::why::{must_be_file, why};

/// Returns all bytes of a file that a case is read from.
pub(crate) fn bytes(path: &Path) -> Result<Vec<u8>, Why> {
    let most = casework::shelf::MOST_READ;
    let file = opened(path)?;
    let length = file.metadata().map_err(|error| why(&error))?.len();
    let mut bytes = Vec::new();
    if length <= most {
        file.take(most + 1).read_to_end(&mut bytes).map_err(|error| why(&error))?;
    }
    if length > most || bytes.len() as u64 > most {
        return Err(Why::TooLarge { most });
    }
    Ok(bytes)
}

/// Returns the digest of a file of whatever length.
pub(crate) fn digest(path: &Path) -> Result<BytesDigest, Why> {
    let mut bytes = Vec::new();
    opened(path)?.read_to_end(&mut bytes).map_err(|error| why(&error))?;
    Ok(BytesDigest::of(&bytes))
}

/// Opens a file; it is looked at before, since opening a device may do something, and after,
/// since it may have been put there in between.
fn opened(path: &Path) -> Result<File, Why> {
    let about = fs::metadata(path).map_err(|error| why(&error))?;
    must_be_file(about.file_type())?;
    let mut options = OpenOptions::new();
    let file = not_waiting(options.read(true)).open(path).map_err(|error| why(&error))?;
    let about = file.metadata().map_err(|error| why(&error))?;
    must_be_file(about.file_type())?;
    Ok(file)
}

/// A pipe is opened at once and not when somebody writes to it; files do not care.
#[cfg(unix)]
fn not_waiting(options: &mut OpenOptions) -> &mut OpenOptions {
    use std::os::unix::fs::OpenOptionsExt as _;
    options.custom_flags(libc::O_NONBLOCK)
}

#[cfg(not(unix))]
fn not_waiting(options: &mut OpenOptions) -> &mut OpenOptions {
    options
}
