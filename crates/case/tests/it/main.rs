//! Tests of the record: what is in the cushion, and how the fitting stands.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

mod filling;
mod record;
mod sequences;
mod standing;
