//! The body of the straight-seam reference cases.

use cushion::Side;

use super::smooth::least;
use super::{Site, SiteName};

/// How far forward the seat bones are, m.
const SEAT_BONES: f64 = 0.130;

/// Two ellipsoids for buttocks and two cylinders for thighs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct ReferenceForm;

impl ReferenceForm {
    pub(super) fn height(self, x: f64, y: f64) -> f64 {
        least([
            [-1.0, 1.0].map(|side| buttock(side * x, y)),
            [-1.0, 1.0].map(|side| thigh(side * x, y)),
        ])
    }
}

/// A cap of an ellipsoid, and its paraboloid farther out; x outwards.
fn buttock(x: f64, y: f64) -> f64 {
    let square = ((x - 0.060) / 0.120).powi(2) + ((y - SEAT_BONES) / 0.130).powi(2);
    if square < 1.0 { 0.085 * (1.0 - (1.0 - square).sqrt()) } else { 0.085 * square }
}

fn thigh(x: f64, y: f64) -> f64 {
    let forward = y - SEAT_BONES;
    let square = ((x - (0.085 + 0.10 * forward)) / 0.090).powi(2);
    let round = if square < 1.0 { 1.0 - (1.0 - square).sqrt() } else { square };
    0.090 * round + 0.020 + 0.01 * forward + 6.0 * (-forward).max(0.0)
}

pub(super) fn sites() -> Vec<Site> {
    SiteName::ALL
        .into_iter()
        .map(|name| {
            let at = |side: Side, x: f64, y: f64| match side {
                Side::Left => [-x, y],
                Side::Right => [x, y],
            };
            let at = match name {
                SiteName::SeatBone(side) => at(side, 0.062, SEAT_BONES),
                SiteName::Coccyx => [0.0, 0.065],
                SiteName::Trochanter(side) => at(side, 0.165, SEAT_BONES),
                SiteName::Thigh(side) => at(side, 0.102, 0.300),
            };
            Site { name, at }
        })
        .collect()
}
