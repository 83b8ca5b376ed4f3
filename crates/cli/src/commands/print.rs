//! `print`: papers as files.

use std::path::{Path, PathBuf};

use case::Date;
use sheets::Paper as Sheet;

use crate::arguments::{Paper, Print};
use crate::case_file::CaseFile;
use crate::failure::Failure;
use crate::papers::{self, Named};
use crate::plugins::Session;
use crate::terminal::Terminal;
use crate::{export, output_paths, resolve, today, write};

/// Writes a client's papers, those of a stock fill, or the blank form.
pub(crate) fn run(arguments: &Print, terminal: Terminal) -> Result<(), Failure> {
    let on = today::today(arguments.day.date)?;
    let sheet = match arguments.paper {
        Paper::A4 => Sheet::A4,
        Paper::Letter => Sheet::Letter,
    };
    let session = Session::new(&arguments.plugins);
    let (papers, inputs) = match (&arguments.client, &arguments.stock, arguments.size) {
        (Some(client), _, _) => of_client(client, &session, on, sheet, terminal)?,
        (None, Some(layout), Some(size)) => {
            let mut layout = resolve::layout(layout, size, &session)?;
            let cell = resolve::cell(arguments.cell.as_deref())?;
            let pattern = resolve::pattern(&mut layout, size)?;
            let papers = papers::of_stock(&layout, &pattern, &cell.value, on, sheet)?;
            (papers, [layout.file.path, cell.file.path].map(PathBuf::from).to_vec())
        }
        _ => (papers::blank(on, sheet)?, Vec::new()),
    };
    let outputs = export::all(&papers, &arguments.out, arguments.png)?;
    let read = inputs.iter().chain(&arguments.plugins.plugin).map(PathBuf::as_path);
    let written: Vec<&Path> = outputs.iter().map(|it| it.path.as_path()).collect();
    output_paths::are_apart(&read.collect::<Vec<_>>(), &written)?;
    let names: String = outputs.iter().map(|it| format!("{}\n", it.path.display())).collect();
    write::all(outputs)?;
    terminal.answer(&names)
}

/// A client's papers, named for the client, and the files that were read; warnings are said.
fn of_client(
    path: &Path,
    session: &Session<'_>,
    on: Date,
    sheet: Sheet,
    terminal: Terminal,
) -> Result<(Vec<Named>, Vec<PathBuf>), Failure> {
    let case = CaseFile::open(path, session)?;
    let of_client = papers::of_client(&case, on, sheet)?;
    terminal.warn(&of_client.warnings);
    let papers = papers::with_prefix(case.client.value.code.as_str(), of_client.papers);
    Ok((papers, case.inputs().map(Path::to_owned).to_vec()))
}
