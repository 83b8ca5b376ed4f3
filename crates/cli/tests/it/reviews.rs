//! Reviews of layouts: what they find, and that they agree with what other commands say.

use serde_json::Value;

use crate::papers::texts;
use crate::runner::TestDir;
use crate::supplier_day::layout;

/// Bodies of both sexes, some of whom suit the smaller of two sizes and some the larger.
fn bodies() -> String {
    let head = "sex,mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n";
    let row = |at: usize| {
        let (sex, hips) = if at.is_multiple_of(2) { ("F", 345) } else { ("M", 390) };
        format!("{sex},{},{hips},460\n", 46 + at)
    };
    head.to_owned() + &(0..8).map(row).collect::<String>() + "M,150,600,470\n"
}

fn begun() -> TestDir {
    TestDir::new().with("bodies.csv", bodies()).with("mine.toml", layout())
}

const WORDS: [&str; 4] = ["review", "mine.toml", "--bodies", "bodies.csv"];

#[track_caller]
fn json(dir: &TestDir, words: &[&str]) -> Value {
    let ran = dir.run(&[words, &["--json"]].concat());
    assert_eq!(ran.code, Some(0), "{words:?}: {}{}", ran.stdout, ran.stderr);
    serde_json::from_str(&ran.stdout).unwrap()
}

fn list<'v>(of: &'v Value, key: &str) -> &'v Vec<Value> {
    of[key].as_array().unwrap_or_else(|| panic!("{key}: {of}"))
}

/// The bodies that a size suits, and how they sit, are those of a survey where it changes nothing.
#[test]
fn a_review_agrees_with_a_survey_of_the_same_bodies() {
    let dir = begun();
    let review = json(&dir, &WORDS);
    let survey = ["survey", "bodies.csv", "--layout", "mine.toml", "--out", "s.csv"];
    dir.run(&survey).done();
    let text = dir.read("s.csv");
    let rows: Vec<Vec<&str>> = text.lines().skip(1).map(|line| line.split(',').collect()).collect();
    let sized = rows.iter().filter(|row| !row[7].is_empty()).count();
    assert_eq!((&review["bodies"], &review["suited"]), (&9.into(), &sized.into()));
    let mut compared = 0;
    for size in list(&review, "sizes") {
        let own: Vec<_> = rows.iter().filter(|row| row[7] == size["size_mm"]).collect();
        assert_eq!(size["suits"], own.len());
        let women = own.iter().filter(|row| row[1] == "F").count() as f64;
        let share = size["seat_bones"]["share_of_women"].as_f64().unwrap();
        assert!(own.is_empty() || (share - women / own.len() as f64).abs() < 1e-3, "{size}");
        for seat in list(size, "seats") {
            let kg = seat["kg"].as_f64().unwrap();
            let row = own.iter().find(|row| row[2].parse::<f64>().unwrap() == kg).unwrap();
            // A plan that changes no cell is the stock fill.
            if row[9] == "0" {
                let both = [row[10], row[12]].map(|own| own.parse::<f64>().unwrap());
                let left = seat["left_mm"].as_f64().unwrap();
                // The survey writes tenths.
                assert!((left - both[0].min(both[1])).abs() <= 0.06, "{seat} {row:?}");
                compared += 1;
            }
        }
    }
    assert!(compared > 1, "{review}");
}

#[test]
fn the_numbers_of_a_review_are_those_of_the_layout() {
    let dir = begun();
    let review = json(&dir, &WORDS);
    let mut lifting = 0;
    for size in list(&review, "sizes") {
        let at = size["size_mm"].as_str().unwrap();
        let pattern = json(&dir, &["pattern", "mine.toml", "--size", at]);
        let template = json(&dir, &["template", "mine.toml", "--size", at, "--out", "t"]);
        let openings = list(&template, "openings");
        for (own, there) in list(size, "compartments").iter().zip(list(&pattern, "compartments")) {
            assert_eq!((&own["id"], &own["stock"]), (&there["id"], &there["cells"]["stock"]));
            let opening = openings.iter().find(|it| it["number"] == own["number"]).unwrap();
            assert_eq!(own["opening_mm"], opening["length_mm"]);
        }
        // More cells under one seat bone raise it, and do more there than at the other.
        for own in list(size, "compartments").iter().filter(|own| own["purpose"] == "seat bone") {
            let cell = &own["one_cell"];
            if cell.is_null() {
                continue;
            }
            let of = |key: &str| cell[key].as_f64().unwrap();
            let left = own["id"].as_str().unwrap().ends_with("left");
            let (here, other) = (of("under_left_mm"), of("under_right_mm"));
            let (here, other) = if left { (here, other) } else { (other, here) };
            assert!(here > other && cell["lifts_mm"].as_f64().unwrap() > 0.0, "{own}");
            lifting += 1;
        }
        let bones = &size["seat_bones"];
        let apart: Vec<f64> =
            list(bones, "apart_mm").iter().map(|own| own.as_f64().unwrap()).collect();
        assert!(apart[0] < apart[1] && apart[1] < apart[2], "{bones}");
    }
    assert!(lifting > 1, "{review}");
}

/// Whatever is found stands in the answer, in the report and on the page, with what to do.
#[test]
fn what_is_found_is_told_everywhere() {
    let dir = begun();
    // A layout whose count jumps, since a seam stays while the cushion doubles in depth.
    let text = dir.read("mine.toml").replace("\"440x400\"", "\"440x600\"");
    let text =
        text.replace("[\"0%\", \"60%\"]", "[\"0%\", 200]").replace("at = \"55%\"", "at = 200");
    let dir = dir.with("mine.toml", text);
    let sheet = ["--sheet", "review.svg", "--sheet", "review.pdf"];
    let review = json(&dir, &[&WORDS[..], &sheet].concat());
    let ids: Vec<&str> =
        list(&review, "findings").iter().map(|own| own["id"].as_str().unwrap()).collect();
    assert!(ids.contains(&"jumps"), "{ids:?}");
    let ran = dir.run(&WORDS);
    assert_eq!(ran.code, Some(0), "{}", ran.stderr);
    let pages: Vec<String> =
        dir.names().into_iter().filter(|name| name.ends_with(".svg")).collect();
    let page: String =
        pages.iter().flat_map(|name| texts(&dir.read(name))).collect::<Vec<_>>().join(" ");
    let plain = |text: &str| text.replace(['\u{a0}', ' '], "");
    for finding in list(&review, "findings") {
        for key in ["text", "remedy"] {
            let said = finding[key].as_str().unwrap();
            assert!(ran.stdout.contains(said), "{said}: {}", ran.stdout);
            assert!(plain(&page).contains(&plain(said)), "{said}: {page}");
        }
        assert!(list(finding, "sizes_mm").contains(&finding["size_mm"]), "{finding}");
    }
    // Sources are named, and that it is an estimate.
    for said in ["Velagapudi and Ray, 2019", "ESTIMATE", "no measured cushion"] {
        assert!(page.contains(said), "{said}");
    }
    assert!(ran.stdout.contains("Velagapudi and Ray, 2019"), "{}", ran.stdout);
}

#[test]
fn what_cannot_be_reviewed_is_refused_and_nothing_is_written() {
    let dir = begun().with("wrong.csv", "mass_kg,hip_breadth_sitting_mm\n70,380\n");
    let dir = dir.with("nan.csv", bodies().replace("46", "nan"));
    let before = dir.names();
    let review = |words: &[&str]| dir.run(&[&["review"], words, &["--sheet", "r.pdf"]].concat());
    assert!(
        review(&["mine.toml", "--bodies", "wrong.csv"]).failed(3).contains("buttock_popliteal_mm")
    );
    assert!(review(&["mine.toml", "--bodies", "nan.csv"]).failed(3).contains("line 2"));
    assert!(review(&["plugin:rings", "--bodies", "bodies.csv"]).failed(2).contains("plugin draw"));
    review(&["nothing.toml", "--bodies", "bodies.csv"]).failed(2);
    let over = dir.run(&[&WORDS[..], &["--sheet", "bodies.csv"]].concat());
    over.failed(2);
    assert_eq!(dir.names(), before);
}
