//! Goals: what the cushion is to do for a client, in the words of the trade.

use cushion::{Length, Side};

use crate::SiteName;

/// One goal. A client's goals are in order, the most important first.
#[derive(Clone, Debug, PartialEq)]
pub struct Goal {
    /// What is wanted.
    pub want: Want,
    /// Why, in the therapist's words.
    pub because: Option<String>,
}

/// Which front sides are to be lowered.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FrontSides {
    /// One.
    One(Side),
    /// Both.
    Both,
}

impl FrontSides {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::One(Side::Left), "left"), (Self::One(Side::Right), "right"), (Self::Both, "both")];
}

/// The kinds of what can be wanted, without their numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WantKind {
    /// [`Want::CorrectObliquity`].
    CorrectObliquity,
    /// [`Want::AccommodateObliquity`].
    AccommodateObliquity,
    /// [`Want::OffLoad`].
    OffLoad,
    /// [`Want::Shelf`].
    Shelf,
    /// [`Want::LowerFront`].
    LowerFront,
    /// [`Want::MedialSupport`].
    MedialSupport,
    /// [`Want::LateralSupport`].
    LateralSupport,
    /// [`Want::EqualFirmness`].
    EqualFirmness,
    /// [`Want::NearStock`].
    NearStock,
}

impl WantKind {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 9] = [
        (Self::CorrectObliquity, "correct obliquity"),
        (Self::AccommodateObliquity, "accommodate obliquity"),
        (Self::OffLoad, "off-load"),
        (Self::Shelf, "pre-ischial shelf"),
        (Self::LowerFront, "lower front"),
        (Self::MedialSupport, "medial support"),
        (Self::LateralSupport, "lateral support"),
        (Self::EqualFirmness, "equal firmness"),
        (Self::NearStock, "near stock"),
    ];
}

/// What can be wanted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Want {
    /// Bring the pelvis level, as far as it can be.
    CorrectObliquity,
    /// Leave the pelvis as it is, fill the gap under its higher side and share the load.
    AccommodateObliquity,
    /// Take load off a site.
    OffLoad {
        /// Which.
        site: SiteName,
        /// By which share of its surface pressure at the stock fill: 0.05 to 0.6.
        share: f64,
    },
    /// A pre-ischial shelf: the cushion in front of the seat bones higher than under them.
    Shelf {
        /// By how much, unloaded.
        height: Length,
    },
    /// Lower the front on one side or both, for a foot that reaches the floor.
    LowerFront {
        /// Where.
        sides: FrontSides,
        /// By how much, unloaded.
        by: Length,
    },
    /// A ridge between the thighs.
    MedialSupport {
        /// How much higher than the compartments beside it, unloaded.
        height: Length,
    },
    /// Raised sides of the pelvis or the thighs.
    LateralSupport {
        /// How much higher than the compartments within, unloaded.
        height: Length,
    },
    /// The same fill pressure in all compartments under the client.
    EqualFirmness,
    /// As few changes from the stock fill as can be.
    NearStock,
}

impl Want {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> String {
        match self {
            Self::CorrectObliquity => "correct-obliquity".to_owned(),
            Self::AccommodateObliquity => "accommodate-obliquity".to_owned(),
            Self::OffLoad { site, .. } => format!("off-load-{}", site.id()),
            Self::Shelf { .. } => "pre-ischial-shelf".to_owned(),
            Self::LowerFront { sides: FrontSides::One(side), .. } => {
                format!("lower-front-{}", side.words())
            }
            Self::LowerFront { sides: FrontSides::Both, .. } => "lower-front".to_owned(),
            Self::MedialSupport { .. } => "medial-support".to_owned(),
            Self::LateralSupport { .. } => "lateral-support".to_owned(),
            Self::EqualFirmness => "equal-firmness".to_owned(),
            Self::NearStock => "near-stock".to_owned(),
        }
    }
}
