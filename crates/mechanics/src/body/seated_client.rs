//! What is known of a sitting client, and what is assumed where nothing is.

use case::{BodyError, BodyValue, Measures, Sides};
use cushion::{Length, Mass, Side};

use super::load::{DEFAULT_SEAT_SHARE, Load, SEAT_SHARES};

/// Distance between the anterior superior iliac spines, at which obliquity is often measured:
/// about twice that of the seat bones (from memory).
pub const ASIS_SPACING: Length = Length::from_mm(240.0);

/// A fixed difference in height between the two sides of the pelvis.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Obliquity {
    /// The client's side that is lower.
    pub lower: Side,
    /// By how much, between `spacing` apart points.
    pub by: Length,
    /// Between which points it was measured: the seat bones' spacing where none.
    pub spacing: Option<Length>,
}

impl Obliquity {
    /// Measured at the seat bones.
    #[must_use]
    pub fn at_seat_bones(lower: Side, by: Length) -> Self {
        Self { lower, by, spacing: None }
    }

    /// Measured at the anterior superior iliac spines, where it is about twice as much.
    #[must_use]
    pub fn at_asis(lower: Side, by: Length) -> Self {
        Self { lower, by, spacing: Some(ASIS_SPACING) }
    }
}

/// How a thigh lies.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ThighPose {
    /// Degrees that the knee points outwards from straight ahead; inwards where negative.
    pub out: f64,
    /// Degrees that the knee is above the hip end; below where negative. Footrests that are too
    /// high lift the knees.
    pub up: f64,
}

/// A client as they sit. Where a measure is missing, a default stands, each with its source at
/// the method that gives it.
#[derive(Clone, Debug, PartialEq)]
pub struct SeatedClient {
    /// Body weight.
    pub weight: Mass,
    /// Body measures.
    pub measures: Measures,
    /// Sides with a history of pressure injury under the seat bone.
    pub injured: Sides<bool>,
    /// By how much the skin under the seat bones is sharper than is usual: its radius is the
    /// default's times this; 0.5 to 1.
    pub skin_sharpness: f64,
    /// Stiffness of soft tissue between bone and skin, Pa/m; none where the body is rigid, with
    /// the skin as it is under load. With it the skin is that without load, so that tissue counts
    /// once. 0.2 to 1.0 MPa/m are plausible, an estimate: 10 to 20 kPa over the 20 to 24 mm by which
    /// tissue under a seat bone thins on a rigid seat (Liu et al., Front. Bioeng. Biotechnol. 11,
    /// 1170768, 2023).
    pub tissue_stiffness: Option<f64>,
    /// A fixed obliquity, where there is one.
    pub obliquity: Option<Obliquity>,
    /// How much lower the left seat bone is than that says; higher where negative. For asking
    /// what an error in the measured obliquity does.
    pub left_lower_by: Length,
    /// How each thigh lies; where none, by the measures or straight ahead with a small spread.
    pub thighs: Sides<Option<ThighPose>>,
    /// Degrees by which both knees point to one side.
    pub windswept: Option<(Side, f64)>,
    /// How far in front of the cushion's rear edge the seat bones are; where none, a default.
    pub seat_bones_forward: Option<Length>,
    /// Height of the trochanters' skin above the seat bones' under load; where none, a default.
    pub trochanter_step: Option<Length>,
    /// Share of the body weight on the seat.
    pub seat_share: f64,
    /// How far in front of the seat bones the load's line is; where none, a default.
    pub load_forward: Option<Length>,
    /// How far right of the middle the load's line is; left where negative.
    pub load_right: Length,
    /// See [`Load::trunk_height`].
    pub trunk_height: Length,
    /// See [`Load::own_roll_stiffness`], N m per radian.
    pub own_roll_stiffness: f64,
    /// See [`Load::roll_at_ease`].
    pub roll_at_ease: f64,
}

/// Takes a value that lies between two bounds, and refuses NaN.
pub(super) fn within(
    what: BodyValue,
    value: f64,
    [least, most]: [f64; 2],
) -> Result<f64, BodyError> {
    let fits = least <= value && value <= most;
    if fits { Ok(value) } else { Err(BodyError { what, value, least, most }) }
}

fn metres(what: BodyValue, value: Length, mm: [f64; 2]) -> Result<f64, BodyError> {
    within(what, value.to_mm(), mm).map(|mm| mm * 1e-3)
}

impl SeatedClient {
    /// How far in front of the seat bones the load is where nothing else is known: as in the
    /// straight-seam reference cases (no source).
    pub const LOAD_FORWARD: Length = Length::from_mm(40.0);

    /// How far in front of the rear edge the seat bones are where nothing else is known.
    pub const SEAT_BONES_FORWARD: Length = Length::from_mm(125.0);

    /// The distance between the seat bones where it was not measured, as on the loaded-contour jig.
    pub const SEAT_BONE_SPACING: Length = Length::from_mm(120.0);

    /// A client of whom nothing but the weight is known.
    #[must_use]
    pub fn new(weight: Mass) -> Self {
        Self {
            weight,
            measures: Measures::default(),
            injured: Sides::default(),
            skin_sharpness: 1.0,
            tissue_stiffness: None,
            obliquity: None,
            left_lower_by: Length::ZERO,
            thighs: Sides::default(),
            windswept: None,
            seat_bones_forward: None,
            trochanter_step: None,
            seat_share: DEFAULT_SEAT_SHARE,
            load_forward: None,
            load_right: Length::ZERO,
            trunk_height: Length::ZERO,
            own_roll_stiffness: 0.0,
            roll_at_ease: 0.0,
        }
    }

    /// Returns hip width in metres: as measured, or from the weight by the mean of the fits for
    /// men and women in ANSUR II (Gordon et al., NATICK/TR-15/007, 2014), 219 + 1.875 m and
    /// 231 + 2.474 m mm for m kg, of fit adults.
    pub(super) fn hip_width(&self) -> Result<f64, BodyError> {
        let by_weight = || Length::from_mm(225.0 + 2.175 * self.weight.to_kg());
        metres(
            BodyValue::HipWidth,
            self.measures.hip_width.unwrap_or_else(by_weight),
            [150.0, 800.0],
        )
    }

    /// Returns the distance between the skin under the trochanters, m: as measured between their
    /// outsides less a button of the loaded-contour jig, 25 mm; where not measured, 0.81 of a
    /// cushion 25 mm wider than the hips, as on that jig.
    pub(super) fn trochanter_spacing(&self) -> Result<f64, BodyError> {
        let hips = self.hip_width()?;
        let spacing = match self.measures.trochanter_width {
            Some(outside) => outside.to_m() - 0.025,
            None => 0.81 * (hips + 0.025),
        };
        let most = hips.max(self.measures.trochanter_width.map_or(0.0, Length::to_m));
        let least = self.seat_bone_spacing()? + 0.060;
        within(BodyValue::TrochanterWidth, spacing * 1e3, [least * 1e3, most * 1e3])?;
        Ok(spacing)
    }

    /// Returns the distance between the seat bones, m: 120 mm where not measured, as on the
    /// loaded-contour jig. Men: 112 mm, sd 9 (Velagapudi and Ray, 2019); women 13 mm more (Chen,
    /// Scientific Reports 11, 2021).
    pub(super) fn seat_bone_spacing(&self) -> Result<f64, BodyError> {
        let spacing = self.measures.seat_bone_spacing.unwrap_or(Self::SEAT_BONE_SPACING);
        metres(BodyValue::SeatBoneSpacing, spacing, [50.0, 200.0])
    }

    /// Returns how far in front of the rear edge the seat bones are, m: 125 mm where not known,
    /// the place of the loaded-contour jig (from memory; 100 to 150 mm are to be expected).
    pub(super) fn seat_bones_forward(&self) -> Result<f64, BodyError> {
        let forward = self.seat_bones_forward.unwrap_or(Self::SEAT_BONES_FORWARD);
        metres(BodyValue::SeatBonesForward, forward, [50.0, 300.0])
    }

    /// Returns how high above the seat bones' skin that of the trochanters is, m: 40 mm where not
    /// known, the design value of the loaded-contour jig for adults; 25 mm is its other one.
    pub(super) fn trochanter_step(&self) -> Result<f64, BodyError> {
        let step = self.trochanter_step.unwrap_or(Length::from_mm(40.0));
        metres(BodyValue::TrochanterStep, step, [5.0, 80.0])
    }

    /// Returns the radius of the skin under a seat bone, m: 91.5 mm, and 65.9 mm with a history
    /// of pressure injury (Sonenblum et al., Journal of Tissue Viability 29, 69-75, 2020, 35
    /// people sitting on flat foam).
    pub(super) fn skin_radius(&self, side: Side) -> Result<f64, BodyError> {
        let sharpness = within(BodyValue::SkinSharpness, self.skin_sharpness, [0.5, 1.0])?;
        Ok(if self.injured[side] { 0.066 } else { 0.092 } * sharpness)
    }

    /// Returns the stiffness of soft tissue, Pa/m. Far above what is plausible it is a rigid body.
    pub(super) fn tissue_stiffness(&self) -> Result<Option<f64>, BodyError> {
        let checked = |stiffness| within(BodyValue::TissueStiffness, stiffness, [0.1e6, 1e12]);
        self.tissue_stiffness.map(checked).transpose()
    }

    /// Returns the thigh depth of a leg, m: 490 mm where not measured on either, about the median
    /// of men (502) and women (483) in ANSUR II.
    pub(super) fn thigh_depth(&self, side: Side) -> Result<f64, BodyError> {
        let depths = &self.measures.thigh_depth;
        let depth = depths[side].or(depths[side.other()]).unwrap_or(Length::from_mm(490.0));
        metres(BodyValue::ThighDepth, depth, [200.0, 750.0])
    }

    /// Returns by how much the right seat bone is higher than the left, m.
    pub(super) fn right_higher(&self) -> Result<f64, BodyError> {
        let more = metres(BodyValue::ObliquityError, self.left_lower_by, [-50.0, 50.0])?;
        let Some(obliquity) = self.obliquity else { return Ok(more) };
        let spacing = self.seat_bone_spacing()?;
        // The pelvis turns as a whole, so heights go with the distance between the points.
        let measured_at = obliquity.spacing.map_or(spacing, Length::to_m);
        let by = metres(BodyValue::Obliquity, obliquity.by, [0.0, 100.0])? * spacing / measured_at;
        Ok(match obliquity.lower {
            Side::Left => more + by,
            Side::Right => more - by,
        })
    }

    /// Returns the load: a share of the weight, 40 mm in front of the seat bones where nothing
    /// else is known, as in the straight-seam reference cases (no source).
    pub(super) fn load(&self) -> Result<Load, BodyError> {
        let kg = within(BodyValue::Weight, self.weight.to_kg(), [10.0, 300.0])?;
        let shares = [*SEAT_SHARES.start(), *SEAT_SHARES.end()];
        let share = within(BodyValue::SeatShare, self.seat_share, shares)?;
        let forward = self.load_forward.unwrap_or(Self::LOAD_FORWARD);
        let forward = metres(BodyValue::LoadForward, forward, [-50.0, 200.0])?;
        let right = metres(BodyValue::LoadRight, self.load_right, [-100.0, 100.0])?;
        metres(BodyValue::TrunkHeight, self.trunk_height, [0.0, 500.0])?;
        Ok(Load {
            weight: Load::weight_of(Mass::from_kg(kg), share),
            at: [right, self.seat_bones_forward()? + forward],
            trunk_height: self.trunk_height,
            own_roll_stiffness: self.own_roll_stiffness.max(0.0),
            roll_at_ease: self.roll_at_ease,
        })
    }
}
