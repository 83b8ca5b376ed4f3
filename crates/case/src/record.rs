//! The record: plans and checks, dated, as they were written down.

use std::fmt;

use cushion::{Mass, Name, Size};

use crate::{Check, Date, Move};

/// The first 16 hexadecimal digits of a SHA-256, by which a file is known again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Digest(String);

impl Digest {
    /// Returns `None` unless `text` is 16 lower-case hexadecimal digits.
    #[must_use]
    pub fn new(text: &str) -> Option<Self> {
        let digits = text.bytes().all(|byte| matches!(byte, b'0'..=b'9' | b'a'..=b'f'));
        (digits && text.len() == 16).then(|| Self(text.to_owned()))
    }

    /// The digits.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

/// A recorded count of one compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordedCount {
    /// The compartment.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells as supplied, at the time.
    pub stock: u32,
    /// Cells for this client.
    pub planned: u32,
}

/// A plan as it was recorded. Paper prints these counts and no others.
#[derive(Clone, Debug, PartialEq)]
pub struct RecordedPlan {
    /// The day.
    pub on: Date,
    /// Who recorded it.
    pub by: String,
    /// The layout, as the client file named it.
    pub layout: String,
    /// The size.
    pub size: Size,
    /// Counts in the order of the numbers.
    pub counts: Vec<RecordedCount>,
    /// The program's version.
    pub program: String,
    /// The digest of the layout's text.
    pub layout_digest: Digest,
    /// The digest of the cell's text.
    pub cell_digest: Digest,
    /// The digest of the model's parameters.
    pub parameters_digest: Digest,
    /// The plugin and its version, where one drew the pattern.
    pub drawn_by: Option<String>,
    /// Why the counts are what they are, in a sentence.
    pub why: Option<String>,
}

impl RecordedPlan {
    /// Returns the cells in the whole cushion.
    #[must_use]
    pub fn total(&self) -> u32 {
        self.counts.iter().map(|count| count.planned).sum()
    }
}

/// A fitting check: somebody sat the client on the filled cushion and looked whether it is right.
#[derive(Clone, Debug, PartialEq)]
pub struct FittingCheck {
    /// The day.
    pub on: Date,
    /// Who checked.
    pub by: String,
    /// Whether it was found right; where nothing is said, it counts as not.
    pub passed: Option<bool>,
    /// What was found, in words.
    pub found: Option<String>,
}

/// What was found on the filled cushion, and which cells were moved for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Adjustment {
    /// The day.
    pub on: Date,
    /// Who checked and moved.
    pub by: String,
    /// What was found.
    pub checks: Vec<Check>,
    /// What was moved; the counts after it are those of the next plan.
    pub moves: Vec<Move>,
    /// Why, in the words of whoever checked.
    pub why: Option<String>,
}

/// Cells counted again, by the number of the compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct Recount {
    /// The day.
    pub on: Date,
    /// Who counted.
    pub by: String,
    /// Number and cells.
    pub counts: Vec<(u8, u32)>,
}

/// The client weighed again.
#[derive(Clone, Debug, PartialEq)]
pub struct Weighed {
    /// The day.
    pub on: Date,
    /// Who weighed.
    pub by: String,
    /// The weight.
    pub weight: Mass,
}

/// One entry of the record.
#[derive(Clone, Debug, PartialEq)]
pub enum Entry {
    /// A plan.
    Plan(RecordedPlan),
    /// A fitting check of the plan before it.
    FittingCheck(FittingCheck),
    /// Checks, and cells moved for them.
    Adjustment(Adjustment),
    /// A recount.
    Recount(Recount),
    /// A weighing.
    Weighed(Weighed),
}

impl Entry {
    /// The day of the entry.
    #[must_use]
    pub fn on(&self) -> Date {
        match self {
            Self::Plan(own) => own.on,
            Self::FittingCheck(own) => own.on,
            Self::Adjustment(own) => own.on,
            Self::Recount(own) => own.on,
            Self::Weighed(own) => own.on,
        }
    }
}
