//! The linear triangle.

use crate::mesh::{Mesh, Triangle};

/// A triangle on which the sheet is linear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Element {
    /// Its area, m2.
    pub area: f64,
    /// Slope of each corner's own function, which is 1 there and 0 at the others, 1/m.
    pub slopes: [[f64; 2]; 3],
}

impl Element {
    /// The element on a triangle of a mesh.
    #[must_use]
    pub fn new(mesh: &Mesh, triangle: &Triangle) -> Self {
        let [a, b, c] = mesh.corners(triangle);
        let twice = (b.x - a.x) * (c.y - a.y) - (c.x - a.x) * (b.y - a.y);
        let slopes = [
            [(b.y - c.y) / twice, (c.x - b.x) / twice],
            [(c.y - a.y) / twice, (a.x - c.x) / twice],
            [(a.y - b.y) / twice, (b.x - a.x) / twice],
        ];
        Self { area: twice / 2.0, slopes }
    }

    /// Stiffness under unit tension between two of its corners: the integral of the product of
    /// their slopes.
    #[must_use]
    pub fn stiffness(&self, one: usize, other: usize) -> f64 {
        let ([ax, ay], [bx, by]) = (self.slopes[one], self.slopes[other]);
        self.area * (ax * bx + ay * by)
    }
}
