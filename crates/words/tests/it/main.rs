//! What sentences must never look like.

mod files;
mod findings;
mod papers;
mod sweep;
mod translation;
