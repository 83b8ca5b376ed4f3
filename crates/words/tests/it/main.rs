//! What sentences must never look like.

mod findings;
mod papers;
