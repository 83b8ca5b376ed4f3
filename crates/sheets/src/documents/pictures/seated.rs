//! A seated person from the side, facing the right edge of the page, and from above.

use kurbo::{Affine, BezPath, Point, Shape as _};

use super::super::look::PALE;
use super::sketch::{Sketch, limb};
use crate::color::Color;

/// The hip, as the drawing has it before it is placed, in millimetres; the others alike.
pub(super) const HIP: Point = Point::new(29.0, 37.0);
pub(super) const KNEE: Point = Point::new(53.0, 37.5);
pub(super) const ANKLE: Point = Point::new(54.5, 53.5);
pub(super) const SHOULDER: Point = Point::new(27.0, 18.0);
/// The lowest point of the seat bone.
pub(super) const SEAT_BONE: Point = Point::new(29.5, 42.0);
/// The back of the buttock, the back of the knee, the sole under the heel.
pub(super) const BUTTOCK: f64 = 22.0;
pub(super) const BACK_OF_KNEE: Point = Point::new(50.2, 41.8);
pub(super) const SOLE: f64 = 58.2;

impl Sketch {
    /// Draws a seated person, placed.
    pub(super) fn seated(&mut self, place: Affine) {
        self.seated_without_arm(place);
        let arm = [
            limb((26.8, 19.0), 2.7, (28.6, 29.4), 2.2),
            limb((28.6, 29.4), 2.2, (39.5, 31.2), 1.6),
        ];
        self.silhouette(&placed(place, arm.to_vec()), Color::WHITE);
    }

    /// The same, where an arm would hide what is looked at.
    pub(super) fn seated_without_arm(&mut self, place: Affine) {
        let mut shapes = vec![
            limb((27.3, 12.0), 2.4, (27.0, 16.0), 2.6),
            limb((SHOULDER.x, SHOULDER.y), 5.6, (HIP.x, HIP.y), 7.0),
        ];
        shapes.extend(leg(KNEE.x - HIP.x));
        shapes.push(kurbo::Ellipse::new((28.4, 7.2), (4.3, 5.2), 0.12).to_path(1e-3));
        self.silhouette(&placed(place, shapes), PALE);
    }

    /// Draws a leg behind the one that [`Sketch::seated`] draws, so much longer.
    pub(super) fn far_leg(&mut self, place: Affine, longer: f64) {
        let shapes = leg(KNEE.x - HIP.x + longer).to_vec();
        self.silhouette(&placed(place, shapes), Color::WHITE);
    }
}

/// Thigh, lower leg and foot, with the knee so far from the hip.
fn leg(thigh: f64) -> [BezPath; 3] {
    let (knee, ankle) = (HIP.x + thigh, ANKLE.x + thigh - (KNEE.x - HIP.x));
    [
        limb((HIP.x, HIP.y), 7.0, (knee, KNEE.y), 4.4),
        limb((knee, KNEE.y), 4.4, (ankle, ANKLE.y), 2.7),
        limb((ankle - 0.3, 55.6), 2.5, (ankle + 8.0, 56.7), 1.5),
    ]
}

fn placed(place: Affine, shapes: Vec<BezPath>) -> Vec<BezPath> {
    shapes.into_iter().map(|own| place * own).collect()
}
