//! The central numbers of a prediction: what is expected, before it is known how sure that is.

use cushion::{Area, Length, Name, Pressure, Side};

use crate::{PredictedOutcome, PredictedSeat, Prediction, Sides, SiteName};

/// What is expected of one filling with the usual values, without any spread. It is an estimate
/// of which nobody has yet asked how sure it is; [`Prediction`] says that too.
#[derive(Clone, Debug, PartialEq)]
pub struct CentralNumbers {
    /// In a word.
    pub outcome: PredictedOutcome,
    /// The numbers; none where the client leans away or tips, or the search did not end.
    pub seated: Option<CentralSeat>,
}

/// The central numbers of a client at rest.
#[derive(Clone, Debug, PartialEq)]
pub struct CentralSeat {
    /// Degrees by which the client's right side is turned up from how they sit by themselves.
    pub roll_deg: f64,
    /// Degrees by which the front is turned up.
    pub pitch_deg: f64,
    /// The side of the pelvis that is lower, at the seat bones; none below 1 mm.
    pub lower_side: Option<Side>,
    /// By how much.
    pub lower_by: Length,
    /// Cushion left under each seat bone.
    pub clearance: Sides<Length>,
    /// How deep each seat bone is below the top of the unloaded cushion.
    pub immersion: Sides<Length>,
    /// Area of skin that touches.
    pub contact_area: Area,
    /// Load over contact area.
    pub mean_surface: Pressure,
    /// Mean surface pressure on the disc of 15 mm radius that carries most.
    pub greatest_surface: Pressure,
    /// One for each compartment.
    pub compartments: Vec<CentralCompartment>,
    /// One for each named site.
    pub sites: Vec<CentralSite>,
}

/// The central numbers of one compartment.
#[derive(Clone, Debug, PartialEq)]
pub struct CentralCompartment {
    /// The compartment.
    pub id: Name,
    /// Cells in it.
    pub cells: u32,
    /// Fill pressure.
    pub fill: Pressure,
    /// Whether the skin is nearly on the base.
    pub bottomed: bool,
}

/// The central numbers at one named site.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CentralSite {
    /// The site.
    pub site: SiteName,
    /// Mean surface pressure on a disc of 15 mm radius.
    pub surface: Pressure,
    /// Height of the skin above the base.
    pub clearance: Length,
}

impl CentralNumbers {
    /// Those of a prediction.
    #[must_use]
    pub fn of(prediction: &Prediction) -> Self {
        let seated = prediction.seated.as_ref().map(CentralSeat::of);
        Self { outcome: prediction.outcome, seated }
    }
}

impl CentralSeat {
    fn of(seat: &PredictedSeat) -> Self {
        let compartments = seat.compartments.iter().map(|own| CentralCompartment {
            id: own.id.clone(),
            cells: own.cells,
            fill: own.fill.central,
            bottomed: own.bottomed,
        });
        let sites = seat.sites.iter().map(|own| CentralSite {
            site: own.site,
            surface: own.surface.central,
            clearance: own.clearance.central,
        });
        Self {
            roll_deg: seat.roll_deg.central,
            pitch_deg: seat.pitch_deg.central,
            lower_side: seat.lower_side,
            lower_by: seat.lower_by,
            clearance: Sides {
                left: seat.clearance.left.central,
                right: seat.clearance.right.central,
            },
            immersion: seat.immersion,
            contact_area: seat.contact_area,
            mean_surface: seat.mean_surface.central,
            greatest_surface: seat.greatest_surface.central,
            compartments: compartments.collect(),
            sites: sites.collect(),
        }
    }
}
