//! `order`: the papers of many cushions at once, and what they need in all.

use std::path::{Path, PathBuf};

use casework::{Edition, MadeLine, MadeOrder, OrderAsked, PROGRAM, Wanted};
use files::report::{self, CellsOfOrder, LineOfOrder, OrderReport};
use words::{OutputFault, SupplierFault};

use crate::arguments::Order;
use crate::failure::Failure;
use crate::output_paths::inputs;
use crate::outputs::{self, Output};
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::tables;
use crate::terminal::Terminal;

/// Writes an order's papers, all or none, and shows what it needs.
pub(crate) fn run(arguments: &Order, setting: Setting) -> Result<(), Failure> {
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let called = called(&arguments.order)?;
    let paper = arguments.paper.sheet();
    let edition =
        Edition { language: say::language(), on, paper, large_print: false, client_in_code: false };
    let asked = OrderAsked { name: &called, spares: arguments.spares, edition };
    let made = casework::order(outside.surroundings(), &name(&arguments.order), asked)?;
    let wanted = Wanted { pictures: arguments.png, outlines: arguments.outlines };
    let exported = casework::export(&made.papers, wanted)?;
    let outputs = outputs::in_folder(&arguments.out, exported);
    let read: Vec<PathBuf> = made.inputs.iter().map(PathBuf::from).collect();
    outputs::are_apart(&inputs(&read, &arguments.plugins), &outputs)?;
    nothing_else_of_it(&outside, &arguments.out, &called, &outputs)?;
    let written: Vec<PathBuf> = outputs.iter().map(|own| own.path.clone()).collect();
    outputs::all(&outside, outputs)?;
    tell(setting.terminal, &called, &made, &written)
}

/// What the order is called: as its file, without the ending.
fn called(path: &Path) -> Result<String, Failure> {
    /// More finds no room at the head of a card.
    const LONGEST: usize = 24;
    let stem = path.file_stem().and_then(|own| own.to_str()).unwrap_or_default();
    let plain = |own: char| own.is_ascii_alphanumeric() || "-_.".contains(own);
    if (1..=LONGEST).contains(&stem.len()) && stem.chars().all(plain) {
        return Ok(stem.to_owned());
    }
    let file = path.display().to_string();
    Err(Failure::supplier(&SupplierFault::NamesNoOrder { file: &file, longest: LONGEST }))
}

/// Refuses a folder with papers of this order that would stay beside the new ones: a card of an
/// earlier edition would be filled by.
fn nothing_else_of_it(
    outside: &Outside,
    folder: &Path,
    called: &str,
    outputs: &[Output],
) -> Result<(), Failure> {
    if !folder.is_dir() {
        return Ok(());
    }
    let own = |file: &str| {
        let rest = Path::new(file).file_name().and_then(|own| own.to_str());
        let rest = rest.and_then(|own| own.strip_prefix(called)).unwrap_or_default();
        ["-pick-list", "-fill-cards", "-tags"]
            .iter()
            .any(|paper| rest.strip_prefix(paper).is_some_and(|rest| rest.starts_with(['-', '.'])))
    };
    let there = outside.shelf().list(&name(folder))?;
    let is_replaced = |file: &String| {
        outputs
            .iter()
            .any(|own| own.path.ends_with(Path::new(file).file_name().unwrap_or_default()))
    };
    let stays: Vec<&String> = there.iter().filter(|file| own(file) && !is_replaced(file)).collect();
    let Some(first) = stays.first() else { return Ok(()) };
    Err(Failure::output(&OutputFault::StaysBeside { first, more: stays.len() - 1 }))
}

/// Tells what the order needs, and which papers were written.
fn tell(
    terminal: Terminal,
    called: &str,
    made: &MadeOrder,
    written: &[PathBuf],
) -> Result<(), Failure> {
    let paths: Vec<String> = written.iter().map(|path| path.display().to_string()).collect();
    let lines: Vec<LineOfOrder<'_>> = made.lines.iter().map(reported).collect();
    let report = OrderReport { order: called, lines, written: &paths };
    if terminal.is_json() {
        return terminal.answer(&report::order(PROGRAM, &report, &say::finding));
    }
    let mut warnings: Vec<String> = Vec::new();
    for line in &made.lines {
        let findings = line.findings.iter().map(say::finding);
        let remarks = line.remarks.iter().map(|own| say::text(&own.finding).message);
        for said in findings.chain(remarks) {
            let said = format!("{}: {said}", line.known_by());
            if !warnings.contains(&said) {
                warnings.push(said);
            }
        }
    }
    terminal.warn(&warnings);
    let cells: Vec<CellsOfOrder<'_>> = report.cells();
    let all = |of: &dyn Fn(&CellsOfOrder<'_>) -> u32| cells.iter().map(of).sum::<u32>();
    let say = say::language();
    let cushions = report.cushions();
    let said = [
        say.order_in_short(called, cushions, all(&|own| own.cells), all(&|own| own.spares)),
        tables::order(&report.lines),
        say.order().masses_are_estimates.to_owned(),
        say.lines().estimate.to_owned(),
    ];
    // Of each paper its PDF: the drawings of its pages lie beside it.
    let papers = paths.iter().filter(|path| path.ends_with(".pdf"));
    let papers: String = papers.map(|path| format!("{path}\n")).collect();
    terminal.answer(&(said.join("\n") + "\n\n" + &papers))
}

fn reported(own: &MadeLine) -> LineOfOrder<'_> {
    LineOfOrder {
        line: own.line,
        client: own.client.as_ref().map(case::ClientCode::as_str),
        layout: own.layout.as_str(),
        revision: own.revision,
        layout_digest: own.layout_digest.as_str(),
        size: own.size.to_string(),
        cell: own.cell.as_str(),
        cell_digest: own.cell_digest.as_str(),
        poured_litres: own.poured_litres,
        word: &own.word,
        quantity: own.quantity,
        serials: &own.serials,
        cards: own.cards,
        spares: own.spares,
        finished: own.finished,
        compartments: own
            .compartments
            .iter()
            .map(|it| report::CompartmentOfOrder {
                id: it.id.as_str(),
                number: it.number,
                cells: it.cells,
                plus_minus: it.tolerance,
                height: it.height,
            })
            .collect(),
        known_by: own.known_by(),
        findings: &own.findings,
    }
}
