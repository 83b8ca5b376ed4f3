//! Plugins as a source of layouts.

use std::cell::RefCell;
use std::collections::BTreeMap;
use std::path::PathBuf;

use cushion::{Layout, LayoutRequest, LayoutSource, Length, Name, Size, arrange};
use files::{Read, layout_remarks, read_layout};

use crate::description::{Description, Measure, Parameter};
use crate::{Fault, FaultKind, Isolation, Limits, Places, Running, Whose};

/// A layout that a plugin drew.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawn {
    /// The layout, made in the one size that was asked for.
    pub layout: Layout,
    /// The plugin's answer, by whose digest the pattern is known again.
    pub text: String,
    /// The plugin's name and version.
    pub drawn_by: String,
}

/// Plugins in their places, each started once, when it is first needed.
pub struct Plugins {
    places: Places,
    isolation: Isolation,
    limits: Limits,
    started: RefCell<BTreeMap<PathBuf, Running>>,
}

impl Plugins {
    /// Plugins that are looked for in `places`.
    #[must_use]
    pub fn new(places: Places, isolation: Isolation, limits: Limits) -> Self {
        Self { places, isolation, limits, started: RefCell::default() }
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
    pub fn describe(&self, file: PathBuf) -> Result<Description, Fault> {
        self.with(file, |running| Ok(running.description().clone()))
    }

    /// Describes the plugin of a name.
    ///
    /// # Errors
    ///
    /// Fails where there is none, or it cannot be started.
    pub fn describe_named(&self, name: &Name) -> Result<Description, Fault> {
        self.describe(self.places.find(name)?)
    }

    /// Draws a layout: values that are given, then those that `measured` knows, then defaults.
    ///
    /// # Errors
    ///
    /// Fails where a value is missing or out of range, or the plugin is at fault.
    pub fn draw(
        &self,
        request: &LayoutRequest,
        measured: &dyn Fn(Measure) -> Option<Length>,
    ) -> Result<Drawn, Fault> {
        let file = self.places.find(&request.name)?;
        self.with(file, |running| {
            let description = running.description().clone();
            let fault = |kind| Fault { plugin: request.name.to_string(), kind };
            if description.name != request.name {
                return Err(fault(FaultKind::OtherName { found: description.name.to_string() }));
            }
            let values = values(&description, request, measured).map_err(fault)?;
            let (width, depth) = (request.size.width(), request.size.depth());
            let text = running.pattern((width.to_mm(), depth.to_mm()), &values)?;
            let layout = read_answer(&text, request.size).map_err(fault)?;
            let drawn_by = format!("{} {}", description.name, description.version);
            Ok(Drawn { layout, text, drawn_by })
        })
    }

    fn with<T>(
        &self,
        file: PathBuf,
        ask: impl FnOnce(&mut Running) -> Result<T, Fault>,
    ) -> Result<T, Fault> {
        let mut started = self.started.borrow_mut();
        if !started.contains_key(&file) {
            let running = Running::start(&file, &self.isolation, self.limits)?;
            started.insert(file.clone(), running);
        }
        let running = started.get_mut(&file).expect("it was just started");
        let answered = ask(running);
        if answered.as_ref().is_err_and(|fault| fault.kind.whose() != Whose::Asker) {
            // Whatever state it is in, it is not asked again.
            started.remove(&file);
        }
        answered
    }
}

impl LayoutSource for Plugins {
    type Error = Fault;

    fn layout(&self, request: &LayoutRequest) -> Option<Result<Layout, Fault>> {
        self.places.find(&request.name).ok()?;
        Some(self.draw(request, &|_| None).map(|drawn| drawn.layout))
    }
}

/// A value for each parameter, in order.
fn values(
    description: &Description,
    request: &LayoutRequest,
    measured: &dyn Fn(Measure) -> Option<Length>,
) -> Result<Vec<f64>, FaultKind> {
    let known = |name: &Name| description.parameters.iter().any(|known| known.name == *name);
    if let Some(given) = request.parameters.keys().find(|name| !known(name)) {
        let known = description.parameters.iter().map(|known| known.name.to_string()).collect();
        return Err(FaultKind::UnknownParameter { given: given.to_string(), known });
    }
    description.parameters.iter().map(|parameter| value(parameter, request, measured)).collect()
}

fn value(
    parameter: &Parameter,
    request: &LayoutRequest,
    measured: &dyn Fn(Measure) -> Option<Length>,
) -> Result<f64, FaultKind> {
    let given = request.parameters.get(&parameter.name).copied();
    let known = given.or_else(|| parameter.measure.and_then(measured).map(Length::to_mm));
    let value = match known {
        Some(value) => value,
        None if parameter.must_be_given => {
            return Err(FaultKind::NotGiven {
                parameter: parameter.name.to_string(),
                words: parameter.words.clone(),
            });
        }
        None => parameter.standard,
    };
    // NaN is in no range.
    if (parameter.least..=parameter.greatest).contains(&value) {
        return Ok(value);
    }
    Err(FaultKind::OutOfRange {
        parameter: parameter.name.to_string(),
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
pub fn read_answer(text: &str, size: Size) -> Result<Layout, FaultKind> {
    let Read { value, remarks } = read_layout(text);
    let bad = |remarks| FaultKind::BadLayout { text: text.to_owned(), remarks };
    let Some(layout) = value else { return Err(bad(remarks)) };
    if layout.made(size).is_none() {
        let sizes: Vec<String> = layout.sizes.iter().map(|made| made.size.to_string()).collect();
        let (asked, answered) = (size.to_string(), sizes.join(", "));
        return Err(FaultKind::OtherSize { asked, answered });
    }
    arrange(&layout, size).map_err(|faults| bad(layout_remarks(text, &faults)))?;
    let only = Layout { sizes: layout.made(size).into_iter().collect(), ..layout };
    let faults = cushion::check_layout(&only);
    let wrong = faults.iter().any(|fault| fault.kind.severity() == cushion::Severity::Error);
    if wrong { Err(bad(layout_remarks(text, &faults))) } else { Ok(only) }
}
