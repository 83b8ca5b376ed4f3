//! The shelf on a disk.

mod faults;
mod folder;
mod kinds;
mod laws;
mod many;
mod rights;
