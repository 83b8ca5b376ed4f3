//! support.
