//! What texts are read as, and what is said of wrong ones.

#![expect(clippy::unwrap_used, reason = "a test that unwraps nothing has failed")]

use case::Said;

mod appending;
mod asking;
mod broken;
mod designs;
mod editing;
mod entries;
mod filling;
mod orders;
mod remarks;
mod right;
mod schemas;
mod starting;

/// A remark in English.
fn said_of(remark: &files::Remark) -> Said {
    words::ENGLISH.about_text(&remark.finding)
}
