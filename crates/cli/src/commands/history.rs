//! `history`: the record as a list, or two of its entries side by side.

use case::{Client, Entry, Finding, Moment};
use casework::{OpenCase, PROGRAM};
use files::report::{self, RecordReport, StandingReport};
use words::{ENGLISH, Language};

use crate::arguments::History;
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::setting::Setting;
use crate::tables;

/// Shows the record of a client.
pub(crate) fn run(arguments: &History, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let read = outside.surroundings().client(&name(&arguments.client))?;
    // A record can be read where the cushion cannot be drawn any more.
    let case = OpenCase::of(outside.surroundings(), read.clone()).ok();
    let client = &read.value;
    let say = ENGLISH.with_lengths_in(client.lengths);
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

fn moment(client: &Client, number: usize) -> Result<Moment<'_>, Failure> {
    client.moment(number).ok_or_else(|| {
        let there = client.record.len();
        Failure::call(format!("there is no entry {number} in the record"))
            .hint(format!("entries are counted from 1, the oldest first; there are {there}"))
    })
}

/// An entry on a line.
fn line(own: &Moment<'_>, say: &dyn Language) -> String {
    let entry: &Entry = own.entry;
    let (on, by) = (entry.on(), entry.by());
    let withdrawn = if own.withdrawn { say.lines().withdrawn } else { "" };
    format!("{:>3}  {on}  {by}: {withdrawn}{}", own.number, say.entry(entry))
}
