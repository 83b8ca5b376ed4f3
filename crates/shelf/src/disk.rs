//! Folders on a disk as a shelf.

use std::path::{Path, PathBuf};

use casework::{Change, Shelf, ShelfError};

/// Files in folders on a disk.
#[derive(Clone, Debug)]
pub struct DiskShelf {
    /// The folder that all names are within, or none where a name is any path.
    within: Option<PathBuf>,
}

impl DiskShelf {
    /// A shelf whose names are paths, as they are typed on a command line.
    #[must_use]
    pub fn anywhere() -> Self {
        Self { within: None }
    }

    /// A shelf whose names are those of files in a folder and the folders in it, and no others:
    /// neither `..`, nor a path from the root, nor a link that leads out.
    #[must_use]
    pub fn within(folder: impl Into<PathBuf>) -> Self {
        Self { within: Some(folder.into()) }
    }
}

impl Shelf for DiskShelf {
    fn read(&self, _name: &str) -> Result<Vec<u8>, ShelfError> {
        todo!()
    }

    fn list(&self, _folder: &str) -> Result<Vec<String>, ShelfError> {
        todo!()
    }

    fn put(&self, _changes: &[Change]) -> Result<(), ShelfError> {
        todo!()
    }

    fn beside(&self, name: &str, other: &str) -> String {
        let folder = Path::new(name).parent().unwrap_or(Path::new(""));
        folder.join(other).to_string_lossy().into_owned()
    }
}
