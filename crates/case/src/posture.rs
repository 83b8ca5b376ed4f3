//! Posture: how the pelvis and the legs are held, and what of it can be changed.

use cushion::{Length, Side};

use crate::Sides;

/// Whether a posture can be changed by hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Flexibility {
    /// Not at all: it is accommodated.
    Fixed,
    /// Wholly: it can be corrected.
    Flexible,
    /// In part: so much of it can be taken away.
    Partly {
        /// How much.
        reducible: Length,
    },
}

/// Between which points an obliquity was measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeasuredAt {
    /// The ischial tuberosities.
    SeatBones,
    /// The anterior superior iliac spines, where it is about twice as much.
    Asis,
}

impl MeasuredAt {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 2] = [(Self::SeatBones, "seat bones"), (Self::Asis, "asis")];
}

/// A pelvis that is lower on one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PelvicObliquity {
    /// The client's side that is lower.
    pub lower: Side,
    /// By how much.
    pub by: Length,
    /// Where that was measured.
    pub at: MeasuredAt,
    /// Whether it can be changed.
    pub flexibility: Flexibility,
}

/// The ways in which a pelvis tilts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tilt {
    /// Forward: the front spines low.
    Anterior,
    /// Backward: sitting on the sacrum.
    Posterior,
}

impl Tilt {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 2] =
        [(Self::Anterior, "anterior"), (Self::Posterior, "posterior")];
}

/// A pelvis that is tilted forward or backward.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PelvicTilt {
    /// Which way.
    pub direction: Tilt,
    /// By how many degrees, where measured.
    pub degrees: Option<f64>,
    /// Whether it is fixed.
    pub fixed: bool,
}

/// A pelvis with one side in front.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PelvicRotation {
    /// The client's side that is in front.
    pub forward: Side,
    /// By how many degrees.
    pub degrees: f64,
    /// Whether it is fixed.
    pub fixed: bool,
}

/// Both knees to one side.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Windswept {
    /// To which of the client's sides.
    pub to: Side,
    /// By how many degrees.
    pub degrees: f64,
}

/// How much of a leg is lost.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LossLevel {
    /// Below the knee.
    BelowKnee,
    /// Above the knee.
    AboveKnee,
    /// At the hip.
    Hip,
}

impl LossLevel {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 3] =
        [(Self::BelowKnee, "below knee"), (Self::AboveKnee, "above knee"), (Self::Hip, "hip")];
}

/// A lost part of a leg.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LimbLoss {
    /// Whose side.
    pub side: Side,
    /// How much.
    pub level: LossLevel,
}

/// How a client keeps upright.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SittingBalance {
    /// Without hands.
    HandsFree,
    /// With one or both hands.
    HandsNeeded,
    /// Only propped.
    Propped,
}

impl SittingBalance {
    /// All, with the words of files.
    pub const WORDS: [(Self, &str); 3] = [
        (Self::HandsFree, "hands free"),
        (Self::HandsNeeded, "hands needed"),
        (Self::Propped, "propped"),
    ];
}

/// Posture as far as a seat is concerned.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Posture {
    /// Lower on one side.
    pub obliquity: Option<PelvicObliquity>,
    /// Tilted forward or backward.
    pub tilt: Option<PelvicTilt>,
    /// One side in front.
    pub rotation: Option<PelvicRotation>,
    /// Knees to one side.
    pub windswept: Option<Windswept>,
    /// The leg that is truly shorter, bone against bone, and by how much.
    pub truly_shorter: Option<(Side, Length)>,
    /// The leg that only seems shorter, because the pelvis is turned, and by how much.
    pub apparently_shorter: Option<(Side, Length)>,
    /// Degrees to which each hip bends: 90 is a right angle between trunk and thigh.
    pub hip_flexion: Sides<Option<f64>>,
    /// Popliteal angle of each leg, degrees.
    pub popliteal_angle: Sides<Option<f64>>,
    /// Lost parts of legs.
    pub limb_loss: Vec<LimbLoss>,
    /// Muscle tone, in the therapist's words.
    pub tone: Option<String>,
    /// How they keep upright.
    pub balance: Option<SittingBalance>,
}
