//! Limits of what is read; those of each key stand in the table of questions.

/// The most bytes that are read as one of our files: far more than any has.
pub const MOST_BYTES: usize = 1 << 20;
