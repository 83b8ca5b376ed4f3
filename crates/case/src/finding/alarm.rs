//! Alarms: what brings the client off the cushion, before any estimate.

use cushion::{Length, Side};

use crate::{Check, SiteName, SkinAnswer, UnderAnswer};

/// A finding for which the client comes off the cushion at once.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Alarm {
    /// A seat bone was felt through the cushion. A hand is never doubted in this.
    BoneFelt {
        /// Under which seat bone.
        side: Side,
        /// The clearance that was expected there; none where the model has no number.
        expected: Option<Length>,
    },
    /// The skin has a mark that stays, is broken, or looks worse.
    Mark {
        /// Where.
        site: SiteName,
        /// How it looks.
        answer: SkinAnswer,
    },
}

impl Alarm {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::BoneFelt { .. } => "bone-felt",
            Self::Mark { .. } => "mark",
        }
    }
}

impl Check {
    /// Whether this answer by itself brings the client off the cushion.
    #[must_use]
    pub fn is_alarm(&self) -> bool {
        match self {
            Self::Under { answer, .. } => *answer == UnderAnswer::BoneFelt,
            Self::Skin { answer, .. } => answer.is_alarm(),
            Self::Top { .. } | Self::Press { .. } | Self::Lower { .. } | Self::Reading { .. } => {
                false
            }
        }
    }
}
