//! What sizing goes by, what a size leaves around the client, why one does not suit, what would have
//! to be made, and what a cushion means for the feet.

use cushion::{Length, MadeSize, Mass, Side, Size};

use super::Source;

/// A rule of sizing, with what it asks of this client.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SizingRule {
    /// The hips as clothed, and some room.
    Width {
        /// The width that is wanted.
        wanted: Length,
        /// The room beside the hips, in all.
        room: Length,
        /// The narrowest and the widest that suit.
        within: [Length; 2],
    },
    /// The shorter thigh, less some room behind the knee.
    Depth {
        /// The depth that is wanted.
        wanted: Length,
        /// The room behind the knee.
        room: Length,
        /// The shallowest and the deepest that suit.
        within: [Length; 2],
    },
    /// No narrower chair than the cushion.
    ChairWidth {
        /// Inside, between the sides.
        inside: Length,
    },
    /// No shallower seat than the cushion.
    ChairDepth {
        /// From the back support to the front edge of the seat.
        inside: Length,
    },
    /// Rated for the client.
    Rating {
        /// The client's weight.
        weight: Mass,
    },
}

impl SizingRule {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Width { .. } => "width",
            Self::Depth { .. } => "depth",
            Self::ChairWidth { .. } => "chair-width",
            Self::ChairDepth { .. } => "chair-depth",
            Self::Rating { .. } => "rated-for",
        }
    }

    /// Where it comes from.
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            Self::Width { .. } => Source::SeatWidth,
            Self::Depth { .. } => Source::SeatDepth,
            Self::ChairWidth { .. } | Self::ChairDepth { .. } => Source::CommonPractice,
            Self::Rating { .. } => Source::LayoutFile,
        }
    }
}

/// What a size leaves free around a client. Negative where there is too little: nothing is cut off.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SizeMargin {
    /// Beside both hips together; each side has half of it.
    BesideHips(Length),
    /// Behind the knee of the shorter thigh.
    BehindKnee(Length),
    /// From the client's weight up to the rating.
    BelowRating(Mass),
    /// Beside the cushion in the chair, on both sides together.
    InChairWidth(Length),
    /// In front of the cushion on the seat.
    InChairDepth(Length),
}

impl SizeMargin {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::BesideHips(_) => "beside-hips",
            Self::BehindKnee(_) => "behind-knee",
            Self::BelowRating(_) => "below-rating",
            Self::InChairWidth(_) => "in-chair-width",
            Self::InChairDepth(_) => "in-chair-depth",
        }
    }
}

/// Why a made size does not suit a client.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SizeMisfit {
    /// It is narrower than the hips.
    Narrow {
        /// The hips.
        hips: Length,
    },
    /// It is wider than the hips by more than this.
    Wide {
        /// The most room.
        most: Length,
    },
    /// It leaves less than this behind the shorter leg's knee.
    Deep {
        /// The least room.
        least: Length,
    },
    /// It ends so far behind the knee.
    Shallow {
        /// From the front edge to the knee.
        short: Length,
    },
    /// It is rated for less than the client weighs.
    Rating {
        /// The rating.
        rating: Mass,
    },
    /// It is wider than the chair inside.
    WiderThanChair,
    /// It is deeper than the seat.
    DeeperThanSeat,
}

impl SizeMisfit {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Narrow { .. } => "narrower-than-hips",
            Self::Wide { .. } => "too-wide",
            Self::Deep { .. } => "too-deep",
            Self::Shallow { .. } => "too-shallow",
            Self::Rating { .. } => "rating",
            Self::WiderThanChair => "wider-than-chair",
            Self::DeeperThanSeat => "deeper-than-seat",
        }
    }
}

/// The size that would suit a client by all rules, for a supplier to be asked about. It is no
/// product: whether anybody makes it, and what it is rated for, only its maker can say.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SizeToMake {
    /// In whole millimetres, nearest to what is wanted, with the least rating in whole kilograms.
    pub made: MadeSize,
    /// The least and the greatest width in whole millimetres that suit as well.
    pub widths: [Length; 2],
    /// The least and the greatest depth in whole millimetres that suit as well.
    pub depths: [Length; 2],
}

impl SizeToMake {
    /// How reports call it.
    pub const ID: &'static str = "ask-for";
}

/// Why no size can be asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum NoSizeToMake {
    /// The hips were not measured.
    HipsNotMeasured,
    /// No thigh was measured.
    ThighsNotMeasured,
    /// The client was not weighed.
    NotWeighed,
    /// No cushion is drawn so narrow or so wide.
    WidthNotDrawn {
        /// The width that is wanted.
        wanted: Length,
    },
    /// No cushion is drawn so shallow or so deep.
    DepthNotDrawn {
        /// The depth that is wanted.
        wanted: Length,
    },
    /// What suits the hips is wider than the chair.
    ChairTooNarrow {
        /// The least width that suits the hips.
        least: Length,
        /// The chair inside.
        inside: Length,
    },
    /// What suits the thighs is deeper than the seat.
    SeatTooShallow {
        /// The least depth that suits the thighs.
        least: Length,
        /// The seat.
        inside: Length,
    },
    /// The layouts that were looked at cannot be drawn in the size that would suit.
    LayoutNotDrawn {
        /// The size.
        size: Size,
    },
}

impl NoSizeToMake {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::HipsNotMeasured => "hips-not-measured",
            Self::ThighsNotMeasured => "thighs-not-measured",
            Self::NotWeighed => "not-weighed",
            Self::WidthNotDrawn { .. } => "width-not-drawn",
            Self::DepthNotDrawn { .. } => "depth-not-drawn",
            Self::ChairTooNarrow { .. } => "chair-too-narrow",
            Self::SeatTooShallow { .. } => "seat-too-shallow",
            Self::LayoutNotDrawn { .. } => "layout-not-drawn",
        }
    }
}

/// What the cushion's height means around it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum HeightEffect {
    /// A footrest does not suit the lower leg on this cushion.
    Footrest {
        /// The client's side.
        side: Side,
        /// By how much it is too low; too high where negative.
        too_low_by: Length,
    },
    /// A foot propels: where the loaded front edge is best.
    FrontEdge {
        /// The client's side.
        side: Side,
        /// The least height above the floor.
        least: Length,
        /// The most.
        most: Length,
    },
    /// How high the client sits above the seat base, at most.
    Seated {
        /// The height.
        height: Length,
    },
}

impl HeightEffect {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Footrest { .. } => "footrest",
            Self::FrontEdge { .. } => "front-edge",
            Self::Seated { .. } => "seated-height",
        }
    }

    /// Where it comes from.
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            Self::Footrest { .. } | Self::Seated { .. } => Source::CommonPractice,
            Self::FrontEdge { .. } => Source::Heinrichs2020,
        }
    }
}
