//! From a name to the place on the disk that is changed.

use std::fs;
use std::io::{self, ErrorKind};
use std::path::{Component, Path, PathBuf};

use casework::{Change, Doing, ShelfError, Was, Why};

use crate::folders::{folder_of, is_absent, standing};
use crate::why::why;

/// Returns the path of a name, which a fence may forbid.
pub(crate) fn path_of(fence: Option<&Path>, name: &str) -> Result<PathBuf, Why> {
    if name.is_empty() {
        return Err(Why::NotFound);
    }
    let Some(fence) = fence else { return Ok(PathBuf::from(name)) };
    let plain = |part| matches!(part, Component::Normal(_));
    // A name in the folder has one form, so that no two names are of one file.
    let path: PathBuf = Path::new(name).components().collect();
    if !path.components().all(plain) || path.to_str() != Some(name) {
        return Err(Why::NotOfThisShelf);
    }
    let path = fence.join(path);
    // Links are followed as far as there is something; where the disk does not say whither, nobody
    // goes.
    let inside = |there: &Path| -> io::Result<bool> {
        Ok(there.canonicalize()?.starts_with(fence.canonicalize()?))
    };
    let leads_to_nothing = path.is_symlink() && matches!(path.try_exists(), Ok(false));
    match inside(standing(&path)) {
        Ok(true) if !leads_to_nothing => {}
        // The fence itself is not there yet.
        Err(error) if is_absent(error.kind()) && !leads_to_nothing => {}
        Err(error) if !is_absent(error.kind()) => return Err(why(&error)),
        _ => return Err(Why::NotOfThisShelf),
    }
    Ok(path)
}

/// A change with the file that it is of.
#[derive(Debug)]
pub(crate) struct Target<'a> {
    pub(crate) change: &'a Change,
    /// The file itself, where the name is a link to it. Its folder may not be there yet.
    pub(crate) path: PathBuf,
}

impl<'a> Target<'a> {
    /// Finds the file of a change.
    pub(crate) fn of(fence: Option<&Path>, change: &'a Change) -> Result<Self, ShelfError> {
        let fail = |why| ShelfError::new(Doing::Compare, &change.name, why);
        let path = path_of(fence, &change.name).map_err(fail)?;
        if path.file_name().is_none() || change.name.ends_with('/') {
            return Err(fail(Why::NotAFile(casework::NoFile::Folder)));
        }
        if !path.is_symlink() {
            return Ok(Self { change, path });
        }
        if change.was == Was::Absent {
            return Err(fail(Why::ThereAlready));
        }
        match fs::canonicalize(&path) {
            Ok(path) => Ok(Self { change, path }),
            Err(error) if error.kind() == ErrorKind::NotFound => Err(fail(Why::LinkToNothing)),
            Err(error) => Err(fail(why(&error))),
        }
    }

    /// Takes the folder by its one path, without links; it must be there.
    pub(crate) fn settle(&mut self) -> Result<(), ShelfError> {
        let folder = folder_of(&self.path).canonicalize().map_err(|error| {
            ShelfError::new(Doing::MakeFolder, shown(folder_of(&self.path)), why(&error))
        })?;
        let name = self.path.file_name().unwrap_or_default();
        self.path = folder.join(name);
        Ok(())
    }

    /// What could not be done with it.
    pub(crate) fn error(&self, doing: Doing, why: Why) -> ShelfError {
        ShelfError::new(doing, &self.change.name, why)
    }
}

/// A path in an error.
pub(crate) fn shown(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}
