//! Where plugins are looked for.

use std::path::{Path, PathBuf};

use cushion::Name;

use crate::{Fault, FaultKind};

/// Files that were named, and folders that hold installed plugins. Nothing else is ever run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Places {
    /// Files named on the command line, in order.
    pub named: Vec<PathBuf>,
    /// Folders, in the order in which they are looked through.
    pub folders: Vec<PathBuf>,
}

impl Places {
    /// Finds the file of a plugin by its name: `libNAME.so` with underscores for hyphens, or what
    /// the system calls libraries, first among the named files.
    ///
    /// # Errors
    ///
    /// Fails where there is none.
    pub fn find(&self, name: &Name) -> Result<PathBuf, Fault> {
        let named = self.named.iter().find(|path| is_called(path, name)).cloned();
        // A single file that was named may be called as one likes.
        let only = (self.named.len() == 1).then(|| self.named[0].clone());
        let installed = self.installed().into_iter().find(|path| is_called(path, name));
        named.or(installed).or(only).ok_or_else(|| {
            let looked_in = self.folders.iter().map(|folder| folder.display().to_string());
            let kind = FaultKind::NotFound { looked_in: looked_in.collect() };
            Fault { plugin: name.to_string(), kind }
        })
    }

    /// Returns the libraries in the folders, in the order of their paths within each.
    #[must_use]
    pub fn installed(&self) -> Vec<PathBuf> {
        let in_folder = |folder: &PathBuf| {
            let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
            let mut paths: Vec<PathBuf> = entries
                .map(|entry| entry.path())
                .filter(|path| is_library(path) && path.is_file())
                .collect();
            paths.sort();
            paths
        };
        self.folders.iter().flat_map(in_folder).collect()
    }

    /// All files: the named ones and the installed ones.
    #[must_use]
    pub fn all(&self) -> Vec<PathBuf> {
        self.named.iter().cloned().chain(self.installed()).collect()
    }
}

fn is_library(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == std::env::consts::DLL_EXTENSION)
}

fn is_called(path: &Path, name: &Name) -> bool {
    let Some(stem) = path.file_stem().and_then(|stem| stem.to_str()) else { return false };
    let stem = stem.strip_prefix(std::env::consts::DLL_PREFIX).unwrap_or(stem);
    stem.replace('_', "-") == name.as_str()
}
