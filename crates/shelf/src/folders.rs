//! Folders that a change needs.

use std::fs;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

use casework::{Doing, ShelfError, Why};

use crate::target::shown;
use crate::why::why;

/// Returns the folder that a path lies in.
pub(crate) fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if folder != Path::new("") => folder,
        _ => Path::new("."),
    }
}

/// Returns the part of a path, from its beginning, that is there, or of which the disk does not
/// say that it is not.
pub(crate) fn standing(path: &Path) -> &Path {
    let there = |above: &&Path| {
        *above != Path::new("")
            && !matches!(fs::metadata(above), Err(error) if is_absent(error.kind()))
    };
    path.ancestors().find(there).unwrap_or(Path::new("."))
}

/// Whether an error says that nothing has such a path.
pub(crate) fn is_absent(kind: ErrorKind) -> bool {
    matches!(kind, ErrorKind::NotFound | ErrorKind::NotADirectory)
}

/// Folders that were made, to be removed again where the change is not.
#[derive(Debug, Default)]
pub(crate) struct NewFolders(Vec<PathBuf>);

impl NewFolders {
    /// Makes a folder and those above it.
    pub(crate) fn make(&mut self, folder: &Path) -> Result<(), ShelfError> {
        let fail = |folder: &Path, why| ShelfError::new(Doing::MakeFolder, shown(folder), why);
        let missing: Vec<&Path> = folder
            .ancestors()
            .take_while(|above| *above != Path::new("") && !above.exists())
            .collect();
        for folder in missing.into_iter().rev() {
            match fs::create_dir(folder) {
                Ok(()) => self.0.push(folder.to_owned()),
                // Another process was as quick.
                Err(error) if error.kind() == ErrorKind::AlreadyExists && folder.is_dir() => {}
                Err(error) => return Err(fail(folder, why(&error))),
            }
        }
        match fs::metadata(folder) {
            Ok(about) if about.is_dir() => Ok(()),
            Ok(_) => Err(fail(folder, Why::NotAFolder)),
            Err(error) => Err(fail(folder, why(&error))),
        }
    }

    /// Removes them again; one that somebody else put something into stays.
    pub(crate) fn remove(self) {
        for folder in self.0.iter().rev() {
            // Nothing is lost by a folder that stays.
            let _ = fs::remove_dir(folder);
        }
    }
}
