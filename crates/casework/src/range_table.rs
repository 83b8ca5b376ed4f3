//! The printed range of a layout.

use case::Drawn;
use cushion::{Cell, Layout, RangeRow, jumps};
use sheets::{Document, RangeTable};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::not_drawn::not_drawn;
use crate::sourced::Sourced;

/// Composes the range table of a layout from its sizes, at least one.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn range_table(
    layout: &Sourced<Layout>,
    cell: &Cell,
    rows: &[RangeRow],
    edition: Edition,
) -> Result<Document, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let (jumps, digest) = (jumps(rows), layout.digest());
    let own = RangeTable {
        language,
        layout: &layout.value,
        digest: &digest,
        cell,
        rows,
        jumps: &jumps,
        date: on,
        program: PROGRAM,
    };
    let what = Drawn::Paper { name: "range table".to_owned(), of: layout.file.shown() };
    sheets::range_table(&own, paper).map_err(|error| not_drawn(what, error))
}
