//! The sub-commands, a file each: read, resolve, call a library, print.

mod adjust;
mod check;
mod completions;
mod contour_test;
mod demo;
mod new;
mod pattern;
mod plan;
mod plugin;
mod predict;
mod print;
mod set;
mod size;
mod survey;
mod weigh;

use crate::arguments::Command;
use crate::failure::Failure;
use crate::terminal::Terminal;

/// Does what a sub-command asks.
///
/// # Errors
///
/// Fails as the sub-command does.
pub(crate) fn run(command: &Command, terminal: Terminal) -> Result<(), Failure> {
    match command {
        Command::Demo(arguments) => demo::run(arguments, terminal),
        Command::Pattern(arguments) => pattern::run(arguments, terminal),
        Command::Plan(arguments) => plan::run(arguments, terminal),
        Command::Plugin(arguments) => plugin::run(arguments, terminal),
        Command::Print(arguments) => print::run(arguments, terminal),
        Command::Predict(arguments) => predict::run(arguments, terminal),
        Command::ContourTest(arguments) => contour_test::run(arguments, terminal),
        Command::Adjust(arguments) => adjust::run(arguments, terminal),
        Command::Survey(arguments) => survey::run(arguments, terminal),
        Command::Merge(arguments) => survey::merge(arguments, terminal),
        Command::Weigh(arguments) => weigh::run(arguments, terminal),
        Command::Size(arguments) => size::run(arguments, terminal),
        Command::Check(arguments) => check::run(arguments, terminal),
        Command::New(arguments) => new::run(arguments, terminal),
        Command::Set(arguments) => set::run(arguments, terminal),
        Command::Completions(arguments) => completions::run(arguments, terminal),
    }
}
