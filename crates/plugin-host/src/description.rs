//! What a plugin says of itself, read from C with nothing trusted.

#![expect(unsafe_code, reason = "C hands over pointers; each block says why they hold")]

use std::ffi::{CStr, c_char};

use case::{BadDescription, BodyMeasure, PluginFaultKind};
use cushion::Name;
use plugin_abi::{
    SEATWRIGHT_ABI, SEATWRIGHT_HIP_WIDTH, SEATWRIGHT_MUST_BE_GIVEN, SEATWRIGHT_NO_MEASURE,
    SEATWRIGHT_SEAT_BONE_SPACING, SEATWRIGHT_THIGH_DEPTH_LEFT, SEATWRIGHT_THIGH_DEPTH_RIGHT,
    SEATWRIGHT_TROCHANTER_WIDTH, SeatwrightParameter1, SeatwrightPlugin1,
};

/// The most parameters that are taken.
const MOST_PARAMETERS: u32 = 64;
/// The longest version, in bytes.
const LONGEST_VERSION: usize = 32;
/// The longest text of a description, in bytes.
const LONGEST: usize = 1000;

/// What a plugin is.
#[derive(Clone, Debug, PartialEq)]
pub struct Description {
    /// What files and the command line call it.
    pub name: Name,
    /// Its version.
    pub version: String,
    /// Whom its layout suits.
    pub about: String,
    /// Its parameters.
    pub parameters: Vec<Parameter>,
}

/// A parameter of a plugin's layout.
#[derive(Clone, Debug, PartialEq)]
pub struct Parameter {
    /// What files and the command line call it.
    pub name: Name,
    /// What it means.
    pub words: String,
    /// Its unit, or nothing.
    pub unit: String,
    /// The least value.
    pub least: f64,
    /// The greatest value.
    pub greatest: f64,
    /// The value where none is given.
    pub standard: f64,
    /// The client's measure by which it may be set.
    pub measure: Option<BodyMeasure>,
    /// Whether the default is refused.
    pub must_be_given: bool,
}

/// The measure that a number of the contract stands for; none where it is no such number.
pub(crate) fn measure_of_code(code: u32) -> Option<Option<BodyMeasure>> {
    Some(match code {
        SEATWRIGHT_NO_MEASURE => None,
        SEATWRIGHT_SEAT_BONE_SPACING => Some(BodyMeasure::SeatBoneSpacing),
        SEATWRIGHT_THIGH_DEPTH_LEFT => Some(BodyMeasure::ThighDepthLeft),
        SEATWRIGHT_THIGH_DEPTH_RIGHT => Some(BodyMeasure::ThighDepthRight),
        SEATWRIGHT_HIP_WIDTH => Some(BodyMeasure::HipWidth),
        SEATWRIGHT_TROCHANTER_WIDTH => Some(BodyMeasure::TrochanterWidth),
        _ => return None,
    })
}

/// The number of the contract for a measure.
pub(crate) fn measure_code(measure: Option<BodyMeasure>) -> u32 {
    match measure {
        None => SEATWRIGHT_NO_MEASURE,
        Some(BodyMeasure::SeatBoneSpacing) => SEATWRIGHT_SEAT_BONE_SPACING,
        Some(BodyMeasure::ThighDepthLeft) => SEATWRIGHT_THIGH_DEPTH_LEFT,
        Some(BodyMeasure::ThighDepthRight) => SEATWRIGHT_THIGH_DEPTH_RIGHT,
        Some(BodyMeasure::HipWidth) => SEATWRIGHT_HIP_WIDTH,
        Some(BodyMeasure::TrochanterWidth) => SEATWRIGHT_TROCHANTER_WIDTH,
    }
}

/// Reads a plugin's description.
///
/// # Safety
///
/// `entry` must be null, or lead to memory that stays valid and holds at least a version and a
/// size, and as much as the size says, as the contract demands.
pub(crate) unsafe fn read(entry: *const SeatwrightPlugin1) -> Result<Description, PluginFaultKind> {
    let bad = PluginFaultKind::BadDescription;
    if entry.is_null() {
        return Err(bad(BadDescription::Null));
    }
    // SAFETY: version and size are there in every version of the contract.
    let (abi, size) = unsafe { ((*entry).abi, (*entry).size) };
    if abi != SEATWRIGHT_ABI {
        return Err(PluginFaultKind::OtherVersion { found: abi });
    }
    if size as usize != size_of::<SeatwrightPlugin1>() {
        return Err(bad(BadDescription::Size));
    }
    // SAFETY: of this version and size.
    let entry = unsafe { &*entry };
    if entry.pattern.is_none() || entry.release.is_none() {
        return Err(bad(BadDescription::NoFunction));
    }
    if entry.parameter_count > MOST_PARAMETERS {
        return Err(bad(BadDescription::TooManyParameters));
    }
    let parameters = if entry.parameter_count == 0 {
        &[]
    } else if entry.parameters.is_null() {
        return Err(bad(BadDescription::NoParameters));
    } else if entry.parameter_size as usize != size_of::<SeatwrightParameter1>() {
        return Err(bad(BadDescription::ParameterSize));
    } else {
        // SAFETY: as many of this size as it says.
        unsafe { std::slice::from_raw_parts(entry.parameters, entry.parameter_count as usize) }
    };
    // SAFETY: texts are null, or end with a zero.
    unsafe {
        Ok(Description {
            name: name(entry.name).ok_or(bad(BadDescription::Name))?,
            version: version(entry.version).ok_or(bad(BadDescription::Version))?,
            about: text(entry.about).ok_or(bad(BadDescription::About))?,
            parameters: parameters
                .iter()
                .map(|one| parameter(one).ok_or(bad(BadDescription::Parameter)))
                .collect::<Result<_, _>>()?,
        })
    }
}

/// # Safety
///
/// The texts of the parameter must be null or end with a zero.
unsafe fn parameter(parameter: &SeatwrightParameter1) -> Option<Parameter> {
    // SAFETY: as the caller promises.
    let (name, words, unit) =
        unsafe { (name(parameter.name)?, text(parameter.words)?, text(parameter.unit)?) };
    let (least, greatest, standard) = (parameter.least, parameter.greatest, parameter.standard);
    let finite = least.is_finite() && greatest.is_finite();
    (finite && least <= standard && standard <= greatest).then_some(())?;
    Some(Parameter {
        name,
        words,
        unit,
        least,
        greatest,
        standard,
        measure: measure_of_code(parameter.measure)?,
        must_be_given: parameter.flags & SEATWRIGHT_MUST_BE_GIVEN != 0,
    })
}

/// # Safety
///
/// `text` must be null or end with a zero.
unsafe fn name(text_: *const c_char) -> Option<Name> {
    // SAFETY: as the caller promises.
    Name::new(&unsafe { text(text_) }?)
}

/// A version, which is printed on paper beside the name.
///
/// # Safety
///
/// `text` must be null or end with a zero.
unsafe fn version(text_: *const c_char) -> Option<String> {
    // SAFETY: as the caller promises.
    let version = unsafe { text(text_) }?;
    let fits = (1..=LONGEST_VERSION).contains(&version.len());
    (fits && version.chars().all(|c| c.is_ascii_graphic())).then_some(version)
}

/// # Safety
///
/// `text` must be null or end with a zero.
unsafe fn text(text: *const c_char) -> Option<String> {
    if text.is_null() {
        return None;
    }
    // SAFETY: as the caller promises.
    let text = unsafe { CStr::from_ptr(text) }.to_str().ok()?;
    let plain = text.len() <= LONGEST && !text.chars().any(char::is_control);
    plain.then(|| text.to_owned())
}
