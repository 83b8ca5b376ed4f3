//! `print`: papers as files.

use std::path::{Path, PathBuf};

use case::{Date, SinceRecorded};
use casework::{NamedDocument, OpenCase};
use sheets::Paper as Sheet;
use words::ENGLISH;

use crate::arguments::{Paper, Print};
use crate::failure::Failure;
use crate::output_paths::inputs;
use crate::outside::{Outside, name};
use crate::terminal::Terminal;
use crate::{outputs, today};

/// Writes a client's papers, those of a stock fill, or the blank form.
pub(crate) fn run(arguments: &Print, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let sheet = match arguments.paper {
        Paper::A4 => Sheet::A4,
        Paper::Letter => Sheet::Letter,
    };
    let outside = Outside::new(&arguments.plugins);
    let (papers, read) = match (&arguments.client, &arguments.stock, arguments.size) {
        (Some(client), _, _) => of_client(client, &outside, on, sheet, terminal)?,
        (None, Some(layout), Some(size)) => {
            let mut layout = outside.surroundings().layout(layout, size)?;
            let cell = outside.surroundings().cell(arguments.cell.as_deref())?;
            let pattern = casework::pattern(&mut layout, size)?;
            let papers = casework::papers_of_stock(&layout, &pattern, &cell.value, on, sheet)?;
            (papers, [layout.file.path, cell.file.path].map(PathBuf::from).to_vec())
        }
        _ => (casework::blank_papers(on, sheet)?, Vec::new()),
    };
    let outputs = outputs::in_folder(&arguments.out, casework::export(&papers, arguments.png)?);
    outputs::are_apart(&inputs(&read, &arguments.plugins), &outputs)?;
    let names: String = outputs.iter().map(|it| format!("{}\n", it.path.display())).collect();
    outputs::all(&outside, outputs)?;
    terminal.answer(&names)
}

/// A client's papers, named for the client, and the files that were read; warnings are said.
fn of_client(
    path: &Path,
    outside: &Outside,
    on: Date,
    sheet: Sheet,
    terminal: Terminal,
) -> Result<(Vec<NamedDocument>, Vec<PathBuf>), Failure> {
    let case = OpenCase::open(outside.surroundings(), &name(path))?;
    let of_client =
        case.papers(on, sheet).map_err(|error| match case.client.value.latest_plan() {
            Some(_) => Failure::from(error),
            None => Failure::from(error).hint(format!(
                "see the counts with `seatwright plan {}`, then record them with --record --by WHO",
                path.display()
            )),
        })?;
    terminal.warn(&said(&of_client.since_recorded));
    let papers = casework::with_prefix(case.client.value.code.as_str(), of_client.papers);
    Ok((papers, case.inputs().map(PathBuf::from).to_vec()))
}

/// What changed since the plan was recorded, in words.
pub(crate) fn said(since: &[SinceRecorded]) -> Vec<String> {
    since.iter().map(|own| ENGLISH.since_recorded(own)).collect()
}
