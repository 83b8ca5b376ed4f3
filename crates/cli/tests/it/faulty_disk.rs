//! Every command that writes, on a disk that fails at each call, and killed at each: nothing is
//! lost, nothing is half there, and what is said is true.
//!
//! A small library in C is put before the system's own; see `testkit/faulty-disk.c`.

use std::collections::BTreeMap;
use std::fs;
use std::os::unix::process::ExitStatusExt as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::{Once, OnceLock};

use tempfile::TempDir;

use crate::fitting::CLIENT;
use crate::plugins::in_rust;
use crate::restoring;
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

fn run(dir: &TestDir, words: &[&str], how: How, at: usize) -> Faulty {
    let how = match how {
        // EIO and ENOSPC of Linux.
        How::Fails if at.is_multiple_of(2) => "5",
        How::Fails => "28",
        How::Killed => "kill",
    };
    Faulty::run(dir, words, how, at)
}

/// What a run on a faulty disk came to.
struct Faulty {
    code: Option<i32>,
    stdout: String,
    stderr: String,
}

impl Faulty {
    #[expect(clippy::print_stderr, reason = "whoever reads the run should know what was left out")]
    fn run(dir: &TestDir, words: &[&str], how: &str, at: usize) -> Self {
        let mut command = dir.command(words);
        command.env("LD_PRELOAD", library()).env("FAULT_AT", at.to_string()).env("FAULT_HOW", how);
        let Output { status, stdout, stderr } =
            command.env("FAULT_IN", dir.path()).output().unwrap();
        let stderr = String::from_utf8(stderr).unwrap();
        // SIGKILL is ours; any other end by a signal is a crash.
        let ended = status.signal();
        assert!(ended.is_none() || (ended, how) == (Some(9), "kill"), "{words:?}: {status}");
        let stderr = if let Some(rest) = stderr.strip_prefix(NOT_TRAPPED) {
            static SAID: Once = Once::new();
            SAID.call_once(|| eprint!("{NOT_TRAPPED}"));
            rest.to_owned()
        } else {
            stderr
        };
        Self { code: status.code(), stdout: String::from_utf8(stdout).unwrap(), stderr }
    }
}

/// What the library says where the kernel does not let it catch renames; the tests then hold for
/// all other calls.
const NOT_TRAPPED: &str = "Renames are not trapped here: they are left out.\n";

/// Runs a command on a faulty disk, with every call or every so many going wrong in turn.
///
/// A step is more than 1 where a run takes long, or where its calls are alike; it is a prime, odd
/// so that a broken and a full disk take turns, and so that it does not keep time with what is
/// done to each of several files.
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
            let Faulty { code, stderr: said, .. } = run(&dir, words, how, at);
            let found = files(&dir);
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
            assert!(at < MOST_CALLS, "{place}");
        }
        assert!(failed * step >= 3, "{words:?}, {how:?}: only {failed} calls could fail");
    }
}

/// More calls than any command makes.
const MOST_CALLS: usize = 10_000;

/// Runs a command with short reads and writes, and with interrupted calls: neither is noticed.
#[track_caller]
fn minds_no_interruption(begun: &dyn Fn() -> TestDir, words: &[&str]) {
    let whole = begun();
    assert_eq!(whole.run(words).code, Some(0), "{words:?}");
    for how in ["short", "eintr"] {
        let dir = begun();
        let Faulty { code, stderr, .. } = Faulty::run(&dir, words, how, 0);
        assert_eq!(code, Some(0), "{words:?}, {how}: {stderr}");
        assert!(files(&dir) == files(&whole), "{words:?}, {how}");
    }
}

/// Runs a command that writes nothing, with every call failing in turn: it answers as it would,
/// or says why not.
#[track_caller]
fn reads_or_says_why(begun: &dyn Fn() -> TestDir, words: &[&str]) {
    let dir = begun();
    let (before, answer) = (files(&dir), dir.run(words).done());
    let mut failed = 0;
    for at in 0..MOST_CALLS {
        let Faulty { code, stdout, stderr: said } = run(&dir, words, How::Fails, at);
        let place = format!("{words:?}, at {at}: {code:?} {said}");
        match code {
            Some(99) => break,
            Some(0) => assert_eq!(stdout, answer, "{place}"),
            code => {
                failed += 1;
                assert!(matches!(code, Some(2 | 3 | 6)) && stdout.is_empty(), "{place}");
                let why = said.contains("Input/output error") || said.contains("disk is full");
                assert!(why, "{place}");
            }
        }
        assert!(files(&dir) == before, "{place}");
    }
    assert!(failed >= 3, "{words:?}: only {failed} calls could fail");
}

/// Runs a survey on a faulty disk, and then again on a right one, which goes on where it was.
#[track_caller]
fn goes_on(begun: &dyn Fn() -> TestDir, words: &[&str], step: usize) {
    let whole = begun();
    let before = files(&whole);
    whole.run(words).done();
    let after = files(&whole);
    assert!(!after.contains_key(UNFINISHED));
    let rest = |mut files: BTreeMap<String, Vec<u8>>| {
        files.remove(UNFINISHED);
        files
    };
    for how in [How::Fails, How::Killed] {
        let mut left = 0;
        for at in (0..MOST_CALLS).step_by(step) {
            let dir = begun();
            let Faulty { code, stderr: said, .. } = run(&dir, words, how, at);
            let found = files(&dir);
            let place = format!("{words:?}, {how:?} at {at}: {code:?} {said}");
            left += usize::from(code != Some(0) && found.contains_key(UNFINISHED));
            match code {
                Some(99) => break,
                Some(0) => assert!(rest(found) == after, "{place}"),
                Some(code) => {
                    assert!([2, 3, 6].contains(&code) && said.contains("error: "), "{place}");
                    assert!(rest(found) == rest(before.clone()), "{place}");
                }
                None => {
                    let mut before = before.clone();
                    before.remove(UNFINISHED);
                    assert!(is_old_or_new(&rest(found), &before, &after), "{place}");
                }
            }
            let again = dir.run(words);
            assert_eq!(again.code, Some(0), "again after {place}: {}", again.stderr);
            assert!(files(&dir) == after, "again after {place}");
        }
        assert!(left > 0, "{how:?}: nothing was ever left to go on with");
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
    survives(&begun, &["set", "c.toml", "weight.kg=61"], 1);
    // Their calls are those of `set`, and each run searches.
    survives(&begun, &["plan", "c.toml", "--record", "--by", "OT"], 5);
    survives(&planned, &["adjust", "c.toml", "--under", "left=30mm", "--record", "--by", "OT"], 7);
    survives(&planned, &["record", "c.toml", "recount", "1=40", "--by", "OT"], 3);
}

#[test]
fn papers_are_written_or_not() {
    // Some 500 calls on files that are alike.
    let begun = || {
        let dir = planned().with("out", "");
        fs::remove_file(dir.path().join("out")).unwrap();
        fs::create_dir(dir.path().join("out")).unwrap();
        // Of an older plan: a note that marks them is written with the papers, or nothing is.
        let of_older = |name: &str| format!("out/T-1-plan-1-AAAA-{name}");
        let dir = dir.with(&of_older("tag.svg"), "older");
        dir.with(&of_older("fill-card.pdf"), "older").with("out/T-1-WHICH-PAPERS-HOLD.txt", "older")
    };
    survives(&begun, &["print", "c.toml", "--out", "out"], 37);
    let stock = ["print", "--stock", "row-six", "--size", "440x400", "--out", "papers"];
    survives(&TestDir::new, &stock, 13);
}

/// A body that no made size suits.
fn wide() -> TestDir {
    let bodies = "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n150,600,470\n";
    TestDir::new().with("b.csv", bodies).with("layout.toml", include_str!("data/layout.toml"))
}

#[test]
fn files_that_are_begun_are_whole_or_not_there() {
    survives(&TestDir::new, &["new", "client", "c.toml"], 1);
    survives(&TestDir::new, &["restore", &restoring::code(), "--out", "c.toml"], 1);
    let with_card = || TestDir::new().with("card.pdf", restoring::card());
    survives(&with_card, &["restore", "card.pdf", "--out", "c.toml"], 1);
    survives(&TestDir::new, &["new", "plugin", "mine"], 5);
    survives(&TestDir::new, &["pattern", "row-six", "--size", "440x400", "--svg", "a/b.svg"], 1);
    let range = ["range", "row-six", "--csv", "a/b.csv", "--sheet", "a/b.pdf"];
    survives(&TestDir::new, &range, 3);
    let template = ["template", "row-six", "--size", "250x250", "--out", "t"];
    survives(&TestDir::new, &template, 61);
    let parts = ["parts", "row-six", "--size", "250x250", "--csv", "a/b.csv"];
    survives(&TestDir::new, &parts, 1);
    // The plugin lies elsewhere, and its child's own folder is a matter of `plugin-host`.
    let hexagons = in_rust("hexagons");
    let draw = ["plugin", "draw", "hexagons", "--size", "400x400", "--out", "h.toml"];
    let within = ["--plugin", &hexagons, "--plugin-in-process"];
    survives(&TestDir::new, &[&draw[..], &within[..]].concat(), 1);
    // Nobody suits, so that nothing is searched for; the pages are the same work for the disk.
    let review = ["review", "row-six", "--bodies", "b.csv", "--sheet", "a/b.pdf"];
    survives(&wide, &[&review[..], &["--sheet", "a/b.svg"]].concat(), 7);
    // As `pattern`, but each run searches.
    survives(&planned, &["predict", "c.toml", "--svg", "a/b.svg"], 7);
}

#[test]
fn what_is_short_or_interrupted_is_made_whole() {
    let begun = || TestDir::new().with("c.toml", CLIENT);
    minds_no_interruption(&begun, &["set", "c.toml", "weight.kg=61"]);
    minds_no_interruption(&begun, &["plan", "c.toml", "--record", "--by", "OT"]);
    minds_no_interruption(&planned, &["print", "c.toml", "--out", "papers"]);
    minds_no_interruption(&TestDir::new, &["new", "plugin", "mine"]);
    let words = ["survey", "b.csv", "--layout", "row-six", "--out", "s.csv"];
    minds_no_interruption(&|| TestDir::new().with("b.csv", bodies(20)), &words);
}

/// A client's file that names a layout and a cell in files.
fn with_files() -> TestDir {
    let client = CLIENT.replace("\"row-six\"", "\"./layout.toml\"\ncell = \"./cell.toml\"");
    let cell = include_str!("../../../files/src/texts/pillow-25.toml");
    let layout = include_str!("../../../../layouts/row-six.toml");
    TestDir::new().with("c.toml", client).with("cell.toml", cell).with("layout.toml", layout)
}

#[test]
fn what_cannot_be_read_is_said() {
    reads_or_says_why(&with_files, &["size", "c.toml"]);
    reads_or_says_why(&wide, &["compare", "row-six", "./layout.toml", "--bodies", "b.csv"]);
    let words = ["pattern", "./layout.toml", "--cell", "./cell.toml", "--size", "440x400"];
    reads_or_says_why(&with_files, &words);
    survives(&with_files, &["plan", "c.toml", "--record", "--by", "OT"], 7);
}

#[test]
fn an_order_is_written_whole_or_not_at_all() {
    let order = "layout,size,quantity,serials\nrow-six,250x250,2,S-1 S-2\n";
    let begun = || TestDir::new().with("day.csv", order);
    survives(&begun, &["order", "day.csv", "--out", "papers"], 29);
    // In place of an earlier edition.
    let again = || {
        let dir = begun();
        dir.run(&["order", "day.csv", "--out", "papers"]).done();
        dir.with("day.csv", order.replace("S-2", "S-3"))
    };
    survives(&again, &["order", "day.csv", "--out", "papers"], 53);
    minds_no_interruption(&begun, &["order", "day.csv", "--out", "papers"]);
}

/// What a survey keeps until it is whole.
const UNFINISHED: &str = "s.csv.unfinished";

/// A table of bodies too wide for any size, which take no time.
fn bodies(count: usize) -> String {
    let head = "sex,mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n";
    let row = |at: usize| format!("F,{},690,500\n", 100 + at);
    head.to_owned() + &(0..count).map(row).collect::<String>()
}

#[test]
fn a_survey_goes_on_from_wherever_it_ended() {
    let begun = || TestDir::new().with("b.csv", bodies(40));
    let words = ["survey", "b.csv", "--layout", "row-six", "--out", "s.csv"];
    goes_on(&begun, &words, 3);
    goes_on(&begun, &[&words[..], &["--shard", "2/2"]].concat(), 5);
    // From what an earlier run left, broken off within a row, in place of an older survey.
    let first = begun();
    first.run(&words).done();
    let older = first.read("s.csv");
    let resumed = || begun().with(UNFINISHED, &older[..older.len() / 2]).with("s.csv", &older);
    goes_on(&resumed, &words, 3);
    // Broken off within its heading.
    let headless = || begun().with(UNFINISHED, &older[..20]);
    goes_on(&headless, &words, 5);
}

#[test]
fn parts_are_put_together_or_not() {
    static PARTS: OnceLock<[String; 2]> = OnceLock::new();
    let begun = || {
        let [one, two] = PARTS.get_or_init(|| {
            let dir = TestDir::new().with("b.csv", bodies(6));
            ["1/2", "2/2"].map(|part| {
                let words = ["survey", "b.csv", "--layout", "row-six", "--out", "s.csv"];
                dir.run(&[&words[..], &["--shard", part]].concat()).done();
                dir.read("s.csv")
            })
        });
        TestDir::new().with("1.csv", one).with("2.csv", two)
    };
    survives(&begun, &["merge", "1.csv", "2.csv", "--out", "s.csv", "--figure", "s.svg"], 1);
}

#[test]
fn a_demo_is_written_or_not() {
    // Some 800 calls, most of which look whether two files are one; the rest are those of `print`,
    // and a run takes seconds: what this adds is that none of all its files is there then.
    survives(&TestDir::new, &["demo", "--out", "papers"], 191);
}
