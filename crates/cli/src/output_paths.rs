//! Where outputs go: never over an input, never over each other, each with its kind's ending.

use std::path::{Path, PathBuf};

use casework::DrawnAs;
use words::OutputFault;

use crate::arguments::PluginOptions;
use crate::failure::Failure;

/// Refuses an output whose ending is not that of its kind, such as `svg`.
///
/// # Errors
///
/// Fails with what to name it instead. A device or a pipe may be called anything.
pub(crate) fn has_ending(output: &Path, ending: &str) -> Result<(), Failure> {
    if ends_in(output, ending) || is_device(output) {
        return Ok(());
    }
    Err(called_otherwise(output, &[ending]))
}

/// As what a drawing is written, which its ending says; to a device or a pipe, as SVG.
///
/// # Errors
///
/// Fails with what to name it instead.
pub(crate) fn drawn_as(output: &Path) -> Result<DrawnAs, Failure> {
    const KINDS: [(&str, DrawnAs); 3] =
        [("svg", DrawnAs::Svg), ("pdf", DrawnAs::Pdf), ("png", DrawnAs::Png)];
    let own = KINDS.iter().find(|(ending, _)| ends_in(output, ending));
    match own {
        Some((_, kind)) => Ok(*kind),
        None if is_device(output) => Ok(DrawnAs::Svg),
        None => Err(called_otherwise(output, &KINDS.map(|(ending, _)| ending))),
    }
}

fn ends_in(output: &Path, ending: &str) -> bool {
    output.extension().is_some_and(|own| own.eq_ignore_ascii_case(ending))
}

fn called_otherwise(output: &Path, endings: &[&str]) -> Failure {
    let example = shown(&output.with_extension(endings[0])).to_string();
    let output = shown(output).to_string();
    Failure::output(&OutputFault::CalledOtherwise { output: &output, endings, example: &example })
}

/// Refuses outputs that would be written over an input or over each other, also by way of links.
///
/// # Errors
///
/// Fails with the two that are the same.
pub(crate) fn are_apart(inputs: &[&Path], outputs: &[impl AsRef<Path>]) -> Result<(), Failure> {
    let read: Vec<WhereItLeads> = inputs.iter().map(|path| WhereItLeads::of(path)).collect();
    let mut written = Vec::new();
    for output in outputs.iter().map(AsRef::as_ref).filter(|output| !is_device(output)) {
        let own = WhereItLeads::of(output);
        let same = |other: &WhereItLeads| own.is_that_of(other);
        if let Some(input) = read.iter().position(same).map(|at| inputs[at]) {
            let (output, input) = (shown(output).to_string(), shown(input).to_string());
            let fault = OutputFault::OverAnInput { output: &output, input: &input };
            return Err(Failure::output(&fault));
        }
        if written.iter().any(same) {
            let output = shown(output).to_string();
            return Err(Failure::output(&OutputFault::Twice { output: &output }));
        }
        written.push(own);
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

/// The file that a path leads to, which need not be there yet.
struct WhereItLeads {
    path: PathBuf,
    /// By which a disk knows it, whatever its name.
    on_disk: Option<(u64, u64)>,
}

impl WhereItLeads {
    fn of(path: &Path) -> Self {
        Self { path: resolved(path), on_disk: on_disk(path) }
    }

    fn is_that_of(&self, other: &Self) -> bool {
        self.path == other.path || (self.on_disk.is_some() && self.on_disk == other.on_disk)
    }
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

#[cfg(unix)]
fn on_disk(path: &Path) -> Option<(u64, u64)> {
    use std::os::unix::fs::MetadataExt as _;
    path.metadata().ok().map(|own| (own.dev(), own.ino()))
}

#[cfg(not(unix))]
fn on_disk(_: &Path) -> Option<(u64, u64)> {
    None
}
