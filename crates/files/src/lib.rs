//! Text to values and back: layouts, cells and clients in TOML, reports in JSON.
//!
//! A wrong file is not an error but a list of [`Remark`]s, each with its place in the text, what
//! is wrong and what to do. Reading never stops at the first: what can be understood is read on.
//! Everything here is given text and gives text or values; it opens no file and knows no page.
//! `#[serde(...)]` is found in this crate alone.

mod answers;
mod append;
mod builtin;
mod card_code;
mod cell;
mod check;
mod client;
mod code;
mod cursor;
mod digest;
mod edit;
mod fields;
mod filling;
mod function;
mod goals;
mod kind;
mod layout;
mod limits;
mod measure;
mod order;
mod place;
mod plausible;
mod posture;
mod range_table;
mod record;
mod remark;
pub mod report;
mod schema;
mod skin;
pub mod starter;
mod survey;
mod syntax;
mod value;

pub use crate::append::append_entry;
pub use crate::builtin::{
    BUILT_IN_CELLS, BUILT_IN_LAYOUTS, BuiltIn, Text, built_in_cell, built_in_layout,
};
pub use crate::card_code::{MOST_SIGNS, card_text, read_card_text};
pub use crate::cell::read_cell;
pub use crate::check::{Checked, Known, check};
pub use crate::client::read_client;
pub use crate::digest::{digest, digest_of_parameters};
pub use crate::edit::{
    Edited, entries, has, list_of, new_errors, place_of_key, remove, reorder, set, written,
};
pub use crate::filling::with_filling;
pub use crate::kind::kind_of;
pub use crate::layout::{check_layout, layout_remarks, read_layout, revision_remark};
pub use crate::limits::MOST_BYTES;
pub use crate::order::{MOST_CUSHIONS, OrderLine, OrderPlaces, Ordered, read_order};
pub use crate::place::{place_of_change, place_of_value};
pub use crate::range_table::range_csv;
pub use crate::remark::{Place, Read, place_of};
pub use crate::schema::schema;
pub use crate::survey::{
    TableError, digest_of_survey, read_bodies, read_survey, survey_line, write_survey,
};
pub use case::text::{EditError, Remark};
pub use cushion::Severity;
