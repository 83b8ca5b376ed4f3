//! The layouts and cells that the program carries with it.

use cushion::{
    Cell, DrawnLayout, LayoutError, LayoutRequest, LayoutSource, Measured, Name, NoLayout,
};

use crate::{Read, read_cell, read_layout};

/// A built-in text and the name by which it is called.
#[derive(Clone, Copy, Debug)]
pub struct Text {
    /// The name, which the text says too.
    pub name: &'static str,
    /// The text.
    pub text: &'static str,
}

macro_rules! layouts {
    ($($name:literal),+ $(,)?) => {
        &[$(Text { name: $name, text: include_str!(concat!("../../../layouts/", $name, ".toml")) }),+]
    };
}

/// The built-in layouts; to add one, put its file in `layouts/` and its name here.
pub const BUILT_IN_LAYOUTS: &[Text] = layouts!["row-six", "island-eight", "curved-ten"];

/// The built-in cells.
pub const BUILT_IN_CELLS: &[Text] =
    &[Text { name: "pillow-25", text: include_str!("texts/pillow-25.toml") }];

/// Returns the text of a built-in layout.
#[must_use]
pub fn built_in_layout(name: &str) -> Option<&'static str> {
    BUILT_IN_LAYOUTS.iter().find(|text| text.name == name).map(|text| text.text)
}

/// Returns the text of a built-in cell.
#[must_use]
pub fn built_in_cell(name: &str) -> Option<&'static str> {
    BUILT_IN_CELLS.iter().find(|text| text.name == name).map(|text| text.text)
}

/// The built-in layouts as a source.
#[derive(Clone, Copy, Debug, Default)]
pub struct BuiltIn;

impl BuiltIn {
    /// Returns the built-in cell that stands where no other is named.
    ///
    /// # Panics
    ///
    /// Never: a test reads every built-in text.
    #[must_use]
    pub fn cell() -> Cell {
        let Read { value, .. } = read_cell(BUILT_IN_CELLS[0].text);
        value.expect("built-in texts are right")
    }
}

impl LayoutSource for BuiltIn {
    fn layout(&self, request: &LayoutRequest, _: Measured<'_>) -> Result<DrawnLayout, LayoutError> {
        let name = &request.name;
        let text = built_in_layout(name).ok_or_else(|| unknown(name))?;
        if let Some(given) = request.parameters.keys().next() {
            return Err(no_parameters(name, given.as_str()));
        }
        let layout = read_layout(text).value.expect("built-in texts are right");
        let origin = format!("built-in layout {name}");
        Ok(DrawnLayout { layout, text: text.to_owned(), origin, drawn_by: None })
    }
}

fn unknown(name: &str) -> LayoutError {
    let known: Vec<String> = BUILT_IN_LAYOUTS.iter().map(|text| text.name.to_owned()).collect();
    let listed = known.iter().map(|name| format!("`{name}`")).collect::<Vec<_>>().join(", ");
    // What is no name by its form may be one of another source's.
    let why = match Name::new(name) {
        Some(_) => NoLayout::UnknownName { known },
        None => NoLayout::OtherSource,
    };
    LayoutError {
        why,
        said: format!("no layout is called `{name}`"),
        advice: Some(format!("built in: {listed}; or give the path of a layout file")),
    }
}

fn no_parameters(name: &str, given: &str) -> LayoutError {
    LayoutError {
        why: NoLayout::UnknownParameter { given: given.to_owned(), known: Vec::new() },
        said: format!("the built-in layout `{name}` has no parameter `{given}`"),
        advice: Some("take the parameters away".to_owned()),
    }
}
