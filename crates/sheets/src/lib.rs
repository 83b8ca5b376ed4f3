//! sheets.
