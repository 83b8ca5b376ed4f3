//! The tests' own program: the child in which plugins run, and with `ask FILE` a parent that
//! starts one and asks it once, to be killed in between. The program has its own.

#![expect(clippy::print_stdout, reason = "the tests read the answer there")]

use std::collections::BTreeMap;
use std::path::Path;
use std::process::ExitCode;
use std::time::Duration;

use cushion::{Length, Name, Size};
use plugin_host::{DrawRequest, Isolation, Limits, Places, Plugins};

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
    let places = Places { named: vec![file.to_owned()], folders: Vec::new() };
    let plugins = Plugins::new(places, Isolation::Child { program }, limits);
    let (Some(name), Some(size)) = (Name::new("faulty"), size()) else {
        return ExitCode::FAILURE;
    };
    let request = DrawRequest { name, size, parameters: BTreeMap::new() };
    match plugins.draw(&request, &|_| None) {
        Ok(_) => {
            println!("answered");
            ExitCode::SUCCESS
        }
        Err(_) => ExitCode::FAILURE,
    }
}

fn size() -> Option<Size> {
    Size::new(Length::from_mm(440.0), Length::from_mm(400.0))
}
