//! What is said of files: findings about texts, questions, why work on them ends.

/// What is said of files.
pub trait FileWords {}
