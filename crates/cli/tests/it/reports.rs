//! Every command answers in JSON, and fails in JSON, by the one schema that `new` writes.

use serde_json::Value;

use crate::fitting::CLIENT;
use crate::restoring;
use crate::runner::{Ran, TestDir};

const LAYOUT: &str = include_str!("data/layout.toml");
const ORDER: &str =
    "layout,size,quantity,serials\nlayout.toml,440x400,2,S-1 S-2\nrow-six,430x400,1,\n";
const BODIES: &str =
    "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n70,380,470\n160,380,470\n";

/// A second client, with everything that is said about goals, injuries and altitudes.
fn second() -> String {
    let more = "[skin]\nsensation = \"absent\"\n\
        [[skin.injury]]\nsite = \"coccyx\"\ncategory = \"2\"\nis = \"open\"\nseen_on = 2026-02-10\n\
        [chair]\nbase = \"sling\"\ninside_width = 430\n\
        [altitude]\nsealed_m = 0\nhome_m = 1600\n\
        [posture]\nobliquity = { lower = \"left\", by = 12, at = \"seat bones\", is = \"fixed\" }\n\
        [[goal]]\nwant = \"correct obliquity\"\n\
        [[goal]]\nwant = \"off-load\"\nsite = \"coccyx\"\npercent = 10\n\
        [[goal]]\nwant = \"pre-ischial shelf\"\nheight_mm = 10\n";
    format!("{CLIENT}{more}").replace("T-1", "T-2")
}

fn dir() -> TestDir {
    TestDir::new()
        .with("T-1.toml", CLIENT)
        .with("T-2.toml", second())
        .with("layout.toml", LAYOUT)
        .with("card.pdf", restoring::card())
        .with("bodies.csv", BODIES)
        .with("order.csv", ORDER)
        .with("wide.toml", CLIENT.replace("hip_width = 400", "hip_width = 640"))
        .with("wrong.toml", CLIENT.replace("400", "\"400\""))
}

/// What was answered, which is one report on stdout and nothing beside it.
#[track_caller]
fn report(ran: &Ran) -> Value {
    assert_eq!(ran.stderr, "", "stdout: {}", ran.stdout);
    serde_json::from_str(&ran.stdout).unwrap_or_else(|error| panic!("{error}: {}", ran.stdout))
}

/// The commands, what each is called in its report, and how it ends.
const COMMANDS: [(&str, &str, i32); 54] = [
    ("demo --out papers", "written", 0),
    ("layouts layout.toml", "layouts", 0),
    ("layouts wrong.toml", "layouts", 3),
    ("range layout.toml --csv range.csv --sheet range.pdf", "range", 0),
    ("template layout.toml --size 440x400 --out templates", "template", 0),
    ("parts layout.toml --size 440x400 --quantity 30 --csv parts.csv", "parts", 0),
    ("order order.csv --out order", "order", 0),
    ("order bodies.csv --out order", "error", 3),
    ("check layout.toml --against row-six", "check", 3),
    ("pattern layout.toml --size 440x400", "pattern", 0),
    ("pattern row-six --size 430x400", "pattern", 0),
    ("size T-1.toml", "size", 0),
    ("size T-2.toml", "size", 0),
    ("size T-2.toml --all --sources", "sizes", 0),
    ("size wide.toml", "size", 8),
    ("size wide.toml --all", "sizes", 8),
    ("plan T-1.toml --record --by OT --because trying", "plan", 0),
    ("plan T-2.toml", "plan", 0),
    ("plan T-2.toml --strict", "plan", 7),
    ("predict T-1.toml --cells 1=40 pelvis-right=44", "predict", 0),
    ("predict T-1.toml --cells 3=0", "predict", 0),
    ("adjust T-1.toml --under left=20mm --under right=30mm --why", "adjust", 0),
    ("adjust T-1.toml --top left=safe --top left=tight", "adjust", 0),
    ("adjust T-1.toml --top left=pinched", "adjust", 0),
    ("adjust T-2.toml --skin coccyx=worse --under left=bone-felt", "adjust", 5),
    ("adjust T-1.toml --press pelvis-left=slack", "adjust", 0),
    ("weigh T-1.toml --batch 50 --grams 40.3 --division 0.1", "weigh", 0),
    ("weigh --stock layout.toml --size 440x400 --batch 50 --grams 40.3 --division 0.1", "weigh", 0),
    ("weigh T-1.toml --batch 5 --grams 40.3 --division 0.1", "error", 2),
    ("plugin list", "plugins", 0),
    ("plugin show nothing", "error", 2),
    ("print T-1.toml --out papers", "written", 0),
    ("print --blank --out papers", "written", 0),
    ("contour-test layout.toml --size 440x400", "contour-test", 0),
    ("survey bodies.csv --layout layout.toml --out survey.csv --figure survey.svg", "survey", 0),
    ("review layout.toml --bodies bodies.csv --sheet review.pdf", "review", 0),
    ("compare row-six layout.toml --bodies bodies.csv", "compare", 0),
    ("compare row-six layout.toml --client T-2.toml --size 440x400", "compare", 0),
    ("compare row-six layout.toml --client wide.toml", "error", 8),
    ("compare row-six layout.toml --client T-1.toml --size 390x390", "error", 3),
    ("merge survey.csv --out whole.csv", "survey", 0),
    ("check T-1.toml layout.toml T-2.toml", "check", 0),
    ("check T-1.toml wrong.toml nothing.toml", "check", 3),
    ("new client T-3.toml", "written", 0),
    ("restore card.pdf --out T-4.toml", "written", 0),
    ("restore card.pdf --out T-4.toml", "error", 6),
    ("restore SW1/ROW-SIX --out T-5.toml", "error", 2),
    ("new report-schema reports.json", "written", 0),
    ("set T-1.toml weight.kg=73", "set", 0),
    ("set T-1.toml weight.kg=7300", "error", 3),
    ("record T-1.toml weighed 74kg --by OT", "record", 0),
    ("history T-1.toml --between 1 2", "history", 0),
    // What a file that cannot be read holds, nobody knows.
    ("find --batch B-7 .", "find", 3),
    ("completions bash", "completions", 0),
];

#[test]
fn every_command_answers_and_fails_by_the_schema() {
    let dir = dir();
    dir.run(&["new", "report-schema", "schema.json"]).done();
    let schema: Value = serde_json::from_str(&dir.read("schema.json")).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    for (words, name, code) in COMMANDS {
        let mut all: Vec<&str> = words.split(' ').collect();
        all.push("--json");
        let ran = dir.run(&all);
        let report = report(&ran);
        assert_eq!((report["report"].as_str(), ran.code), (Some(name), Some(code)), "{words}");
        let errors: Vec<String> = validator.iter_errors(&report).map(|it| it.to_string()).collect();
        assert_eq!(errors, [""; 0], "{words}");
        // What is found has a name, and is said.
        for warning in report["warnings"].as_array().unwrap() {
            assert!(warning["id"].is_string() && warning["text"].is_string(), "{words}: {warning}");
        }
    }
}

#[test]
fn the_schema_refuses_what_no_report_has() {
    let dir = dir();
    dir.run(&["new", "report-schema", "schema.json"]).done();
    let schema: Value = serde_json::from_str(&dir.read("schema.json")).unwrap();
    let validator = jsonschema::validator_for(&schema).unwrap();
    let size = report(&dir.run(&["size", "T-1.toml", "--json"]));
    assert!(validator.is_valid(&size));
    for (key, value) in [("report", "plan".into()), ("schema", 2.into()), ("more", 1.into())] {
        let mut changed = size.clone();
        changed[key] = value;
        assert!(!validator.is_valid(&changed), "{key}");
    }
    let mut without = size;
    without.as_object_mut().unwrap().remove("client");
    assert!(!validator.is_valid(&without));
}

/// The page of reference names every report and every key.
#[test]
fn the_page_of_reference_is_whole() {
    let page = include_str!("../../../files/REPORTS.md");
    let dir = dir();
    dir.run(&["new", "report-schema", "schema.json"]).done();
    let schema: Value = serde_json::from_str(&dir.read("schema.json")).unwrap();
    let mut keys: Vec<String> = Vec::new();
    let reports = schema["oneOf"].as_array().unwrap();
    keys.extend(reports.iter().map(|own| own["title"].as_str().unwrap().to_owned()));
    for definition in schema["$defs"].as_object().unwrap().values() {
        let properties = definition["properties"].as_object();
        keys.extend(properties.into_iter().flat_map(|own| own.keys().cloned()));
    }
    keys.retain(|key| !page.contains(&format!("`{key}`")));
    keys.sort_unstable();
    keys.dedup();
    assert_eq!(keys, [""; 0]);
}
