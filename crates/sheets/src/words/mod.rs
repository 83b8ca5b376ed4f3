//! The sentences of the documents, by language, kept apart from where they stand on a page.
//!
//! To add a language, write its module with the same names and let the documents choose.

pub(crate) mod english;
