//! What sizing goes by, why a size does not suit, and what a cushion means for the feet.

use cushion::{Length, Mass, Side};

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
    },
    /// The shorter thigh, less some room behind the knee.
    Depth {
        /// The depth that is wanted.
        wanted: Length,
        /// The room behind the knee.
        room: Length,
    },
}

impl SizingRule {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Width { .. } => "width",
            Self::Depth { .. } => "depth",
        }
    }

    /// Where it comes from.
    #[must_use]
    pub fn source(self) -> Source {
        match self {
            Self::Width { .. } => Source::SeatWidth,
            Self::Depth { .. } => Source::SeatDepth,
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
}
