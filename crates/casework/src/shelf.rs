//! The shelf: where a case's files are kept, whatever that is.

use std::fmt;

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

/// What a shelf could not do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ShelfError {
    /// What it was doing.
    pub doing: Doing,
    /// With which file or folder: a name as it was given, where it is one of those.
    pub name: String,
    /// Why it could not.
    pub why: Why,
    /// The names of files that have changed all the same, because undoing failed too.
    pub not_undone: Vec<String>,
}

impl ShelfError {
    /// An error after which everything is as before.
    #[must_use]
    pub fn new(doing: Doing, name: impl Into<String>, why: Why) -> Self {
        Self { doing, name: name.into(), why, not_undone: Vec::new() }
    }
}

/// Says the values for a developer; sentences for the user are made elsewhere.
impl fmt::Display for ShelfError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?} `{}`: {:?}", self.doing, self.name, self.why)?;
        if self.not_undone.is_empty() { Ok(()) } else { write!(f, "; {:?}", self.not_undone) }
    }
}

impl std::error::Error for ShelfError {}

/// What a shelf does with a file or a folder.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doing {
    /// Reading a file.
    Read,
    /// Listing a folder.
    List,
    /// Locking a folder against other changes.
    Lock,
    /// Making a folder.
    MakeFolder,
    /// Comparing a file with what the change replaces.
    Compare,
    /// Writing the new bytes beside the file.
    Write,
    /// Waiting until what was written is on the disk.
    Sync,
    /// Giving the written bytes the file's name.
    Place,
    /// Removing a file.
    Remove,
}

/// Why a shelf could not do something.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Why {
    /// There is no such file or folder.
    NotFound,
    /// This user may not.
    NotAllowed,
    /// The name is not one of this shelf's.
    NotOfThisShelf,
    /// The file has more bytes than are read.
    TooLarge {
        /// The most that are read.
        most: u64,
    },
    /// The name is that of something else.
    NotAFile(NoFile),
    /// A part of the name, or what is to be a folder, is none.
    NotAFolder,
    /// The name is a link to a file that is not there.
    LinkToNothing,
    /// The file's bytes are not those that the change replaces.
    Changed,
    /// The file that the change replaces is gone.
    Gone,
    /// The name must be free, and is not.
    ThereAlready,
    /// Two changes are of one file.
    Twice,
    /// Nobody may write to the file: whoever set it so wants it kept.
    ReadOnlyFile,
    /// The file belongs to another user or group and would become this user's.
    OtherOwner,
    /// The file has other names, which would go on naming the old bytes.
    HardLinked {
        /// How many names it has.
        names: u64,
    },
    /// The disk is read-only.
    ReadOnlyDisk,
    /// The disk, or this user's part of it, is full.
    DiskFull,
    /// A file may not become so large here.
    TooLargeHere,
    /// Another program has kept the folder locked for longer than is waited.
    Locked,
    /// Something else, in the words of the system.
    System(String),
}

/// What has a file's name and is no file.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoFile {
    /// A folder.
    Folder,
    /// A device.
    Device,
    /// A pipe.
    Pipe,
    /// A socket, or something that has no word here.
    Other,
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
