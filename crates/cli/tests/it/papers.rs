//! `print` and `demo`: papers as files, whole or not at all.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::Command;

use crate::runner::{Ran, TestDir, without_plan};

const LAYOUT: &str = include_str!("data/layout.toml");
const CLIENT: &str = include_str!("data/client.toml");

/// A client's papers, without pictures.
const PAPERS: [&str; 21] = [
    "K-17-setup-card.pdf",
    "K-17-setup-card-1.svg",
    "K-17-setup-card-2.svg",
    "K-17-setup-card-3.svg",
    "K-17-setup-card-4.svg",
    "K-17-fill-card.pdf",
    "K-17-fill-card.svg",
    "K-17-take-home.pdf",
    "K-17-take-home-1.svg",
    "K-17-take-home-2.svg",
    "K-17-take-home-3.svg",
    "K-17-take-home-4.svg",
    "K-17-take-home-5.svg",
    "K-17-wash-day.pdf",
    "K-17-wash-day.svg",
    "K-17-height-gauge.pdf",
    "K-17-height-gauge.svg",
    "K-17-letter.pdf",
    "K-17-letter.svg",
    "K-17-tag.pdf",
    "K-17-tag.svg",
];

/// A folder with a client whose plan was recorded.
fn recorded() -> TestDir {
    let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", CLIENT);
    dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).done();
    dir
}

/// All files of a folder.
fn bytes(folder: &Path) -> BTreeMap<String, Vec<u8>> {
    let files = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    files
        .map(|path| {
            (path.file_name().unwrap().to_str().unwrap().to_owned(), fs::read(&path).unwrap())
        })
        .collect()
}

/// The texts of a drawing, in order, with plain spaces for those that hold a unit to its number.
pub(crate) fn texts(svg: &str) -> Vec<String> {
    let runs = svg.split("<text").skip(1).filter_map(|run| run.split_once('>'));
    let texts = runs.filter_map(|(_, run)| run.split("</text>").next());
    texts.map(|text| without_tags(text).replace('\u{a0}', " ")).collect()
}

/// What stands between tags: each word has a place of its own.
fn without_tags(text: &str) -> String {
    text.split('<').map(|part| part.split_once('>').map_or(part, |(_, words)| words)).collect()
}

/// Fails unless the bytes are whole of their kind.
#[track_caller]
fn check_whole(name: &str, bytes: &[u8]) {
    let (head, tail): (&[u8], &[u8]) = match name.rsplit('.').next() {
        Some("pdf") => (b"%PDF-", b"%%EOF"),
        Some("svg") => (b"<", b"</svg>"),
        // The signature, and the name and checksum of the last chunk, by ISO/IEC 15948.
        Some("png") => (b"\x89PNG\r\n\x1a\n", b"IEND\xaeB`\x82"),
        _ => panic!("{name} is of no known kind"),
    };
    let end = bytes.trim_ascii_end();
    assert!(bytes.starts_with(head) && (bytes.ends_with(tail) || end.ends_with(tail)), "{name}");
}

/// Four cells from a seat bone's compartment to the one in front of it are swallowed by the wall.
#[test]
fn the_card_says_which_moves_may_do_little() {
    let dir = TestDir::new();
    dir.run(&["demo", "--who", "child", "--out", "child"]).done();
    let said = texts(&dir.read("child/setup-card-1.svg")).join(" ");
    assert!(said.contains("Moves of 4 cells or fewer"), "{said}");
    // Cells from the spare bag cross no wall.
    dir.run(&["demo", "--who", "adult", "--out", "adult"]).done();
    let said = texts(&dir.read("adult/setup-card-1.svg")).join(" ");
    assert!(!said.contains("Moves of"), "{said}");
}

#[test]
fn the_demo_writes_papers_and_says_what_to_look_at() {
    let dir = TestDir::new();
    let said = dir.run(&["demo"]).done();
    for word in ["DEMO-1", "out/setup-card.pdf", "out/take-home-1.svg", "out/fill-card.png", "Next"]
    {
        assert!(said.contains(word), "{word} is not in: {said}");
    }
    let first = bytes(&dir.path().join("out"));
    assert!(first.len() > 20, "{}", first.len());
    for (name, bytes) in &first {
        check_whole(name, bytes);
        assert!(said.contains(&format!("  out/{name}\n")), "{name} is not in: {said}");
    }
    dir.run(&["demo", "--out", "again"]).done();
    assert_eq!(bytes(&dir.path().join("again")), first, "the same bytes");
}

#[test]
fn the_invented_clients_print_on_every_paper() {
    let clients = [
        include_str!("../../demo/client.toml"),
        include_str!("../../demo/child.toml"),
        include_str!("../../demo/wide.toml"),
    ];
    for client in clients {
        let dir = TestDir::new().with("client.toml", client);
        for paper in ["a4", "letter"] {
            let words = ["print", "client.toml", "--paper", paper, "--out", paper];
            let ran = dir.run(&words);
            assert_eq!(ran.code, Some(0), "{paper}: {}", ran.stderr);
            for (name, bytes) in bytes(&dir.path().join(paper)) {
                check_whole(&name, &bytes);
            }
        }
    }
}

/// Where this fails, a layout or the model has changed: take the record out of the file in `demo`,
/// record plan and adjustment again, and put the fitting check back.
#[test]
fn the_demo_clients_were_planned_as_fresh_plans_would_be() {
    assert_eq!(TestDir::new().run(&["demo"]).stderr, "");
    for (demo, on) in [
        (include_str!("../../demo/client.toml"), "2026-02-17"),
        (include_str!("../../demo/child.toml"), "2026-02-20"),
        (include_str!("../../demo/wide.toml"), "2026-02-20"),
    ] {
        let (told, record) = demo.split_at(demo.find("[[record]]").unwrap());
        let dir = TestDir::new().with("d.toml", told);
        let plan = dir.run(&["plan", "d.toml", "--date", on, "--json"]).done();
        let plan: serde_json::Value = serde_json::from_str(&plan).unwrap();
        for own in plan["compartments"].as_array().unwrap() {
            let entry = format!(
                "{{ id = {}, number = {}, stock = {}, planned = {} }}",
                own["id"], own["number"], own["stock"], own["planned"]
            );
            assert!(record.contains(&entry), "{entry} is not in the record");
        }
    }
}

#[test]
fn papers_are_named_in_order_and_written_the_same_each_time() {
    let dir = recorded();
    let names = dir.run(&["print", "client.toml", "--out", "a"]).done();
    // The last line says how the fitting stands.
    let state = "State: ESTIMATE. No finished check of these counts was recorded.\n";
    let plain: String = names.lines().map(|name| without_plan(name) + "\n").collect();
    assert_eq!(plain, PAPERS.map(|name| format!("a/{name}\n")).concat() + state);
    // The number of the plan and its check word stand on the page as in the name.
    let card = texts(&dir.paper("a/K-17", "setup-card-1.svg")).join(" ");
    let (mark, _) = names.split_once("-setup-card").unwrap();
    let (number, word) = mark.rsplit_once("plan-").unwrap().1.split_once('-').unwrap();
    assert!(number == "1" && card.contains(word), "{mark}: {card}");
    dir.run(&["print", "client.toml", "--out", "b"]).done();
    let first = bytes(&dir.path().join("a"));
    assert_eq!(first.len(), PAPERS.len());
    assert_eq!(bytes(&dir.path().join("b")), first);
    for (name, bytes) in &first {
        check_whole(name, bytes);
    }
}

#[test]
fn a_sheet_that_cannot_be_made_stops_no_other() {
    let dir = recorded();
    let client = dir.read("client.toml");
    let noted = client.replacen("each evening", "each evening 漢", 1);
    fs::write(dir.path().join("client.toml"), noted).unwrap();
    let checked = dir.run(&["check", "client.toml"]);
    assert!(checked.stderr.contains('漢'), "{}", checked.stderr);
    let ran = dir.run(&["print", "client.toml", "--out", "out"]);
    assert_eq!(ran.code, Some(3), "{}", ran.stderr);
    for said in ["take-home", "漢"] {
        assert!(ran.stderr.contains(said), "{}", ran.stderr);
    }
    let written = bytes(&dir.path().join("out"));
    for (name, bytes) in &written {
        check_whole(name, bytes);
    }
    let expected = PAPERS.into_iter().filter(|name| !name.contains("take-home"));
    let mut expected: Vec<&str> = expected.collect();
    expected.sort_unstable();
    let names: Vec<String> = written.keys().map(|name| without_plan(name)).collect();
    assert_eq!(names, expected);
    assert!(written.keys().all(|name| ran.stdout.contains(name)), "{}", ran.stdout);
}

#[test]
fn words_are_shapes_and_print_is_large_where_asked() {
    let dir = recorded();
    dir.run(&["print", "client.toml", "--out", "usual"]).done();
    dir.run(&["print", "client.toml", "--outlines", "--large", "--out", "other"]).done();
    let svg = |folder: &str| dir.paper(&format!("{folder}/K-17"), "take-home-1.svg");
    assert!(svg("usual").contains("<text") && !svg("other").contains("<text"));
    let pages = |folder: &str| {
        let names = bytes(&dir.path().join(folder)).into_keys();
        names.filter(|name| name.contains("take-home") && name.ends_with("svg")).count()
    };
    assert!(pages("other") > pages("usual"));
}

#[test]
fn nothing_is_recorded_that_papers_could_not_show() {
    let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", CLIENT);
    let ran = dir.run(&["plan", "client.toml", "--record", "--by", "OT 漢"]);
    assert_ne!(ran.code, Some(0));
    assert!(ran.stderr.contains('漢'), "{}", ran.stderr);
    assert_eq!(dir.read("client.toml"), CLIENT);
}

/// What the note of a folder says, if there is one.
fn note(dir: &TestDir, folder: &str) -> Option<String> {
    let name = format!("{folder}/K-17-WHICH-PAPERS-HOLD.txt");
    dir.names().contains(&name).then(|| dir.read(&name))
}

#[test]
fn papers_of_an_older_plan_in_the_folder_are_told_and_marked_and_left_as_they_are() {
    let dir = recorded();
    dir.run(&["print", "client.toml", "--out", "x"]).done();
    let older = bytes(&dir.path().join("x"));
    for done in [["filled", "--as-planned"], ["moved", "spare-2=4"]] {
        let words = [&["record", "client.toml"], &done[..], &["--by", "OT"]].concat();
        assert_eq!(dir.run(&words).code, Some(0), "{words:?}");
    }
    let (said, warned) = dir.run(&["print", "client.toml", "--out", "x"]).warned();
    assert!(warned.contains("21 files of plan 1, check word "), "{warned}");
    assert!(warned.contains("SUPERSEDED"), "{warned}");
    let note = note(&dir, "x").unwrap();
    assert!(said.starts_with("x/K-17-WHICH-PAPERS-HOLD.txt\n"), "{said}");
    let now = bytes(&dir.path().join("x"));
    for (name, bytes) in &older {
        assert_eq!(now.get(name), Some(bytes), "{name}");
        assert!(note.contains(&format!("- {name}\n")), "{name}: {note}");
    }
    // None of those that hold is listed as one that does not.
    let newer: Vec<&String> = now.keys().filter(|name| !older.contains_key(*name)).collect();
    // The note is one more; the page of the moves is one fewer, since they are made.
    assert_eq!(newer.len(), older.len(), "{newer:?}");
    assert!(newer.iter().all(|name| !note.contains(&format!("- {name}"))), "{note}");
    // Once the older ones are taken away, the note does not go on saying what was.
    older.keys().for_each(|name| fs::remove_file(dir.path().join("x").join(name)).unwrap());
    assert_eq!(dir.run(&["print", "client.toml", "--out", "x"]).code, Some(0));
    let after = self::note(&dir, "x").unwrap();
    assert!(!after.contains("SUPERSEDED") && after.contains("no others"), "{after}");
}

#[test]
fn papers_of_a_later_plan_are_never_called_superseded() {
    let dir = recorded();
    let older = dir.read("client.toml");
    // The same counts once more, as another plan.
    let twice = format!("{older}\n{}", &older[older.find("[[record]]").unwrap()..]);
    let dir = dir.with("older.toml", older).with("client.toml", twice);
    assert_eq!(dir.run(&["print", "client.toml", "--out", "x"]).code, Some(0));
    let (_, warned) = dir.run(&["print", "older.toml", "--out", "x"]).warned();
    assert!(warned.contains("later plan") && !warned.contains("SUPERSEDED"), "{warned}");
    let note = note(&dir, "x").unwrap();
    assert!(note.contains("LATER: plan 2") && !note.contains("SUPERSEDED"), "{note}");
    let said = dir.run(&["print", "older.toml", "--out", "x", "--json"]);
    let said: serde_json::Value = serde_json::from_str(&said.stdout).unwrap();
    let told = said["warnings"].as_array().unwrap();
    let told = told.iter().find(|own| own["id"] == "other-papers").unwrap();
    assert_eq!(
        (&told["others"][0]["plan"], &told["others"][0]["superseded"]),
        (&2.into(), &false.into())
    );
}

#[test]
fn the_same_plan_again_and_papers_of_others_are_not_marked() {
    let dir = recorded();
    let other = dir.read("client.toml").replacen("\"K-17\"", "\"K-1\"", 1);
    let dir = dir.with("other.toml", other);
    dir.run(&["print", "other.toml", "--out", "x"]).done();
    dir.run(&["print", "--blank", "--out", "x"]).done();
    dir.run(&["print", "client.toml", "--out", "x"]).done();
    // On another day, in larger print, as pictures too: it is the same plan.
    let again = ["--large", "--png", "--date", "2026-03-05"];
    dir.run(&[&["print", "client.toml", "--out", "x"][..], &again].concat()).done();
    dir.run(&["history", "client.toml", "--out", "x"]).done();
    dir.run(&["print", "client.toml", "--out", "x"]).done();
    assert_eq!(dir.names().iter().filter(|name| name.ends_with(".txt")).count(), 0);
    assert!(dir.names().contains(&"x/K-17-history.pdf".to_owned()), "{:?}", dir.names());
}

#[test]
fn a_client_without_a_record_is_not_printed() {
    let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", CLIENT);
    assert_eq!(
        dir.run(&["print", "client.toml", "--out", "x"]).failed(3),
        "error: `client.toml` has no recorded plan, and only recorded counts are printed\n\
         hint: see the counts with `seatwright plan client.toml`, then record them with --record --by WHO\n"
    );
    assert_eq!(dir.names(), ["client.toml", "layout.toml"]);
}

#[test]
fn recorded_counts_are_printed_and_a_fresh_plan_that_differs_is_told() {
    let dir = recorded();
    let text = dir.read("client.toml").replace("cells = +6", "cells = +9");
    let dir = dir.with("client.toml", &text);
    let (_, said) = dir.run(&["print", "client.toml", "--out", "x"]).warned();
    assert_eq!(
        said,
        "warning: a fresh plan would have 120 in compartment 1 (pelvis-left), recorded are 117; \
         the recorded counts of 2026-03-01 are printed\n"
    );
    for name in ["setup-card-1.svg", "fill-card.svg"] {
        let card = texts(&dir.paper("x/K-17", name));
        assert!(card.iter().any(|text| text == "117 cells" || text == "117"), "{name}: {card:?}");
        assert!(!card.iter().any(|text| text == "120 cells" || text == "120"), "{name}: {card:?}");
    }
}

#[test]
fn a_layout_that_changed_since_is_told() {
    let dir = recorded().with("layout.toml", LAYOUT.replace("For tests.", "For other tests."));
    let (_, said) = dir.run(&["print", "client.toml", "--out", "x"]).warned();
    assert_eq!(said, "warning: `layout.toml` was changed since the plan was recorded\n");
}

/// Records entries after the plan, prints on a day, and returns the take-home sheet's first page.
fn sheet_after(entries: &str, day: &str) -> Vec<String> {
    let dir = recorded();
    // Some cells fewer than planned, so that the limit of clearance is near.
    let fewer = [("planned = 117", "planned = 110"), ("planned = 111", "planned = 105")];
    let text = dir.read("client.toml").replace("total = 374", "total = 361");
    let text = fewer.iter().fold(text, |text, (was, is)| text.replace(was, is)) + entries;
    let dir = dir.with("client.toml", text);
    let ran = dir.run(&["print", "client.toml", "--out", "x", "--date", day]);
    assert_eq!(ran.code, Some(0), "{}", ran.stderr);
    texts(&dir.paper("x/K-17", "take-home-1.svg"))
}

#[test]
fn a_check_that_did_not_pass_is_not_printed_as_passed() {
    let not_fitted = ["NOT FITTED YET. DO NOT HAND OVER.", "IT DOES NOT FIT. DO NOT HAND OVER."];
    let entry = |passed: &str| {
        format!("[[record]]\nwhat = \"fitting check\"\non = 2026-03-02\nby = \"OT\"\n{passed}\n")
    };
    for (passed, fitted) in [("", false), ("passed = false", false), ("passed = true", true)] {
        let sheet = sheet_after(&entry(passed), "2026-03-02");
        assert_eq!(
            sheet.iter().any(|text| not_fitted.contains(&&**text)),
            !fitted,
            "{passed}: {sheet:?}"
        );
        assert_eq!(sheet.iter().any(|text| text.starts_with("Checked on")), fitted, "{sheet:?}");
    }
}

#[test]
fn a_check_lapses_when_the_client_became_too_heavy_for_the_counts() {
    let after = |kg: u32| {
        let checked = "[[record]]\nwhat = \"weighing\"\non = 2026-03-01\nby = \"clinic\"\nkg = 68\n\
             [[record]]\nwhat = \"fitting check\"\non = 2026-03-02\nby = \"OT\"\npassed = true\n\
             [[record]]\nwhat = \"weighing\"\non = 2026-03-09\nby = \"clinic\"\n";
        sheet_after(&format!("{checked}kg = {kg}\n"), "2026-03-10")
    };
    let changed = "WEIGHT HAS CHANGED. FIT IT AGAIN.";
    assert!(after(88).iter().any(|text| text == changed), "far more than the counts are for");
    assert!(!after(69).iter().any(|text| text == changed), "a kilogram more");
}

#[test]
fn a_plan_for_another_cushion_is_not_printed() {
    let dir = recorded();
    let text = dir.read("client.toml");
    let dir = dir.with("client.toml", text.replacen("size = \"440x400\"", "size = \"400x400\"", 1));
    assert_eq!(
        dir.run(&["print", "client.toml", "--out", "x"]).failed(3),
        "error: the plan recorded on 2026-03-01 is for `layout.toml` in 440x400, \
         and `client.toml` now names `layout.toml` in 400x400\n\
         hint: record a new plan, or put the cushion back as it was\n"
    );
}

#[test]
fn the_blank_form_and_stock_cards_need_no_client() {
    let dir = TestDir::new();
    for paper in ["a4", "letter"] {
        let out = format!("form-{paper}");
        let names = dir.run(&["print", "--blank", "--paper", paper, "--out", &out]).done();
        assert!(names.starts_with(&format!("{out}/measuring-form.pdf\n")), "{names}");
    }
    let words = ["print", "--stock", "row-six", "--size", "440x400", "--out", "stock"];
    assert_eq!(
        dir.run(&words).done(),
        "stock/row-six-440x400-fill-card.pdf\nstock/row-six-440x400-fill-card.svg\n\
         stock/row-six-440x400-tag.pdf\nstock/row-six-440x400-tag.svg\n\
         stock/row-six-440x400-tags-sheet.pdf\nstock/row-six-440x400-tags-sheet.svg\n"
    );
    let said = dir.run(&["print", "--stock", "row-six", "--out", "x"]).failed(2);
    assert!(said.contains("--size <SIZE>"), "{said}");
    let said = dir.run(&["print", "--out", "x"]).failed(2);
    assert!(
        said.starts_with("error: the following required arguments were not provided"),
        "{said}"
    );
}

#[test]
fn the_example_of_the_starter_prints_as_it_is() {
    let dir = TestDir::new().with("client.toml", files::starter::example(words::ENGLISH));
    dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).done();
    dir.run(&["print", "client.toml", "--out", "x", "--png"]).done();
    let written = bytes(&dir.path().join("x"));
    for paper in
        ["setup-card", "fill-card", "take-home", "wash-day", "height-gauge", "letter", "tag"]
    {
        let of = |ending: &str| {
            written.keys().any(|name| name.contains(paper) && name.ends_with(ending))
        };
        assert!([".pdf", ".svg", ".png"].into_iter().all(of), "{paper}");
    }
}

#[test]
fn a_folder_that_cannot_be_written_is_told_and_nothing_is_left() {
    let dir = recorded().with("file", "in the way");
    let before = dir.names();
    let said = dir.run(&["print", "client.toml", "--out", "file"]).failed(6);
    assert_eq!(said, "error: cannot write `file`: a part of the path is not a folder\n");
    assert_eq!(dir.names(), before);
}

/// Root may write anywhere, so there is nothing to see for root.
#[cfg(unix)]
#[test]
fn a_folder_of_somebody_else_is_told() {
    use std::os::unix::fs::PermissionsExt as _;
    let dir = recorded();
    let locked = dir.path().join("locked");
    fs::create_dir(&locked).unwrap();
    fs::set_permissions(&locked, fs::Permissions::from_mode(0o555)).unwrap();
    if fs::write(locked.join("probe"), "").is_ok() {
        return;
    }
    let said = dir.run(&["print", "client.toml", "--out", "locked/x"]).failed(6);
    assert!(said.starts_with("error: cannot write `locked/x/K-17-plan-1-"), "{said}");
    assert!(said.ends_with("-setup-card.pdf`: this user may not write there\n"), "{said}");
}

/// A disk that fills up after 40 kB, made of the shell's limit for the size of a file.
#[cfg(unix)]
#[test]
fn a_disk_that_fills_up_leaves_nothing_behind() {
    let dir = recorded();
    let before = dir.names();
    let script = format!(
        "trap '' XFSZ; ulimit -f 20; exec {} print client.toml --out x",
        env!("CARGO_BIN_EXE_seatwright")
    );
    let mut shell = Command::new("sh");
    shell.args(["-c", &script]).current_dir(dir.path());
    let said = Ran::from(shell.output().unwrap()).failed(6);
    assert!(said.starts_with("error: cannot write `x/K-17-"), "{said}");
    assert!(said.ends_with("the file becomes larger than is allowed here\n"), "{said}");
    assert_eq!(dir.names(), before);
}

/// `/dev/full` is a disk that is always full.
#[cfg(target_os = "linux")]
#[test]
fn a_drawing_on_a_full_disk_is_told() {
    let words = ["pattern", "row-six", "--size", "440x400", "--svg", "/dev/full"];
    assert_eq!(
        TestDir::new().run(&words).failed(6),
        "error: cannot write `/dev/full`: the disk is full\n"
    );
}

#[test]
fn a_drawing_is_as_large_as_the_cushion() {
    let dir = TestDir::new();
    dir.run(&["pattern", "row-six", "--size", "440x400", "--svg", "a.svg"]).done();
    let drawing = dir.read("a.svg");
    check_whole("a.svg", drawing.as_bytes());
    // 440 and 400 mm, and 12.4 mm around them.
    assert!(
        drawing.contains("width=\"464.8mm\"") && drawing.contains("height=\"424.8mm\""),
        "{drawing}"
    );
}

#[test]
fn a_plan_recorded_over_another_stock_fill_stays_printable() {
    let dir = recorded();
    let text = dir.read("client.toml");
    // As by a version that filled the cushion otherwise: each stock count two more.
    let mut old = String::new();
    for line in text.lines() {
        match line.split_once("stock = ") {
            Some((before, after)) => {
                let (count, rest) = after.split_once(',').unwrap();
                let count: u32 = count.parse().unwrap();
                old += &format!("{before}stock = {},{rest}\n", count + 2);
            }
            None => old += &format!("{line}\n"),
        }
    }
    assert_ne!(old.trim(), text.trim());
    let print = |text: &str| {
        let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", text);
        let ran = dir.run(&["print", "client.toml", "--out", "out"]);
        assert_eq!(ran.code, Some(0), "{}", ran.stderr);
        texts(&dir.paper("out/K-17", "fill-card.svg"))
    };
    // The card says the counts that were recorded.
    let planned = |text: &str| -> Vec<String> {
        let parts = text.split("planned = ").skip(1);
        parts.filter_map(|part| part.split(' ').next().map(str::to_owned)).collect()
    };
    let card = print(&old);
    for count in planned(&text) {
        assert!(card.contains(&count), "{count} of {card:?}");
    }
}
