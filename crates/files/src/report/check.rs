//! The reports on checked files and on failures.

use case::question::{Question, QuestionWords, Unused};
use case::text::TextFinding;
use case::{FileKind, Said};
use schemars::JsonSchema;
use serde::Serialize;

use super::json;
use super::standing::StandingReport;
use crate::{Remark, place_of};

/// One file that was checked.
pub struct CheckedFile<'a> {
    /// The path as it was given.
    pub path: &'a str,
    /// Its text, for the places of the remarks; empty where it could not be read.
    pub text: &'a str,
    /// What it is, where it says so.
    pub kind: Option<FileKind>,
    /// What is to be said about it.
    pub remarks: &'a [Remark],
    /// Questions whose answers in it change nothing, with why not.
    pub unused: &'a [(Question, Unused)],
    /// How the fitting stands, of a client's file from which it can be told.
    pub standing: Option<StandingReport>,
}

/// Files that were checked.
#[derive(Serialize, JsonSchema)]
pub(super) struct CheckReport<'a> {
    files: Vec<FileReport<'a>>,
}

#[derive(Serialize, JsonSchema)]
struct FileReport<'a> {
    path: &'a str,
    kind: Option<&'a str>,
    remarks: Vec<RemarkReport>,
    unused: Vec<UnusedReport>,
    #[serde(skip_serializing_if = "Option::is_none")]
    standing: Option<StandingReport>,
}

#[derive(Serialize, JsonSchema)]
struct UnusedReport {
    key: String,
    why: &'static str,
}

/// A remark on a text.
#[derive(Serialize, JsonSchema)]
pub(super) struct RemarkReport {
    id: &'static str,
    severity: &'static str,
    line: usize,
    column: usize,
    message: String,
    #[serde(skip_serializing_if = "Option::is_none")]
    hint: Option<String>,
}

/// How findings about texts are said.
pub type SayFinding<'a> = &'a dyn Fn(&TextFinding) -> Said;

pub(super) fn remark_reports(
    text: &str,
    remarks: &[Remark],
    say: SayFinding<'_>,
) -> Vec<RemarkReport> {
    remarks
        .iter()
        .map(|remark| {
            let Said { message, hint } = say(&remark.finding);
            let place = place_of(text, remark.span.start);
            RemarkReport {
                id: remark.finding.id(),
                severity: match remark.severity {
                    cushion::Severity::Error => "error",
                    cushion::Severity::Remark => "remark",
                },
                line: place.line,
                column: place.column,
                message,
                hint,
            }
        })
        .collect()
}

/// Returns the report on checked files.
#[must_use]
pub fn check(
    program: &str,
    files: &[CheckedFile<'_>],
    say: SayFinding<'_>,
    words: &dyn QuestionWords,
) -> String {
    let files = files
        .iter()
        .map(|file| FileReport {
            path: file.path,
            kind: file.kind.map(FileKind::id),
            remarks: remark_reports(file.text, file.remarks, say),
            unused: (file.unused.iter())
                .map(|(question, why)| UnusedReport {
                    key: question.path(),
                    why: words.unused(*why),
                })
                .collect(),
            standing: file.standing.clone(),
        })
        .collect();
    json("check", program, Vec::new(), CheckReport { files })
}

/// Why the program stops.
#[derive(Serialize, JsonSchema)]
pub(super) struct ErrorReport<'a> {
    error: ErrorBody<'a>,
}

#[derive(Serialize, JsonSchema)]
struct ErrorBody<'a> {
    kind: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    id: Option<&'a str>,
    message: &'a str,
    #[serde(skip_serializing_if = "Option::is_none")]
    hint: Option<&'a str>,
    remarks: Vec<RemarkReport>,
}

/// A failure.
#[derive(Clone, Copy, Debug)]
pub struct Error<'a> {
    /// Whose move it is.
    pub kind: &'a str,
    /// The word by which programs know it, where there is one.
    pub id: Option<&'a str>,
    /// What is wrong, and what to do.
    pub said: &'a Said,
    /// The text of the file that is wrong, with its remarks.
    pub file: Option<(&'a str, &'a [Remark])>,
}

/// Returns the report on a failure.
#[must_use]
pub fn error(program: &str, error: Error<'_>, say: SayFinding<'_>) -> String {
    let Error { kind, id, said, file } = error;
    let remarks = file.map_or_else(Vec::new, |(text, remarks)| remark_reports(text, remarks, say));
    let (message, hint) = (&*said.message, said.hint.as_deref());
    let error = ErrorBody { kind, id, message, hint, remarks };
    json("error", program, Vec::new(), ErrorReport { error })
}
