//! From a client's file to the body that the mechanics knows.

use case::Client;
use cushion::{Mass, Pattern};
use support::{Parameters, Sitter};

use crate::unknowns::Setting;

/// The depth of the cushion for which the usual places of seat bones and load are given, mm.
const USUAL_DEPTH: f64 = 400.0;

/// The client as they sit on a cushion of a size.
///
/// A small cushion is for a small body: where seat bones and load are scales with its depth from
/// the usual places on 400 mm, unless the file gives the seat bones' own.
pub(crate) fn setting(client: &Client, pattern: &Pattern, weight: Mass) -> Setting {
    let mut sitter = Sitter::new(weight);
    sitter.measures = client.measures.clone();
    let scale = (pattern.size().depth().to_mm() / USUAL_DEPTH).min(1.0);
    sitter.seat_bones_forward = Some(Sitter::SEAT_BONES_FORWARD * scale);
    sitter.load_forward = Some(Sitter::LOAD_FORWARD * scale);
    Setting { parameters: Parameters::default(), sitter, cells: 1.0 }
}
