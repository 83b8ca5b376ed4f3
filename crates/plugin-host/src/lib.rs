//! Finds, runs and checks plugins.
//!
//! A plugin runs in a child process of the same program, with limits on time, memory, output and
//! open files; the child dies with its parent, and what it may have started ends with it. Each
//! question has a child of its own, which is started and awaited on the thread that asks: nothing
//! is kept between questions, so any thread may ask. This protects from a plugin's faults: it may
//! crash, hang or write nonsense, and the host says so. It does **not** protect
//! from malice: a plugin is a program. So nothing is run that the person did not name or install,
//! and nothing from a folder that another user may write to.
//!
//! What is left: on Linux a child gains no new rights, and where the kernel has landlock it writes
//! nowhere but in its scratch folder, which is removed, and opens no connection. It can read what
//! the person can read. Without landlock it can make empty files, though none with anything in it.
//! A process of its own that leaves the child's group by `setsid` outlives it, under the same
//! limits. Where this program is killed, an empty scratch folder stays among the temporary files.
//!
//! The answer of a plugin is layout text, read by the same parser as any layout file.

mod child;
mod description;
mod fault;
mod fence;
mod group;
mod in_process;
mod limits;
mod places;
mod protocol;
mod running;
mod source;

pub use crate::child::{CHILD_ARGUMENT, child_main};
pub use crate::description::{Description, Parameter};
pub use crate::limits::Limits;
pub use crate::places::Places;
pub use crate::running::Isolation;
pub use crate::source::{DrawRequest, Drawn, PREFIX, Plugins, read_answer};
