//! What layouts become, and what is said of wrong ones.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

mod arranging;
mod build;
mod curves;
mod faults;
mod laws;
mod widths;
