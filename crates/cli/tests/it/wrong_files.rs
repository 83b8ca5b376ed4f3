//! Wrong files: each mistake gets its sentence, its place and its exit code, and nothing is
//! written.

use std::fs::File;

use crate::runner::TestDir;

/// A layout that is right.
const LAYOUT: &str = include_str!("data/layout.toml");
/// A client that is right, and sits on that layout.
const CLIENT: &str = include_str!("data/client.toml");

/// Which of the two files a mistake is made in.
#[derive(Clone, Copy)]
enum In {
    Layout,
    Client,
}

/// A folder with both files, one of them changed in one place.
#[track_caller]
fn changed(file: In, from: &str, to: &str) -> TestDir {
    let change = |text: &str| {
        assert_eq!(text.matches(from).count(), 1, "`{from}` is there once");
        text.replacen(from, to, 1)
    };
    let (layout, client) = match file {
        In::Layout => (change(LAYOUT), CLIENT.to_owned()),
        In::Client => (LAYOUT.to_owned(), change(CLIENT)),
    };
    TestDir::new().with("layout.toml", layout).with("client.toml", client)
}

/// Makes one mistake; `check`, and `plan` or `pattern`, must say the expected words first.
#[track_caller]
fn check(file: In, from: &str, to: &str, expected: &str) {
    let dir = changed(file, from, to);
    let before = dir.names();
    let calls: [&[&str]; 2] = match file {
        In::Layout => [&["check", "layout.toml"], &["pattern", "layout.toml", "--size", "400x400"]],
        In::Client => {
            [&["check", "client.toml"], &["plan", "client.toml", "--record", "--by", "OT"]]
        }
    };
    let client = dir.read("client.toml");
    for words in calls {
        let said = dir.run(words).failed(3);
        assert!(said.starts_with(expected), "{words:?} said:\n{said}\nand not:\n{expected}");
    }
    assert_eq!(dir.names(), before);
    assert_eq!(dir.read("client.toml"), client);
}

#[test]
fn keys_that_are_missing_or_doubled() {
    check(
        In::Client,
        "size = \"440x400\"\n",
        "",
        "error: the key `size` is missing
  --> client.toml:23:1
   |
23 | [cushion]
   | ^^^^^^^^^
   |
hint: add `size = ...`
",
    );
    check(
        In::Client,
        "kg = 68.5",
        "kg = 68.5\nkg = 70",
        "error: this key is written twice
  --> client.toml:16:1
   |
16 | kg = 70
   | ^^
   |
hint: keep one of the two
",
    );
}

#[test]
fn keys_that_are_unknown_or_misspelt() {
    check(
        In::Client,
        "base = \"solid\"",
        "color = \"red\"",
        "error: unknown key `color`
  --> client.toml:21:1
   |
21 | color = \"red\"
   | ^^^^^
   |
hint: ",
    );
    check(
        In::Layout,
        "wall_height = 80",
        "wall_hight = 80",
        "error: unknown key `wall_hight`
 --> layout.toml:8:1
",
    );
    check(
        In::Client,
        "hip_width = 395",
        "hipwidth = 395",
        "error: unknown key `hipwidth`
  --> client.toml:10:1
   |
10 | hipwidth = 395
   | ^^^^^^^^
   |
hint: did you mean `hip_width`?
",
    );
}

#[test]
fn numbers_that_are_negative_nan_infinite_or_absurd() {
    let weight = |number: &str, sentence: &str, hint: &str| {
        let line = format!("kg = {number}");
        let marks = "^".repeat(number.len());
        let expected = format!(
            "error: {sentence}\n  --> client.toml:15:6\n   |\n15 | {line}\n   |      {marks}\n   |\nhint: {hint}\n"
        );
        check(In::Client, "kg = 68.5", &line, &expected);
    };
    let range = "it lies between 5 and 350 kg";
    weight("-68.5", "a body weight of -68.5 kg cannot be right", range);
    weight("0", "a body weight of 0 kg cannot be right", range);
    weight("1e9", "a body weight of 1000000000 kg cannot be right", range);
    weight("nan", "this is not a finite number", "write a number");
    weight("-inf", "this is not a finite number", "write a number");
    weight(
        "\"68.5\"",
        "`68.5` is a text, not a number",
        "write 68.5, without unit, comma or quotes",
    );
    check(
        In::Client,
        "size = \"440x400\"",
        "size = \"4000x400\"",
        "error: 4000 x 400 mm is no cushion: width and depth lie between 150 and 800 mm
  --> client.toml:25:8
",
    );
}

#[test]
fn units_that_are_mixed_up() {
    check(
        In::Client,
        "hip_width = 395",
        "hip_width = 39.5",
        "error: 39.5 mm cannot be the hip width
  --> client.toml:10:13
   |
10 | hip_width = 39.5
   |             ^^^^
   |
hint: this looks like centimetres; write millimetres
",
    );
    check(In::Client, "\"mm\"", "\"in\"", "error: 395 in cannot be the hip width\n");
    check(In::Client, "\"mm\"", "\"cm\"", "error: `cm` is not a unit for measures\n");
    check(In::Client, "weighed_on = 2026-02-10", "weighed_on = \"10.2.2026\"", "error: ");
}

#[test]
fn a_name_in_place_of_a_code() {
    check(
        In::Client,
        "client = \"K-17\"",
        "client = \"Anna\"",
        "error: `Anna` is not a code for a client
 --> client.toml:4:10
",
    );
}

#[test]
fn wishes_that_the_pattern_cannot_have() {
    check(
        In::Client,
        "\"pelvis-left\"",
        "\"pelvis-lft\"",
        "error: the pattern has no such compartment
  --> client.toml:30:15
   |
30 | compartment = \"pelvis-lft\"
   |               ^^^^^^^^^^^^
   |
hint: this pattern has `pelvis-left`, `pelvis-right`, `thigh-left`, `thigh-right`
",
    );
    check(
        In::Client,
        "cells = +6",
        "cells = +600",
        "error: 711 cells are more than twice the 111 of the stock fill
  --> client.toml:30:15
",
    );
}

#[test]
fn files_that_a_client_names_and_that_are_not_there() {
    check(
        In::Client,
        "layout = \"layout.toml\"",
        "layout = \"nowhere.toml\"",
        "error: there is no file `nowhere.toml`
  --> client.toml:24:10
   |
24 | layout = \"nowhere.toml\"
   |          ^^^^^^^^^^^^^^
",
    );
    check(
        In::Client,
        "cell = \"pillow-25\"",
        "cell = \"pilow\"",
        "error: no cell is called `pilow`
  --> client.toml:26:8
",
    );
}

#[test]
fn compartments_that_do_not_close_and_seams_that_cross_or_end_nowhere() {
    check(
        In::Layout,
        "through = [\"rear\", \"rear-corner\", \"front-corner\", \"front\"]",
        "through = [\"rear\", \"rear-corner\", \"front-corner\"]",
        "error: ",
    );
    check(
        In::Layout,
        "[\"mid\", \"side\"], bow",
        "[\"mid\", \"inside\"], bow",
        "error: no point is called `inside`
  --> layout.toml:27:1
",
    );
    check(
        In::Layout,
        "side         = { on = \"outline\", from = \"rear-corner\", to = \"front-corner\", at = \"55%\" }",
        "side         = [\"40%\", \"55%\"]",
        "error: this seam ends at `side`, where no other seam is (at 400x400",
    );
    check(
        In::Layout,
        "[compartments]",
        "extra = { through = [\"rear-corner\", \"front\"] }\n\n[compartments]",
        "error: this seam meets the seam `across` near x 77, y 243 mm, where they share no point (at 400x400",
    );
    check(In::Layout, "[\"25%\", \"80%\"]", "[\"25%\", \"20%\"]", "error: ");
}

#[test]
fn three_mistakes_are_three_remarks() {
    let text = LAYOUT
        .replace("class = \"skin protection\"", "class = \"skin\"")
        .replace("\"30%\"", "\"30 per cent\"")
        .replace("bow = \"6%\"", "bend = \"6%\"");
    let dir = TestDir::new().with("layout.toml", text);
    let said = dir.run(&["check", "layout.toml"]).failed(3);
    assert!(said.ends_with("cannot be used: 3 errors\n"), "{said}");
    for place in ["layout.toml:6:9", "layout.toml:27:40", "layout.toml:30:27"] {
        assert!(said.contains(place), "{place} is not in: {said}");
    }
}

#[test]
fn a_client_too_heavy_is_not_safely_possible() {
    let dir = changed(In::Client, "kg = 68.5", "kg = 98.5");
    assert_eq!(
        dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).failed(5),
        "error: not safely possible: the client weighs 98.5 kg and this cushion is rated for 90 kg\n\
         hint: take a size or a layout that is rated for this client\n"
    );
    assert_eq!(dir.read("client.toml"), CLIENT.replace("kg = 68.5", "kg = 98.5"));
    // The file as such is right.
    let (_, said) = dir.run(&["check", "client.toml"]).warned();
    assert!(said.contains("client.toml:15:6"), "{said}");
}

#[test]
fn a_file_that_is_not_there_is_a_wrong_call() {
    for words in [
        &["check", "no.toml"][..],
        &["plan", "no.toml"],
        &["pattern", "no.toml", "--size", "400x400"],
    ] {
        assert_eq!(TestDir::new().run(words).failed(2), "error: there is no file `no.toml`\n");
    }
    assert_eq!(
        TestDir::new().run(&["pattern", "row-sics", "--size", "400x400"]).failed(2),
        "error: no layout is called `row-sics`\n\
         hint: built in: `row-six`, `island-eight`, `curved-ten`; or give the path of a layout file\n"
    );
    let dir = TestDir::new();
    assert_eq!(dir.run(&["check", "."]).failed(2), "error: `.` is a folder, not a file\n");
}

#[test]
fn bytes_that_are_not_text_are_told_with_their_line() {
    let dir = TestDir::new().with("client.toml", b"format = 1\nclient = \"K\xE4-17\"\n");
    for words in [&["check", "client.toml"][..], &["plan", "client.toml"]] {
        assert_eq!(
            dir.run(words).failed(3),
            "error: `client.toml` is not UTF-8 text: line 2 has the byte 0xE4, which does not belong there\n\
             hint: save the file as UTF-8 in your text editor\n"
        );
    }
}

#[test]
fn a_hundred_megabytes_are_not_read() {
    let dir = TestDir::new();
    // A file with a hole takes no room on the disk.
    File::create(dir.path().join("big.toml")).unwrap().set_len(100_000_000).unwrap();
    for words in [&["check", "big.toml"][..], &["plan", "big.toml"]] {
        assert_eq!(
            dir.run(words).failed(3),
            "error: `big.toml` is larger than 1 MB, so it was not read\n\
             hint: layout, cell and client files have a few thousand bytes; is this the right file?\n"
        );
    }
}

/// What has no length, such as a device, is not read without end either.
#[cfg(unix)]
#[test]
fn a_device_is_not_read_without_end() {
    let said = TestDir::new().run(&["check", "/dev/zero"]).failed(2);
    assert!(said.starts_with("error: `/dev/zero` is no ordinary file"), "{said}");
}

#[test]
fn failures_are_told_in_json_where_asked() {
    let dir = changed(In::Client, "kg = 68.5", "kg = nan");
    let ran = dir.run(&["plan", "client.toml", "--json"]);
    assert_eq!((ran.code, &*ran.stderr), (Some(3), ""));
    let said: serde_json::Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(said["schema"], 1);
    assert_eq!(said["estimate"], true);
    assert_eq!(said["error"]["kind"], "wrong file");
    assert_eq!(said["error"]["remarks"][0]["line"], 15);
    let ran = TestDir::new().run(&["pattern", "--json"]);
    assert_eq!((ran.code, &*ran.stderr), (Some(2), ""));
    let said: serde_json::Value = serde_json::from_str(&ran.stdout).unwrap();
    assert_eq!(said["error"]["kind"], "wrong call");
}

#[test]
fn a_refused_layout_is_drawn_with_a_ring_around_what_is_wrong() {
    // A seam that crosses another at one place, which both the remark and the ring know.
    let text = LAYOUT.replace(
        "[compartments]",
        "extra = { through = [\"rear-corner\", \"front\"] }\n\n[compartments]",
    );
    let dir = TestDir::new().with("layout.toml", text);
    let said =
        dir.run(&["pattern", "./layout.toml", "--size", "400x400", "--svg", "drawn.svg"]).failed(3);
    assert!(said.contains("meets the seam `across` near x 77, y 243 mm"), "{said}");
    let drawn = dir.read("drawn.svg");
    let texts = crate::papers::texts(&drawn);
    let edges = ["FRONT EDGE (knees)", "REAR EDGE (back)", "CLIENT'S LEFT", "CLIENT'S RIGHT"];
    assert_eq!(texts[..4], edges);
    assert_eq!(texts[4..], ["1"]);
    assert!(drawn.contains("with 1 ring around what is wrong"), "{drawn}");
    // A layout that can be drawn nowhere is drawn too, with the seams that there are.
    let text = LAYOUT.replace("[\"mid\", \"side\"], bow", "[\"mid\", \"inside\"], bow");
    let dir = TestDir::new().with("layout.toml", text);
    dir.run(&["pattern", "./layout.toml", "--size", "400x400", "--svg", "drawn.svg"]).failed(3);
    assert!(dir.read("drawn.svg").contains("<path"));
}
