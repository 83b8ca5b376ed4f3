//! The tests' own program: a second process that changes files, and may be killed at that.
//!
//! `put FILE=TEXT...` changes outputs in one go; `count FILE N` adds 1 to the number in a file N
//! times, each time as often as it takes.

#![expect(clippy::print_stdout, reason = "the tests read the answer there")]

use std::process::ExitCode;

use casework::{Change, Shelf as _, ShelfError, Why};
use shelf::DiskShelf;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    let done = match &words[..] {
        [put, changes @ ..] if put == "put" => put_all(changes),
        [count, file, times] if count == "count" => count_up(file, times.parse().unwrap_or(0)),
        _ => return ExitCode::FAILURE,
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            println!("{error}");
            ExitCode::from(2)
        }
    }
}

fn put_all(changes: &[String]) -> Result<(), ShelfError> {
    let change = |one: &String| match one.split_once('=') {
        Some((name, text)) => Change::output(name, text),
        None => Change::removal(one, casework::Was::Any),
    };
    DiskShelf::anywhere().put(&changes.iter().map(change).collect::<Vec<_>>())
}

fn count_up(file: &str, times: usize) -> Result<(), ShelfError> {
    let shelf = DiskShelf::anywhere();
    for _ in 0..times {
        loop {
            let read = shelf.read(file)?;
            let number: u64 = String::from_utf8_lossy(&read).parse().unwrap_or(0);
            match shelf.put(&[Change::of(file, &read, (number + 1).to_string())]) {
                Ok(()) => break,
                Err(error) if error.why == Why::Changed => {}
                Err(error) => return Err(error),
            }
        }
    }
    Ok(())
}
