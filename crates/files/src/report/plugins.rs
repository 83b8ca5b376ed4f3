//! The reports on plugins.

use schemars::JsonSchema;
use serde::Serialize;

use super::json;

/// A plugin's file.
#[derive(Serialize, JsonSchema)]
pub struct PluginFile {
    /// The name by which it is called.
    pub name: String,
    /// Its path.
    pub path: String,
}

/// Plugins that were named or installed; none was run.
#[derive(Serialize, JsonSchema)]
pub(super) struct PluginsBody {
    /// The plugins, by the names of their files.
    plugins: Vec<PluginFile>,
    /// What lies where others can put it, and was left out: sentences.
    not_trusted: Vec<String>,
    /// The folders in which they are looked for.
    folders: Vec<String>,
}

/// Returns the report on the plugins that there are.
#[must_use]
pub fn plugins(
    program: &str,
    plugins: Vec<PluginFile>,
    not_trusted: Vec<String>,
    folders: Vec<String>,
) -> String {
    json("plugins", program, Vec::new(), PluginsBody { plugins, not_trusted, folders })
}

/// What a plugin says of itself.
#[derive(Serialize, JsonSchema)]
pub struct PluginSelf {
    /// Its name.
    pub name: String,
    /// Its version.
    pub version: String,
    /// What it draws.
    pub about: String,
    /// Its parameters.
    pub parameters: Vec<PluginParameter>,
}

/// A parameter of a plugin.
#[derive(Serialize, JsonSchema)]
pub struct PluginParameter {
    /// Its name.
    pub name: String,
    /// What it means.
    pub about: String,
    /// Its unit.
    pub unit: String,
    /// The least that is taken.
    pub least: f64,
    /// The greatest that is taken.
    pub greatest: f64,
    /// What it is where none is given.
    pub standard: f64,
    /// Whether it must be given or measured.
    pub must_be_given: bool,
}

/// A plugin's own description.
#[derive(Serialize, JsonSchema)]
pub(super) struct PluginBody {
    plugin: PluginSelf,
    /// Its path.
    path: String,
    /// What came of drawing it, where it was checked.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    drawn: Vec<DrawnSize>,
}

/// What came of drawing a plugin's layout at a size.
#[derive(Serialize, JsonSchema)]
struct DrawnSize {
    /// Width x depth in mm.
    size_mm: String,
    /// How many compartments it has; null where it was not drawn.
    compartments: Option<usize>,
    /// What is wrong, or to be looked at: sentences.
    remarks: Vec<String>,
}

/// Returns the report on what a plugin says of itself.
#[must_use]
pub fn plugin(program: &str, plugin: PluginSelf, path: String) -> String {
    json("plugin", program, Vec::new(), PluginBody { plugin, path, drawn: Vec::new() })
}

/// Returns the report on a plugin that was checked: for each size how many compartments it has,
/// where it was drawn, and what is to be said.
#[must_use]
pub fn checked_plugin(
    program: &str,
    plugin: PluginSelf,
    path: String,
    drawn: Vec<(String, Option<usize>, Vec<String>)>,
) -> String {
    let drawn = drawn.into_iter().map(|(size_mm, compartments, remarks)| DrawnSize {
        size_mm,
        compartments,
        remarks,
    });
    json("plugin", program, Vec::new(), PluginBody { plugin, path, drawn: drawn.collect() })
}
