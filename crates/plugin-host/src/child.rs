//! The child: loads one plugin under limits, describes it, answers one request.

#![expect(unsafe_code, reason = "limits and descriptors are the system's; each block says why")]

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, BufRead, Write};
use std::path::Path;
use std::process::ExitCode;

use case::PluginFaultKind;
use cushion::{Length, Size};

use crate::fence::fence;
use crate::in_process::Loaded;
use crate::protocol::{READ, fault_words, parse_number, write_description, write_frame};
use crate::source::read_answer;

/// The first argument by which the program knows that it is a child. Not for people.
pub const CHILD_ARGUMENT: &str = "__plugin-child";

/// Runs as a child where the arguments say so; otherwise returns none.
///
/// A program that hosts plugins calls this before anything else.
#[must_use]
pub fn child_main(arguments: impl Iterator<Item = OsString>) -> Option<ExitCode> {
    let arguments: Vec<OsString> = arguments.skip(1).collect();
    let [child, path, numbers @ ..] = &arguments[..] else { return None };
    if child != CHILD_ARGUMENT {
        return None;
    }
    let number = |text: &OsString| text.to_str().and_then(|text| text.parse::<u64>().ok());
    let numbers: Option<Vec<u64>> = numbers.iter().map(number).collect();
    let Some(&[memory, files, answer, seconds, parent]) = numbers.as_deref() else {
        return Some(ExitCode::FAILURE);
    };
    let Ok(mut out) = channel() else { return Some(ExitCode::FAILURE) };
    die_with(parent);
    let served = match limit(memory, files, seconds).and_then(|()| fence()) {
        Ok(()) => serve(Path::new(path), answer as usize, &mut out),
        // A plugin never runs without its limits.
        Err(error) => {
            let (word, text) = fault_words(PluginFaultKind::NoLimits(error.to_string()));
            write_frame(&mut out, word, &text)
        }
    };
    // Not by returning: threads that the plugin left running must not hold the process.
    leave(served.is_ok())
}

/// Keeps the pipe to the parent for answers, and turns the plugin's own printing away from it.
#[cfg(unix)]
fn channel() -> io::Result<File> {
    use std::os::fd::FromRawFd;
    // SAFETY: plain calls on descriptors that this process owns.
    unsafe {
        let kept = libc::dup(libc::STDOUT_FILENO);
        if kept < 0 || libc::dup2(libc::STDERR_FILENO, libc::STDOUT_FILENO) < 0 {
            return Err(io::Error::last_os_error());
        }
        libc::fcntl(kept, libc::F_SETFD, libc::FD_CLOEXEC);
        Ok(File::from_raw_fd(kept))
    }
}

#[cfg(not(unix))]
fn channel() -> io::Result<File> {
    Err(io::Error::from(io::ErrorKind::Unsupported))
}

/// Lets this process die with its parent, also where a plugin never looks at its pipes.
///
/// The system counts the thread that started the child as the parent. A child lives for one
/// question, and the thread that asks waits for it, so that thread cannot end before.
#[cfg(target_os = "linux")]
fn die_with(parent: u64) {
    // SAFETY: plain calls; where the parent is gone already, so are we.
    unsafe {
        libc::prctl(libc::PR_SET_PDEATHSIG, libc::SIGKILL);
        if u64::try_from(libc::getppid()) != Ok(parent) {
            libc::_exit(1);
        }
    }
}

#[cfg(not(target_os = "linux"))]
fn die_with(_parent: u64) {}

/// Sets what this process may use. A limit that is stricter already stays.
#[cfg(unix)]
fn limit(memory: u64, files: u64, seconds: u64) -> io::Result<()> {
    let set = |what, value: u64| {
        let mut limit = libc::rlimit { rlim_cur: 0, rlim_max: 0 };
        // SAFETY: plain calls with a structure of our own.
        let done = unsafe {
            let asked = libc::getrlimit(what, &raw mut limit);
            limit.rlim_max = limit.rlim_max.min(value as libc::rlim_t);
            limit.rlim_cur = limit.rlim_max;
            asked == 0 && libc::setrlimit(what, &raw const limit) == 0
        };
        if done { Ok(()) } else { Err(io::Error::last_os_error()) }
    };
    set(libc::RLIMIT_AS, memory)?;
    set(libc::RLIMIT_NOFILE, files)?;
    set(libc::RLIMIT_CPU, seconds)?;
    set(libc::RLIMIT_FSIZE, 0)?;
    set(libc::RLIMIT_CORE, 0)
}

#[cfg(not(unix))]
fn limit(_memory: u64, _files: u64, _seconds: u64) -> io::Result<()> {
    Err(io::Error::from(io::ErrorKind::Unsupported))
}

fn serve(path: &Path, most: usize, out: &mut impl Write) -> io::Result<()> {
    let loaded = match Loaded::new(path) {
        Ok(loaded) => loaded,
        Err(fault) => {
            let (word, text) = fault_words(fault);
            return write_frame(out, word, &text);
        }
    };
    write_frame(out, "ok", &write_description(&loaded.description))?;
    let Some(line) = io::stdin().lock().lines().next() else { return Ok(()) };
    let numbers: Option<Vec<f64>> = line?.split(' ').map(parse_number).collect();
    let Some([width, depth, values @ ..]) = numbers.as_deref() else {
        return Err(io::Error::from(io::ErrorKind::InvalidData));
    };
    let text = match loaded.pattern((*width, *depth), values, most) {
        Ok(text) => text,
        Err(fault) => {
            let (word, text) = fault_words(fault);
            return write_frame(out, word, &text);
        }
    };
    write_frame(out, "ok", &text)?;
    // The parent has no limits. It reads the answer only if that was possible under ours.
    if let Some(size) = Size::new(Length::from_mm(*width), Length::from_mm(*depth)) {
        let _ = read_answer(&text, size);
    }
    write_frame(out, READ, "")
}

/// Ends this process at once.
fn leave(well: bool) -> ! {
    // SAFETY: ends the process without running what the plugin may have registered.
    #[cfg(unix)]
    unsafe {
        libc::_exit(i32::from(!well))
    }
    #[cfg(not(unix))]
    std::process::abort()
}
