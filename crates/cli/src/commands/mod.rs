//! The sub-commands, a file each: read, resolve, call a library, print.

mod adjust;
mod chairside;
mod check;
mod compare;
mod completions;
mod contour_test;
mod demo;
mod find;
mod history;
mod layouts;
mod new;
mod order;
mod parts;
mod pattern;
mod plan;
mod plugin;
mod predict;
mod print;
mod range;
mod record;
mod restore;
mod review;
mod set;
mod size;
mod survey;
mod template;
mod weigh;

use crate::arguments::Command;
use crate::failure::Failure;
use crate::setting::Setting;

/// Does what a sub-command asks.
///
/// # Errors
///
/// Fails as the sub-command does.
pub(crate) fn run(command: &Command, setting: Setting) -> Result<(), Failure> {
    let terminal = setting.terminal;
    match command {
        Command::Demo(arguments) => demo::run(arguments, setting),
        Command::Layouts(arguments) => layouts::run(arguments, terminal),
        Command::Range(arguments) => range::run(arguments, setting),
        Command::Template(arguments) => template::run(arguments, setting),
        Command::Parts(arguments) => parts::run(arguments, terminal),
        Command::Order(arguments) => order::run(arguments, setting),
        Command::Pattern(arguments) => pattern::run(arguments, terminal),
        Command::Plan(arguments) => plan::run(arguments, setting),
        Command::Plugin(arguments) => plugin::run(arguments, terminal),
        Command::Print(arguments) => print::run(arguments, setting),
        Command::Predict(arguments) => predict::run(arguments, setting),
        Command::ContourTest(arguments) => contour_test::run(arguments, terminal),
        Command::Adjust(arguments) => adjust::run(arguments, setting),
        Command::Record(arguments) => record::run(arguments, setting),
        Command::History(arguments) => history::run(arguments, setting),
        Command::Find(arguments) => find::run(arguments, terminal),
        Command::Survey(arguments) => survey::run(arguments, setting),
        Command::Merge(arguments) => survey::merge(arguments, setting),
        Command::Weigh(arguments) => weigh::run(arguments, setting),
        Command::Review(arguments) => review::run(arguments, setting),
        Command::Compare(arguments) => compare::run(arguments, setting),
        Command::Size(arguments) => size::run(arguments, terminal),
        Command::Check(arguments) => check::run(arguments, setting),
        Command::New(arguments) => new::run(arguments, terminal),
        Command::Restore(arguments) => restore::run(arguments, setting),
        Command::Set(arguments) => set::run(arguments, terminal),
        Command::Chairside(arguments) => chairside::run(arguments, setting),
        Command::Completions(arguments) => completions::run(arguments, terminal),
    }
}
