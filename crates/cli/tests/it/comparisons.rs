//! Two layouts beside each other: what is planted, laws, and the same numbers by other commands.

use serde_json::Value;

use crate::fitting::CLIENT;
use crate::runner::TestDir;

const LAYOUT: &str = include_str!("data/layout.toml");

/// Bodies who suit sizes of both, one who suits none, and one who suits the first alone.
const BODIES: &str = "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n\
    62,375,455\n70,380,470\n78,390,465\n150,600,470\n78,455,490\n";

/// A posture of which no body is made: an obliquity beside thighs swept so far.
const SWEPT: &str = "[posture]\nwindswept = { to = \"left\", degrees = 40 }\n\
    obliquity = { lower = \"left\", by = 60, at = \"seat bones\", is = \"fixed\" }\n";

fn begun() -> TestDir {
    TestDir::new().with("bodies.csv", BODIES).with("mine.toml", LAYOUT).with("T-1.toml", CLIENT)
}

#[track_caller]
fn compared(dir: &TestDir, words: &str) -> Value {
    let words: Vec<&str> = words.split(' ').chain(["--json"]).collect();
    let ran = dir.run(&[&["compare"], &words[..]].concat());
    assert_eq!(ran.code, Some(0), "{words:?}: {}{}", ran.stdout, ran.stderr);
    serde_json::from_str(&ran.stdout).unwrap()
}

fn list<'v>(of: &'v Value, key: &str) -> &'v Vec<Value> {
    of[key].as_array().unwrap_or_else(|| panic!("{key}: {of}"))
}

fn measure<'v>(of: &'v Value, id: &str) -> &'v Value {
    let found = list(of, "measures").iter().find(|own| own["id"] == id);
    found.unwrap_or_else(|| panic!("{id}: {of}"))
}

/// Planted: the difference of a layout to itself is nothing, to the last digit, and is called so.
#[test]
fn a_layout_beside_itself_has_no_difference() {
    let dir = begun();
    let words = "row-six row-six --bodies bodies.csv";
    let report = compared(&dir, words);
    assert_eq!(list(&report, "measures").len(), 11);
    for own in list(&report, "measures") {
        assert_eq!(own["difference"], serde_json::json!([0.0, 0.0, 0.0]), "{own}");
        assert_eq!(own["verdict"], "no-difference", "{own}");
        assert_eq!(own["percentiles"]["a"], own["percentiles"]["b"], "{own}");
    }
    for pair in list(&report, "pairs") {
        assert_eq!((&pair["stock_fill_of"], &pair["a"]), (&"both".into(), &pair["b"]));
        assert_eq!(pair["a"]["cells"], pair["a"]["cells_as_supplied"]);
    }
    let words: Vec<&str> = words.split(' ').collect();
    let said = dir.run(&[&["compare"], &words[..]].concat()).done();
    let ends = |line: &&str| line.ends_with("no difference that the model can tell");
    assert_eq!(said.lines().filter(ends).count(), 11, "{said}");
    assert!(!said.contains("B has"), "{said}");
    assert!(said.contains("An estimate of a model"), "{said}");
}

/// Turned round, all is the same but for its sign.
#[test]
fn the_other_way_round_every_difference_has_the_other_sign() {
    let dir = begun();
    let there = compared(&dir, "row-six mine.toml --bodies bodies.csv");
    let back = compared(&dir, "mine.toml row-six --bodies bodies.csv");
    assert_eq!((&there["a"], &there["b"]), (&back["b"], &back["a"]));
    let turned = |own: &Value| {
        own.as_str().map(|own| {
            match own {
                "a" => "b",
                "b" => "a",
                "more" => "less",
                "less" => "more",
                other => other,
            }
            .to_owned()
        })
    };
    for (one, other) in list(&there, "pairs").iter().zip(list(&back, "pairs")) {
        assert_eq!((&one["a"], &one["b"]), (&other["b"], &other["a"]));
        assert_eq!(one["unloaded_fill_kpa"], other["unloaded_fill_kpa"]);
        assert_eq!(turned(&one["stock_fill_of"]).as_deref(), other["stock_fill_of"].as_str());
    }
    let mut differ = 0;
    for (one, other) in list(&there, "measures").iter().zip(list(&back, "measures")) {
        let of = |own: &Value| -> Vec<f64> {
            list(own, "difference").iter().map(|own| own.as_f64().unwrap()).collect()
        };
        let opposite: Vec<f64> = of(other).iter().rev().map(|own| 0.0 - own).collect();
        assert_eq!(of(one), opposite, "{one} {other}");
        assert_eq!(one["told_from"], other["told_from"]);
        assert_eq!(turned(&one["verdict"]).as_deref(), other["verdict"].as_str());
        differ += usize::from(of(one)[1] != 0.0);
    }
    assert!(differ > 8, "{there}");
    let bodies = &there["bodies"];
    assert_eq!((&bodies["all"], &bodies["in_neither"]), (&5.into(), &1.into()), "{bodies}");
    assert_eq!((&bodies["only_in_a"], &back["bodies"]["only_in_b"]), (&1.into(), &1.into()));
}

/// Laws: higher walls at the same pressure leave more under the bones, about as much as they are
/// higher. A higher crown as supplied changes the counts that are supplied, and nothing at the common
/// pressure, which is the lower one.
#[test]
fn one_change_of_a_layout_does_what_it_must() {
    let higher = LAYOUT.replace("wall_height = 80", "wall_height = 92");
    let fuller = LAYOUT.replace("\"3% + 2\"", "\"3% + 6\"");
    let dir = begun().with("higher.toml", higher).with("fuller.toml", fuller);
    let report = compared(&dir, "mine.toml higher.toml --bodies bodies.csv --size 440x400");
    assert_eq!(list(&report, "pairs")[0]["stock_fill_of"], "both");
    for id in ["left-under", "right-under", "oblique-under"] {
        let own = measure(&report, id);
        let by = own["difference"][1].as_f64().unwrap();
        assert_eq!(own["verdict"], "more", "{own}");
        // Walls that are higher bow more, which takes a part of it.
        assert!((6.0..=12.5).contains(&by), "{own}");
    }
    let report = compared(&dir, "mine.toml fuller.toml --bodies bodies.csv --size 440x400");
    let pair = &list(&report, "pairs")[0];
    assert_eq!(pair["stock_fill_of"], "a");
    let kpa = |at: &str| pair[at]["stock_fill_kpa"].as_f64().unwrap();
    assert!(kpa("b") > kpa("a") && pair["unloaded_fill_kpa"] == pair["a"]["stock_fill_kpa"]);
    let cells = |key: &str| pair["b"][key].as_u64().unwrap();
    assert!(cells("cells") < cells("cells_as_supplied"), "{pair}");
    for own in list(&report, "measures") {
        assert_eq!(own["verdict"], "no-difference", "{own}");
    }
}

/// Whole cells come near the pressure that is told: half a cell in one of 20 to 70 is a few of a
/// hundred of what the walls alone hold, and of the pressure a fifth at most in these layouts.
#[test]
fn both_are_filled_to_the_pressure_that_is_told() {
    let dir = begun();
    let report = compared(&dir, "row-six mine.toml --bodies bodies.csv");
    assert!(!list(&report, "pairs").is_empty());
    for pair in list(&report, "pairs") {
        let told = pair["unloaded_fill_kpa"].as_f64().unwrap();
        for at in ["a", "b"] {
            let of = |key: &str| pair[at][key].as_f64().unwrap();
            assert!(of("lowest_kpa") > 0.8 * told && of("highest_kpa") < 1.2 * told, "{pair}");
            assert!(told <= of("stock_fill_kpa"), "{pair}");
        }
    }
}

/// An independent way: `predict` with the counts that are told gives the same numbers, also with the
/// obliquity that is tried.
#[test]
fn the_numbers_are_those_of_a_prediction() {
    let oblique = "[posture]\n\
        obliquity = { lower = \"left\", by = 12, at = \"seat bones\", is = \"fixed\" }\n";
    let head = CLIENT.replace("row-six", "mine.toml");
    let dir = begun().with("on-b.toml", &head).with("oblique.toml", head.clone() + oblique);
    let report = compared(&dir, "row-six mine.toml --client T-1.toml --size 440x400");
    assert_eq!((&report["client"], &report["bodies"]["all"]), (&"T-1".into(), &1.into()));
    let pair = &list(&report, "pairs")[0];
    let predicted = |file: &str, at: &str| -> Value {
        let cells = list(&pair[at], "compartments").iter();
        let cells: Vec<String> =
            cells.map(|own| format!("{}={}", own["number"], own["cells"])).collect();
        let cells: Vec<&str> = cells.iter().map(String::as_str).collect();
        let ran = dir.run(&[&["predict", file, "--json", "--cells"], &cells[..]].concat());
        serde_json::from_str(&ran.stdout).unwrap()
    };
    let number = |of: &Value| of.as_f64().unwrap_or_else(|| panic!("{of}"));
    for (file, at) in [("T-1.toml", "a"), ("on-b.toml", "b")] {
        let there = predicted(file, at);
        let near = |id: &str, wanted: f64| {
            let found = number(&measure(&report, id)["percentiles"][at][1]);
            // Both write thousandths, and two of them are put together here.
            assert!((found - wanted).abs() < 0.0021, "{file} {id}: {found}, not {wanted}");
        };
        let of = |key: &str, side: &str| number(&there[key][side]);
        near("left-under", of("clearance_mm", "left"));
        near("right-under", of("clearance_mm", "right"));
        near("immersion", 0.5 * (of("immersion_mm", "left") + of("immersion_mm", "right")));
        near("greatest-surface", number(&there["greatest_surface_kpa"]));
        near("mean-surface", number(&there["mean_surface_kpa"]));
        near("pitch", number(&there["pitch_deg"]));
        near("roll-stiffness", number(&there["stiffness"]["roll_nm_per_deg"]));
        let sum = |key: &str| of(key, "left") + of(key, "right");
        let pelvis = sum("pelvis_load_n");
        near("pelvis-share", 100.0 * pelvis / (pelvis + sum("thigh_load_n")));
        let bones = list(&there, "sites").iter();
        let bones = bones.filter(|own| own["id"].as_str().unwrap().ends_with("seat-bone"));
        near("bone-surface", bones.map(|own| number(&own["surface_kpa"])).fold(0.0, f64::max));
    }
    let there = predicted("oblique.toml", "b");
    let [left, right] = ["left", "right"].map(|side| number(&there["clearance_mm"][side]));
    let found = |id: &str| number(&measure(&report, id)["percentiles"]["b"][1]);
    assert!((found("oblique-lower") - (right - left)).abs() < 0.0021, "{left} {right}");
    assert!((found("oblique-under") - left).abs() < 0.0011, "{left}");
    // The cushion gives way under the low bone: less than all of it is left.
    assert!((1.0..12.0).contains(&found("oblique-lower")), "{report}");
}

/// Another independent way: the layout whose stock fill has the pressure is as supplied, and its
/// bodies sit as `review` finds them.
#[test]
fn the_one_that_is_as_supplied_sits_as_in_a_review() {
    let one = "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n70,380,470\n";
    let dir = begun().with("one.csv", one);
    let report = compared(&dir, "row-six mine.toml --bodies one.csv");
    let pair = &list(&report, "pairs")[0];
    let at = pair["stock_fill_of"].as_str().unwrap();
    let (at, layout) = if at == "b" { ("b", "mine.toml") } else { ("a", "row-six") };
    let ran = dir.run(&["review", layout, "--bodies", "one.csv", "--json"]);
    let review: Value = serde_json::from_str(&ran.stdout).unwrap();
    let size = list(&review, "sizes").iter().find(|own| own["suits"] == 1).unwrap();
    assert_eq!(size["size_mm"], pair[at]["size_mm"]);
    let left = ["left-under", "right-under"]
        .map(|id| measure(&report, id)["percentiles"][at][1].as_f64().unwrap());
    let wanted = size["seats"][1]["left_mm"].as_f64().unwrap();
    assert!((left[0].min(left[1]) - wanted).abs() < 0.0011, "{left:?} {wanted}");
    // What a cell does, in the compartments for a seat bone.
    let cells = list(size, "compartments").iter();
    let bones = cells.filter(|own| own["purpose"] == "seat bone");
    let most = bones.map(|own| {
        let of = |key: &str| own["one_cell"][key].as_f64().unwrap().abs();
        of("under_left_mm").max(of("under_right_mm"))
    });
    let most = most.fold(0.0, f64::max);
    assert!((pair[at]["one_cell"]["coarsest_mm"].as_f64().unwrap() - most).abs() < 0.0011);
}

#[test]
fn what_cannot_be_compared_is_refused_with_what_to_do() {
    let dir = begun()
        .with(
            "light.toml",
            CLIENT.split("[weight]").next().unwrap().to_owned()
                + "[cushion]\nlayout = \"row-six\"\nsize = \"440x400\"\nspare_cells = 20\n",
        )
        .with("wide.toml", CLIENT.replace("hip_width = 400", "hip_width = 640"))
        .with("swept.toml", CLIENT.to_owned() + SWEPT)
        .with("heavy.toml", CLIENT.replace("kg = 72", "kg = 150"))
        .with("nan.csv", BODIES.replace("62", "nan"));
    let fails = |words: &str, code: i32, says: &str| {
        let words: Vec<&str> = words.split(' ').collect();
        let said = dir.run(&[&["compare"], &words[..]].concat()).failed(code);
        assert!(said.contains(says), "{words:?}: {said}");
    };
    fails("nothing row-six --bodies bodies.csv", 2, "nothing");
    fails("row-six nothing.toml --bodies bodies.csv", 2, "nothing.toml");
    fails("row-six T-1.toml --bodies bodies.csv", 3, "T-1.toml");
    fails("row-six mine.toml --bodies nan.csv", 3, "line 2");
    fails("row-six mine.toml", 2, "--client");
    fails("row-six mine.toml --bodies bodies.csv --client T-1.toml", 2, "--client");
    fails("row-six mine.toml --client T-1.toml --sample 3", 2, "--sample");
    // Only the first is made so.
    fails("row-six mine.toml --bodies bodies.csv --size 480x440", 3, "mine.toml");
    fails("row-six mine.toml --client wide.toml", 8, "row-six");
    fails("row-six mine.toml --client light.toml", 3, "light.toml");
    // A client for whom no plan would be made.
    fails("row-six mine.toml --client heavy.toml --size 440x400", 5, "150 kg");
    fails("row-six mine.toml --client swept.toml --size 440x400", 3, "swept.toml");
    fails("plugin:rings mine.toml --bodies bodies.csv", 2, "--size");
}

/// Where nobody sits on both, that is said, and no difference is made up.
#[test]
fn where_nobody_has_a_size_in_both_nothing_is_compared() {
    let none = "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n150,600,470\n";
    let dir = begun().with("none.csv", none);
    let report = compared(&dir, "row-six mine.toml --bodies none.csv");
    assert_eq!((list(&report, "measures").len(), list(&report, "pairs").len()), (0, 0));
    let said = dir.run(&["compare", "row-six", "mine.toml", "--bodies", "none.csv"]).done();
    assert!(said.contains("nothing is compared"), "{said}");
}
