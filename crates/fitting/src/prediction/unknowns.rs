//! What is not known of cover, cells, load and body: each with its usual value and its range.
//!
//! The ranges serve twice: they are run through for the spread of a prediction, and they are what
//! is believed before a check has said more.

use cushion::Length;
use mechanics::{Parameters, SeatedClient};

/// Something that is not known, and matters.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Unknown {
    /// How much of their give walls between compartments use.
    InnerGive,
    /// How much of their give outer walls use.
    OuterGive,
    /// How far the seat under the cushion sags.
    Sag,
    /// Tension of the taut cover.
    TautTension,
    /// How much slack the cover has.
    Slack,
    /// How the cells resist migrating.
    Migration,
    /// The pressure that presses voids together.
    VoidPressure,
    /// How densely the cells lie, and how large they are: the two act alike.
    Packing,
    /// Share of the body weight on the seat.
    SeatShare,
    /// How sharp the skin is under the seat bones.
    Sharpness,
    /// How far in front of the seat bones the load is.
    LoadForward,
    /// How far to the right of the middle the load is.
    LoadRight,
    /// Height of the left seat bone's skin below that of the right one that was not measured.
    Skew,
    /// How far the trunk follows the lean of the pelvis.
    Trunk,
    /// How the body itself resists rolling.
    OwnRollStiffness,
}

/// A value and the ends of its range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Range {
    pub(crate) low: f64,
    pub(crate) usual: f64,
    pub(crate) high: f64,
}

impl Range {
    /// The value at a place from -1, the low end, over 0, the usual value, to 1, the high end.
    fn at(self, place: f64) -> f64 {
        let end = if place < 0.0 { self.low } else { self.high };
        self.usual + place.abs() * (end - self.usual)
    }
}

/// Everything that a run depends on but the counts.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Assumptions {
    pub(crate) parameters: Parameters,
    pub(crate) sitter: SeatedClient,
    /// Factor on the volume of all cells.
    pub(crate) cells: f64,
    /// The seat under the cushion.
    pub(crate) seat: Seat,
}

/// How the seat under the cushion sags.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Seat {
    /// How far in the middle; a seat that is crowned has less than none.
    pub(crate) sag: Length,
    /// By how much that may be off.
    pub(crate) within: Length,
    /// Between the sides that hold it.
    pub(crate) width: Length,
}

impl Unknown {
    /// All, in a fixed order.
    pub(crate) const ALL: [Self; 15] = [
        Self::InnerGive,
        Self::OuterGive,
        Self::Sag,
        Self::TautTension,
        Self::Slack,
        Self::Migration,
        Self::VoidPressure,
        Self::Packing,
        Self::SeatShare,
        Self::Sharpness,
        Self::LoadForward,
        Self::LoadRight,
        Self::Skew,
        Self::Trunk,
        Self::OwnRollStiffness,
    ];

    /// Whether it leans a client to a side. That is looked at in a fitting check, and so counts in
    /// the spread of the lean alone.
    pub(crate) fn leans_aside(self) -> bool {
        matches!(self, Self::LoadRight | Self::Skew | Self::Trunk | Self::OwnRollStiffness)
    }

    /// The range around a setting's own value.
    pub(crate) fn range(self, setting: &Assumptions) -> Range {
        let usual = self.value(setting);
        let parameter = |name: &str| {
            let facts = setting.parameters.all().into_iter().find(|facts| facts.name == name);
            let [low, high] = facts.expect("the parameters have this one").range;
            Range { low, usual, high }
        };
        match self {
            Self::InnerGive => parameter("inner_give"),
            // Walls that are held cannot bow.
            Self::OuterGive if usual <= 0.0 => Range { low: 0.0, usual, high: 0.0 },
            Self::OuterGive => parameter("outer_give"),
            Self::Sag => {
                let within = setting.seat.within.to_m();
                Range { low: usual - within, usual, high: usual + within }
            }
            Self::TautTension => parameter("tension_taut"),
            Self::Slack => parameter("stretch"),
            Self::Migration => parameter("migration"),
            Self::VoidPressure => parameter("void_pressure"),
            // Packing of soft cells in small compartments is not to be trusted to better than
            // 5 % (Guo et al., Powder Technology 354, 842, 2019), nor is their volume.
            Self::Packing => Range { low: 0.95 * usual, usual, high: 1.05 * usual },
            // Where nothing is measured .65; up to a tenth less with more on the feet, and about
            // a sixth more without armrests (FAA AM 62-1, 1962; Gilsdorf, 1991). All that a seat
            // can carry, .9, is no plausible share of somebody whose feet are supported.
            Self::SeatShare => Range { low: 0.60f64.min(usual), usual, high: 0.75f64.max(usual) },
            // The radius with a history of injury over that without (Sonenblum et al., 2020);
            // never blunter than the default.
            Self::Sharpness => {
                let low = if setting.sitter.injured.left || setting.sitter.injured.right {
                    0.85
                } else {
                    0.72
                };
                Range { low, usual, high: 1.0 }
            }
            // An estimate: where a sitting person's weight is, to 20 mm.
            Self::LoadForward => Range { low: usual - 0.020, usual, high: usual + 0.020 },
            Self::LoadRight => Range { low: usual - 0.015, usual, high: usual + 0.015 },
            // The repeatability of an obliquity felt by hand; from memory, unverified.
            Self::Skew => Range { low: usual - 0.006, usual, high: usual + 0.006 },
            // From not at all to a third of the height of head, arms and trunk; an estimate.
            Self::Trunk => Range { low: 0.0, usual, high: usual.max(0.10) },
            // Nobody measured it: half or twice.
            Self::OwnRollStiffness => Range { low: 0.5 * usual, usual, high: 2.0 * usual },
        }
    }

    /// The value in a setting.
    fn value(self, setting: &Assumptions) -> f64 {
        match self {
            Self::InnerGive => setting.parameters.inner_give,
            Self::OuterGive => setting.parameters.outer_give,
            Self::Sag => setting.seat.sag.to_m(),
            Self::TautTension => setting.parameters.tension_taut,
            Self::Slack => setting.parameters.stretch,
            Self::Migration => setting.parameters.migration,
            Self::VoidPressure => setting.parameters.void_pressure,
            Self::Packing => setting.cells,
            Self::SeatShare => setting.sitter.seat_share,
            Self::Sharpness => setting.sitter.skin_sharpness,
            Self::LoadForward => {
                setting.sitter.load_forward.unwrap_or(SeatedClient::LOAD_FORWARD).to_m()
            }
            Self::LoadRight => setting.sitter.load_right.to_m(),
            Self::Skew => setting.sitter.left_lower_by.to_m(),
            Self::Trunk => setting.sitter.trunk_height.to_m(),
            Self::OwnRollStiffness => setting.sitter.own_roll_stiffness,
        }
    }

    /// Sets this unknown of a setting to a place in its range around the usual setting's value.
    pub(crate) fn place(self, usual: &Assumptions, setting: &mut Assumptions, place: f64) {
        let value = self.range(usual).at(place);
        match self {
            Self::InnerGive => setting.parameters.inner_give = value.clamp(0.0, 1.0),
            Self::OuterGive => setting.parameters.outer_give = value.clamp(0.0, 1.0),
            Self::Sag => setting.seat.sag = Length::from_m(value),
            Self::TautTension => setting.parameters.tension_taut = value.max(30.0),
            Self::Slack => setting.parameters.stretch = value.max(2e-3),
            Self::Migration => setting.parameters.migration = value.max(0.0),
            Self::VoidPressure => setting.parameters.void_pressure = value.max(300.0),
            Self::Packing => setting.cells = value,
            Self::SeatShare => setting.sitter.seat_share = value.clamp(0.60, 0.90),
            Self::Sharpness => setting.sitter.skin_sharpness = value.clamp(0.5, 1.0),
            Self::LoadForward => setting.sitter.load_forward = Some(Length::from_m(value)),
            Self::LoadRight => setting.sitter.load_right = Length::from_m(value.clamp(-0.1, 0.1)),
            Self::Skew => setting.sitter.left_lower_by = Length::from_m(value.clamp(-0.05, 0.05)),
            Self::Trunk => setting.sitter.trunk_height = Length::from_m(value.clamp(0.0, 0.5)),
            Self::OwnRollStiffness => setting.sitter.own_roll_stiffness = value.max(0.0),
        }
    }

    /// A setting with this unknown moved to a place in its range.
    pub(crate) fn moved(self, setting: &Assumptions, place: f64) -> Assumptions {
        let mut moved = setting.clone();
        self.place(setting, &mut moved, place);
        moved
    }
}
