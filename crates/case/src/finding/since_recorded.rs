//! What changed since a plan was recorded.

use cushion::{Mass, Name};

use crate::Date;

/// What changed since a plan was recorded. The recorded counts are printed all the same.
#[derive(Clone, Debug, PartialEq)]
pub enum SinceRecorded {
    /// The text of the layout was changed.
    LayoutEdited {
        /// What messages call it.
        shown: String,
    },
    /// The text of the cell was changed.
    CellEdited {
        /// What messages call it.
        shown: String,
    },
    /// A fresh plan would have other counts.
    OtherCounts {
        /// The day of the recorded plan.
        recorded: Date,
        /// The compartments in which they differ.
        counts: Vec<OtherCount>,
    },
    /// The client's weight is another than the plan was made for.
    OtherWeight {
        /// For which it was made.
        then: Mass,
        /// The newest.
        now: Mass,
        /// The compartments in which a fresh plan would differ; none where it would not keep the
        /// limits.
        counts: Option<Vec<OtherCount>>,
    },
}

/// A count that a fresh plan would have otherwise.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherCount {
    /// The compartment.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// As a fresh plan would have it.
    pub fresh: u32,
    /// As it was recorded.
    pub recorded: u32,
}

impl SinceRecorded {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::LayoutEdited { .. } => "layout-edited",
            Self::CellEdited { .. } => "cell-edited",
            Self::OtherCounts { .. } => "other-counts",
            Self::OtherWeight { .. } => "other-weight",
        }
    }
}
