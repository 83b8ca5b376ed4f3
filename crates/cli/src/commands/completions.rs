//! `completions`: what a shell needs to complete our words.

use clap::CommandFactory as _;

use crate::arguments::{Arguments, Completions};
use crate::failure::Failure;
use crate::terminal::Terminal;

/// Writes the completions of a shell to stdout.
pub(crate) fn run(arguments: &Completions, terminal: Terminal) -> Result<(), Failure> {
    let mut script = Vec::new();
    clap_complete::generate(arguments.shell, &mut Arguments::command(), "seatwright", &mut script);
    terminal.answer(&String::from_utf8_lossy(&script))
}
