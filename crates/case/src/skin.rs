//! Skin: injuries past and present, feeling, and whether load can be shifted.

use cushion::Side;

use crate::{Date, SiteName};

/// Category of a pressure injury, in the terms of the international guideline.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Category {
    /// Skin whole, redness that does not blanch.
    One,
    /// Partial loss of skin.
    Two,
    /// Full loss of skin.
    Three,
    /// Full loss of tissue.
    Four,
    /// Covered, so that its depth is unknown.
    Unstageable,
    /// Suspected deep tissue injury.
    DeepTissue,
}

impl Category {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 6] = [
        (Self::One, "1"),
        (Self::Two, "2"),
        (Self::Three, "3"),
        (Self::Four, "4"),
        (Self::Unstageable, "unstageable"),
        (Self::DeepTissue, "deep tissue"),
    ];
}

/// How an injury stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Healing {
    /// Open, or getting worse.
    Open,
    /// On its way.
    Healing,
    /// Closed: a history of injury.
    Healed,
}

impl Healing {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::Open, "open"), (Self::Healing, "healing"), (Self::Healed, "healed")];
}

/// One pressure injury.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PressureInjury {
    /// Where.
    pub site: SiteName,
    /// How deep.
    pub category: Category,
    /// How it stands.
    pub state: Healing,
    /// The day on which it was seen so.
    pub seen_on: Date,
}

/// Feeling where the client sits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sensation {
    /// As usual.
    Intact,
    /// Less.
    Impaired,
    /// None.
    Absent,
}

impl Sensation {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::Intact, "intact"), (Self::Impaired, "impaired"), (Self::Absent, "absent")];

    /// The words of files for less than usual.
    pub const LESS: &[&str] = &["impaired", "absent"];

    /// Whether it is less than usual.
    #[must_use]
    pub fn is_less(self) -> bool {
        matches!(self, Self::Impaired | Self::Absent)
    }
}

/// Whether the client can take load off by themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WeightShift {
    /// For as long as needed.
    Able,
    /// Briefly, or on one side.
    Limited,
    /// Not.
    Unable,
}

impl WeightShift {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::Able, "able"), (Self::Limited, "limited"), (Self::Unable, "unable")];
}

/// The skin that is sat on.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Skin {
    /// Injuries, past and present.
    pub injuries: Vec<PressureInjury>,
    /// Feeling.
    pub sensation: Option<Sensation>,
    /// The side on which feeling is so, where it is less on one side only; it is none with usual
    /// feeling.
    pub sensation_side: Option<Side>,
    /// Shifting weight.
    pub weight_shift: Option<WeightShift>,
}

impl Skin {
    /// Whether nothing is felt at a place. The middle belongs to both sides.
    #[must_use]
    pub fn is_numb_at(&self, site: SiteName) -> bool {
        let there = self.sensation_side.zip(site.side()).is_none_or(|(own, side)| own == side);
        self.sensation == Some(Sensation::Absent) && there
    }

    /// Whether there is or was an injury under the seat bone of a side.
    #[must_use]
    pub fn ever_injured(&self, side: Side) -> bool {
        self.injuries.iter().any(|own| own.site == SiteName::SeatBone(side))
    }

    /// The sites with an injury that is not healed.
    #[must_use]
    pub fn unhealed(&self) -> Vec<SiteName> {
        let unhealed = self.injuries.iter().filter(|own| own.state != Healing::Healed);
        unhealed.map(|own| own.site).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_numb_on_one_side_is_numb_there_and_in_the_middle() {
        let skin = |sensation, sensation_side| Skin {
            sensation: Some(sensation),
            sensation_side,
            ..Skin::default()
        };
        let numb = |skin: Skin| SiteName::ALL.map(|site| skin.is_numb_at(site));
        // Seat bones, coccyx, trochanters, thighs.
        let left = [true, false, true, true, false, true, false];
        assert_eq!(numb(skin(Sensation::Absent, Some(Side::Left))), left);
        assert_eq!(numb(skin(Sensation::Absent, None)), [true; 7]);
        assert_eq!(numb(skin(Sensation::Impaired, Some(Side::Left))), [false; 7]);
        assert_eq!(numb(Skin::default()), [false; 7]);
    }
}
