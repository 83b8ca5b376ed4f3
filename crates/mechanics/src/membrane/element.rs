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
        Self::of_corners(mesh.corners(triangle).map(|node| [node.x, node.y]))
    }

    /// The element with these corners, counter-clockwise, in metres.
    #[must_use]
    pub fn of_corners([[ax, ay], [bx, by], [cx, cy]]: [[f64; 2]; 3]) -> Self {
        let twice = (bx - ax) * (cy - ay) - (cx - ax) * (by - ay);
        let slopes = [
            [(by - cy) / twice, (cx - bx) / twice],
            [(cy - ay) / twice, (ax - cx) / twice],
            [(ay - by) / twice, (bx - ax) / twice],
        ];
        Self { area: twice / 2.0, slopes }
    }

    /// Slope of the sheet with these heights at the corners.
    #[must_use]
    #[inline]
    pub fn slope(&self, [a, b, c]: [f64; 3]) -> [f64; 2] {
        let [[ax, ay], [bx, by], [cx, cy]] = self.slopes;
        [a * ax + b * bx + c * cx, a * ay + b * by + c * cy]
    }

    /// Stiffness under unit tension between two of its corners: the integral of the product of
    /// their slopes.
    #[must_use]
    pub fn stiffness(&self, one: usize, other: usize) -> f64 {
        let ([ax, ay], [bx, by]) = (self.slopes[one], self.slopes[other]);
        self.area * (ax * bx + ay * by)
    }
}
