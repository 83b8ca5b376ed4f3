//! `new`: begins a file, with comments that explain each line.

use crate::arguments::{New, Starter};
use crate::failure::Failure;
use crate::terminal::Terminal;
use crate::write;

/// Writes a starter file where no file is yet.
pub(crate) fn run(arguments: &New, terminal: Terminal) -> Result<(), Failure> {
    let (text, next) = match arguments.kind {
        Starter::Client => (files::starter::client(), "fill it in, then"),
        Starter::Layout => (files::starter::layout(), "change it, then"),
        Starter::Cell => (files::starter::cell(), "change it, then"),
    };
    write::new(&arguments.file, text.as_bytes())?;
    let file = arguments.file.display();
    terminal.answer(&format!("{file} is begun; {next}: seatwright check {file}\n"))
}
