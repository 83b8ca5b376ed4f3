//! `seatwright`: compartment cushions filled with air cells, from a client file to paper.

mod arguments;
mod case_file;
mod commands;
mod counts;
mod exit_codes;
mod export;
mod failure;
mod figure;
mod output_paths;
mod papers;
mod plugin_template;
mod plugins;
mod read;
mod remarks;
mod resolve;
mod run;
mod sections;
mod stock;
mod tables;
mod terminal;
mod today;
mod write;

use std::process::ExitCode;

fn main() -> ExitCode {
    plugin_host::child_main(std::env::args_os())
        .unwrap_or_else(|| run::program(std::env::args_os()))
}
