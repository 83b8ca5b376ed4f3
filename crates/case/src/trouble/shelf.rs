//! What a shelf, where files are kept, could not do.

use std::fmt;

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
