//! Limits that are not kept: the client is not to be seated so.

use cushion::{Length, Mass, Side};

/// A limit that is not kept.
#[derive(Clone, Debug, PartialEq)]
pub enum BrokenLimit {
    /// Too little cushion is left under a seat bone.
    Clearance {
        /// Under which.
        side: Side,
        /// What is expected.
        left: Length,
        /// What is needed.
        needed: Length,
    },
    /// Too little is left at the low end of what is plausible.
    LowClearance {
        /// Under which seat bone.
        side: Side,
        /// What is left at the low end, not below zero.
        left: Length,
        /// What is needed.
        needed: Length,
    },
    /// The client bottoms out over compartments of these numbers.
    BottomsOut(Vec<u8>),
    /// The client tips.
    Tips,
    /// The trunk leans on, because the cushion does not resist enough.
    LeansAway,
    /// Where the client comes to rest was not found.
    NoRest,
    /// The client does not come to rest on the stock fill, from which everything is counted.
    NoRestOnStock,
    /// The client is heavier than the cushion is rated for.
    TooHeavy {
        /// The client's weight.
        weight: Mass,
        /// The rating.
        rating: Mass,
    },
}

impl BrokenLimit {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::Clearance { .. } => "clearance",
            Self::LowClearance { .. } => "clearance-low-end",
            Self::BottomsOut(_) => "bottoms-out",
            Self::Tips => "tips",
            Self::LeansAway => "leans-away",
            Self::NoRest => "no-rest",
            Self::NoRestOnStock => "no-rest-on-stock",
            Self::TooHeavy { .. } => "too-heavy",
        }
    }
}
