//! The layouts and cells that the program carries with it.

use case::{DrawnLayout, LayoutError, LayoutRequest, LayoutSource, Measured};
use cushion::{Cell, Name};

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
            let (name, given) = (name.clone(), given.clone());
            return Err(LayoutError::NoParameters { name, given });
        }
        let layout = read_layout(text).value.expect("built-in texts are right");
        let origin = format!("built-in layout {name}");
        Ok(DrawnLayout { layout, text: text.to_owned(), origin, drawn_by: None })
    }

    fn names(&self) -> Vec<String> {
        BUILT_IN_LAYOUTS.iter().map(|text| text.name.to_owned()).collect()
    }
}

fn unknown(name: &str) -> LayoutError {
    let known = BUILT_IN_LAYOUTS.iter().map(|text| text.name.to_owned()).collect();
    let is_name = Name::new(name).is_some();
    let name = name.to_owned();
    // What is no name by its form may be one of another source's.
    if is_name {
        LayoutError::UnknownName { name, known }
    } else {
        LayoutError::OtherSource { name }
    }
}
