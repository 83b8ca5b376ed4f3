//! `print`: papers as files.

use std::path::{Path, PathBuf};

use case::text::LengthUnit;
use case::{ClientCode, Finding, PlanMark, RecordNote};
use casework::{Edition, OpenCase, Papers, Wanted, WorkError};
use files::report::StandingReport;
use words::Advice;

use crate::arguments::{FormUnits, Print};
use crate::failure::Failure;
use crate::output_paths::inputs;
use crate::outputs;
use crate::outside::{Outside, name};
use crate::plugins;
use crate::say;
use crate::setting::Setting;
use crate::terminal::Terminal;
use crate::written;

/// Writes a client's papers, those of a stock fill, or the blank form.
pub(crate) fn run(arguments: &Print, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let paper = arguments.paper.sheet();
    let (language, large_print) = (say::language(), arguments.large);
    let client_in_code = arguments.client_in_code;
    let edition = Edition { language, on, paper, large_print, client_in_code };
    let outside = Outside::new(&arguments.plugins);
    let Made { papers, read, mut since, standing, of } =
        match (&arguments.client, &arguments.stock, arguments.size) {
            (Some(client), _, _) => of_client(client, &outside, edition)?,
            (None, Some(layout), Some(size)) => {
                let mut layout = outside.surroundings().layout(layout, size)?;
                let cell = outside.surroundings().cell(arguments.cell.as_deref())?;
                let pattern = casework::pattern(&mut layout, size, &cell.value)?;
                let papers = casework::papers_of_stock(&layout, &pattern, &cell.value, edition)?;
                let read = [layout.file.path, cell.file.path].map(PathBuf::from).to_vec();
                Made { papers, read, ..Made::default() }
            }
            _ => {
                plugins::nothing_to_set(&arguments.plugins)?;
                let papers = casework::blank_papers(edition, unit(arguments))?;
                Made { papers, ..Made::default() }
            }
        };
    let wanted = Wanted { pictures: arguments.png, outlines: arguments.outlines };
    let mut exported = casework::export(&papers.made, wanted)?;
    if let Some((code, mark)) = &of {
        let (shelf, folder) = (outside.shelf(), name(&arguments.out));
        let (others, note) =
            casework::other_papers(shelf, &folder, (code, mark), edition.language)?;
        // The note comes first: whatever ends the writing, older papers are marked before.
        exported.splice(..0, note);
        since.extend((!others.others.is_empty()).then_some(Finding::OtherPapers(others)));
    }
    let read = inputs(&read, &arguments.plugins);
    let paths = outputs::papers(&outside, &arguments.out, exported, &read)?;
    written::tell_papers(terminal, &paths, (&since, standing.as_ref()))?;
    all_were_made(papers.not_made, terminal)
}

/// Says why some papers were not made, after the others were written.
fn all_were_made(not_made: Vec<WorkError>, terminal: Terminal) -> Result<(), Failure> {
    let failures: Vec<Failure> = not_made.into_iter().map(Failure::from).collect();
    for own in &failures {
        terminal.say(|color| own.to_words(color));
    }
    failures.into_iter().next().map_or(Ok(()), |first| Err(first.told()))
}

/// The unit in which the form asks lengths.
fn unit(arguments: &Print) -> LengthUnit {
    match arguments.units.unwrap_or_default() {
        FormUnits::Mm => LengthUnit::Millimetres,
        FormUnits::In => LengthUnit::Inches,
    }
}

/// Papers, the files that were read, and of a client's what changed since the plan was recorded,
/// what the record says of the cells, and how the fitting stands.
#[derive(Default)]
struct Made {
    papers: Papers,
    read: Vec<PathBuf>,
    since: Vec<Finding>,
    standing: Option<StandingReport>,
    /// Whose papers they are, and of which plan.
    of: Option<(ClientCode, PlanMark)>,
}

/// Composes a client's papers.
fn of_client(path: &Path, outside: &Outside, edition: Edition) -> Result<Made, Failure> {
    let case = OpenCase::open(outside.surroundings(), &name(path))?;
    let of_client =
        case.papers(edition).map_err(|error| match case.client.value.latest_plan() {
            Some(_) => Failure::from(error),
            None => Failure::from(error).advise(&Advice::RecordAPlan { file: &name(path) }),
        })?;
    let code = case.client.value.code.clone();
    let papers = of_client.papers.with_prefix(&casework::prefix(&code, &of_client.mark));
    let notes = case.client.value.record_notes().into_iter();
    let notes = notes.filter(|own| !matches!(own, RecordNote::Believed(_))).map(Finding::Record);
    let no_code = of_client.no_code.map(Finding::NoCardCode);
    let since = of_client.since_recorded.into_iter().map(Finding::Since);
    let since = since.chain(notes).chain(no_code).collect();
    let standing = case.standing(edition.on);
    let standing = Some(StandingReport::new(standing, say::about(&case).standing(standing)));
    let read = case.inputs().into_iter().map(PathBuf::from).collect();
    Ok(Made { papers, read, since, standing, of: Some((code, of_client.mark)) })
}
