//! `range`: a layout at every size that it is made in.

use std::path::{Path, PathBuf};

use casework::{Edition, PROGRAM};
use cushion::{Jump, Layout, RangeRow, Size};
use files::report::RangeReport;
use words::SupplierFault;

use crate::arguments::Range;
use crate::failure::Failure;
use crate::output_paths::{self, inputs};
use crate::outputs::{self, Output};
use crate::outside::Outside;
use crate::progress;
use crate::say;
use crate::setting::Setting;
use crate::tables;

/// Fills a layout at every made size; shows it, and writes it where asked.
pub(crate) fn run(arguments: &Range, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let mut layout = layout(arguments, &outside)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    let read = [&layout.file.path, &cell.file.path].map(PathBuf::from);
    can_be_written(arguments, &inputs(&read, &arguments.plugins))?;
    let bar = progress::bar(layout.value.sizes.len(), say::language().table().sizes);
    let rows = casework::made_range(&mut layout, &cell.value, &|| bar.inc(1));
    bar.finish_and_clear();
    let rows = rows?;
    let jumps = cushion::jumps(&rows);
    let digest = layout.digest();
    let mut written = Vec::new();
    if let Some(path) = &arguments.csv {
        let bytes = files::range_csv(&rows, &cell.value, &jumps).into_bytes();
        written.push(Output { path: path.clone(), bytes });
    }
    if !arguments.sheet.is_empty() {
        let paper = arguments.paper.sheet();
        let edition = Edition {
            language: say::language(),
            on,
            paper,
            large_print: false,
            client_in_code: false,
        };
        let document = casework::range_table(&layout, &cell.value, &rows, edition)?;
        written.extend(outputs::pages(&document, &arguments.sheet)?);
    }
    outputs::are_apart(&inputs(&read, &arguments.plugins), &written)?;
    outputs::all(&outside, written)?;
    if terminal.is_json() {
        let report = RangeReport {
            layout: layout.value.name.as_str(),
            revision: layout.value.revision,
            digest: &digest,
            cell: &cell.value,
            rows: &rows,
            jumps: jumps.iter().map(|jump| (jump, said(jump, &rows))).collect(),
        };
        let remarks = (layout.file.text.as_str(), layout.file.remarks.as_slice());
        return terminal.answer(&files::report::range(PROGRAM, report, (remarks, &say::text)));
    }
    let remarks = layout.file.remarks.iter().map(|own| say::text(&own.finding).message);
    terminal.warn(&remarks.collect::<Vec<_>>());
    let head = [
        say::language().range_of(&layout.value.title, rows.len(), cell.value.name.as_str()),
        say::language().layout_known_by(
            layout.value.name.as_str(),
            layout.value.revision,
            digest.as_str(),
        ),
    ];
    terminal.answer(&words(&head, &rows, &jumps, cell.value.film))
}

/// The layout; one that is drawn for each size that is asked for has no range.
fn layout(arguments: &Range, outside: &Outside) -> Result<casework::Sourced<Layout>, Failure> {
    if arguments.layout.starts_with(plugin_host::PREFIX) {
        return Err(Failure::supplier(&SupplierFault::NoRangeOfPlugin));
    }
    Ok(outside.surroundings().layout(&arguments.layout, Size::USUAL)?)
}

/// Refuses outputs that are misnamed or would be written over something that is read.
fn can_be_written(arguments: &Range, read: &[&Path]) -> Result<(), Failure> {
    if let Some(path) = &arguments.csv {
        output_paths::has_ending(path, "csv")?;
    }
    for path in &arguments.sheet {
        output_paths::drawn_as(path)?;
    }
    let all = arguments.csv.iter().chain(&arguments.sheet);
    output_paths::are_apart(read, &all.map(PathBuf::as_path).collect::<Vec<_>>())
}

fn said(jump: &Jump, rows: &[RangeRow]) -> String {
    say::language().jump(jump, rows[jump.from].made.size, rows[jump.row].made.size)
}

/// The table, and what is to be said of it.
fn words(head: &[String], rows: &[RangeRow], jumps: &[Jump], film: cushion::Mass) -> String {
    let mut lines = head.to_vec();
    lines.push(tables::range(rows, jumps, film));
    lines.push(say::language().range_legend().to_owned());
    lines.extend(jumps.iter().map(|jump| said(jump, rows)));
    if jumps.is_empty() {
        lines.push(say::language().no_jumps().to_owned());
    }
    lines.push(say::language().lines().estimate.to_owned());
    lines.join("\n") + "\n"
}
