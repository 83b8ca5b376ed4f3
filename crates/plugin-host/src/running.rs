//! A plugin that was started: in a child, or in this process where somebody asked for that.

use std::io::{BufRead, BufReader, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{ChildStdin, Command, ExitStatus, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::thread;
use std::time::Duration;

use case::{BadDescription, Crash, PluginFault, PluginFaultKind};
use tempfile::TempDir;

use crate::Limits;
use crate::child::CHILD_ARGUMENT;
use crate::description::Description;
use crate::fault::tidied;
use crate::group::Group;
use crate::in_process::{Loaded, on_the_one_thread};
use crate::protocol::{Frame, READ, number, parse_description, parse_fault, read_frame};

/// Where a plugin runs.
#[derive(Clone, Debug, PartialEq)]
pub enum Isolation {
    /// In a child process of this program, which calls [`crate::child_main`] first.
    Child {
        /// The program.
        program: PathBuf,
    },
    /// In this process: a crash of the plugin is a crash of the program. Only where somebody
    /// asked for it in words.
    InProcess,
}

/// A started plugin, to be asked once.
pub(crate) struct Running {
    description: Description,
    limits: Limits,
    home: Home,
}

enum Home {
    Child(Box<Process>),
    /// In this process, loaded from this file.
    Here(PathBuf),
}

struct Process {
    group: Group,
    /// The folder that it works in, which goes after it.
    _scratch: TempDir,
    requests: Option<ChildStdin>,
    heard: Receiver<Heard>,
}

/// What comes from the child.
enum Heard {
    Answer(Frame),
    /// No answer comes any more.
    End,
    /// The plugin printed more than it may.
    TooMuchPrinted,
}

impl Running {
    /// Starts the plugin in a file and reads its description.
    ///
    /// # Errors
    ///
    /// Fails where the file is no plugin of this version, or does not answer.
    pub(crate) fn start(
        path: &Path,
        isolation: &Isolation,
        limits: Limits,
    ) -> Result<Self, PluginFault> {
        let file = path.display().to_string();
        let fault =
            |kind: PluginFaultKind| PluginFault { plugin: file.clone(), kind: tidied(kind) };
        if !path.is_file() {
            return Err(fault(PluginFaultKind::NoFile));
        }
        let (home, description) = match isolation {
            Isolation::InProcess => {
                let (path, file) = (path.to_owned(), path.to_owned());
                let described = on_the_one_thread(move || Ok(Loaded::new(&path)?.description));
                (Home::Here(file), described.map_err(fault)?)
            }
            Isolation::Child { program } => {
                let mut process = Process::start(program, path, limits).map_err(fault)?;
                let frame = process.answer(limits).map_err(fault)?;
                let described = if frame.word == "ok" {
                    parse_description(&frame.text)
                        .ok_or(PluginFaultKind::BadDescription(BadDescription::Unreadable))
                } else {
                    Err(parse_fault(frame))
                };
                (Home::Child(Box::new(process)), described.map_err(fault)?)
            }
        };
        Ok(Self { description, limits, home })
    }

    /// What the plugin says of itself.
    pub(crate) fn description(&self) -> &Description {
        &self.description
    }

    /// Asks for the layout text of one size; `values` are in the order of the parameters.
    ///
    /// # Errors
    ///
    /// Fails as the plugin does.
    pub(crate) fn pattern(
        self,
        size_mm: (f64, f64),
        values: &[f64],
    ) -> Result<String, PluginFault> {
        let answered = match self.home {
            Home::Here(file) => {
                let (values, most) = (values.to_vec(), self.limits.answer);
                on_the_one_thread(move || Loaded::new(&file)?.pattern(size_mm, &values, most))
            }
            Home::Child(mut process) => process.pattern(size_mm, values, self.limits),
        };
        let plugin = || self.description.name.to_string();
        answered.map_err(|kind| PluginFault { plugin: plugin(), kind: tidied(kind) })
    }
}

impl Process {
    fn start(program: &Path, plugin: &Path, limits: Limits) -> Result<Self, PluginFaultKind> {
        // A name without a slash would be looked for in the places of the system's libraries.
        let plugin = std::path::absolute(plugin).unwrap_or_else(|_| plugin.to_owned());
        let program = std::path::absolute(program).unwrap_or_else(|_| program.to_owned());
        let scratch = tempfile::Builder::new().prefix("seatwright-plugin-").tempdir();
        let scratch = scratch.map_err(|error| PluginFaultKind::NoChild(error.to_string()))?;
        let mut command = Command::new(program);
        command
            .current_dir(scratch.path())
            .arg(CHILD_ARGUMENT)
            .arg(plugin)
            .args([limits.memory, limits.files, limits.answer as u64].map(|n| n.to_string()))
            // Time of computing for its whole life: a description, an answer, reading it.
            .arg((3 * limits.time.as_secs().max(1)).to_string())
            .arg(std::process::id().to_string())
            .env_clear()
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped());
        let group = Group::start(&mut command);
        let mut group = group.map_err(|error| PluginFaultKind::NoChild(error.to_string()))?;
        let (send, heard) = channel();
        if let Some(stdout) = group.child().stdout.take() {
            let send = send.clone();
            thread::spawn(move || {
                hear_answers(BufReader::new(stdout), limits.answer + 1024, &send)
            });
        }
        if let Some(stderr) = group.child().stderr.take() {
            thread::spawn(move || drain(stderr, limits.printed, &send));
        }
        let requests = group.child().stdin.take();
        Ok(Self { group, _scratch: scratch, requests, heard })
    }

    fn pattern(
        &mut self,
        (width, depth): (f64, f64),
        values: &[f64],
        limits: Limits,
    ) -> Result<String, PluginFaultKind> {
        let numbers = [width, depth].into_iter().chain(values.iter().copied());
        let line = numbers.map(number).collect::<Vec<_>>().join(" ") + "\n";
        let sent = self.requests.as_mut().map(|requests| requests.write_all(line.as_bytes()));
        if !matches!(sent, Some(Ok(()))) {
            return Err(self.gone());
        }
        let frame = self.answer(limits)?;
        if frame.word != "ok" {
            return Err(parse_fault(frame));
        }
        match self.answer(limits) {
            Ok(read) if read.word == READ => Ok(frame.text),
            _ => Err(PluginFaultKind::NotReadInTime(limits.time)),
        }
    }

    fn answer(&mut self, limits: Limits) -> Result<Frame, PluginFaultKind> {
        match self.heard.recv_timeout(limits.time) {
            Ok(Heard::Answer(frame)) => Ok(frame),
            Ok(Heard::TooMuchPrinted) => {
                self.group.end();
                Err(PluginFaultKind::TooMuchPrinted { most: limits.printed })
            }
            // A process that it started may hold the pipe open after its own end.
            Err(RecvTimeoutError::Timeout) => {
                let status = self.group.wait(Duration::ZERO);
                Err(status.map_or(PluginFaultKind::TooSlow(limits.time), ended))
            }
            Ok(Heard::End) | Err(RecvTimeoutError::Disconnected) => Err(self.gone()),
        }
    }

    /// Why there is no answer any more.
    fn gone(&mut self) -> PluginFaultKind {
        self.group.wait(Duration::from_secs(1)).map_or(PluginFaultKind::Ended, ended)
    }
}

/// Passes answers on, until there are no more.
fn hear_answers(mut stdout: impl BufRead, most: usize, heard: &Sender<Heard>) {
    while let Some(frame) = read_frame(&mut stdout, most) {
        if heard.send(Heard::Answer(frame)).is_err() {
            return;
        }
    }
    // Nobody may be listening any more.
    let _ = heard.send(Heard::End);
}

/// Reads what the plugin prints, so that it is not held up, and throws it away.
fn drain(mut printed: impl Read, most: usize, heard: &Sender<Heard>) {
    let mut sink = [0; 4096];
    let mut sum = 0;
    while let Ok(read @ 1..) = printed.read(&mut sink) {
        sum += read;
        if sum > most {
            // Nobody may be listening any more.
            let _ = heard.send(Heard::TooMuchPrinted);
            return;
        }
    }
}

#[cfg(unix)]
fn ended(status: ExitStatus) -> PluginFaultKind {
    use std::os::unix::process::ExitStatusExt;
    match status.signal() {
        Some(signal) => PluginFaultKind::Crashed(meaning(signal)),
        None => PluginFaultKind::Ended,
    }
}

#[cfg(not(unix))]
fn ended(_status: ExitStatus) -> PluginFaultKind {
    PluginFaultKind::Ended
}

#[cfg(unix)]
fn meaning(signal: i32) -> Crash {
    match signal {
        libc::SIGSEGV => Crash::OthersMemory,
        libc::SIGBUS => Crash::NoMemory,
        libc::SIGABRT => Crash::GaveUp,
        libc::SIGILL => Crash::NoInstruction,
        libc::SIGFPE => Crash::DividedByZero,
        libc::SIGXCPU => Crash::TooLong,
        libc::SIGXFSZ => Crash::WroteFile,
        libc::SIGKILL => Crash::Killed,
        other => Crash::Signal(other),
    }
}
