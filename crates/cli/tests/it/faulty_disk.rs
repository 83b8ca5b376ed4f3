//! Every command that writes, on a disk that fails at each call, and killed at each: nothing is
//! lost, nothing is half there, and what is said is true.
//!
//! A small library in C is put before the system's own; see `testkit/faulty-disk.c`.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;

use tempfile::TempDir;

use crate::fitting::CLIENT;
use crate::runner::TestDir;

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

/// All files of a folder by their paths, with what is in them; what the next change sweeps is
/// left out, and so are folders.
fn files(dir: &TestDir) -> BTreeMap<String, Vec<u8>> {
    let names = dir.names().into_iter().filter(|name| !name.ends_with('/'));
    let swept = |name: &String| name.rsplit('/').next().unwrap().starts_with(".seatwright-");
    names
        .filter(|name| !swept(name))
        .map(|name| (name.clone(), fs::read(dir.path().join(name)).unwrap()))
        .collect()
}

/// What one of the calls does.
#[derive(Clone, Copy, Debug)]
enum How {
    /// The call fails: as on a broken disk and as on a full one in turns.
    Fails,
    /// The process is killed.
    Killed,
}

fn run(dir: &TestDir, words: &[&str], how: How, at: usize) -> Output {
    let how = match how {
        // EIO and ENOSPC of Linux.
        How::Fails if at.is_multiple_of(2) => "5",
        How::Fails => "28",
        How::Killed => "kill",
    };
    let mut command = dir.command(words);
    command.env("LD_PRELOAD", library()).env("FAULT_AT", at.to_string()).env("FAULT_HOW", how);
    command.env("FAULT_IN", dir.path()).output().unwrap()
}

/// Runs a command on a faulty disk, with every call or every so many going wrong in turn.
#[track_caller]
fn survives(begun: &dyn Fn() -> TestDir, words: &[&str], step: usize) {
    let whole = begun();
    let before = files(&whole);
    assert_eq!(whole.run(words).code, Some(0), "{words:?}");
    let after = files(&whole);
    assert_ne!(before, after, "{words:?} writes nothing");
    for how in [How::Fails, How::Killed] {
        let (mut failed, mut at) = (0, 0);
        loop {
            let dir = begun();
            let output = run(&dir, words, how, at);
            let (found, code) = (files(&dir), output.status.code());
            let said = String::from_utf8(output.stderr).unwrap();
            let place = format!("{words:?}, {how:?} at {at}: {code:?} {said}");
            match code {
                Some(99) => break,
                Some(0) => assert!(found == after, "{place}"),
                Some(code) => {
                    failed += 1;
                    assert!([2, 3, 6].contains(&code) && said.starts_with("error: "), "{place}");
                    assert!(found == before, "{place}");
                }
                None => {
                    failed += 1;
                    assert!(is_old_or_new(&found, &before, &after), "{place}");
                }
            }
            at += step;
        }
        assert!(failed * step >= 3, "{words:?}, {how:?}: only {failed} calls could fail");
    }
}

/// Whether each file is whole, as it was or as it was to be.
fn is_old_or_new(
    found: &BTreeMap<String, Vec<u8>>,
    before: &BTreeMap<String, Vec<u8>>,
    after: &BTreeMap<String, Vec<u8>>,
) -> bool {
    let names: Vec<&String> = before.keys().chain(after.keys()).chain(found.keys()).collect();
    names.into_iter().all(|name| {
        let now = found.get(name);
        now == before.get(name) || now == after.get(name)
    })
}

/// A client with a plan in the record.
fn planned() -> TestDir {
    static TEXT: OnceLock<String> = OnceLock::new();
    let text = TEXT.get_or_init(|| {
        let dir = TestDir::new().with("c.toml", CLIENT);
        assert_eq!(dir.run(&["plan", "c.toml", "--record", "--by", "OT"]).code, Some(0));
        dir.read("c.toml")
    });
    TestDir::new().with("c.toml", text)
}

#[test]
fn a_record_is_made_or_not() {
    let begun = || TestDir::new().with("c.toml", CLIENT);
    survives(&begun, &["plan", "c.toml", "--record", "--by", "OT"], 1);
    survives(&begun, &["set", "c.toml", "weight.kg=61"], 1);
    survives(&planned, &["adjust", "c.toml", "--under", "left=30mm", "--record", "--by", "OT"], 1);
}

#[test]
fn papers_are_written_or_not() {
    // Some hundred calls, of which each seventh takes the place of all: files are alike.
    let begun = || {
        let dir = planned().with("out", "");
        fs::remove_file(dir.path().join("out")).unwrap();
        fs::create_dir(dir.path().join("out")).unwrap();
        dir.with("out/T-1-tag.svg", "an older one").with("out/T-1-fill-card.pdf", "older")
    };
    survives(&begun, &["print", "c.toml", "--out", "out"], 7);
}

#[test]
fn files_that_are_begun_are_whole_or_not_there() {
    survives(&TestDir::new, &["new", "client", "c.toml"], 1);
    survives(&TestDir::new, &["new", "plugin", "mine"], 5);
    survives(&TestDir::new, &["pattern", "row-six", "--size", "440x400", "--svg", "a/b.svg"], 1);
}
