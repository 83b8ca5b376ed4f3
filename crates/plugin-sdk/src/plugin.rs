//! A plugin as its author sees it.

use std::fmt;
use std::ops::RangeInclusive;

use plugin_abi as abi;

/// A plugin: layouts that no layout file can express.
pub trait Plugin {
    /// Says what the plugin is.
    fn describe() -> Description;

    /// Lists the parameters.
    fn parameters() -> Vec<Parameter>;

    /// Returns the text of a layout file, in millimetres, for one size and one set of values.
    ///
    /// # Errors
    ///
    /// Refuses what cannot be drawn, in a sentence for the person who asked.
    fn pattern(request: &Request) -> Result<String, Refusal>;
}

/// What a plugin is.
#[derive(Clone, Copy, Debug)]
pub struct Description {
    /// What files and the command line call it: lower-case letters, digits, hyphens.
    pub name: &'static str,
    /// Its version.
    pub version: &'static str,
    /// Whom its layout suits, in a sentence.
    pub about: &'static str,
}

/// A measure of the client by which a parameter may be set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// Between the lowest points of the ischial tuberosities.
    SeatBoneSpacing,
    /// Back of the buttock to the back of the knee, on the client's left.
    ThighDepthLeft,
    /// The same on the client's right.
    ThighDepthRight,
    /// Greatest width of hips or thighs.
    HipWidth,
    /// Between the outsides of the trochanters.
    TrochanterWidth,
}

impl Measure {
    pub(crate) fn code(self) -> u32 {
        match self {
            Self::SeatBoneSpacing => abi::SEATWRIGHT_SEAT_BONE_SPACING,
            Self::ThighDepthLeft => abi::SEATWRIGHT_THIGH_DEPTH_LEFT,
            Self::ThighDepthRight => abi::SEATWRIGHT_THIGH_DEPTH_RIGHT,
            Self::HipWidth => abi::SEATWRIGHT_HIP_WIDTH,
            Self::TrochanterWidth => abi::SEATWRIGHT_TROCHANTER_WIDTH,
        }
    }
}

/// A parameter of a plugin's layout.
#[derive(Clone, Debug)]
pub struct Parameter {
    pub(crate) name: &'static str,
    pub(crate) words: &'static str,
    pub(crate) unit: &'static str,
    pub(crate) range: RangeInclusive<f64>,
    pub(crate) standard: f64,
    pub(crate) measure: Option<Measure>,
    pub(crate) must_be_given: bool,
}

impl Parameter {
    /// A parameter with what it means, its unit (`mm` or nothing), its range and the value where
    /// none is given.
    #[must_use]
    pub fn new(
        name: &'static str,
        words: &'static str,
        unit: &'static str,
        range: RangeInclusive<f64>,
        standard: f64,
    ) -> Self {
        Self { name, words, unit, range, standard, measure: None, must_be_given: false }
    }

    /// The same, set by a measure of the client where the client's file has it.
    #[must_use]
    pub fn bound_to(self, measure: Measure) -> Self {
        Self { measure: Some(measure), ..self }
    }

    /// The same, never left at its default: it must be given, or measured on the client.
    #[must_use]
    pub fn must_be_given(self) -> Self {
        Self { must_be_given: true, ..self }
    }
}

/// What a plugin is asked for.
#[derive(Clone, Debug)]
pub struct Request {
    /// Width of the cushion, mm.
    pub width_mm: f64,
    /// Depth of the cushion, mm.
    pub depth_mm: f64,
    pub(crate) values: Vec<(&'static str, f64)>,
}

impl Request {
    /// A request as the host makes it, for tests of a plugin without a host: every parameter at
    /// its default, but for the values given.
    ///
    /// # Panics
    ///
    /// Panics where a value is given to a parameter that the plugin does not have, or outside of
    /// its range: the host asks no plugin for that.
    #[must_use]
    pub fn of<P: Plugin>(width_mm: f64, depth_mm: f64, given: &[(&str, f64)]) -> Self {
        let parameters = P::parameters();
        for (name, value) in given {
            let known = parameters.iter().find(|parameter| parameter.name == *name);
            let fits = known.is_some_and(|parameter| parameter.range.contains(value));
            assert!(fits, "the plugin has no parameter `{name}` that takes {value}");
        }
        let value = |parameter: Parameter| {
            let found = given.iter().find(|(name, _)| *name == parameter.name);
            (parameter.name, found.map_or(parameter.standard, |(_, value)| *value))
        };
        Self { width_mm, depth_mm, values: parameters.into_iter().map(value).collect() }
    }

    /// The value of a parameter.
    ///
    /// # Panics
    ///
    /// Panics where the plugin has no such parameter: a mistake of the plugin, which the host
    /// hears as an error.
    #[must_use]
    pub fn value(&self, name: &str) -> f64 {
        let found = self.values.iter().find(|(known, _)| *known == name);
        found.unwrap_or_else(|| panic!("the plugin has no parameter `{name}`")).1
    }
}

/// Why a pattern cannot be drawn as it was asked for.
#[derive(Clone, Debug, PartialEq)]
pub struct Refusal(String);

impl Refusal {
    /// A refusal in a sentence for the person who asked: what is wrong and what to do.
    #[must_use]
    pub fn new(reason: impl Into<String>) -> Self {
        Self(reason.into())
    }
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}
