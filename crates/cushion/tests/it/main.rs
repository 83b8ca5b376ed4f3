//! What layouts become, and what is said of wrong ones.

mod arranging;
mod build;
mod curves;
mod faults;
mod laws;
mod ranges;
mod widths;
