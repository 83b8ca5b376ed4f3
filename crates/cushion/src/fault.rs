//! What can be wrong with a layout, and where.

use std::fmt;

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
    /// The stock crown.
    StockCrown,
}

/// How much a fault matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Severity {
    /// No pattern can be drawn, or it must not be used.
    Error,
    /// A pattern is drawn; somebody should look.
    Remark,
}

/// One thing that is wrong with a layout at one size.
#[derive(Clone, Debug, PartialEq)]
pub struct Fault {
    /// What it is about.
    pub subject: Subject,
    /// The size at which it shows; none where it shows at any.
    pub size: Option<Size>,
    /// What is wrong.
    pub kind: FaultKind,
}

/// The kinds of fault, which are the rules for a layout.
#[derive(Clone, Debug, PartialEq)]
#[non_exhaustive]
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
    /// The layout has more points or seams than any cushion needs.
    TooMuch {
        /// The most of each.
        most: usize,
    },
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
    /// A seed on the centre line has a number for each side, or one off it has a single number
    /// in a mirrored layout.
    NumbersForSides,
    /// An id says one side and lies on the other.
    SideInName,
    /// The seams meet in another order than at the first size.
    OtherFaces,
    /// A compartment is narrower than a cell.
    NarrowerThanCell(Length),
    /// A compartment is narrower than a hand.
    NarrowerThanHand(Length),
    /// The stock crown is more than an eighth of the largest compartment's width.
    CrownTooHigh {
        /// The crown asked for.
        crown: Length,
        /// The most that the small-slope model bears.
        most: Length,
    },
    /// The size is not one that the layout is made in.
    NotMade,
}

impl FaultKind {
    /// Returns how much it matters.
    #[must_use]
    pub fn severity(&self) -> Severity {
        match self {
            Self::NarrowerThanHand(_) | Self::CrownTooHigh { .. } | Self::NotMade => {
                Severity::Remark
            }
            _ => Severity::Error,
        }
    }
}

impl fmt::Display for FaultKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::UnknownPoint(name) => write!(f, "no point is called `{name}`"),
            Self::UnknownSeam(name) => write!(f, "no seam is called `{name}`"),
            Self::Circular => write!(f, "this point lies on a seam that needs the point first"),
            Self::NotOnSeam { seam, point } => {
                write!(f, "the seam `{seam}` does not run through `{point}` here")
            }
            Self::BeyondSeam => write!(f, "this point lies beyond the stretch that it counts on"),
            Self::SamePlace(other) => write!(f, "this point lies on the point `{other}`"),
            Self::TooMuch { most } => write!(f, "there are more than {most} points or seams"),
            Self::NoOutline => write!(f, "no seam is called `outline`"),
            Self::TooFewPoints { least } => {
                write!(f, "this seam needs {least} points or more")
            }
            Self::OpenOutline => write!(f, "the outline does not close"),
            Self::NoRoomToRound => write!(f, "this rounding has no room"),
            Self::TooMuchBow => write!(f, "this seam bows out by more than half a circle"),
            Self::EndsNowhere(point) => {
                write!(f, "this seam ends at `{point}`, where no other seam is")
            }
            Self::Crossing { other, at } => write!(
                f,
                "this seam meets the seam `{other}` near x {:.0}, y {:.0} mm, where they share no point",
                at.x, at.y
            ),
            Self::Outside => write!(f, "this seam lies outside the outline"),
            Self::WrongHalf => write!(f, "this lies on the client's left, which is made by mirror"),
            Self::SeedOutside => write!(f, "this seed lies in no compartment"),
            Self::SharedFace(other) => write!(f, "this seed lies in the compartment `{other}`"),
            Self::UnclaimedFace { at } => {
                write!(f, "no compartment claims the space around x {:.0}, y {:.0} mm", at.x, at.y)
            }
            Self::SameNumber(number) => write!(f, "the number {number} is given twice"),
            Self::NumbersForSides => {
                write!(f, "the numbers do not fit the sides that this seed stands for")
            }
            Self::SideInName => {
                write!(f, "the id names one side and the compartment lies on the other")
            }
            Self::OtherFaces => {
                write!(f, "the seams enclose other compartments than at the first size")
            }
            Self::NarrowerThanCell(width) => {
                write!(f, "at {:.0} mm, this compartment is narrower than a cell", width.to_mm())
            }
            Self::NarrowerThanHand(width) => {
                write!(f, "at {:.0} mm, this compartment is narrower than a hand", width.to_mm())
            }
            Self::CrownTooHigh { crown, most } => write!(
                f,
                "a crown of {:.0} mm is more than an eighth of the width; the model is good to {:.0} mm",
                crown.to_mm(),
                most.to_mm()
            ),
            Self::NotMade => write!(f, "this is not a size that the layout is made in"),
        }
    }
}

impl FaultKind {
    /// Returns what to do about it.
    #[must_use]
    pub fn advice(&self) -> &'static str {
        match self {
            Self::UnknownPoint(_) => "add it to [points], or correct the name",
            Self::UnknownSeam(_) => "add it to [seams], or correct the name",
            Self::Circular => "place one of the two by its coordinates",
            Self::NotOnSeam { .. } => "name two points of the seam, in the order in which it runs",
            Self::BeyondSeam => "keep `at` between 0 % and 100 %",
            Self::SamePlace(_) => "use one point for both, or move one of them",
            Self::TooMuch { .. } => "take away those that no compartment needs",
            Self::NoOutline => "add a seam called `outline` that goes around the cushion",
            Self::TooFewPoints { .. } => "add points to `through`",
            Self::OpenOutline => {
                "set `closed = true`; in a mirrored layout, begin and end on the centre line"
            }
            Self::NoRoomToRound => {
                "take a smaller radius, and round only between straight stretches"
            }
            Self::TooMuchBow => "take a smaller `bow`",
            Self::EndsNowhere(_) => "end it at a point on another seam, as `{ on = ... }` makes",
            Self::Crossing { .. } => {
                "put a point on one of them there and lead the other through it"
            }
            Self::Outside => "move its points inside the outline",
            Self::WrongHalf => "write it with x of 0 % or more",
            Self::SeedOutside => "move the seed well inside the compartment",
            Self::SharedFace(_) => "move one seed, or part the two by a seam",
            Self::UnclaimedFace { .. } => "add a compartment with its seed there",
            Self::SameNumber(_) => "give each compartment a number of its own",
            Self::NumbersForSides => {
                "write `number = 3` for a seed on the centre line and `numbers = { left = 1, right = 2 }` for one beside it"
            }
            Self::SideInName => "left and right are the client's: left is negative x",
            Self::OtherFaces => "use per cent where points come too close at some size",
            Self::NarrowerThanCell(_) => "widen it: no cell would go in",
            Self::NarrowerThanHand(_) => "widen it where you can: a hand must reach in to fill it",
            Self::CrownTooHigh { .. } => "lower `stock_crown`",
            Self::NotMade => "take a size from the layout's list, or add this one to it",
        }
    }
}
