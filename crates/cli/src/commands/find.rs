//! `find`: whose cushions hold cells of a batch, for a recall.

use casework::{Holds, PROGRAM};
use files::report::{self, Held};

use crate::arguments::{Find, PluginOptions};
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::terminal::Terminal;

/// Looks through the clients' files of a folder.
pub(crate) fn run(arguments: &Find, terminal: Terminal) -> Result<(), Failure> {
    let outside = Outside::new(&PluginOptions::default());
    let batch = arguments.batch.trim();
    let recall = casework::recall(outside.surroundings(), &name(&arguments.folder), batch)?;
    if terminal.is_json() {
        let held: Vec<Held<'_>> = recall.holds.iter().map(held).collect();
        let (looked_at, unread) = (recall.looked_at, &recall.unread);
        terminal.answer(&report::find(PROGRAM, batch, &held, looked_at, unread))?;
    } else {
        let mut lines: Vec<String> = recall.holds.iter().map(line).collect();
        lines.push(format!(
            "{} of {} hold cells of batch {batch}.",
            recall.holds.len(),
            match recall.looked_at {
                1 => "1 client file".to_owned(),
                files => format!("{files} client files"),
            }
        ));
        terminal.answer(&(lines.join("\n") + "\n"))?;
    }
    if recall.unread.is_empty() {
        return Ok(());
    }
    let message =
        format!("cannot be read, so nobody knows what they hold: {}", recall.unread.join(", "));
    let failure = Failure::file(message).hint("`seatwright check` says what is wrong with each");
    Err(if terminal.is_json() { failure.told() } else { failure })
}

fn held(own: &Holds) -> Held<'_> {
    Held {
        file: &own.file,
        client: own.code.as_str(),
        serial: own.serial.as_deref(),
        entries: own.entries.iter().map(|(at, on)| (*at, on.to_string())).collect(),
        refilled: own.refilled.map(|on| on.to_string()),
    }
}

fn line(own: &Holds) -> String {
    let serial = own.serial.as_ref().map_or(String::new(), |own| format!(", serial {own}"));
    let entries: Vec<String> =
        own.entries.iter().map(|(at, on)| format!("entry {at} of {on}")).collect();
    let refilled = own.refilled.map_or(String::new(), |on| {
        format!("; filled with another batch on {on}, cells may be in its bag")
    });
    format!("{}: {}{serial}, {}{refilled}", own.file, own.code, entries.join(", "))
}
