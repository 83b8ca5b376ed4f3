//! The tests' own program: the child in which plugins run, and with `ask FILE` a parent that
//! starts one and asks it once, to be killed in between. The program has its own.

#![expect(clippy::print_stdout, reason = "the tests read the answer there")]

use std::path::Path;
use std::process::ExitCode;
use std::time::Duration;

use plugin_host::{Isolation, Limits, Running};

fn main() -> ExitCode {
    if let Some(code) = plugin_host::child_main(std::env::args_os()) {
        return code;
    }
    let words: Vec<_> = std::env::args_os().skip(1).collect();
    match &words[..] {
        [ask, file] if ask == "ask" => asked(Path::new(file)),
        _ => ExitCode::FAILURE,
    }
}

/// Asks the plugin in a file for one pattern, and gives it a minute.
fn asked(file: &Path) -> ExitCode {
    let Ok(program) = std::env::current_exe() else { return ExitCode::FAILURE };
    let limits = Limits { time: Duration::from_secs(60), ..Limits::default() };
    let running = Running::start(file, &Isolation::Child { program }, limits);
    match running.and_then(|mut running| running.pattern((440.0, 400.0), &[])) {
        Ok(_) => {
            println!("answered");
            ExitCode::SUCCESS
        }
        Err(_) => ExitCode::FAILURE,
    }
}
