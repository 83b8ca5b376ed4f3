//! Watching a file: the same is done again whenever it is saved.

use std::path::Path;
use std::sync::mpsc;
use std::time::Duration;

use notify::{RecursiveMode, Watcher as _};
use words::SupplierFault;

use crate::failure::Failure;

/// How long an editor may take to save: what it writes in parts is read when it is whole.
const SETTLED: Duration = Duration::from_millis(80);

/// Does something now, and again whenever the bytes of a file are others, until the program is
/// stopped.
///
/// # Errors
///
/// Fails where the file's folder cannot be watched.
pub(crate) fn whenever_saved(path: &Path, mut again: impl FnMut()) -> Result<(), Failure> {
    let failed = |error: &notify::Error| {
        let (file, why) = (path.display().to_string(), error.to_string());
        Failure::supplier(&SupplierFault::NotWatched { file: &file, why: &why })
    };
    let (tell, told) = mpsc::channel();
    let mut watcher = notify::recommended_watcher(tell).map_err(|error| failed(&error))?;
    // Editors put a new file in the place of the old one, so its folder is watched.
    let folder = path.parent().filter(|own| !own.as_os_str().is_empty());
    let folder = folder.unwrap_or(Path::new("."));
    watcher.watch(folder, RecursiveMode::NonRecursive).map_err(|error| failed(&error))?;
    let mut seen = std::fs::read(path).ok();
    again();
    while told.recv().is_ok() {
        std::thread::sleep(SETTLED);
        while told.try_recv().is_ok() {}
        let now = std::fs::read(path).ok();
        if now.is_some() && now != seen {
            seen = now;
            again();
        }
    }
    Ok(())
}
