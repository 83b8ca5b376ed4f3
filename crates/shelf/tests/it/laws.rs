//! The promises of every shelf, kept on a disk; and all or none where the disk itself refuses.

use std::fs;

use casework::{BytesDigest, Change, Doing, NoFile, Shelf as _, Was, Why};
use shelf::DiskShelf;
use testkit::assert_keeps_the_promises;

use crate::folder::Folder;

#[test]
fn it_keeps_the_promises_within_a_folder_and_anywhere() {
    let folder = Folder::new();
    assert_keeps_the_promises(&folder.shelf(), &str::to_owned);
    let folder = Folder::new();
    assert_keeps_the_promises(&DiskShelf::anywhere(), &|name| folder.name(name));
}

#[test]
fn where_one_cannot_have_its_name_all_is_as_before() {
    let folder = Folder::of(&[("old", "before")]);
    fs::create_dir(folder.path("taken")).unwrap();
    let changes = ["old", "new", "taken"].map(|name| Change::output(name, "after")).to_vec();
    let error = folder.shelf().put(&changes).unwrap_err();
    assert_eq!((error.name.as_str(), error.why), ("taken", Why::NotAFile(NoFile::Folder)));
    assert_eq!(folder.names(), ["old", "taken"]);
    assert_eq!(folder.texts()["old"], "before");
}

#[test]
fn folders_are_made_and_unmade() {
    let folder = Folder::new();
    fs::create_dir(folder.path("taken")).unwrap();
    let shelf = folder.shelf();
    let (deep, taken) = (Change::output("a/b/c/x", "x"), Change::output("taken", "y"));
    shelf.put(&[deep.clone(), taken]).unwrap_err();
    assert_eq!(folder.names(), ["taken"]);
    shelf.put(&[deep]).unwrap();
    assert_eq!(shelf.list("a/b/c").unwrap(), ["a/b/c/x"]);
    let under = shelf.put(&[Change::output("a/b/c/x/y", "y")]).unwrap_err();
    assert_eq!((under.doing, under.why), (Doing::MakeFolder, Why::NotAFolder));
    assert_eq!(shelf.read("a/b/c/x").unwrap(), b"x");
}

/// A removal makes no folder, and none is left behind.
#[test]
fn what_is_not_there_is_removed_without_a_trace() {
    let folder = Folder::new();
    folder.shelf().put(&[Change::removal("a/x", Was::Any)]).unwrap();
    let read = Was::Digest(BytesDigest::of(b"x"));
    let error = folder.shelf().put(&[Change::removal("a/x", read)]).unwrap_err();
    assert_eq!(error.why, Why::Gone);
    assert_eq!(folder.names(), [""; 0]);
}

#[test]
fn files_are_listed_in_order_and_nothing_else_is() {
    let folder = Folder::of(&[("b", ""), ("a", ""), (".seatwright-left", ""), (".hidden", "")]);
    fs::create_dir(folder.path("c")).unwrap();
    assert_eq!(folder.shelf().list("").unwrap(), [".hidden", "a", "b"]);
    let error = folder.shelf().list("nowhere").unwrap_err();
    assert_eq!((error.doing, error.why), (Doing::List, Why::NotFound));
}

#[test]
fn names_do_not_lead_out_of_a_folder() {
    let folder = Folder::of(&[("secret", "x")]);
    fs::create_dir(folder.path("inner")).unwrap();
    std::os::unix::fs::symlink("../secret", folder.path("inner/link")).unwrap();
    std::os::unix::fs::symlink("../new", folder.path("inner/to-new")).unwrap();
    std::os::unix::fs::symlink("..", folder.path("inner/up")).unwrap();
    let shelf = DiskShelf::within(folder.path("inner"));
    let absolute = folder.name("secret");
    let names =
        ["../secret", &absolute, "link", "to-new", "up/secret", "up/new", "./a", "a//b", "a/"];
    for name in names {
        assert_eq!(shelf.read(name).unwrap_err().why, Why::NotOfThisShelf, "{name}");
        let error = shelf.put(&[Change::output(name, "y")]).unwrap_err();
        assert_eq!(error.why, Why::NotOfThisShelf, "{name}");
    }
    assert_eq!(shelf.list("..").unwrap_err().why, Why::NotOfThisShelf);
    assert_eq!(folder.texts()["secret"], "x");
    assert_eq!(folder.names(), ["inner", "secret"]);
}

/// Two names of one file are one file.
#[test]
fn no_file_is_changed_twice_in_one_go() {
    let folder = Folder::of(&[("x", "before")]);
    std::os::unix::fs::symlink("x", folder.path("link")).unwrap();
    let changes = [Change::output("x", "a"), Change::output("link", "b")];
    assert_eq!(folder.shelf().put(&changes).unwrap_err().why, Why::Twice);
    assert_eq!(folder.texts()["x"], "before");
}

#[test]
fn a_megabyte_is_read_and_no_more() {
    let folder = Folder::new();
    fs::write(folder.path("most"), vec![b'x'; 1_000_000]).unwrap();
    fs::write(folder.path("more"), vec![b'x'; 1_000_001]).unwrap();
    assert_eq!(folder.shelf().read("most").unwrap().len(), 1_000_000);
    assert_eq!(folder.shelf().read("more").unwrap_err().why, Why::TooLarge { most: 1_000_000 });
}
