//! Folders of installed plugins: whose they are, and who may write there.

use std::fs::{self, Permissions};
use std::os::unix::fs::{PermissionsExt as _, chown};
use std::path::Path;

use case::{LayoutErrorBy, PluginFaultKind};
use cushion::Name;
use plugin_host::{Places, Plugins};

use crate::built::{child, faulty, request, said, short};

fn set_mode(path: &Path, mode: u32) {
    fs::set_permissions(path, Permissions::from_mode(mode)).unwrap();
}

/// Why the plugin called `faulty` in a folder is not run; nothing where it is.
fn refused(folder: &Path) -> String {
    let places = Places { named: Vec::new(), folders: vec![folder.to_owned()] };
    let listed = places.all().len();
    let not_trusted = places.not_trusted();
    let plugins = Plugins::new(places, child(), short());
    match plugins.draw(&request("faulty"), &|_| None) {
        Ok(_) => {
            assert_eq!((listed, not_trusted), (1, Vec::new()));
            String::new()
        }
        Err(fault) => {
            assert_eq!((listed, not_trusted.len()), (0, 1));
            assert_eq!(not_trusted[0].kind, fault.kind);
            assert!(matches!(fault.kind, PluginFaultKind::NotTrusted { .. }), "{fault:?}");
            assert_eq!(fault.kind.by(), LayoutErrorBy::Asker);
            assert!(words::ENGLISH.plugin_fault(&fault.kind).hint.is_some());
            said(fault).replace(&folder.display().to_string(), "FOLDER")
        }
    }
}

#[test]
fn what_everybody_may_write_to_is_not_run() {
    // A plugin that leaves a trace would have been run.
    let built = faulty("");
    let folder = built.path.parent().unwrap();
    assert_eq!(refused(folder), "");
    set_mode(folder, 0o777);
    let said = "plugin `faulty`: it was not run, because `FOLDER` can be written to by everybody";
    assert_eq!(refused(folder), said);
    // That only the owner may remove a file does not say who put it there.
    set_mode(folder, 0o1777);
    assert_eq!(refused(folder), said);
    set_mode(folder, 0o755);
    set_mode(&built.path, 0o757);
    assert_eq!(refused(folder), said.replace("FOLDER", "FOLDER/libfaulty.so"));
    set_mode(&built.path, 0o775);
    assert_eq!(refused(folder), "");
}

#[test]
fn what_belongs_to_another_user_is_not_run() {
    let built = faulty("");
    let folder = built.path.parent().unwrap();
    // Only who may give files away can test this.
    if chown(&built.path, Some(54_321), None).is_err() {
        return;
    }
    let said =
        "plugin `faulty`: it was not run, because `FOLDER/libfaulty.so` belongs to another user";
    assert_eq!(refused(folder), said);
    chown(&built.path, Some(0), None).unwrap();
    assert_eq!(refused(folder), "");
    chown(folder, Some(54_321), None).unwrap();
    assert_eq!(refused(folder), said.replace("/libfaulty.so", ""));
}

/// Whoever names a file has seen where it lies.
#[test]
fn a_file_that_was_named_is_run_from_anywhere() {
    let built = faulty("");
    let folder = built.path.parent().unwrap();
    set_mode(folder, 0o777);
    let places = Places { named: vec![built.path.clone()], folders: vec![folder.to_owned()] };
    let plugins = Plugins::new(places, child(), short());
    plugins.draw(&request("faulty"), &|_| None).unwrap();
    plugins.describe_named(&Name::new("other").unwrap()).unwrap();
}
