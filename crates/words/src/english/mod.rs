//! English.
//!
//! For carers: US grade 6 or below, short sentences, digits for counts. Left and right are always
//! named as the client's.

mod basics;
mod card;
mod cautions;
mod checks;
mod comparisons;
mod costs;
mod files;
mod folder;
mod goals;
mod page;
mod papers;
mod parts;
mod pictures;
mod program;
mod record;
mod reports;
mod restoring;
mod reviews;

use case::text::LengthUnit;
use cushion::{Length, Mass, Size};

use crate::{Language, PageWords as _};

/// English, with the unit of lengths that is read first.
#[derive(Clone, Copy, Debug)]
pub struct English {
    lengths: LengthUnit,
}

/// English in millimetres.
static IN_MILLIMETRES: English = English { lengths: LengthUnit::Millimetres };
/// English in inches, each with its millimetres.
static IN_INCHES: English = English { lengths: LengthUnit::Inches };

impl Language for English {
    fn tag(&self) -> &'static str {
        "en"
    }

    fn own_name(&self) -> &'static str {
        "English"
    }

    fn unreviewed(&self) -> Option<&'static str> {
        None
    }

    fn with_lengths_in(&self, unit: LengthUnit) -> &'static dyn Language {
        match unit {
            LengthUnit::Millimetres => &IN_MILLIMETRES,
            LengthUnit::Inches => &IN_INCHES,
        }
    }
}

impl English {
    /// English in millimetres.
    #[must_use]
    pub const fn new() -> Self {
        Self { lengths: LengthUnit::Millimetres }
    }

    /// A length, to be read by whoever measures: whole millimetres, or tenths of an inch with
    /// the millimetres beside them.
    fn length(self, length: Length) -> String {
        match self.lengths {
            LengthUnit::Millimetres => parts::mm(length),
            LengthUnit::Inches => format!("{} in ({})", parts::inches(length), parts::mm(length)),
        }
    }

    /// A length between two others.
    fn lengths(self, least: Length, most: Length) -> String {
        match self.lengths {
            LengthUnit::Millimetres => format!("{:.0} to {}", least.to_mm(), parts::mm(most)),
            LengthUnit::Inches => format!(
                "{} to {} in ({:.0} to {})",
                parts::inches(least),
                parts::inches(most),
                least.to_mm(),
                parts::mm(most)
            ),
        }
    }

    /// A body weight, to be read by whoever measures: kilograms, or pounds with the kilograms beside
    /// them.
    fn weight(self, weight: Mass) -> String {
        self.body_weight(weight, self.lengths == LengthUnit::Inches)
    }

    /// A size, width x depth.
    fn size_in_words(self, size: Size) -> String {
        match self.lengths {
            LengthUnit::Millimetres => size.to_string(),
            LengthUnit::Inches => format!(
                "{} x {} in ({size})",
                parts::inches(size.width()),
                parts::inches(size.depth())
            ),
        }
    }
}

impl Default for English {
    fn default() -> Self {
        Self::new()
    }
}
