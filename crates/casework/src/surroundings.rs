//! What work on a case asks of the outside: files and layouts, and nothing else.

use case::{LayoutSource, Trouble};

use crate::error::WorkError;
use crate::shelf::Shelf;

/// Where files and layouts come from.
#[derive(Clone, Copy)]
pub struct Surroundings<'a> {
    /// Where files are kept.
    pub shelf: &'a dyn Shelf,
    /// Where layouts come from that are no files.
    pub layouts: &'a dyn LayoutSource,
}

impl Surroundings<'_> {
    /// Returns the text of a file.
    ///
    /// # Errors
    ///
    /// Fails where the file cannot be read, or is not UTF-8.
    pub fn text(&self, name: &str) -> Result<String, WorkError> {
        let bytes = self.shelf.read(name)?;
        String::from_utf8(bytes).map_err(|error| not_text(name, &error))
    }
}

/// Words for bytes that are no UTF-8, with the line of the first of them.
fn not_text(name: &str, error: &std::string::FromUtf8Error) -> WorkError {
    let good = error.utf8_error().valid_up_to();
    let before = &error.as_bytes()[..good];
    let line = before.iter().filter(|&&byte| byte == b'\n').count() + 1;
    let byte = error.as_bytes()[good];
    WorkError::file(Trouble::NotUtf8 { file: name.to_owned(), line, byte })
}
