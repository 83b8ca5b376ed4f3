//! Tests of the record: what is in the cushion, and how the fitting stands.

mod record;
mod sequences;
mod standing;
