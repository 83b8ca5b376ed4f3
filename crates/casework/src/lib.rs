//! One client's case as work: what the front ends of the program share.
//!
//! Nothing here knows the file system, the clock, a terminal, arguments, exit codes, or that
//! plugins exist. Files come and go through a [`Shelf`], layouts through
//! `cushion::LayoutSource`, the date as an argument; everything works from several threads.

pub mod shelf;

pub use crate::shelf::{BytesDigest, Change, Doing, NoFile, Shelf, ShelfError, Was, Why};
