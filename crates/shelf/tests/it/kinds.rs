//! Links, pipes, devices.

use std::fs;
use std::os::unix::fs::{MetadataExt as _, symlink};
use std::process::Command;
use std::time::{Duration, Instant};

use casework::{Change, NoFile, Shelf as _, Was, Why};
use shelf::DiskShelf;

use crate::folder::Folder;

#[test]
fn a_link_goes_on_leading_to_the_file() {
    let folder = Folder::of(&[("file", "before")]);
    fs::create_dir(folder.path("other")).unwrap();
    symlink("../file", folder.path("other/link")).unwrap();
    symlink("other/link", folder.path("link-to-link")).unwrap();
    let shelf = folder.shelf();
    shelf.put(&[Change::of("link-to-link", b"before", "after")]).unwrap();
    assert_eq!(fs::read_link(folder.path("link-to-link")).unwrap().to_str(), Some("other/link"));
    assert_eq!(fs::read_link(folder.path("other/link")).unwrap().to_str(), Some("../file"));
    assert!(fs::symlink_metadata(folder.path("file")).unwrap().is_file());
    assert_eq!(folder.texts()["file"], "after");
    let error = shelf.put(&[Change::new("link-to-link", "x")]).unwrap_err();
    assert_eq!(error.why, Why::ThereAlready);
}

#[test]
fn a_link_to_nothing_is_neither_replaced_nor_followed() {
    let folder = Folder::new();
    symlink("nothing", folder.path("link")).unwrap();
    symlink("round", folder.path("round")).unwrap();
    let shelf = DiskShelf::anywhere();
    let put = |name: &str, was| {
        let change = Change { name: folder.name(name), was, bytes: Some(b"x".into()) };
        shelf.put(&[change]).map_err(|error| error.why)
    };
    assert_eq!(put("link", Was::Any), Err(Why::LinkToNothing));
    assert_eq!(put("link", Was::Absent), Err(Why::ThereAlready));
    assert!(matches!(put("round", Was::Any), Err(Why::System(_))));
    assert_eq!(folder.names(), ["link", "round"]);
}

/// The other name would go on naming the old bytes, as if the record had not been made.
#[test]
fn a_file_with_two_names_is_left_as_it_is() {
    let folder = Folder::of(&[("file", "before")]);
    fs::hard_link(folder.path("file"), folder.path("second")).unwrap();
    let error = folder.shelf().put(&[Change::of("file", b"before", "after")]).unwrap_err();
    assert_eq!(error.why, Why::HardLinked { names: 2 });
    assert_eq!(folder.texts()["file"], "before");
    // What a killed process has kept aside is a second name too, and is no reason to refuse.
    fs::remove_file(folder.path("second")).unwrap();
    fs::hard_link(folder.path("file"), folder.path(".seatwright-aside")).unwrap();
    folder.shelf().put(&[Change::of("file", b"before", "after")]).unwrap();
    assert_eq!(folder.names(), ["file"]);
    assert_eq!(fs::metadata(folder.path("file")).unwrap().nlink(), 1);
}

/// Nobody ever writes to the pipe: waiting for it would be for ever.
#[test]
fn pipes_and_devices_are_refused_and_not_waited_for() {
    let folder = Folder::new();
    let made = Command::new("mkfifo").arg(folder.path("pipe")).status();
    assert!(made.unwrap().success());
    symlink("pipe", folder.path("link")).unwrap();
    let shelf = DiskShelf::anywhere();
    let start = Instant::now();
    let (pipe, link) = (folder.name("pipe"), folder.name("link"));
    let folder_itself = folder.name("");
    for (name, what) in [
        (pipe.as_str(), NoFile::Pipe),
        (&link, NoFile::Pipe),
        ("/dev/null", NoFile::Device),
        ("/dev/zero", NoFile::Device),
        ("/dev/full", NoFile::Device),
        (&folder_itself, NoFile::Folder),
    ] {
        assert_eq!(shelf.read(name).unwrap_err().why, Why::NotAFile(what), "{name}");
        for was in [Was::Any, Was::Digest(casework::BytesDigest::of(b""))] {
            let change = Change { name: name.to_owned(), was, bytes: Some(b"x".into()) };
            assert_eq!(shelf.put(&[change]).unwrap_err().why, Why::NotAFile(what), "{name}");
        }
    }
    // Far more than looking takes, far less than for ever.
    assert!(start.elapsed() < Duration::from_secs(5));
    assert_eq!(folder.names(), ["link", "pipe"]);
}
