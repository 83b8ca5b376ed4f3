//! What can be found about a value by itself.

use cushion::SizeError;

use super::ids;
use crate::question::Question;

/// The types of TOML.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Type {
    /// In quotes.
    Text,
    /// With or without a point.
    Number,
    /// Without a point.
    Whole,
    /// True or false.
    Truth,
    /// A day.
    Date,
    /// In square brackets.
    List,
    /// In braces or under a heading.
    Table,
}

/// What a length that cannot be right looks like.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Looks {
    /// Centimetres in a file of millimetres.
    Centimetres,
    /// Inches in a file of millimetres.
    Inches,
    /// Millimetres in a file of inches.
    Millimetres,
    /// Nothing known.
    Wrong,
}

/// The unit in which a file gives lengths.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthUnit {
    /// Millimetres.
    Millimetres,
    /// Inches.
    Inches,
}

/// About a value by itself.
#[derive(Clone, Debug, PartialEq)]
pub enum ValueFinding {
    /// It is of another type than is wanted.
    Type {
        /// What it is.
        found: Type,
        /// What is wanted.
        wanted: Type,
    },
    /// A number in words: with a unit, a comma or quotes; with what to write, where it is clear.
    NumberInWords {
        /// As written.
        written: String,
        /// What to write.
        write: Option<String>,
    },
    /// NaN or infinite.
    NotFinite,
    /// A length that cannot be right.
    Length {
        /// Of what.
        question: Question,
        /// As written.
        number: f64,
        /// In which unit.
        unit: LengthUnit,
        /// What it looks like.
        looks: Looks,
    },
    /// A number out of the range of its question.
    Range {
        /// Of what.
        question: Question,
        /// As written.
        number: f64,
    },
    /// A whole number out of range.
    Whole {
        /// As written.
        written: String,
        /// The least.
        least: i64,
        /// The most.
        most: i64,
    },
    /// Not a day.
    Date(String),
    /// A text of nothing.
    Empty,
    /// A line break or another control character.
    Control,
    /// A character that no font of the papers has.
    Unprintable(char),
    /// A character of a script that is written from right to left, which no paper sets yet.
    RightToLeft(char),
    /// Not the word that must stand here.
    Word {
        /// The word.
        wanted: &'static str,
        /// As written.
        written: String,
    },
}

/// About a value that is a word.
#[derive(Clone, Debug, PartialEq)]
pub enum WordFinding {
    /// Not a name; with what is meant, perhaps.
    Name(String, Option<String>),
    /// None of the words of its question; with what is meant, perhaps.
    Choice {
        /// Of what.
        question: Question,
        /// As written.
        written: String,
        /// What is meant.
        near: Option<&'static str>,
    },
    /// Not a client's code.
    Code(String),
    /// A client's code that a name may be in.
    NameInCode(String),
    /// Not a telephone number.
    Phone(String),
    /// Not a size; with what is meant, perhaps.
    Size(SizeError, Option<String>),
}

impl LengthUnit {
    /// One of it in mm; exact by definition.
    #[must_use]
    pub fn in_mm(self) -> f64 {
        match self {
            Self::Millimetres => 1.0,
            Self::Inches => 25.4,
        }
    }
}

ids! {
    ValueFinding {
        Type => "value-type",
        NumberInWords => "value-number-in-words",
        NotFinite => "value-not-finite",
        Length => "value-length",
        Range => "value-range",
        Whole => "value-whole",
        Date => "value-date",
        Empty => "value-empty",
        Control => "value-control",
        Unprintable => "value-unprintable",
        RightToLeft => "value-right-to-left",
        Word => "value-word",
    }
    WordFinding {
        Name => "word-name",
        Choice => "word-choice",
        Code => "word-code",
        NameInCode => "word-name-in-code",
        Phone => "word-phone",
        Size => "word-size",
    }
}
