//! Why something cannot be put on paper, or drawn.

use case::{Drawn, NoPicture, NotDrawn, Trouble};
use sheets::{DocumentError, PngError, SetError};

use crate::error::WorkError;

/// Why something cannot be put on paper, or drawn.
pub(crate) fn not_drawn(what: Drawn, error: impl Into<DocumentError>) -> WorkError {
    let why = match error.into() {
        DocumentError::Set(SetError::Missing { character, text }) => {
            NotDrawn::Missing { character, text }
        }
        DocumentError::Set(SetError::Unplaced { character, text }) => {
            NotDrawn::Unplaced { character, text }
        }
        DocumentError::Set(SetError::TooWide { word, width, room }) => {
            NotDrawn::TooWide { word, width_mm: width, room_mm: room }
        }
        DocumentError::Set(SetError::Overflow { what, by }) => {
            NotDrawn::Overflow { what, by_mm: by }
        }
        DocumentError::OtherCompartments => NotDrawn::OtherCompartments,
        DocumentError::OtherSize => NotDrawn::OtherSize,
        DocumentError::OtherFill => NotDrawn::OtherFill,
    };
    WorkError::file(Trouble::NotDrawn { what, why })
}

/// Why a page is not drawn as a picture.
pub(crate) fn no_picture(error: PngError) -> NoPicture {
    match error {
        PngError::Size => NoPicture::Size,
        PngError::Svg(what) => NoPicture::NotUnderstood(what),
    }
}
