//! What was done with a cushion, as it was recorded after it was done.

use cushion::Size;

use crate::{Check, Date, Move, SiteName, SkinAnswer, UnderAnswer};

/// Cells as they were counted into a cushion, or found in one that came filled.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// The day.
    pub on: Date,
    /// Who filled, or counted what had come.
    pub by: String,
    /// The layout and size of the cushion; none where nobody says, then it is the one planned for.
    pub cushion: Option<(String, Size)>,
    /// Number and cells of each compartment, in the order of the numbers.
    pub counts: Vec<(u8, u32)>,
    /// Cells that were counted in the spare bag; none where nobody counted it.
    pub spare: Option<u32>,
    /// By which the cells are found again when they are called back.
    pub batch: Option<String>,
    /// The serial of the cushion.
    pub serial: Option<String>,
    /// Why, in a sentence.
    pub why: Option<String>,
}

/// Cells as they were moved.
#[derive(Clone, Debug, PartialEq)]
pub struct Moved {
    /// The day.
    pub on: Date,
    /// Who moved them.
    pub by: String,
    /// The moves.
    pub moves: Vec<Move>,
    /// Why, in a sentence.
    pub why: Option<String>,
}

/// Earlier counts put in again: a new estimate until they are checked.
#[derive(Clone, Debug, PartialEq)]
pub struct Returned {
    /// The day.
    pub on: Date,
    /// Who put them in.
    pub by: String,
    /// After which entry of the record they lay in the cushion, from 1.
    pub entry: usize,
    /// Number and cells of each compartment, in the order of the numbers.
    pub counts: Vec<(u8, u32)>,
    /// Why, in a sentence.
    pub why: Option<String>,
}

/// What was seen of the skin, at any time.
#[derive(Clone, Debug, PartialEq)]
pub struct SkinSeen {
    /// The day.
    pub on: Date,
    /// Who looked.
    pub by: String,
    /// Where.
    pub site: SiteName,
    /// How it looked.
    pub answer: SkinAnswer,
}

/// An entry that was made by mistake. It stays in the record, and counts for nothing.
#[derive(Clone, Debug, PartialEq)]
pub struct Withdrawn {
    /// The day.
    pub on: Date,
    /// Who withdraws it.
    pub by: String,
    /// Which entry of the record, from 1.
    pub entry: usize,
    /// Why, in a sentence.
    pub because: String,
}

/// A cleaning, as before the cushion goes to somebody else.
#[derive(Clone, Debug, PartialEq)]
pub struct Cleaned {
    /// The day.
    pub on: Date,
    /// Who cleaned.
    pub by: String,
    /// How, or why, in a sentence.
    pub why: Option<String>,
}

/// A fitting check in its parts: somebody sat the client on the filled cushion and looked.
#[derive(Clone, Debug, PartialEq)]
pub struct PartsChecked {
    /// The day.
    pub on: Date,
    /// Who checked.
    pub by: String,
    /// What hands found; skin is looked at after 30 minutes.
    pub found: Vec<Check>,
    /// Whether a transfer was tried.
    pub transfer: bool,
    /// Whether reaching was tried.
    pub reach: bool,
    /// Whether whoever checked found it right; none where they do not say.
    pub passed: Option<bool>,
    /// Why, in a sentence.
    pub why: Option<String>,
}

/// A part of a fitting check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckPart {
    /// Fingers between a seat bone and the cushion.
    Top(cushion::Side),
    /// A hand under the cushion.
    Under(cushion::Side),
    /// The skin after 30 minutes.
    Skin,
    /// A transfer.
    Transfer,
    /// Reaching.
    Reach,
}

impl CheckPart {
    /// All that a check needs to pass.
    pub const ALL: [Self; 7] = [
        Self::Top(cushion::Side::Left),
        Self::Top(cushion::Side::Right),
        Self::Under(cushion::Side::Left),
        Self::Under(cushion::Side::Right),
        Self::Skin,
        Self::Transfer,
        Self::Reach,
    ];

    /// The parts that a check still lacks in which these answers were found, and a transfer and
    /// reaching were tried or not.
    #[must_use]
    pub fn missing(found: &[Check], transfer: bool, reach: bool) -> Vec<Self> {
        let made = |part: Self, check: &Check| match (part, check) {
            (Self::Top(side), Check::Top { side: at, .. }) => side == *at,
            // A hand that did not find the bone is to look again.
            (Self::Under(side), Check::Under { side: at, answer }) => {
                side == *at && *answer != UnderAnswer::NotFound
            }
            (Self::Skin, Check::Skin { .. }) => true,
            _ => false,
        };
        let has = |part: &Self| match part {
            Self::Transfer => transfer,
            Self::Reach => reach,
            part => found.iter().any(|check| made(*part, check)),
        };
        Self::ALL.into_iter().filter(|part| !has(part)).collect()
    }

    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Top(cushion::Side::Left) => "top-left",
            Self::Top(cushion::Side::Right) => "top-right",
            Self::Under(cushion::Side::Left) => "under-left",
            Self::Under(cushion::Side::Right) => "under-right",
            Self::Skin => "skin",
            Self::Transfer => "transfer",
            Self::Reach => "reach",
        }
    }
}

/// What a fitting check comes to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum CheckOutcome {
    /// Everything was looked at and found right.
    Passed,
    /// Something is missing, or nobody says whether it is right.
    NotFinished,
    /// Something was found wrong.
    Failed,
}

impl CheckOutcome {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Passed => "passed",
            Self::NotFinished => "not-finished",
            Self::Failed => "failed",
        }
    }
}

impl PartsChecked {
    /// The parts that were not looked at.
    #[must_use]
    pub fn missing(&self) -> Vec<CheckPart> {
        CheckPart::missing(&self.found, self.transfer, self.reach)
    }

    /// What it comes to: an alarm is never passed, and nothing is that was not wholly looked at.
    #[must_use]
    pub fn outcome(&self) -> CheckOutcome {
        if self.passed == Some(false) || self.found.iter().any(Check::is_alarm) {
            CheckOutcome::Failed
        } else if self.passed == Some(true) && self.missing().is_empty() {
            CheckOutcome::Passed
        } else {
            CheckOutcome::NotFinished
        }
    }
}
