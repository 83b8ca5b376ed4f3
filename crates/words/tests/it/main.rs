//! What sentences must never look like.

mod papers;
