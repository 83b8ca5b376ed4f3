//! What of a client's file the goals and their gates look at.

use case::{Client, Flexibility, Goal, MeasuredAt, SiteName, Tilt};
use cushion::{Length, Side};
use mechanics::{ASIS_SPACING, SeatedClient};

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
        let posture = &client.posture;
        let posterior = posture.tilt.filter(|tilt| tilt.direction == Tilt::Posterior);
        let hips = [posture.hip_flexion.left, posture.hip_flexion.right];
        Self {
            goals: client.goals.clone(),
            oblique: oblique(client),
            injured: client.skin.unhealed(),
            fixed_posterior_tilt: posterior.is_some_and(|tilt| tilt.fixed),
            stiff_hip: hips.into_iter().flatten().any(|degrees| degrees < RIGHT_ANGLE),
        }
    }
}

/// Degrees to which a hip must bend for a shelf: a right angle.
const RIGHT_ANGLE: f64 = 90.0;

/// The obliquity at the seat bones: the pelvis turns as a whole, so heights go with the distance
/// between the points where they are measured.
pub(crate) fn oblique(client: &Client) -> Option<Oblique> {
    let measured = client.posture.obliquity?;
    let spacing = client.measures.seat_bone_spacing.unwrap_or(SeatedClient::SEAT_BONE_SPACING);
    let scale = match measured.at {
        MeasuredAt::SeatBones => 1.0,
        MeasuredAt::Asis => spacing / ASIS_SPACING,
    };
    let reducible = match measured.flexibility {
        Flexibility::Fixed => Length::ZERO,
        Flexibility::Flexible => measured.by,
        Flexibility::Partly { reducible } => reducible,
    };
    Some(Oblique { lower: measured.lower, by: measured.by * scale, reducible: reducible * scale })
}
