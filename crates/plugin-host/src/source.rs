//! Plugins as a source of layouts.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use case::{
    DrawnLayout, LayoutError, LayoutRequest, LayoutSource, Measured, PluginFault, PluginFaultKind,
};
use cushion::{Layout, Length, Name, Size};
use files::{Read, layout_remarks, read_layout};

use crate::description::{Description, Parameter};
use crate::running::Running;
use crate::{Isolation, Limits, Places};

/// What a layout's name begins with where a plugin draws it.
pub const PREFIX: &str = "plugin:";

/// What is asked of a plugin.
#[derive(Clone, Debug, PartialEq)]
pub struct DrawRequest {
    /// The plugin's name.
    pub name: Name,
    /// The size that the layout is wanted for.
    pub size: Size,
    /// Values for its parameters, by name.
    pub parameters: BTreeMap<Name, f64>,
}

/// A layout that a plugin drew.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The layout, made in the one size that was asked for.
    pub layout: Layout,
    /// The plugin's answer, by whose digest the pattern is known again.
    pub text: String,
    /// The plugin's name and version, and the values of its parameters with their units.
    pub drawn_by: String,
}

/// Plugins in their places. Each question starts one anew and waits for it on the asking thread.
#[derive(Clone, Debug)]
pub struct Plugins {
    places: Places,
    isolation: Isolation,
    limits: Limits,
    settings: BTreeMap<Name, f64>,
}

impl Plugins {
    /// Plugins that are looked for in `places`.
    #[must_use]
    pub fn new(places: Places, isolation: Isolation, limits: Limits) -> Self {
        Self { places, isolation, limits, settings: BTreeMap::new() }
    }

    /// The same, but that these values go before those of a request to the source of layouts.
    #[must_use]
    pub fn with_settings(self, settings: BTreeMap<Name, f64>) -> Self {
        Self { settings, ..self }
    }

    /// The places.
    #[must_use]
    pub fn places(&self) -> &Places {
        &self.places
    }

    /// Describes the plugin in a file.
    ///
    /// # Errors
    ///
    /// Fails where it cannot be started.
    pub fn describe(&self, file: &Path) -> Result<Description, PluginFault> {
        Ok(self.start(file)?.description().clone())
    }

    /// Describes the plugin of a name.
    ///
    /// # Errors
    ///
    /// Fails where there is none, or it cannot be started.
    pub fn describe_named(&self, name: &Name) -> Result<Description, PluginFault> {
        self.describe(&self.places.find(name)?)
    }

    /// Draws a layout: values that are given, then those that `measured` knows, then defaults.
    ///
    /// # Errors
    ///
    /// Fails where a value is missing or out of range, or the plugin is at fault.
    pub fn draw(
        &self,
        request: &DrawRequest,
        measured: Measured<'_>,
    ) -> Result<Drawn, PluginFault> {
        let file: PathBuf = self.places.find(&request.name)?;
        let running = self.start(&file)?;
        let description = running.description().clone();
        let fault = |kind| PluginFault { plugin: request.name.to_string(), kind };
        if description.name != request.name {
            return Err(fault(PluginFaultKind::OtherName { found: description.name.clone() }));
        }
        let values = values(&description, request, measured).map_err(fault)?;
        let (width, depth) = (request.size.width(), request.size.depth());
        let text = running.pattern((width.to_mm(), depth.to_mm()), &values)?;
        let layout = read_answer(&text, request.size).map_err(fault)?;
        if layout.name != request.name {
            return Err(fault(PluginFaultKind::OtherLayout { found: layout.name.clone() }));
        }
        let drawn_by = drawn_by(&description, &values);
        Ok(Drawn { layout, text, drawn_by })
    }

    fn start(&self, file: &Path) -> Result<Running, PluginFault> {
        Running::start(file, &self.isolation, self.limits)
    }
}

impl LayoutSource for Plugins {
    fn layout(
        &self,
        request: &LayoutRequest,
        measured: Measured<'_>,
    ) -> Result<DrawnLayout, LayoutError> {
        let asked = request
            .name
            .strip_prefix(PREFIX)
            .ok_or_else(|| LayoutError::OtherSource { name: request.name.clone() })?;
        let name = Name::new(asked).ok_or_else(|| PluginFault {
            plugin: asked.to_owned(),
            kind: PluginFaultKind::NotAName,
        })?;
        let mut parameters = request.parameters.clone();
        parameters.extend(self.settings.clone());
        let request = DrawRequest { name, size: request.size, parameters };
        let Drawn { layout, text, drawn_by } = self.draw(&request, measured)?;
        let origin = format!("plugin {drawn_by}");
        Ok(DrawnLayout { layout, text, origin, drawn_by: Some(drawn_by) })
    }

    /// By the names of their files, each once: the named ones, then those of folder after folder.
    fn names(&self) -> Vec<String> {
        let mut names: Vec<String> = Vec::new();
        for (called, _) in self.places().all() {
            let name = format!("{PREFIX}{called}");
            if !names.contains(&name) {
                names.push(name);
            }
        }
        names
    }
}

/// How long a list of parameters may be that stands on every paper, in characters.
const MOST_SAID: usize = 160;

/// `rings 1.2 (pitch 110 mm, rows 3)`; of a longer list the beginning, and how many more there are:
/// the answer is known again by its digest.
fn drawn_by(description: &Description, values: &[f64]) -> String {
    let mut said = String::new();
    for (at, (parameter, value)) in description.parameters.iter().zip(values).enumerate() {
        // What an inch makes of a measure, without the rounding of its last digits.
        let value = (value * 1e6).round() / 1e6;
        let unit = if parameter.unit.is_empty() { "" } else { " " };
        let own = format!("{} {value}{unit}{}", parameter.name, parameter.unit);
        let comma = if at == 0 { "" } else { ", " };
        if said.chars().count() + own.chars().count() > MOST_SAID {
            said += &format!("{comma}{} more", values.len() - at);
            break;
        }
        said = said + comma + &own;
    }
    let with = if said.is_empty() { said } else { format!(" ({said})") };
    format!("{} {}{with}", description.name, description.version)
}

/// A value for each parameter, in order.
fn values(
    description: &Description,
    request: &DrawRequest,
    measured: Measured<'_>,
) -> Result<Vec<f64>, PluginFaultKind> {
    let known = |name: &Name| description.parameters.iter().any(|known| known.name == *name);
    if let Some(given) = request.parameters.keys().find(|name| !known(name)) {
        let known = description.parameters.iter().map(|known| known.name.clone()).collect();
        return Err(PluginFaultKind::UnknownParameter { given: given.clone(), known });
    }
    description.parameters.iter().map(|parameter| value(parameter, request, measured)).collect()
}

fn value(
    parameter: &Parameter,
    request: &DrawRequest,
    measured: Measured<'_>,
) -> Result<f64, PluginFaultKind> {
    let given = request.parameters.get(&parameter.name).copied();
    let known = given.or_else(|| parameter.measure.and_then(measured).map(Length::to_mm));
    let value = match known {
        Some(value) => value,
        None if parameter.must_be_given => {
            return Err(PluginFaultKind::NotGiven {
                parameter: parameter.name.clone(),
                words: parameter.words.clone(),
                measure: parameter.measure,
            });
        }
        None => parameter.standard,
    };
    // NaN is in no range.
    if (parameter.least..=parameter.greatest).contains(&value) {
        return Ok(value);
    }
    Err(PluginFaultKind::OutOfRange {
        parameter: parameter.name.clone(),
        value,
        least: parameter.least,
        greatest: parameter.greatest,
    })
}

/// Reads a plugin's answer by the same rules as any layout file, and draws it once.
///
/// # Errors
///
/// Fails where the text is no right layout, or is for another size.
pub fn read_answer(text: &str, size: Size) -> Result<Layout, PluginFaultKind> {
    let Read { value, remarks } = read_layout(text);
    let bad = |remarks| PluginFaultKind::BadLayout { text: text.to_owned(), remarks };
    let Some(layout) = value else { return Err(bad(remarks)) };
    if layout.made(size).is_none() {
        let answered = layout.sizes.iter().map(|made| made.size).collect();
        return Err(PluginFaultKind::OtherSize { asked: size, answered });
    }
    let only = Layout { sizes: layout.made(size).into_iter().collect(), ..layout };
    let faults = cushion::check_layout(&only, files::BuiltIn::cell().edge);
    let wrong = faults.iter().any(|fault| fault.kind.severity() == cushion::Severity::Error);
    if wrong { Err(bad(layout_remarks(text, &faults))) } else { Ok(only) }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn described(parameters: usize) -> Description {
        let parameter = |at: usize| Parameter {
            name: Name::new(&format!("ring-{at}")).expect("a name"),
            words: String::new(),
            unit: if at == 0 { String::new() } else { "mm".into() },
            least: 0.0,
            greatest: 500.0,
            standard: 10.0,
            measure: None,
            must_be_given: false,
        };
        Description {
            name: Name::new("rings").expect("a name"),
            version: "1.2".into(),
            about: String::new(),
            parameters: (0..parameters).map(parameter).collect(),
        }
    }

    #[test]
    fn parameters_are_said_with_their_units_and_never_make_a_page() {
        assert_eq!(drawn_by(&described(0), &[]), "rings 1.2");
        // 18 1/2 inches, as a length in metres gives them back.
        let measured = 0.4699 * 1000.0 + 1e-13;
        assert_eq!(
            drawn_by(&described(2), &[3.0, measured]),
            "rings 1.2 (ring-0 3, ring-1 469.9 mm)"
        );
        let many = drawn_by(&described(64), &[10.25; 64]);
        assert!(many.ends_with(" mm, 55 more)"), "{many}");
        assert!(many.chars().count() < MOST_SAID + 40, "{many}");
    }
}
