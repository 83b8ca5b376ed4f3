//! What the documents say, where it stands, and how it is written.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

mod code;
mod documents;
mod draft;
mod exporters;
mod extras;
mod gauge_and_letter;
mod measuring_form;
mod papers;
mod pictures;
mod standing;
mod sweep;
mod text;
