//! Plugins as a user meets them: in C and in Rust, from a folder, from a copied program.

use std::path::{Path, PathBuf};
use std::process::Command;

use serde_json::Value;

use crate::papers::texts;
use crate::runner::{Ran, TestDir};

/// Builds C source into a library in a test's folder.
#[track_caller]
fn built(dir: &TestDir, name: &str, source: &str) -> PathBuf {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let (code, library) = (dir.path().join("plugin.c"), dir.path().join(name));
    std::fs::write(&code, source).unwrap();
    let status = Command::new("cc")
        .args(["-shared", "-fPIC", "-O1", "-w", "-o"])
        .args([&library, &code])
        .arg("-I")
        .arg(root.join("crates/plugin-abi/include"))
        .arg("-I")
        .arg(root.join("crates/plugin-host/tests/it/faults"))
        .status();
    assert!(status.expect("cc is there").success());
    std::fs::remove_file(code).unwrap();
    library
}

pub(crate) fn leg_front(dir: &TestDir) {
    let source = include_str!("../../../../plugins/leg-front/leg-front.c");
    built(dir, "libleg_front.so", source);
}

const PLUGIN: [&str; 2] = ["--plugin", "libleg_front.so"];

#[test]
fn a_plugins_layout_is_named_like_any_other() {
    let dir = TestDir::new();
    leg_front(&dir);
    let set = ["--set", "thigh-left=450", "--set", "thigh-right=410"];
    let words = ["pattern", "plugin:leg-front", "--size", "440x400", "--json"];
    let said = dir.run(&[&words[..], &PLUGIN[..], &set[..]].concat()).done();
    assert!(said.contains("\"id\": \"knee-right\""), "{said}");
    assert!(
        said.contains("\"drawn_by\": \"leg-front 1.0.0 (thigh-left 450 mm, thigh-right 410 mm)\""),
        "{said}"
    );
    let plain = ["pattern", "plugin:leg-front", "--size", "440x400"];
    let said = dir.run(&[&plain[..], &PLUGIN[..], &set[..]].concat()).done();
    let last = said.lines().last().unwrap();
    assert!(
        last.starts_with(
            "Drawn by the plugin leg-front 1.0.0 (thigh-left 450 mm, thigh-right 410 mm), layout "
        ),
        "{said}"
    );
    let shown = dir.run(&[&["plugin", "show", "leg-front"][..], &PLUGIN[..]].concat()).done();
    assert!(shown.starts_with("leg-front 1.0.0\n"), "{shown}");
    assert!(shown.contains("must be given or measured"), "{shown}");
    assert!(shown.contains("not from malice"), "{shown}");
}

#[test]
fn a_clients_measures_set_what_is_not_given() {
    let client = files::starter::example(words::ENGLISH)
        .replace("\"row-six\"", "\"plugin:leg-front\"")
        .replace("{ left = 480, right = 480 }", "{ left = 450, right = 410 }");
    let dir = TestDir::new().with("client.toml", client);
    leg_front(&dir);
    let record = ["plan", "client.toml", "--record", "--by", "OT"];
    let ran = dir.run(&[&record[..], &PLUGIN[..]].concat());
    assert_eq!(ran.code, Some(0), "{}", ran.stderr);
    assert!(
        dir.read("client.toml")
            .contains("drawn_by = \"leg-front 1.0.0 (thigh-left 450 mm, thigh-right 410 mm)\"")
    );
    let print = ["print", "client.toml", "--out", "papers"];
    let ran = dir.run(&[&print[..], &PLUGIN[..]].concat());
    assert_eq!(ran.code, Some(0), "{}", ran.stderr);
    // Plugin, version, parameters and digest stand on every sheet.
    let line = "Pattern drawn by the plugin leg-front 1.0.0 (thigh-left 450 mm, thigh-right 410 mm), layout ";
    let names = dir.names();
    let sheets: Vec<&String> = names.iter().filter(|name| name.ends_with(".svg")).collect();
    assert!(sheets.len() >= 5, "{names:?}");
    let whole = |name: &str| {
        let said = texts(&dir.read(name)).join(" ");
        assert!(said.contains(line), "{name}: {said}");
    };
    sheets.into_iter().for_each(|name| whole(name));
    let stock = ["print", "--stock", "plugin:leg-front", "--size", "440x400", "--out", "stock"];
    let set = ["--set", "thigh-left=450", "--set", "thigh-right=410"];
    dir.run(&[&stock[..], &PLUGIN[..], &set[..]].concat()).done();
    let names = dir.names();
    let stock: Vec<&String> =
        names.iter().filter(|name| name.starts_with("stock/") && name.ends_with(".svg")).collect();
    // The fill card, the tag and the sheet of tags.
    assert_eq!(stock.len(), 3, "{names:?}");
    stock.into_iter().for_each(|name| whole(name));
}

#[test]
fn what_must_be_measured_has_no_default() {
    let dir = TestDir::new();
    leg_front(&dir);
    let words = ["pattern", "plugin:leg-front", "--size", "440x400", "--svg", "a.svg"];
    let said = dir.run(&[&words[..], &PLUGIN[..]].concat()).failed(2);
    assert_eq!(
        said,
        "error: plugin `leg-front`: `thigh-left` (thigh depth on the client's left, measured) must be measured or given; no default is taken\n\
         hint: measure it, or give `thigh-left`; --set thigh-left=... gives it\n"
    );
    assert_eq!(dir.names(), ["libleg_front.so"]);
}

/// A client's file that lacks a measure is pointed at, where it names the plugin.
#[test]
fn a_measure_that_the_client_lacks_is_a_remark_on_the_file() {
    let client = files::starter::example(words::ENGLISH)
        .replace("\"row-six\"", "\"plugin:leg-front\"")
        .replace("{ left = 480, right = 480 }", "{ left = 450, right = 200 }");
    let dir = TestDir::new().with("client.toml", client);
    leg_front(&dir);
    for command in ["plan", "check"] {
        let said = dir.run(&[&[command, "client.toml"][..], &PLUGIN[..]].concat()).failed(3);
        assert!(said.contains("plugin `leg-front`: the shorter thigh leaves no room"), "{said}");
        assert!(said.contains("client.toml:"), "{said}");
    }
}

#[test]
fn a_client_with_a_plugin_is_checked_with_it() {
    let client =
        files::starter::example(words::ENGLISH).replace("\"row-six\"", "\"plugin:leg-front\"");
    let dir = TestDir::new().with("a.toml", &client).with("b.toml", client);
    leg_front(&dir);
    dir.run(&[&["check", "a.toml", "b.toml"][..], &PLUGIN[..]].concat()).done();
    built(
        &dir,
        "libleg_front.so",
        "#define NAME \"leg-front\"\n#define BEFORE abort()\n#include \"fault.h\"\n",
    );
    let said = dir.run(&[&["check", "a.toml"][..], &PLUGIN[..]].concat()).failed(4);
    assert!(said.contains("plugin `leg-front`: it crashed"), "{said}");
}

/// A name that nobody installed is the caller's mistake, not an author's.
#[test]
fn a_plugin_that_is_not_there_is_a_wrong_call() {
    let dir = TestDir::new();
    let said = dir.run(&["pattern", "plugin:nowhere", "--size", "440x400"]).failed(2);
    assert!(
        said.starts_with("error: plugin `nowhere`: no plugin of this name was found\n"),
        "{said}"
    );
    let said = dir.run(&["plugin", "check", "nowhere.so"]).failed(2);
    assert!(said.starts_with("error: plugin `nowhere.so`: there is no such file\n"), "{said}");
}

/// What lies in the folder where the program runs was not installed by anybody.
#[test]
fn plugins_of_the_current_folder_are_not_run() {
    let dir = TestDir::new();
    leg_front(&dir);
    std::fs::create_dir_all(dir.path().join("seatwright/plugins")).unwrap();
    let installed = dir.path().join("seatwright/plugins/libleg_front.so");
    std::fs::copy(dir.path().join("libleg_front.so"), installed).unwrap();
    let list = |data: &std::ffi::OsStr| {
        let mut command = dir.command(&["plugin", "list"]);
        command.env("SEATWRIGHT_PLUGINS", ".:").env("HOME", "").env("XDG_DATA_HOME", data);
        Ran::from(command.output().unwrap()).done()
    };
    assert!(!list("".as_ref()).contains("leg-front"));
    let listed = list(dir.path().as_os_str());
    assert!(listed.starts_with("leg-front            /"), "{listed}");
    assert!(listed.contains("None was run for this list"), "{listed}");
}

#[test]
fn a_wrong_answer_is_shown_with_its_places() {
    let dir = TestDir::new();
    built(&dir, "libfaulty.so", "#define SECOND \"\"\n#include \"fault.h\"\n");
    let ran = dir.run(&["plugin", "check", "libfaulty.so"]);
    assert_eq!(ran.code, Some(4), "{}", ran.stderr);
    assert!(ran.stdout.contains("440x400: WRONG: its layout is wrong: no compartment claims"));
    assert!(ran.stdout.contains("--> answer of the plugin faulty:"), "{}", ran.stdout);
}

#[test]
fn a_plugin_at_fault_is_exit_code_4_and_nothing_is_written() {
    for (before, sentence) in [
        ("#define BEFORE abort()", "it crashed"),
        ("#define ABI 9", "it was built for version 9"),
        ("#define WIDTH 400", "it was asked for 440x400 and answered for 400x400"),
    ] {
        let dir = TestDir::new();
        built(&dir, "libfaulty.so", &format!("{before}\n#include \"fault.h\"\n"));
        let words = ["pattern", "plugin:faulty", "--plugin", "libfaulty.so", "--size", "440x400"];
        let said = dir.run(&[&words[..], &["--svg", "a.svg"]].concat()).failed(4);
        assert!(said.contains(sentence), "{said}");
        assert_eq!(dir.names(), ["libfaulty.so"]);
        dir.run(&["plugin", "check", "libfaulty.so"]).code.filter(|code| *code == 4).unwrap();
    }
}

#[test]
fn a_copied_program_in_an_empty_folder_runs_installed_plugins() {
    let dir = TestDir::new();
    leg_front(&dir);
    let copy = dir.path().join("seatwright-copy");
    std::fs::copy(env!("CARGO_BIN_EXE_seatwright"), &copy).unwrap();
    let output = Command::new(&copy)
        .args(["plugin", "list"])
        .current_dir(dir.path())
        .env("SEATWRIGHT_PLUGINS", dir.path())
        .output();
    let said = Ran::from(output.unwrap()).done();
    assert!(said.contains("leg-front"), "{said}");
    let output = Command::new(&copy)
        .args(["pattern", "plugin:leg-front", "--size", "440x400"])
        .args(["--set", "thigh-left=450", "--set", "thigh-right=410"])
        .current_dir(dir.path())
        .env("SEATWRIGHT_PLUGINS", dir.path())
        .output();
    let said = Ran::from(output.unwrap()).done();
    assert!(said.contains("knee-right"), "{said}");
}

#[test]
fn the_plugin_template_builds_without_network_and_draws() {
    let dir = TestDir::new();
    dir.run(&["new", "plugin", "mine"]).done();
    dir.run(&["new", "plugin", "mine"]).failed(6);
    let folder = dir.path().join("mine");
    let built = Command::new(std::env::var_os("CARGO").unwrap_or("cargo".into()))
        .args(["build", "--offline", "--quiet"])
        .current_dir(&folder)
        .env("CARGO_TARGET_DIR", folder.join("target"))
        .output()
        .unwrap();
    assert!(built.status.success(), "{}", String::from_utf8_lossy(&built.stderr));
    let library = "mine/target/debug/libmy_plugin.so";
    let said = dir.run(&["plugin", "check", library]).done();
    assert!(said.contains("440x400: 3 compartments"), "{said}");
}

/// A setting that nothing takes is a wrong call, whatever the command, and nothing is written.
#[test]
fn a_setting_beside_a_layout_that_no_plugin_draws_is_refused() {
    let layout = include_str!("../../../../layouts/row-six.toml");
    let dir = TestDir::new().with("c.toml", crate::fitting::CLIENT).with("l.toml", layout);
    let dir = dir.with("o.csv", "layout,size,quantity\nrow-six,440x400,1\n").with("b.csv", BODIES);
    let before = dir.names();
    let given = "--set pitch=... away";
    for (words, said) in [
        (&["pattern", "row-six", "--size", "440x400", "--svg", "a.svg"][..], given),
        (&["pattern", "./l.toml", "--size", "440x400"], given),
        (&["size", "c.toml"], given),
        (&["plan", "c.toml", "--record", "--by", "OT"], given),
        (&["predict", "c.toml"], given),
        (&["adjust", "c.toml", "--top", "left=safe"], given),
        (&["weigh", "c.toml", "--batch", "50", "--grams", "40", "--division", "0.1"], given),
        (&["contour-test", "row-six", "--size", "440x400"], given),
        (&["print", "c.toml", "--out", "out"], given),
        (&["print", "--stock", "row-six", "--size", "440x400", "--out", "out"], given),
        (&["print", "--blank", "--out", "out"], "--set pitch=... sets nothing here"),
        (&["check", "c.toml"], given),
        (&["check", "l.toml"], "--set pitch=... sets nothing here"),
        (&["survey", "b.csv", "--layout", "row-six", "--out", "s.csv"], given),
        (&["compare", "row-six", "l.toml", "--bodies", "b.csv"], given),
        (&["order", "o.csv", "--out", "out"], given),
        (&["plugin", "list"], "--set pitch=... sets nothing here"),
        (&["plugin", "show", "rings"], "--set pitch=... sets nothing here"),
    ] {
        let ran = dir.run(&[words, &["--set", "pitch=110"]].concat());
        assert_eq!(ran.code, Some(2), "{words:?}: {}", ran.stderr);
        assert!(ran.stderr.contains(said), "{words:?}: {}", ran.stderr);
        assert!(ran.stderr.contains("only the layouts of plugins take settings"), "{words:?}");
        assert_eq!(dir.names(), before, "{words:?}");
    }
    assert_eq!(dir.read("c.toml"), crate::fitting::CLIENT);
}

/// The library of a plugin in Rust. Cargo puts it beside the test's program, or one folder up where
/// it was built by itself.
#[track_caller]
pub(crate) fn in_rust(name: &str) -> String {
    let program = std::env::current_exe().unwrap();
    let file = std::env::consts::DLL_PREFIX.to_owned() + name + std::env::consts::DLL_SUFFIX;
    let folders = program.ancestors().skip(1).take(2);
    let mut found = folders.map(|folder| folder.join(&file)).filter(|path| path.exists());
    let found = found.next().unwrap_or_else(|| panic!("{file} was not built"));
    found.to_str().unwrap().to_owned()
}

/// The example plugins: name, library, and what must be set.
fn examples(dir: &TestDir) -> [(&'static str, String, Vec<&'static str>); 3] {
    leg_front(dir);
    let legs = vec!["--set", "thigh-left=450", "--set", "thigh-right=430"];
    [
        ("leg-front", "libleg_front.so".to_owned(), legs),
        ("hexagons", in_rust("hexagons"), vec!["--set", "pitch=120"]),
        ("relief-rings", in_rust("relief_rings"), vec!["--set", "spacing=118"]),
    ]
}

/// A plugin's answer as a file is the same cushion as the plugin's, without the plugin.
#[test]
fn an_answer_that_is_written_is_the_same_layout() {
    let dir = TestDir::new();
    for (name, library, set) in examples(&dir) {
        for size in ["400x400", "16x15in"] {
            let (file, of) = (format!("{name}-{size}.toml"), format!("plugin:{name}"));
            let with = [&["--plugin", &library][..], &set].concat();
            let draw = ["plugin", "draw", name, "--size", size, "--out", &file];
            let told = dir.run(&[&draw[..], &with].concat()).done();
            let pattern = |words: &[&str]| -> Value {
                let words = [words, &["--size", size, "--json"]].concat();
                serde_json::from_str(&dir.run(&words).stdout).unwrap()
            };
            let drawn = pattern(&[&["pattern", of.as_str()][..], &with].concat());
            let mut written = pattern(&["pattern", &file]);
            let digest = written["layout_digest"].as_str().unwrap().to_owned();
            assert!(told.contains(&digest) && told.contains(name), "{told}");
            // Everything but by whom it is drawn, to the last digit.
            assert_ne!(written["drawn_by"], drawn["drawn_by"]);
            written["drawn_by"] = drawn["drawn_by"].clone();
            written["warnings"] = drawn["warnings"].clone();
            assert_eq!(written, drawn, "{name} at {size}");
            // It is a layout like any other.
            assert_eq!(dir.run(&["check", &file]).code, Some(0));
            let range = dir.run(&["range", &file, "--json"]);
            let range: Value = serde_json::from_str(&range.stdout).unwrap();
            assert_eq!(range["sizes"].as_array().unwrap().len(), 1);
            assert_eq!(range["layout_digest"].as_str().unwrap(), digest);
        }
    }
}

#[test]
fn an_answer_is_never_written_over_anything_and_nothing_is_written_of_a_wrong_one() {
    let dir = TestDir::new().with("mine.toml", "format = 1");
    leg_front(&dir);
    let before = dir.names();
    let legs = ["--set", "thigh-left=450", "--set", "thigh-right=430"];
    let draw = |out: &str, set: &[&str]| {
        let words = ["plugin", "draw", "leg-front", "--size", "440x400", "--out", out];
        dir.run(&[&words[..], &PLUGIN[..], set].concat())
    };
    let told = draw("mine.toml", &legs).failed(6);
    assert!(told.contains("mine.toml"), "{told}");
    assert_eq!(dir.read("mine.toml"), "format = 1");
    assert!(draw("legs.svg", &legs).failed(2).contains("legs.toml"));
    draw("nowhere/legs.toml", &legs).failed(6);
    assert!(draw("legs.toml", &[]).failed(2).contains("must be measured or given"));
    assert!(draw("legs.toml", &["--set", "pitch=3"]).failed(2).contains("pitch"));
    let short = ["--set", "thigh-left=460", "--set", "thigh-right=200"];
    assert_ne!(draw("legs.toml", &short).code, Some(0));
    assert_eq!(dir.names(), before);
}

/// Two bodies whom the smaller and the larger size suit, and one whom none does.
const BODIES: &str = "mass_kg,hip_breadth_sitting_mm,buttock_popliteal_mm\n\
    50,345,455\n54,420,460\n160,600,470\n";

#[test]
fn a_plugins_layout_is_surveyed_as_its_answers_are() {
    let dir = TestDir::new().with("bodies.csv", BODIES);
    let (_, hexagons, _) = &examples(&dir)[1];
    let with = ["--plugin", hexagons.as_str()];
    let survey = ["survey", "bodies.csv", "--layout", "plugin:hexagons", "--out", "s.csv"];
    let sizes = ["--size", "400x400", "--size", "440x400"];
    dir.run(&[&survey[..], &sizes, &with].concat()).done();
    let rows = |name: &str| -> Vec<Vec<String>> {
        let text = dir.read(name);
        text.lines().skip(1).map(|own| own.split(',').map(str::to_owned).collect()).collect()
    };
    let all = rows("s.csv");
    let found: Vec<&str> = all.iter().map(|row| row[5].as_str()).collect();
    assert_eq!(found[2], "no size");
    let taken: Vec<&str> = all.iter().map(|row| row[7].as_str()).collect();
    assert_eq!(taken, ["400x400", "440x400", ""], "{all:?}");
    // The order of the sizes changes nothing.
    let turned = ["--size", "440x400", "--size", "400x400"];
    let other = ["survey", "bodies.csv", "--layout", "plugin:hexagons", "--out", "t.csv"];
    dir.run(&[&other[..], &turned, &with].concat()).done();
    assert_eq!(dir.read("t.csv"), dir.read("s.csv"));
    // Each body is planned as on the answer in a file, by which the plugin is not needed.
    for (row, size) in all.iter().zip(["400x400", "440x400"]) {
        let file = format!("{size}.toml");
        let draw = ["plugin", "draw", "hexagons", "--size", size, "--out", &file];
        dir.run(&[&draw[..], &with].concat()).done();
        dir.run(&["survey", "bodies.csv", "--layout", &file, "--out", "own.csv"]).done();
        let own = rows("own.csv");
        let same = own.iter().find(|own| own[0] == row[0]).unwrap();
        assert_eq!(same[..19], row[..19], "{size}");
    }
    // Another parameter is another survey: what was done of this one is not gone on with.
    let part = ["--shard", "1/2"];
    dir.run(&[&survey[..], &sizes, &with, &part, &["--set", "pitch=130"]].concat()).done();
    assert_ne!(rows("s.csv")[0][19], all[0][19]);
}

/// A plugin's layout is compared as its answer in a file is: the two do not differ. Settings are the
/// plugin's alone.
#[test]
fn a_plugins_layout_is_compared_as_its_answer_is() {
    let dir = TestDir::new().with("bodies.csv", BODIES);
    let (_, hexagons, _) = &examples(&dir)[1];
    let with = ["--plugin", hexagons.as_str(), "--size", "400x400"];
    dir.run(&[&["plugin", "draw", "hexagons", "--out", "own.toml"], &with[..]].concat()).done();
    let compare = |first: &str, more: &[&str]| -> Value {
        let words = ["compare", first, "plugin:hexagons", "--bodies", "bodies.csv", "--json"];
        serde_json::from_str(&dir.run(&[&words, &with[..], more].concat()).done()).unwrap()
    };
    let same = compare("own.toml", &[]);
    let measures = same["measures"].as_array().unwrap();
    assert!(!measures.is_empty() && measures.iter().all(|own| own["difference"][1] == 0.0));
    let set = compare("row-six", &["--set", "pitch=100"]);
    assert_ne!(set["b"]["layout_digest"], same["b"]["layout_digest"]);
}

#[test]
fn a_survey_asks_a_plugin_for_sizes_and_a_layout_for_none() {
    let dir = TestDir::new().with("bodies.csv", BODIES);
    leg_front(&dir);
    let before = dir.names();
    let survey = |layout: &str, words: &[&str]| {
        let all = ["survey", "bodies.csv", "--layout", layout, "--out", "s.csv"];
        dir.run(&[&all[..], &PLUGIN[..], words].concat())
    };
    let told = survey("plugin:leg-front", &[]).failed(2);
    assert!(told.contains("--size 400x400"), "{told}");
    let told = survey("row-six", &["--size", "440x400"]).failed(2);
    assert!(told.contains("take --size away"), "{told}");
    let twice = ["--size", "440x400", "--size", "440x400mm"];
    assert!(survey("plugin:leg-front", &twice).failed(2).contains("named twice"));
    let told = survey("plugin:leg-front", &["--size", "440x400"]).failed(2);
    assert!(told.contains("--set thigh-left=..."), "{told}");
    assert!(survey("row-six", &["--set", "pitch=110"]).failed(2).contains("pitch"));
    assert_eq!(dir.names(), before);
}
