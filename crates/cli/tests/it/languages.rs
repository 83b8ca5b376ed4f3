//! The language of answers and papers, and that of what carers get.

use std::collections::BTreeSet;

use crate::papers::texts;
use crate::runner::TestDir;

const LAYOUT: &str = include_str!("data/layout.toml");
const CLIENT: &str = include_str!("data/client.toml");

/// A folder with a client whose plan was recorded, and with a line more at the head of the file.
fn recorded(line: &str) -> TestDir {
    let client = CLIENT.replacen("client = ", &format!("{line}\nclient = "), 1);
    let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", client);
    dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).done();
    dir
}

/// All words of a paper of the client.
fn words(dir: &TestDir, paper: &str) -> String {
    texts(&dir.paper("x/K-17", paper)).join(" ")
}

#[test]
fn answers_and_papers_are_in_the_language_that_is_asked_for() {
    let dir = recorded("");
    let said = dir.run(&["plan", "client.toml", "--language", "es"]).stdout;
    assert!(said.contains("compartimento") && !said.contains("compartment"), "{said}");
    let print = ["print", "client.toml", "--out", "x", "--language=es"];
    let told = dir.run(&print).stdout;
    assert!(told.contains("Estado: ESTIMACIÓN."), "{told}");
    for (paper, title) in [
        ("setup-card-1.svg", "Ficha de ajuste"),
        ("fill-card.svg", "Llenado a medida"),
        ("take-home-1.svg", "Su cojín, cada día"),
        ("wash-day.svg", "Día de lavado"),
        ("letter.svg", "Por qué este cojín"),
    ] {
        let words = words(&dir, paper);
        assert!(words.contains(title), "{paper}: {words}");
        assert!(words.contains("Translation not professionally reviewed"), "{paper}: {words}");
    }
    let failed = dir.run(&["plan", "nobody.toml", "--language", "es"]).failed(2);
    assert!(failed.contains("no existe el archivo"), "{failed}");
}

#[test]
fn carers_get_their_papers_in_the_language_of_the_file() {
    let dir = recorded("language = \"es\"");
    dir.run(&["print", "client.toml", "--out", "x"]).done();
    let sheet = words(&dir, "take-home-1.svg");
    for said in [
        "Su cojín, cada día",
        "SIN AJUSTAR TODAVÍA. NO LO ENTREGUE.",
        "NOT FITTED YET. DO NOT HAND OVER.",
        "For the therapist: this sheet is in español.",
    ] {
        assert!(sheet.contains(said), "{said}: {sheet}");
    }
    assert!(words(&dir, "wash-day.svg").contains("Día de lavado"));
    for paper in ["setup-card-1.svg", "letter.svg", "tag.svg"] {
        let words = words(&dir, paper);
        assert!(!words.contains("Translation"), "{paper}: {words}");
    }
    // The other way round: a program in Spanish, a carer who reads English.
    let dir = recorded("language = \"en\"");
    dir.run(&["print", "client.toml", "--out", "x", "--language", "es"]).done();
    let sheet = words(&dir, "take-home-1.svg");
    assert!(sheet.contains("Your cushion, each day"), "{sheet}");
    assert!(sheet.contains("Para terapeutas: esta hoja está en English."), "{sheet}");
    assert!(words(&dir, "setup-card-1.svg").contains("Ficha de ajuste"));
}

/// What is between quotes before a colon, and ids: what programs read.
fn of_programs(json: &str) -> BTreeSet<String> {
    let keys = json.split('"').collect::<Vec<_>>();
    let is_key = |at: usize| keys.get(at + 1).is_some_and(|own| own.trim_start().starts_with(':'));
    let is_id = |at: usize| at >= 2 && keys[at - 2] == "id";
    (0..keys.len()).filter(|at| is_key(*at) || is_id(*at)).map(|at| keys[at].to_owned()).collect()
}

#[test]
fn what_programs_read_is_the_same_in_every_language() {
    let dir = recorded("");
    for call in [
        &["plan", "client.toml", "--json"][..],
        &["size", "client.toml", "--json"],
        &["check", "client.toml", "--json"],
        &["history", "client.toml", "--json"],
    ] {
        let [english, spanish] =
            ["en", "es"].map(|tag| dir.run(&[call, &["--language", tag]].concat()).stdout);
        assert!(of_programs(&english).len() > 5, "{english}");
        assert_eq!(of_programs(&english), of_programs(&spanish), "{call:?}");
        assert_ne!(english, spanish, "{call:?}");
    }
}

/// The words of three letters and more of what a run said, without what stands in quotes, names of
/// files, options and ids.
fn prose(said: &str) -> BTreeSet<String> {
    let shown = said.split('`').step_by(2).collect::<Vec<_>>().join(" ");
    let is_word = |own: &&str| own.len() > 2 && own.chars().all(char::is_alphabetic);
    let words = shown.split_whitespace();
    let words = words.map(|own| own.trim_matches(['.', '"', ',', ':', ';', '(', ')', '!', '?']));
    // What is to be replaced in a command stands in capitals.
    let is_said = |own: &&str| own.chars().any(char::is_lowercase);
    words.filter(is_word).filter(is_said).map(str::to_lowercase).collect()
}

#[test]
fn whatever_a_command_says_is_said_in_the_language_that_is_asked_for() {
    // Words that both languages write alike.
    const ALIKE: [&str; 8] =
        ["error", "total", "base", "plan", "seatwright", "use", "svg", "format"];
    // The layout's title is its author's.
    let title = prose(LAYOUT.lines().find(|own| own.starts_with("title")).unwrap_or_default());
    let dir = recorded("").with("wrong.toml", "format = 1\nkind = \"client\"\n");
    let mut all_left: Vec<String> = Vec::new();
    for call in [
        "contour-test layout.toml --size 440x400",
        "find --batch B-7 .",
        "plugin list",
        "plugin show nothing",
        "record client.toml weighed 70kg --by OT",
        "record client.toml weighed 70kg",
        "history client.toml --between 1 99",
        "set client.toml weight.kg=71",
        "set client.toml weight.kg=7100",
        "check client.toml layout.toml",
        "check client.toml wrong.toml nothing.toml",
        "pattern layout.toml --size 440x400 --svg x.png",
        "range plugin:x",
        "parts layout.toml --size 440x400",
        "weigh client.toml --batch 50 --grams 40.3 --division 0.1",
        "chairside x/y --no-open",
        "new client wrong.toml",
    ] {
        let words: Vec<&str> = call.split(' ').collect();
        let [english, spanish] = ["en", "es"].map(|tag| {
            let ran = dir.run(&[&words[..], &["--language", tag]].concat());
            prose(&format!("{}{}", ran.stdout, ran.stderr))
        });
        let left = english
            .intersection(&spanish)
            .filter(|own| !ALIKE.contains(&own.as_str()) && !title.contains(*own));
        all_left.extend(left.map(|own| format!("{call}: {own}")));
        assert!(english.len() > 1, "{call}: {english:?}");
    }
    assert_eq!(all_left, [""; 0]);
}

#[test]
fn a_language_that_is_not_there_is_refused() {
    let dir = recorded("");
    let failed = dir.run(&["print", "client.toml", "--language", "xx"]).failed(2);
    assert!(failed.contains("en, es"), "{failed}");
    let client = CLIENT.replacen("client = ", "language = \"xx\"\nclient = ", 1);
    let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", client);
    let failed = dir.run(&["plan", "client.toml"]).failed(3);
    assert!(failed.contains("`xx`") && failed.contains("\"es\""), "{failed}");
}

#[test]
fn text_from_right_to_left_is_refused_with_its_reason() {
    for noted in ["each evening שלום", "each evening سلام"] {
        let client = CLIENT.replacen("each evening", noted, 1);
        let dir = TestDir::new().with("layout.toml", LAYOUT).with("client.toml", client);
        let checked = dir.run(&["check", "client.toml"]);
        assert_eq!(checked.code, Some(3), "{}", checked.stderr);
        assert!(checked.stderr.contains("from right to left"), "{}", checked.stderr);
        assert!(checked.stderr.contains("do not set yet"), "{}", checked.stderr);
    }
    let dir = recorded("");
    let failed = dir.run(&["plan", "client.toml", "--record", "--by", "OT שלום"]).failed(2);
    assert!(failed.contains("from right to left"), "{failed}");
}

#[test]
fn the_papers_of_the_demo_have_as_many_pages_in_each_language() {
    let dir = TestDir::new();
    let [english, spanish] = ["en", "es"].map(|tag| {
        let written = dir.run(&["demo", "--out", "x", "--language", tag]).stdout;
        let files = written.lines().filter(|line| line.starts_with("  x/"));
        files.map(str::to_owned).collect::<BTreeSet<String>>()
    });
    assert!(english.len() > 10, "{english:?}");
    assert_eq!(english, spanish);
}
