//! Mistakes in a set-up that would explain what was found.

use cushion::{Length, Name};

/// A mistake that may have been made.
#[derive(Clone, Debug, PartialEq)]
pub enum Mistake {
    /// Nothing is wrong with the set-up.
    None,
    /// Left and right were swapped when it was filled.
    Swapped,
    /// The cushion lies turned round.
    TurnedRound,
    /// Many cells leak.
    Leaks,
    /// The client sits so far too far forward.
    Forward(Length),
    /// The seat under the cushion sags.
    Sag,
    /// A compartment is about a quarter short of cells.
    Short {
        /// Its number.
        number: u8,
        /// Its id.
        id: Name,
    },
}

impl Mistake {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::None => "nothing",
            Self::Swapped => "left-and-right-swapped",
            Self::TurnedRound => "turned-round",
            Self::Leaks => "leaks",
            Self::Forward(_) => "too-far-forward",
            Self::Sag => "sag",
            Self::Short { .. } => "short-of-cells",
        }
    }
}
