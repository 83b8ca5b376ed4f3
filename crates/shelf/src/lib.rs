//! The shelf on a disk: files in folders, changed whole or not at all.

mod disk;

pub use crate::disk::DiskShelf;
