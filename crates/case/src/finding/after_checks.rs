//! What follows from checks, beside moves.

use cushion::Side;

use crate::Check;

/// What checks come to, the most urgent first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// The client comes off the cushion now.
    ClientOff,
    /// Answers do not go together: they are asked again, and nothing is moved.
    Asked,
    /// Fingers were held, and nothing is moved before it is clear why.
    Pinched,
    /// All that was found is as the plan expected: stop.
    AsPlanned,
    /// What was found is as the plan expected, but checks are missing; nothing is moved.
    AsPlannedSoFar,
    /// No move is worth making.
    Stay,
    /// Cells are to be moved.
    Move,
}

impl Verdict {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::ClientOff => "client-off",
            Self::Asked => "asked",
            Self::Pinched => "pinched",
            Self::AsPlanned => "as-planned",
            Self::AsPlannedSoFar => "as-planned-so-far",
            Self::Stay => "stay",
            Self::Move => "move",
        }
    }
}

/// Where to look in the set-up when something is wrong.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LookAt {
    /// The seat under the cushion: sag, and what lies on it.
    SeatUnder,
    /// Which way the cushion lies.
    WayRound,
    /// Left and right swapped.
    LeftAndRight,
    /// Whether the pelvis is fully back.
    PelvisBack,
    /// Cells that leak.
    Leaks,
    /// Cells that are lost.
    LostCells,
    /// Something on the cushion.
    LayersOnTop,
    /// The cover: tight, or not on right.
    Cover,
    /// Cells that are lost or in the wrong compartment.
    CellsAstray,
}

impl LookAt {
    /// After an alarm, what is quickest seen first.
    pub const AFTER_AN_ALARM: [Self; 6] = [
        Self::SeatUnder,
        Self::WayRound,
        Self::LeftAndRight,
        Self::PelvisBack,
        Self::Leaks,
        Self::LostCells,
    ];

    /// Where fingers are held, and what is felt underneath does not say why.
    pub const AFTER_A_PINCH: [Self; 3] = [Self::LayersOnTop, Self::Cover, Self::CellsAstray];

    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::SeatUnder => "seat-under-cushion",
            Self::WayRound => "way-round",
            Self::LeftAndRight => "left-and-right",
            Self::PelvisBack => "pelvis-back",
            Self::Leaks => "leaks",
            Self::LostCells => "lost-cells",
            Self::LayersOnTop => "layers-on-top",
            Self::Cover => "cover",
            Self::CellsAstray => "cells-astray",
        }
    }
}

/// Answers that are asked again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Doubt {
    /// Two answers cannot both be true.
    Contradiction(Check, Check),
    /// An answer does not go with what else is known.
    Misfit(Check),
}

impl Doubt {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Contradiction(..) => "contradiction",
            Self::Misfit(_) => "misfit",
        }
    }
}

/// What is next, and what was held back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NextStep {
    /// An under check is missing.
    CheckUnder(Side),
    /// A top check is missing.
    CheckOnTop(Side),
    /// Pinched: nothing is moved before a hand underneath tells why.
    FeelBeforeMoving(Side),
    /// Pinched: nothing is taken from this side before a hand underneath tells why.
    FeelBeforeTaking(Side),
    /// Pat level, wait, check again.
    CheckAgain,
    /// So few cells are moved that walls may swallow them.
    FeelSmallMoves,
    /// Pat level first, and check on top again.
    PatFirst,
    /// Likely overfilled: take the cells out, only if fingers are still held.
    TakeOutIfStillHeld,
    /// If fingers are still held, what is felt underneath does not say why; the cause comes first.
    CauseFirst,
    /// No cells for a mark; the fitting has failed until a clinician has seen it.
    NoCellsForAMark,
    /// Much more cushion was expected: count and look before any cell is moved.
    CountBeforeMoving,
    /// So near to the limit one reading moves nothing: feel again, and say both.
    FeelAgain(Side),
    /// Cells that were moved should have changed what is felt here, and did not: the set-up is looked
    /// at before more are moved.
    SetUpBeforeMoving(Side),
    /// The check that would tell most.
    TellsMost(Telling),
    /// Move while the client is off, and feel before they sit.
    MoveWhileOff,
    /// If the set-up is right, another size or layout, or a new plan, is needed.
    AnotherCushion,
    /// Call whoever is responsible for the seating.
    Call,
}

/// A check that would tell something.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Telling {
    /// Feeling under a seat bone.
    Under(Side),
    /// Fingers on top, at a seat bone.
    OnTop(Side),
    /// By how much which side of the pelvis is lower.
    Lower,
}

impl NextStep {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::CheckUnder(_) => "check-under",
            Self::CheckOnTop(_) => "check-on-top",
            Self::FeelBeforeMoving(_) => "feel-before-moving",
            Self::FeelBeforeTaking(_) => "feel-before-taking",
            Self::CheckAgain => "check-again",
            Self::FeelSmallMoves => "feel-small-moves",
            Self::PatFirst => "pat-first",
            Self::TakeOutIfStillHeld => "take-out-if-still-held",
            Self::CauseFirst => "cause-first",
            Self::NoCellsForAMark => "no-cells-for-a-mark",
            Self::CountBeforeMoving => "count-before-moving",
            Self::FeelAgain(_) => "feel-again",
            Self::SetUpBeforeMoving(_) => "set-up-before-moving",
            Self::TellsMost(_) => "tells-most",
            Self::MoveWhileOff => "move-while-off",
            Self::AnotherCushion => "another-cushion",
            Self::Call => "call",
        }
    }
}
