//! Where plugins are looked for.

use std::fs;
use std::path::{Path, PathBuf};

use case::{Distrust, PluginFault, PluginFaultKind};
use cushion::Name;

/// Files that were named, and folders that hold installed plugins. Nothing else is ever run.
///
/// A file that was named is taken as it is. A folder, and a library in it, must belong to this
/// user or to root, and nobody else may write to it: else others could have put the plugin there.
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
    /// Fails where there is none, or only one that is not trusted.
    pub fn find(&self, name: &Name) -> Result<PathBuf, PluginFault> {
        let named = self.named.iter().find(|path| is_called(path, name)).cloned();
        // A single file that was named may be called as one likes.
        let only = (self.named.len() == 1).then(|| self.named[0].clone());
        let installed = self.installed().into_iter().find(|path| is_called(path, name));
        let found = named.or(installed).or(only);
        found.ok_or_else(|| PluginFault { plugin: name.to_string(), kind: self.why_none(name) })
    }

    /// Why no plugin of a name is to be run.
    fn why_none(&self, name: &Name) -> PluginFaultKind {
        let near = |(path, _, _): &(PathBuf, PathBuf, Distrust)| is_called(path, name);
        if let Some((_, place, why)) = self.looked_through().1.into_iter().find(near) {
            return PluginFaultKind::NotTrusted { path: place.display().to_string(), why };
        }
        let looked_in = self.folders.iter().map(|folder| folder.display().to_string());
        PluginFaultKind::NotFound { looked_in: looked_in.collect() }
    }

    /// Returns the libraries in the folders that are trusted, in the order of their paths within
    /// each.
    #[must_use]
    pub fn installed(&self) -> Vec<PathBuf> {
        self.looked_through().0
    }

    /// Returns the libraries that are not run, each with the file or folder that is to blame.
    #[must_use]
    pub fn not_trusted(&self) -> Vec<PluginFault> {
        let fault = |(library, place, why): (PathBuf, PathBuf, Distrust)| {
            let kind = PluginFaultKind::NotTrusted { path: place.display().to_string(), why };
            PluginFault { plugin: library.display().to_string(), kind }
        };
        self.looked_through().1.into_iter().map(fault).collect()
    }

    /// Returns all files, the named ones and the installed ones, each with the name by which its
    /// plugin is found. Nothing is run for this.
    #[must_use]
    pub fn all(&self) -> Vec<(String, PathBuf)> {
        let files = self.named.iter().cloned().chain(self.installed());
        files.map(|path| (called(&path).unwrap_or_default(), path)).collect()
    }

    /// The libraries in all folders: those that are trusted, and those that are not.
    fn looked_through(&self) -> (Vec<PathBuf>, Vec<(PathBuf, PathBuf, Distrust)>) {
        let (mut trusted, mut not) = (Vec::new(), Vec::new());
        for folder in &self.folders {
            let in_folder = distrust(folder);
            for library in libraries(folder) {
                match in_folder {
                    Some(why) => not.push((library, folder.clone(), why)),
                    None => match distrust(&library) {
                        Some(why) => not.push((library.clone(), library, why)),
                        None => trusted.push(library),
                    },
                }
            }
        }
        (trusted, not)
    }
}

/// Why a file or folder is not trusted; none where it is.
#[cfg(unix)]
#[expect(unsafe_code, reason = "the standard library does not say who this user is")]
fn distrust(path: &Path) -> Option<Distrust> {
    use std::os::unix::fs::MetadataExt as _;
    // What cannot be looked at cannot be run either.
    let about = fs::metadata(path).ok()?;
    // SAFETY: a plain call that cannot fail.
    let own = unsafe { libc::geteuid() };
    if about.uid() != own && about.uid() != 0 {
        Some(Distrust::OtherOwner)
    } else if about.mode() & 0o002 != 0 {
        Some(Distrust::WritableByAll)
    } else {
        None
    }
}

#[cfg(not(unix))]
fn distrust(_path: &Path) -> Option<Distrust> {
    None
}

/// The libraries in a folder, in the order of their paths.
fn libraries(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let mut paths: Vec<PathBuf> = entries
        .map(|entry| entry.path())
        .filter(|path| is_library(path) && path.is_file())
        .collect();
    paths.sort();
    paths
}

fn is_library(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == std::env::consts::DLL_EXTENSION)
}

fn is_called(path: &Path, name: &Name) -> bool {
    called(path).is_some_and(|own| own == name.as_str())
}

/// The name by which the plugin in a file is found.
fn called(path: &Path) -> Option<String> {
    let stem = path.file_stem()?.to_str()?;
    let stem = stem.strip_prefix(std::env::consts::DLL_PREFIX).unwrap_or(stem);
    Some(stem.replace('_', "-"))
}
