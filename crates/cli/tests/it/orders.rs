//! Orders: many cushions at once, their papers, and what must not happen to them.

use serde_json::Value;

use crate::fitting::CLIENT;
use crate::papers::texts;
use crate::runner::{Ran, TestDir};

const ORDER: &str = "layout,size,client,quantity,serials\n\
    mine.toml,440x400,,3,S-101..S-103\n\
    row-six,440x400,,2,\n\
    ,,T-1.toml,,S-106\n\
    mine.toml,440x400,,1,S-104\n";

/// A folder with an order, a layout of one's own, and a client whose plan is recorded.
fn begun() -> TestDir {
    let dir = TestDir::new().with("T-1.toml", CLIENT).with("monday.csv", ORDER);
    dir.run(&["new", "layout", "mine.toml"]).done();
    let plan = ["plan", "T-1.toml", "--record", "--by", "OT"];
    assert_eq!(dir.run(&plan).code, Some(0));
    dir
}

const WORDS: [&str; 4] = ["order", "monday.csv", "--out", "p"];

#[track_caller]
fn json(ran: Ran) -> Value {
    assert_eq!(ran.code, Some(0), "{}", ran.stderr);
    serde_json::from_str(&ran.stdout).unwrap()
}

fn ordered(dir: &TestDir) -> Value {
    json(dir.run(&[&WORDS[..], &["--json"]].concat()))
}

fn number(of: &Value, key: &str) -> u64 {
    of[key].as_u64().unwrap_or_else(|| panic!("{key}: {of}"))
}

#[test]
fn an_order_needs_what_its_lines_need_by_other_commands() {
    let dir = begun();
    let order = ordered(&dir);
    let lines = order["lines"].as_array().unwrap();
    let counts = |of: &Value, key: &str| -> Vec<u64> {
        of["compartments"].as_array().unwrap().iter().map(|own| number(own, key)).collect()
    };
    for (line, layout) in [(&lines[0], "mine.toml"), (&lines[1], "row-six")] {
        let pattern = json(dir.run(&["pattern", layout, "--size", "440x400", "--json"]));
        let there = pattern["compartments"].as_array().unwrap();
        let stock: Vec<u64> = there.iter().map(|own| number(&own["cells"], "stock")).collect();
        assert_eq!(counts(line, "cells"), stock);
        assert_eq!(line["layout_digest"], pattern["layout_digest"]);
        let parts = json(dir.run(&["parts", layout, "--size", "440x400", "--json"]));
        assert_eq!(line["finished"], parts["finished"]);
        let spare = parts["parts"].as_array().unwrap();
        let spare = spare.iter().find(|own| own["id"] == "spare-cells").unwrap();
        assert_eq!(number(line, "spares_each") as f64, spare["each"].as_f64().unwrap());
    }
    // A client's counts are those of the record.
    let client = dir.read("T-1.toml");
    for own in lines[2]["compartments"].as_array().unwrap() {
        let said = format!("id = {}, number = {}", own["id"], own["number"]);
        let entry = client
            .lines()
            .find(|line| line.contains(&said))
            .unwrap_or_else(|| panic!("{said}: {client}"));
        assert!(entry.contains(&format!("planned = {}", own["cells"])), "{entry}: {own}");
    }
    // And all together is the sum.
    let (mut cells, mut spares) = (0, 0);
    for line in lines {
        let each: u64 = counts(line, "cells").iter().sum();
        assert_eq!(each, number(line, "cells_each"));
        cells += each * number(line, "cushions");
        spares += number(line, "spares_each") * number(line, "cushions");
    }
    let all = order["cells"].as_array().unwrap();
    assert_eq!(all.len(), 1);
    let found = ["cells", "spares", "in_all"].map(|key| number(&all[0], key));
    assert_eq!((found, number(&order, "cushions")), ([cells, spares, cells + spares], 7));
    // 25 ml of air in a cell, which lie as densely as its file says.
    let litres = (cells + spares) as f64 * 0.025 / 0.62;
    let poured = all[0]["poured_litres"].as_f64().unwrap();
    assert!((poured / litres - 1.0).abs() < 0.03, "{poured} {litres}");
    let told = dir.run(&WORDS).done();
    assert!(told.contains(&format!("7 cushions, {cells} cells to fill, {spares} spare")), "{told}");
}

/// The cards, the tags and the list tell the same of each cushion.
#[test]
fn papers_of_an_order_agree() {
    let dir = begun();
    let order = ordered(&dir);
    let all = |name: &str| texts(&dir.read(&format!("p/monday-{name}.svg")));
    let list = all("pick-list");
    let tags = [all("tags-1"), all("tags-2")];
    assert!(!dir.names().contains(&"p/monday-tags-3.svg".to_owned()), "6 on a sheet");
    let mut card = 0;
    for line in order["lines"].as_array().unwrap() {
        let serials = line["serials"].as_array().unwrap();
        for which in 0..number(line, "cushions") as usize {
            card += 1;
            let own = all(&format!("fill-cards-{card}"));
            let has = |text: &str| own.iter().any(|it| it == text);
            assert!(has(&format!("{card} of 7")), "{own:?}");
            for count in line["compartments"].as_array().unwrap() {
                let (cells, off) = (number(count, "cells"), number(count, "plus_minus_cells"));
                let told = if off == 0 { cells.to_string() } else { format!("{cells} ± {off}") };
                assert!(has(&told), "{told}: {own:?}");
            }
            let word = line["check_word"].as_str().unwrap();
            assert!(own.iter().any(|it| it.ends_with(word)), "{word}: {own:?}");
            assert!(list.iter().any(|it| it == word), "{word}: {list:?}");
            assert!(has(&number(line, "spares_each").to_string()));
            let sheet = &tags[(card - 1) / 6];
            assert!(sheet.contains(&format!("Card {card}")), "{sheet:?}");
            if let Some(serial) = serials.get(which).map(|own| own.as_str().unwrap()) {
                assert!(has(serial), "{serial}: {own:?}");
                assert!(sheet.contains(&format!("Serial {serial}")), "{sheet:?}");
                assert!(list.iter().any(|it| it == serial), "{list:?}");
            }
        }
    }
    // No count is on a tag, which outlives every plan.
    for line in order["lines"].as_array().unwrap() {
        let word = line["check_word"].as_str().unwrap();
        assert!(tags.iter().flatten().all(|it| !it.contains(word)), "{word}");
    }
    // Two lines of one kind have one word, a client's another.
    let words: Vec<&str> = order["lines"]
        .as_array()
        .unwrap()
        .iter()
        .map(|own| own["check_word"].as_str().unwrap())
        .collect();
    assert!(words[0] == words[3] && words[0] != words[1] && words[0] != words[2], "{words:?}");
    // The client's is that of their other papers.
    dir.run(&["print", "T-1.toml", "--out", "q"]).done();
    let name = &dir.papers_of("q/T-1", "tag.svg")[0];
    assert!(name.contains(&format!("-{}-", words[2])), "{name}");
}

#[test]
fn a_serial_changes_no_count_and_a_count_changes_the_word() {
    let dir = begun();
    let before = ordered(&dir);
    let text = dir.read("mine.toml").replace("wall_height = 80", "wall_height = 86");
    let dir = dir.with("mine.toml", text).with("monday.csv", ORDER.replace("S-101..S-103", ""));
    let after = ordered(&dir);
    let word = |of: &Value, line: usize| of["lines"][line]["check_word"].clone();
    assert_ne!(word(&before, 0), word(&after, 0));
    assert_eq!([1, 2].map(|line| word(&before, line)), [1, 2].map(|line| word(&after, line)));
}

#[test]
fn a_mistake_is_pointed_at_in_the_order_and_nothing_is_written() {
    let head = "layout,size,cell,client,quantity,serials\n";
    // A client whose file says a serial, with a plan.
    let serial = CLIENT.replace("spare_cells", "serial = \"SW-7\"\nspare_cells");
    let dir = TestDir::new().with("T-3.toml", serial.replace("T-1", "T-3"));
    assert_eq!(dir.run(&["plan", "T-3.toml", "--record", "--by", "OT"]).code, Some(0));
    let planned = dir.read("T-3.toml");
    for (line, said, place) in [
        ("row-six,440,,,3,", "size", "monday.csv:2:9"),
        ("row-sixx,440x400,,,3,", "row-sixx", "monday.csv:2:1"),
        ("nothing.toml,440x400,,,3,", "nothing.toml", "monday.csv:2:1"),
        ("row-six,440x400,fluff,,3,", "fluff", "monday.csv:2:17"),
        (",,,nobody.toml,,", "nobody.toml", "monday.csv:2:4"),
        (",,,T-2.toml,,", "no recorded plan", "monday.csv:2:4"),
        ("row-six,440x400,,,2,S-1", "1 serial for 2 cushions", "monday.csv:2:21"),
        (",,,T-3.toml,,S-1", "the serial `SW-7`, and this line `S-1`", "monday.csv:2:14"),
        (
            "row-six,440x400,,,1,sw-7\n,,,T-3.toml,,",
            "the serial `SW-7` is in line 2",
            "monday.csv:3:4",
        ),
    ] {
        let dir = TestDir::new()
            .with("T-2.toml", CLIENT.replace("T-1", "T-2"))
            .with("T-3.toml", &planned)
            .with("monday.csv", format!("{head}{line}\n"));
        let before = dir.names();
        let told = dir.run(&WORDS).failed(3);
        assert!(told.contains(said) && told.contains(place), "{line}: {told}");
        assert!(told.contains("hint: "), "{told}");
        assert_eq!(dir.names(), before, "{line}");
    }
}

/// What is wrong within a file that the order names is shown there.
#[test]
fn a_wrong_layout_is_shown_where_it_is_wrong() {
    let dir = begun();
    let text = dir.read("mine.toml").replace("wall_height = 80", "wall_height = \"high\"");
    let dir = dir.with("mine.toml", text);
    let told = dir.run(&WORDS).failed(3);
    assert!(told.contains("--> mine.toml:"), "{told}");
    assert!(!dir.names().iter().any(|name| name.starts_with("p/")));
}

/// A card of an earlier edition must not lie beside the new ones.
#[test]
fn papers_of_an_earlier_edition_do_not_stay_beside_the_new() {
    let dir = begun();
    dir.run(&WORDS).done();
    // The same again takes their place.
    dir.run(&WORDS).done();
    let before: Vec<_> = dir.names().iter().map(|name| (name.clone(), dir.bytes(name))).collect();
    let dir = dir.with("monday.csv", ORDER.lines().take(2).collect::<Vec<_>>().join("\n"));
    let told = dir.run(&WORDS).failed(2);
    assert!(told.contains("fill-cards-4.svg") && told.contains("another folder"), "{told}");
    let after: Vec<_> = dir.names().iter().map(|name| (name.clone(), dir.bytes(name))).collect();
    let papers = |all: &[(String, Option<Vec<u8>>)]| -> Vec<(String, Option<Vec<u8>>)> {
        all.iter().filter(|own| own.0.starts_with("p/")).cloned().collect()
    };
    assert_eq!(papers(&after), papers(&before));
    // Another order may go into the same folder.
    let dir = dir.with("tuesday.csv", "client\nT-1.toml\n");
    dir.run(&["order", "tuesday.csv", "--out", "p"]).done();
}

#[test]
fn an_order_is_never_written_over_what_it_reads() {
    let dir = begun().with("monday-tags.pdf", "layout,size,quantity\nrow-six,440x400,1\n");
    let told = dir.run(&["order", "monday-tags.pdf", "--out", "."]).code;
    assert_eq!(told, Some(0), "another name");
    let cell = include_str!("../../../files/src/texts/pillow-25.toml");
    let dir = dir.with("tuesday-pick-list.pdf", cell);
    let dir = dir.with(
        "tuesday.csv",
        "layout,size,cell,quantity\nrow-six,440x400,tuesday-pick-list.pdf,1\n",
    );
    let told = dir.run(&["order", "tuesday.csv", "--out", "."]).failed(2);
    assert!(told.contains("written over"), "{told}");
    assert_eq!(dir.read("tuesday-pick-list.pdf"), cell);
}

#[test]
fn what_is_to_be_known_of_a_line_is_said_with_whose_it_is() {
    let dir = begun()
        .with("monday.csv", "layout,size,client,quantity\nmine.toml,430x400,,2\n,,T-1.toml,\n");
    let (told, warned) = dir.run(&WORDS).warned();
    assert!(warned.contains("my-layout 430x400: ") && told.contains("estimate"), "{told}{warned}");
    let order = ordered(&dir);
    let warning = &order["warnings"][0];
    assert_eq!(warning["id"], "no-rating");
    assert!(warning["text"].as_str().unwrap().starts_with("my-layout 430x400: "), "{warning}");
    let tag = texts(&dir.read("p/monday-tags.svg"));
    assert!(tag.iter().any(|own| own.contains("SIZE NOT MADE, not rated")), "{tag:?}");
}

/// What is not safe for a client stops the whole order, and it is said whose line it is.
#[test]
fn a_client_who_is_too_heavy_meanwhile_stops_the_order() {
    let dir = begun();
    dir.run(&["set", "T-1.toml", "weight.kg=95"]).done();
    let before = dir.names();
    let told = dir.run(&WORDS).failed(5);
    assert!(told.contains("95 kg") && told.contains("monday.csv:4:3"), "{told}");
    assert_eq!(dir.names(), before);
    // A weight that only asks for another look is said with the client's code.
    dir.run(&["set", "T-1.toml", "weight.kg=76"]).done();
    let (_, warned) = dir.run(&WORDS).warned();
    assert!(warned.contains("T-1: "), "{warned}");
}

const WORDS_AGAIN: [&str; 4] = ["order", "monday.csv", "--out", "q"];

#[test]
fn orders_are_in_the_language_that_is_asked_for_and_the_same_each_time() {
    let dir = begun();
    dir.run(&WORDS).done();
    dir.run(&WORDS_AGAIN).done();
    for name in dir.names().iter().filter(|name| name.starts_with("p/m")) {
        assert_eq!(dir.bytes(name), dir.bytes(&name.replacen("p/", "q/", 1)), "{name}");
    }
    let ran = dir.run(&["order", "monday.csv", "--out", "r", "--language", "es"]);
    assert!(ran.code == Some(0) && ran.stdout.contains("Pedido monday"), "{}", ran.stdout);
    let list = texts(&dir.read("r/monday-pick-list.svg"));
    assert!(list.iter().any(|own| own == "Lista de acopio"), "{list:?}");
}

#[test]
fn a_name_that_no_paper_can_bear_is_refused() {
    let long = format!("{}.csv", "m".repeat(25));
    for name in [long.as_str(), "día 1.csv", "a b.csv"] {
        let dir = TestDir::new().with(name, "layout,size,quantity\nrow-six,440x400,1\n");
        let told = dir.run(&["order", name, "--out", "p"]).failed(2);
        assert!(told.contains("cannot name an order"), "{told}");
    }
}
