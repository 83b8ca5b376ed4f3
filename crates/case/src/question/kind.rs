//! What an answer is, when there must be one, and how it is measured.

/// From the least to the most that is taken.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// The least.
    pub least: f64,
    /// The most.
    pub most: f64,
}

impl Range {
    /// Whether a number lies in it; NaN does not.
    #[must_use]
    pub fn has(&self, number: f64) -> bool {
        (self.least..=self.most).contains(&number)
    }
}

/// The unit of a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Of length.
    Millimetre,
    /// Of height above the sea.
    Metre,
    /// Of body weight.
    Kilogram,
    /// Of body weight; 0.45359237 kg.
    Pound,
    /// Of a cell's weight.
    Gram,
    /// Of volume.
    Millilitre,
    /// Of angle.
    Degree,
    /// Of a part.
    Percent,
    /// Of time.
    Hour,
    /// A share, from 0 to 1.
    Share,
}

impl Unit {
    /// What may stand for it after a number, in any language.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Self::Millimetre => "mm",
            Self::Metre => "m",
            Self::Kilogram => "kg",
            Self::Pound => "lb",
            Self::Gram => "g",
            Self::Millilitre => "ml",
            Self::Degree => "°",
            Self::Percent => "%",
            Self::Hour => "h",
            Self::Share => "",
        }
    }
}

/// What an answer is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// This number and no other.
    Just(i64),
    /// This word and no other.
    Word(&'static str),
    /// A length in the unit that the file says, mm or inches; its range is in mm.
    Length(Range),
    /// A number in a unit.
    Number(Unit, Range),
    /// A whole number.
    Whole {
        /// The least.
        least: i64,
        /// The most.
        most: i64,
    },
    /// A day.
    Date,
    /// One of some words.
    Choice(&'static [&'static str]),
    /// Yes or no.
    YesNo,
    /// A text of one line.
    Text,
    /// Some texts of one line each.
    Texts,
    /// A text of one line, which is English, or one for each language by its tag.
    Words,
    /// A client's code.
    Code,
    /// A telephone number.
    Phone,
    /// A size, width by depth.
    Size,
    /// A name of a compartment, a point, a seam, a layout, a cell.
    Name,
    /// Names, in order.
    Names,
    /// A layout: a built-in name, a path, or a plugin's.
    Layout,
    /// Numbers by name.
    Parameters,
    /// A measure of a layout: millimetres, a share, or both.
    Measure,
    /// Two measures, x and y.
    Spot,
    /// The numbers of a compartment's two halves: `{ left = 1, right = 2 }`.
    Pair,
    /// Where cells are: the number of a compartment, or `"spare"`.
    Place,
    /// What hands found, each as a check is written.
    Checks,
    /// By which a file is known again: 16 hexadecimal digits.
    Digest,
}

/// When there must be an answer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Need {
    /// Wherever its group is written.
    Always,
    /// Never: what is not known is left out.
    Never,
    /// To this question or to the one of this key, and not to both.
    OneOf(&'static str),
    /// Where the one of this key has an answer, and else not.
    Both(&'static str),
    /// Where the one of this key has one of these words; with others there is none.
    With(&'static str, &'static [&'static str]),
    /// Never; and only where the one of this key has one of these words may there be one.
    May(&'static str, &'static [&'static str]),
}

impl Need {
    /// The key of another question, and the words of it that it goes with.
    #[must_use]
    pub const fn goes_with(self) -> Option<(&'static str, &'static [&'static str])> {
        match self {
            Self::With(key, words) | Self::May(key, words) => Some((key, words)),
            Self::Always | Self::Never | Self::OneOf(_) | Self::Both(_) => None,
        }
    }
}

/// A drawing that shows how something is measured, and from where it is seen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drawing {
    /// From above: the greatest width.
    HipWidth,
    /// From above: between the outsides of the trochanters.
    TrochanterWidth,
    /// From the side: back of the buttock to the back of the knee.
    ThighDepth,
    /// From the side: back of the knee to under the heel.
    LowerLegLength,
    /// From above: between the outsides of the knees.
    KneeWidth,
    /// From behind: between the lowest points of the seat bones.
    SeatBoneSpacing,
    /// From behind: the pelvis lower on one side.
    Obliquity,
    /// From the side: the pelvis tilted.
    Tilt,
    /// From above: one side of the pelvis in front.
    Rotation,
    /// From above: both knees to one side.
    Windswept,
    /// From the side: the thigh against the trunk.
    HipFlexion,
    /// From the side: the lower leg against the thigh.
    PoplitealAngle,
    /// From the side: one leg shorter.
    LegDifference,
    /// From the front: between the sides of the chair.
    ChairWidth,
    /// From the side: back support to the front edge of the seat.
    ChairDepth,
    /// From the front: how far the sling sags.
    SlingSag,
    /// From the side: footrest to seat base.
    Footrest,
    /// From the side: the chair tilted back.
    ChairTilt,
    /// From the side: rear edge to seat bones.
    SeatBonesForward,
    /// From the side: the layers of a compartment, and its crown.
    Crown,
}
