//! What sentences must never look like.

mod files;
mod findings;
mod papers;
mod program;
mod sweep;
mod translation;
