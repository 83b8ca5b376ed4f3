//! Length and direction of a vector, the same to the last bit on every machine: the system's own
//! functions choose instructions by what the processor has.

use kurbo::Vec2;

/// The length, in the vector's unit.
pub(crate) fn length(vector: Vec2) -> f64 {
    vector.hypot2().sqrt()
}

/// The angle from the first axis towards the second, in radians, more than -pi to pi.
pub(crate) fn direction(vector: Vec2) -> f64 {
    libm::atan2(vector.y, vector.x)
}
