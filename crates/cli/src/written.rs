//! Telling which files were written.

use std::path::Path;

use case::Finding;
use casework::PROGRAM;

use crate::failure::Failure;
use crate::say;
use crate::terminal::Terminal;

/// Tells that files were written, with what is to be known about them; a person reads `words`.
///
/// # Errors
///
/// As [`Terminal::answer`].
pub(crate) fn tell<'a>(
    terminal: Terminal,
    paths: impl IntoIterator<Item = &'a Path>,
    findings: &[Finding],
    words: &str,
) -> Result<(), Failure> {
    terminal.warn(&findings.iter().map(say::finding).collect::<Vec<_>>());
    if !terminal.is_json() {
        return terminal.answer(words);
    }
    let paths: Vec<String> = paths.into_iter().map(|path| path.display().to_string()).collect();
    terminal.answer(&files::report::written(PROGRAM, &paths, findings, &say::finding))
}
