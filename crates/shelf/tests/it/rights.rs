//! Modes and owners, which stay or are a reason to refuse.

use std::fs::{self, Permissions};
use std::os::unix::fs::{MetadataExt as _, PermissionsExt as _, chown};
use std::os::unix::process::CommandExt as _;
use std::process::Command;

use casework::{Change, Shelf as _, Why};

use crate::folder::{Folder, hand, said};

fn set_mode(folder: &Folder, name: &str, mode: u32) {
    fs::set_permissions(folder.path(name), Permissions::from_mode(mode)).unwrap();
}

fn mode(folder: &Folder, name: &str) -> u32 {
    fs::metadata(folder.path(name)).unwrap().mode() & 0o7777
}

/// A number that is nobody's here; only who may become anybody can be it.
const STRANGER: u32 = 54_321;

/// Whether this test may act as another user.
fn may_be_another() -> bool {
    let folder = Folder::of(&[("x", "")]);
    chown(folder.path("x"), Some(STRANGER), None).is_ok()
}

/// The second process as a user who owns nothing here.
fn stranger() -> Command {
    let mut command = hand();
    command.uid(STRANGER).gid(STRANGER);
    command
}

#[test]
fn the_mode_stays_and_a_new_file_has_the_usual_one() {
    let folder = Folder::of(&[("private", "before"), ("program", "before")]);
    set_mode(&folder, "private", 0o600);
    set_mode(&folder, "program", 0o754);
    let names = ["private", "program", "new"];
    folder.shelf().put(&names.map(|name| Change::output(name, "after"))).unwrap();
    assert_eq!(mode(&folder, "private"), 0o600);
    assert_eq!(mode(&folder, "program"), 0o754);
    fs::write(folder.path("usual"), "").unwrap();
    assert_eq!(mode(&folder, "new"), mode(&folder, "usual"));
}

/// Root could write it. It was set so to be kept.
#[test]
fn a_read_only_file_is_not_rewritten_and_not_removed() {
    let folder = Folder::of(&[("kept", "before"), ("other", "before")]);
    set_mode(&folder, "kept", 0o444);
    for change in
        [Change::of("kept", b"before", "after"), Change::removal("kept", casework::Was::Any)]
    {
        let both = [Change::output("other", "after"), change];
        assert_eq!(folder.shelf().put(&both).unwrap_err().why, Why::ReadOnlyFile);
    }
    assert_eq!(folder.texts()["kept"], "before");
    assert_eq!(folder.texts()["other"], "before");
    assert_eq!(folder.names(), ["kept", "other"]);
}

#[test]
fn root_gives_a_file_back_to_its_owner() {
    if !may_be_another() {
        return;
    }
    let folder = Folder::of(&[("theirs", "before")]);
    chown(folder.path("theirs"), Some(STRANGER), Some(STRANGER)).unwrap();
    set_mode(&folder, "theirs", 0o640);
    folder.shelf().put(&[Change::output("theirs", "after")]).unwrap();
    let about = fs::metadata(folder.path("theirs")).unwrap();
    assert_eq!((about.uid(), about.gid()), (STRANGER, STRANGER));
    assert_eq!((mode(&folder, "theirs"), &*folder.texts()["theirs"]), (0o640, "after"));
}

#[test]
fn a_file_that_would_change_hands_is_left_as_it_is() {
    if !may_be_another() {
        return;
    }
    let folder = Folder::of(&[("theirs", "before"), ("locked", "before")]);
    set_mode(&folder, "", 0o777);
    set_mode(&folder, "theirs", 0o666);
    set_mode(&folder, "locked", 0o644);
    let put = |name: &str| said(stranger().arg("put").arg(format!("{}=after", folder.name(name))));
    assert!(put("theirs").ends_with("OtherOwner\n"), "{}", put("theirs"));
    assert!(put("locked").ends_with("NotAllowed\n"), "{}", put("locked"));
    assert_eq!(put("own"), "");
    assert_eq!(fs::metadata(folder.path("own")).unwrap().uid(), STRANGER);
    assert_eq!(folder.names(), ["locked", "own", "theirs"]);
    assert_eq!(folder.texts()["theirs"], "before");
}

#[test]
fn what_may_not_be_read_or_written_is_said() {
    if !may_be_another() {
        return;
    }
    let folder = Folder::of(&[("x", "before")]);
    set_mode(&folder, "", 0o755);
    set_mode(&folder, "x", 0o666);
    let name = folder.name("x");
    let said_of = |words: [&str; 2]| said(stranger().args(words));
    let put = said_of(["put", &format!("{name}=after")]);
    assert!(put.ends_with("NotAllowed\n"), "a folder that may not be written to: {put}");
    let made = said_of(["put", &format!("{}=x", folder.name("new/x"))]);
    assert!(made.starts_with("MakeFolder") && made.ends_with("NotAllowed\n"), "{made}");
    set_mode(&folder, "x", 0o600);
    let read = said(stranger().args(["count", &name, "1"]));
    assert!(read.starts_with("Read") && read.ends_with("NotAllowed\n"), "{read}");
    assert_eq!(folder.names(), ["x"]);
    assert_eq!(folder.texts()["x"], "before");
}

/// As on a full disk, some of the bytes can be written and then no more.
#[test]
fn a_file_that_may_not_become_so_large_is_not_begun() {
    let folder = Folder::of(&[("x", "before")]);
    let text = "z".repeat(100_000);
    // The signal that the system sends is not for this test: the error is.
    let mut command = Command::new("sh");
    command.args(["-c", "trap '' XFSZ; ulimit -f 8; exec \"$@\"", "sh"]);
    command.arg(env!("CARGO_BIN_EXE_shelf-hand")).arg("put");
    command.arg(format!("{}=after", folder.name("a")));
    command.arg(format!("{}={text}", folder.name("x")));
    let said = said(&mut command);
    assert!(said.starts_with("Write") && said.ends_with("TooLargeHere\n"), "{said}");
    assert_eq!(folder.names(), ["x"]);
    assert_eq!(folder.texts()["x"], "before");
}
