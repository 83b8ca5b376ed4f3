//! What the body weighs on the seat, and where.

use std::ops::RangeInclusive;

use cushion::{Force, Length, Mass};

/// Standard gravity, m/s2, by definition (3rd CGPM, 1901).
pub const GRAVITY: f64 = 9.806_65;

/// Share of the body weight on the seat where nothing else is known.
///
/// Footrests, armrests and a slightly reclined back take over a third (Swearingen, Wheelwright
/// and Garner, FAA AM 62-1, 1962); 88 kg of load stand for users of 135 kg in a study of
/// bariatric cushions (Assistive Technology, 2024), which is .65.
pub const DEFAULT_SEAT_SHARE: f64 = 0.65;

/// The share of the body weight that a seat can carry: with the feet hanging, all but shanks and
/// feet, which are 11 to 12 % (de Leva, Journal of Biomechanics 29, 1223, 1996); the lower end is
/// an estimate.
pub const SEAT_SHARES: RangeInclusive<f64> = 0.60..=0.90;

/// A weight on a fixed vertical line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Load {
    /// Weight on the seat.
    pub weight: Force,
    /// Where its line meets the cushion, in metres in the frame of the cushion.
    pub at: [f64; 2],
    /// How high above the seat the weight sits that follows a lean: zero where the line stays.
    ///
    /// Where the trunk leans with the pelvis this takes weight times height from the stiffness
    /// against rolling. Not from that against pitching: fore and aft the hips are a joint between
    /// trunk and seat, and a backrest holds the trunk. The centre of mass of head, arms and trunk is some 250 to 300 mm above
    /// the seat (from memory).
    pub trunk_height: Length,
    /// How the body itself, its hips and trunk, resists being rolled away from how it is at ease, N m
    /// per radian; not negative. Half of it times the square of that roll is its energy.
    pub own_roll_stiffness: f64,
    /// The roll at which it is at ease, as a slope: right side up where positive.
    pub roll_at_ease: f64,
}

impl Load {
    /// A weight on a line through a place in metres, which does not follow a lean.
    #[must_use]
    pub fn new(weight: Force, at: [f64; 2]) -> Self {
        Self { weight, at, trunk_height: Length::ZERO, own_roll_stiffness: 0.0, roll_at_ease: 0.0 }
    }

    /// The weight of a share of a body.
    #[must_use]
    pub fn weight_of(body: Mass, share: f64) -> Force {
        Force::from_n(body.to_kg() * share * GRAVITY)
    }
}
