//! Cautions: what whoever sets up, carries or carries on should know.

use cushion::{Length, Side, Size};

use super::{ReCheck, SizeMisfit, Source};
use crate::{Date, SiteName};

/// How severe a caution is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum CautionSeverity {
    /// Good to know.
    Note,
    /// To be looked at before the client is seated.
    Warning,
    /// The client is not to be seated so.
    Stop,
}

impl CautionSeverity {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Note => "note",
            Self::Warning => "warning",
            Self::Stop => "stop",
        }
    }
}

/// What whoever reads a plan should know.
#[derive(Clone, Debug, PartialEq)]
pub enum Caution {
    /// A pad or a sling lies between the client and the cushion.
    Layers {
        /// A pad does.
        pad: bool,
        /// A sling does.
        sling: bool,
    },
    /// An open pressure injury.
    OpenInjury {
        /// Where.
        site: SiteName,
        /// When it was seen.
        seen_on: Date,
    },
    /// The client cannot feel, or cannot shift weight, enough to protect the skin.
    CannotProtectSkin,
    /// An obliquity that is often let be.
    SmallObliquity {
        /// The lower side.
        lower: Side,
        /// By how much at the seat bones.
        by: Length,
    },
    /// Levelling loads the low side's seat bone.
    LowSideLoaded {
        /// The lower side.
        lower: Side,
    },
    /// The client propels with a foot, and no goal lowers the front.
    FootPropels,
    /// The size does not suit the measures.
    Size(Vec<SizeMisfit>),
    /// What altitude does to sealed cells.
    Altitude(AltitudeNote),
    /// A look that is due, or overdue on the day that was asked about.
    ReCheck {
        /// When and why.
        due: ReCheck,
        /// Whether that day has come.
        now: bool,
    },
    /// A compartment would be empty.
    Empty {
        /// Its number.
        number: u8,
    },
    /// A compartment gets so few cells that its top is slack.
    FewCells {
        /// Its number.
        number: u8,
        /// Cells that it gets.
        cells: u32,
        /// The least that keeps its top tight.
        least: u32,
    },
    /// A compartment gets more cells than the estimate is good for.
    ManyCells {
        /// Its number.
        number: u8,
        /// Cells that it gets.
        cells: u32,
        /// The most that the estimate is good for.
        most: u32,
    },
    /// The layout is not made in the size, so there is no maximum user weight.
    NoRating {
        /// The size.
        size: Size,
    },
    /// No body weight is given.
    NoWeight,
    /// The body weight may no longer be true.
    OldWeight {
        /// The day of the weighing.
        weighed_on: Date,
    },
    /// The plan raises or lowers the client.
    HeightChanged,
    /// Cells are moved that walls may swallow.
    SmallMoves {
        /// The most of them.
        cells: u32,
    },
    /// The spare bag has too few cells.
    Spares {
        /// Cells that are needed from it.
        needed: u32,
        /// Cells that are in it.
        there: u32,
    },
    /// The chair has a sling seat.
    SlingSeat,
    /// The cushion is wider than the chair inside.
    WiderThanChair,
    /// The cushion is deeper than the seat.
    DeeperThanSeat,
}

/// What altitude does to sealed cells.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AltitudeNote {
    /// The client lives higher or lower than where the cells were sealed.
    Moved {
        /// Where the cells were sealed, above the sea.
        sealed: Length,
        /// Where the client lives.
        home: Length,
        /// The share by which a slack cell grows; shrinks where negative.
        grows: f64,
    },
    /// About how many cells at home do what so many did where they were sealed.
    CellsAtHome {
        /// Where they were sealed.
        sealed: u32,
        /// At home.
        home: u32,
    },
    /// What cells do in an aircraft and in the cold.
    Travel,
}

impl Caution {
    /// How reports call it.
    #[must_use]
    pub fn id(&self) -> &'static str {
        match self {
            Self::Layers { .. } => "layers",
            Self::OpenInjury { .. } => "open-injury",
            Self::CannotProtectSkin => "cannot-tell",
            Self::SmallObliquity { .. } => "small-obliquity",
            Self::LowSideLoaded { .. } => "low-side",
            Self::FootPropels => "foot",
            Self::Size(_) => "size",
            Self::Altitude(_) => "altitude",
            Self::ReCheck { .. } => "re-check",
            Self::Empty { .. } => "empty",
            Self::FewCells { .. } => "few-cells",
            Self::ManyCells { .. } => "many-cells",
            Self::NoRating { .. } => "no-rating",
            Self::NoWeight => "no-weight",
            Self::OldWeight { .. } => "old-weight",
            Self::HeightChanged => "height",
            Self::SmallMoves { .. } => "small-moves",
            Self::Spares { .. } => "spares",
            Self::SlingSeat => "sling",
            Self::WiderThanChair => "too-wide",
            Self::DeeperThanSeat => "too-deep",
        }
    }

    /// How severe it is.
    #[must_use]
    pub fn severity(&self) -> CautionSeverity {
        match self {
            Self::OpenInjury { .. } | Self::Empty { .. } => CautionSeverity::Stop,
            Self::SmallObliquity { .. }
            | Self::FootPropels
            | Self::Altitude(_)
            | Self::SmallMoves { .. }
            | Self::ReCheck { now: false, .. } => CautionSeverity::Note,
            Self::Layers { .. }
            | Self::CannotProtectSkin
            | Self::LowSideLoaded { .. }
            | Self::Size(_)
            | Self::ReCheck { now: true, .. }
            | Self::FewCells { .. }
            | Self::ManyCells { .. }
            | Self::NoRating { .. }
            | Self::NoWeight
            | Self::OldWeight { .. }
            | Self::HeightChanged
            | Self::Spares { .. }
            | Self::SlingSeat
            | Self::WiderThanChair
            | Self::DeeperThanSeat => CautionSeverity::Warning,
        }
    }

    /// Where the rule comes from.
    #[must_use]
    pub fn source(&self) -> Source {
        match self {
            Self::Layers { .. } | Self::ReCheck { .. } => Source::CanScip,
            Self::OpenInjury { .. } | Self::CannotProtectSkin => Source::SpinalCordMedicine2014,
            Self::FootPropels => Source::Heinrichs2020,
            Self::Size(_) => Source::SizingRules,
            Self::Altitude(_) => Source::Iso2533,
            Self::FewCells { .. } | Self::ManyCells { .. } | Self::SmallMoves { .. } => {
                Source::Model
            }
            Self::NoRating { .. } => Source::LayoutFile,
            Self::SmallObliquity { .. }
            | Self::LowSideLoaded { .. }
            | Self::Empty { .. }
            | Self::NoWeight
            | Self::OldWeight { .. }
            | Self::HeightChanged
            | Self::Spares { .. }
            | Self::SlingSeat
            | Self::WiderThanChair
            | Self::DeeperThanSeat => Source::CommonPractice,
        }
    }
}
