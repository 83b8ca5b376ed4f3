//! What is drawn on a template, and what is said there.

use cushion::{Chain, Length, Name, Point};

/// What a line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Layer {
    /// Cut here.
    Cut,
    /// Sew here.
    Stitch,
    /// Brings pieces together: marks on the allowance, or across a seam line.
    Notch,
    /// An opening.
    Opening,
    /// The run of the cloth.
    Grain,
    /// The bar that marks the client's left.
    Left,
}

impl Layer {
    /// All, in the order in which they are drawn.
    pub const ALL: [Self; 6] =
        [Self::Cut, Self::Stitch, Self::Notch, Self::Opening, Self::Grain, Self::Left];

    /// The word by which files know it: letters alone.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Cut => "cut",
            Self::Stitch => "stitch",
            Self::Notch => "notch",
            Self::Opening => "opening",
            Self::Grain => "grain",
            Self::Left => "clients-left",
        }
    }
}

/// A line of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// What it is.
    pub layer: Layer,
    /// Its course.
    pub chain: Chain,
}

/// What is said on a template; others have the words.
#[derive(Clone, Debug, PartialEq)]
pub enum Says {
    /// The top, as seen from above.
    Top,
    /// The base, as seen from below: mirrored.
    Base,
    /// A wall strip.
    Wall {
        /// Its number.
        wall: usize,
        /// The compartments to its left and right hand, none outside.
        between: [Option<u8>; 2],
        /// The seam.
        seam: Name,
        /// The junctions at its ends; none of a closed way.
        ends: Option<[usize; 2]>,
        /// Its length between the stitches.
        length: Length,
    },
    /// A junction, by its number.
    Junction(usize),
    /// A wall strip, by its number alone.
    WallNumber(usize),
    /// A compartment.
    Compartment(u8),
    /// An opening into a compartment, so long.
    Opening(u8, Length),
    /// The client's left side.
    ClientsLeft,
    /// The client's right side.
    ClientsRight,
    /// The front edge.
    Front,
    /// The rear edge.
    Rear,
    /// The run of the cloth.
    Grain,
    /// Towards the top of the cushion.
    UpperEdge,
    /// Towards its base.
    LowerEdge,
}

/// Something said at a place.
#[derive(Clone, Debug, PartialEq)]
pub struct Label {
    /// The middle of its baseline.
    pub at: Point,
    /// Height of its capitals, in millimetres.
    pub height: f64,
    /// Turn of the baseline, in degrees, counter-clockwise.
    pub angle: f64,
    /// What is said.
    pub says: Says,
}
