//! `parts`: what cushions are made of, and what one weighs.

use std::path::PathBuf;

use casework::{Materials, PROGRAM};
use cushion::Length;
use files::report::{self, PartLine, PartsReport};

use crate::arguments::Parts;
use crate::failure::Failure;
use crate::output_paths::{self, inputs};
use crate::outputs;
use crate::outside::Outside;
use crate::say;
use crate::tables;
use crate::terminal::Terminal;

/// Shows the parts of so many cushions, and writes them where asked.
pub(crate) fn run(arguments: &Parts, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&arguments.plugins);
    let mut layout = outside.surroundings().layout(&arguments.layout, arguments.size)?;
    let cell = outside.surroundings().cell(arguments.cell.cell.as_deref())?;
    if let Some(path) = &arguments.csv {
        output_paths::has_ending(path, "csv")?;
        let read = [&layout.file.path, &cell.file.path].map(PathBuf::from);
        output_paths::are_apart(&inputs(&read, &arguments.plugins), &[path])?;
    }
    let pattern = casework::pattern(&mut layout, arguments.size, &cell.value)?;
    let fill = casework::stock_fill(&mut layout, &pattern, &cell.value)?;
    let allowance = Length::from_mm(arguments.allowance);
    let options = templates::Options { allowance, eased: !arguments.stretch };
    let (all, of_these) = (fill.total(), materials(arguments));
    let parts = casework::parts((&pattern, &fill), &cell.value, all, options, &of_these);
    let lines = lines(&parts, arguments.spares);
    let mut written = Vec::new();
    if let Some(path) = &arguments.csv {
        let csv = report::parts_csv(&lines, arguments.quantity);
        outputs::one(&outside, path, csv.into_bytes())?;
        written.push(path.display().to_string());
    }
    let cautions = say::not_rated(&pattern);
    if terminal.is_json() {
        let digest = layout.digest();
        let report = PartsReport {
            layout: layout.value.name.as_str(),
            revision: layout.value.revision,
            digest: &digest,
            size: pattern.size().to_string(),
            quantity: arguments.quantity,
            allowance_mm: arguments.allowance,
            parts: &lines,
            masses: [parts.mass, parts.cover_mass, parts.cells_mass],
            written: &written,
        };
        return terminal.answer(&report::parts(PROGRAM, report, (&cautions, &say::finding)));
    }
    let remarks = layout.file.remarks.iter().map(|own| say::text(&own.finding).message);
    terminal.warn(&cautions.iter().map(say::finding).chain(remarks).collect::<Vec<_>>());
    let texts = say::language().parts();
    let said = [
        say::language().parts_of(pattern.title(), pattern.size(), arguments.quantity, allowance),
        tables::parts(&lines, arguments.quantity),
        say::language().finished_mass(&parts.mass, &parts.cover_mass, &parts.cells_mass),
        texts.left_out.to_owned(),
        texts.from_memory.to_owned(),
        say::language().lines().estimate.to_owned(),
    ];
    terminal.answer(&(said.join("\n") + "\n"))
}

/// What was given, else what is usual.
fn materials(arguments: &Parts) -> Materials {
    let usual = Materials::default();
    Materials {
        top: arguments.top_cloth.unwrap_or(usual.top),
        base: arguments.base_cloth.unwrap_or(usual.base),
        walls: arguments.wall_cloth.unwrap_or(usual.walls),
        closure: arguments.closure.unwrap_or(usual.closure),
        ..usual
    }
}

/// A line for each part, for one cushion.
fn lines(parts: &casework::Parts, spares: Option<u32>) -> Vec<PartLine> {
    let line = |id: &str, each: f64, unit: &'static str| PartLine { id: id.to_owned(), each, unit };
    let cloth = parts.cloth.iter().map(|own| line(&own.id, own.area.to_cm2(), "cm2"));
    let mut lines: Vec<PartLine> = cloth.collect();
    let all = parts.cloth.iter().map(|own| own.area.to_cm2()).sum();
    let spares = spares.unwrap_or_else(|| casework::usual_spares(parts.cells));
    lines.extend([
        line("all-cloth", all, "cm2"),
        line("seams", parts.seams.to_m(), "m"),
        line("thread", parts.thread.central.to_m(), "m"),
        line("openings", parts.openings as f64, "pieces"),
        line("closures", parts.closures.to_mm(), "mm"),
        line("cells", f64::from(parts.cells), "pieces"),
        line("spare-cells", f64::from(spares), "pieces"),
    ]);
    lines
}
