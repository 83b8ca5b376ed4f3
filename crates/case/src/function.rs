//! Function and surroundings: how the client moves, and what else bears on the cushion.

use cushion::{Length, Side};

/// How the chair is moved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Propulsion {
    /// By hand.
    Hands,
    /// With one foot.
    Foot(Side),
    /// With both feet.
    BothFeet,
    /// By motor.
    Power,
    /// By somebody else.
    Pushed,
}

impl Propulsion {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 6] = [
        (Self::Hands, "hands"),
        (Self::Foot(Side::Left), "left foot"),
        (Self::Foot(Side::Right), "right foot"),
        (Self::BothFeet, "both feet"),
        (Self::Power, "power"),
        (Self::Pushed, "pushed"),
    ];
}

impl Propulsion {
    /// Whether a foot of this side reaches for the floor.
    #[must_use]
    pub fn uses_foot(self, side: Side) -> bool {
        self == Self::BothFeet || self == Self::Foot(side)
    }
}

/// What the client does on the cushion.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Function {
    /// How the chair is moved.
    pub propulsion: Option<Propulsion>,
    /// How the client gets on and off, in words.
    pub transfers: Option<String>,
    /// Continence, in words.
    pub continence: Option<String>,
    /// Hours of sitting in a day: 0 to 24.
    pub sitting_hours: Option<f64>,
}

/// What lies between the client and the cushion.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Layers {
    /// The outer cover, in words.
    pub cover: Option<String>,
    /// Whether there is a pad.
    pub pad: bool,
    /// Whether a lifting sling stays under the client.
    pub sling: bool,
}

/// Heights above the sea.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Altitudes {
    /// Where the cells were sealed.
    pub sealed: Option<Length>,
    /// Where the client lives.
    pub home: Option<Length>,
}
