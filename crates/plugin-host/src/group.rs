//! A child process and whatever it starts: one group, which is ended as a whole.

use std::io;
use std::process::{Child, Command, ExitStatus};
use std::thread;
use std::time::{Duration, Instant};

/// How often it is looked whether a process has ended.
const LOOK: Duration = Duration::from_millis(1);

/// A child that leads a group of its own. Whatever of the group is left goes when this is dropped.
pub(crate) struct Group {
    child: Child,
    /// Its end, once it was collected: from then on its number may be another process's.
    status: Option<ExitStatus>,
}

impl Group {
    /// Starts a program at the head of a new group.
    pub(crate) fn start(command: &mut Command) -> io::Result<Self> {
        lead(command);
        Ok(Self { child: command.spawn()?, status: None })
    }

    /// The child, to take its pipes.
    pub(crate) fn child(&mut self) -> &mut Child {
        &mut self.child
    }

    /// Waits for the child to end by itself, for a while; then ends the group.
    ///
    /// Returns how the child ended, none where it had to be made to.
    pub(crate) fn wait(&mut self, most: Duration) -> Option<ExitStatus> {
        let start = Instant::now();
        while !has_ended(&self.child) {
            if start.elapsed() > most {
                self.end();
                return None;
            }
            thread::sleep(LOOK);
        }
        self.end();
        self.status
    }

    /// Ends the group at once. A child that has ended already keeps its own end.
    pub(crate) fn end(&mut self) {
        if self.status.is_some() {
            return;
        }
        end_group(&self.child);
        // It may be gone already, which is what is wanted.
        let _ = self.child.kill();
        self.status = self.child.wait().ok();
    }
}

impl Drop for Group {
    fn drop(&mut self) {
        self.end();
    }
}

#[cfg(unix)]
fn lead(command: &mut Command) {
    use std::os::unix::process::CommandExt;
    command.process_group(0);
}

#[cfg(not(unix))]
fn lead(_command: &mut Command) {}

/// Whether the child has ended; its end is left to be collected, so that its number stays its own.
#[cfg(unix)]
#[expect(unsafe_code, reason = "the standard library cannot look without collecting")]
fn has_ended(child: &Child) -> bool {
    let options = libc::WEXITED | libc::WNOHANG | libc::WNOWAIT;
    // SAFETY: zero is a right value of this structure of numbers, and the call writes only to it.
    unsafe {
        let mut found: libc::siginfo_t = std::mem::zeroed();
        let done = libc::waitid(libc::P_PID, child.id(), &raw mut found, options);
        done != 0 || found.si_pid() != 0
    }
}

#[cfg(not(unix))]
fn has_ended(_child: &Child) -> bool {
    false
}

/// Ends all processes of the group; the child must not have been collected yet.
#[cfg(unix)]
#[expect(unsafe_code, reason = "the standard library ends one process only")]
fn end_group(child: &Child) {
    if let Ok(leader) = libc::pid_t::try_from(child.id()) {
        // SAFETY: a plain call; the group's number is its leader's, which is not collected yet.
        unsafe { libc::kill(-leader, libc::SIGKILL) };
    }
}

#[cfg(not(unix))]
fn end_group(_child: &Child) {}
