//! Limits that are not kept: the client is not to be seated so.

use cushion::{Length, Mass, Side};

use crate::{SiteName, ToldFrom};

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
    /// A site with an injury would get more pressure than it may.
    InjuredSite {
        /// Where the injury is.
        site: SiteName,
        /// Whether it has healed.
        healed: bool,
        /// By which share of what it gets on the counts that are told from.
        rise: f64,
        /// The counts that may not be made worse.
        from: ToldFrom,
    },
    /// The client is heavier than the cushion is rated for.
    TooHeavy {
        /// The client's weight.
        weight: Mass,
        /// The rating.
        rating: Mass,
    },
}

impl BrokenLimit {
    /// Whether a clinician may take counts on which it is broken, by name: what more an injury gets is
    /// weighed at the chair, against what is broken otherwise. All other limits stand.
    #[must_use]
    pub fn may_be_taken(&self) -> bool {
        matches!(self, Self::InjuredSite { .. })
    }

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
            Self::InjuredSite { .. } => "injured-site",
            Self::TooHeavy { .. } => "too-heavy",
        }
    }
}
