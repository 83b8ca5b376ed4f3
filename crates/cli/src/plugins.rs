//! Plugins: where they are looked for, and layouts that they draw.

use std::io;
use std::path::PathBuf;

use case::{LayoutError, PluginFault};
use casework::{FileRemarks, Whose, WorkError};
use cushion::Name;
use plugin_host::{Isolation, Limits, Places, Plugins};
use words::{CallFault, ProgramFault};

use crate::arguments::PluginOptions;
use crate::failure::Failure;
use crate::say;

/// The environment's list of folders with installed plugins.
const FOLDERS: &str = "SEATWRIGHT_PLUGINS";

/// Plugins as the command line and the environment place them.
///
/// # Errors
///
/// Fails where this program cannot be found again to be the plugins' child.
pub(crate) fn plugins(options: &PluginOptions) -> io::Result<Plugins> {
    let isolation = if options.plugin_in_process {
        Isolation::InProcess
    } else {
        Isolation::Child { program: std::env::current_exe()? }
    };
    let places = Places { named: options.plugin.clone(), folders: folders() };
    Ok(Plugins::new(places, isolation, Limits::default()))
}

/// The folders of the environment's list, then the user's own. All are absolute: what lies in the
/// folder where the program happens to run was not installed by anybody.
fn folders() -> Vec<PathBuf> {
    let absolute =
        |name| std::env::var_os(name).map(PathBuf::from).filter(|folder| folder.is_absolute());
    let listed = std::env::var_os(FOLDERS).unwrap_or_default();
    let listed = std::env::split_paths(&listed).filter(|folder| folder.is_absolute());
    let home = || absolute("HOME").map(|home| home.join(".local/share"));
    let data = absolute("XDG_DATA_HOME").or_else(home);
    listed.chain(data.map(|data| data.join("seatwright/plugins"))).collect()
}

/// Refuses settings where no layout is drawn that they could be of.
///
/// # Errors
///
/// Fails with the first of them, where there is one.
pub(crate) fn nothing_to_set(options: &PluginOptions) -> Result<(), Failure> {
    let Some((given, _)) = options.set.first() else { return Ok(()) };
    Err(Failure::call(&CallFault::SettingForNothing { given: given.as_str() }))
}

/// The failure where this program cannot be found again.
pub(crate) fn not_found_again(error: io::Error) -> Failure {
    let why = error.to_string();
    let said = say::language().program_fault(&ProgramFault::Gone { why: &why });
    Failure::new(Whose::Ours, said)
}

/// The failure for a plugin's fault, with the places in its answer where that is wrong.
pub(crate) fn failure(fault: PluginFault) -> Failure {
    WorkError::from(LayoutError::from(fault)).into()
}

/// A plugin's answer that is no right layout, with remarks as on a file.
pub(crate) fn answer(fault: PluginFault) -> Option<FileRemarks> {
    WorkError::from(LayoutError::from(fault)).file.map(|file| *file)
}

/// Reads `NAME=VALUE`.
///
/// # Errors
///
/// Fails where it is not so written, or the value is not a finite number.
pub(crate) fn setting(text: &str) -> Result<(Name, f64), String> {
    let form = || "write NAME=NUMBER, such as pitch=110".to_owned();
    let (name, value) = text.split_once('=').ok_or_else(form)?;
    let name = Name::new(name.trim()).ok_or_else(form)?;
    let value: f64 = value.trim().parse().map_err(|_| form())?;
    if value.is_finite() { Ok((name, value)) } else { Err(form()) }
}
