//! `history`: the record as a list, or two of its entries side by side.

use std::path::{Path, PathBuf};

use case::{Client, Entry, Finding, Moment};
use casework::{Edition, OpenCase, PROGRAM, Wanted};
use files::report::{self, RecordReport, StandingReport};
use words::{CallFault, Language};

use crate::arguments::History;
use crate::failure::Failure;
use crate::output_paths::inputs;
use crate::outputs;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::tables;
use crate::written;

/// Shows the record of a client.
pub(crate) fn run(arguments: &History, setting: Setting) -> Result<(), Failure> {
    if let Some(folder) = &arguments.out {
        return pages(arguments, folder, setting);
    }
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let read = outside.surroundings().client(&name(&arguments.client))?;
    // A record can be read where the cushion cannot be drawn any more.
    let case = OpenCase::of(outside.surroundings(), read.clone()).ok();
    let client = &read.value;
    let say = say::language().with_lengths_in(client.lengths);
    let moments = match arguments.between.as_slice() {
        [] => client.history(),
        entries => entries.iter().map(|at| moment(client, *at)).collect::<Result<_, _>>()?,
    };
    let standing = case.as_ref().map(|case| case.standing(on));
    let notes: Vec<Finding> = client.record_notes().into_iter().map(Finding::Record).collect();
    if terminal.is_json() {
        let own = RecordReport {
            client: client.code.as_str(),
            standing: standing.map(|own| StandingReport::new(own, say.standing(own))),
            now: client.cushion_now(),
            notes,
        };
        let say: (report::Say<'_>, report::SayEntry<'_>) =
            (&|own| say.finding(own), &|own| say.entry(own));
        return terminal.answer(&report::history(PROGRAM, &own, &moments, say));
    }
    terminal.warn(&notes.iter().map(|own| say.finding(own)).collect::<Vec<_>>());
    let mut lines = vec![format!("{}: {}", client.code, say.entries(client.record.len()))];
    match moments.as_slice() {
        [one, other] if !arguments.between.is_empty() => {
            lines.push(tables::side_by_side(one, other, say));
        }
        all => lines.extend(all.iter().map(|own| line(own, say))),
    }
    lines.extend(standing.map(|own| say.standing(own)));
    terminal.answer(&(lines.join("\n") + "\n"))
}

/// Writes the record as pages.
fn pages(arguments: &History, folder: &Path, setting: Setting) -> Result<(), Failure> {
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let case = OpenCase::open(outside.surroundings(), &name(&arguments.client))?;
    let paper = arguments.paper.sheet();
    let papers = case.history_pages(Edition {
        language: say::language(),
        on,
        paper,
        large_print: false,
        client_in_code: false,
    })?;
    let exported = casework::export(&papers.made, Wanted::default())?;
    let read: Vec<PathBuf> = case.inputs().into_iter().map(PathBuf::from).collect();
    let read = inputs(&read, &arguments.plugins);
    let paths = outputs::papers(&outside, folder, exported, &read)?;
    let standing = case.standing(on);
    let standing = StandingReport::new(standing, say::about(&case).standing(standing));
    written::tell_papers(setting.terminal, &paths, (&[], Some(&standing)))
}

fn moment(client: &Client, number: usize) -> Result<Moment<'_>, Failure> {
    client.moment(number).ok_or_else(|| {
        let there = client.record.len();
        Failure::call(&CallFault::NoEntry { number, there })
    })
}

/// An entry on a line.
fn line(own: &Moment<'_>, say: &dyn Language) -> String {
    let entry: &Entry = own.entry;
    let (on, by) = (entry.on(), entry.by());
    let withdrawn = if own.withdrawn { say.lines().withdrawn } else { "" };
    format!("{:>3}  {on}  {by}: {withdrawn}{}", own.number, say.entry(entry))
}
