//! Papers and their sizes.

/// What a page is printed on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Paper {
    /// 210 x 297 mm.
    A4,
    /// 8.5 x 11 inches, 215.9 x 279.4 mm.
    Letter,
    /// The sewn-in tag, 100 x 60 mm.
    Tag,
    /// Another size.
    Custom {
        /// Millimetres, positive and finite.
        width: f64,
        /// Millimetres, positive and finite.
        height: f64,
    },
}

impl Paper {
    /// Width, in millimetres.
    pub const fn width(self) -> f64 {
        match self {
            Self::A4 => 210.0,
            Self::Letter => 215.9,
            Self::Tag => 100.0,
            Self::Custom { width, .. } => width,
        }
    }

    /// Height, in millimetres.
    pub const fn height(self) -> f64 {
        match self {
            Self::A4 => 297.0,
            Self::Letter => 279.4,
            Self::Tag => 60.0,
            Self::Custom { height, .. } => height,
        }
    }
}
