//! `record`: what was done, added to a client's file after it was done.

use case::{Check, CheckOutcome, Entry, Finding, Place, RecordNote};
use casework::{Counted, Done, OpenCase, PROGRAM, Recorded, Recorder};
use files::report::{self, RecordReport, StandingReport};
use words::{CallFault, Done as DoneSaid, Language};

use crate::arguments::{CheckedParts, FilledWith, RecordDone, WhatWasDone};
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;

/// Records what was done, and says how the fitting stands after it.
pub(crate) fn run(arguments: &RecordDone, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    let on = setting.today()?;
    let outside = Outside::new(&arguments.plugins);
    let done = done(&arguments.what)?;
    let by = arguments.by.as_deref().ok_or_else(nobody)?;
    let recorder =
        Recorder { by, because: arguments.because.as_deref(), on, language: say::language() };
    let file = name(&arguments.client);
    let recorded = casework::record_done(outside.surroundings(), &file, &done, &recorder)?;
    // Where the cushion cannot be drawn, what was done is recorded all the same.
    let case = OpenCase::of(outside.surroundings(), recorded.client.clone()).ok();
    let say = say::language().with_lengths_in(recorded.client.value.lengths);
    let standing = case.as_ref().map(|case| case.standing(on));
    let notes = notes(&recorded);
    if terminal.is_json() {
        let own = RecordReport {
            client: recorded.client.value.code.as_str(),
            standing: standing.map(|own| StandingReport::new(own, say.standing(own))),
            now: recorded.client.value.cushion_now(),
            notes,
        };
        let added: Vec<(usize, &Entry)> = recorded.entries().collect();
        let say: (report::Say<'_>, report::SayEntry<'_>) =
            (&|own| say.finding(own), &|own| say.entry(own));
        return terminal.answer(&report::record(PROGRAM, &own, &added, say));
    }
    terminal.warn(&notes.iter().map(|own| say.finding(own)).collect::<Vec<_>>());
    let mut lines = words(arguments, &recorded, say);
    lines.extend(standing.map(|own| say.standing(own)));
    terminal.answer(&(lines.join("\n") + "\n"))
}

fn nobody() -> Failure {
    Failure::call(&CallFault::Nobody)
}

/// What the command line says was done.
fn done(what: &WhatWasDone) -> Result<Done, Failure> {
    Ok(match what {
        WhatWasDone::Filled(own) => Done::Filled(counted(own)?),
        WhatWasDone::Incoming(own) => Done::Incoming(counted(own)?),
        WhatWasDone::Checked(own) => checked(own),
        WhatWasDone::Recount { counts } => {
            let (counts, spare) = apart(counts)?;
            Done::Recount { counts, spare }
        }
        WhatWasDone::Weighed { weight } => Done::Weighed(*weight),
        WhatWasDone::Moved { moves, as_proposed } => {
            Done::Moved((!as_proposed).then(|| moves.clone()))
        }
        WhatWasDone::Skin { seen } => {
            let seen = seen.iter().filter_map(|check| match check {
                Check::Skin { site, answer } => Some((*site, *answer)),
                _ => None,
            });
            Done::Skin(seen.collect())
        }
        WhatWasDone::Withdrawn { entry } => Done::Withdrawn(*entry),
        WhatWasDone::Return { entry } => Done::Returned(*entry),
        WhatWasDone::Cleaned => Done::Cleaned,
    })
}

/// Counts of compartments, and the count of the bag.
type Apart = (Vec<(u8, u32)>, Option<u32>);

/// Counts of compartments, and that of the bag, which is counted once.
fn apart(counts: &[(Place, u32)]) -> Result<Apart, Failure> {
    let mut numbered = Vec::new();
    let mut spare = None;
    for (place, cells) in counts {
        match place {
            Place::Compartment(number) => numbered.push((*number, *cells)),
            Place::Spare if spare.is_some() => {
                return Err(Failure::call(&CallFault::BagTwice));
            }
            Place::Spare => spare = Some(*cells),
        }
    }
    Ok((numbered, spare))
}

fn counted(own: &FilledWith) -> Result<Counted, Failure> {
    let (counts, spare) = apart(&own.counts)?;
    let counts = match (own.as_planned, counts.is_empty()) {
        (true, true) => None,
        (false, false) => Some(counts),
        (true, false) => {
            return Err(Failure::call(&CallFault::PlannedAndCounted));
        }
        (false, true) => {
            return Err(Failure::call(&CallFault::NoCounts));
        }
    };
    Ok(Counted { counts, spare, batch: own.batch.clone(), serial: own.serial.clone() })
}

fn checked(own: &CheckedParts) -> Done {
    let found = [own.top.as_slice(), &own.under, &own.lower, &own.skin].concat();
    let passed = (own.passed || own.failed).then_some(own.passed);
    Done::Checked { found, transfer: own.transfer, reach: own.reach, passed }
}

/// What should be known first: what a check lacks, what is to be put back, a bag that is short.
fn notes(recorded: &Recorded) -> Vec<Finding> {
    let checks = recorded.entries().filter_map(|(_, entry)| match entry {
        Entry::Checked(own) if own.outcome() == CheckOutcome::NotFinished => Some(own.missing()),
        _ => None,
    });
    let mut notes: Vec<RecordNote> =
        checks.map(|missing| RecordNote::NotFinished { missing }).collect();
    notes.extend(recorded.client.value.record_notes());
    notes.into_iter().map(Finding::Record).collect()
}

/// What was recorded, and what is in the cushion after it.
fn words(arguments: &RecordDone, recorded: &Recorded, say: &dyn Language) -> Vec<String> {
    let file = arguments.client.display().to_string();
    let mut lines: Vec<String> = recorded
        .entries()
        .map(|(number, entry)| {
            let head = say.done(&DoneSaid::Entry { number, file: &file });
            format!("{head}: {}", say.entry(entry))
        })
        .collect();
    if let Some(now) = recorded.client.value.cushion_now() {
        let counts: Vec<(u8, u32)> = now.counts.iter().map(|own| (*own.0, *own.1)).collect();
        lines.push(format!(
            "{}: {} ({}), {}. {}",
            say.done(&DoneSaid::InTheCushion),
            say.cells(now.total()),
            say.counts(&counts),
            say.counted_from(now.from),
            say.bag(now.bag)
        ));
    }
    lines
}
