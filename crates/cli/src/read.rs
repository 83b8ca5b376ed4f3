//! Reading a file: whole, as text, and never more of it than any of our files needs.

use std::fs::File;
use std::io::Read as _;
use std::path::Path;

use crate::failure::Failure;

/// The most bytes of a file that are read: 1 MB. Our own files have a few thousand.
const MOST: u64 = 1_000_000;

/// Returns the text of a file that was named on the command line.
///
/// # Errors
///
/// Fails where the file cannot be read, is larger than a megabyte or is not UTF-8.
pub(crate) fn text(path: &Path) -> Result<String, Failure> {
    let shown = path.display();
    let cannot = |error: &std::io::Error| cannot_read(path, error);
    let file = File::open(path).map_err(|error| cannot(&error))?;
    let about = file.metadata().map_err(|error| cannot(&error))?;
    if about.is_dir() {
        return Err(Failure::call(format!("`{shown}` is a folder, not a file")));
    }
    let mut bytes = Vec::new();
    if about.len() <= MOST {
        file.take(MOST + 1).read_to_end(&mut bytes).map_err(|error| cannot(&error))?;
    }
    if about.len() > MOST || bytes.len() as u64 > MOST {
        return Err(Failure::file(format!("`{shown}` is larger than 1 MB, so it was not read"))
            .hint(
                "layout, cell and client files have a few thousand bytes; is this the right file?",
            ));
    }
    String::from_utf8(bytes).map_err(|error| not_text(path, &error))
}

/// Words for a file that cannot be opened or read.
fn cannot_read(path: &Path, error: &std::io::Error) -> Failure {
    use std::io::ErrorKind::{NotFound, PermissionDenied};
    let shown = path.display();
    match error.kind() {
        NotFound => Failure::call(format!("there is no file `{shown}`")),
        PermissionDenied => Failure::call(format!("`{shown}` may not be read by this user")),
        _ => Failure::call(format!("`{shown}` cannot be read: {error}")),
    }
}

/// Words for bytes that are no UTF-8, with the line of the first of them.
fn not_text(path: &Path, error: &std::string::FromUtf8Error) -> Failure {
    let good = error.utf8_error().valid_up_to();
    let before = &error.as_bytes()[..good];
    let line = before.iter().filter(|&&byte| byte == b'\n').count() + 1;
    let byte = error.as_bytes()[good];
    Failure::file(format!(
        "`{}` is not UTF-8 text: line {line} has the byte 0x{byte:02X}, which does not belong there",
        path.display()
    ))
    .hint("save the file as UTF-8 in your text editor")
}
