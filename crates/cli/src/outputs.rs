//! Outputs: whole or not at all, and several together or none of them.

use std::fs;
use std::io::{self, Write as _};
use std::path::{Path, PathBuf};

use casework::{Change, DrawnAs, Exported};
use sheets::Document;

use crate::failure::Failure;
use crate::output_paths;
use crate::outside::{Outside, name};

/// A file to be: its path and its bytes.
#[derive(Debug)]
pub(crate) struct Output {
    pub(crate) path: PathBuf,
    pub(crate) bytes: Vec<u8>,
}

/// The exported files in a folder.
pub(crate) fn in_folder(folder: &Path, exported: Vec<Exported>) -> Vec<Output> {
    let output = |own: Exported| Output { path: folder.join(own.name), bytes: own.bytes };
    exported.into_iter().map(output).collect()
}

/// Writes exported files into a folder, all or none; returns where they are. What is read is never
/// written over.
///
/// # Errors
///
/// See [`are_apart`] and [`all`].
pub(crate) fn papers(
    outside: &Outside,
    folder: &Path,
    exported: Vec<Exported>,
    read: &[&Path],
) -> Result<Vec<PathBuf>, Failure> {
    let outputs = in_folder(folder, exported);
    are_apart(read, &outputs)?;
    let paths = outputs.iter().map(|own| own.path.clone()).collect();
    all(outside, outputs)?;
    Ok(paths)
}

/// A drawing of one page in files, each written as its ending says.
///
/// # Errors
///
/// See [`output_paths::drawn_as`]; fails too where the page cannot be exported.
pub(crate) fn drawings(document: &Document, paths: &[PathBuf]) -> Result<Vec<Output>, Failure> {
    let output = |path: &PathBuf| {
        let bytes = casework::drawn_as(document, output_paths::drawn_as(path)?)?;
        Ok(Output { path: path.clone(), bytes })
    };
    paths.iter().map(output).collect()
}

/// A document in files, each written as its ending says; of several pages a drawing or a picture
/// gets one file each, numbered before the ending.
///
/// # Errors
///
/// See [`output_paths::drawn_as`]; fails too where a page cannot be exported.
pub(crate) fn pages(document: &Document, paths: &[PathBuf]) -> Result<Vec<Output>, Failure> {
    let mut outputs = Vec::new();
    for path in paths {
        let kind = output_paths::drawn_as(path)?;
        if kind == DrawnAs::Pdf || document.pages.len() == 1 {
            let bytes = casework::drawn_as(document, kind)?;
            outputs.push(Output { path: path.clone(), bytes });
            continue;
        }
        for (at, page) in document.pages.iter().enumerate() {
            let bytes = casework::page_drawn_as(page, kind)?;
            outputs.push(Output { path: numbered(path, at + 1), bytes });
        }
    }
    Ok(outputs)
}

/// The path with a number before its ending.
fn numbered(path: &Path, number: usize) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default().to_string_lossy();
    let ending = path.extension().unwrap_or_default().to_string_lossy();
    path.with_file_name(format!("{stem}-{number}.{ending}"))
}

/// Refuses outputs that would be written over an input or over each other.
///
/// # Errors
///
/// See [`output_paths::are_apart`].
pub(crate) fn are_apart(inputs: &[&Path], outputs: &[Output]) -> Result<(), Failure> {
    let written: Vec<&Path> = outputs.iter().map(|it| it.path.as_path()).collect();
    output_paths::are_apart(inputs, &written)
}

/// Writes one file, in place of one that is there.
///
/// # Errors
///
/// See [`all`].
pub(crate) fn one(outside: &Outside, path: &Path, bytes: Vec<u8>) -> Result<(), Failure> {
    all(outside, vec![Output { path: path.to_owned(), bytes }])
}

/// Writes all files, in place of those that are there, and makes the folders that they need.
///
/// A path that leads to a device or a pipe is written to directly.
///
/// # Errors
///
/// Fails where a file cannot be written; then nothing has changed.
pub(crate) fn all(outside: &Outside, outputs: Vec<Output>) -> Result<(), Failure> {
    let mut changes = Vec::new();
    for Output { path, bytes } in outputs {
        if path.exists() && !path.is_file() && !path.is_dir() {
            let written = write_to_device(&path, &bytes);
            written.map_err(|error| Failure::write(&path, &error))?;
        } else {
            changes.push(Change::output(name(&path), bytes));
        }
    }
    if changes.is_empty() { Ok(()) } else { Ok(outside.shelf().put(&changes)?) }
}

/// Writes a file that must not be there yet.
///
/// # Errors
///
/// Fails where something has that name, and leaves it as it is, or where it cannot be written.
pub(crate) fn new(outside: &Outside, path: &Path, bytes: &[u8]) -> Result<(), Failure> {
    // A folder that is not there is more likely a slip than a wish.
    if let Some(folder) = path.parent().filter(|folder| *folder != Path::new("")) {
        fs::metadata(folder).map_err(|error| Failure::write(path, &error))?;
    }
    Ok(outside.shelf().put(&[Change::new(name(path), bytes)])?)
}

/// Writes to something that is no file on a disk.
fn write_to_device(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let mut device = fs::OpenOptions::new().write(true).open(path)?;
    device.write_all(bytes)?;
    device.flush()
}
