//! `new`: begins a file, with comments that explain each line.

use std::path::Path;

use case::FileKind;
use casework::Whose;

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
    let (text, next) = match arguments.kind {
        Starter::Plugin => return plugin(&arguments.file, terminal),
        Starter::Client => (files::starter::client(say::language()), "fill it in, then"),
        Starter::Layout => (files::starter::layout().to_owned(), "change it, then"),
        Starter::Cell => (files::starter::cell().to_owned(), "change it, then"),
        Starter::ClientSchema => return schema(&arguments.file, FileKind::Client, terminal),
        Starter::LayoutSchema => return schema(&arguments.file, FileKind::Layout, terminal),
        Starter::CellSchema => return schema(&arguments.file, FileKind::Cell, terminal),
        Starter::ReportSchema => return report_schema(&arguments.file, terminal),
    };
    output_paths::has_ending(&arguments.file, "toml")?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, &arguments.file, text.as_bytes())?;
    let file = arguments.file.display();
    let mut words = format!("{file} is begun; {next}: seatwright check {file}\n");
    if arguments.kind == Starter::Layout {
        words += &format!("Look at it: seatwright pattern {file} --size 440x400 --svg look.svg\n");
    }
    written::tell(terminal, [arguments.file.as_path()], (&[], None), &words)
}

/// Writes the schema of a kind of file, by which an editor completes and explains keys.
fn schema(file: &Path, kind: FileKind, terminal: Terminal) -> Result<(), Failure> {
    output_paths::has_ending(file, "json")?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, file, files::schema(kind, say::language()).as_bytes())?;
    let (name, kind) = (file.display(), kind.id());
    let words =
        format!("{name} is written; put this on top of a {kind} file beside it: #:schema {name}\n");
    written::tell(terminal, [file], (&[], None), &words)
}

/// Writes the schema of all reports, by which a script knows what it reads.
fn report_schema(file: &Path, terminal: Terminal) -> Result<(), Failure> {
    output_paths::has_ending(file, "json")?;
    let outside = Outside::new(&PluginOptions::default());
    outputs::new(&outside, file, files::report::schema().as_bytes())?;
    let words = format!("{} is written; every answer to --json keeps it\n", file.display());
    written::tell(terminal, [file], (&[], None), &words)
}

/// Writes a folder with a plugin, and with the crates that it is built from.
fn plugin(folder: &Path, terminal: Terminal) -> Result<(), Failure> {
    if folder.exists() {
        let message = format!("{} is there already, and nothing is written over", folder.display());
        return Err(Failure::new(Whose::Keeper, message).hint("name a new folder"));
    }
    let outputs = template::FILES
        .iter()
        .map(|file| Output { path: folder.join(file.path), bytes: file.text.as_bytes().to_vec() });
    outputs::all(&Outside::new(&PluginOptions::default()), outputs.collect())?;
    let name = folder.display();
    let words = format!(
        "{name} is begun. Next:\n  \
         cd {name}\n  \
         cargo build --release\n  \
         seatwright plugin check target/release/{}my_plugin{}\n",
        std::env::consts::DLL_PREFIX,
        std::env::consts::DLL_SUFFIX
    );
    written::tell(terminal, [folder], (&[], None), &words)
}
