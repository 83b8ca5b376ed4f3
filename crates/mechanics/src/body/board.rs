//! A stiff board, for an experiment at the bench: what moved cells do to it can be read with a
//! ruler.

use cushion::Length;

/// Rise over run at the board's edges: as at those of the loaded-contour jig.
const EDGE: f64 = 6.0;

/// A flat board that lies on a cushion, in the middle from left to right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Board {
    /// From its left to its right edge.
    pub width: Length,
    /// From its rear to its front edge.
    pub depth: Length,
    /// From the cushion's rear edge to its middle.
    pub forward: Length,
}

impl Board {
    pub(super) fn height(&self, x: f64, y: f64) -> f64 {
        let off = |at: f64, size: Length| (at.abs() - size.to_m() / 2.0).max(0.0);
        EDGE * libm::hypot(off(x, self.width), off(y - self.forward.to_m(), self.depth))
    }
}
