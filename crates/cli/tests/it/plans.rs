//! `pattern` and `plan`: tables, reports and records.

use serde_json::Value;

use crate::runner::TestDir;

const LAYOUT: &str = include_str!("data/layout.toml");
const CLIENT: &str = include_str!("data/client.toml");

fn dir() -> TestDir {
    TestDir::new().with("layout.toml", LAYOUT).with("client.toml", CLIENT)
}

/// Runs the words, which end in `--json`, and reads the answer.
#[track_caller]
fn json(dir: &TestDir, words: &[&str]) -> Value {
    let answer: Value = serde_json::from_str(&dir.run(words).done()).unwrap();
    assert_eq!(answer["schema"], 1);
    assert_eq!(answer["estimate"], true);
    assert!(answer["program"].as_str().unwrap().starts_with("seatwright "));
    assert!(answer["warnings"].is_array());
    answer
}

/// The column of a table under a heading, as whole numbers, by the end of the heading.
fn column(table: &str, heading: &str) -> Vec<u64> {
    let head = table.lines().find(|line| line.starts_with("no.")).unwrap();
    let end = head.find(heading).unwrap() + heading.len();
    let rows = table.lines().skip_while(|line| !line.starts_with("no.")).skip(1);
    let rows = rows.take_while(|line| !line.is_empty());
    rows.filter_map(|line| line.get(..end)?.rsplit(' ').next()?.parse().ok()).collect()
}

#[test]
fn a_pattern_is_told_in_a_table_and_in_json_alike() {
    let table = dir().run(&["pattern", "layout.toml", "--size", "440x400"]).done();
    assert!(table.starts_with("Two rows, the rear one deeper, 440 x 400 mm, skin protection\n"));
    assert!(table.contains("maximum user weight 90 kg"), "{table}");
    assert!(table.contains("An estimate until somebody has checked it with their hands."));
    let report = json(&dir(), &["pattern", "layout.toml", "--size", "440x400", "--json"]);
    assert_eq!((&report["width_mm"], &report["depth_mm"]), (&440.0.into(), &400.0.into()));
    let compartments = report["compartments"].as_array().unwrap();
    let mut stock: Vec<u64> =
        compartments.iter().map(|it| it["cells"]["stock"].as_u64().unwrap()).collect();
    stock.push(report["total_cells"].as_u64().unwrap());
    assert_eq!(column(&table, "stock"), stock);
    for it in compartments {
        let number = |key: &str| it[key].as_f64().unwrap();
        assert!(number("area_mm2") > 0.0 && number("perimeter_mm") > 0.0, "{it}");
        assert!(number("crown_mm") > 0.0 && number("volume_ml") > 0.0, "{it}");
        let cells = |key: &str| it["cells"][key].as_u64().unwrap();
        assert!(cells("low") < cells("stock") && cells("stock") <= cells("high"), "{it}");
        assert!(it["id"].is_string() && it["number"].is_u64(), "{it}");
    }
}

#[test]
fn inches_and_millimetres_of_one_size_give_one_pattern() {
    let dir = TestDir::new();
    let inches = dir.run(&["pattern", "row-six", "--size", "17x16in", "--json"]).done();
    let millimetres = dir.run(&["pattern", "row-six", "--size", "431.8x406.4", "--json"]).done();
    assert_eq!(inches, millimetres);
}

#[test]
fn a_size_that_the_layout_is_not_made_in_is_told() {
    let (table, said) = dir().run(&["pattern", "layout.toml", "--size", "420x400"]).warned();
    assert!(table.contains("not a size that it is made in"), "{table}");
    assert_eq!(
        said,
        "warning: The layout is not made in size 420x400; there is no maximum user weight for it.\n"
    );
}

#[test]
fn a_plan_is_stock_and_change() {
    let table = dir().run(&["plan", "client.toml", "--date", "2026-03-01"]).done();
    let report = json(&dir(), &["plan", "client.toml", "--date", "2026-03-01", "--json"]);
    let counts = |key: &str| -> Vec<u64> {
        let compartments = report["compartments"].as_array().unwrap();
        compartments.iter().map(|it| it[key].as_u64().unwrap()).collect()
    };
    let (stock, planned) = (counts("stock"), counts("planned"));
    assert_eq!(planned[0], stock[0] + 6);
    assert_eq!(planned[1..], stock[1..]);
    assert_eq!(report["total"], planned.iter().sum::<u64>());
    assert_eq!(column(&table, "planned")[..4], planned);
    assert!(table.contains("+6"), "{table}");
    // A script is not told what a person would like to hear.
    assert!(!table.contains("--record"), "{table}");
}

#[test]
fn a_record_grows_and_keeps_what_a_person_wrote() {
    let dir = dir();
    let words = ["plan", "client.toml", "--record", "--by", "OT, clinic", "--date"];
    let record = |date| dir.run(&[&words[..], &[date]].concat()).done();
    let said = record("2026-03-01");
    assert!(said.contains("Recorded in client.toml by OT, clinic.\nThis proposes."), "{said}");
    assert!(said.contains("State: ESTIMATE."), "{said}");
    let once = dir.read("client.toml");
    record("2026-03-08");
    let twice = dir.read("client.toml");
    assert!(once.starts_with(CLIENT) && twice.starts_with(&once), "{twice}");
    assert_eq!(twice.matches("[[record]]").count(), 2);
    let [first, second] = [&once[CLIENT.len()..], &twice[once.len()..]];
    assert_eq!(first.replace("2026-03-01", "2026-03-08"), second);
    for part in ["what = \"plan\"", "by = \"OT, clinic\"", "planned = ", "program = \"seatwright "]
    {
        assert!(second.contains(part), "{part} is not in {second}");
    }
    let on_the_day = dir.run(&["check", "client.toml", "--date", "2026-03-08"]).done();
    let state = "  State: ESTIMATE. No finished check of these counts was recorded.\n";
    assert_eq!(on_the_day, format!("client.toml: client, no remarks\n{state}"));
    let (_, asked) = dir.run(&["check", "client.toml"]).warned();
    assert!(asked.starts_with("remark: 2026-03-08 is still to come"), "{asked}");
    assert_eq!(dir.names(), ["client.toml", "layout.toml"]);
}

#[test]
fn the_day_comes_from_the_environment_where_none_is_given() {
    let dir = dir();
    dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).done();
    assert!(dir.read("client.toml").contains("on = 2026-03-01\n"), "{}", dir.read("client.toml"));
    let output = dir.command(&["plan", "client.toml"]).env("SOURCE_DATE_EPOCH", "soon").output();
    let said = crate::runner::Ran::from(output.unwrap()).failed(2);
    assert!(said.starts_with("error: SOURCE_DATE_EPOCH is `soon`"), "{said}");
}

#[test]
fn who_records_is_a_line_of_words() {
    for by in ["", "  ", "OT\nand another"] {
        let dir = dir();
        let said = dir.run(&["plan", "client.toml", "--record", "--by", by]).failed(2);
        assert!(said.starts_with("error: who records it, or why, is empty"), "{said}");
        assert_eq!(dir.read("client.toml"), CLIENT);
    }
}

#[test]
fn starters_of_layouts_and_cells_are_right_as_they_are() {
    let dir = TestDir::new();
    for kind in ["layout", "cell"] {
        let name = format!("{kind}.toml");
        dir.run(&["new", kind, &name]).done();
        assert_eq!(dir.run(&["check", &name]).done(), format!("{name}: {kind}, no remarks\n"));
    }
    let words = ["pattern", "layout.toml", "--size", "440x400", "--cell", "cell.toml"];
    assert!(dir.run(&words).done().contains("total"));
}

#[test]
fn answers_are_the_same_each_time() {
    let dir = dir();
    for words in [
        &["pattern", "curved-ten", "--size", "440x400", "--json"][..],
        &["plan", "client.toml", "--json"],
        &["check", "client.toml", "layout.toml", "--json"],
    ] {
        assert_eq!(dir.run(words).done(), dir.run(words).done(), "{words:?}");
    }
}

#[test]
fn a_check_of_several_files_tells_of_each() {
    let dir = dir().with("bad.toml", "kind = \"cell\"\n");
    let answer = dir.run(&["check", "client.toml", "bad.toml", "no.toml", "--json"]);
    assert_eq!((answer.code, &*answer.stderr), (Some(3), ""));
    let report: Value = serde_json::from_str(&answer.stdout).unwrap();
    let files = report["files"].as_array().unwrap();
    let remarks: Vec<bool> =
        files.iter().map(|file| file["remarks"].as_array().unwrap().is_empty()).collect();
    assert_eq!(remarks, [true, false, false]);
    let answer = dir.run(&["check", "client.toml", "bad.toml"]);
    let state = "  State: TO PLAN. Nothing was planned and nothing put in.\n";
    let said = format!("client.toml: client, no remarks\n{state}");
    assert_eq!((answer.code, answer.stdout), (Some(3), said));
    assert!(answer.stderr.ends_with("error: 1 of 2 files cannot be used\n"), "{}", answer.stderr);
}

/// A pelvis that slopes by a half with both thighs swept to its lower side: the shape of the body
/// has no lowest point then, and looking for it must end.
#[test]
fn a_posture_beyond_the_body_is_refused_at_once() {
    let text = CLIENT.to_owned()
        + "\n[posture]\nobliquity = { lower = \"left\", by = 60, at = \"seat bones\", is = \"fixed\" }\n\
           windswept = { to = \"left\", degrees = 45 }\n";
    let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", &text);
    for words in [
        &["plan", "client.toml"][..],
        &["predict", "client.toml"],
        &["adjust", "client.toml", "--top", "left=tight"],
    ] {
        let said = dir.run(words).failed(3);
        assert!(said.contains("obliquity at the seat bones, with thighs swept so far"), "{said}");
    }
    // Swept to the other side there is a body, which may tip but is told.
    let other = text.replace("to = \"left\"", "to = \"right\"");
    let dir = dir.with("client.toml", other);
    let told = dir.run(&["predict", "client.toml"]);
    assert!(told.stdout.contains("Outcome: "), "{} {}", told.stdout, told.stderr);
}
