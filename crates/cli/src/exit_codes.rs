//! Exit codes: whose move it is next. They are part of the stable interface.

/// Done.
pub(crate) const DONE: u8 = 0;
/// The command was called in a wrong way; the caller's move.
pub(crate) const WRONG_CALL: u8 = 2;
/// A file is wrong; the move of whoever wrote the file.
pub(crate) const WRONG_FILE: u8 = 3;
/// A plugin failed or answered nonsense; the move of the plugin's author.
pub(crate) const PLUGIN: u8 = 4;
/// What is asked cannot be had safely; the clinician's move.
pub(crate) const NOT_SAFE: u8 = 5;
/// An output could not be written; the move of whoever looks after the disk or the folder.
pub(crate) const CANNOT_WRITE: u8 = 6;
/// A goal falls short, where none was to; the move of whoever set the goals.
pub(crate) const GOAL_SHORT: u8 = 7;
/// No made size suits; the move of whoever makes or chooses the cushion.
pub(crate) const NO_SIZE: u8 = 8;
/// A fault of the program; our move.
pub(crate) const OURS: u8 = 70;

/// The codes and their meanings, in the order in which `--help` shows them.
pub(crate) const MEANINGS: [(u8, &str); 9] = [
    (DONE, "done"),
    (WRONG_CALL, "the command was called in a wrong way"),
    (WRONG_FILE, "a file is wrong; the remarks say where and what to do"),
    (PLUGIN, "a plugin is at fault"),
    (NOT_SAFE, "not safely possible, or an alarm"),
    (CANNOT_WRITE, "cannot write; nothing was left half-written"),
    (GOAL_SHORT, "a goal falls short, and --strict was given"),
    (NO_SIZE, "no made size suits"),
    (OURS, "a fault of the program; please report it"),
];

/// Returns the section of `--help` about the codes.
pub(crate) fn help() -> String {
    let lines = MEANINGS.map(|(code, meaning)| format!("  {code:>2}  {meaning}"));
    format!("Exit status:\n{}", lines.join("\n"))
}
