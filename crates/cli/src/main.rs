//! `seatwright`: compartment cushions filled with air cells, from a client file to paper.

mod arguments;
mod commands;
mod compartment;
mod counts;
mod exit_codes;
mod failure;
mod output_paths;
mod outputs;
mod outside;
mod plugin_template;
mod plugins;
mod progress;
mod remarks;
mod run;
mod say;
mod setting;
mod tables;
mod terminal;
mod today;
mod watching;
mod written;

use std::process::ExitCode;

fn main() -> ExitCode {
    plugin_host::child_main(std::env::args_os())
        .unwrap_or_else(|| run::program(std::env::args_os()))
}
