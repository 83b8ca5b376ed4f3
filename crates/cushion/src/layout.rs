//! A layout: the rules by which a pattern is drawn at any size.

use kurbo::Point;

use crate::{Class, Length, Mass, Name, Purpose, Rim, Size, Words};

/// A share of some whole plus a fixed number of millimetres.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Measure {
    /// Share of the whole; 1 is all of it.
    pub share: f64,
    /// Millimetres added.
    pub mm: f64,
}

impl Measure {
    /// Returns the millimetres where the whole is `whole_mm`.
    #[must_use]
    pub fn of(self, whole_mm: f64) -> f64 {
        self.share * whole_mm + self.mm
    }
}

/// A place on the cushion: x of the width from the centre line, y of the depth from the rear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// To the client's right of the centre line, of the width.
    pub x: Measure,
    /// Forward of the rear edge, of the depth.
    pub y: Measure,
}

impl Spot {
    /// Returns the point in millimetres at one size.
    #[must_use]
    pub fn at(self, size: Size) -> Point {
        Point::new(self.x.of(size.width().to_mm()), self.y.of(size.depth().to_mm()))
    }
}

/// How a named point is placed.
#[derive(Clone, Debug, PartialEq)]
pub enum PointRule {
    /// At a spot; a seam that bends there is rounded with the radius.
    Spot {
        /// Where.
        spot: Spot,
        /// Radius of the rounding.
        round: Option<Length>,
    },
    /// On a seam, between two of the points that it runs through.
    On {
        /// The seam.
        seam: Name,
        /// Where counting begins.
        from: Name,
        /// Where counting ends.
        to: Name,
        /// How far, of the length along the seam between the two.
        at: Measure,
    },
}

/// How a seam runs between its points.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SeamShape {
    /// Straight from point to point.
    Straight,
    /// A true arc from point to point, whose middle stands off the straight way by so much, of
    /// the straight length: to the left hand where positive, to the right where negative.
    Bow(Measure),
    /// One smooth curve through all its points.
    Curve,
}

/// A seam: a chain through named points.
#[derive(Clone, Debug, PartialEq)]
pub struct SeamRule {
    /// How the layout calls it; the outer one is called `outline`.
    pub name: Name,
    /// The points in order.
    pub through: Vec<Name>,
    /// How it runs between them.
    pub shape: SeamShape,
    /// Whether it returns from the last point to the first.
    pub closed: bool,
}

impl SeamRule {
    /// What the outer seam is called.
    pub const OUTLINE: &str = "outline";
}

/// The numbers that a compartment rule gives out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Numbers {
    /// One compartment.
    One(u8),
    /// A compartment on each side of a mirrored layout.
    Pair {
        /// The client's left one.
        left: u8,
        /// The client's right one.
        right: u8,
    },
}

/// Claims one face, or a mirrored pair of faces, as a compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct CompartmentRule {
    /// How files call it; a mirrored pair gets `-left` and `-right` added.
    pub id: Name,
    /// A point inside it.
    pub seed: Spot,
    /// The numbers sewn at the openings.
    pub numbers: Numbers,
    /// What it is, in plain words for carers.
    pub words: Words,
    /// What it is for.
    pub purpose: Purpose,
}

/// A size that a layout is made in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MadeSize {
    /// The size.
    pub size: Size,
    /// The heaviest client that it is rated for.
    pub max_user_weight: Mass,
}

/// The rules by which a pattern is drawn at any size.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// How files and the command line call it.
    pub name: Name,
    /// Which revision of it this is, where its author counts them: 1 or more.
    pub revision: Option<u32>,
    /// How pages call it.
    pub title: String,
    /// Whom it suits, in a sentence.
    pub about: String,
    /// How the user weights in `sizes` were found, in a sentence.
    pub rating_from: String,
    /// What it is declared for.
    pub class: Class,
    /// Whether the right half is written and the left half made from it.
    pub mirror: bool,
    /// The sizes that it is made in.
    pub sizes: Vec<MadeSize>,
    /// Height of every seam above the base.
    pub wall_height: Length,
    /// What holds the outer walls.
    pub rim: Rim,
    /// Greatest rise of a compartment above its walls in the stock fill, of the width.
    pub stock_crown: Measure,
    /// The points, in the order written.
    pub points: Vec<(Name, PointRule)>,
    /// The seams, in the order written; one of them is the outline.
    pub seams: Vec<SeamRule>,
    /// The compartments, in the order written.
    pub compartments: Vec<CompartmentRule>,
}

impl Layout {
    /// How many compartments a pattern of it has.
    #[must_use]
    pub fn compartment_count(&self) -> usize {
        let pair = |rule: &CompartmentRule| matches!(rule.numbers, Numbers::Pair { .. });
        self.compartments.iter().map(|rule| 1 + usize::from(pair(rule))).sum()
    }

    /// Returns the rating at a size that the layout is made in, to a tenth of a millimetre.
    #[must_use]
    pub fn made(&self, size: Size) -> Option<MadeSize> {
        let same = |a: Length, b: Length| (a - b).abs() < Length::from_mm(0.1);
        self.sizes.iter().copied().find(|made| {
            same(made.size.width(), size.width()) && same(made.size.depth(), size.depth())
        })
    }
}
