//! Starter files, with a comment for each key.

/// A layout to begin from: four compartments in two rows.
#[must_use]
pub fn layout() -> &'static str {
    include_str!("texts/starter-layout.toml")
}

/// A cell to begin from.
#[must_use]
pub fn cell() -> &'static str {
    include_str!("texts/starter-cell.toml")
}

/// A client to begin from, in the order of the measuring form.
#[must_use]
pub fn client() -> &'static str {
    include_str!("texts/starter-client.toml")
}
