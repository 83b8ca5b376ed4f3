//! Finds, runs and checks plugins.
//!
//! A plugin runs in a child process of the same program, with limits on time, memory, output and
//! open files; the child dies with its parent, and what it may have started ends with it. Each
//! question has a child of its own, which is started and awaited on the thread that asks: nothing
//! is kept between questions, so any thread may ask. This protects from a plugin's faults: it may
//! crash, hang or write nonsense, and the host says so in a sentence. It does **not** protect
//! from malice: a plugin is a program, and can do what the person who runs it can do. So nothing
//! is run that the person did not name or install.
//!
//! The answer of a plugin is layout text, read by the same parser as any layout file.

mod child;
mod description;
mod fault;
mod group;
mod in_process;
mod limits;
mod places;
mod protocol;
mod running;
mod source;

pub use crate::child::{CHILD_ARGUMENT, child_main};
pub use crate::description::{Description, Parameter};
pub use crate::fault::{Fault, FaultKind, Whose};
pub use crate::limits::Limits;
pub use crate::places::Places;
pub use crate::running::Isolation;
pub use crate::source::{DrawRequest, Drawn, PREFIX, Plugins, read_answer};
