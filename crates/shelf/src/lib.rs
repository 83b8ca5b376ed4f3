//! The shelf on a disk: files in folders, changed whole or not at all.
//!
//! [`DiskShelf`] keeps the promises of [`casework::Shelf`] by these means. A `put` locks every
//! folder that it changes, so no two of them, of whatever thread or process, overlap. It compares
//! each file with what the change replaces, writes all new bytes beside their places and down to
//! the disk, and only then gives them their names. What fails is taken back. Whoever is killed
//! leaves each file as it was or as it was to be, and beside them files whose name begins with
//! `.seatwright-`, which the next `put` in that folder sweeps: the lock tells that nobody is using
//! them.
//!
//! Editors take no lock. A file is compared once more directly before it gets its new bytes, so
//! what an editor saves is lost only if that happens in the microseconds between. Where a `put`
//! changes several files and its process is killed between two names, some files are new and some
//! are old; they change in the order given, removals last.

mod attributes;
mod disk;
mod folders;
mod lock;
mod put;
mod reading;
mod target;
mod watching;
mod why;

pub use crate::disk::DiskShelf;
pub use crate::why::why;

/// How the names of files begin that a `put` keeps for a while.
const OURS: &str = ".seatwright-";
