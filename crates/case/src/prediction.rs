//! What is expected of a filled cushion under a client, with how sure that is.

use cushion::{Area, Force, Length, Name, Pressure, Side};

use crate::{Sides, SiteName};

/// A value that is expected, with the low and the high end of what is plausible.
///
/// The ends come from runs over the ranges of what is not known of cover, cells and body, each by
/// itself, put together as if independent: the root of the sum of squares.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread<T> {
    /// With the usual values.
    pub central: T,
    /// The low end.
    pub low: T,
    /// The high end.
    pub high: T,
}

/// How a prediction ended, in a word.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PredictedOutcome {
    /// The client rests.
    AtRest,
    /// The client rests, and over a compartment the skin is nearly on the base.
    Bottomed,
    /// The trunk leans on, because the cushion does not resist enough.
    LeansAway,
    /// The client tips by more than ten degrees.
    Tipping,
    /// The search did not end.
    OutOfSteps,
}

impl PredictedOutcome {
    /// How reports call it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::AtRest => "at rest",
            Self::Bottomed => "bottomed",
            Self::LeansAway => "leans away",
            Self::Tipping => "tipping",
            Self::OutOfSteps => "out of steps",
        }
    }
}

/// What is expected of one filling.
#[derive(Clone, Debug, PartialEq)]
pub struct Prediction {
    /// In a word.
    pub outcome: PredictedOutcome,
    /// The numbers; none where the client leans away or tips, or the search did not end.
    pub seated: Option<PredictedSeat>,
    /// Unbalanced force at the end of the search, as a share of the load.
    pub residual: f64,
}

/// The side of the pelvis that is lower, at the seat bones, and by how much, from what cushion is left
/// under each; no side below 1 mm, which no hand tells.
#[must_use]
pub fn lower_at_seat_bones(clearance: Sides<Length>) -> (Option<Side>, Length) {
    let by = (clearance.right - clearance.left).abs();
    let lower = if clearance.right > clearance.left { Side::Left } else { Side::Right };
    ((by >= Length::from_mm(1.0)).then_some(lower), by)
}

/// The numbers of a client at rest.
#[derive(Clone, Debug, PartialEq)]
pub struct PredictedSeat {
    /// Degrees by which the client's right side is turned up from how they sit by themselves.
    pub roll_deg: Spread<f64>,
    /// Degrees by which the front is turned up.
    pub pitch_deg: Spread<f64>,
    /// The side of the pelvis that is lower, at the seat bones; none below 1 mm.
    pub lower_side: Option<Side>,
    /// By how much.
    pub lower_by: Length,
    /// Cushion left under each seat bone.
    pub clearance: Sides<Spread<Length>>,
    /// How deep each seat bone is below the top of the unloaded cushion.
    pub immersion: Sides<Length>,
    /// Area of skin that touches.
    pub contact_area: Area,
    /// Load over contact area.
    pub mean_surface: Spread<Pressure>,
    /// Mean surface pressure on the disc of 15 mm radius that carries most.
    pub greatest_surface: Spread<Pressure>,
    /// One for each compartment.
    pub compartments: Vec<PredictedCompartment>,
    /// One for each named site.
    pub sites: Vec<PredictedSite>,
    /// What is carried under the pelvis, left and right.
    pub pelvis_load: Sides<Force>,
    /// What is carried under the thighs, left and right.
    pub thigh_load: Sides<Force>,
    /// How the cushion resists leaning to a side, N m per degree.
    pub roll_stiffness: f64,
    /// What the leaning trunk takes from that, N m per degree.
    pub trunk_stiffness: f64,
}

/// What is expected of one compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct PredictedCompartment {
    /// The compartment.
    pub id: Name,
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells in it.
    pub cells: u32,
    /// Fill pressure.
    pub fill: Spread<Pressure>,
    /// What it carries of the client.
    pub load: Force,
    /// Whether the cells lie loose.
    pub slack: bool,
    /// Whether the skin is nearly on the base.
    pub bottomed: bool,
}

/// What is expected at one named site.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PredictedSite {
    /// The site.
    pub site: SiteName,
    /// Mean surface pressure on a disc of 15 mm radius.
    pub surface: Spread<Pressure>,
    /// Height of the skin above the base.
    pub clearance: Spread<Length>,
}
