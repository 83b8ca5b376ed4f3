//! What the body carries where: by region, and the disc that carries most.

use cushion::{Force, Pressure, Side};

use case::{Sides, SiteName};

use super::model::SheetModel;
use super::rest::SeatedBody;
use super::results::{DISC, Resting};

/// How far in front of the seat bones the thighs begin, m. No source: about where the buttock
/// ends; it only says to which region a force is counted.
const THIGHS_FROM: f64 = 0.060;

/// What is carried on each side, under the pelvis and in front of it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Regions {
    /// Under the pelvis: up to 60 mm in front of the seat bones.
    pub pelvis: Sides<Force>,
    /// Under the thighs: in front of that.
    pub thighs: Sides<Force>,
}

impl Regions {
    /// What a whole side carries.
    #[must_use]
    pub fn side(&self, side: Side) -> Force {
        self.pelvis[side] + self.thighs[side]
    }
}

impl Regions {
    /// Sums what is carried at places, N; `seat_bones` is how far they are in front of the rear edge,
    /// in m. What is carried on the middle line goes half to each side.
    pub(super) fn of(places: &[[f64; 2]], carried: &[f64], seat_bones: f64) -> Self {
        let mut sums = [[0.0; 2]; 2];
        for ([x, y], force) in places.iter().zip(carried) {
            let row = usize::from(*y > seat_bones + THIGHS_FROM);
            // Places that mirror each other may be some 1e-17 off.
            let right = if x.abs() < 1e-9 { 0.5 } else { f64::from(u8::from(*x > 0.0)) };
            sums[row][0] += force * (1.0 - right);
            sums[row][1] += force * right;
        }
        let of = |[left, right]: [f64; 2]| Sides {
            left: Force::from_n(left),
            right: Force::from_n(right),
        };
        Self { pelvis: of(sums[0]), thighs: of(sums[1]) }
    }

    /// All that is carried.
    #[must_use]
    pub fn total(&self) -> Force {
        self.side(Side::Left) + self.side(Side::Right)
    }

    /// What is carried under both thighs.
    #[must_use]
    pub fn under_thighs(&self) -> Force {
        self.thighs[Side::Left] + self.thighs[Side::Right]
    }

    /// What differs from other regions, for each of `cells`.
    pub(super) fn less(&self, other: &Self, cells: f64) -> Self {
        let by = |a: Sides<Force>, b: Sides<Force>| Sides {
            left: (a.left - b.left) / cells,
            right: (a.right - b.right) / cells,
        };
        Self { pelvis: by(self.pelvis, other.pelvis), thighs: by(self.thighs, other.thighs) }
    }
}

impl SeatedBody {
    /// How far the seat bones are in front of the rear edge, m; 0 for a body that has none.
    pub(super) fn seat_bones(&self) -> f64 {
        self.body().site(SiteName::SeatBone(Side::Left)).map_or(0.0, |site| site.at[1])
    }
}

impl Resting {
    /// Returns the place, in m, and the mean surface pressure of the disc of 15 mm radius that
    /// carries most; of several, the first node's.
    #[must_use]
    pub fn greatest_disc(&self, model: &SheetModel) -> ([f64; 2], Pressure) {
        let level = model.finest();
        let mean = |at: [f64; 2]| {
            let inside = model.discs().near(at).filter(|node| {
                let [x, y] = level.places[*node];
                (x - at[0]).powi(2) + (y - at[1]).powi(2) <= DISC * DISC
            });
            let sums = inside.fold((0.0, 0.0), |(force, area), node| {
                (force + self.reactions[node], area + level.areas[node])
            });
            sums.0 / sums.1
        };
        let pressed = model.discs().greatest_near(|node| self.reactions[node] / level.areas[node]);
        let mut greatest = ([0.0; 2], 0.0);
        for (place, force) in level.places.iter().zip(&self.reactions) {
            // A mean is no greater than the greatest, but for rounding.
            if *force > 0.0 && pressed.at(*place) * (1.0 + 1e-9) > greatest.1 {
                let mean = mean(*place);
                if mean > greatest.1 {
                    greatest = (*place, mean);
                }
            }
        }
        (greatest.0, Pressure::from_pa(greatest.1))
    }
}
