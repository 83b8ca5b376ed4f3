//! What is said of a case: cautions, limits, goals, moves, what hands found and what follows.

/// What is said of a case.
pub trait FindingWords {}
