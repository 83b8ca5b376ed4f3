//! What can be wrong with a layout, and where.

use kurbo::Point;

use crate::{Length, Name, Size};

/// The written thing that a fault is about.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Subject {
    /// The layout as a whole.
    Layout,
    /// A named point.
    Point(Name),
    /// A named seam.
    Seam(Name),
    /// A compartment rule.
    Compartment(Name),
    /// The list of sizes.
    Sizes,
    /// The size at this place in the list, from 0.
    MadeSize(usize),
    /// The stock crown.
    StockCrown,
}

/// What a layout lists.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Listed {
    /// Points.
    Points,
    /// Seams.
    Seams,
    /// Points that seams run through, each as often as it is named.
    PointsOfSeams,
    /// Compartments.
    Compartments,
    /// Sizes.
    Sizes,
}

/// How much a fault matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// No pattern can be drawn, or it must not be used.
    Error,
    /// A pattern is drawn; somebody should look.
    Remark,
}

/// One thing that is wrong with a layout.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// What it is about.
    pub subject: Subject,
    /// The sizes at which it shows; empty where it shows at any.
    pub sizes: Vec<Size>,
    /// What is wrong.
    pub kind: FaultKind,
}

/// The kinds of fault, which are the rules for a layout.
#[derive(Clone, Debug, PartialEq)]
pub enum FaultKind {
    /// A name is used that no point has.
    UnknownPoint(Name),
    /// A name is used that no seam has.
    UnknownSeam(Name),
    /// A point lies on a seam that depends on the point.
    Circular,
    /// A point on a seam counts between points that the seam does not run through in that order.
    NotOnSeam {
        /// The seam.
        seam: Name,
        /// The name that is not there, or comes too early.
        point: Name,
    },
    /// A point on a seam lies beyond the two between which it counts.
    BeyondSeam,
    /// Two points lie on one place.
    SamePlace(Name),
    /// The layout has more of something than any cushion needs.
    TooMuch {
        /// Of what.
        of: Listed,
        /// The most.
        most: usize,
    },
    /// A seam runs through a point twice, other than to end where it began.
    TwiceThrough(Name),
    /// No seam runs through a point.
    UnusedPoint,
    /// No seam is called `outline`.
    NoOutline,
    /// A seam runs through fewer points than its shape needs.
    TooFewPoints {
        /// The least number.
        least: usize,
    },
    /// The outline does not return to where it began.
    OpenOutline,
    /// A rounding has no room, or does not stand between straight stretches.
    NoRoomToRound,
    /// An arc bows out farther than half a circle.
    TooMuchBow,
    /// A seam ends where no other seam is.
    EndsNowhere(Name),
    /// Two seams cross, or touch, at a place that is not a point of both.
    Crossing {
        /// The other seam.
        other: Name,
        /// Where, in millimetres.
        at: Point,
    },
    /// A seam lies outside the outline.
    Outside,
    /// The outline reaches beyond the size.
    BeyondSize {
        /// By how much, at most.
        by: Length,
        /// Where, in millimetres.
        at: Point,
    },
    /// In a mirrored layout, a point or seed lies on the half that is made.
    WrongHalf,
    /// A seed lies in no face, or on a seam.
    SeedOutside,
    /// A seed lies in a face that another compartment claims too.
    SharedFace(Name),
    /// A face is claimed by no seed.
    UnclaimedFace {
        /// A point in it, in millimetres.
        at: Point,
    },
    /// Two compartments have one number.
    SameNumber(u8),
    /// A number is left out between others.
    MissingNumber(u8),
    /// A seed on the centre line has a number for each side, or one off it has a single number
    /// in a mirrored layout.
    NumbersForSides,
    /// An id says one side and lies on the other.
    SideInName,
    /// The seams meet in another order than at the first size.
    OtherFaces,
    /// A compartment is narrower than a cell everywhere.
    NarrowerThanCell {
        /// The number of the compartment.
        number: u8,
        /// The width of its widest place.
        width: Length,
        /// The edge of the cell.
        cell: Length,
    },
    /// A compartment is narrower than a hand everywhere.
    NarrowerThanHand {
        /// The number of the compartment.
        number: u8,
        /// The width of its widest place.
        width: Length,
    },
    /// A part of a compartment is narrower than a hand.
    NarrowArm {
        /// The number of the compartment.
        number: u8,
        /// The width of the part.
        width: Length,
        /// Where, in millimetres.
        at: Point,
    },
    /// A corner of a compartment is sharper than 30 degrees.
    AcuteCorner {
        /// The number of the compartment.
        number: u8,
        /// The angle in degrees.
        degrees: f64,
        /// Where, in millimetres.
        at: Point,
    },
    /// The stock crown is not above the walls.
    NoCrown(Length),
    /// The stock crown is more than an eighth of the widest compartment's width.
    CrownTooHigh {
        /// The crown asked for.
        crown: Length,
        /// The most that the small-slope model bears.
        most: Length,
    },
    /// The stock crown is more than a quarter of the widest compartment's width.
    CrownBeyondModel {
        /// The crown asked for.
        crown: Length,
        /// The most that the small-slope model bears.
        most: Length,
    },
    /// In the stock fill a compartment rises by more than an eighth of its width.
    StockTooSteep {
        /// The number of the compartment.
        number: u8,
        /// By how much it rises.
        crown: Length,
        /// The most that the small-slope model bears there.
        most: Length,
    },
    /// A size is rated for more weight than one that is as wide and as deep or larger.
    RatedAboveLarger(Size),
    /// The size is not one that the layout is made in.
    NotMade,
}

impl FaultKind {
    /// Returns how much it matters.
    #[must_use]
    pub fn severity(&self) -> Severity {
        match self {
            Self::NarrowerThanHand { .. }
            | Self::NarrowArm { .. }
            | Self::AcuteCorner { .. }
            | Self::CrownTooHigh { .. }
            | Self::StockTooSteep { .. }
            | Self::RatedAboveLarger(_)
            | Self::MissingNumber(_)
            | Self::UnusedPoint
            | Self::NotMade => Severity::Remark,
            _ => Severity::Error,
        }
    }
}
