//! What the code on a card says: by which counts are found again when the client's file is lost.

use std::fmt;

use cushion::Size;

use crate::{ClientCode, Digest, PlanMark};

/// What the code on a card says. No name is in it, and the client's code only where it is wanted.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CardCode {
    /// The layout: as a source of layouts knows it, else as its file names it.
    pub layout: String,
    /// By which the layout's text is known again.
    pub layout_digest: DigestHead,
    /// The cell, as its file names it.
    pub cell: String,
    /// By which the cell's text is known again.
    pub cell_digest: DigestHead,
    /// The size.
    pub size: Size,
    /// Cells in each compartment, in the order of the numbers.
    pub counts: Vec<u32>,
    /// The plan.
    pub mark: PlanMark,
    /// The serial of the cushion.
    pub serial: Option<String>,
    /// The code that stands for the client.
    pub client: Option<ClientCode>,
}

/// The first ten digits of a digest: as many as a short text has room for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DigestHead(String);

impl DigestHead {
    /// How many digits it has.
    pub const LONG: usize = 10;

    /// Returns `None` unless `text` is ten lower-case hexadecimal digits.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let digits = text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
        (digits && text.len() == Self::LONG).then(|| Self(text.to_owned()))
    }

    /// The head of a digest.
    #[must_use]
    pub fn of(digest: &Digest) -> Self {
        Self(digest.as_str()[..Self::LONG].to_owned())
    }

    /// The digits.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for DigestHead {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// Why a text is not the code of a card.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CardCodeFault {
    /// It does not begin as codes do.
    NotOne,
    /// It is written in another version of the format than the one that is read.
    OtherVersion,
    /// It has a sign that no code has.
    Sign {
        /// The sign.
        sign: char,
        /// Its place among the signs, from 1.
        at: usize,
    },
    /// It has more signs than any code.
    TooLong {
        /// How many.
        signs: usize,
    },
    /// Its last part does not go with the rest: a sign is wrong, missing or too much.
    Mistyped,
    /// It goes with its last part, and cannot be read all the same: this program did not write it.
    Unreadable,
}

/// What was found again by a code: an estimate until it is checked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Restored {
    /// The file to be.
    pub file: String,
    /// What the code says.
    pub code: CardCode,
}

impl Restored {
    /// How reports call it.
    pub const ID: &'static str = "restored-estimate";
}

/// Why papers have no code: it would be longer than a phone reads surely.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NoCardCode {
    /// How many signs it would have.
    pub signs: usize,
    /// How many it may have.
    pub most: usize,
}

impl NoCardCode {
    /// How reports call it.
    pub const ID: &'static str = "no-card-code";
}
