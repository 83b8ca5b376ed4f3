//! Plugins: where they are looked for, and layouts that they draw.

use std::cell::OnceCell;
use std::path::PathBuf;

use case::Client;
use cushion::{BodyMeasure, Length, Name, Size};
use plugin_host::{
    DrawRequest, Drawn, Fault, FaultKind, Isolation, Limits, Places, Plugins, Whose,
};

use crate::arguments::PluginOptions;
use crate::failure::{Failure, Kind};
use crate::remarks::FileRemarks;

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

/// The plugins of one run of the program: each is started once, when it is first needed.
pub(crate) struct Session<'a> {
    options: &'a PluginOptions,
    plugins: OnceCell<Plugins>,
}

impl<'a> Session<'a> {
    /// A session in which nothing is started yet.
    pub(crate) fn new(options: &'a PluginOptions) -> Self {
        Self { options, plugins: OnceCell::new() }
    }

    fn plugins(&self) -> Result<&Plugins, Failure> {
        if self.plugins.get().is_none() {
            // It is empty, so nothing is lost.
            let _ = self.plugins.set(plugins(self.options)?);
        }
        Ok(self.plugins.get().expect("it was just set"))
    }
}

/// Draws a plugin's layout; measures of the client set what is not given.
///
/// # Errors
///
/// Fails as the plugin does, or where a value is missing.
pub(crate) fn draw(
    session: &Session<'_>,
    name: &str,
    size: Size,
    given: impl IntoIterator<Item = (Name, f64)>,
    client: Option<&Client>,
) -> Result<Drawn, Failure> {
    let name = Name::new(name).ok_or_else(|| {
        Failure::call(format!("`{name}` is no plugin's name")).hint(format!("take {}", Name::RULE))
    })?;
    let set = session.options.set.iter().cloned();
    let parameters = given.into_iter().chain(set).collect();
    let request = DrawRequest { name, size, parameters };
    let measured = |measure| client.and_then(|client| measured(client, measure));
    session.plugins()?.draw(&request, &measured).map_err(failure)
}

fn measured(client: &Client, measure: BodyMeasure) -> Option<Length> {
    let measures = &client.measures;
    match measure {
        BodyMeasure::SeatBoneSpacing => measures.seat_bone_spacing,
        BodyMeasure::ThighDepthLeft => measures.thigh_depth.left,
        BodyMeasure::ThighDepthRight => measures.thigh_depth.right,
        BodyMeasure::HipWidth => measures.hip_width,
        BodyMeasure::TrochanterWidth => measures.trochanter_width,
    }
}

/// The failure for a plugin's fault, with the places in its answer where that is wrong.
pub(crate) fn failure(fault: Fault) -> Failure {
    let kind = match fault.kind.whose() {
        Whose::Asker => Kind::Call,
        Whose::Author => Kind::Plugin,
        Whose::System => Kind::Ours,
    };
    let failure = Failure::new(kind, fault.to_string());
    let failure = match fault.kind.advice() {
        Some(advice) => failure.hint(advice),
        None => failure,
    };
    match answer(fault) {
        Some(answer) => failure.about(answer),
        None => failure,
    }
}

/// The most remarks on an answer that are shown: one mistake of a plugin often has many places.
const MOST_REMARKS: usize = 5;

/// A plugin's answer that is no right layout, with remarks as on a file.
pub(crate) fn answer(fault: Fault) -> Option<FileRemarks> {
    let FaultKind::BadLayout { text, mut remarks } = fault.kind else { return None };
    remarks.truncate(MOST_REMARKS);
    Some(FileRemarks { path: format!("answer of the plugin {}", fault.plugin), text, remarks })
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
