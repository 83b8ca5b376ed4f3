//! What works without the program: a likely finding, what to do, and what it costs.

use cushion::{Length, Side};

/// One line of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct IfThen {
    /// What is found.
    pub found: CardFinding,
    /// What to do.
    pub then: Remedy,
    /// What it does to both sides; none where no cells are moved.
    pub cost: Option<RemedyCost>,
}

/// What the table has a line for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CardFinding {
    /// A seat bone felt through the cushion.
    BoneFelt,
    /// A mark that stays, open skin, an injury that looks worse.
    Mark,
    /// Less than the limit is felt under a seat bone.
    TooLow {
        /// Which.
        side: Side,
        /// The limit.
        limit: Length,
    },
    /// Pinched on top, with this much or more felt underneath.
    Pinched {
        /// At which seat bone.
        side: Side,
        /// The least that is felt.
        felt: Length,
    },
    /// One side of the pelvis lower than it should be.
    Lower {
        /// Which.
        side: Side,
        /// By how much more than it should be.
        by: Length,
    },
}

/// What to do about a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Remedy {
    /// The client comes off, and no cells are moved by the table: the set-up is looked at.
    ClientOffLookAtSetUp,
    /// The client comes off, and no cells are moved.
    ClientOff,
    /// Put cells from the spare bag into a compartment.
    PutIn {
        /// How many.
        cells: u32,
        /// The compartment's number.
        into: u8,
    },
    /// Pat level first; then take cells out of a compartment into the spare bag.
    TakeOut {
        /// How many.
        cells: u32,
        /// The compartment's number.
        out_of: u8,
    },
    /// Move cells from one compartment to another.
    MoveOver {
        /// How many.
        cells: u32,
        /// From this number.
        from: u8,
        /// To this number.
        to: u8,
    },
    /// More cells than a hand moves at once: a new plan.
    MoreThanAHandful,
    /// Cells would break a limit or load an injury, or the layout has no compartment of its own
    /// there: none are moved.
    NoCells,
}

/// What cells do under both seat bones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RemedyCost {
    /// The side that the line is about.
    pub side: Side,
    /// What it does there.
    pub there: CostAtBone,
    /// What it does on the other side.
    pub other: CostAtBone,
}

/// What cells do under one seat bone.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CostAtBone {
    /// Height under the bone, more where positive.
    pub height: Length,
    /// The share by which the surface pressure changes; known to a fifth of itself at best.
    pub pressure: f64,
}
