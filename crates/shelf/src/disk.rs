//! Folders on a disk as a shelf.

use std::fs;
use std::path::{Path, PathBuf};

use casework::{Change, Doing, Shelf, ShelfError, Tell, Watch};

use crate::target::path_of;
use crate::why::why;
use crate::{OURS, put, reading, watching};

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

    /// The folder that all names are within, if there is one.
    pub(crate) fn fence(&self) -> Option<&Path> {
        self.within.as_deref()
    }
}

impl Shelf for DiskShelf {
    fn read(&self, name: &str) -> Result<Vec<u8>, ShelfError> {
        let fail = |why| ShelfError::new(Doing::Read, name, why);
        let path = path_of(self.fence(), name).map_err(fail)?;
        reading::bytes(&path).map_err(fail)
    }

    fn list(&self, folder: &str) -> Result<Vec<String>, ShelfError> {
        let fail = |error: std::io::Error| ShelfError::new(Doing::List, folder, why(&error));
        let no_name = |why| ShelfError::new(Doing::List, folder, why);
        let path = match folder {
            "" => self.within.clone().unwrap_or_else(|| PathBuf::from(".")),
            _ => path_of(self.fence(), folder).map_err(no_name)?,
        };
        let mut names = Vec::new();
        for entry in fs::read_dir(path).map_err(fail)? {
            let entry = entry.map_err(fail)?;
            let is_file = is_file(&entry).map_err(fail)?;
            // A name that is no text could not be asked for.
            let Ok(name) = entry.file_name().into_string() else { continue };
            if is_file && !name.starts_with(OURS) {
                names.push(text(&Path::new(folder).join(name)));
            }
        }
        names.sort();
        Ok(names)
    }

    fn put(&self, changes: &[Change]) -> Result<(), ShelfError> {
        put::all(self.fence(), changes)
    }

    fn beside(&self, name: &str, other: &str) -> String {
        let folder = Path::new(name).parent().unwrap_or(Path::new(""));
        text(&folder.join(other))
    }

    fn watch(&self, name: &str, tell: Tell) -> Option<Watch> {
        watching::watch(&path_of(self.fence(), name).ok()?, tell)
    }
}

/// Whether an entry of a folder is a file; what is gone by now, or a link to nothing, is none.
fn is_file(entry: &fs::DirEntry) -> std::io::Result<bool> {
    match fs::metadata(entry.path()) {
        Ok(about) => Ok(about.is_file()),
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => Ok(false),
        Err(_) if entry.file_type()?.is_symlink() => Ok(false),
        Err(error) => Err(error),
    }
}

/// A path that was made from texts, as a text.
fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}
