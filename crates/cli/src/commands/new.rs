//! `new`: begins a file, with comments that explain each line.

use std::path::Path;

use crate::arguments::{New, Starter};
use crate::failure::{Failure, Kind};
use crate::plugin_template as template;
use crate::terminal::Terminal;
use crate::write::{self, Output};

/// Writes a starter file where no file is yet.
pub(crate) fn run(arguments: &New, terminal: Terminal) -> Result<(), Failure> {
    let client = files::starter::client();
    let (text, next) = match arguments.kind {
        Starter::Plugin => return plugin(&arguments.file, terminal),
        Starter::Client => (client.as_str(), "fill it in, then"),
        Starter::Layout => (files::starter::layout(), "change it, then"),
        Starter::Cell => (files::starter::cell(), "change it, then"),
    };
    write::new(&arguments.file, text.as_bytes())?;
    let file = arguments.file.display();
    terminal.answer(&format!("{file} is begun; {next}: seatwright check {file}\n"))
}

/// Writes a folder with a plugin, and with the crates that it is built from.
fn plugin(folder: &Path, terminal: Terminal) -> Result<(), Failure> {
    if folder.exists() {
        let message = format!("{} is there already, and nothing is written over", folder.display());
        return Err(Failure::new(Kind::CannotWrite, message).hint("name a new folder"));
    }
    let outputs = template::FILES
        .iter()
        .map(|file| Output { path: folder.join(file.path), bytes: file.text.as_bytes().to_vec() });
    write::all(outputs.collect())?;
    let folder = folder.display();
    terminal.answer(&format!(
        "{folder} is begun. Next:\n  \
         cd {folder}\n  \
         cargo build --release\n  \
         seatwright plugin check target/release/{}my_plugin{}\n",
        std::env::consts::DLL_PREFIX,
        std::env::consts::DLL_SUFFIX
    ))
}
