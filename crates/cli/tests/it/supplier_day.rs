//! A supplier's day, from README alone: its layout, its order, its commands as they stand there.

use std::collections::BTreeSet;

use serde_json::Value;

use crate::fitting::CLIENT;
use crate::papers::texts;
use crate::runner::TestDir;

const README: &str = include_str!("../../../../README.md");

/// The part of README for suppliers.
fn for_suppliers() -> &'static str {
    let (_, rest) = README.split_once("\n## For a supplier\n").unwrap();
    rest.split_once("\n## ").unwrap().0
}

/// The fenced texts of a kind, in their order.
fn fenced(kind: &str) -> Vec<&'static str> {
    let opened = format!("```{kind}\n");
    let parts = for_suppliers().split(opened.as_str()).skip(1);
    parts.map(|own| own.split_once("```").unwrap().0).collect()
}

/// The commands of the first list, without the program's name and without remarks.
fn commands() -> Vec<Vec<&'static str>> {
    let lines = fenced("console")[0].lines();
    let words = lines.map(|line| line.split(" #").next().unwrap().split_whitespace().collect());
    let all: Vec<Vec<&str>> = words.collect();
    assert!(all.iter().all(|own| own[0] == "seatwright"), "{all:?}");
    all.into_iter().map(|own| own[1..].to_vec()).collect()
}

/// The layout of README, which is not built in.
pub(crate) fn layout() -> &'static str {
    let text = fenced("toml")[0];
    let name = files::read_layout(text).value.unwrap().name.to_string();
    assert!(files::BUILT_IN_LAYOUTS.iter().all(|own| own.name != name), "{name}");
    text
}

/// The day begins with a layout that was changed since last year, whose revision did not rise.
fn begun() -> TestDir {
    let before = layout().replace("wall_height = 80", "wall_height = 76");
    let dir = TestDir::new()
        .with("mine.toml", layout())
        .with("mine-2025.toml", before)
        .with("monday.csv", fenced("csv")[0])
        .with("K-17.toml", CLIENT.replace("T-1", "K-17"))
        .with("bodies.csv", "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n70,380,470\n");
    assert_eq!(dir.run(&["plan", "K-17.toml", "--record", "--by", "OT"]).code, Some(0));
    dir
}

fn json(dir: &TestDir, words: &[&str]) -> Value {
    let ran = dir.run(&[words, &["--json"]].concat());
    assert_eq!(ran.code, Some(0), "{words:?}: {}{}", ran.stdout, ran.stderr);
    serde_json::from_str(&ran.stdout).unwrap()
}

/// Cells of each compartment by its number.
fn counts(of: &Value) -> Vec<(u64, u64)> {
    let cells = |own: &Value| own["cells"]["stock"].as_u64().or(own["cells"].as_u64()).unwrap();
    let all = of["compartments"].as_array().unwrap().iter();
    all.map(|own| (own["number"].as_u64().unwrap(), cells(own))).collect()
}

#[test]
fn every_command_of_readme_does_what_it_says() {
    let dir = begun();
    let mut done = BTreeSet::new();
    for words in commands() {
        done.insert(words[0]);
        if words[0] == "new" {
            // What is begun must not be there yet.
            let empty = TestDir::new();
            empty.run(&words).done();
            assert_eq!(empty.run(&["check", words[2]]).code, Some(0));
            continue;
        }
        let ran = dir.run(&words);
        let wanted = if words.contains(&"--against") { 3 } else { 0 };
        assert_eq!(ran.code, Some(wanted), "{words:?}: {}", ran.stderr);
        if wanted == 3 {
            assert!(ran.stderr.contains("revision = 2"), "{}", ran.stderr);
            // It is raised, as the remark says, and then all is well.
            let raised = layout().replace("revision = 1", "revision = 2");
            std::fs::write(dir.path().join("mine.toml"), raised).unwrap();
            dir.run(&words).done();
        }
    }
    // What a day needs is there.
    let needed = ["layouts", "range", "check", "template", "parts", "order", "weigh", "print"];
    let missing: Vec<_> = needed.iter().filter(|own| !done.contains(**own)).collect();
    assert!(missing.is_empty(), "README has no {missing:?}");
    for name in [
        "mine.csv",
        "mine.pdf",
        "templates/row-four-440x400-template.dxf",
        "monday/monday-pick-list.pdf",
        "monday/monday-fill-cards-16.svg",
        "monday/monday-tags-3.svg",
        "survey.csv",
    ] {
        assert!(dir.bytes(name).is_some(), "{name}: {:?}", dir.names());
    }
    assert!(dir.bytes("monday/monday-fill-cards-17.svg").is_none(), "16 cushions");
}

/// The same cushion has the same counts, masses and names, whichever command tells of it.
#[test]
fn all_of_a_days_answers_agree() {
    let dir = begun();
    let order = json(&dir, &["order", "monday.csv", "--out", "monday"]);
    let line = &order["lines"][0];
    let own = counts(line);
    let at = ["--size", "440x400"];
    let of = |words: &[&str]| json(&dir, &[words, &at].concat());
    let pattern = of(&["pattern", "mine.toml"]);
    assert_eq!(counts(&pattern), own);
    let range = json(&dir, &["range", "mine.toml"]);
    let rows = range["sizes"].as_array().unwrap();
    let row = rows.iter().find(|own| own["size_mm"] == "440x400").unwrap();
    assert_eq!(counts(row), own);
    let scale = ["--batch", "50", "--grams", "40.3", "--division", "0.1"];
    let weighed = of(&[&["weigh", "--stock", "mine.toml"][..], &scale].concat());
    assert_eq!(counts(&weighed), own);
    let parts = of(&["parts", "mine.toml", "--quantity", "12"]);
    let all = parts["parts"].as_array().unwrap();
    let part =
        |id: &str| all.iter().find(|own| own["id"] == id).unwrap()["in_all"].as_f64().unwrap();
    let each = line["cells_each"].as_f64().unwrap();
    assert_eq!(part("cells"), 12.0 * each);
    assert_eq!(part("spare-cells"), 12.0 * line["spares_each"].as_f64().unwrap());
    assert_eq!(parts["finished"], line["finished"]);
    // As many openings as compartments, and a wall for each stretch of seam.
    assert_eq!(part("openings"), 12.0 * own.len() as f64);
    let template = of(&["template", "mine.toml", "--out", "templates"]);
    let walls = template["pieces"].as_array().unwrap().iter();
    let walls = walls.filter(|own| own["id"].as_str().unwrap().starts_with("wall-")).count();
    assert_eq!(walls, template["template_seams"].as_array().unwrap().len());
    // All know the layout by the same digest and revision.
    for other in [&pattern, &range, &parts, &template] {
        assert_eq!(
            (&other["layout_digest"], &other["revision"]),
            (&line["layout_digest"], &line["revision"])
        );
    }
    // And so do the papers, printed for one size and for the day.
    of(&["print", "--stock", "mine.toml", "--out", "papers"]);
    let single = texts(&dir.read("papers/row-four-440x400-fill-card.svg"));
    let card = texts(&dir.read("monday/monday-fill-cards-1.svg"));
    for (_, cells) in &own {
        let told = format!("{cells} ± {}", (cells / 50).max(1));
        assert!(single.contains(&told) && card.contains(&told), "{told}: {card:?}");
    }
    let digest = line["layout_digest"].as_str().unwrap();
    for paper in [&single, &card] {
        assert!(paper.iter().any(|own| own.contains(digest)), "{paper:?}");
    }
    let tags = texts(&dir.read("monday/monday-tags-1.svg"));
    for serial in ["S-101", "S-106"] {
        assert!(tags.contains(&format!("Serial {serial}")), "{tags:?}");
    }
    assert!(tags.iter().any(|own| own.starts_with("row-four rev. 1, 440")), "{tags:?}");
}
