//! A cushion's size: width by depth.

use std::fmt;
use std::str::FromStr;

use crate::Length;

/// Width by depth of a cushion, each between [`Size::LEAST`] and [`Size::GREATEST`].
///
/// Width runs from the client's left to right, depth from the rear edge to the front. Two sizes are
/// equal where they are written alike, to a tenth of a millimetre: inches and their millimetres are
/// one size.
#[derive(Clone, Copy, Debug)]
pub struct Size {
    width: Length,
    depth: Length,
}

impl Size {
    /// The least width or depth that is taken for a cushion: 150 mm.
    ///
    /// Common practice, no source: air-cell cushions begin at about 250 mm.
    pub const LEAST: Length = Length::from_mm(150.0);
    /// The greatest width or depth that is taken for a cushion: 800 mm.
    pub const GREATEST: Length = Length::from_mm(800.0);
    /// A usual size, for which a layout is asked where any will do.
    pub const USUAL: Self = Self { width: Length::from_mm(440.0), depth: Length::from_mm(400.0) };

    /// Returns `None` where a side is outside the range.
    #[must_use]
    pub fn new(width: Length, depth: Length) -> Option<Self> {
        let fits = |side: Length| Self::LEAST <= side && side <= Self::GREATEST;
        (fits(width) && fits(depth)).then_some(Self { width, depth })
    }

    /// From the client's left to right.
    #[must_use]
    pub fn width(self) -> Length {
        self.width
    }

    /// From the rear edge to the front edge.
    #[must_use]
    pub fn depth(self) -> Length {
        self.depth
    }
}

/// Writes `440x400`, in millimetres, with a decimal only where there is one.
impl Size {
    /// Width and depth in tenths of a millimetre: both are finite and small.
    fn tenths(self) -> [i64; 2] {
        [self.width, self.depth].map(|side| (side.to_mm() * 10.0).round() as i64)
    }
}

impl PartialEq for Size {
    fn eq(&self, other: &Self) -> bool {
        self.tenths() == other.tenths()
    }
}

impl Eq for Size {}

impl PartialOrd for Size {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Size {
    /// By width, then by depth.
    fn cmp(&self, other: &Self) -> std::cmp::Ordering {
        self.tenths().cmp(&other.tenths())
    }
}

impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [width, depth] = self.tenths().map(|side| side as f64 / 10.0);
        write!(f, "{width}x{depth}")
    }
}

/// Why a text is not a size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum SizeError {
    /// The text is not two numbers joined by `x`.
    Form,
    /// A side is outside the range; in millimetres.
    Range {
        /// Width as read.
        width_mm: f64,
        /// Depth as read.
        depth_mm: f64,
    },
}

/// Reads `440x400`, `440x400mm` or `17x16in`; spaces are allowed around the parts.
impl FromStr for Size {
    type Err = SizeError;

    fn from_str(text: &str) -> Result<Self, SizeError> {
        let text = text.trim();
        let (sides, unit) = match (text.strip_suffix("in"), text.strip_suffix("mm")) {
            (Some(inches), _) => (inches, 25.4),
            (_, Some(mm)) => (mm, 1.0),
            _ => (text, 1.0),
        };
        let (width, depth) = sides.split_once(['x', '×']).ok_or(SizeError::Form)?;
        let side = |text: &str| {
            let number: f64 = text.trim().parse().map_err(|_| SizeError::Form)?;
            let mm = number * unit;
            if mm.is_finite() { Ok(mm) } else { Err(SizeError::Form) }
        };
        let (width_mm, depth_mm) = (side(width)?, side(depth)?);
        Self::new(Length::from_mm(width_mm), Length::from_mm(depth_mm))
            .ok_or(SizeError::Range { width_mm, depth_mm })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_read_in_millimetres_and_inches() {
        let read = |text: &str| text.parse::<Size>().map(|size| size.to_string());
        assert_eq!(read("440x400"), Ok("440x400".into()));
        assert_eq!(read(" 440 x 400 mm"), Ok("440x400".into()));
        assert_eq!(read("17x16in"), Ok("431.8x406.4".into()));
        assert_eq!(read("440"), Err(SizeError::Form));
        assert_eq!(read("nanx400"), Err(SizeError::Form));
        let range = SizeError::Range { width_mm: 4000.0, depth_mm: 400.0 };
        assert_eq!(read("4000x400"), Err(range));
    }
}
