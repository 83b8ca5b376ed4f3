//! `find`: whose cushions hold cells of a batch, for a recall.

use casework::{Holds, PROGRAM, Whose};
use files::report::{self, Held};
use words::{FileFault, Told};

use crate::arguments::{Find, PluginOptions};
use crate::failure::Failure;
use crate::outside::{Outside, name};
use crate::say;
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
        let (holds, looked_at) = (recall.holds.len(), recall.looked_at);
        lines.push(say::language().told(&Told::Recall { holds, looked_at, batch }));
        terminal.answer(&(lines.join("\n") + "\n"))?;
    }
    if recall.unread.is_empty() {
        return Ok(());
    }
    let files = recall.unread.join(", ");
    let said = say::language().file_fault(&FileFault::Unread { files: &files });
    let failure = Failure::new(Whose::Writer, said);
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
    say::language().told(&Told::Holds {
        file: &own.file,
        code: own.code.as_str(),
        serial: own.serial.as_deref(),
        entries: &own.entries,
        refilled: own.refilled,
    })
}
