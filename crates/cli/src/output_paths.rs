//! Where outputs go: never over an input, never over each other, each with its kind's ending.

use std::path::{Path, PathBuf};

use crate::arguments::PluginOptions;
use crate::failure::Failure;

/// Refuses an output whose ending is not that of its kind, such as `svg`.
///
/// # Errors
///
/// Fails with what to name it instead. A device or a pipe may be called anything.
pub(crate) fn has_ending(output: &Path, ending: &str) -> Result<(), Failure> {
    let own = output.extension().is_some_and(|own| own.eq_ignore_ascii_case(ending));
    if own || is_device(output) {
        return Ok(());
    }
    let message =
        format!("`{}` is to be written as {ending}, and is called otherwise", shown(output));
    let named = output.with_extension(ending);
    Err(Failure::call(message)
        .hint(format!("name a file that ends in .{ending}, such as `{}`", shown(&named))))
}

/// Refuses outputs that would be written over an input or over each other, also by way of links.
///
/// # Errors
///
/// Fails with the two that are the same.
pub(crate) fn are_apart(inputs: &[&Path], outputs: &[impl AsRef<Path>]) -> Result<(), Failure> {
    for (at, output) in outputs.iter().map(AsRef::as_ref).enumerate() {
        if is_device(output) {
            continue;
        }
        let same = |other: &Path| are_same(output, other);
        if let Some(input) = inputs.iter().find(|input| same(input)) {
            let message = format!(
                "`{}` would be written over `{}`, which is read here",
                shown(output),
                shown(input)
            );
            return Err(Failure::call(message).hint("name another file to write"));
        }
        if outputs[..at].iter().any(|other| same(other.as_ref())) {
            let message = format!("`{}` would be written twice", shown(output));
            return Err(Failure::call(message).hint("name a file for each"));
        }
    }
    Ok(())
}

/// What is read: these files, and the plugins that were named.
pub(crate) fn inputs<'a>(read: &'a [PathBuf], plugins: &'a PluginOptions) -> Vec<&'a Path> {
    read.iter().chain(&plugins.plugin).map(PathBuf::as_path).collect()
}

fn shown(path: &Path) -> std::path::Display<'_> {
    path.display()
}

/// Whether something that is no file on a disk has that name.
fn is_device(path: &Path) -> bool {
    path.exists() && !path.is_file() && !path.is_dir()
}

/// Whether two paths lead to one file, which need not be there yet.
fn are_same(a: &Path, b: &Path) -> bool {
    resolved(a) == resolved(b) || are_one_file(a, b)
}

/// The path without links, as far as it is there.
fn resolved(path: &Path) -> PathBuf {
    let folder = || match path.parent() {
        Some(folder) if folder != Path::new("") => folder.canonicalize(),
        _ => Path::new(".").canonicalize(),
    };
    let beside = || Some(folder().ok()?.join(path.file_name()?));
    path.canonicalize().ok().or_else(beside).unwrap_or_else(|| path.to_owned())
}

/// Whether two names are those of one file on the disk.
#[cfg(unix)]
fn are_one_file(a: &Path, b: &Path) -> bool {
    use std::os::unix::fs::MetadataExt as _;
    let of = |path: &Path| path.metadata().ok().map(|own| (own.dev(), own.ino()));
    of(a).is_some_and(|own| of(b) == Some(own))
}

#[cfg(not(unix))]
fn are_one_file(_: &Path, _: &Path) -> bool {
    false
}
