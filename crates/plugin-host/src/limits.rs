//! How much a plugin may use.

use std::time::Duration;

/// Limits of the child in which a plugin runs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// How long one answer may take.
    pub time: Duration,
    /// How much memory the child may map, in bytes.
    pub memory: u64,
    /// The most bytes of one answer.
    pub answer: usize,
    /// The most bytes that the plugin may print, to stdout and stderr together, while it runs.
    pub printed: usize,
    /// How many files the child may have open, its pipes and libraries included.
    pub files: u64,
}

impl Default for Limits {
    /// Far more than drawing a pattern takes: 5 seconds, 1 GiB, 1 MiB, 8 MiB, 64 files.
    fn default() -> Self {
        Self {
            time: Duration::from_secs(5),
            memory: 1 << 30,
            answer: 1 << 20,
            printed: 8 << 20,
            files: 64,
        }
    }
}
