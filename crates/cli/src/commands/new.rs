//! `new`: begins a file, with comments that explain each line.

use std::path::Path;

use case::FileKind;
use casework::Whose;
use words::{Begun, OutputFault};

use crate::arguments::{New, PluginOptions, Starter};
use crate::failure::Failure;
use crate::output_paths;
use crate::outputs::{self, Output};
use crate::outside::Outside;
use crate::plugin_template as template;
use crate::say;
use crate::terminal::Terminal;
use crate::written;

/// Writes a starter file where no file is yet.
pub(crate) fn run(arguments: &New, terminal: Terminal) -> Result<(), Failure> {
    let text = match arguments.kind {
        Starter::Plugin => return plugin(&arguments.file, terminal),
        Starter::Client => files::starter::client(say::language()),
        Starter::Layout => files::starter::layout().to_owned(),
        Starter::Cell => files::starter::cell().to_owned(),
        Starter::ClientSchema => return schema(&arguments.file, FileKind::Client, terminal),
        Starter::LayoutSchema => return schema(&arguments.file, FileKind::Layout, terminal),
        Starter::CellSchema => return schema(&arguments.file, FileKind::Cell, terminal),
        Starter::ReportSchema => return report_schema(&arguments.file, terminal),
    };
    output_paths::has_ending(&arguments.file, "toml")?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, &arguments.file, text.as_bytes())?;
    let file = arguments.file.display().to_string();
    let file = file.as_str();
    let begun = match arguments.kind {
        Starter::Layout => Begun::Layout { file },
        Starter::Cell => Begun::Cell { file },
        _ => Begun::Client { file },
    };
    tell(&arguments.file, &begun, terminal)
}

/// Tells what was begun.
fn tell(path: &Path, begun: &Begun<'_>, terminal: Terminal) -> Result<(), Failure> {
    let words = say::language().begun(begun) + "\n";
    written::tell(terminal, [path], (&[], None), &words)
}

/// Writes the schema of a kind of file, by which an editor completes and explains keys.
fn schema(file: &Path, kind: FileKind, terminal: Terminal) -> Result<(), Failure> {
    output_paths::has_ending(file, "json")?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, file, files::schema(kind, say::language()).as_bytes())?;
    let (name, kind) = (file.display().to_string(), say::language().file_kind(kind));
    tell(file, &Begun::Schema { file: &name, kind }, terminal)
}

/// Writes the schema of all reports, by which a script knows what it reads.
fn report_schema(file: &Path, terminal: Terminal) -> Result<(), Failure> {
    output_paths::has_ending(file, "json")?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, file, files::report::schema().as_bytes())?;
    let name = file.display().to_string();
    tell(file, &Begun::ReportSchema { file: &name }, terminal)
}

/// Writes a folder with a plugin, and with the crates that it is built from.
fn plugin(folder: &Path, terminal: Terminal) -> Result<(), Failure> {
    if folder.exists() {
        let folder = folder.display().to_string();
        let said = say::language().output_fault(&OutputFault::FolderThere { folder: &folder });
        return Err(Failure::new(Whose::Keeper, said));
    }
    let outputs = template::FILES
        .iter()
        .map(|file| Output { path: folder.join(file.path), bytes: file.text.as_bytes().to_vec() });
    outputs::all(&Outside::new(&PluginOptions::default()), outputs.collect())?;
    let name = folder.display().to_string();
    let commands = format!(
        "  cd {name}\n  cargo build --release\n  seatwright plugin check target/release/{}my_plugin{}",
        std::env::consts::DLL_PREFIX,
        std::env::consts::DLL_SUFFIX
    );
    tell(folder, &Begun::Plugin { folder: &name, commands: &commands }, terminal)
}
