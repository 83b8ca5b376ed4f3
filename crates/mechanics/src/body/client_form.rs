//! The shape of a sitting client's underside, from measures.
//!
//! Under each seat bone the skin has the measured radius. Away from it the slope nears a limit,
//! as on a hyperboloid, so that the skin under the trochanters is as high as it should be; then
//! come rims at hip and back. Thighs are round, lie as posed, and end at the knee.

use case::{BodyError, BodyValue, Sides};
use cushion::Side;

use super::seated_client::{SeatedClient, ThighPose, within};
use super::smooth::{least, rim};
use super::{Site, SiteName};

/// Height of the thighs' skin above the seat bones' under load, at the hip, m; as in the
/// reference cases, no source.
const THIGH_ABOVE: f64 = 0.020;
/// From the seat bones' line outwards to the thighs' at the hip, m; as in the reference cases,
/// no source.
const THIGH_OUT: f64 = 0.025;
/// Radius of a thigh's underside over half the hip width, and outwards spread of the thighs;
/// both as in the reference cases for hips of 380 mm, no source.
const THIGH_ROUND: f64 = 0.090 / 0.190;
const SPREAD: f64 = 0.10;
/// Rise of the thighs towards the knee, degrees; 10 mm in a metre as in the reference cases.
const THIGH_UP: f64 = 0.573;
/// From the middle of the knee to its outside, m: half a knee's breadth (from memory).
const HALF_KNEE: f64 = 0.055;
/// Reach of the seat bones' roundness to the middle, forward and back, m: at the middle, 60 mm
/// away, the skin is 13 mm higher, 100 mm behind 35 mm (from memory).
const REACH_IN: f64 = 0.035;
const REACH_FORWARD: f64 = 0.040;
const REACH_BACK: f64 = 0.050;
/// The rim of the back: where it begins, from the back inwards; and how high both rims are over
/// their width, that of the hips running from the trochanters outwards (from memory).
const RIM: f64 = 0.060;
const RIM_HEIGHT: f64 = 0.060;
/// The least width of the hips' rim, m: skin is no edge.
const NARROWEST_RIM: f64 = 0.020;
/// From the seat bones back to where the back of the buttocks is, m (from memory: 100 to 150).
const BACK: f64 = 0.125;
/// From the seat bones back to the coccyx, m (from memory).
const COCCYX: f64 = 0.065;
/// Rise over run where a thigh ends at knee and hip.
const END: f64 = 6.0;

/// The underside of a sitting client.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct ClientForm {
    /// From the middle to a seat bone, m.
    seat_bone: f64,
    /// From the rear edge to the seat bones, m.
    forward: f64,
    /// From the middle to a trochanter, m.
    trochanter: f64,
    half_hips: f64,
    /// Slope of the pelvis: the right side is higher where positive.
    tilt: f64,
    sides: Sides<Half>,
}

/// What is the client's own on each side.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Half {
    /// Radius of the skin under the seat bone, m.
    radius: f64,
    /// Reach of its roundness outwards, m.
    reach_out: f64,
    /// Outward slope of the thigh's axis.
    out: f64,
    /// Upward slope of the thigh's axis.
    up: f64,
    /// Where the thigh ends, from the seat bones forward, m.
    knee: f64,
}

impl ClientForm {
    pub(super) fn new(client: &SeatedClient) -> Result<Self, BodyError> {
        let spacing = client.seat_bone_spacing()?;
        let mut form = Self {
            seat_bone: spacing / 2.0,
            forward: client.seat_bones_forward()?,
            trochanter: client.trochanter_spacing()? / 2.0,
            half_hips: client.hip_width()? / 2.0,
            tilt: client.right_higher()? / spacing,
            sides: Sides::default(),
        };
        let step = client.trochanter_step()?;
        form.sides = Sides {
            left: form.half(client, Side::Left, step)?,
            right: form.half(client, Side::Right, step)?,
        };
        Ok(form)
    }

    fn half(&self, client: &SeatedClient, side: Side, step: f64) -> Result<Half, BodyError> {
        let radius = client.skin_radius(side)?;
        // The thigh depth counts from the back of the buttocks.
        let knee = client.thigh_depth(side)? - BACK;
        let pose = client.thighs[side].unwrap_or_else(|| self.measured_pose(client, knee));
        let out = within(BodyValue::ThighOut, pose.out, [-30.0, 60.0])?;
        let up = within(BodyValue::ThighUp, pose.up, [-20.0, 30.0])?;
        let swept = match client.windswept {
            Some((to, degrees)) => {
                let degrees = within(BodyValue::Windswept, degrees, [0.0, 60.0])?;
                if to == side { degrees } else { -degrees }
            }
            None => 0.0,
        };
        Ok(Half {
            radius,
            reach_out: reach(radius, self.trochanter - self.seat_bone, step),
            out: libm::tan((out + swept).to_radians()),
            up: libm::tan(up.to_radians()),
            knee,
        })
    }

    /// The pose by the distance between the outsides of the knees, where measured.
    fn measured_pose(&self, client: &SeatedClient, knee: f64) -> ThighPose {
        let spread = match client.measures.external_knee_width {
            Some(outside) => (outside.to_m() / 2.0 - HALF_KNEE - self.hip_end()) / knee,
            None => SPREAD,
        };
        ThighPose { out: libm::atan(spread).to_degrees(), up: THIGH_UP }
    }

    /// From the middle to the hip end of a thigh's axis.
    fn hip_end(&self) -> f64 {
        self.seat_bone + THIGH_OUT
    }

    pub(super) fn height(&self, x: f64, y: f64) -> f64 {
        let y = y - self.forward;
        let (left, right) = (&self.sides.left, &self.sides.right);
        // Each side is written for outward x; the tilt turns the pelvis as a whole.
        least([
            [self.buttock(left, -x, y) + self.tilt * x, self.buttock(right, x, y) + self.tilt * x],
            [self.thigh(left, -x, y, -self.tilt), self.thigh(right, x, y, self.tilt)],
        ])
    }

    fn buttock(&self, half: &Half, x: f64, y: f64) -> f64 {
        let (out, forward) = (x - self.seat_bone, y);
        let reach_across = if out > 0.0 { half.reach_out } else { REACH_IN };
        let reach_along = if forward > 0.0 { REACH_FORWARD } else { REACH_BACK };
        let square = out * out + forward * forward;
        // One over the squared reach, mixed by direction; at the bone itself it does not matter.
        let mixed = (out / reach_across).powi(2) + (forward / reach_along).powi(2);
        let round =
            if square > 0.0 { hyperboloid(square, mixed / square, half.radius) } else { 0.0 };
        let width = (self.half_hips - self.trochanter).max(NARROWEST_RIM);
        let hip = rim(x, self.trochanter, width, RIM_HEIGHT);
        round + hip + rim(-y, BACK - RIM, RIM, RIM_HEIGHT)
    }

    /// `tilt`: slope of the pelvis, positive where this side is higher.
    fn thigh(&self, half: &Half, x: f64, y: f64, tilt: f64) -> f64 {
        let radius = THIGH_ROUND * self.half_hips;
        let across = (x - self.hip_end() - half.out * y).abs();
        let share = (y / half.knee).clamp(0.0, 1.0);
        // The hip end moves with the pelvis, the knee does not.
        let carried = tilt * self.hip_end() * (1.0 - share);
        let ends = (-y).max(0.0) + (y - half.knee).max(0.0);
        THIGH_ABOVE + rim(across, 0.0, radius, radius) + half.up * y + carried + END * ends
    }

    /// Why the form has no lowest point: the pelvis slopes by more than the skin rises from the
    /// higher seat bone inwards, so that this side falls away past the lower one.
    pub(super) fn too_oblique(&self) -> BodyError {
        let higher = if self.tilt > 0.0 { Side::Right } else { Side::Left };
        let spacing = 2.0 * self.seat_bone * 1e3;
        BodyError {
            what: BodyValue::SweptObliquity,
            value: (self.tilt.abs() * spacing).round(),
            least: 0.0,
            most: (REACH_IN / self.sides[higher].radius * spacing).floor(),
        }
    }

    pub(super) fn sites(&self) -> Vec<Site> {
        let thigh = |half: &Half| {
            let y = half.knee / 2.0;
            (self.hip_end() + half.out * y, self.forward + y)
        };
        let at = |name| {
            let (side, (x, y)) = match name {
                SiteName::SeatBone(side) => (side, (self.seat_bone, self.forward)),
                SiteName::Coccyx => (Side::Right, (0.0, self.forward - COCCYX)),
                SiteName::Trochanter(side) => (side, (self.trochanter, self.forward)),
                SiteName::Thigh(side) => (side, thigh(&self.sides[side])),
            };
            match side {
                Side::Left => [-x, y],
                Side::Right => [x, y],
            }
        };
        SiteName::ALL.into_iter().map(|name| Site { name, at: at(name) }).collect()
    }
}

/// Height of a hyperboloid whose apex has the radius: `L2/R (sqrt(1 + r2/L2) - 1)`, for the
/// squared distance r2 and one over the squared reach L2.
fn hyperboloid(square: f64, over_reach: f64, radius: f64) -> f64 {
    // Written so that it holds for any reach: r2/R over 1 + sqrt(1 + r2/L2).
    square / radius / (1.0 + (1.0 + square * over_reach).sqrt())
}

/// The reach at which the hyperboloid is `step` high at a distance; as good as endless where even
/// the paraboloid stays below.
fn reach(radius: f64, distance: f64, step: f64) -> f64 {
    let square = distance * distance;
    // 1 + sqrt(1 + r2/L2) = r2/(R step).
    let root = square / (radius * step) - 1.0;
    if root <= 1.0 { 10.0 } else { distance / (root * root - 1.0).sqrt() }
}
