//! Remarks on a file, and plain sentences, as the terminal shows them.

use std::ops::Range;

use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use files::{Remark, Severity};

/// A file that was read, and what is to be said about it.
#[derive(Clone, Debug)]
pub(crate) struct FileRemarks {
    /// The path, as the user knows the file.
    pub(crate) path: String,
    /// The text that the places in the remarks count in.
    pub(crate) text: String,
    /// The remarks, in the order of the file.
    pub(crate) remarks: Vec<Remark>,
}

impl FileRemarks {
    /// How messages call the file.
    pub(crate) fn shown(&self) -> String {
        format!("`{}`", self.path)
    }

    /// The place of the first line, for what is about the file as a whole.
    pub(crate) fn first_line(&self) -> Range<usize> {
        0..self.text.find('\n').unwrap_or(self.text.len())
    }

    /// How many remarks there are, in words.
    pub(crate) fn count(&self) -> String {
        let of = |severity| self.remarks.iter().filter(|it| it.severity == severity).count();
        let words = |count: usize, one: &str| match count {
            1 => format!("1 {one}"),
            _ => format!("{count} {one}s"),
        };
        match (of(Severity::Error), of(Severity::Remark)) {
            (0, 0) => "no remarks".to_owned(),
            (0, remarks) => words(remarks, "remark"),
            (errors, 0) => words(errors, "error"),
            (errors, remarks) => words(errors, "error") + ", " + &words(remarks, "remark"),
        }
    }

    /// Whether a remark says that the file cannot be used.
    pub(crate) fn is_wrong(&self) -> bool {
        self.remarks.iter().any(|remark| remark.severity == Severity::Error)
    }

    /// All remarks with file, line, words and what to do; nothing where there are none.
    pub(crate) fn to_words(&self, color: bool) -> String {
        let words = self.remarks.iter().map(|remark| with_place(self, remark, color) + "\n\n");
        words.collect()
    }
}

/// Returns an error that is about no place in a file, with its hint, on lines of their own.
pub(crate) fn sentence(message: &str, hint: Option<&str>, color: bool) -> String {
    titled(Level::ERROR, message, hint, color)
}

/// Returns a warning, on a line of its own.
pub(crate) fn warning(message: &str, color: bool) -> String {
    titled(Level::WARNING, message, None, color)
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
        Severity::Error => Level::ERROR,
        Severity::Remark => Level::WARNING.with_name("remark"),
    };
    let snippet = Snippet::source(&file.text)
        .path(&file.path)
        .annotation(AnnotationKind::Primary.span(remark.span.clone()));
    let (message, hint) = (remark.message(), remark.hint());
    let mut report = vec![level.primary_title(&message).element(snippet)];
    report.extend(hint.as_deref().map(advice));
    renderer(color).render(&report)
}

/// What to do.
fn advice(hint: &str) -> Group<'_> {
    Group::with_title(Level::HELP.with_name("hint").primary_title(hint))
}

/// Draws with colour or without; the signs are plain in both.
fn renderer(color: bool) -> Renderer {
    if color { Renderer::styled() } else { Renderer::plain() }
}
