//! fitting.
