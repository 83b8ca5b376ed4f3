//! Values of which no body is made.

/// A value that is no body's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BodyError {
    /// What it is.
    pub what: BodyValue,
    /// The value, in the unit of `what`.
    pub value: f64,
    /// The least that is taken.
    pub least: f64,
    /// The most that is taken.
    pub most: f64,
}

/// What a body is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum BodyValue {
    /// Body weight, kg.
    Weight,
    /// Hip width, mm.
    HipWidth,
    /// Trochanter width, mm.
    TrochanterWidth,
    /// Distance between the seat bones, mm.
    SeatBoneSpacing,
    /// Distance of the seat bones from the cushion's rear edge, mm.
    SeatBonesForward,
    /// Height of the trochanters' skin above the seat bones', mm.
    TrochanterStep,
    /// Share of the default radius of the skin under a seat bone.
    SkinSharpness,
    /// Stiffness of soft tissue, Pa/m.
    TissueStiffness,
    /// Thigh depth, mm.
    ThighDepth,
    /// Outward angle of a thigh, degrees.
    ThighOut,
    /// Upward angle of a thigh, degrees.
    ThighUp,
    /// Angle by which both knees point to one side, degrees.
    Windswept,
    /// Obliquity where it was measured, mm.
    Obliquity,
    /// Obliquity at the seat bones beside thighs swept so far that the form has no lowest point, mm.
    SweptObliquity,
    /// Error of the obliquity that is asked about, mm.
    ObliquityError,
    /// Share of the body weight on the seat.
    SeatShare,
    /// Distance of the load in front of the seat bones, mm.
    LoadForward,
    /// Distance of the load from the middle, mm.
    LoadRight,
    /// Height of the leaning trunk, mm.
    TrunkHeight,
}

impl BodyValue {
    /// All of them.
    pub const ALL: [Self; 19] = [
        Self::Weight,
        Self::HipWidth,
        Self::TrochanterWidth,
        Self::SeatBoneSpacing,
        Self::SeatBonesForward,
        Self::TrochanterStep,
        Self::SkinSharpness,
        Self::TissueStiffness,
        Self::ThighDepth,
        Self::ThighOut,
        Self::ThighUp,
        Self::Windswept,
        Self::Obliquity,
        Self::SweptObliquity,
        Self::ObliquityError,
        Self::SeatShare,
        Self::LoadForward,
        Self::LoadRight,
        Self::TrunkHeight,
    ];
}

impl std::fmt::Display for BodyError {
    /// For developers; people are told in words of their language.
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{:?} {} outside {}..={}", self.what, self.value, self.least, self.most)
    }
}

impl std::error::Error for BodyError {}
