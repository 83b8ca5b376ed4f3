//! `restore`: a client's file made anew from the code on a card.

use std::path::{Path, PathBuf, absolute};

use case::Finding;
use casework::Lost;
use words::Begun;

use crate::arguments::Restore;
use crate::failure::Failure;
use crate::output_paths;
use crate::outputs;
use crate::outside::{Outside, name};
use crate::say;
use crate::setting::Setting;
use crate::written;

/// Writes a client's file where no file is yet.
pub(crate) fn run(arguments: &Restore, setting: Setting) -> Result<(), Failure> {
    let Restore { code, out, layout, cell, serial, plugins } = arguments;
    output_paths::has_ending(out, "toml")?;
    let outside = Outside::new(plugins);
    let text = match is_file(code) {
        true => casework::code_in_pdf(outside.surroundings(), code)?,
        false => code.clone(),
    };
    let named = |file: &Option<PathBuf>| {
        file.as_deref().map(|file| (name(file), as_named_beside(out, file)))
    };
    let (layout, cell) = (named(layout), named(cell));
    let lost = Lost {
        text: &text,
        layout: layout.as_ref().map(|(file, named)| [file.as_str(), named.as_str()]),
        cell: cell.as_ref().map(|(file, named)| [file.as_str(), named.as_str()]),
        parameters: &plugins.set,
        serial: serial.as_deref(),
        client: None,
    };
    let edition = (setting.today()?, say::language());
    let made = casework::restored(outside.surroundings(), &lost, &name(out), edition)?;
    outputs::new(&outside, out, made.text.as_bytes())?;
    let file = out.display().to_string();
    let words = say::language().begun(&Begun::Restored { file: &file }) + "\n";
    let findings = [Finding::Restored(made.restored)];
    written::tell(setting.terminal, [out.as_path()], (&findings, None), &words)
}

/// Whether the words name a PDF, and are not the code itself.
fn is_file(words: &str) -> bool {
    let path = Path::new(words);
    path.extension().is_some_and(|own| own.eq_ignore_ascii_case("pdf")) || path.is_file()
}

/// How a client's file names another file: as it stands beside it, else from the root, so that it is
/// found whatever folder one works in.
fn as_named_beside(client: &Path, file: &Path) -> String {
    let folder = |path: &Path| absolute(path).ok()?.parent().map(Path::to_path_buf);
    let beside = folder(client).is_some() && folder(client) == folder(file);
    match file.file_name().filter(|_| beside) {
        Some(own) => own.to_string_lossy().into_owned(),
        None => name(&absolute(file).unwrap_or_else(|_| file.to_owned())),
    }
}
