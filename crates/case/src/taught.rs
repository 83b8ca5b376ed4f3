//! What fittings taught: about a client, and about the cushion that they were made on; never counts.

use cushion::Size;

use crate::{Date, Expected, Mirror, Partners};

/// What is not measured, as checks say: each a place from what is usual, 0, to the ends of what is
/// plausible, -1 and 1; it may lie beyond.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Taught {
    /// The share of the weight on the seat.
    pub seat_share: f64,
    /// How sharp the skin is under the seat bones.
    pub sharpness: f64,
    /// How far forward the load is.
    pub load_forward: f64,
    /// How far to the right the load is.
    pub load_right: f64,
    /// How much lower the left side of the pelvis is than was measured.
    pub left_lower: f64,
    /// How far the trunk follows a lean.
    pub trunk: f64,
    /// How the body itself resists rolling.
    pub own_roll_stiffness: f64,
    /// The cushion's own.
    pub cushion: TaughtOfCushion,
}

/// What checks say of the cushion that they were made on, in the same way.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct TaughtOfCushion {
    /// How far walls between compartments give.
    pub inner_give: f64,
    /// How far outer walls give.
    pub outer_give: f64,
    /// How far the seat under it sags.
    pub sag: f64,
    /// Tension of the taut cover.
    pub taut_tension: f64,
    /// How slack the cover is.
    pub slack: f64,
    /// How cells resist migrating.
    pub migration: f64,
    /// What presses voids together.
    pub void_pressure: f64,
    /// How densely cells lie.
    pub packing: f64,
}

impl Taught {
    /// What holds on another cushion too.
    #[must_use]
    pub fn of_the_client(self) -> Self {
        Self { cushion: TaughtOfCushion::default(), ..self }
    }
}

/// The cushion that a client sat on before, or sits on beside this one.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherCushion {
    /// Its layout, as the client's file named it.
    pub layout: String,
    /// Its size.
    pub size: Size,
    /// The day of its last plan.
    pub on: Date,
    /// Cells in all: what is in it by the record, or else by that plan.
    pub cells: u32,
    /// What was expected of them, where they are as planned.
    pub expected: Option<Expected>,
    /// Whether checks on it taught something.
    pub taught: bool,
}

impl Mirror for Taught {
    fn mirrored(&self, _: &Partners) -> Self {
        // Less nothing, so that nothing stays nothing and does not become less than nothing.
        Self { load_right: 0.0 - self.load_right, left_lower: 0.0 - self.left_lower, ..*self }
    }
}
