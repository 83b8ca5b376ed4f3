//! What every shelf promises, wherever it keeps its files.

use std::sync::mpsc;
use std::time::Duration;

use casework::{Change, Shelf, Was, Why};

/// Fails unless an empty shelf keeps what [`Shelf`] promises. `at` makes a name of a word.
///
/// # Panics
///
/// Panics where it does not.
#[track_caller]
pub fn assert_keeps_the_promises(shelf: &dyn Shelf, at: &dyn Fn(&str) -> String) {
    bytes_come_back_as_they_are(shelf, at);
    what_changed_meanwhile_is_not_replaced(shelf, at);
    all_or_none(shelf, at);
    files_go(shelf, at);
    what_is_watched_is_told(shelf, at);
}

/// Longer than any system takes to tell of a change.
const LONG: Duration = Duration::from_secs(20);

/// Where the shelf can tell: of a change, also of one that puts another file in the place of the
/// first, and of nothing after the watch has ended.
#[track_caller]
fn what_is_watched_is_told(shelf: &dyn Shelf, at: &dyn Fn(&str) -> String) {
    let name = at("watched");
    shelf.put(&[Change::new(&name, "first")]).expect("the name is free");
    let (tell, told) = mpsc::channel();
    let tell = move || {
        // Whoever asked may have gone.
        let _gone = tell.send(());
    };
    let Some(watch) = shelf.watch(&name, Box::new(tell)) else { return };
    for (was, is) in [("first", "second"), ("second", "third")] {
        while told.try_recv().is_ok() {}
        shelf.put(&[Change::of(&name, was.as_bytes(), is)]).expect("it is as it was read");
        assert_eq!(told.recv_timeout(LONG), Ok(()), "nothing is told of {is}");
    }
    drop(watch);
    let end = loop {
        if let Err(end) = told.recv_timeout(LONG) {
            break end;
        }
    };
    assert_eq!(end, mpsc::RecvTimeoutError::Disconnected, "it is watched for ever");
}

#[track_caller]
fn bytes_come_back_as_they_are(shelf: &dyn Shelf, at: &dyn Fn(&str) -> String) {
    // A byte-order mark, both kinds of line ends, no end of the last line, bytes that are no text.
    let bytes = b"\xef\xbb\xbfa = 1\r\nb = 2\n\xff\x00c";
    let name = at("bytes");
    shelf.put(&[Change::new(&name, bytes)]).expect("the name is free");
    assert_eq!(shelf.read(&name).expect("it was just put"), bytes);
    assert_eq!(shelf.read(&at("nothing")).map_err(|error| error.why), Err(Why::NotFound));
    let neighbour = shelf.beside(&name, "bytes");
    assert_eq!(shelf.read(&neighbour).expect("it is the same file"), bytes);
    shelf.put(&[Change::output(at("folder/deep/bytes"), *bytes)]).expect("folders are made");
    let other = shelf.beside(&at("folder/x"), "deep/bytes");
    assert_eq!(shelf.read(&other).expect("it is in the folder in that one"), bytes);
}

#[track_caller]
fn what_changed_meanwhile_is_not_replaced(shelf: &dyn Shelf, at: &dyn Fn(&str) -> String) {
    let name = at("client");
    let put = |change: Change| shelf.put(&[change]).map_err(|error| error.why);
    assert_eq!(put(Change::of(&name, b"", "x")), Err(Why::Gone));
    assert_eq!(put(Change::new(&name, "first")), Ok(()));
    assert_eq!(put(Change::new(&name, "second")), Err(Why::ThereAlready));
    // The same text with other line ends is another edit.
    assert_eq!(put(Change::of(&name, b"first\n", "second")), Err(Why::Changed));
    assert_eq!(shelf.read(&name).expect("it is there"), b"first");
    assert_eq!(put(Change::of(&name, b"first", "second")), Ok(()));
    assert_eq!(put(Change::of(&name, b"first", "third")), Err(Why::Changed));
    assert_eq!(shelf.read(&name).expect("it is there"), b"second");
    assert_eq!(put(Change::output(&name, "third")), Ok(()));
    assert_eq!(shelf.read(&name).expect("it is there"), b"third");
}

#[track_caller]
fn all_or_none(shelf: &dyn Shelf, at: &dyn Fn(&str) -> String) {
    shelf.put(&[Change::output(at("old"), "before")]).expect("an output replaces anything");
    let wrong = Change::of(at("old"), b"something else", "after");
    for changes in [
        [Change::output(at("new"), "x"), wrong.clone()],
        [wrong, Change::output(at("new"), "x")],
        [Change::output(at("new"), "x"), Change::output(at("new"), "y")],
    ] {
        shelf.put(&changes).expect_err("one of the changes cannot be made");
        assert_eq!(shelf.read(&at("old")).expect("it is there"), b"before");
        shelf.read(&at("new")).expect_err("nothing was put there");
    }
}

#[track_caller]
fn files_go(shelf: &dyn Shelf, at: &dyn Fn(&str) -> String) {
    let put = |change: Change| shelf.put(&[change]).map_err(|error| error.why);
    assert_eq!(put(Change::new(at("brief"), "x")), Ok(()));
    let other = casework::BytesDigest::of(b"y");
    assert_eq!(put(Change::removal(at("brief"), Was::Digest(other))), Err(Why::Changed));
    assert_eq!(put(Change::removal(at("brief"), Was::Any)), Ok(()));
    assert_eq!(shelf.read(&at("brief")).map_err(|error| error.why), Err(Why::NotFound));
    assert_eq!(put(Change::removal(at("brief"), Was::Any)), Ok(()), "it is gone, as is wanted");
}
