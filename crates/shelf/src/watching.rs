//! Watching a file on a disk, as the system tells of changes in its folder.

use std::path::Path;

use casework::{Tell, Watch};
use notify::{Event, RecursiveMode, Watcher as _};

/// Watches a file; none where the system cannot.
pub(crate) fn watch(path: &Path, tell: Tell) -> Option<Watch> {
    let name = path.file_name()?.to_owned();
    let told = move |event: notify::Result<Event>| {
        // What the system lost count of may have been about this file.
        let about = |event: &Event| {
            event.need_rescan() || event.paths.iter().any(|own| own.file_name() == Some(&name))
        };
        if event.as_ref().map_or(true, about) && !event.is_ok_and(|own| own.kind.is_access()) {
            tell();
        }
    };
    let mut watcher = notify::recommended_watcher(told).ok()?;
    // Editors put a new file in the place of the old one, so its folder is watched.
    let folder = path.parent().filter(|own| !own.as_os_str().is_empty());
    watcher.watch(folder.unwrap_or(Path::new(".")), RecursiveMode::NonRecursive).ok()?;
    Some(Watch::of(watcher))
}
