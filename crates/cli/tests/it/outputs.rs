//! Outputs: never over an input, never over each other, each with the ending of its kind.

use crate::runner::TestDir;

const LAYOUT: &str = include_str!("data/layout.toml");
const CLIENT: &str = include_str!("data/client.toml");
const PART: &str = "row,layout\n";

fn dir() -> TestDir {
    let dir = TestDir::new();
    dir.with("layout.toml", LAYOUT).with("client.toml", CLIENT).with("part.csv", PART)
}

/// Runs the words, which must be refused as a wrong call; nothing in the folder changes.
#[track_caller]
fn check_refused(dir: &TestDir, words: &[&str], said: &str) {
    let before: Vec<_> = dir.names().into_iter().map(|name| (dir.bytes(&name), name)).collect();
    let told = dir.run(words).failed(2);
    assert!(told.contains(said), "{said} is not in: {told}");
    let after: Vec<_> = dir.names().into_iter().map(|name| (dir.bytes(&name), name)).collect();
    assert!(before == after, "{words:?} changed the folder");
}

const SIZE: [&str; 2] = ["--size", "440x400"];

#[test]
fn an_output_with_the_ending_of_another_kind_is_refused() {
    let dir = dir();
    let called = "is to be written as svg, and is called otherwise";
    let a_drawing = "is to be written as svg or pdf or png, and is called otherwise";
    for name in ["client.toml", "new.toml", "new", "new.csv"] {
        check_refused(&dir, &["predict", "client.toml", "--sections", name], a_drawing);
        let pattern = ["pattern", "layout.toml", SIZE[0], SIZE[1], "--svg", name];
        check_refused(&dir, &pattern, called);
        let merge = ["merge", "part.csv", "--out", "all.csv", "--figure", name];
        check_refused(&dir, &merge, a_drawing);
    }
    for name in ["layout.toml", "all.svg", "all"] {
        let merge = ["merge", "part.csv", "--out", name];
        check_refused(&dir, &merge, "is to be written as csv");
    }
    check_refused(&dir, &["new", "client", "K-18.svg"], "is to be written as toml");
}

#[test]
fn an_output_that_is_an_input_is_refused() {
    // A file that is read may have any name, also that of a drawing.
    let dir = dir().with("mine.svg", CLIENT).with("drawn.svg", LAYOUT);
    let over = "which is read here";
    check_refused(&dir, &["predict", "mine.svg", "--svg", "./mine.svg"], over);
    let pattern = ["pattern", "drawn.svg", SIZE[0], SIZE[1], "--svg", "drawn.svg"];
    check_refused(&dir, &pattern, over);
    check_refused(&dir, &["merge", "part.csv", "--out", "part.csv"], over);
    let survey = ["survey", "part.csv", "--layout", "row-six", "--out", "part.csv"];
    check_refused(&dir, &survey, over);
}

#[test]
fn a_layout_that_the_client_names_is_an_input_too() {
    let client = CLIENT.replace("layout.toml", "./drawn.svg");
    let dir = dir().with("drawn.svg", LAYOUT).with("client.toml", client);
    check_refused(&dir, &["predict", "client.toml", "--svg", "drawn.svg"], "which is read here");
}

#[test]
fn papers_are_not_written_over_the_file_that_they_are_made_from() {
    let dir = dir();
    dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).done();
    let recorded = dir.read("client.toml");
    dir.run(&["print", "client.toml", "--out", "x"]).done();
    let name = dir.papers_of("x/K-17", "tag.svg")[0].replace("x/", "");
    let dir = dir.with(&name, recorded);
    let over = format!("`./{name}` would be written over `{name}`");
    check_refused(&dir, &["print", &name, "--out", "."], &over);
}

#[test]
fn two_outputs_are_not_written_over_each_other() {
    let dir = dir().with("both.csv", PART);
    // One name cannot have both endings, so they only meet by way of a link.
    #[cfg(unix)]
    {
        std::os::unix::fs::symlink("new.csv", dir.path().join("new.svg")).unwrap();
        std::fs::write(dir.path().join("new.csv"), "old").unwrap();
        let merge = ["merge", "part.csv", "--out", "new.csv", "--figure", "new.svg"];
        check_refused(&dir, &merge, "`new.svg` would be written twice");
    }
}

#[cfg(unix)]
#[test]
fn a_link_to_an_input_is_refused() {
    let dir = dir();
    std::os::unix::fs::symlink("client.toml", dir.path().join("soft.svg")).unwrap();
    std::fs::hard_link(dir.path().join("client.toml"), dir.path().join("hard.svg")).unwrap();
    std::os::unix::fs::symlink(".", dir.path().join("here")).unwrap();
    for name in ["soft.svg", "hard.svg", "here/soft.svg"] {
        check_refused(&dir, &["predict", "client.toml", "--svg", name], "which is read here");
    }
}

#[test]
fn a_new_drawing_is_written_whatever_the_case_of_its_ending() {
    let dir = dir();
    for name in ["a.svg", "B.SVG"] {
        dir.run(&["pattern", "layout.toml", SIZE[0], SIZE[1], "--svg", name]).done();
        assert!(dir.read(name).ends_with("</svg>\n") || dir.read(name).ends_with("</svg>"));
        // What this program drew earlier may be drawn anew.
        dir.run(&["pattern", "layout.toml", SIZE[0], SIZE[1], "--svg", name]).done();
    }
}
