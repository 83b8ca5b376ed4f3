//! What texts are read as, and what is said of wrong ones.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

mod appending;
mod asking;
mod broken;
mod editing;
mod remarks;
mod right;
mod schemas;
mod starting;
