//! Limits of what is read, and what counts as plausible.

use std::ops::RangeInclusive;

/// The most bytes that are read as one of our files: far more than any has.
pub const MOST_BYTES: usize = 1 << 20;

/// A measure of the body or the chair, with what is plausible for it in millimetres.
///
/// The ranges take in children and very large adults; outside, a unit is mixed up or a digit is
/// wrong. They are wider than anything in ANSUR II (Gordon et al., NATICK/TR-15/007, 2014).
pub(crate) struct Plausible {
    pub(crate) words: &'static str,
    pub(crate) mm: RangeInclusive<f64>,
}

pub(crate) const HIP_WIDTH: Plausible = Plausible { words: "hip width", mm: 130.0..=850.0 };
pub(crate) const TROCHANTER_WIDTH: Plausible =
    Plausible { words: "trochanter width", mm: 120.0..=800.0 };
pub(crate) const THIGH_DEPTH: Plausible = Plausible { words: "thigh depth", mm: 150.0..=750.0 };
pub(crate) const LOWER_LEG: Plausible = Plausible { words: "lower leg length", mm: 120.0..=700.0 };
pub(crate) const KNEE_WIDTH: Plausible =
    Plausible { words: "external knee width", mm: 100.0..=900.0 };
pub(crate) const SEAT_BONES: Plausible = Plausible { words: "seat bone spacing", mm: 50.0..=190.0 };
pub(crate) const CHAIR_WIDTH: Plausible =
    Plausible { words: "inside width of the chair", mm: 180.0..=900.0 };
pub(crate) const CHAIR_DEPTH: Plausible =
    Plausible { words: "inside depth of the chair", mm: 180.0..=800.0 };

pub(crate) const SLING_SAG: Plausible = Plausible { words: "sag of the sling", mm: 0.0..=120.0 };
pub(crate) const FOOTREST: Plausible =
    Plausible { words: "height from footrest to seat base", mm: 150.0..=700.0 };
pub(crate) const OBLIQUITY: Plausible = Plausible { words: "obliquity", mm: 0.0..=100.0 };
pub(crate) const LEG_DIFFERENCE: Plausible =
    Plausible { words: "difference of the legs", mm: 0.0..=200.0 };
pub(crate) const SEAT_BONES_FORWARD: Plausible =
    Plausible { words: "distance of the seat bones from the rear edge", mm: 50.0..=300.0 };
pub(crate) const TRUNK_HEIGHT: Plausible =
    Plausible { words: "height of the leaning trunk", mm: 0.0..=500.0 };

/// Angles of posture that are taken, in degrees.
pub(crate) const DEGREES: RangeInclusive<f64> = 0.0..=180.0;
/// Tilts of a chair that are taken, in degrees.
pub(crate) const CHAIR_TILT: RangeInclusive<f64> = -10.0..=60.0;
/// Shares of the weight on the seat that are taken: see the mechanics for their sources.
pub(crate) const SEAT_SHARE: RangeInclusive<f64> = 0.60..=0.90;
/// Heights above the sea that are taken, in metres.
pub(crate) const ALTITUDE_M: RangeInclusive<f64> = -430.0..=6000.0;
/// Heights that goals may ask for, in millimetres.
pub(crate) const GOAL_MM: RangeInclusive<f64> = 1.0..=60.0;
/// How much of a site's pressure a goal may ask to be taken off, in per cent.
pub(crate) const OFF_LOAD_PERCENT: RangeInclusive<f64> = 5.0..=60.0;

/// Body weights that are taken, in kilograms.
pub(crate) const WEIGHT_KG: RangeInclusive<f64> = 5.0..=350.0;
/// Crown changes that are taken, in millimetres.
pub(crate) const CROWN_CHANGE_MM: RangeInclusive<f64> = -60.0..=60.0;
/// Wall heights that are taken, in millimetres.
pub(crate) const WALL_MM: RangeInclusive<f64> = 20.0..=200.0;
/// The most cells of one compartment or bag.
pub(crate) const MOST_CELLS: u32 = 5000;
