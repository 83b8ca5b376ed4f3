//! The shelf on a disk.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

mod faults;
mod folder;
mod kinds;
mod laws;
mod many;
mod rights;
