//! The loaded-contour jig: two cylinders for the seat bones, two buttons for the trochanters, and
//! a strip of webbing slung under them.
//!
//! Source: the description of its figure by Ammer et al., RESNA conference 2005, for cushions of
//! 460 to 480 mm. Part heights there do not add up to the step of 40 mm; the step counts here.

use cushion::{Force, Length, Side};

use super::{Site, SiteName};

/// Width of the cushion that the distances are given for: the middle of 460 to 480 mm.
const WIDTH: f64 = 0.470;
/// Radius of the cylinders, and half the width of the webbing, m.
const CYLINDER: f64 = 0.025;
/// Radius of the buttons, m.
const BUTTON: f64 = 0.0125;
/// Height of the buttons, m: so far above them is the plate.
const BUTTON_HEIGHT: f64 = 0.005;
/// Rise over run at edges of parts. They are upright; a mesh needs a slope, and one as in the
/// reference body keeps what it holds up by more than the width of a mesh off the cushion.
const EDGE: f64 = 6.0;

/// The jig, on a cushion.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jig {
    /// From the middle to the axis of a cylinder, m.
    seat_bone: f64,
    /// From the middle to the axis of a button, m.
    trochanter: f64,
    /// From the cylinders' ends up to the buttons', m.
    step: f64,
    /// From the rear edge forward to the line of the parts, m.
    forward: f64,
}

impl Jig {
    /// The steps that the jig is built with.
    pub const STEPS: [Length; 2] = [Length::from_mm(25.0), Length::from_mm(40.0)];
    /// Where its line stands in front of the cushion's rear edge; from memory, give or take 25 mm.
    pub const FORWARD: Length = Length::from_mm(125.0);

    /// The first load; from memory, unverified (a later text has 140 N).
    pub const FIRST_LOAD: Force = Force::from_n(135.0);
    /// The overload, four thirds of the first load; from memory, unverified.
    pub const OVERLOAD: Force = Force::from_n(180.0);
    /// Further sink from first load to overload that shows a reserve; from memory, unverified.
    pub const RESERVE: Length = Length::from_mm(5.0);

    /// The jig for a cushion of a width, whose distances grow with it.
    #[must_use]
    pub fn new(width: Length, step: Length, forward: Length) -> Self {
        let scale = width.to_m() / WIDTH;
        Self {
            seat_bone: 0.060 * scale,
            trochanter: 0.190 * scale,
            step: step.to_m(),
            forward: forward.to_m(),
        }
    }

    pub(super) fn height(&self, x: f64, y: f64) -> f64 {
        let plate = self.step + BUTTON_HEIGHT;
        let beside = ((y - self.forward).abs() - CYLINDER).max(0.0);
        (self.webbing(x.abs()) + EDGE * beside).min(plate)
    }

    /// Height of the webbing at a distance from the middle: level under the cylinders, straight
    /// up to the buttons, level there, and up to the plate.
    fn webbing(&self, x: f64) -> f64 {
        let (foot, button) = (self.seat_bone + CYLINDER, self.trochanter - BUTTON);
        let rise = ((x - foot) / (button - foot)).clamp(0.0, 1.0);
        self.step * rise + EDGE * (x - self.trochanter - BUTTON).max(0.0)
    }

    pub(super) fn sites(&self) -> Vec<Site> {
        let pair = |name: fn(Side) -> SiteName, x: f64| {
            [(Side::Left, -x), (Side::Right, x)]
                .map(|(side, x)| Site { name: name(side), at: [x, self.forward] })
        };
        let mut sites = pair(SiteName::SeatBone, self.seat_bone).to_vec();
        sites.extend(pair(SiteName::Trochanter, self.trochanter));
        sites
    }
}
