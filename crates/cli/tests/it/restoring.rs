//! A client's file made anew from a paper: by the text of its code, and by the PDF.

use std::sync::OnceLock;

use crate::fitting::CLIENT;
use crate::runner::TestDir;

/// A setup card as a PDF, of a cushion with the serial SW-0142.
pub(crate) fn card() -> &'static [u8] {
    static CARD: OnceLock<Vec<u8>> = OnceLock::new();
    CARD.get_or_init(|| pdf(&papers(&[]), "setup-card.pdf"))
}

/// The text of the code on it.
pub(crate) fn code() -> String {
    sheets::attached_code(card()).unwrap()
}

/// A client's papers after a plan.
fn papers(options: &[&str]) -> TestDir {
    let client = CLIENT.replace("[cushion]\n", "[cushion]\nserial = \"SW-0142\"\n");
    let dir = TestDir::new().with("K-17.toml", client);
    dir.run(&["plan", "K-17.toml", "--record", "--by", "OT"]);
    let print = ["print", "K-17.toml", "--out", "papers"];
    assert_eq!(dir.run(&[&print[..], options].concat()).code, Some(0));
    dir
}

fn pdf(dir: &TestDir, which: &str) -> Vec<u8> {
    let names = dir.names();
    let name = names.iter().find(|name| name.ends_with(which)).unwrap();
    dir.bytes(name).unwrap()
}

/// The counts of the last entry of a record, by number.
fn counts(text: &str) -> Vec<(String, String)> {
    let last = text.rsplit("[[record]]").next().unwrap();
    let words = |key: &str| -> Vec<String> {
        let after = last.split(key).skip(1);
        after.map(|own| own.chars().take_while(char::is_ascii_digit).collect()).collect()
    };
    let cells = if last.contains("planned = ") { "planned = " } else { "cells = " };
    words("number = ").into_iter().zip(words(cells)).collect()
}

#[test]
fn text_and_pdf_bring_the_same_counts_back() {
    let before = papers(&[]);
    let planned = counts(&before.read("K-17.toml"));
    assert_eq!(planned.len(), 6);
    let dir = TestDir::new()
        .with("card.pdf", pdf(&before, "setup-card.pdf"))
        .with("sheet.pdf", pdf(&before, "take-home.pdf"));
    for (from, out) in
        [(code().as_str(), "a.toml"), ("card.pdf", "b.toml"), ("sheet.pdf", "c.toml")]
    {
        let ran = dir.run(&["restore", from, "--out", out, "--serial", "SW-0142"]);
        assert_eq!(ran.code, Some(0), "{}", ran.stderr);
        assert!(ran.stderr.contains("ESTIMATE until hands have checked"), "{}", ran.stderr);
        assert_eq!(counts(&dir.read(out)), planned, "{out}");
        assert_eq!(dir.read(out), dir.read("a.toml"));
    }
}

#[test]
fn a_restored_file_says_what_is_missing_and_is_an_estimate() {
    let dir = TestDir::new();
    dir.run(&["restore", &code(), "--out", "K-17.toml"]);
    let text = dir.read("K-17.toml");
    assert!(text.starts_with("# RESTORED FROM A CODE, NOT CHECKED"), "{text}");
    assert!(
        text.contains("layout = \"row-six\"") && text.contains("serial = \"SW-0142\""),
        "{text}"
    );
    let checked = dir.run(&["check", "K-17.toml"]);
    assert_eq!(checked.code, Some(3));
    for key in ["client", "hip_width", "kg", "spare_cells"] {
        assert!(checked.stdout.contains(key) || checked.stderr.contains(key), "{key}");
    }
    // With the blanks filled in, it is a client's file like any other.
    let answers = [
        "client=K-17",
        "measures.taken_on=2026-02-01",
        "measures.taken_by=OT",
        "measures.hip_width=380",
        "measures.thigh_depth.left=480",
        "measures.thigh_depth.right=480",
        "weight.kg=60",
        "weight.weighed_on=2026-02-01",
        "cushion.spare_cells=20",
    ];
    dir.run(&[&["set", "K-17.toml"][..], &answers].concat());
    let checked = dir.run(&["check", "K-17.toml"]);
    assert_eq!(checked.code, Some(0), "{}{}", checked.stdout, checked.stderr);
    assert!(checked.stdout.contains("State: ESTIMATE."), "{}", checked.stdout);
    assert!(!checked.stdout.contains("FITTED"), "{}", checked.stdout);
    let history = dir.run(&["history", "K-17.toml"]).done();
    assert!(history.contains("an estimate until it is checked"), "{history}");
}

#[test]
fn nothing_is_written_over_and_nothing_of_what_does_not_check() {
    let code = code();
    let mistyped = code.replace("ROW-SIX", "ROW-SIK");
    let dir = TestDir::new().with("K-17.toml", "mine").with("card.pdf", &card()[..2000]);
    let tag = pdf(&papers(&[]), "tag.pdf");
    let dir = dir.with("tag.pdf", tag);
    let before = dir.names();
    for (words, status, said) in [
        (&["restore", &code, "--out", "K-17.toml"][..], 6, "K-17.toml"),
        (&["restore", &mistyped, "--out", "a.toml"], 2, "does not check"),
        (&["restore", "K-17", "--out", "a.toml"], 2, "not the code of a card"),
        (&["restore", "card.pdf", "--out", "a.toml"], 3, "cannot be read as a PDF"),
        (&["restore", "tag.pdf", "--out", "a.toml"], 3, "no code is attached"),
        (&["restore", "none.pdf", "--out", "a.toml"], 2, "none.pdf"),
        (&["restore", "K-17.toml", "--out", "a.toml"], 3, "cannot be read as a PDF"),
        (
            &["restore", &code, "--out", "a.toml", "--serial", "SW-0143"],
            2,
            "`SW-0142`, not `SW-0143`",
        ),
        (&["restore", &code, "--out", "a.pdf"], 2, "toml"),
        (&["restore", &code, "--out", "none/a.toml"], 6, "none/a.toml"),
        (&["restore", &code, "--out", "a.toml", "--layout", "K-17.toml"], 3, "K-17.toml"),
    ] {
        let ran = dir.run(words);
        assert_eq!(ran.code, Some(status), "{words:?}: {}", ran.stderr);
        assert!(ran.stderr.contains(said), "{words:?}: {}", ran.stderr);
        assert_eq!(dir.names(), before, "{words:?}");
    }
    assert_eq!(dir.read("K-17.toml"), "mine");
}

/// A layout and a cell in files: the code names them, and takes no others.
#[test]
fn a_layout_that_is_a_file_is_asked_for_and_taken() {
    let layout = include_str!("../../../../layouts/row-six.toml").replace("row-six", "row-mine");
    let cell = include_str!("../../../files/src/texts/pillow-25.toml").replace("pillow-25", "mine");
    let named = "layout = \"made/row.toml\"\ncell = \"made/cell.toml\"";
    let client = CLIENT.replace("layout = \"row-six\"", named);
    let dir = TestDir::new().with("K-17.toml", client);
    std::fs::create_dir(dir.path().join("made")).unwrap();
    let dir = dir.with("made/row.toml", &layout).with("made/cell.toml", cell);
    dir.run(&["plan", "K-17.toml", "--record", "--by", "OT"]);
    assert_eq!(dir.run(&["print", "K-17.toml", "--out", "papers"]).code, Some(0));
    let code = sheets::attached_code(&pdf(&dir, "setup-card.pdf")).unwrap();
    assert!(code.starts_with("SW1/ROW-MINE/"), "{code}");
    let restore = |more: &[&str]| {
        dir.run(&[&["restore", &code, "--out", "made/again.toml"][..], more].concat())
    };
    let asked = restore(&["--cell", "made/cell.toml"]);
    assert_eq!(asked.code, Some(2), "{}", asked.stderr);
    assert!(asked.stderr.contains("`row-mine`") && asked.stderr.contains("--layout FILE"));
    let asked = restore(&["--layout", "made/row.toml"]);
    assert_eq!(asked.code, Some(2), "{}", asked.stderr);
    assert!(asked.stderr.contains("cell `mine`") && asked.stderr.contains("--cell FILE"));
    let of_other_height = layout.replace("wall_height = 80", "wall_height = 81");
    std::fs::write(dir.path().join("other.toml"), of_other_height).unwrap();
    let other = restore(&["--layout", "other.toml", "--cell", "made/cell.toml"]);
    assert_eq!(other.code, Some(2), "{}", other.stderr);
    assert!(other.stderr.contains("`other.toml` is another one"), "{}", other.stderr);
    let taken = restore(&["--layout", "made/row.toml", "--cell", "made/cell.toml"]);
    assert_eq!(taken.code, Some(0), "{}", taken.stderr);
    // Beside the file it is named as it stands there.
    let text = dir.read("made/again.toml");
    assert!(
        text.contains("layout = \"row.toml\"") && text.contains("cell = \"cell.toml\""),
        "{text}"
    );
    assert_eq!(counts(&text), counts(&dir.read("K-17.toml")));
}

#[test]
fn the_clients_code_is_in_it_where_it_is_wanted_alone() {
    assert!(!code().contains("/T-1/"), "{}", code());
    let with = papers(&["--client-in-code"]);
    let text = sheets::attached_code(&pdf(&with, "setup-card.pdf")).unwrap();
    assert!(text.contains("/T-1/"), "{text}");
    let dir = TestDir::new();
    assert_eq!(dir.run(&["restore", &text, "--out", "a.toml"]).code, Some(0));
    let named =
        |text: &str| text.lines().find(|own| own.starts_with("client = ")).unwrap().to_owned();
    assert_eq!(
        named(&dir.read("a.toml")).split('#').next().map(str::trim),
        named(&with.read("K-17.toml")).split('#').next().map(str::trim)
    );
}

#[test]
fn it_is_said_in_the_language_that_is_asked_for() {
    let dir = TestDir::new();
    let ran = dir.run(&["restore", &code(), "--out", "a.toml", "--language", "es"]);
    assert_eq!(ran.code, Some(0), "{}", ran.stderr);
    assert!(ran.stderr.contains("Son una ESTIMACIÓN"), "{}", ran.stderr);
    assert!(dir.read("a.toml").starts_with("# RECUPERADO DE UN CÓDIGO, SIN COMPROBAR"));
}
