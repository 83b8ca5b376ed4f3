//! The shelf: where a case's files are kept, whatever that is.

use std::any::Any;
use std::fmt;

pub use case::{Doing, NoFile, ShelfError, Why};
use sha2::{Digest as _, Sha256};

/// The most bytes of a file that a shelf reads: 1 MB. Our own files have a few thousand.
pub const MOST_READ: u64 = 1_000_000;

/// Where files are kept.
///
/// A *name* is what the shelf says it is, and opaque to everyone else: a shelf of one folder
/// takes names within it only, such as what a page in a browser may ask for; the shelf behind
/// a command takes any path as it was typed, because a command's client, layout, and outputs may
/// each lie in another folder. So one shelf serves them all, and one [`put`](Self::put) may
/// change files in several folders. What a file says about another is resolved by
/// [`beside`](Self::beside), never by taking names apart.
pub trait Shelf: Send + Sync {
    /// Returns all bytes of a file, exactly as they are there.
    ///
    /// What is no file (a folder, a device, a pipe) is refused and not waited for.
    ///
    /// # Errors
    ///
    /// Fails where there is no such file, it may not be read or has more than [`MOST_READ`] bytes.
    fn read(&self, name: &str) -> Result<Vec<u8>, ShelfError>;

    /// Returns the names of the files in a folder, in byte order; `""` is the shelf's own folder.
    ///
    /// Folders in it, and what a `put` that is under way keeps there, are left out.
    ///
    /// # Errors
    ///
    /// Fails where there is no such folder or it may not be read.
    fn list(&self, folder: &str) -> Result<Vec<String>, ShelfError>;

    /// Makes all changes, or none of them, and the folders that they need.
    ///
    /// Every file is compared with what its change replaces while no other `put` of this program
    /// can change it. A file keeps its mode and owner; a link keeps pointing at it.
    ///
    /// # Errors
    ///
    /// Fails where a file is not what the change replaces, or a change cannot be made; nothing is
    /// changed then, except what [`ShelfError::not_undone`] lists.
    fn put(&self, changes: &[Change]) -> Result<(), ShelfError>;

    /// Returns the name of the file that the file called `name` calls `other`.
    fn beside(&self, name: &str, other: &str) -> String;

    /// Calls `tell`, from whatever thread, whenever a file may be another than it was, until what is
    /// returned is dropped; none where the shelf cannot tell.
    ///
    /// It may tell for nothing, and of what happens on another machine it may tell nothing: whoever
    /// is told reads the file, and looks at times all the same.
    fn watch(&self, name: &str, tell: Tell) -> Option<Watch> {
        let _ = (name, tell);
        None
    }
}

/// What is called when a watched file may be another.
pub type Tell = Box<dyn Fn() + Send + Sync>;

/// Keeps a file watched as long as it is not dropped.
pub struct Watch {
    _held: Box<dyn Any + Send>,
}

impl Watch {
    /// A watch that ends with what is held.
    #[must_use]
    pub fn of(held: impl Any + Send) -> Self {
        Self { _held: Box::new(held) }
    }
}

impl fmt::Debug for Watch {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("Watch")
    }
}

/// One file to be written or removed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Change {
    /// The file's name.
    pub name: String,
    /// What is replaced.
    pub was: Was,
    /// All bytes of the file to be; `None` removes it.
    pub bytes: Option<Vec<u8>>,
}

impl Change {
    /// A file that replaces the bytes that were read, and nothing else.
    #[must_use]
    pub fn of(name: impl Into<String>, read: &[u8], bytes: impl Into<Vec<u8>>) -> Self {
        let was = Was::Digest(BytesDigest::of(read));
        Self { name: name.into(), was, bytes: Some(bytes.into()) }
    }

    /// A file that must not be there yet.
    #[must_use]
    pub fn new(name: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Self {
        Self { name: name.into(), was: Was::Absent, bytes: Some(bytes.into()) }
    }

    /// A file that takes the place of whatever file is there: an output.
    #[must_use]
    pub fn output(name: impl Into<String>, bytes: impl Into<Vec<u8>>) -> Self {
        Self { name: name.into(), was: Was::Any, bytes: Some(bytes.into()) }
    }

    /// A file that goes, if it is there.
    #[must_use]
    pub fn removal(name: impl Into<String>, was: Was) -> Self {
        Self { name: name.into(), was, bytes: None }
    }
}

/// What a change replaces.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Was {
    /// Nothing: the name is free.
    Absent,
    /// A file with these bytes.
    Digest(BytesDigest),
    /// Nothing or any file.
    Any,
}

/// A SHA-256 of all bytes of a file.
///
/// Unlike `files::digest`, by which a layout is known again in a record, it counts line ends and
/// the byte-order mark, and is not cut short: it stands between a person's edit and its loss.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct BytesDigest([u8; 32]);

impl BytesDigest {
    /// Returns the digest of bytes.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Self {
        Self(Sha256::digest(bytes).into())
    }
}

impl fmt::Debug for BytesDigest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.iter().try_for_each(|byte| write!(f, "{byte:02x}"))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_digest_is_a_whole_sha_256_in_which_line_ends_count() {
        // FIPS 180-2, appendix B.1.
        let abc = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
        assert_eq!(format!("{:?}", BytesDigest::of(b"abc")), abc);
        assert_ne!(BytesDigest::of(b"a\r\nb"), BytesDigest::of(b"a\nb"));
    }
}
