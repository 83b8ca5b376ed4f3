//! A plugin that was started: in a child, or in this process where somebody asked for that.

use std::io::{BufReader, Read, Write};
use std::path::{Path, PathBuf};
use std::process::{Child, ChildStdin, Command, ExitStatus, Stdio};
use std::sync::mpsc::{Receiver, RecvTimeoutError, channel};
use std::thread;
use std::time::{Duration, Instant};

use crate::child::CHILD_ARGUMENT;
use crate::description::Description;
use crate::in_process::Loaded;
use crate::protocol::{Frame, number, parse_description, parse_fault, read_frame};
use crate::{Fault, FaultKind, Limits};

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

/// A started plugin.
pub struct Running {
    file: String,
    description: Description,
    limits: Limits,
    home: Home,
}

enum Home {
    Child(Box<Process>),
    Here(Loaded),
}

struct Process {
    child: Child,
    requests: Option<ChildStdin>,
    answers: Receiver<Frame>,
}

impl Running {
    /// Starts the plugin in a file and reads its description.
    ///
    /// # Errors
    ///
    /// Fails where the file is no plugin of this version, or does not answer.
    pub fn start(path: &Path, isolation: &Isolation, limits: Limits) -> Result<Self, Fault> {
        let file = path.display().to_string();
        let fault = |kind| Fault { plugin: file.clone(), kind };
        let (home, description) = match isolation {
            Isolation::InProcess => {
                let loaded = Loaded::new(path).map_err(fault)?;
                let description = loaded.description.clone();
                (Home::Here(loaded), description)
            }
            Isolation::Child { program } => {
                let mut process = Process::start(program, path, limits).map_err(fault)?;
                let frame = process.answer(limits).map_err(fault)?;
                let described = if frame.word == "ok" {
                    parse_description(&frame.text)
                        .ok_or(FaultKind::BadDescription("it is not right"))
                } else {
                    Err(parse_fault(frame))
                };
                (Home::Child(Box::new(process)), described.map_err(fault)?)
            }
        };
        Ok(Self { file, description, limits, home })
    }

    /// What the plugin says of itself.
    #[must_use]
    pub fn description(&self) -> &Description {
        &self.description
    }

    /// The file that it was started from.
    #[must_use]
    pub fn file(&self) -> &str {
        &self.file
    }

    /// Asks for the layout text of one size; `values` are in the order of the parameters.
    ///
    /// # Errors
    ///
    /// Fails as the plugin does.
    pub fn pattern(&mut self, size_mm: (f64, f64), values: &[f64]) -> Result<String, Fault> {
        let answered = match &mut self.home {
            Home::Here(loaded) => loaded.pattern(size_mm, values, self.limits.answer),
            Home::Child(process) => process.pattern(size_mm, values, self.limits),
        };
        answered.map_err(|kind| Fault { plugin: self.description.name.to_string(), kind })
    }
}

impl Process {
    fn start(program: &Path, plugin: &Path, limits: Limits) -> Result<Self, FaultKind> {
        // A name without a slash would be looked for in the places of the system's libraries.
        let plugin = std::path::absolute(plugin).unwrap_or_else(|_| plugin.to_owned());
        let child = Command::new(program)
            .arg(CHILD_ARGUMENT)
            .arg(plugin)
            .args([limits.memory, limits.files, limits.answer as u64].map(|n| n.to_string()))
            // Time of computing for a whole command: sixty of the slowest answers.
            .arg((60 * limits.time.as_secs().max(1)).to_string())
            .env_clear()
            .stdin(Stdio::piped())
            .stdout(Stdio::piped())
            .stderr(Stdio::piped())
            .spawn();
        let mut child = child.map_err(|error| FaultKind::NoChild(error.to_string()))?;
        let (stdout, stderr) = (child.stdout.take(), child.stderr.take());
        let (send, answers) = channel();
        thread::spawn(move || {
            let Some(stdout) = stdout else { return };
            let mut stdout = BufReader::new(stdout);
            while let Some(frame) = read_frame(&mut stdout, limits.answer + 1024) {
                if send.send(frame).is_err() {
                    return;
                }
            }
        });
        // What the plugin prints is read, so that it is not held up, and thrown away.
        thread::spawn(move || {
            let mut sink = [0; 4096];
            let Some(mut stderr) = stderr else { return };
            while stderr.read(&mut sink).is_ok_and(|read| read > 0) {}
        });
        let requests = child.stdin.take();
        Ok(Self { child, requests, answers })
    }

    fn pattern(
        &mut self,
        (width, depth): (f64, f64),
        values: &[f64],
        limits: Limits,
    ) -> Result<String, FaultKind> {
        let numbers = [width, depth].into_iter().chain(values.iter().copied());
        let line = numbers.map(number).collect::<Vec<_>>().join(" ") + "\n";
        let sent = self.requests.as_mut().map(|requests| requests.write_all(line.as_bytes()));
        if !matches!(sent, Some(Ok(()))) {
            return Err(self.gone());
        }
        let frame = self.answer(limits)?;
        if frame.word == "ok" { Ok(frame.text) } else { Err(parse_fault(frame)) }
    }

    fn answer(&mut self, limits: Limits) -> Result<Frame, FaultKind> {
        match self.answers.recv_timeout(limits.time) {
            Ok(frame) => Ok(frame),
            Err(RecvTimeoutError::Timeout) => {
                self.end();
                Err(FaultKind::TooSlow(limits.time))
            }
            Err(RecvTimeoutError::Disconnected) => Err(self.gone()),
        }
    }

    /// Why there is no answer any more.
    fn gone(&mut self) -> FaultKind {
        match self.wait(Duration::from_secs(1)) {
            Some(status) => ended(status),
            None => {
                self.end();
                FaultKind::Ended
            }
        }
    }

    fn wait(&mut self, most: Duration) -> Option<ExitStatus> {
        let start = Instant::now();
        while start.elapsed() < most {
            if let Ok(Some(status)) = self.child.try_wait() {
                return Some(status);
            }
            thread::sleep(Duration::from_millis(2));
        }
        None
    }

    fn end(&mut self) {
        // It may be gone already, which is what is wanted.
        let _ = self.child.kill();
        let _ = self.child.wait();
    }
}

impl Drop for Process {
    fn drop(&mut self) {
        // A closed pipe asks the child to go; one that does not is made to.
        self.requests = None;
        if self.wait(Duration::from_millis(100)).is_none() {
            self.end();
        }
    }
}

#[cfg(unix)]
fn ended(status: ExitStatus) -> FaultKind {
    use std::os::unix::process::ExitStatusExt;
    match status.signal() {
        Some(signal) => FaultKind::Crashed { signal: signal_words(signal) },
        None => FaultKind::Ended,
    }
}

#[cfg(not(unix))]
fn ended(_status: ExitStatus) -> FaultKind {
    FaultKind::Ended
}

#[cfg(unix)]
fn signal_words(signal: i32) -> String {
    match signal {
        libc::SIGSEGV => "it used memory that is not its own".to_owned(),
        libc::SIGBUS => "it used memory that is not there".to_owned(),
        libc::SIGABRT => "it gave up: out of memory or stack, or by itself".to_owned(),
        libc::SIGILL => "it ran something that is no instruction".to_owned(),
        libc::SIGFPE => "it divided by zero".to_owned(),
        libc::SIGXCPU => "it computed for too long".to_owned(),
        libc::SIGXFSZ => "it wrote to a file".to_owned(),
        libc::SIGKILL => "it was killed".to_owned(),
        other => format!("signal {other}"),
    }
}
