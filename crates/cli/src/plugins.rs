//! Plugins: where they are looked for, and layouts that they draw.

use std::path::PathBuf;

use case::Client;
use cushion::{LayoutRequest, Length, Name, Size};
use plugin_host::{Drawn, Fault, Isolation, Limits, Measure, Places, Plugins};

use crate::arguments::PluginOptions;
use crate::failure::{Failure, Kind};

/// The environment's list of folders with installed plugins.
const FOLDERS: &str = "SEATWRIGHT_PLUGINS";

/// Plugins as the command line and the environment place them.
///
/// # Errors
///
/// Fails where this program cannot be found again to be the plugins' child.
pub(crate) fn plugins(options: &PluginOptions) -> Result<Plugins, Failure> {
    let isolation = if options.plugin_in_process {
        Isolation::InProcess
    } else {
        let program = std::env::current_exe().map_err(|error| {
            Failure::new(Kind::Ours, format!("this program cannot be found again: {error}"))
        })?;
        Isolation::Child { program }
    };
    let places = Places { named: options.plugin.clone(), folders: folders() };
    Ok(Plugins::new(places, isolation, Limits::default()))
}

/// The folders of the environment's list, then the user's own.
fn folders() -> Vec<PathBuf> {
    let listed = std::env::var_os(FOLDERS).unwrap_or_default();
    let listed = std::env::split_paths(&listed).filter(|folder| !folder.as_os_str().is_empty());
    let home = || std::env::var_os("HOME").map(|home| PathBuf::from(home).join(".local/share"));
    let data = std::env::var_os("XDG_DATA_HOME").map(PathBuf::from).or_else(home);
    listed.chain(data.map(|data| data.join("seatwright/plugins"))).collect()
}

/// Draws a plugin's layout; measures of the client set what is not given.
///
/// # Errors
///
/// Fails as the plugin does, or where a value is missing.
pub(crate) fn draw(
    options: &PluginOptions,
    name: &str,
    size: Size,
    given: impl IntoIterator<Item = (Name, f64)>,
    client: Option<&Client>,
) -> Result<Drawn, Failure> {
    let name = Name::new(name).ok_or_else(|| {
        Failure::call(format!("`{name}` is no plugin's name")).hint(format!("take {}", Name::RULE))
    })?;
    let set = options.set.iter().cloned();
    let parameters = given.into_iter().chain(set).collect();
    let request = LayoutRequest { name, size, parameters };
    let measured = |measure| client.and_then(|client| measured(client, measure));
    plugins(options)?.draw(&request, &measured).map_err(failure)
}

fn measured(client: &Client, measure: Measure) -> Option<Length> {
    let measures = &client.measures;
    match measure {
        Measure::SeatBoneSpacing => measures.seat_bone_spacing,
        Measure::ThighDepthLeft => measures.thigh_depth.left,
        Measure::ThighDepthRight => measures.thigh_depth.right,
        Measure::HipWidth => measures.hip_width,
        Measure::TrochanterWidth => measures.trochanter_width,
    }
}

/// The failure for a plugin's fault: the asker's, or the author's.
pub(crate) fn failure(fault: Fault) -> Failure {
    let kind = if fault.kind.is_the_askers() { Kind::Call } else { Kind::Plugin };
    let failure = Failure::new(kind, fault.to_string());
    match fault.kind.advice() {
        Some(advice) => failure.hint(advice),
        None => failure,
    }
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
