//! Remarks on a file, and plain sentences, as the terminal shows them.

use std::ops::Range;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use case::Said;
use casework::FileRemarks;
use files::{Remark, Severity};
use words::Level as Of;

use crate::say;

/// All remarks with file, line, words and what to do; nothing where there are none.
pub(crate) fn to_words(file: &FileRemarks, color: bool) -> String {
    let words = file.remarks.iter().map(|remark| with_place(file, remark, color) + "\n\n");
    words.collect()
}

/// How many errors and other remarks there are, in words.
pub(crate) fn count(file: &FileRemarks) -> String {
    let (errors, remarks) = file.counts();
    say::language().count(errors, remarks)
}

/// Returns an error that is about no place in a file, with its hint, on lines of their own.
pub(crate) fn sentence(message: &str, hint: Option<&str>, color: bool) -> String {
    titled(named(Of::Error), message, hint, color)
}

/// Returns a warning, on a line of its own.
pub(crate) fn warning(message: &str, color: bool) -> String {
    titled(named(Of::Warning), message, None, color)
}

/// A line with its level before it, and perhaps a hint below it.
fn titled(level: Level<'static>, message: &str, hint: Option<&str>, color: bool) -> String {
    let line = |group| renderer(color).render(&[group]) + "\n";
    let message = line(Group::with_title(level.primary_title(message)));
    message + &hint.map(|hint| line(advice(hint))).unwrap_or_default()
}

/// One remark: its sentence, the words that it is about, and what to do.
fn with_place(file: &FileRemarks, remark: &Remark, color: bool) -> String {
    let level = match remark.severity {
        Severity::Error => named(Of::Error),
        Severity::Remark => named(Of::Remark),
    };
    let snippet = Snippet::source(&file.text)
        .path(&file.path)
        .annotation(AnnotationKind::Primary.span(first_line(&file.text, &remark.span)));
    let Said { message, hint } = say::language().about_text(&remark.finding);
    let mut report = vec![level.primary_title(&message).element(snippet)];
    report.extend(hint.as_deref().map(advice));
    renderer(color).render(&report)
}

/// A place as far as its first line goes: a whole table is not shown for what it lacks.
fn first_line(text: &str, span: &Range<usize>) -> Range<usize> {
    let end = text[span.clone()].find('\n').map_or(span.end, |length| span.start + length);
    span.start..end
}

/// How grave it is, in the words of whoever reads it.
fn named(level: Of) -> Level<'static> {
    let own = match level {
        Of::Error => Level::ERROR,
        Of::Warning | Of::Remark => Level::WARNING,
        Of::Hint => Level::HELP,
    };
    own.with_name(say::language().level(level))
}

/// What to do.
fn advice(hint: &str) -> Group<'_> {
    Group::with_title(named(Of::Hint).primary_title(hint))
}

/// Draws with colour or without; the signs are plain in both.
fn renderer(color: bool) -> Renderer {
    if color { Renderer::styled() } else { Renderer::plain() }
}
