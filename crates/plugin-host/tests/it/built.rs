//! Builds plugins in C for a test, and starts them in the test's own child program.

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::{Duration, Instant};

use case::PluginFault;
use cushion::Name;
use plugin_host::{DrawRequest, Isolation, Limits, Places, Plugins};
use tempfile::TempDir;

/// A library built for one test, which goes with it.
pub(crate) struct Built {
    pub(crate) path: PathBuf,
    _folder: TempDir,
}

/// Builds C source in a folder of its own.
#[track_caller]
pub(crate) fn build(source: &str, include: &Path) -> Built {
    let folder = tempfile::tempdir().unwrap();
    let (code, path) = (folder.path().join("plugin.c"), folder.path().join("libfaulty.so"));
    std::fs::write(&code, source).unwrap();
    let here = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/it/faults");
    let status = Command::new("cc")
        .args(["-shared", "-fPIC", "-O0", "-w", "-pthread", "-o"])
        .arg(&path)
        .arg(&code)
        .arg("-I")
        .arg(here)
        .arg("-I")
        .arg(include)
        .status();
    assert!(status.expect("cc is there").success(), "{source}");
    Built { path, _folder: folder }
}

/// The folder of the current header.
pub(crate) fn header() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../plugin-abi/include")
}

/// The right plugin, with some things defined otherwise.
#[track_caller]
pub(crate) fn faulty(before: &str) -> Built {
    build(&format!("{before}\n#include \"fault.h\"\n"), &header())
}

pub(crate) fn child() -> Isolation {
    Isolation::Child { program: env!("CARGO_BIN_EXE_plugin-child").into() }
}

/// Limits under which a hanging plugin does not hold the tests up for long.
pub(crate) fn short() -> Limits {
    Limits { time: Duration::from_secs(2), ..Limits::default() }
}

pub(crate) fn plugins(path: &Path) -> Plugins {
    let places = Places { named: vec![path.to_owned()], folders: Vec::new() };
    Plugins::new(places, child(), short())
}

pub(crate) fn request(name: &str) -> DrawRequest {
    let name = Name::new(name).unwrap();
    DrawRequest { name, size: "440x400".parse().unwrap(), parameters: BTreeMap::new() }
}

/// Whether a process that was started for this library stays, though it had time to go: the system
/// takes killed processes away when it comes to them, which is long before two seconds.
pub(crate) fn stays(library: &Path) -> bool {
    let start = Instant::now();
    while is_alive(library) {
        if start.elapsed() > Duration::from_secs(2) {
            return true;
        }
        std::thread::sleep(Duration::from_millis(5));
    }
    false
}

/// Whether any process was started for this library.
pub(crate) fn is_alive(library: &Path) -> bool {
    let processes = std::fs::read_dir("/proc").into_iter().flatten().flatten();
    processes.into_iter().any(|process| {
        let line = std::fs::read(process.path().join("cmdline")).unwrap_or_default();
        String::from_utf8_lossy(&line).contains(&*library.to_string_lossy())
    })
}

/// The sentence about a fault.
pub(crate) fn said(fault: PluginFault) -> String {
    words::ENGLISH.no_layout(&fault.into()).message
}
