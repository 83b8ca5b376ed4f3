//! The folder that `new plugin` writes: a small plugin, and the crates that it is built from, so
//! that it builds anywhere and without network.

/// A file of the folder.
pub(crate) struct File {
    /// Its path in the folder.
    pub(crate) path: &'static str,
    /// Its text.
    pub(crate) text: &'static str,
}

macro_rules! file {
    ($path:literal, $source:literal) => {
        File { path: $path, text: include_str!($source) }
    };
}

/// All files.
pub(crate) const FILES: &[File] = &[
    file!("Cargo.toml", "plugin_template/plugin.toml"),
    file!("src/lib.rs", "plugin_template/plugin.rs.txt"),
    file!("seatwright/plugin-abi/Cargo.toml", "plugin_template/abi.toml"),
    file!("seatwright/plugin-abi/src/lib.rs", "../../plugin-abi/src/lib.rs"),
    file!(
        "seatwright/plugin-abi/include/seatwright_plugin.h",
        "../../plugin-abi/include/seatwright_plugin.h"
    ),
    file!("seatwright/plugin-sdk/Cargo.toml", "plugin_template/sdk.toml"),
    file!("seatwright/plugin-sdk/src/lib.rs", "../../plugin-sdk/src/lib.rs"),
    file!("seatwright/plugin-sdk/src/plugin.rs", "../../plugin-sdk/src/plugin.rs"),
    file!("seatwright/plugin-sdk/src/export.rs", "../../plugin-sdk/src/export.rs"),
];
