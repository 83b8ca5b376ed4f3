//! The record: what was planned, done and found, dated, as it was written down.
//!
//! Nothing in it is ever deleted: an entry that was made by mistake is withdrawn by a later one.

mod done;

use std::fmt;

use cushion::{Length, Mass, Name, Side, Size};

pub use self::done::{
    CheckOutcome, CheckPart, Cleaned, Filled, Moved, PartsChecked, Returned, SkinSeen, Withdrawn,
};
use crate::{Check, Client, Date, Move, Sides};

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

/// What a plan was expected to do, for the checks after it.
#[derive(Clone, Debug, PartialEq)]
pub struct Expected {
    /// Cushion under each seat bone.
    pub under: Sides<Length>,
    /// The side of the pelvis that is lower at the seat bones, and by how much; none where level.
    pub lower: Option<(Side, Length)>,
    /// The client's weight that it was computed for.
    pub weight: Mass,
}

/// A plan as it was recorded: a proposal, until what was done is recorded too.
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
    /// What was expected of it.
    pub expected: Option<Expected>,
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
    /// Cells that were counted in the spare bag; none where nobody counted it.
    pub spare: Option<u32>,
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
    /// A fitting check as a whole, of the plan before it.
    FittingCheck(FittingCheck),
    /// Checks, and the moves that follow from them.
    Adjustment(Adjustment),
    /// A recount.
    Recount(Recount),
    /// A weighing.
    Weighed(Weighed),
    /// What was put into the cushion.
    Filled(Filled),
    /// What was found in a cushion that came filled, counted against its fill card.
    Incoming(Filled),
    /// A fitting check in its parts.
    Checked(PartsChecked),
    /// What was moved.
    Moved(Moved),
    /// Earlier counts put in again.
    Returned(Returned),
    /// What was seen of the skin.
    Skin(SkinSeen),
    /// A cleaning.
    Cleaned(Cleaned),
    /// An earlier entry that counts for nothing.
    Withdrawn(Withdrawn),
}

impl Entry {
    /// The day of the entry, and who made it.
    fn signed(&self) -> (Date, &str) {
        match self {
            Self::Plan(own) => (own.on, &own.by),
            Self::FittingCheck(own) => (own.on, &own.by),
            Self::Adjustment(own) => (own.on, &own.by),
            Self::Recount(own) => (own.on, &own.by),
            Self::Weighed(own) => (own.on, &own.by),
            Self::Filled(own) | Self::Incoming(own) => (own.on, &own.by),
            Self::Checked(own) => (own.on, &own.by),
            Self::Moved(own) => (own.on, &own.by),
            Self::Returned(own) => (own.on, &own.by),
            Self::Skin(own) => (own.on, &own.by),
            Self::Cleaned(own) => (own.on, &own.by),
            Self::Withdrawn(own) => (own.on, &own.by),
        }
    }

    /// The day of the entry.
    #[must_use]
    pub fn on(&self) -> Date {
        self.signed().0
    }

    /// Who made it.
    #[must_use]
    pub fn by(&self) -> &str {
        self.signed().1
    }

    /// What it comes to, where it is a fitting check.
    #[must_use]
    pub fn check_outcome(&self) -> Option<CheckOutcome> {
        match self {
            Self::FittingCheck(own) => Some(match own.passed {
                Some(true) => CheckOutcome::Passed,
                Some(false) => CheckOutcome::Failed,
                None => CheckOutcome::NotFinished,
            }),
            Self::Checked(own) => Some(own.outcome()),
            _ => None,
        }
    }

    /// What it is called in files and reports.
    #[must_use]
    pub fn what(&self) -> &'static str {
        match self {
            Self::Plan(_) => "plan",
            Self::FittingCheck(_) => "fitting check",
            Self::Adjustment(_) => "adjustment",
            Self::Recount(_) => "recount",
            Self::Weighed(_) => "weighing",
            Self::Filled(_) => "filled",
            Self::Incoming(_) => "incoming check",
            Self::Checked(_) => "checked",
            Self::Moved(_) => "moved",
            Self::Returned(_) => "returned",
            Self::Skin(_) => "skin",
            Self::Cleaned(_) => "cleaned",
            Self::Withdrawn(_) => "withdrawn",
        }
    }
}

/// For each entry, whether it was withdrawn; a withdrawal can be withdrawn too.
#[must_use]
pub fn withdrawn(record: &[Entry]) -> Vec<bool> {
    let mut withdrawn = vec![false; record.len()];
    for (at, entry) in record.iter().enumerate().rev() {
        if let Entry::Withdrawn(own) = entry
            && !withdrawn[at]
            && (1..=at).contains(&own.entry)
        {
            withdrawn[own.entry - 1] = true;
        }
    }
    withdrawn
}

/// The entries that count, oldest first: without those that were withdrawn, and without the
/// withdrawals.
#[must_use]
pub fn in_force(record: &[Entry]) -> Vec<&Entry> {
    let withdrawn = withdrawn(record);
    let standing = record.iter().zip(withdrawn).filter(|(_, withdrawn)| !withdrawn);
    let standing = standing.map(|(entry, _)| entry);
    standing.filter(|entry| !matches!(entry, Entry::Withdrawn(_))).collect()
}

impl Client {
    /// The entries of the record that count, oldest first.
    #[must_use]
    pub fn in_force(&self) -> Vec<&Entry> {
        in_force(&self.record)
    }
}
