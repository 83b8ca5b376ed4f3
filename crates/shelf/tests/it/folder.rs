//! A folder for a test, and second processes in it.

use std::collections::BTreeMap;
use std::fs;
use std::path::PathBuf;
use std::process::Command;

use shelf::DiskShelf;
use tempfile::TempDir;

/// A folder that goes with the test.
pub(crate) struct Folder(TempDir);

impl Folder {
    pub(crate) fn new() -> Self {
        Self(tempfile::tempdir().unwrap())
    }

    /// A folder with files of these names and texts.
    pub(crate) fn of(files: &[(&str, &str)]) -> Self {
        let folder = Self::new();
        for (name, text) in files {
            fs::write(folder.path(name), text).unwrap();
        }
        folder
    }

    pub(crate) fn shelf(&self) -> DiskShelf {
        DiskShelf::within(self.0.path())
    }

    pub(crate) fn path(&self, name: &str) -> PathBuf {
        self.0.path().join(name)
    }

    /// The path as a name on the shelf of all paths.
    pub(crate) fn name(&self, name: &str) -> String {
        self.path(name).to_str().unwrap().to_owned()
    }

    /// The names in it, in order.
    pub(crate) fn names(&self) -> Vec<String> {
        self.texts().into_keys().collect()
    }

    /// The names in it with the texts of files; folders have none.
    pub(crate) fn texts(&self) -> BTreeMap<String, String> {
        let entries = fs::read_dir(self.0.path()).unwrap().map(|entry| entry.unwrap());
        let text = |path: PathBuf| match path.is_file() {
            true => fs::read_to_string(path).unwrap(),
            false => String::new(),
        };
        entries
            .map(|entry| (entry.file_name().into_string().unwrap(), text(entry.path())))
            .collect()
    }
}

/// The tests' own program, which changes files in a process of its own.
pub(crate) fn hand() -> Command {
    Command::new(env!("CARGO_BIN_EXE_shelf-hand"))
}

/// What it said about its failure, or nothing where it did not fail.
#[track_caller]
pub(crate) fn said(command: &mut Command) -> String {
    let output = command.output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    let code = output.status.code();
    assert_eq!(code, Some(if said.is_empty() { 0 } else { 2 }), "{:?}", output.status);
    said
}
