//! Integration tests of `casework`: work on a case over a shelf in memory.

#![expect(clippy::unwrap_used, reason = "a test that cannot go on fails")]

mod filling;
mod filling_in;
mod keys;
mod layout_files;
mod live;
mod oracles;
mod other_cushion;
mod people;
mod recording;
mod restoring;
mod stopping;
