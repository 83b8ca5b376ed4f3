//! The reports on files that were written or changed.

use case::Finding;
use schemars::JsonSchema;
use serde::Serialize;

use super::check::{RemarkReport, SayFinding, remark_reports};
use super::finding::{FindingBody, Say};
use super::json;
use super::standing::StandingReport;
use crate::Remark;

/// Files that were written.
#[derive(Serialize, JsonSchema)]
pub(super) struct WrittenBody<'a> {
    /// Their paths, in the order in which they were made.
    written: &'a [String],
    /// How the fitting of the client stands, whose papers they are.
    #[serde(skip_serializing_if = "Option::is_none")]
    standing: Option<StandingReport>,
}

/// Returns the report on files that were written; `findings` are the warnings.
#[must_use]
pub fn written(
    program: &str,
    paths: &[String],
    standing: Option<&StandingReport>,
    findings: &[Finding],
    say: Say<'_>,
) -> String {
    let standing = standing.cloned();
    json(
        "written",
        program,
        FindingBody::all(findings, say),
        WrittenBody { written: paths, standing },
    )
}

/// A client's file that was changed.
#[derive(Serialize, JsonSchema)]
pub(super) struct SetBody<'a> {
    /// The path as it was given.
    path: &'a str,
    /// What is to be said about the file as it is now.
    remarks: Vec<RemarkReport>,
}

/// Returns the report on a client's file that was changed, with its new text.
#[must_use]
pub fn set(
    program: &str,
    path: &str,
    (text, remarks): (&str, &[Remark]),
    say: SayFinding<'_>,
) -> String {
    let body = SetBody { path, remarks: remark_reports(text, remarks, say) };
    json("set", program, Vec::new(), body)
}

/// What a shell needs to complete our words.
#[derive(Serialize, JsonSchema)]
pub(super) struct CompletionsBody<'a> {
    /// The shell.
    shell: &'a str,
    /// Its script.
    script: &'a str,
}

/// Returns the report on a shell's completions.
#[must_use]
pub fn completions(program: &str, shell: &str, script: &str) -> String {
    json("completions", program, Vec::new(), CompletionsBody { shell, script })
}
