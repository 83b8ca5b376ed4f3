//! `review`: what a layout does at every made size for the bodies that each size suits.

use std::path::{Path, PathBuf};

use case::Trouble;
use casework::{Edition, PROGRAM, Reviewed, Sourced, WorkError};
use cushion::Layout;
use files::report::{self, ReviewReport};
use words::SupplierFault;

use crate::arguments::{PluginOptions, Review};
use crate::failure::Failure;
use crate::output_paths;
use crate::outputs;
use crate::outside::{Outside, name};
use crate::progress;
use crate::say;
use crate::setting::Setting;
use crate::tables;

/// Reviews a layout; shows what is found, and writes it as a page where asked.
pub(crate) fn run(arguments: &Review, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&PluginOptions::default());
    let mut layout = layout(&arguments.layout, &outside)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    let read = [&layout.file.path, &cell.file.path].map(PathBuf::from);
    let read = [&read[..], std::slice::from_ref(&arguments.bodies)].concat();
    let read: Vec<&Path> = read.iter().map(PathBuf::as_path).collect();
    for path in &arguments.sheet {
        output_paths::drawn_as(path)?;
    }
    output_paths::are_apart(&read, &arguments.sheet)?;
    let text = outside.surroundings().text(&name(&arguments.bodies))?;
    let bodies = files::read_bodies(&text).map_err(|error| {
        let files::TableError { line, fault } = error;
        let file = name(&arguments.bodies);
        WorkError::file(Trouble::Table { file, line, fault })
    })?;
    let bar = progress::bar(layout.value.sizes.len(), say::language().table().sizes);
    let reviewed = casework::review(&mut layout, &cell.value, &bodies, on, &|| bar.inc(1));
    bar.finish_and_clear();
    let reviewed = reviewed?;
    let mut written: Vec<String> = Vec::new();
    if !arguments.sheet.is_empty() {
        let paper = arguments.paper.sheet();
        let edition = Edition {
            language: say::language(),
            on,
            paper,
            large_print: false,
            client_in_code: false,
        };
        let document = casework::review_page(&layout, &cell.value, &reviewed, edition)?;
        let pages = outputs::pages(&document, &arguments.sheet)?;
        outputs::are_apart(&read, &pages)?;
        written.extend(pages.iter().map(|own| own.path.display().to_string()));
        outputs::all(&outside, pages)?;
    }
    let digest = layout.digest();
    if terminal.is_json() {
        let report = ReviewReport {
            layout: layout.value.name.as_str(),
            revision: layout.value.revision,
            digest: &digest,
            cell: cell.value.name.as_str(),
            bodies: (reviewed.suited, reviewed.bodies),
            sizes: &reviewed.sizes,
            findings: &reviewed.findings,
            written: &written,
        };
        let said = |finding: &case::ReviewFinding| say::language().review_finding(finding);
        return terminal.answer(&report::review(PROGRAM, &report, &said));
    }
    let remarks = layout.file.remarks.iter().map(|own| say::text(&own.finding).message);
    terminal.warn(&remarks.collect::<Vec<_>>());
    terminal.answer(&words(&layout, &reviewed, digest.as_str()))
}

/// The layout; one that is drawn for each size that is asked for has no sizes to review.
fn layout(word: &str, outside: &Outside) -> Result<Sourced<Layout>, Failure> {
    if word.starts_with(plugin_host::PREFIX) {
        return Err(Failure::supplier(&SupplierFault::NoReviewOfPlugin));
    }
    Ok(outside.surroundings().layout(word, cushion::Size::USUAL)?)
}

/// What is found, and the numbers.
fn words(layout: &Sourced<Layout>, reviewed: &Reviewed, digest: &str) -> String {
    let say = say::language();
    let texts = say.review();
    let own = &layout.value;
    let mut lines = vec![
        say.layout_known_by(own.name.as_str(), own.revision, digest),
        format!("{}: {}\n", texts.bodies, say.page_of(reviewed.suited, reviewed.bodies)),
        format!("{}:", texts.findings),
    ];
    for (at, finding) in reviewed.findings.iter().enumerate() {
        let said = say.review_finding(finding);
        lines.push(format!("{:>3}  {}", at + 1, said.message));
        lines.extend(said.hint.map(|hint| format!("     {hint}")));
    }
    if reviewed.findings.is_empty() {
        lines.push(texts.no_findings.to_owned());
    }
    lines.push(String::new());
    lines.push(tables::reviewed_sizes(&reviewed.sizes));
    lines.push(tables::reviewed_cells(&reviewed.sizes));
    lines.extend([texts.legend, texts.sources, texts.limits].map(str::to_owned));
    lines.join("\n") + "\n"
}
