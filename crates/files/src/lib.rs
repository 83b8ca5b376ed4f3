//! files.
