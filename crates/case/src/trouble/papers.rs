//! Why something cannot be put on paper, or drawn.

/// What cannot be put on paper, or drawn.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Drawn {
    /// One paper of a file.
    Paper {
        /// The paper, as its file would be named.
        name: String,
        /// The file that it is made of.
        of: String,
    },
    /// What somebody wants to write into a record.
    Words,
    /// The papers for anybody.
    Form,
    /// A pattern at true size.
    Pattern,
    /// Cuts through the cushion.
    Sections,
    /// The figure of a survey.
    SurveyFigure,
}

/// Why it cannot.
#[derive(Clone, Debug, PartialEq)]
pub enum NotDrawn {
    /// The faces have no glyph for a character.
    Missing {
        /// The character.
        character: char,
        /// The text that holds it.
        text: String,
    },
    /// The faces cannot place a character, such as a lone combining accent.
    Unplaced {
        /// The character.
        character: char,
        /// The text that holds it.
        text: String,
    },
    /// A word is wider than the place for it.
    TooWide {
        /// The word.
        word: String,
        /// Its width, in millimetres.
        width_mm: f64,
        /// The place for it, in millimetres.
        room_mm: f64,
    },
    /// A page or a place on it is full.
    Overflow {
        /// The beginning of what found no room.
        what: String,
        /// By how much it is too high, in millimetres.
        by_mm: f64,
    },
    /// The recorded plan has other compartments than the pattern.
    OtherCompartments,
    /// The recorded plan is for another size than the pattern.
    OtherSize,
    /// The stock fill is for another pattern.
    OtherFill,
}

/// Why a page is not drawn as a picture: a fault of ours.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoPicture {
    /// The picture would be empty, or larger than memory.
    Size,
    /// The page was not understood as it was meant; in the words of what reads it.
    NotUnderstood(String),
}
