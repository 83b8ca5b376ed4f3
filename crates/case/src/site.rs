//! Named places on the body's underside.

use cushion::Side;

/// The names of places. Left and right are the client's.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SiteName {
    /// Under an ischial tuberosity.
    SeatBone(Side),
    /// Under the coccyx.
    Coccyx,
    /// Under a greater trochanter.
    Trochanter(Side),
    /// Under the middle of a thigh.
    Thigh(Side),
}

impl SiteName {
    /// All names, in the order of reports.
    pub const ALL: [Self; 7] = [
        Self::SeatBone(Side::Left),
        Self::SeatBone(Side::Right),
        Self::Coccyx,
        Self::Trochanter(Side::Left),
        Self::Trochanter(Side::Right),
        Self::Thigh(Side::Left),
        Self::Thigh(Side::Right),
    ];

    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 7] = {
        let mut words = [(Self::Coccyx, ""); 7];
        let mut at = 0;
        while at < words.len() {
            words[at] = (Self::ALL[at], Self::ALL[at].id());
            at += 1;
        }
        words
    };

    /// The side that it is on; none in the middle.
    #[must_use]
    pub const fn side(self) -> Option<Side> {
        match self {
            Self::SeatBone(side) | Self::Trochanter(side) | Self::Thigh(side) => Some(side),
            Self::Coccyx => None,
        }
    }

    /// Finds a name as reports call it.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|name| name.id() == id)
    }

    /// How reports call it.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::SeatBone(Side::Left) => "left-seat-bone",
            Self::SeatBone(Side::Right) => "right-seat-bone",
            Self::Coccyx => "coccyx",
            Self::Trochanter(Side::Left) => "left-trochanter",
            Self::Trochanter(Side::Right) => "right-trochanter",
            Self::Thigh(Side::Left) => "left-thigh",
            Self::Thigh(Side::Right) => "right-thigh",
        }
    }
}
