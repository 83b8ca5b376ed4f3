//! English.
//!
//! For carers: US grade 6 or below, short sentences, digits for counts. Left and right are always
//! named as the client's.

mod basics;
mod card;
mod cautions;
mod checks;
mod files;
mod goals;

mod papers;
mod parts;
mod reports;

use crate::Language;

/// English.
#[derive(Clone, Copy, Debug)]
pub struct English;

impl Language for English {
    fn tag(&self) -> &'static str {
        "en"
    }
}
