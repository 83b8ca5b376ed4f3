//! What sentences must never look like.

mod files;
mod findings;
mod papers;
mod program;
mod record;
mod sweep;
mod translation;
