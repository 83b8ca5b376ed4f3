//! Spanish.
//!
//! Neutral words that are understood everywhere; carers are addressed with "usted", and whoever sits on
//! the cushion is "la persona", without gender. For carers: short words and sentences, digits for
//! counts. Left and right are always named as the client's.

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

/// Spanish, with the unit of lengths that is read first.
#[derive(Clone, Copy, Debug)]
pub struct Spanish {
    lengths: LengthUnit,
}

/// Spanish in millimetres.
static IN_MILLIMETRES: Spanish = Spanish { lengths: LengthUnit::Millimetres };
/// Spanish in inches, each with its millimetres.
static IN_INCHES: Spanish = Spanish { lengths: LengthUnit::Inches };

impl Language for Spanish {
    fn tag(&self) -> &'static str {
        "es"
    }

    fn own_name(&self) -> &'static str {
        "español"
    }

    fn unreviewed(&self) -> Option<&'static str> {
        Some("Traducción sin revisión profesional / Translation not professionally reviewed")
    }

    fn with_lengths_in(&self, unit: LengthUnit) -> &'static dyn Language {
        match unit {
            LengthUnit::Millimetres => &IN_MILLIMETRES,
            LengthUnit::Inches => &IN_INCHES,
        }
    }
}

impl Spanish {
    /// Spanish in millimetres.
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
            LengthUnit::Millimetres => format!("{:.0} a {}", least.to_mm(), parts::mm(most)),
            LengthUnit::Inches => format!(
                "{} a {} in ({:.0} a {})",
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

impl Default for Spanish {
    fn default() -> Self {
        Self::new()
    }
}
