//! Many at once: threads and processes that change the same files.

use std::thread;

use casework::{Change, Shelf as _, Was, Why};
use shelf::DiskShelf;

use crate::folder::{Folder, hand, said};

/// Each adds 1 as often as it takes; whoever was overtaken was told.
#[test]
fn no_change_of_threads_is_lost() {
    const THREADS: usize = 6;
    const TIMES: usize = 20;
    let folder = Folder::of(&[("count", "0")]);
    let shelf = folder.shelf();
    let overtaken: usize = thread::scope(|scope| {
        let count = || {
            let mut overtaken = 0;
            for _ in 0..TIMES {
                while !added(&shelf) {
                    overtaken += 1;
                }
            }
            overtaken
        };
        let threads: Vec<_> = (0..THREADS).map(|_| scope.spawn(count)).collect();
        threads.into_iter().map(|one| one.join().unwrap()).sum()
    });
    assert_eq!(folder.texts()["count"], (THREADS * TIMES).to_string());
    assert!(overtaken > 0, "nothing happened at once, so nothing was tested");
    assert_eq!(folder.names(), ["count"]);
}

/// Reads the count and puts one more; false where another was quicker.
fn added(shelf: &DiskShelf) -> bool {
    let read = shelf.read("count").unwrap();
    let count: usize = std::str::from_utf8(&read).unwrap().parse().unwrap();
    match shelf.put(&[Change::of("count", &read, (count + 1).to_string())]) {
        Ok(()) => true,
        Err(error) if error.why == Why::Changed => false,
        Err(error) => panic!("{error}"),
    }
}

#[test]
fn no_change_of_processes_is_lost() {
    let folder = Folder::of(&[("count", "0")]);
    let name = folder.name("count");
    thread::scope(|scope| {
        let count = || said(hand().args(["count", &name, "100"]));
        let processes: Vec<_> = (0..2).map(|_| scope.spawn(count)).collect();
        processes.into_iter().for_each(|one| assert_eq!(one.join().unwrap(), ""));
    });
    assert_eq!(folder.texts()["count"], "200");
    assert_eq!(folder.names(), ["count"]);
}

/// Two that want the same folders in another order do not wait for each other, and folders that
/// one makes and unmakes do not disturb the other.
#[test]
fn several_folders_are_changed_at_once_in_any_order() {
    let folder = Folder::new();
    let shelf = folder.shelf();
    let bad = Change::of("c/x", b"never", "x");
    let rounds = |changes: Vec<Change>, fails: bool| {
        for _ in 0..30 {
            assert_eq!(shelf.put(&changes).is_err(), fails);
        }
    };
    thread::scope(|scope| {
        let changes = |text: &str| ["a/x", "b/x", "c/y"].map(|name| Change::output(name, text));
        let one = changes("one").to_vec();
        let two: Vec<Change> = changes("two").into_iter().rev().collect();
        let three: Vec<Change> = changes("three").into_iter().chain([bad]).collect();
        scope.spawn(move || rounds(one, false));
        scope.spawn(move || rounds(two, false));
        scope.spawn(move || rounds(three, true));
    });
    let read = |name: &str| shelf.read(name).unwrap();
    assert!([b"one".to_vec(), b"two".to_vec()].contains(&read("a/x")));
    assert_eq!(read("a/x"), read("b/x"), "what was put together stays together");
    assert_eq!(read("a/x"), read("c/y"));
    for inner in ["a", "b", "c"] {
        assert_eq!(std::fs::read_dir(folder.path(inner)).unwrap().count(), 1, "{inner}");
    }
}

/// A put that is under way in another thread is not swept away by one that begins.
#[test]
fn outputs_of_many_threads_are_all_there() {
    let folder = Folder::of(&[(".seatwright-of-a-killed-one", "x")]);
    let shelf = folder.shelf();
    let names: Vec<String> = (10..40).map(|number| format!("page-{number}")).collect();
    thread::scope(|scope| {
        for name in &names {
            let change = Change { name: name.clone(), was: Was::Absent, bytes: Some(b"x".into()) };
            let shelf = &shelf;
            scope.spawn(move || shelf.put(&[change]).unwrap());
        }
    });
    assert_eq!(folder.names(), names);
}
