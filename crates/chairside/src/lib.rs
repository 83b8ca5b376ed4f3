//! The page beside the chair: the whole job without a command line, served to one machine.
//!
//! Start at [`Chairside`]. `casework` does the work and keeps the files; here are addresses, HTML
//! and who may ask. Nothing here knows a formula, how a file is written, or where it lies: a
//! client's file has a name on the shelf, and on the page an address made by lot.

mod answers;
mod assets;
mod errors;
mod fields;
mod following;
mod form;
mod frame;
mod gate;
mod house;
mod lot;
mod papers;
mod replies;
mod screens;
mod server;
mod steps;
#[cfg(test)]
mod tests;
mod waiting;
mod windows;

pub use crate::house::{Demo, House, Settings};
pub use crate::server::{Chairside, NotServed};
