//! The disk fails, or the process is killed, at each of the calls that a put makes to the system.
//!
//! A small library in C, put before the system's own, counts the calls that change or read a disk and
//! makes one of them fail or be the last. Only where `cc` is and programs are linked that way.

use std::path::{Path, PathBuf};
use std::process::{Command, ExitStatus};
use std::sync::OnceLock;

use casework::{Change, Shelf as _};
use tempfile::TempDir;

use crate::folder::{Folder, hand};

/// The library, built once.
fn library() -> &'static Path {
    static BUILT: OnceLock<(PathBuf, TempDir)> = OnceLock::new();
    let (path, _) = BUILT.get_or_init(|| {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("faulty-disk.so");
        let source = Path::new(env!("CARGO_MANIFEST_DIR")).join("../testkit/faulty-disk.c");
        let mut cc = Command::new("cc");
        cc.args(["-shared", "-fPIC", "-O1", "-o"]).args([&path, &source]);
        assert!(cc.status().expect("cc is there").success());
        (path, folder)
    });
    path
}

/// Two files replaced, one made in a new folder, one removed; at one of its calls, `how` happens.
fn put(folder: &Folder, at: usize, how: &str) -> ExitStatus {
    let change = |name: &str| format!("{}=new", folder.name(name));
    let mut command = hand();
    command.env("LD_PRELOAD", library()).env("FAULT_AT", at.to_string()).env("FAULT_HOW", how);
    command.env("FAULT_IN", folder.path(""));
    command.args(["put", &change("a"), &folder.name("gone"), &change("b"), &change("in/c")]);
    command.output().unwrap().status
}

fn begun() -> Folder {
    Folder::of(&[("a", "old"), ("b", "old"), ("gone", "old"), ("other", "old")])
}

/// What is in the folder, without what only the next put sweeps.
fn found(folder: &Folder) -> Vec<(String, String)> {
    let inner = std::fs::read_to_string(folder.path("in/c")).ok();
    let inner = inner.map(|text| ("in/c".to_owned(), text));
    let all = folder.texts().into_iter().filter(|(name, _)| name != "in" && name != "other");
    all.chain(inner).collect()
}

fn all(of: [(&str, &str); 3]) -> Vec<(String, String)> {
    of.map(|(name, text)| (name.to_owned(), text.to_owned())).to_vec()
}

/// The next put, in both folders, after which nothing of the killed one is left.
fn swept(folder: &Folder) -> Vec<(String, String)> {
    let next = [Change::output("other", "next"), Change::output("in/other", "next")];
    folder.shelf().put(&next).unwrap();
    let names = std::fs::read_dir(folder.path("in")).unwrap();
    assert!(names.count() <= 2, "something is left in the inner folder");
    found(folder)
}

#[test]
fn where_a_call_fails_all_is_as_before() {
    let (old, new) = (
        all([("a", "old"), ("b", "old"), ("gone", "old")]),
        all([("a", "new"), ("b", "new"), ("in/c", "new")]),
    );
    for how in ["5", "28"] {
        let mut failed = 0;
        for at in 0.. {
            let folder = begun();
            let status = put(&folder, at, how);
            let found = swept(&folder);
            match status.code() {
                // Failing to sweep up fails nothing.
                Some(0) => assert_eq!(found, new, "{how} at {at}"),
                Some(2) => {
                    failed += 1;
                    assert_eq!(found, old, "{how} at {at}");
                }
                Some(99) => break,
                _ => panic!("{status}"),
            }
        }
        assert!(failed > 15, "only {failed} calls could fail");
    }
}

#[test]
fn where_the_process_is_killed_each_file_is_old_or_new() {
    let mut kinds = std::collections::BTreeSet::new();
    for at in 0.. {
        let folder = begun();
        if put(&folder, at, "kill").code() == Some(99) {
            break;
        }
        let found = swept(&folder);
        for (name, text) in &found {
            let right = match &**name {
                "a" | "b" => ["old", "new"].contains(&&**text),
                "in/c" => text == "new",
                "gone" => text == "old",
                _ => false,
            };
            assert!(right, "killed at {at}: {found:?}");
        }
        assert!(["a", "b"].iter().all(|name| found.iter().any(|(there, _)| there == name)));
        kinds.insert(found);
    }
    // Nothing yet, then a, b, c one after the other, then without the one that goes.
    assert!((4..=5).contains(&kinds.len()), "{kinds:?}");
}
