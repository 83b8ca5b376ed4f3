//! The child in which plugins run, for tests of this crate; the program has its own.

use std::process::ExitCode;

fn main() -> ExitCode {
    plugin_host::child_main(std::env::args_os()).unwrap_or(ExitCode::FAILURE)
}
