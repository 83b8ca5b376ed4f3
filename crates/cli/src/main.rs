//! `seatwright`: compartment cushions filled with air cells, from a client file to paper.

mod arguments;
mod commands;
mod exit_codes;
mod failure;
mod read;
mod remarks;
mod run;
mod terminal;
mod today;
mod write;

use std::process::ExitCode;

fn main() -> ExitCode {
    run::program(std::env::args_os())
}
