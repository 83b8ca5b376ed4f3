//! Altitude and temperature: what becomes of sealed cells, and of the count.
//!
//! A sealed cell holds its air, so its volume goes against the absolute pressure around it, until
//! its film is taut; the mechanics has the same law. Where nothing is known both are taken at sea
//! level.

use cushion::{Length, Pressure};

/// Heights for which the standard atmosphere's lowest layer is used, m.
const HEIGHTS: [f64; 2] = [-500.0, 11_000.0];

/// Returns the air pressure at a height above the sea; none outside -500 to 11,000 m.
///
/// ISO 2533, lowest layer: 101325 (1 - 2.25577e-5 h)^5.25588 Pa.
#[must_use]
pub fn air_pressure(height: Length) -> Option<Pressure> {
    let metres = height.to_m();
    let inside = HEIGHTS[0] <= metres && metres <= HEIGHTS[1];
    inside.then(|| Pressure::from_pa(101_325.0 * (1.0 - 2.255_77e-5 * metres).powf(5.255_88)))
}
