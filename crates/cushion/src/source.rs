//! Where layouts come from: built in, a file, a plugin.

use std::collections::BTreeMap;

use crate::{Layout, Name, Size};

/// What is asked of a source of layouts.
#[derive(Clone, Debug, PartialEq)]
pub struct LayoutRequest {
    /// The layout's name, without the word for its source.
    pub name: Name,
    /// The size that it is wanted for.
    pub size: Size,
    /// Values for a plugin's parameters, by name.
    pub parameters: BTreeMap<Name, f64>,
}

/// Something that knows layouts by name.
///
/// The built-in layouts and those of plugins come through this one door.
pub trait LayoutSource {
    /// Why a layout that the source knows cannot be had.
    type Error;

    /// Returns the layout, or `None` where this source does not know the name.
    fn layout(&self, request: &LayoutRequest) -> Option<Result<Layout, Self::Error>>;
}
