//! The record by command: what was done over several visits, without opening the file.

use serde_json::Value;

use crate::fitting::CLIENT;
use crate::papers::texts;
use crate::runner::{Ran, TestDir};

/// The demo clients, as they were before their first visit.
const DEMOS: [&str; 3] = [
    include_str!("../../demo/client.toml"),
    include_str!("../../demo/child.toml"),
    include_str!("../../demo/wide.toml"),
];

/// All that a check needs to pass.
const WHOLE: [&str; 14] = [
    "checked",
    "--top",
    "left=safe",
    "--top",
    "right=safe",
    "--under",
    "left=31mm",
    "--under",
    "right=33mm",
    "--skin",
    "coccyx=clear",
    "--transfer",
    "--reach",
    "--passed",
];

/// What the setup card says where no move is left.
const ALL_MOVED: &str = "Nothing remains to be moved";

/// One client's folder, and the commands of a visit.
struct Visits {
    dir: TestDir,
    begun: String,
}

impl Visits {
    fn new(text: &str) -> Self {
        let begun = text.split("[[record]]").next().unwrap().to_owned();
        Self { dir: TestDir::new().with("c.toml", &begun), begun }
    }

    /// Records something on a day of March.
    fn record(&self, of_march: u8, words: &[&str]) -> Ran {
        let date = format!("2026-03-{of_march:02}");
        let own = ["--by", "OT", "--date", &date, "--json"];
        self.dir.run(&[&["record", "c.toml"][..], words, &own].concat())
    }

    #[track_caller]
    fn recorded(&self, of_march: u8, words: &[&str]) -> Value {
        let answer: Value = serde_json::from_str(&self.record(of_march, words).done()).unwrap();
        // The file that a person wrote is never changed, only added to.
        assert!(self.dir.read("c.toml").starts_with(&self.begun));
        answer
    }

    #[track_caller]
    fn planned(&self, of_march: u8) -> Value {
        let date = format!("2026-03-{of_march:02}");
        let words = ["plan", "c.toml", "--record", "--nearest-safe", "--by", "OT", "--json"];
        let answer = self.dir.run(&[&words[..], &["--date", &date]].concat()).done();
        let answer: Value = serde_json::from_str(&answer).unwrap();
        assert_eq!((&answer["recorded"], &answer["proposes"]), (&true.into(), &true.into()));
        answer
    }

    /// The take-home sheet and the setup card of a day, and what was said beside.
    fn papers(&self, of_march: u8) -> (String, String, Ran) {
        let date = format!("2026-03-{of_march:02}");
        // Papers of other counts would stay beside them.
        let _ = std::fs::remove_dir_all(self.dir.path().join("papers"));
        let ran = self.dir.run(&["print", "c.toml", "--out", "papers", "--date", &date]);
        let words = |which: &str| -> String {
            let named = |name: &&String| name.starts_with("papers/") && name.contains(which);
            let names = self.dir.names();
            let svgs = names.iter().filter(|own| own.ends_with(".svg")).filter(named);
            svgs.flat_map(|name| texts(&self.dir.read(name))).collect::<Vec<_>>().join(" ")
        };
        (words("take-home"), words("setup-card"), ran)
    }
}

fn state(answer: &Value) -> &str {
    answer["standing"]["state"].as_str().unwrap()
}

/// Cells in the cushion, by number.
fn cells(answer: &Value) -> Vec<(u64, u64)> {
    let counts = answer["in_cushion"]["counts"].as_array().unwrap().iter();
    counts.map(|own| (own["number"].as_u64().unwrap(), own["cells"].as_u64().unwrap())).collect()
}

fn bag(answer: &Value) -> i64 {
    answer["in_cushion"]["bag"].as_i64().unwrap()
}

/// Three visits: filled and checked; cells lost and put back; a mark, other counts and a return.
#[track_caller]
fn three_visits(text: &str) {
    let visits = Visits::new(text);
    let before = visits.dir.run(&["check", "c.toml"]);
    assert!(before.stdout.contains("State: TO PLAN."), "{}", before.stdout);
    let plan = visits.planned(1);
    assert_eq!(state(&plan), "estimate");
    // The first visit: it is filled as planned, one cell fewer in the last.
    let (sheet, ..) = visits.papers(1);
    assert!(sheet.contains("NOT FITTED YET"), "{sheet}");
    let proposed = visits.papers(1).1;
    let filled = ["filled", "--as-planned", "--batch", "B-7", "--serial", "T-0301"];
    let filled = visits.recorded(2, &filled);
    assert_eq!(
        (state(&filled), filled["in_cushion"]["from"].as_str()),
        ("estimate", Some("filled"))
    );
    let planned = cells(&filled);
    let total: u64 = planned.iter().map(|own| own.1).sum();
    assert_eq!(plan["total"].as_u64(), Some(total));
    let unfinished = visits.recorded(2, &WHOLE[..WHOLE.len() - 2]);
    assert_eq!(state(&unfinished), "estimate");
    let fitted = visits.recorded(2, &WHOLE);
    assert_eq!((state(&fitted), cells(&fitted)), ("fitted", planned.clone()));
    let (sheet, card, _) = visits.papers(2);
    assert!(sheet.contains("Checked on") && sheet.contains("T-0301"), "{sheet}");
    // What was put in as planned is the same plan, of the same day.
    assert!(
        proposed.contains("Plan of 2026-03-01") && card.contains("Plan of 2026-03-01"),
        "{card}"
    );
    assert!(
        card.contains("T-0301") && card.contains(ALL_MOVED) && !card.contains("Done"),
        "{card}"
    );
    // The second visit: four cells are gone, and are put back from the bag.
    let lost = format!("2={}", planned[1].1 - 4);
    let lapsed = visits.recorded(9, &["recount", &lost]);
    assert_eq!(state(&lapsed), "lapsed");
    assert_eq!(lapsed["standing"]["lapsed_because"], "recount");
    assert!(lapsed["warnings"].to_string().contains("Put back 4 cells in number 2."), "{lapsed}");
    assert_eq!(bag(&lapsed), bag(&fitted), "what is lost is not in the bag");
    let (sheet, card, ran) = visits.papers(9);
    assert!(sheet.contains("CELLS HAVE CHANGED"), "{sheet}");
    // A row of the table of moves: how many, from where, to where.
    assert!(card.contains("Done 4 bag 2 ") && !card.contains(ALL_MOVED), "{card}");
    let before = bag(&fitted);
    let told = format!("After Counted {before} –4 {}", before - 4);
    assert!(card.contains(&told), "{told} is not in: {card}");
    assert!(ran.stderr.contains("Put back 4 cells in number 2."), "{}", ran.stderr);
    let back = visits.recorded(9, &["moved", "spare-2=4"]);
    assert_eq!(
        (state(&back), cells(&back), bag(&back)),
        ("fitted", planned.clone(), bag(&fitted) - 4)
    );
    let (_, card, _) = visits.papers(9);
    assert!(card.contains(ALL_MOVED) && !card.contains("Done"), "{card}");
    // The third visit: other counts that do not help, the old ones again, and a mark.
    let moved = visits.recorded(20, &["moved", "1-2=3"]);
    assert_eq!(state(&moved), "lapsed");
    assert_eq!(cells(&moved)[0].1 + 3, planned[0].1);
    let again = visits.recorded(21, &["return", "2"]);
    assert_eq!((state(&again), cells(&again), bag(&again)), ("estimate", planned, bag(&back)));
    assert_eq!(state(&visits.recorded(21, &WHOLE)), "fitted");
    let marked = visits.recorded(22, &["skin", "coccyx=stays"]);
    let why = marked["standing"]["lapsed_because"].as_str();
    assert_eq!((state(&marked), why), ("lapsed", Some("skin")));
    let (sheet, ..) = visits.papers(22);
    assert!(sheet.contains("A MARK ON THE SKIN. DO NOT SIT."), "{sheet}");
    // It was entered for the wrong client.
    let withdrawn = ["withdrawn", "10", "--because", "of another client"];
    assert_eq!(state(&visits.recorded(22, &withdrawn)), "fitted");
    history_is_whole(&visits);
}

/// Each entry stands on the pages, and the cells are drawn just where they are others than before.
#[track_caller]
fn history_is_drawn(visits: &Visits, entries: &[Value]) {
    let told =
        visits.dir.run(&["history", "c.toml", "--out", "papers", "--paper", "letter"]).done();
    assert!(told.contains("-history.pdf") && told.contains("State: FITTED."), "{told}");
    let pages: Vec<&str> = told.lines().filter(|line| line.ends_with(".svg")).collect();
    let text: String = pages.iter().map(|page| visits.dir.read(page)).collect();
    for number in 1..=11 {
        assert!(text.contains(&format!(">{number}. ")), "{number}");
    }
    assert!(text.contains("WITHDRAWN"), "{text}");
    let mut cells: Vec<&Value> = entries.iter().map(|own| &own["counts"]).collect();
    cells.retain(|own| !own.is_null());
    cells.dedup();
    assert_eq!(text.matches("role=\"img\"").count(), cells.len());
}

/// The history lists all entries, and shows two of them side by side.
#[track_caller]
fn history_is_whole(visits: &Visits) {
    let listed: Value =
        serde_json::from_str(&visits.dir.run(&["history", "c.toml", "--json"]).done()).unwrap();
    let entries = listed["entries"].as_array().unwrap();
    history_is_drawn(visits, entries);
    let whats: Vec<&str> = entries.iter().map(|own| own["what"].as_str().unwrap()).collect();
    let expected = [
        "plan",
        "filled",
        "checked",
        "checked",
        "recount",
        "moved",
        "moved",
        "returned",
        "checked",
        "skin",
        "withdrawn",
    ];
    assert_eq!(whats, expected);
    // The plan remembers what it expected.
    assert!(entries[0]["expected"]["left_mm"].as_f64().unwrap() > 10.0, "{listed}");
    let words = visits.dir.run(&["history", "c.toml"]).done();
    assert!(
        words.contains("11 entries")
            && words.contains("WITHDRAWN: skin")
            && words.contains("State: FITTED."),
        "{words}"
    );
    let beside = visits.dir.run(&["history", "c.toml", "--between", "2", "7"]).done();
    let first = beside.lines().find(|line| line.trim_start().starts_with("no. 1 ")).unwrap();
    assert!(first.ends_with("-3"), "{beside}");
    assert!(beside.contains("entry 2 expected:") && beside.contains("entry 7 found:"), "{beside}");
}

#[test]
fn an_adult_is_followed_over_three_visits() {
    three_visits(DEMOS[0]);
}

#[test]
fn a_child_is_followed_over_three_visits() {
    three_visits(DEMOS[1]);
}

#[test]
fn a_wide_client_is_followed_over_three_visits() {
    three_visits(DEMOS[2]);
}

#[test]
fn adjust_starts_from_what_is_in_the_cushion_and_proposes() {
    let visits = Visits::new(CLIENT);
    visits.planned(1);
    let planned = cells(&visits.recorded(1, &["filled", "--as-planned"]));
    let counted = planned[0].1 - 20;
    visits.recorded(3, &["recount", &format!("1={counted}")]);
    let words = ["adjust", "c.toml", "--under", "left=15mm", "--under", "right=30mm", "--json"];
    let record = ["--record", "--by", "OT", "--date", "2026-03-03"];
    let answer = visits.dir.run(&[&words[..], &record].concat()).done();
    let answer: Value = serde_json::from_str(&answer).unwrap();
    assert_eq!(answer["proposes"], true);
    // The moves lead from what was counted to the counts that are proposed.
    let into: u64 = (answer["moves"].as_array().unwrap().iter())
        .filter(|own| own["to"] == "1")
        .map(|own| own["cells"].as_u64().unwrap())
        .sum();
    assert!(into > 0, "{answer}");
    assert_eq!(answer["counts"][0].as_u64(), Some(counted + into));
    // A proposal changes nothing in the cushion, until it is said to have been done.
    let skin = visits.recorded(3, &["skin", "coccyx=clear"]);
    assert_eq!(cells(&skin)[0], (1, counted));
    let moved = visits.recorded(4, &["moved", "--as-proposed"]);
    assert_eq!(cells(&moved)[0], (1, counted + into));
    let twice = visits.record(4, &["moved", "--as-proposed"]);
    assert_eq!(twice.code, Some(2));
    assert!(twice.stdout.contains("nothing is proposed"), "{}", twice.stdout);
}

#[test]
fn what_cannot_have_been_is_questioned_and_nothing_is_written() {
    let visits = Visits::new(CLIENT);
    let refused = |words: &[&str], said: &str| {
        let before = visits.dir.read("c.toml");
        let ran = visits.record(2, words);
        assert_eq!(ran.code, Some(2), "{words:?}: {}", ran.stdout);
        assert!(ran.stdout.contains(said), "{words:?}: {}", ran.stdout);
        assert_eq!(visits.dir.read("c.toml"), before);
    };
    refused(&["filled", "--as-planned"], "no recorded plan");
    refused(&["moved", "1-2=3"], "nobody recorded");
    refused(&["recount", "1=40"], "no count is given");
    refused(&WHOLE, "nobody recorded");
    visits.planned(1);
    // A plan is no word on what was put in.
    refused(&WHOLE, "nobody recorded");
    refused(&["filled", "1=40", "2=40"], "no count is given for number 3, 4, 5 and 6");
    refused(&["filled", "1=40", "--as-planned"], "not both");
    refused(&["filled", "9=40"], "no compartment number 9");
    visits.recorded(2, &["filled", "--as-planned"]);
    refused(&["moved", "1-2=900"], "cannot come out of number 1");
    refused(&["moved", "1-1=2"], "from one place to another");
    refused(&["recount", "1=40", "1=41"], "counted twice");
    refused(&["withdrawn", "9", "--because", "no"], "there is no entry 9");
    refused(&["withdrawn", "2"], "no reason was given");
    refused(&["return", "7"], "there is no entry 7");
    refused(&["weighed", "61"], "with its unit");
    refused(&["weighed", "NaNkg"], "from 5 to 350 kg");
    refused(&["checked"], "nothing is said");
    let unsigned = visits.dir.run(&["record", "c.toml", "cleaned"]).failed(2);
    assert!(unsigned.contains("--by WHO"), "{unsigned}");
    visits.recorded(3, &["withdrawn", "2", "--because", "of another client"]);
    refused(&["withdrawn", "2", "--because", "again"], "withdrawn already");
}

#[test]
fn another_weight_than_the_plan_was_made_for_is_told_with_a_fresh_plan() {
    let visits = Visits::new(&format!("{CLIENT}[[goal]]\nwant = \"equal firmness\"\n"));
    visits.planned(1);
    let told = |of_march| visits.papers(of_march).2.stderr;
    assert!(!told(1).contains("fresh plan"), "{}", told(1));
    visits.recorded(2, &["weighed", "72.4kg"]);
    assert!(!told(2).contains("fresh plan"), "clothes weigh as much");
    visits.recorded(3, &["weighed", "84kg"]);
    let said = told(3);
    assert!(said.contains("weighs 84.0 kg now, and the plan was made for 72.0 kg"), "{said}");
    assert!(said.contains("a fresh plan would"), "{said}");
}

#[test]
fn a_bag_that_is_short_is_told() {
    let visits = Visits::new(CLIENT);
    visits.planned(1);
    visits.recorded(1, &["filled", "--as-planned", "spare=3"]);
    let short = visits.recorded(2, &["moved", "spare-1=5"]);
    assert_eq!(bag(&short), -2);
    assert!(short["warnings"].to_string().contains("bag-short"), "{short}");
    let counted = visits.recorded(3, &["recount", "spare=4"]);
    assert_eq!((bag(&counted), counted["warnings"].as_array().unwrap().len()), (4, 0));
}

#[test]
fn a_batch_is_found_again_and_a_file_that_cannot_be_read_is_named() {
    let visits = Visits::new(CLIENT);
    visits.planned(1);
    visits.recorded(
        1,
        &["incoming", "1=85", "2=85", "3=55", "4=55", "5=30", "6=30", "--batch", "B-7"],
    );
    let dir = &visits.dir;
    let found = dir.run(&["find", "--batch", "b-7", "."]).done();
    assert!(found.contains("c.toml: T-1, entry 2 of 2026-03-01"), "{found}");
    assert!(found.contains("1 of 1 client file hold"), "{found}");
    assert!(dir.run(&["find", "--batch", "B-8", "."]).done().starts_with("0 of 1 "));
    visits.recorded(5, &["withdrawn", "2", "--because", "not ours"]);
    assert!(dir.run(&["find", "--batch", "B-7", "."]).done().starts_with("0 of 1 "));
    let broken = CLIENT.replace("kg = 72", "kg = \"much\"");
    std::fs::write(dir.path().join("broken.toml"), broken).unwrap();
    let unread = dir.run(&["find", "--batch", "B-7", "."]);
    assert_eq!(unread.code, Some(3));
    assert!(unread.stderr.contains("broken.toml"), "{}", unread.stderr);
}

#[test]
fn hours_are_a_clinicians_word_and_serials_are_on_all_papers() {
    let injured = "[skin]\n[[skin.injury]]\nsite = \"coccyx\"\ncategory = \"2\"\nis = \"open\"\n\
        seen_on = 2026-02-10\n[function]\nsitting_hours = 7\n";
    let visits = Visits::new(&format!("{CLIENT}serial = \"SW-0142\"\n{injured}"));
    visits.planned(1);
    let (sheet, card, _) = visits.papers(2);
    assert!(sheet.contains("Do not sit until your nurse says how long."), "{sheet}");
    for hours in ["7 hours", "at most"] {
        assert!(!sheet.contains(hours), "{sheet}");
    }
    assert!(sheet.contains("Serial SW-0142") && card.contains("SW-0142"), "{card}");
    let tag: String = texts(&visits.dir.paper("papers/T-1", "tag.svg")).join(" ");
    assert!(tag.contains("Serial SW-0142"), "{tag}");
    let set = ["set", "c.toml", "carer.sit_at_most.minutes=60", "carer.sit_at_most.times=3"];
    visits.dir.run(&set).done();
    let (sheet, ..) = visits.papers(2);
    assert!(sheet.contains("Sit at most 60 minutes at a time, 3 times a day."), "{sheet}");
    assert!(!sheet.contains("Do not sit until"), "{sheet}");
}
