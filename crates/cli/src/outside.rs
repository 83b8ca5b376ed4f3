//! The outside of this program: folders on disk, layouts that are built in or drawn by plugins.

use std::path::Path;
use std::sync::Arc;

use case::{
    DrawnLayout, InTurn, LayoutError, LayoutRequest, LayoutSource, Measured, PluginFault,
    PluginFaultKind,
};
use casework::{Shelf, Surroundings};
use files::BuiltIn;
use shelf::DiskShelf;

use crate::arguments::PluginOptions;
use crate::plugins;

/// Files and layouts, as the command line and the environment place them.
pub(crate) struct Outside {
    shelf: DiskShelf,
    layouts: Layouts,
}

impl Outside {
    /// The outside with plugins where these options place them.
    pub(crate) fn new(options: &PluginOptions) -> Self {
        Self { shelf: DiskShelf::anywhere(), layouts: Layouts(options.clone()) }
    }

    /// What work on a case asks.
    pub(crate) fn surroundings(&self) -> Surroundings<'_> {
        Surroundings { shelf: &self.shelf, layouts: &self.layouts }
    }

    /// Where files are kept.
    pub(crate) fn shelf(&self) -> &dyn Shelf {
        &self.shelf
    }
}

/// Built-in layouts, then those of plugins where these options place them.
pub(crate) fn layouts(options: &PluginOptions) -> Arc<dyn LayoutSource> {
    Arc::new(Layouts(options.clone()))
}

/// The name by which the shelf knows a path.
pub(crate) fn name(path: &Path) -> String {
    path.display().to_string()
}

/// Built-in layouts, then those of plugins.
struct Layouts(PluginOptions);

impl LayoutSource for Layouts {
    fn layout(
        &self,
        request: &LayoutRequest,
        measured: Measured<'_>,
    ) -> Result<DrawnLayout, LayoutError> {
        let of_plugin = request.name.starts_with(plugin_host::PREFIX);
        if let Some((given, _)) = self.0.set.first().filter(|_| !of_plugin) {
            let (name, given) = (request.name.clone(), given.clone());
            return Err(LayoutError::NotSettable { name, given });
        }
        let plugins = plugins::plugins(&self.0).map_err(|error| PluginFault {
            plugin: request.name.clone(),
            kind: PluginFaultKind::NoChild(error.to_string()),
        })?;
        let plugins = plugins.with_settings(self.0.set.iter().cloned().collect());
        InTurn(vec![&BuiltIn, &plugins]).layout(request, measured)
    }

    fn names(&self) -> Vec<String> {
        let plugins = plugins::plugins(&self.0).map(|plugins| plugins.names());
        [BuiltIn.names(), plugins.unwrap_or_default()].concat()
    }
}
