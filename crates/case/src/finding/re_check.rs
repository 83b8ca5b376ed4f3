//! When the set-up is looked at again, and why.

use cushion::{Length, Mass, Side};

use crate::Date;

/// When to look again, and why.
#[derive(Clone, Debug, PartialEq)]
pub struct ReCheck {
    /// The day by which.
    pub by: Date,
    /// Why, the most urgent first.
    pub because: Vec<WhyReCheck>,
}

/// Why the set-up is looked at again.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum WhyReCheck {
    /// The first look after a fitting of this day.
    AfterFitting(Date),
    /// The longest time after the last look, of this day.
    AfterLastLook(Date),
    /// The review is set for this day.
    Review(Date),
    /// The weight changed since the plan.
    Weight {
        /// At the plan.
        then: Mass,
        /// The newest.
        now: Mass,
        /// The day of the plan.
        plan: Date,
    },
    /// A compartment loses cells.
    Losing {
        /// Its number.
        number: u8,
        /// Cells that were counted last.
        cells: u32,
        /// Cells that were planned.
        planned: u32,
    },
    /// Less and less is felt under a seat bone.
    Clearance {
        /// Which.
        side: Side,
        /// What was felt last.
        felt: Length,
    },
}

impl WhyReCheck {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::AfterFitting(_) => "after-fitting",
            Self::AfterLastLook(_) => "after-last-look",
            Self::Review(_) => "review",
            Self::Weight { .. } => "weight-changed",
            Self::Losing { .. } => "losing-cells",
            Self::Clearance { .. } => "falling-clearance",
        }
    }
}
