//! Why nothing is planned, and why nothing can be said about checks.

use cushion::{Length, Mass, Name, Side};

use super::BodyError;

/// Why no plan is made. Nothing is planned halfway.
#[derive(Clone, Debug, PartialEq)]
pub struct PlanRefusal {
    /// The compartment that it is about, where it is about one.
    pub compartment: Option<Name>,
    /// Why.
    pub why: WhyNoPlan,
}

/// The reasons for which no plan is made.
#[derive(Clone, Debug, PartialEq)]
pub enum WhyNoPlan {
    /// The pattern has no compartment of this id; these are there.
    UnknownCompartment {
        /// The ids of the pattern.
        known: Vec<Name>,
    },
    /// Two changes are wanted for one compartment.
    TwoChanges,
    /// The change takes more cells than there are.
    FewerThanNone {
        /// Cells as supplied.
        stock: u32,
        /// The change in cells.
        change: i32,
    },
    /// No count gives the wanted crown.
    NoSuchCrown {
        /// The crown that would be needed.
        crown: Length,
    },
    /// The change is more than doubling the cells.
    MoreThanTwice {
        /// Cells as supplied.
        stock: u32,
        /// Cells that would be planned.
        planned: u32,
    },
    /// The client's measures make no body.
    NoBody(BodyError),
    /// The client is heavier than the cushion is rated for.
    TooHeavy {
        /// The client's weight.
        weight: Mass,
        /// The rating.
        rating: Mass,
    },
    /// The model knows no such body: it is assessed by hand.
    ByHand(ByHand),
}

/// What the model knows no body for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ByHand {
    /// A leg is lost at the hip: what carries on that side is not known.
    HipLoss(Side),
    /// A pelvis that is fixed in posterior tilt sits on an injured coccyx.
    FixedTiltOnCoccyx,
    /// A goal is about one side against the other, and the seat sags under the cushion.
    SideGoalOnSaggingSling,
}

impl WhyNoPlan {
    /// Whether the file is right and the wish is unsafe, rather than the file being wrong.
    #[must_use]
    pub fn is_unsafe(&self) -> bool {
        matches!(self, Self::TooHeavy { .. } | Self::ByHand(_))
    }

    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::UnknownCompartment { .. } => "unknown-compartment",
            Self::TwoChanges => "two-changes",
            Self::FewerThanNone { .. } => "fewer-than-none",
            Self::NoSuchCrown { .. } => "no-such-crown",
            Self::MoreThanTwice { .. } => "more-than-twice",
            Self::NoBody(_) => "no-body",
            Self::TooHeavy { .. } => "too-heavy",
            Self::ByHand(_) => "by-hand",
        }
    }
}

/// Why nothing can be said about checks.
#[derive(Clone, Debug, PartialEq)]
pub enum AdjustRefusal {
    /// No compartment has this number.
    NoSuchCompartment(u8),
    /// The compartment's edge cannot be reached under a sitting client.
    Unreachable(u8),
    /// The compartment has no mirror partner to compare with.
    NoPartner(u8),
    /// The client was not weighed.
    NoWeight,
    /// The client's measures make no body.
    NoBody(BodyError),
}

impl From<BodyError> for AdjustRefusal {
    fn from(error: BodyError) -> Self {
        Self::NoBody(error)
    }
}

impl AdjustRefusal {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::NoSuchCompartment(_) => "no-such-compartment",
            Self::Unreachable(_) => "unreachable",
            Self::NoPartner(_) => "no-partner",
            Self::NoWeight => "no-weight",
            Self::NoBody(_) => "no-body",
        }
    }
}
