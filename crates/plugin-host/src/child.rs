//! The child: loads one plugin under limits, and answers requests until its parent is gone.

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, BufRead, Write};
use std::path::Path;
use std::process::ExitCode;

use crate::in_process::Loaded;
use crate::protocol::{fault_words, parse_number, write_description, write_frame};

/// The first argument by which the program knows that it is a child. Not for people.
pub const CHILD_ARGUMENT: &str = "__plugin-child";

/// Runs as a child where the arguments say so; otherwise returns none.
///
/// A program that hosts plugins calls this before anything else.
#[must_use]
pub fn child_main(arguments: impl Iterator<Item = OsString>) -> Option<ExitCode> {
    let arguments: Vec<OsString> = arguments.skip(1).collect();
    let [child, path, memory, files, answer, seconds] = &arguments[..] else { return None };
    if child != CHILD_ARGUMENT {
        return None;
    }
    let number = |text: &OsString| text.to_str().and_then(|text| text.parse::<u64>().ok());
    let limits = (number(memory), number(files), number(answer), number(seconds));
    let (Some(memory), Some(files), Some(answer), Some(seconds)) = limits else {
        return Some(ExitCode::FAILURE);
    };
    let Ok(mut out) = channel() else { return Some(ExitCode::FAILURE) };
    limit(memory, files, seconds);
    let served = serve(Path::new(path), answer as usize, &mut out);
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

/// Sets what this process may use, and lets it die with its parent.
#[cfg(unix)]
fn limit(memory: u64, files: u64, seconds: u64) {
    let set = |what, value: u64| {
        let limit = libc::rlimit { rlim_cur: value as _, rlim_max: value as _ };
        // SAFETY: a plain call with a structure of our own.
        unsafe { libc::setrlimit(what, &raw const limit) };
    };
    set(libc::RLIMIT_AS, memory);
    set(libc::RLIMIT_NOFILE, files);
    // A child serves a whole command, so it may compute for many answers.
    set(libc::RLIMIT_CPU, seconds);
    set(libc::RLIMIT_FSIZE, 0);
    set(libc::RLIMIT_CORE, 0);
    #[cfg(target_os = "linux")]
    // SAFETY: plain calls; where the parent is gone already, so are we.
    unsafe {
        libc::prctl(libc::PR_SET_PDEATHSIG, libc::SIGKILL);
        if libc::getppid() == 1 {
            libc::_exit(1);
        }
    }
}

#[cfg(not(unix))]
fn limit(_memory: u64, _files: u64, _seconds: u64) {}

fn serve(path: &Path, most: usize, out: &mut impl Write) -> io::Result<()> {
    let loaded = match Loaded::new(path) {
        Ok(loaded) => loaded,
        Err(fault) => {
            let (word, text) = fault_words(&fault);
            return write_frame(out, word, &text);
        }
    };
    write_frame(out, "ok", &write_description(&loaded.description))?;
    for line in io::stdin().lock().lines() {
        let line = line?;
        let numbers: Option<Vec<f64>> = line.split(' ').map(parse_number).collect();
        let Some([width, depth, values @ ..]) = numbers.as_deref() else {
            return Err(io::Error::from(io::ErrorKind::InvalidData));
        };
        match loaded.pattern((*width, *depth), values, most) {
            Ok(text) => write_frame(out, "ok", &text)?,
            Err(fault) => {
                let (word, text) = fault_words(&fault);
                write_frame(out, word, &text)?;
            }
        }
    }
    Ok(())
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
