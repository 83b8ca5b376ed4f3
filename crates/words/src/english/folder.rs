//! English: papers of one client that lie in one folder, and which of them hold.

use case::{OtherPapers, PlanMark};

use super::parts::{counted, list};

/// The warning, for whoever prints.
pub(super) fn warning(papers: &OtherPapers) -> String {
    let count: usize = papers.others.iter().map(|own| own.files.len()).sum();
    let of: Vec<String> = papers.others.iter().map(|own| plan(own.mark.as_ref())).collect();
    let (files, code) = (counted(count, "file"), &papers.code);
    let beside = format!("beside these papers of {code} the folder holds {files} of {}", list(&of));
    if papers.has_later() {
        format!(
            "{beside}: a later plan than this file has, so look which file of the client is the newest before anybody uses these papers"
        )
    } else {
        format!(
            "{beside}: they are SUPERSEDED, so take them away, and strike them through where they were printed"
        )
    }
}

/// The text that lies in the folder.
pub(super) fn note(papers: &OtherPapers) -> String {
    let printed = plan(Some(&papers.printed));
    let mut lines = vec![
        format!("Papers of {} in this folder", papers.code),
        String::new(),
        format!("Printed last: {printed}."),
    ];
    if papers.others.is_empty() {
        lines.push("There are no others here.".to_owned());
    } else if papers.has_later() {
        lines.push(
            "DO NOT USE ANY of these papers yet: some are of a later plan. Ask which file of the client is the newest."
                .to_owned(),
        );
    } else {
        lines.push(
            "All others are SUPERSEDED. Do not use them. Take them away, and strike them through where they were printed."
                .to_owned(),
        );
    }
    for own in &papers.others {
        let state = if papers.is_later(own) { "LATER" } else { "SUPERSEDED" };
        lines.extend([String::new(), format!("{state}: {}", plan(own.mark.as_ref()))]);
        lines.extend(own.files.iter().map(|file| format!("- {file}")));
    }
    lines.push(String::new());
    lines.join("\n")
}

/// A plan as its papers call it.
fn plan(mark: Option<&PlanMark>) -> String {
    match mark {
        Some(PlanMark { number, word }) => format!("plan {number}, check word {word}"),
        None => "a plan that the names do not say".to_owned(),
    }
}
