//! English: what was done, begun, or is to be known of an answer.

use super::super::parts::{counted, list};
use crate::{Begun, Done, Told};

/// What running plugins is.
const TRUST: &str = "A plugin is a program. It runs in a process of its own with limits, which protects from its faults, not from malice: use only what you trust.";

pub(super) fn done(done: &Done<'_>) -> String {
    match done {
        Done::Recorded { file, by: Some(by) } => format!("Recorded in {file} by {by}."),
        Done::Recorded { file, by: None } => format!("Recorded in {file}."),
        Done::MovesNotRecorded { file } => format!(
            "What was found is recorded in {file}. The moves are not: with them a limit is still not kept."
        ),
        Done::NotRecorded { command } => format!("Not recorded: {command}"),
        Done::NothingRecorded => "; nothing was recorded".to_owned(),
        Done::Entry { number, file } => format!("Entry {number} of {file}"),
        Done::InTheCushion => "In the cushion".to_owned(),
        Done::Changed { file, remarks } => format!("{file}: changed, {remarks}"),
        Done::WhyLooksForMistakes => "`--why` looks for mistakes in the set-up.".to_owned(),
    }
}

pub(super) fn begun(begun: &Begun<'_>) -> String {
    let next = |file: &str, what: &str| {
        format!("{file} is begun; {what} it, then: seatwright check {file}")
    };
    match begun {
        Begun::Client { file } => {
            format!("{file} is begun; fill it in, then: seatwright check {file}")
        }
        Begun::Cell { file } => next(file, "change"),
        Begun::Layout { file } => format!(
            "{}\nLook at it: seatwright pattern {file} --size 440x400 --svg look.svg",
            next(file, "change")
        ),
        Begun::Plugin { folder, commands } => format!("{folder} is begun. Next:\n{commands}"),
        Begun::Schema { file, kind } => format!(
            "{file} is written; put this on top of a {kind} file beside it: #:schema {file}"
        ),
        Begun::ReportSchema { file } => {
            format!("{file} is written; every answer to --json keeps it")
        }
        Begun::Restored { file } => {
            format!("{file} is restored; fill it in, then: seatwright check {file}")
        }
        Begun::Demo { code, files, first: [setup, fill, home] } => format!(
            "Wrote the papers of an invented client, {code}, as SVG, PDF and PNG:\n{files}\n\
             Look first at {setup} (for the therapist at the chair),\n\
             then at {fill} (drawn from below, for whoever fills the cushion)\n\
             and {home} (for the carer's wall).\n\n\
             Next, a client of your own:\n  \
             seatwright new client K-17.toml\n  \
             seatwright plan K-17.toml"
        ),
    }
}

pub(super) fn told(told: &Told<'_>) -> String {
    match told {
        Told::Holds { file, code, serial, entries, refilled } => {
            let serial = serial.map_or(String::new(), |own| format!(", serial {own}"));
            let entries: Vec<String> =
                entries.iter().map(|(at, on)| format!("entry {at} of {on}")).collect();
            let refilled = refilled.map_or(String::new(), |on| {
                format!("; filled with another batch on {on}, cells may be in its bag")
            });
            format!("{file}: {code}{serial}, {}{refilled}", entries.join(", "))
        }
        Told::Recall { holds, looked_at, batch } => {
            let files = counted(*looked_at, "client file");
            format!("{holds} of {files} hold cells of batch {batch}.")
        }
        Told::Wrote { files } => format!("Wrote {}.", list(files)),
        Told::DrawnBy { plugin, digest } => {
            format!("Drawn by the plugin {plugin}, layout {digest}.")
        }
        Told::PluginDraws { file, plugin, size, digest } => format!(
            "{file}: what the plugin {plugin} draws for {size}, digest {digest}.\n\
             The seams are in millimetres and hold for this size alone."
        ),
        Told::TrustInPlugins => TRUST.to_owned(),
        Told::NoPlugins => "No plugins. They are looked for in:".to_owned(),
        Told::NoneWasRun => {
            "None was run for this list; `seatwright plugin show NAME` runs one and asks it."
                .to_owned()
        }
        Told::From { file } => format!("From {file}"),
        Told::Setting { ends, unit, standard, measure } => {
            setting((*ends, *unit), *standard, *measure)
        }
        Told::Compartments { count } => counted(*count, "compartment"),
        Told::NotDrawn { refused: true } => "refused".to_owned(),
        Told::NotDrawn { refused: false } => "WRONG".to_owned(),
        Told::Pieces => "pieces".to_owned(),
        Told::PageIsOpen { folder, address } => format!(
            "The page of {folder} is open on this machine alone:\n  {address}\n\
             The address opens once. Stop it with Ctrl-C; everything is kept as you answer."
        ),
        Told::NoBrowser => "no browser could be opened: open the address yourself".to_owned(),
        Told::Bodies => "bodies".to_owned(),
        Told::Bar { of } => format!("{{pos}} of {{len}} {of}, {{eta}} left"),
    }
}

fn setting(
    ([least, greatest], unit): ([f64; 2], &str),
    standard: Option<f64>,
    measure: Option<&str>,
) -> String {
    let without = match standard {
        Some(standard) => format!("{standard} where none is given"),
        None => "must be given or measured".to_owned(),
    };
    let measure = measure.map_or(String::new(), |own| format!("; the client's {own}"));
    format!("{least} to {greatest} {unit}, {without}{measure}")
}
