//! What of a client's file the goals and their gates look at.

use case::{Client, Goal, SiteName};
use cushion::{Length, Side};

/// An obliquity, as high as it is at the seat bones.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Oblique {
    /// The side that is lower.
    pub(crate) lower: Side,
    /// By how much.
    pub(crate) by: Length,
    /// How much of it can be taken away.
    pub(crate) reducible: Length,
}

impl Oblique {
    /// How much higher the right seat bone is by this, m; by what is left of it where only the
    /// reducible part is taken away.
    pub(crate) fn right_higher(&self, corrected: bool) -> f64 {
        let by = if corrected { self.by - self.reducible } else { self.by };
        match self.lower {
            Side::Left => by.to_m(),
            Side::Right => -by.to_m(),
        }
    }
}

/// What goals and gates look at.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Needs {
    /// The goals, the most important first.
    pub(crate) goals: Vec<Goal>,
    /// The obliquity, where there is one.
    pub(crate) oblique: Option<Oblique>,
    /// Sites with an injury, open or healing.
    pub(crate) injured: Vec<SiteName>,
    /// Whether the pelvis is fixed in posterior tilt.
    pub(crate) fixed_posterior_tilt: bool,
    /// Whether a hip bends less than 90 degrees.
    pub(crate) stiff_hip: bool,
}

impl Needs {
    /// Reads them from a client.
    pub(crate) fn of(client: &Client) -> Self {
        Self { goals: client.goals.clone(), ..Self::default() }
    }
}
