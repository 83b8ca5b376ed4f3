//! The sub-commands, a file each: read, resolve, call a library, print.

mod completions;
mod new;

use crate::arguments::Command;
use crate::failure::Failure;

/// Does what a sub-command asks.
///
/// # Errors
///
/// Fails as the sub-command does.
pub(crate) fn run(command: &Command) -> Result<(), Failure> {
    match command {
        Command::New(arguments) => new::run(arguments),
        Command::Completions(arguments) => completions::run(arguments),
        _ => Ok(()),
    }
}
