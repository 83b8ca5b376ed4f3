//! What languages say of values.

mod files;
mod sweep;
