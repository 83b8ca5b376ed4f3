//! Every built-in layout, at its smallest, its largest and an uneven size, through every paper.

use std::fs;
use std::thread;

use crate::papers::texts;
use crate::runner::TestDir;

const CLIENT: &str = include_str!("data/client.toml");

/// The sizes that a layout's file lists, in its order, which is from small to large.
fn listed(text: &str) -> Vec<&str> {
    let lines = text.lines().filter_map(|line| line.trim().strip_prefix("{ size = \""));
    lines.filter_map(|line| line.split('"').next()).collect()
}

/// Prints all papers of a client on a layout in a size, after recording a plan; `whole` on Letter and
/// as pictures too, which changes nothing of what is on them.
fn check(layout: &str, size: &str, whole: bool) {
    let client = CLIENT
        .replace("layout = \"layout.toml\"", &format!("layout = \"{layout}\""))
        .replace("size = \"440x400\"", &format!("size = \"{size}\""))
        .replace("kg = 68.5", "kg = 25");
    let (head, _) = client.split_once("[[change]]").unwrap();
    let dir = TestDir::new().with("client.toml", head);
    let plan = dir.run(&["plan", "client.toml", "--record", "--by", "OT"]);
    assert_eq!(plan.code, Some(0), "{layout} in {size}: {}", plan.stderr);
    let planned = planned(&dir.read("client.toml"));
    let papers: &[&str] = if whole { &["a4", "letter"] } else { &["a4"] };
    for paper in papers {
        let client = ["print", "client.toml", "--out", paper, "--paper", paper];
        let stock = ["print", "--stock", layout, "--size", size, "--out", paper, "--paper", paper];
        for words in [&client[..], &stock] {
            let said = dir.run(words);
            assert_eq!(said.code, Some(0), "{layout} in {size} on {paper}: {}", said.stderr);
        }
        // The card has a second page where there is more to say.
        let card = texts(&dir.paper(&format!("{paper}/K-17"), "setup-card-1.svg"));
        // In the drawing each number has its count beside it; the names of the edges come after.
        let from = card.iter().position(|text| text.starts_with("From above")).unwrap();
        let drawn: Vec<u32> = card[from + 1..].iter().map_while(|text| text.parse().ok()).collect();
        let mut shown: Vec<u32> = drawn.chunks(2).map(|pair| pair[1]).collect();
        shown.sort_unstable();
        assert_eq!(shown, planned, "{layout} in {size} on {paper}");
    }
    if whole {
        let pictures = dir.run(&["print", "client.toml", "--out", "pictures", "--png"]);
        assert_eq!(pictures.code, Some(0), "{layout} in {size}: {}", pictures.stderr);
    }
}

/// The planned counts of a record, from small to large.
fn planned(client: &str) -> Vec<u32> {
    let counts = client.lines().filter_map(|line| line.rsplit_once("planned = "));
    let counts = counts.filter_map(|(_, count)| count.split(' ').next());
    let mut counts: Vec<u32> = counts.map(|count| count.parse().unwrap()).collect();
    counts.sort_unstable();
    counts
}

#[test]
fn every_layout_goes_through_every_paper() {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../../layouts");
    let layouts: Vec<_> =
        fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    assert!(layouts.len() >= 3, "only {layouts:?} were found");
    thread::scope(|scope| {
        for path in &layouts {
            scope.spawn(move || {
                let text = fs::read_to_string(path).unwrap();
                let sizes = listed(&text);
                let name = path.file_stem().unwrap().to_str().unwrap();
                for size in [sizes[0], sizes[sizes.len() - 1], "17.5x17in"] {
                    check(name, size, size == sizes[0]);
                }
            });
        }
    });
}
