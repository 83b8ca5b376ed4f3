//! What became of a goal.

use cushion::{Length, Side};

use crate::{SiteName, Want};

/// What became of a goal.
#[derive(Clone, Debug, PartialEq)]
pub struct GoalOutcome {
    /// The goal.
    pub want: Want,
    /// The number that is wanted.
    pub wanted: GoalNumber,
    /// The number that the counts reach; none where the goal was refused.
    pub reached: Option<GoalNumber>,
    /// Whether that is near enough.
    pub met: bool,
    /// Why it is not met, or was refused; none where it is met.
    pub why: Option<Shortfall>,
}

/// The number that a goal is about.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum GoalNumber {
    /// By how much one side of the pelvis is lower, at the seat bones.
    Lower {
        /// The side; none where it is level.
        side: Option<Side>,
        /// By how much; not negative.
        by: Length,
    },
    /// The share of the surface pressure at the stock fill that is taken off, less what soft tissue
    /// takes of that; more than there was where negative.
    Relief(f64),
    /// How much higher some compartments are than others, unloaded; lower where negative.
    Higher(Length),
    /// How much lower the front is than at the stock fill, unloaded; higher where negative.
    FrontLower(Length),
    /// The greatest share by which a compartment is firmer or softer than the mean.
    Apart(f64),
    /// Cells that differ from the stock fill.
    Changed(u32),
}

/// Why a goal is not reached, or not tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shortfall {
    /// More would leave too little cushion under a seat bone.
    Clearance(Side),
    /// The compartment of this number is as full as the estimate is good for.
    Full(u8),
    /// Limits and the goals before it come first.
    Rank,
    /// Limits and the other goals need the changes.
    OtherGoals,
    /// No counts of this layout reach it within the limits.
    OutOfReach,
    /// The counts do not reach it, and no others were looked for, or only what one round may move.
    TheseCounts,
    /// More of it would be made by lowering what is beside it, which is no support.
    SeatWouldFall,
    /// A fixed pelvis is not forced level.
    FixedObliquity,
    /// Levelling would build up under an injured seat bone.
    InjuredLowSide(Side),
    /// A pelvis fixed in posterior tilt would slide over a shelf.
    FixedPosteriorTilt,
    /// A hip bends less than 90 degrees, and a shelf would roll the pelvis back.
    StiffHip,
    /// No obliquity is written down.
    NoObliquity,
    /// The site carries next to nothing already.
    NothingToTake(SiteName),
    /// The layout has no seam close in front of the seat bones.
    NoSeamForShelf,
    /// The layout has no compartment of its own at that front.
    NoFront,
    /// The layout has no compartments for it.
    NoCompartments,
    /// The layout has nothing beside it to be higher than.
    NothingBeside,
    /// The client does not come to rest on the stock fill, from which goals are counted.
    NoRestOnStock,
    /// The client does not come to rest on the counts.
    NoRest,
}

impl Shortfall {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Clearance(_) => "too-little-clearance",
            Self::Full(_) => "compartment-full",
            Self::Rank => "others-come-first",
            Self::OtherGoals => "other-goals",
            Self::OutOfReach => "out-of-reach",
            Self::TheseCounts => "these-counts",
            Self::SeatWouldFall => "seat-would-fall",
            Self::FixedObliquity => "fixed-obliquity",
            Self::InjuredLowSide(_) => "injured-low-side",
            Self::FixedPosteriorTilt => "fixed-posterior-tilt",
            Self::StiffHip => "stiff-hip",
            Self::NoObliquity => "no-obliquity",
            Self::NothingToTake(_) => "nothing-to-take",
            Self::NoSeamForShelf => "no-seam-for-shelf",
            Self::NoFront => "no-front-compartment",
            Self::NoCompartments => "no-compartments",
            Self::NothingBeside => "nothing-beside",
            Self::NoRestOnStock => "no-rest-on-stock",
            Self::NoRest => "no-rest",
        }
    }
}
