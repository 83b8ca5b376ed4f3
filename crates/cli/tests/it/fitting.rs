//! `predict`, `adjust`, `size`, `contour-test`, `survey` and `merge`: answers, records, refusals.

use std::fs;

use serde_json::Value;

use crate::papers::texts;
use crate::runner::TestDir;

pub(crate) const CLIENT: &str = r#"format = 1
kind = "client"
client = "T-1"
[measures]
units = "mm"
taken_on = 2026-02-10
taken_by = "OT"
hip_width = 400
thigh_depth = { left = 480, right = 480 }
[weight]
kg = 72
weighed_on = 2026-02-10
[cushion]
layout = "row-six"
size = "440x400"
spare_cells = 20
"#;

fn dir() -> TestDir {
    TestDir::new().with("T-1.toml", CLIENT)
}

fn json(text: &str) -> Value {
    serde_json::from_str(text).unwrap()
}

/// The keys that scripts may count on.
#[test]
fn a_prediction_has_its_keys_and_its_parts_add_up() {
    let report = json(&dir().run(&["predict", "T-1.toml", "--json"]).done());
    assert_eq!((&report["outcome"], &report["estimate"]), (&"at rest".into(), &true.into()));
    let number = |value: &Value| value.as_f64().unwrap();
    for key in
        ["roll_deg", "pitch_deg", "lower_mm", "contact_area_cm2", "mean_surface_kpa", "residual"]
    {
        assert!(number(&report[key]).is_finite(), "{key}");
    }
    assert_eq!(report["lower_side"], "level");
    for key in ["clearance_mm", "immersion_mm"] {
        assert!((number(&report[key]["left"]) - number(&report[key]["right"])).abs() < 0.1);
    }
    // 72 kg x 0.65 x 9.80665 m/s2, to the rounding of six numbers.
    let compartments = report["compartments"].as_array().unwrap();
    let load: f64 = compartments.iter().map(|own| number(&own["load_n"])).sum();
    assert!((load - 72.0 * 0.65 * 9.80665).abs() < 0.01, "{load}");
    assert!(number(&report["residual"]) < 1e-6);
    for site in report["sites"].as_array().unwrap() {
        let [low, at, high] = ["low", "surface_kpa", "high"].map(|key| number(&site[key]));
        assert!(low <= at && at <= high, "{site}");
        // 1 mmHg is 133.322 Pa; numbers have three decimals.
        assert!((number(&site["surface_mmhg"]) * 0.133_322 - at).abs() < 1e-3, "{site}");
    }
    let stiffness = &report["stiffness"];
    assert!(number(&stiffness["roll_nm_per_deg"]) > 0.0);
    assert_eq!(number(&stiffness["trunk_nm_per_deg"]), 0.0);
}

#[test]
fn counts_that_are_only_tried_are_not_said_to_be_recorded() {
    let dir = dir();
    dir.run(&["plan", "T-1.toml", "--record", "--by", "OT"]).done();
    let recorded = dir.run(&["predict", "T-1.toml", "--svg", "own.svg"]).done();
    assert!(recorded.contains("counts recorded on 2026-03-01"), "{recorded}");
    let words = ["predict", "T-1.toml", "--cells", "1=86", "2=86", "--svg", "tried.svg"];
    let tried = dir.run(&words).done();
    assert!(!tried.contains("recorded on"), "{tried}");
    let drawn = |name: &str| texts(&dir.read(name)).concat();
    assert!(drawn("own.svg").contains("counts recorded on 2026-03-01"));
    assert!(drawn("tried.svg").contains("counts of a plan that is not recorded"));
}

#[test]
fn an_empty_compartment_is_answered_with_a_caution() {
    let words = ["predict", "T-1.toml", "--cells", "thigh-left=0", "--json"];
    let report = json(&dir().run(&words).done());
    let warnings = report["warnings"].to_string();
    assert!(warnings.contains("never used with an empty compartment"), "{warnings}");
    let thigh = &report["compartments"][2];
    assert_eq!((&thigh["cells"], thigh["fill_kpa"].as_f64()), (&0.into(), Some(0.0)));
    assert_eq!(report["lower_side"], "left");
    // Without the cells under one half of the pelvis it is on the base there, and that is said first.
    let words = ["predict", "T-1.toml", "--cells", "pelvis-left=0", "--json"];
    let report = json(&dir().run(&words).done());
    assert_eq!(report["outcome"], "bottomed");
    assert!(report["clearance_mm"]["left"].as_f64().unwrap() < 10.0, "{report}");
    assert!(report["warnings"].to_string().contains("clearance"), "{report}");
    // And a pelvis that is flexible does not hold itself up over it: there are no numbers then.
    let flexible = "[posture]\nobliquity = { lower = \"left\", by = 6, at = \"seat bones\", is = \"flexible\" }\n";
    let dir = TestDir::new().with("T-1.toml", format!("{CLIENT}{flexible}"));
    let report = json(&dir.run(&words).done());
    assert_eq!((&report["outcome"], &report["clearance_mm"]), (&"tipping".into(), &Value::Null));
    let dir = self::dir();
    let words = dir.run(&["predict", "T-1.toml", "--cells", "pelvis=9"]).failed(2);
    assert!(words.contains("no compartment `pelvis`") && words.contains("pelvis-left"), "{words}");
}

#[test]
fn a_section_is_drawn_without_any_pressure() {
    let dir = dir();
    dir.run(&["predict", "T-1.toml", "--svg", "s.svg", "--date", "2026-03-01"]).done();
    let svg = fs::read_to_string(dir.path().join("s.svg")).unwrap();
    assert!(svg.contains("left seat bone") && svg.contains("ESTIMATE"));
    assert!(!svg.contains("kPa") && !svg.contains("mmHg"));
    // Hatched, never a field of colour.
    assert!(!svg.contains("Gradient"));
}

#[test]
fn checks_become_moves_and_both_are_recorded_as_they_were_said() {
    let dir = dir();
    dir.run(&["plan", "T-1.toml", "--record", "--by", "OT", "--date", "2026-03-01"]).done();
    let before = fs::read_to_string(dir.path().join("T-1.toml")).unwrap();
    let words = [
        "adjust",
        "T-1.toml",
        "--under",
        "left=19mm",
        "--under",
        "right=19mm",
        "--record",
        "--by",
        "OT",
        "--date",
        "2026-03-02",
        "--json",
    ];
    let report = json(&dir.run(&words).done());
    assert!(!report["moves"].as_array().unwrap().is_empty(), "{report}");
    let counts: u64 =
        report["counts"].as_array().unwrap().iter().map(|own| own.as_u64().unwrap()).sum();
    let after = fs::read_to_string(dir.path().join("T-1.toml")).unwrap();
    assert!(after.starts_with(&before));
    assert!(after.contains("found = [\"under left=19mm\", \"under right=19mm\"]"), "{after}");
    assert!(after.contains(&format!("total = {counts}")), "{after}");
    // Too little is left under both: cells come from the spare bag.
    assert!(report["moves"].to_string().contains("\"from\":\"spare\""), "{report}");
}

#[test]
fn a_bone_felt_or_a_mark_ends_with_status_5_and_is_recorded_without_counts_that_are_not_safe() {
    for (option, answer, said) in [
        ("--under", "left=bone-felt", "left seat bone was felt"),
        ("--skin", "coccyx=stays", "mark at the coccyx"),
        ("--skin", "left-seat-bone=open", "is open"),
        ("--skin", "left-seat-bone=worse", "looks worse"),
    ] {
        let dir = dir();
        dir.run(&["plan", "T-1.toml", "--record", "--by", "OT", "--date", "2026-03-01"]).done();
        let output = dir.command(&["adjust", "T-1.toml", option, answer]).output().unwrap();
        assert_eq!(output.status.code(), Some(5));
        let words = String::from_utf8(output.stderr).unwrap();
        assert!(words.contains("client off now") && words.contains(said), "{words}");
        let record = ["--record", "--by", "OT", "--date", "2026-03-02"];
        let mut call = vec!["adjust", "T-1.toml", option, answer];
        call.extend(record);
        assert_eq!(dir.command(&call).output().unwrap().status.code(), Some(5));
        let text = fs::read_to_string(dir.path().join("T-1.toml")).unwrap();
        assert!(text.contains(answer), "{text}");
    }
    // Both bones: today's "leave the cells as they are" is gone.
    let both = ["adjust", "T-1.toml", "--under", "left=bone-felt", "--under", "right=bone-felt"];
    let answer = dir().command(&both).output().unwrap();
    assert_eq!(answer.status.code(), Some(5));
    let said = String::from_utf8(answer.stdout).unwrap();
    assert!(said.contains("CLIENT OFF NOW") && !said.contains("Leave the cells"), "{said}");
}

#[test]
fn contradictions_are_questioned_and_nothing_is_moved_or_recorded() {
    let dir = dir();
    let words = [
        "adjust",
        "T-1.toml",
        "--top",
        "left=safe",
        "--top",
        "left=tight",
        "--record",
        "--by",
        "OT",
        "--json",
    ];
    let report = json(&dir.run(&words).done());
    assert_eq!(report["recorded"], false);
    assert!(report["moves"].as_array().unwrap().is_empty());
    assert!(report["doubts"].to_string().contains("do not go together"), "{report}");
    assert_eq!(fs::read_to_string(dir.path().join("T-1.toml")).unwrap(), CLIENT);
}

#[test]
fn nothing_is_taken_from_a_pinched_side_before_a_hand_underneath() {
    let words = ["adjust", "T-1.toml", "--top", "left=pinched", "--lower", "right=9mm", "--json"];
    let report = json(&dir().run(&words).done());
    let moves = report["moves"].as_array().unwrap();
    // The left compartments are 1, 3 and 5.
    assert!(moves.iter().all(|own| !["1", "3", "5"].contains(&own["from"].as_str().unwrap())));
    assert!(report["next"].to_string().contains("check under the left seat bone"), "{report}");
}

#[test]
fn held_fingers_are_tried_again_before_the_cause_is_looked_for() {
    let words = ["adjust", "T-1.toml", "--top", "left=pinched", "--under", "left=30mm"];
    let said = dir().run(&words).done();
    let at = |part: &str| said.find(part).unwrap_or_else(|| panic!("{part}: {said}"));
    assert!(at("check on top again") < at("before the cause is found"), "{said}");
    assert!(at("before the cause is found") < at("A pad, a towel or a sling"), "{said}");
    assert!(!said.contains("Move "), "{said}");
}

#[test]
fn checks_that_nobody_can_make_are_refused() {
    for (press, said) in [
        ("9=slack", "has no compartment 9"),
        ("pelvis=slack", "no compartment `pelvis`"),
        ("slack", "such as 3=slack"),
        ("1=soft", "slack, like or tight"),
    ] {
        let words = dir().run(&["adjust", "T-1.toml", "--press", press]).failed(2);
        assert!(words.contains(said), "{words}");
    }
    let words = dir().run(&["adjust", "T-1.toml", "--under", "left=25"]).failed(2);
    assert!(words.contains("has no unit; write it as 25mm"), "{words}");
    let words = dir().run(&["adjust", "T-1.toml"]).failed(2);
    assert!(words.contains("no check is given"), "{words}");
}

const FIXED: &str = "[posture]\nobliquity = { lower = \"left\", by = 12, at = \"seat bones\", is = \"fixed\" }\n\
    [[goal]]\nwant = \"correct obliquity\"\n";

#[test]
fn a_goal_that_falls_short_is_told_and_recorded_with_the_plan() {
    let dir = TestDir::new().with("T-1.toml", format!("{CLIENT}{FIXED}"));
    let before = dir.read("T-1.toml");
    let strict = dir.run(&["plan", "T-1.toml", "--strict", "--record", "--by", "OT"]);
    assert_eq!(strict.code, Some(7));
    assert!(strict.stderr.contains("a fixed pelvis is not forced level"), "{}", strict.stderr);
    assert!(strict.stderr.contains("nothing was recorded"), "{}", strict.stderr);
    assert!(strict.stdout.contains("pelvis-left"), "the nearest safe plan is shown");
    assert_eq!(dir.read("T-1.toml"), before);
    let told = dir.run(&["plan", "T-1.toml", "--record", "--by", "OT"]).done();
    assert!(told.contains("NOT DONE") && told.contains("a fixed pelvis is not forced level"));
    assert!(dir.read("T-1.toml").contains("bring the pelvis level (not reached)"));
    let report = json(&dir.run(&["plan", "T-1.toml", "--json"]).done());
    assert_eq!(report["goals"][0]["met"], false);
    assert_eq!(report["result"]["outcome"], "at rest");
}

/// Who waits for relief of a sore is not told that all is well.
#[test]
fn an_injured_site_that_is_not_relieved_ends_with_status_5_unless_taken_by_name() {
    let sore = "[[skin.injury]]\nsite = \"left-seat-bone\"\ncategory = \"2\"\nis = \"healing\"\n\
        seen_on = 2026-02-10\n\
        [[goal]]\nwant = \"off-load\"\nsite = \"left-seat-bone\"\npercent = 60\n";
    let dir = TestDir::new().with("T-1.toml", format!("{CLIENT}{sore}"));
    let before = dir.read("T-1.toml");
    let ran = dir.run(&["plan", "T-1.toml", "--record", "--by", "OT"]);
    assert_eq!(ran.code, Some(5));
    assert!(ran.stderr.contains("nothing was recorded"), "{}", ran.stderr);
    assert_eq!(dir.read("T-1.toml"), before);
    // By name it is taken, and still told; strictly, it is not.
    let taken = ["plan", "T-1.toml", "--nearest-safe", "--record", "--by", "OT", "--json"];
    let report = json(&dir.run(&taken).done());
    assert_eq!((&report["recorded"], &report["goals"][0]["met"]), (&true.into(), &false.into()));
    assert_eq!(dir.run(&["plan", "T-1.toml", "--nearest-safe", "--strict"]).code, Some(7));
    // The same goal for skin that is whole falls short like any other.
    let whole = sore.split("[[goal]]").nth(1).unwrap();
    let dir = TestDir::new().with("T-1.toml", format!("{CLIENT}[[goal]]{whole}"));
    assert_eq!(dir.run(&["plan", "T-1.toml"]).code, Some(0));
}

#[test]
fn no_made_size_that_suits_is_a_status_of_its_own() {
    let wide = CLIENT.replace("hip_width = 400", "hip_width = 640");
    let dir = TestDir::new().with("T-1.toml", wide);
    for words in [&["size", "T-1.toml"][..], &["size", "T-1.toml", "--json"]] {
        let ran = dir.run(words);
        assert_eq!(ran.code, Some(8), "{}", ran.stderr);
    }
    assert!(dir.run(&["size", "T-1.toml"]).stdout.contains("No made size suits."));
}

/// Wide hips: what would have to be made is said for this layout and for all, in words and in
/// JSON, and is no size that anybody makes.
#[test]
fn where_none_suits_a_supplier_can_be_asked() {
    let dir = TestDir::new()
        .with("T-1.toml", CLIENT.replace("hip_width = 400", "hip_width = 640"))
        // No cushion that suits these hips goes into this chair.
        .with(
            "T-2.toml",
            CLIENT.replace("400\nthigh", "640\nthigh") + "[chair]\ninside_width = 600\n",
        )
        // Nor can a layout be drawn for hips that nobody measured.
        .with("T-3.toml", CLIENT.replace("hip_width = 400\n", "").replace("kg = 72", "kg = 200"));
    for more in [&[][..], &["--all"]] {
        let ask = |name: &str, json: &[&str]| dir.run(&[&["size", name], more, json].concat());
        let words = ask("T-1.toml", &[]);
        assert_eq!(words.code, Some(8));
        assert!(
            words.stdout.contains("made in 665x430, rated for 72 kg or more"),
            "{}",
            words.stdout
        );
        let report = json(&ask("T-1.toml", &["--json"]).stdout);
        assert_eq!(report["to_make"]["size_mm"], "665x430");
        assert_eq!(report["to_make"]["rating_kg"], 72.0);
        assert_eq!(report["not_to_make"], json("[]"));
        for (name, id) in [("T-2.toml", "chair-too-narrow"), ("T-3.toml", "hips-not-measured")] {
            let ran = ask(name, &["--json"]);
            let report = json(&ran.stdout);
            assert_eq!((ran.code, &report["to_make"]), (Some(8), &Value::Null), "{name}");
            assert_eq!(report["not_to_make"][0]["id"], id, "{report}");
            assert!(!ask(name, &[]).stdout.contains("Ask a supplier"));
        }
    }
    // Where one suits, nothing is asked for.
    let suits = self::dir().run(&["size", "T-1.toml"]).done();
    assert!(!suits.contains("supplier"), "{suits}");
}

/// The margins of 440x440 about 400 mm of hips, 480 mm of thigh and 72 kg, rated for 85 kg.
#[test]
fn the_best_size_is_told_with_what_it_leaves_free() {
    let words = dir().run(&["size", "T-1.toml"]).done();
    let leaves = "It leaves 20 mm beside each hip, 40 mm behind the knee, 13 kg below its rating.";
    assert!(words.contains(leaves), "{words}");
    let report = json(&dir().run(&["size", "T-1.toml", "--json"]).done());
    assert_eq!(report["best_size_mm"], "440x440");
    let margin = |at: usize, key: &str| report["margins"][at][key].clone();
    assert_eq!((margin(0, "in_all_mm"), margin(0, "each_side_mm")), (40.0.into(), 20.0.into()));
    assert_eq!((margin(1, "free_mm"), margin(2, "free_kg")), (40.0.into(), 13.0.into()));
}

/// Every built-in layout has a line, in their order, whichever the file names; a file's own layout
/// is the last.
#[test]
fn all_layouts_are_looked_over_in_one_order() {
    let dir = dir()
        .with("T-2.toml", CLIENT.replace("\"row-six\"", "\"curved-ten\""))
        .with("T-3.toml", CLIENT.replace("\"row-six\"", "\"mine.toml\""))
        .with("mine.toml", include_str!("data/layout.toml"));
    let names = |client: &str| -> Vec<String> {
        let report = json(&dir.run(&["size", client, "--all", "--json"]).done());
        let layouts = report["layouts"].as_array().unwrap();
        layouts.iter().map(|own| own["layout"].as_str().unwrap().to_owned()).collect()
    };
    let built_in = ["row-six", "island-eight", "curved-ten"];
    assert_eq!(names("T-1.toml"), built_in);
    assert_eq!(names("T-2.toml"), built_in);
    assert_eq!(names("T-3.toml"), [&built_in[..], &["mine.toml"]].concat());
    let words = dir.run(&["size", "T-3.toml", "--all"]).done();
    let lines: Vec<&str> = words.lines().filter(|line| line.contains(": 4")).collect();
    assert!(lines[0].starts_with("row-six: 440x440, with 20 mm beside each hip, 40 mm"), "{words}");
    assert_eq!(dir.run(&["size", "T-3.toml", "--all"]).done(), words);
    // A client whose own layout has no size that suits is not told 8 where another has one.
    let small = CLIENT.replace("\"row-six\"", "\"curved-ten\"").replace("= 400", "= 270");
    let small = small.replace("480", "360").replace("kg = 72", "kg = 30");
    let dir = TestDir::new().with("T-1.toml", small);
    assert_eq!(dir.run(&["size", "T-1.toml"]).code, Some(8));
    let all = dir.run(&["size", "T-1.toml", "--all"]).done();
    assert!(all.contains("row-six: 300x300, with"), "{all}");
    assert!(all.contains("curved-ten: none suits; the nearest is 400x400, but it is"), "{all}");
}

#[test]
fn sources_are_told_where_they_are_asked_for_and_always_in_json() {
    let feet = "[function]\npropulsion = \"left foot\"\n";
    let legs = "lower_leg_length = { left = 430, right = 430 }\n[weight]";
    let client = CLIENT.replace("[weight]", legs) + feet;
    let dir = TestDir::new().with("T-1.toml", client);
    for more in [&[][..], &["--all"]] {
        let run = |last: &[&str]| dir.run(&[&["size", "T-1.toml"], more, last].concat()).done();
        let (plain, with) = (run(&[]), run(&["--sources"]));
        for source in ["from memory", "exam notes", "WHO"] {
            assert!(!plain.contains(source), "{plain}");
            assert!(with.contains(source), "{with}");
        }
        let report = json(&run(&["--json"]));
        for rule in report["rules"].as_array().unwrap() {
            assert!(!rule["source"].as_str().unwrap().is_empty(), "{rule}");
        }
        assert_eq!(report, json(&run(&["--json", "--sources"])));
    }
    let plain = dir.run(&["size", "T-1.toml"]).done();
    assert!(plain.contains("The left foot propels") && !plain.contains("2020"), "{plain}");
    assert!(dir.run(&["size", "T-1.toml", "--sources"]).done().contains("2020"));
}

#[test]
fn a_size_is_told_with_its_reasons() {
    let words = dir().run(&["size", "T-1.toml"]).done();
    assert!(
        words.contains("suits best: 440x440.") || words.contains("suits best: 440x400."),
        "{words}"
    );
    assert!(words.contains("Not 360x360: it is narrower than the hips, 400 mm"), "{words}");
}

#[test]
fn the_contour_test_claims_nothing() {
    let words = ["contour-test", "row-six", "--size", "440x400", "--json"];
    let report = json(&TestDir::new().run(&words).done());
    assert!(report["claims"].as_str().unwrap().contains("replaces no laboratory test"));
    let marks: Vec<&str> = (report["parameters"].as_array().unwrap().iter())
        .map(|own| own["mark"].as_str().unwrap())
        .collect();
    assert!(marks.contains(&"seen") && marks.contains(&"unverified"));
    for step in report["steps"].as_array().unwrap() {
        assert!(step["overload_deflection_mm"].as_f64().unwrap() > 0.0, "{step}");
    }
    // Walls that give take up the first cells: that is what a ruler can tell.
    let tilts = report["board"]["tilts"].as_array().unwrap();
    let higher: Vec<f64> =
        tilts.iter().map(|own| own["right_edge_higher_mm"].as_f64().unwrap()).collect();
    assert_eq!(higher.len(), 9);
    assert!(higher[0] > 1.5 * higher[3] && higher[3] > higher[6], "{higher:?}");
}

const BODIES: &str = "sex,mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n\
    M,70.3,349,487\nM,83.7,370,494\nF,60.1,390,470\nF,140,560,500\nM,75,380,505\n";

#[test]
fn a_survey_in_parts_is_the_survey_in_one() {
    let dir = TestDir::new().with("b.csv", BODIES);
    let base = ["survey", "b.csv", "--layout", "row-six"];
    let run = |more: &[&str]| dir.run(&[&base[..], more].concat()).done();
    run(&["--out", "all.csv", "--figure", "all.svg", "--date", "2026-03-01"]);
    run(&["--out", "one.csv", "--shard", "1/2"]);
    run(&["--out", "two.csv", "--shard", "2/2"]);
    let merge = ["merge", "two.csv", "one.csv", "--out", "merged.csv", "--figure", "merged.svg"];
    dir.run(&[&merge[..], &["--date", "2026-03-01"]].concat()).done();
    let read = |name: &str| fs::read_to_string(dir.path().join(name)).unwrap();
    assert_eq!(read("all.csv"), read("merged.csv"));
    assert_eq!(read("all.svg"), read("merged.svg"));
    assert_eq!(read("all.csv").lines().count(), 6);
    assert!(read("all.csv").contains(",no size,"), "{}", read("all.csv"));
    assert!(read("all.svg").contains("Survey of row-six"));
    let twice = dir.run(&["merge", "one.csv", "one.csv", "--out", "x.csv"]).failed(2);
    assert!(twice.contains("are both part 1"), "{twice}");
    let part = dir.run(&["merge", "one.csv", "--out", "x.csv"]).failed(2);
    assert!(part.contains("of 2 parts, part 2 cannot be found"), "{part}");
    // Parts of another table, sample or mesh are of another survey, whatever their names.
    run(&["--out", "other.csv", "--shard", "2/2", "--sample", "4"]);
    let other = dir.run(&["merge", "one.csv", "other.csv", "--out", "x.csv"]).failed(2);
    assert!(other.contains("are of different surveys"), "{other}");
    assert!(!dir.path().join("x.csv").exists());
    let none = dir.run(&[&base[..], &["--out", "x.csv", "--shard", "9/9"]].concat()).failed(2);
    assert!(none.contains("there is no body in this part"), "{none}");
}

#[test]
fn a_survey_replaces_only_a_survey() {
    let dir = TestDir::new().with("b.csv", BODIES).with("mine.csv", "my,table\n1,2\n");
    let words = ["survey", "b.csv", "--layout", "row-six", "--sample", "1", "--out", "mine.csv"];
    let said = dir.run(&words).failed(3);
    assert!(said.contains("this is no survey"), "{said}");
    dir.run(&[&words[..5], &["1", "--out", "s.csv"]].concat()).done();
    let said = dir.run(&["merge", "s.csv", "--out", "mine.csv"]).failed(3);
    assert!(said.contains("this is no survey"), "{said}");
    assert_eq!(dir.read("mine.csv"), "my,table\n1,2\n");
    // Its own answer is replaced.
    dir.run(&[&words[..5], &["2", "--out", "s.csv"]].concat()).done();
    assert_eq!(dir.read("s.csv").lines().count(), 3);
}

#[test]
fn what_another_survey_left_is_not_gone_on_with() {
    let layout = include_str!("../../../../layouts/row-six.toml");
    let dir = TestDir::new().with("b.csv", BODIES).with("l.toml", layout);
    let words = ["survey", "b.csv", "--layout", "l.toml", "--out", "all.csv"];
    dir.run(&words).done();
    let left = || fs::copy(dir.path().join("all.csv"), dir.path().join("all.csv.unfinished"));
    let other = |file: &str, text: String, more: &[&str]| {
        left().unwrap();
        let before = fs::read_to_string(dir.path().join(file)).unwrap();
        fs::write(dir.path().join(file), text).unwrap();
        let said = dir.run(&[&words[..], more].concat()).failed(2);
        assert!(said.contains("is of another survey"), "{said}");
        fs::write(dir.path().join(file), before).unwrap();
    };
    // Another layout under the same name, another table, another mesh, another sample.
    other("l.toml", format!("{layout}# changed\n"), &[]);
    other("b.csv", format!("{BODIES}M,70,380,470\n"), &[]);
    other("b.csv", BODIES.to_owned(), &["--fine"]);
    other("b.csv", BODIES.to_owned(), &["--sample", "2"]);
    other("b.csv", BODIES.to_owned(), &["--shard", "1/2"]);
    dir.run(&words).done();
}

#[test]
fn a_broken_off_survey_goes_on_where_it_was() {
    let dir = TestDir::new().with("b.csv", BODIES);
    let words = ["survey", "b.csv", "--layout", "row-six", "--out", "all.csv"];
    dir.run(&words).done();
    let whole = fs::read_to_string(dir.path().join("all.csv")).unwrap();
    // As a run leaves it that was broken off within a line.
    let cut = whole.len() - 20;
    fs::write(dir.path().join("all.csv.unfinished"), &whole[..cut]).unwrap();
    fs::remove_file(dir.path().join("all.csv")).unwrap();
    dir.run(&words).done();
    assert_eq!(fs::read_to_string(dir.path().join("all.csv")).unwrap(), whole);
    assert!(!dir.path().join("all.csv.unfinished").exists());
}

#[test]
fn a_wrong_table_is_told_with_its_line() {
    let dir = TestDir::new()
        .with("b.csv", "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n70,34.9,487\n")
        .with("c.csv", "mass_kg,hips\n70,349\n");
    let said =
        |name: &str| dir.run(&["survey", name, "--layout", "row-six", "--out", "o.csv"]).failed(3);
    assert!(said("b.csv").contains("b.csv, line 2: `34.9` cannot be right"), "{}", said("b.csv"));
    assert!(said("c.csv").contains("line 1: there is no column `hip_breadth_sitting_mm`"));
}

/// The pelvis turns as a whole: heights go with the distance between the points.
#[test]
fn the_lower_side_may_be_found_at_the_front_of_the_pelvis() {
    let measured = CLIENT.replace("hip_width = 400", "hip_width = 400\nseat_bone_spacing = 120");
    let dir = TestDir::new().with("T-1.toml", measured).with("T-2.toml", CLIENT);
    let counts = |lower: &str| {
        let words = ["adjust", "T-1.toml", "--under", "left=30mm", "--lower", lower, "--json"];
        json(&dir.run(&words).done())["counts"].clone()
    };
    // 240 mm between the points at the front, 120 mm between the seat bones.
    assert_eq!(counts("left=24mm@asis"), counts("left=12mm"));
    assert_eq!(counts("left=12mm@seat-bones"), counts("left=12mm"));
    let told = dir.run(&["adjust", "T-1.toml", "--lower", "left=24mm@asis"]).done();
    assert!(told.contains("24 mm at the front of the pelvis is 12 mm at the seat bones"), "{told}");
    let record = ["adjust", "T-2.toml", "--lower", "left=20mm@asis", "--record", "--by", "OT"];
    let told = dir.run(&record).done();
    assert!(told.contains("is 8 mm to 12 mm at the seat bones"), "{told}");
    assert!(dir.read("T-2.toml").contains("lower left=20mm@asis"));
    let wrong = dir.run(&["adjust", "T-1.toml", "--lower", "left=20mm@knee"]).failed(2);
    assert!(wrong.contains("write asis, for the front of the pelvis, or seat-bones"), "{wrong}");
}

/// Where hands feel too little, it is mended with something in reserve, but not at the cost of an
/// injury: before that the reserve is given up. The left seat bone of this client has an injury.
#[test]
fn a_reserve_is_given_up_before_an_injury_is_loaded() {
    let dir = TestDir::new().with("D.toml", include_str!("data/injured.toml"));
    let found = ["--top", "left=safe", "--top", "right=safe", "--under", "left=15mm"];
    let asked = [&["adjust", "D.toml"][..], &found, &["--under", "right=38mm", "--json"]].concat();
    let report = json(&dir.run(&asked).done());
    assert_eq!(report["verdict"], "move");
    assert_eq!(report["not_safe"], serde_json::json!([]));
    let careful = report["costs"]["careful_sites"].as_array().unwrap();
    let injured = careful.iter().find(|own| own["id"] == "left-seat-bone").unwrap();
    // An injury that is not healed gets a hundredth more at most; whole cells take half of that.
    assert!(injured["rise"].as_f64().unwrap() <= 0.015, "{injured}");
}

/// Where the clearance and an injury cannot both be kept, the moves that are shown keep the clearance: of an
/// injury a clinician may take more by name, of the limit nobody less.
#[test]
fn the_clearance_is_kept_where_an_injury_cannot_be() {
    let dir = TestDir::new().with("C.toml", include_str!("../../demo/client.toml"));
    let found = ["--under", "left=20mm", "--under", "right=20mm"];
    let words = [&["adjust", "C.toml", "--date", "2026-02-24"][..], &found, &found, &["--json"]];
    let run = dir.run(&words.concat());
    assert_eq!(run.code, Some(5), "{}", run.stderr);
    let report = json(&run.stdout);
    let broken = report["not_safe"].as_array().unwrap();
    let ids: Vec<&str> = broken.iter().map(|own| own["id"].as_str().unwrap()).collect();
    assert_eq!(ids, ["injured-site"], "{}", run.stdout);
}
