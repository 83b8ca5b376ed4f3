//! `completions`: what a shell needs to complete our words.

use casework::PROGRAM;
use clap::CommandFactory as _;

use crate::arguments::{Arguments, Completions};
use crate::failure::Failure;
use crate::terminal::Terminal;

/// Writes the completions of a shell to stdout.
pub(crate) fn run(arguments: &Completions, terminal: Terminal) -> Result<(), Failure> {
    let mut script = Vec::new();
    clap_complete::generate(arguments.shell, &mut Arguments::command(), "seatwright", &mut script);
    let script = String::from_utf8_lossy(&script);
    if terminal.is_json() {
        let shell = arguments.shell.to_string();
        return terminal.answer(&files::report::completions(PROGRAM, &shell, &script));
    }
    terminal.answer(&script)
}
