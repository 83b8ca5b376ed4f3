//! Why no client's file is made of the code on a card.

use cushion::Size;

use crate::{CardCodeFault, Digest, DigestHead};

/// Why no client's file is made of the code on a card.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotRestored {
    /// The text is no code that checks.
    Code(CardCodeFault),
    /// A file cannot be read as a PDF.
    NoPdf {
        /// The file.
        file: String,
    },
    /// A PDF has no code attached to it.
    NothingAttached {
        /// The file.
        file: String,
    },
    /// The layout or the cell that is needed is not there.
    Needed {
        /// Which of the two.
        part: CodePart,
        /// How it is called.
        name: String,
        /// How its digest begins.
        head: DigestHead,
    },
    /// The layout or the cell that is there has another text.
    OtherText {
        /// Which of the two.
        part: CodePart,
        /// How it is called.
        name: String,
        /// How the digest begins that is needed.
        head: DigestHead,
        /// What is there.
        there: String,
        /// Its digest.
        digest: Digest,
    },
    /// There are other compartments than counts.
    OtherCompartments {
        /// The layout.
        layout: String,
        /// The size.
        size: Size,
        /// How many counts there are.
        counts: usize,
        /// How many compartments.
        compartments: usize,
    },
    /// The check word does not belong to layout, size, cell and counts.
    OtherWord {
        /// The check word in the code.
        word: String,
    },
    /// The cushion at hand has another serial than the one of the code.
    OtherSerial {
        /// On the cushion.
        given: String,
        /// In the code.
        coded: String,
    },
    /// The serial of the cushion at hand cannot be compared: the code has none.
    NoSerial {
        /// On the cushion.
        given: String,
    },
}

/// What a code needs beside it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CodePart {
    /// The layout.
    Layout,
    /// The cell.
    Cell,
}
