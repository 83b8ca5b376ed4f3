//! Where a rule comes from.

/// The source of a rule or a caution.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Source {
    /// Usual, and in no source that was read.
    CommonPractice,
    /// The limits of the program's own model.
    Model,
    /// The layout's file.
    LayoutFile,
    /// The rules of sizing, each with a source of its own.
    SizingRules,
    /// Canadian SCI practice guideline.
    CanScip,
    /// Consortium for Spinal Cord Medicine, 2014.
    SpinalCordMedicine2014,
    /// Heinrichs, Kirby et al., 2020.
    Heinrichs2020,
    /// ISO 2533.
    Iso2533,
    /// Published rules for the width of a seat.
    SeatWidth,
    /// Published rules for the depth of a seat.
    SeatDepth,
}

impl Source {
    /// All of them.
    pub const ALL: [Self; 10] = [
        Self::CommonPractice,
        Self::Model,
        Self::LayoutFile,
        Self::SizingRules,
        Self::CanScip,
        Self::SpinalCordMedicine2014,
        Self::Heinrichs2020,
        Self::Iso2533,
        Self::SeatWidth,
        Self::SeatDepth,
    ];

    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::CommonPractice => "common-practice",
            Self::Model => "model",
            Self::LayoutFile => "layout-file",
            Self::SizingRules => "sizing-rules",
            Self::CanScip => "can-scip",
            Self::SpinalCordMedicine2014 => "spinal-cord-medicine-2014",
            Self::Heinrichs2020 => "heinrichs-2020",
            Self::Iso2533 => "iso-2533",
            Self::SeatWidth => "seat-width",
            Self::SeatDepth => "seat-depth",
        }
    }
}
