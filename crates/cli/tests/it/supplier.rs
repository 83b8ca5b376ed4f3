//! What a supplier asks of a layout that is not built in: what can be made, over all sizes.

use serde_json::Value;

use crate::papers::texts;
use crate::runner::TestDir;

/// A layout as a new supplier begins it.
pub(crate) fn begun() -> TestDir {
    let dir = TestDir::new();
    dir.run(&["new", "layout", "mine.toml"]).done();
    dir
}

fn json(dir: &TestDir, words: &[&str]) -> Value {
    serde_json::from_str(&dir.run(&[words, &["--json"]].concat()).stdout).unwrap()
}

#[test]
fn what_can_be_made_is_listed_with_what_is_wrong() {
    let dir = begun().with("wrong.toml", "format = 1\nkind = \"layout\"\n");
    let told = dir.run(&["layouts", "mine.toml"]).done();
    let line = told.lines().find(|line| line.contains("mine.toml")).unwrap();
    let words: Vec<&str> = line.split_whitespace().collect();
    // Name, revision, digest, how many sizes, the least, the largest, ratings, title.
    assert_eq!(words[1], "1");
    assert_eq!(&words[3..7], ["2", "400x400", "440x400", "60-65"], "{line}");
    let listed = json(&dir, &["layouts", "mine.toml"]);
    let all = listed["layouts"].as_array().unwrap();
    let built_in = ["row-six", "island-eight", "curved-ten", "mine.toml"];
    let names: Vec<&str> = all.iter().map(|own| own["asked_as"].as_str().unwrap()).collect();
    assert_eq!(names, built_in);
    let mine = &all[3];
    assert_eq!(mine["layout_digest"], words[2]);
    assert_eq!((&mine["compartments"], &mine["revision"]), (&3.into(), &1.into()));
    assert_eq!(mine["sizes"][1]["max_user_weight_kg"], 65.0);
    // The digest is that by which the pattern's report knows it again.
    let pattern = json(&dir, &["pattern", "mine.toml", "--size", "440x400"]);
    assert_eq!(
        (&pattern["layout_digest"], &pattern["revision"]),
        (&mine["layout_digest"], &1.into())
    );
    let ran = dir.run(&["layouts", "wrong.toml", "mine.toml"]);
    assert_eq!(ran.code, Some(3));
    assert!(
        ran.stdout.contains("mine.toml") && ran.stderr.contains("wrong.toml"),
        "{}",
        ran.stderr
    );
}

#[test]
fn a_plugin_is_listed_without_sizes_or_with_what_it_wants() {
    let dir = TestDir::new();
    crate::plugins::leg_front(&dir);
    let plugin = ["--plugin", "libleg_front.so"];
    let listed = json(&dir, &[&["layouts"], &plugin[..]].concat());
    let all = listed["layouts"].as_array().unwrap();
    let own = all.iter().find(|own| own["asked_as"] == "plugin:leg-front").unwrap();
    assert_eq!((&own["layout"], &own["sizes"]), (&Value::Null, &Value::Array(Vec::new())));
    assert!(own["not_seen"].as_str().unwrap().contains("thigh-left"), "{own}");
    // It is no failure: it is there, and wants a client's measures.
    let (told, warned) = dir.run(&[&["layouts"], &plugin[..]].concat()).warned();
    assert!(told.contains("row-six") && warned.contains("plugin:leg-front"), "{told}{warned}");
    dir.run(&["layouts", "--set", "pitch=110"]).failed(2);
    let told = dir.run(&[&["range", "plugin:leg-front"], &plugin[..]].concat()).failed(2);
    assert!(told.contains("has no range"), "{told}");
}

#[test]
fn a_range_has_the_counts_of_every_pattern() {
    let dir = begun();
    let words = ["range", "mine.toml", "--csv", "mine.csv", "--sheet", "mine.svg"];
    let range = json(&dir, &words);
    let sizes = range["sizes"].as_array().unwrap();
    assert_eq!(sizes.len(), 2);
    for own in sizes {
        let size = own["size_mm"].as_str().unwrap();
        let pattern = json(&dir, &["pattern", "mine.toml", "--size", size]);
        for (one, other) in own["compartments"]
            .as_array()
            .unwrap()
            .iter()
            .zip(pattern["compartments"].as_array().unwrap())
        {
            assert_eq!((&one["id"], &one["cells"]), (&other["id"], &other["cells"]));
        }
        assert_eq!(
            (&own["seams"], &own["total"]["stock"]),
            (&pattern["seams"], &pattern["total_cells"])
        );
        // 0.8 g of film in each built-in cell.
        let grams = own["total"]["stock"].as_f64().unwrap() * 0.8;
        assert!((own["cells_g"].as_f64().unwrap() - grams).abs() < 1e-9);
    }
    let csv = dir.read("mine.csv");
    let lines: Vec<Vec<&str>> = csv.lines().map(|line| line.split(',').collect()).collect();
    assert!(lines.iter().all(|line| line.len() == lines[0].len()));
    let at = |head: &str| lines[0].iter().position(|own| *own == head).unwrap();
    assert_eq!(
        lines[2][at("cells_3_high")],
        sizes[1]["compartments"][2]["cells"]["high"].to_string()
    );
    assert_eq!(lines[2][at("max_user_weight_kg")], "65");
    // The page has them too, and so has the terminal.
    let page = texts(&dir.read("mine.svg"));
    let table = dir.run(&["range", "mine.toml"]).done();
    for own in sizes {
        for compartment in own["compartments"].as_array().unwrap() {
            let cells = &compartment["cells"];
            let told = format!("{} ({}-{})", cells["stock"], cells["low"], cells["high"]);
            assert!(page.contains(&told) && table.contains(&told), "{told}: {page:?}");
        }
    }
    assert!(page.iter().any(|text| text.contains(range["layout_digest"].as_str().unwrap())));
}

#[test]
fn a_range_that_cannot_be_made_is_refused_with_its_size() {
    let dir = begun();
    let text = dir.read("mine.toml").replace("\"400x400\"", "\"150x150\"");
    let text = text.replace("[\"0%\", \"55%\"]", "[\"0%\", \"5%\"]");
    let dir = dir.with("mine.toml", text);
    let told = dir.run(&["range", "mine.toml", "--csv", "mine.csv"]).failed(3);
    assert!(told.contains("150x150") || told.contains("compartment"), "{told}");
    assert!(!dir.names().contains(&"mine.csv".to_owned()));
}

#[test]
fn a_jump_is_flagged_everywhere() {
    let dir = begun();
    // The seam across stays where it is while the cushion doubles in depth.
    let text = dir.read("mine.toml").replace("\"440x400\"", "\"440x600\"");
    let text = text.replace("[\"0%\", \"55%\"]", "[\"0%\", \"200\"]").replace("\"200\"", "200");
    let text = text.replace("at = \"50%\"", "at = 200");
    let dir = dir.with("mine.toml", text);
    let range = json(&dir, &["range", "mine.toml", "--sheet", "mine.svg"]);
    let jumps = range["jumps"].as_array().unwrap();
    assert!(!jumps.is_empty(), "{range}");
    let jump = &jumps[0];
    let (is, expected) = (jump["is"].as_f64().unwrap(), jump["expected"].as_f64().unwrap());
    assert!((is - expected).abs() > 0.25 * expected - 0.5, "{jump}");
    let said = jump["text"].as_str().unwrap();
    let table = dir.run(&["range", "mine.toml"]).done();
    assert!(table.contains(said) && table.contains("! ("), "{table}");
    let page = texts(&dir.read("mine.svg"));
    assert!(page.iter().any(|text| text.contains("! (")), "{page:?}");
}

#[test]
fn the_revision_must_rise_where_a_count_changed_and_not_else() {
    let dir = begun();
    let text = dir.read("mine.toml");
    let higher = text.replace("wall_height = 80", "wall_height = 86");
    let raised = higher.replace("revision = 1", "revision = 2");
    let dir = dir.with("old.toml", &text).with("raised.toml", raised).with("higher.toml", higher);
    let other_words = text.replace("under the thigh", "under the leg");
    let dir = dir.with("words.toml", other_words);
    let check = |file: &str, old: &str| dir.run(&["check", file, "--against", old]);
    let told = check("higher.toml", "old.toml").failed(3);
    assert!(told.contains("the revision must rise") && told.contains("revision = 2"), "{told}");
    // It points at the line.
    assert!(told.contains("revision = 1"), "{told}");
    assert!(check("raised.toml", "old.toml").done().contains("from 1 to 2"));
    assert!(check("words.toml", "old.toml").done().contains("may stay"));
    let told = check("old.toml", "raised.toml").failed(3);
    assert!(told.contains("revision = 3"), "{told}");
    let ran = dir.run(&["check", "higher.toml", "--against", "old.toml", "--json"]);
    let report: Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(report["files"][0]["remarks"][0]["id"], "design-revision-must-rise");
    dir.run(&["check", "old.toml", "words.toml", "--against", "old.toml"]).failed(2);
    let told = dir.run(&["check", "old.toml", "--against", "nothing.toml"]).failed(2);
    assert!(told.contains("nothing.toml"), "{told}");
}

#[test]
fn the_revision_stands_on_papers() {
    let dir = begun();
    dir.run(&["print", "--stock", "mine.toml", "--size", "440x400", "--out", "p"]).done();
    let card = texts(&dir.read("p/my-layout-440x400-fill-card.svg"));
    assert!(card.iter().any(|text| text == "my-layout rev. 1"), "{card:?}");
    let digest = &json(&dir, &["layouts", "mine.toml"])["layouts"][3]["layout_digest"];
    assert!(card.iter().any(|text| text.contains(digest.as_str().unwrap())), "{card:?}");
}

#[test]
fn a_template_is_written_and_its_report_adds_up() {
    let dir = begun();
    let words = ["template", "mine.toml", "--size", "440x400", "--out", "t", "--allowance", "12"];
    let told = dir.run(&words).done();
    assert!(told.contains("An arc is longer than its chord"), "{told}");
    assert!(told.contains("Seam allowance 12 mm"), "{told}");
    let names = dir.names();
    for name in [
        "template.svg",
        "template.pdf",
        "template-tiles.pdf",
        "template-tiles-2.svg",
        "template.dxf",
    ] {
        assert!(names.contains(&format!("t/my-layout-440x400-{name}")), "{names:?}");
    }
    let report = json(&dir, &words);
    let pattern = json(&dir, &["pattern", "mine.toml", "--size", "440x400"]);
    let sum = |list: &Value, key: &str| -> f64 {
        list.as_array().unwrap().iter().map(|own| own[key].as_f64().unwrap()).sum()
    };
    let (walls, seams) =
        (sum(&report["template_seams"], "on_wall_mm"), sum(&pattern["seams"], "length_mm"));
    assert!((walls - seams).abs() < 0.05, "{walls} {seams}");
    // Each wall is a rectangle with 12 mm all around.
    let pieces = report["pieces"].as_array().unwrap();
    let first = &report["template_seams"][0];
    let area = (first["on_wall_mm"].as_f64().unwrap() + 24.0) * (80.0 + 24.0);
    let own = pieces.iter().find(|own| own["id"] == "wall-1").unwrap();
    assert!((own["cloth_mm2"].as_f64().unwrap() - area).abs() < 1.0, "{own} {area}");
    let stretch = json(&dir, &[&words[..], &["--stretch"]].concat());
    assert_eq!(stretch["ease_percent"], 0.0);
    let told =
        dir.run(&["template", "mine.toml", "--size", "440x400", "--out", "t", "--allowance", "50"]);
    assert!(told.failed(2).contains("between 0 and 40"));
    // A folder in which the layout lies is written into, but never over it.
    let told = dir.run(&["template", "nothing", "--size", "440x400", "--out", "t"]).failed(2);
    assert!(told.contains("nothing"), "{told}");
}

#[test]
fn parts_add_up_and_come_from_the_template() {
    let dir = begun();
    let words = ["parts", "mine.toml", "--size", "440x400", "--quantity", "30", "--csv", "p.csv"];
    let parts = json(&dir, &words);
    let lines = parts["parts"].as_array().unwrap();
    let of = |id: &str, key: &str| -> f64 {
        lines.iter().find(|own| own["id"] == id).unwrap()[key].as_f64().unwrap()
    };
    let template = json(&dir, &["template", "mine.toml", "--size", "440x400", "--out", "t"]);
    let mut sum = 0.0;
    for piece in template["pieces"].as_array().unwrap() {
        let area = piece["cloth_mm2"].as_f64().unwrap() / 100.0;
        sum += area;
        let own = of(piece["id"].as_str().unwrap(), "each");
        assert!((own - area).abs() < 0.001, "{piece}");
    }
    assert!((of("all-cloth", "each") - sum).abs() < 0.1);
    assert!((of("all-cloth", "in_all") - 30.0 * sum).abs() < 3.0);
    let pattern = json(&dir, &["pattern", "mine.toml", "--size", "440x400"]);
    let cells = pattern["total_cells"].as_f64().unwrap();
    assert_eq!((of("cells", "each"), of("cells", "in_all")), (cells, 30.0 * cells));
    assert_eq!(of("spare-cells", "each"), (cells * 0.05).ceil());
    assert_eq!(of("openings", "each"), 3.0);
    // Each wall is sewn along its upper and its lower edge and at both ends.
    let walls = template["template_seams"].as_array().unwrap();
    let along: f64 = walls.iter().map(|own| own["on_wall_mm"].as_f64().unwrap()).sum();
    let sewn = 2.0 * along + 2.0 * 80.0 * walls.len() as f64;
    assert!((of("seams", "each") * 1000.0 - sewn).abs() < 1.0, "{sewn}");
    let grams = |of: &Value, key: &str| of[key].as_f64().unwrap();
    let (all, cover, own) = (&parts["finished"], &parts["cover"], &parts["cells"]);
    let central = grams(cover, "grams") + grams(own, "grams");
    assert!((grams(all, "grams") - central).abs() < 0.01);
    assert!((grams(own, "grams") - 0.8 * cells).abs() < 0.01);
    assert!(grams(all, "low_grams") < central && central < grams(all, "high_grams"));
    // Cloth that was weighed leaves less unknown.
    let weighed = ["--top-cloth", "220", "--base-cloth", "350", "--wall-cloth", "150..170"];
    let known = json(&dir, &[&words[..], &weighed].concat());
    let range = |of: &Value| grams(of, "high_grams") - grams(of, "low_grams");
    assert!(range(&known["finished"]) < 0.8 * range(all), "{known}");
    let csv = dir.read("p.csv");
    assert!(csv.contains(&format!("cells,pieces,{cells},{}\n", 30.0 * cells)), "{csv}");
    let told = dir.run(&words).done();
    assert!(told.contains("30 cushions") && told.contains("from memory"), "{told}");
    for wrong in ["x", "0", "300..200", "nan"] {
        dir.run(&["parts", "mine.toml", "--size", "440x400", "--top-cloth", wrong]).failed(2);
    }
}

#[test]
fn the_fill_card_says_what_is_expected_of_the_finished_cushion() {
    let dir = begun();
    dir.run(&["print", "--stock", "mine.toml", "--size", "440x400", "--out", "p"]).done();
    let card = texts(&dir.read("p/my-layout-440x400-fill-card.svg")).join(" ");
    let parts = json(&dir, &["parts", "mine.toml", "--size", "440x400"]);
    let of = |key: &str| parts["finished"][key].as_f64().unwrap();
    let said = format!(
        "Expected then: {:.0} g ({:.0} to {:.0})",
        of("grams"),
        of("low_grams"),
        of("high_grams")
    );
    assert!(card.contains(&said), "{said}: {card}");
}

#[test]
fn a_stock_fill_is_weighed_by_a_batch_of_the_day() {
    let dir = begun();
    let batch = ["--batch", "50", "--grams", "40", "--division", "0.1"];
    let words = [&["weigh", "--stock", "mine.toml", "--size", "440x400"], &batch[..]].concat();
    let weighed = json(&dir, &words);
    let pattern = json(&dir, &["pattern", "mine.toml", "--size", "440x400"]);
    let counted = pattern["compartments"].as_array().unwrap();
    for (own, there) in weighed["compartments"].as_array().unwrap().iter().zip(counted) {
        assert_eq!((&own["number"], &own["cells"]), (&there["number"], &there["cells"]["stock"]));
        // 50 cells weigh 40 g.
        let grams = own["cells"].as_f64().unwrap() * 0.8;
        assert!((own["grams"].as_f64().unwrap() - grams).abs() < 0.001, "{own}");
    }
    assert_eq!((&weighed["client"], &weighed["layout"]), (&Value::Null, &"my-layout".into()));
    assert!(dir.run(&words).done().contains("layout my-layout, revision 1"));
    dir.run(&[&["weigh"], &batch[..]].concat()).failed(2);
    dir.run(&[&["weigh", "--stock", "mine.toml"], &batch[..]].concat()).failed(2);
}

#[test]
fn a_size_that_is_not_made_is_drawn_with_a_warning() {
    let dir = begun();
    for words in [
        &["template", "mine.toml", "--size", "430x400", "--out", "t"][..],
        &["parts", "mine.toml", "--size", "430x400"],
    ] {
        let (_, warned) = dir.run(words).warned();
        assert!(warned.contains("430 x 400") || warned.contains("430x400"), "{words:?}: {warned}");
        assert_eq!(json(&dir, words)["warnings"][0]["id"], "no-rating", "{words:?}");
    }
}
