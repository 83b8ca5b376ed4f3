//! From words to values: layouts, cells and clients, built in or read from files.

use std::path::Path;

use case::{Client, Digest, LayoutRef};
use cushion::{Cell, Layout, MadeSize, Mass, Pattern, Size};
use files::{BUILT_IN_CELLS, BUILT_IN_LAYOUTS, Read, Text};
use plugin_host::Drawn;

use crate::failure::{Failure, Kind};
use crate::plugins::{self, Session};
use crate::read;
use crate::remarks::FileRemarks;

/// A value with the text that it was read from.
#[derive(Debug)]
pub(crate) struct Sourced<T> {
    pub(crate) value: T,
    /// What is to be said about the text, though it can be used; with its path and the text.
    pub(crate) file: FileRemarks,
    /// The plugin and its version, where one wrote the text.
    pub(crate) drawn_by: Option<String>,
}

impl<T> Sourced<T> {
    /// By which the text is known again.
    pub(crate) fn digest(&self) -> Digest {
        files::digest(&self.file.text)
    }

    /// Takes what was understood of a text.
    fn new(path: String, text: String, read: Read<T>) -> Result<Self, Failure> {
        let Read { value, remarks } = read;
        let file = FileRemarks { path, text, remarks };
        match value {
            Some(value) => Ok(Self { value, file, drawn_by: None }),
            None => Err(Failure::wrong_file(file)),
        }
    }
}

/// Reads a client's file.
pub(crate) fn client(path: &Path) -> Result<Sourced<Client>, Failure> {
    client_text(path.display().to_string(), read::text(path)?)
}

/// Reads a client from the text of a file that is called `path`.
pub(crate) fn client_text(path: String, text: String) -> Result<Sourced<Client>, Failure> {
    let read = files::read_client(&text);
    Sourced::new(path, text, read)
}

/// Finds the layout that the command line names; a plugin's is drawn for the size.
pub(crate) fn layout(
    word: &str,
    size: Size,
    session: &Session<'_>,
) -> Result<Sourced<Layout>, Failure> {
    if let Some(name) = word.strip_prefix("plugin:") {
        return drawn(plugins::draw(session, name, size, [], None)?);
    }
    let found = named("layout", word, BUILT_IN_LAYOUTS, Path::new(""))?;
    let read = files::read_layout(&found.text);
    Sourced::new(found.path, found.text, read)
}

/// A layout that a plugin drew.
fn drawn(drawn: Drawn) -> Result<Sourced<Layout>, Failure> {
    let path = format!("plugin {}", drawn.drawn_by);
    let file = FileRemarks { path, text: drawn.text, remarks: Vec::new() };
    Ok(Sourced { value: drawn.layout, file, drawn_by: Some(drawn.drawn_by) })
}

/// Finds the layout that a client's file names, from a folder.
pub(crate) fn layout_of(
    client: &Sourced<Client>,
    folder: &Path,
    session: &Session<'_>,
) -> Result<Sourced<Layout>, Failure> {
    let word = match &client.value.cushion.layout {
        LayoutRef::Named { name, parameters } if name.starts_with("plugin:") => {
            let (size, given) = (client.value.cushion.size, parameters.clone());
            let name = name.trim_start_matches("plugin:");
            let found = plugins::draw(session, name, size, given, Some(&client.value));
            let found = found.map_err(|failure| match failure.kind() {
                // A missing measure, a value out of range: the client's file can say otherwise.
                Kind::Call => failure.named_in(&client.file, "cushion", "layout"),
                _ => failure,
            });
            return drawn(found?);
        }
        LayoutRef::Named { name, .. } | LayoutRef::File(name) => name,
    };
    let found = named("layout", word, BUILT_IN_LAYOUTS, folder)
        .map_err(|failure| failure.named_in(&client.file, "cushion", "layout"))?;
    let read = files::read_layout(&found.text);
    Sourced::new(found.path, found.text, read)
}

/// Finds the cell that the command line names; the first built-in one where it names none.
pub(crate) fn cell(word: Option<&str>) -> Result<Sourced<Cell>, Failure> {
    let found =
        named("cell", word.unwrap_or(BUILT_IN_CELLS[0].name), BUILT_IN_CELLS, Path::new(""))?;
    let read = files::read_cell(&found.text);
    Sourced::new(found.path, found.text, read)
}

/// Finds the cell that a client's file names, from a folder.
pub(crate) fn cell_of(client: &Sourced<Client>, folder: &Path) -> Result<Sourced<Cell>, Failure> {
    let found = named("cell", &client.value.cushion.cell, BUILT_IN_CELLS, folder)
        .map_err(|failure| failure.named_in(&client.file, "cushion", "cell"))?;
    let read = files::read_cell(&found.text);
    Sourced::new(found.path, found.text, read)
}

/// A text and where it comes from.
struct Found {
    path: String,
    text: String,
}

/// Finds the text that a word means: a built-in name, else a path from a folder.
fn named(what: &str, word: &str, built_in: &[Text], folder: &Path) -> Result<Found, Failure> {
    if let Some(known) = built_in.iter().find(|known| known.name == word) {
        let path = format!("built-in {what} {word}");
        return Ok(Found { path, text: known.text.to_owned() });
    }
    let path = folder.join(word);
    let looks_like_a_name = !word.contains(['/', '\\', '.']);
    if looks_like_a_name && !path.exists() {
        let names: Vec<String> = built_in.iter().map(|known| format!("`{}`", known.name)).collect();
        return Err(Failure::call(format!("no {what} is called `{word}`"))
            .hint(format!("built in: {}; or give the path of a {what} file", names.join(", "))));
    }
    Ok(Found { text: read::text(&path)?, path: path.display().to_string() })
}

/// Draws a layout at a size; remarks on it go to the others on its file.
///
/// # Errors
///
/// Fails where the layout cannot be made at that size.
pub(crate) fn pattern(layout: &mut Sourced<Layout>, size: Size) -> Result<Pattern, Failure> {
    let rating = layout.value.made(size).map_or(Mass::ZERO, |made| made.max_user_weight);
    let here = vec![MadeSize { size, max_user_weight: rating }];
    let faults = cushion::check_layout(&Layout { sizes: here, ..layout.value.clone() });
    layout.file.remarks.extend(files::layout_remarks(&layout.file.text, &faults));
    match cushion::arrange(&layout.value, size) {
        Ok(pattern) if !layout.file.is_wrong() => Ok(pattern),
        _ => Err(Failure::wrong_file(layout.file.clone())),
    }
}
