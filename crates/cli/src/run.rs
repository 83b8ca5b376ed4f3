//! One run of the program: parse, do, tell, end.

use std::ffi::OsString;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;
use std::sync::{Arc, Mutex, PoisonError};

use casework::Whose;
use clap::{CommandFactory as _, FromArgMatches as _};
use words::ProgramFault;

use crate::arguments::Arguments;
use crate::commands;
use crate::exit_codes;
use crate::failure::Failure;
use crate::say;
use crate::setting::Setting;
use crate::terminal::{Color, Terminal};

/// Does what the words of the command line ask, and returns the exit code.
pub(crate) fn program(words: impl IntoIterator<Item = OsString>) -> ExitCode {
    let words: Vec<OsString> = words.into_iter().collect();
    let (json, color) = (asks_for_json(&words), asked_color(&words));
    say::take(asked(&words, "--language"));
    let terminal = Terminal::new(color, json);
    let work = || match parsed(&words, color)? {
        Some(arguments) => {
            commands::run(&arguments.command, Setting { terminal, date: arguments.date })
        }
        None => Ok(()),
    };
    match guarded(work) {
        Ok(()) => ExitCode::from(exit_codes::DONE),
        Err(failure) => failure.tell(terminal),
    }
}

/// Reads the words; none are left to follow once `--help` or `--version` has been answered.
fn parsed(words: &[OsString], color: Color) -> Result<Option<Arguments>, Failure> {
    let mut command = Arguments::command().color(color.for_parser());
    let read = command.try_get_matches_from_mut(words);
    match read.and_then(|matches| Arguments::from_arg_matches(&matches)) {
        Ok(arguments) => Ok(Some(arguments)),
        Err(answer) if !answer.use_stderr() => {
            answer.print().map_err(|error| Failure::answer(&error))?;
            Ok(None)
        }
        Err(error) => Err(Failure::from(error)),
    }
}

/// Whether failures are to be told in JSON, also that of words which cannot be read.
fn asks_for_json(words: &[OsString]) -> bool {
    words.iter().take_while(|word| *word != "--").any(|word| word == "--json")
}

/// The choice of `--color`, also for words which cannot be read.
fn asked_color(words: &[OsString]) -> Color {
    let named = asked(words, "--color");
    named.and_then(|word| clap::ValueEnum::from_str(word, false).ok()).unwrap_or_default()
}

/// What is given for an option, also in words which cannot be read.
fn asked<'a>(words: &'a [OsString], option: &str) -> Option<&'a str> {
    let mut words = words.iter().filter_map(|word| word.to_str());
    let given = words.by_ref().take_while(|word| *word != "--").find_map(|word| {
        match word.strip_prefix(option)? {
            "" => Some(None),
            own => own.strip_prefix('=').map(Some),
        }
    });
    given.and_then(|value| value.or_else(|| words.next()))
}

/// Turns a panic, which is a fault of ours, into a failure.
fn guarded(work: impl FnOnce() -> Result<(), Failure>) -> Result<(), Failure> {
    let place = Arc::new(Mutex::new(String::new()));
    let noted = Arc::clone(&place);
    let usual = std::panic::take_hook();
    std::panic::set_hook(Box::new(move |panic| {
        *noted.lock().unwrap_or_else(PoisonError::into_inner) =
            panic.to_string().replace('\n', " ");
    }));
    let outcome = catch_unwind(AssertUnwindSafe(work));
    std::panic::set_hook(usual);
    outcome.unwrap_or_else(|_| {
        let place = place.lock().unwrap_or_else(PoisonError::into_inner);
        let said = say::language().program_fault(&ProgramFault::Ours { place: &place });
        Err(Failure::new(Whose::Ours, said))
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_panic_becomes_a_failure_that_asks_to_be_reported() {
        let failure = guarded(|| panic!("the ring is closed")).expect_err("it panicked");
        let words = format!("{failure:?}");
        assert!(words.contains("whose: Ours"), "{words}");
        assert!(words.contains("the ring is closed"), "{words}");
        assert!(words.contains("please report it"), "{words}");
    }

    #[test]
    fn the_colour_is_known_before_the_words_are_understood() {
        let color =
            |words: &[&str]| asked_color(&words.iter().map(OsString::from).collect::<Vec<_>>());
        assert_eq!(color(&["x", "--color", "never", "--nonsense"]), Color::Never);
        assert_eq!(color(&["x", "--color=always"]), Color::Always);
        assert_eq!(color(&["x", "--color"]), Color::Auto);
    }
}
