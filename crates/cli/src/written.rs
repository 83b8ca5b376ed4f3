//! Telling which files were written.

use std::path::{Path, PathBuf};

use case::Finding;
use casework::PROGRAM;
use files::report::StandingReport;

use crate::failure::Failure;
use crate::say;
use crate::terminal::Terminal;

/// Tells that papers were written; a person reads their names, a line each.
///
/// # Errors
///
/// As [`Terminal::answer`].
pub(crate) fn tell_papers(
    terminal: Terminal,
    paths: &[PathBuf],
    told: (&[Finding], Option<&StandingReport>),
) -> Result<(), Failure> {
    let names: String = paths.iter().map(|path| format!("{}\n", path.display())).collect();
    tell(terminal, paths.iter().map(PathBuf::as_path), told, &names)
}

/// Tells that files were written, with what is to be known about them and how the fitting stands; a
/// person reads `words`.
///
/// # Errors
///
/// As [`Terminal::answer`].
pub(crate) fn tell<'a>(
    terminal: Terminal,
    paths: impl IntoIterator<Item = &'a Path>,
    (findings, standing): (&[Finding], Option<&StandingReport>),
    words: &str,
) -> Result<(), Failure> {
    terminal.warn(&findings.iter().map(say::finding).collect::<Vec<_>>());
    if !terminal.is_json() {
        let standing = standing.map_or(String::new(), |own| format!("{}\n", own.text()));
        return terminal.answer(&(words.to_owned() + &standing));
    }
    let paths: Vec<String> = paths.into_iter().map(|path| path.display().to_string()).collect();
    terminal.answer(&files::report::written(PROGRAM, &paths, standing, findings, &say::finding))
}
