//! Calls: help, wrong words, and where the answer goes.

use std::fs;
use std::io::Read as _;
use std::process::Stdio;

use crate::runner::{Ran, TestDir};

/// Runs the words; the program must find them wrong and say why.
#[track_caller]
fn check_wrong(words: &[&str], expected: &str) {
    assert_eq!(TestDir::new().run(words).failed(2), expected);
}

#[test]
fn wrong_words_are_told() {
    check_wrong(
        &["pattern", "row-six"],
        "error: the following required arguments were not provided: --size <SIZE>\n\
         hint: call it as `seatwright pattern --size <SIZE> <LAYOUT>`; --help tells more\n",
    );
    check_wrong(
        &["pattern", "row-six", "--size", "4000x400"],
        "error: invalid value '4000x400' for '--size <SIZE>': 4000 x 400 mm is no cushion: width and depth lie between 150 and 800 mm\n\
         hint: `seatwright --help` tells how it is called\n",
    );
    for size in ["440", "nanx400", "infx400", "-440x400", "440x", "x", "1e99x1", ""] {
        let words = TestDir::new().run(&["pattern", "row-six", "--size", size]).failed(2);
        assert!(words.starts_with("error: "), "{size}: {words}");
    }
    check_wrong(
        &["plan", "K-17.toml", "--record"],
        "error: the following required arguments were not provided: --by <WHO>\n\
         hint: call it as `seatwright plan --record --by <WHO> <CLIENT>`; --help tells more\n",
    );
    check_wrong(
        &["print", "K-17.toml", "--out", "x", "--date", "1.3.2026"],
        "error: invalid value '1.3.2026' for '--date <DAY>': a day is written as year, month and day: 2026-03-01\n\
         hint: `seatwright --help` tells how it is called\n",
    );
}

#[test]
fn help_tells_the_exit_codes_and_that_all_is_an_estimate() {
    let help = TestDir::new().run(&["--help"]).done();
    assert!(help.contains("an estimate until somebody has checked it with their hands"), "{help}");
    let codes = "Exit status:
   0  done
   2  the command was called in a wrong way
   3  a file is wrong; the remarks say where and what to do
   4  a plugin is at fault
   5  not safely possible, or an alarm
   6  cannot write; nothing was left half-written
   7  a goal falls short, and --strict was given
   8  no made size suits
  70  a fault of the program; please report it
";
    assert!(help.ends_with(codes), "{help}");
}

#[test]
fn help_lines_are_imperative_and_have_no_full_stop() {
    for command in ["demo", "pattern", "plan", "print", "check", "new", "completions"] {
        let help = TestDir::new().run(&[command, "-h"]).done();
        let first = help.lines().next().unwrap_or_default();
        assert!(!first.is_empty() && !first.ends_with('.'), "{command}: {first}");
        assert!(help.contains("\nExample"), "{command} shows no example");
    }
}

#[test]
fn completions_are_written_for_each_shell() {
    for shell in ["bash", "elvish", "fish", "powershell", "zsh"] {
        let script = TestDir::new().run(&["completions", shell]).done();
        assert!(script.contains("seatwright") && script.contains("pattern"), "{shell}");
    }
}

#[test]
fn a_reader_that_leaves_is_no_failure() {
    let dir = TestDir::new();
    let mut command = dir.command(&["completions", "zsh"]);
    let mut child = command.stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
    drop(child.stdout.take());
    let status = child.wait().unwrap();
    let mut stderr = String::new();
    child.stderr.take().unwrap().read_to_string(&mut stderr).unwrap();
    assert_eq!((status.code(), &*stderr), (Some(0), ""));
}

/// `/dev/full` is a disk that is always full.
#[cfg(target_os = "linux")]
#[test]
fn an_answer_that_does_not_go_out_is_a_failure() {
    let full = fs::OpenOptions::new().write(true).open("/dev/full").unwrap();
    let dir = TestDir::new();
    let output = dir.command(&["completions", "bash"]).stdout(full).output().unwrap();
    assert_eq!(Ran::from(output).failed(6), "error: cannot write the answer: the disk is full\n");
}

#[test]
fn colour_comes_only_when_asked_for() {
    let coloured = TestDir::new().run(&["pattern", "--color", "always"]);
    assert!(coloured.stderr.contains('\u{1b}'), "{}", coloured.stderr);
    TestDir::new().run(&["pattern", "--color", "never"]).failed(2);
    TestDir::new().run(&["pattern"]).failed(2);
}

#[test]
fn a_file_is_begun_and_never_written_over() {
    let dir = TestDir::new();
    for kind in ["client", "layout", "cell"] {
        let name = format!("{kind}.toml");
        let words = dir.run(&["new", kind, &name]).done();
        assert!(words.contains(&format!("seatwright check {name}")), "{words}");
        let before = dir.read(&name);
        assert_eq!(
            dir.run(&["new", kind, &name]).failed(6),
            format!(
                "error: `{name}` is there already and was left as it is\n\
                 hint: choose another name, or move that file away first\n"
            )
        );
        assert_eq!(dir.read(&name), before);
    }
    assert_eq!(dir.names(), ["cell.toml", "client.toml", "layout.toml"]);
}

#[test]
fn a_file_in_a_folder_that_is_not_there_is_told() {
    let words = TestDir::new().run(&["new", "cell", "no/such.toml"]).failed(6);
    assert!(words.starts_with("error: cannot write `no/such.toml`: "), "{words}");
}
