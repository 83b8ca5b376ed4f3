//! Writing files: whole or not at all, and several together or none of them.

use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use tempfile::{Builder, NamedTempFile, TempPath};

use crate::failure::{Failure, Kind};

/// A file to be: its path and its bytes.
#[derive(Debug)]
pub(crate) struct Output {
    pub(crate) path: PathBuf,
    pub(crate) bytes: Vec<u8>,
}

/// Writes one file, in place of one that is there.
///
/// # Errors
///
/// See [`all`].
pub(crate) fn one(path: &Path, bytes: Vec<u8>) -> Result<(), Failure> {
    all(vec![Output { path: path.to_owned(), bytes }])
}

/// Writes all files, in place of those that are there, and makes the folders that they need.
///
/// Everything is first written beside its place, under a name of its own, and synced; only when
/// all of it is on the disk is it given its name. What was there before comes back if that fails
/// half way. A path that leads to a device or a pipe is written to directly.
///
/// # Errors
///
/// Fails where a file cannot be written; then nothing has changed.
pub(crate) fn all(outputs: Vec<Output>) -> Result<(), Failure> {
    let mut folders = NewFolders::default();
    let mut waiting = Vec::new();
    for output in outputs {
        let fail =
            |error: io::Error| Failure::write(&format!("`{}`", output.path.display()), &error);
        let path = followed(&output.path);
        if path.exists() && !path.is_file() && !path.is_dir() {
            write_to_device(&path, &output.bytes).map_err(fail)?;
            continue;
        }
        folders.make(folder_of(&path)).map_err(fail)?;
        waiting.push((written_beside(&path, &output.bytes).map_err(fail)?, path));
    }
    put_in_place(waiting)?;
    folders.keep();
    Ok(())
}

/// Writes a file that must not be there yet.
///
/// # Errors
///
/// Fails where something has that name, and leaves it as it is, or where it cannot be written.
pub(crate) fn new(path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    let shown = path.display();
    let fail = |error: &io::Error| match error.kind() {
        io::ErrorKind::AlreadyExists => Failure::new(
            Kind::CannotWrite,
            format!("`{shown}` is there already and was left as it is"),
        )
        .hint("choose another name, or move that file away first"),
        _ => Failure::write(&format!("`{shown}`"), error),
    };
    if path.symlink_metadata().is_ok() {
        return Err(fail(&io::ErrorKind::AlreadyExists.into()));
    }
    let beside = written_beside(path, bytes).map_err(|error| fail(&error))?;
    beside.persist_noclobber(path).map_err(|error| fail(&error.error))
}

/// Follows links, so that a linked file is rewritten and not the link to it.
fn followed(path: &Path) -> PathBuf {
    path.canonicalize().unwrap_or_else(|_| path.to_owned())
}

/// Returns the folder that a path lies in.
fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if folder != Path::new("") => folder,
        _ => Path::new("."),
    }
}

/// Writes to something that is no file on a disk.
fn write_to_device(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut device = fs::OpenOptions::new().write(true).open(path)?;
    device.write_all(bytes)?;
    device.flush()
}

/// Writes the bytes into the folder of `path`, under another name, down to the disk.
fn written_beside(path: &Path, bytes: &[u8]) -> io::Result<TempPath> {
    let mut builder = Builder::new();
    builder.prefix(".seatwright-");
    let mut file = with_usual_rights(&mut builder).tempfile_in(folder_of(path))?;
    file.write_all(bytes)?;
    if let Ok(there) = fs::metadata(path) {
        file.as_file().set_permissions(there.permissions())?;
    }
    file.as_file().sync_all()?;
    Ok(NamedTempFile::into_temp_path(file))
}

/// Lets the file be read as any other that the user writes, not by the user alone.
#[cfg(unix)]
fn with_usual_rights<'a, 'b, 'c>(builder: &'a mut Builder<'b, 'c>) -> &'a mut Builder<'b, 'c> {
    use std::os::unix::fs::PermissionsExt as _;
    builder.permissions(fs::Permissions::from_mode(0o666))
}

#[cfg(not(unix))]
fn with_usual_rights<'a, 'b, 'c>(builder: &'a mut Builder<'b, 'c>) -> &'a mut Builder<'b, 'c> {
    builder
}

/// A file that has got its name, and the one that had it before.
struct Placed {
    path: PathBuf,
    before: Option<TempPath>,
}

/// Gives every waiting file its name; takes all of it back if one cannot have it.
fn put_in_place(waiting: Vec<(TempPath, PathBuf)>) -> Result<(), Failure> {
    let mut placed: Vec<Placed> = Vec::new();
    for (file, path) in waiting {
        let before = kept_aside(&path);
        if let Err(error) = file.persist(&path) {
            placed.into_iter().rev().for_each(take_back);
            return Err(Failure::write(&format!("`{}`", path.display()), &error.error));
        }
        placed.push(Placed { path, before });
    }
    Ok(())
}

/// Keeps the file that has the name now under a second one, where the disk can do so.
fn kept_aside(path: &Path) -> Option<TempPath> {
    let mut builder = Builder::new();
    builder.prefix(".seatwright-");
    let kept = builder.make_in(folder_of(path), |aside| fs::hard_link(path, aside)).ok()?;
    Some(kept.into_temp_path())
}

/// Puts back what was there before.
fn take_back(placed: Placed) {
    // Nothing more can be done where this fails too: the first failure is the one to tell.
    let _ = match placed.before {
        Some(before) => before.persist(&placed.path).map_err(|error| error.error),
        None => fs::remove_file(&placed.path),
    };
}

/// Folders that were made for the outputs; removed again unless the outputs are kept.
#[derive(Default)]
struct NewFolders(Vec<PathBuf>);

impl NewFolders {
    /// Makes a folder and those above it.
    fn make(&mut self, folder: &Path) -> io::Result<()> {
        let missing: Vec<&Path> = folder
            .ancestors()
            .take_while(|above| *above != Path::new("") && !above.exists())
            .collect();
        for folder in missing.into_iter().rev() {
            fs::create_dir(folder)?;
            self.0.push(folder.to_owned());
        }
        Ok(())
    }

    /// Lets the folders stay.
    fn keep(mut self) {
        self.0.clear();
    }
}

impl Drop for NewFolders {
    fn drop(&mut self) {
        for folder in self.0.iter().rev() {
            // A folder that somebody else put something into stays.
            let _ = fs::remove_dir(folder);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn output(path: PathBuf, text: &str) -> Output {
        Output { path, bytes: text.as_bytes().to_vec() }
    }

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> = fs::read_dir(folder)
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        names.sort();
        names
    }

    #[test]
    fn where_one_cannot_have_its_name_all_is_as_before() {
        let dir = tempfile::tempdir().unwrap();
        let at = |name: &str| dir.path().join(name);
        fs::write(at("old"), "before").unwrap();
        fs::create_dir(at("taken")).unwrap();
        let outputs =
            vec![output(at("old"), "after"), output(at("new"), "x"), output(at("taken"), "y")];
        assert!(all(outputs).is_err());
        assert_eq!(names(dir.path()), ["old", "taken"]);
        assert_eq!(fs::read_to_string(at("old")).unwrap(), "before");
    }

    #[test]
    fn folders_are_made_and_unmade() {
        let dir = tempfile::tempdir().unwrap();
        let deep = dir.path().join("a/b/c");
        fs::create_dir(dir.path().join("taken")).unwrap();
        let taken = dir.path().join("taken");
        assert!(all(vec![output(deep.join("x"), "x"), output(taken, "y")]).is_err());
        assert_eq!(names(dir.path()), ["taken"]);
        assert!(all(vec![output(deep.join("x"), "x")]).is_ok());
        assert_eq!(names(&deep), ["x"]);
    }

    #[test]
    fn a_new_file_never_takes_the_place_of_another() {
        let dir = tempfile::tempdir().unwrap();
        let path = dir.path().join("x");
        assert!(new(&path, b"first").is_ok());
        assert!(new(&path, b"second").is_err());
        assert_eq!(fs::read_to_string(&path).unwrap(), "first");
        assert_eq!(names(dir.path()), ["x"]);
    }
}
