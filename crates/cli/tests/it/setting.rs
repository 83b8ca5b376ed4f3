//! `set`: keys of a client's file, all of them or none.

use crate::runner::TestDir;

/// A client that is right.
const CLIENT: &str = include_str!("data/client.toml");

fn dir() -> TestDir {
    let layout = include_str!("data/layout.toml");
    TestDir::new().with("layout.toml", layout).with("client.toml", CLIENT)
}

#[test]
fn keys_are_changed_and_the_rest_stays() {
    let dir = dir();
    let said = dir.run(&["set", "client.toml", "measures.hip_width=401", "weight.kg=70"]).done();
    assert_eq!(said, "client.toml: changed, no remarks\n");
    let expected = CLIENT.replace("hip_width = 395", "hip_width = 401").replace("68.5", "70");
    assert_eq!(dir.read("client.toml"), expected);
}

#[test]
fn one_wrong_value_changes_nothing_and_is_told_as_check_tells_it() {
    let dir = dir();
    let said = dir.run(&["set", "client.toml", "weight.kg=70", "measures.hip_width=39.5"]);
    let said = said.failed(3);
    assert!(said.starts_with("error: 39.5 mm cannot be the hip width\n"), "{said}");
    assert!(said.ends_with("hint: nothing was written\n"), "{said}");
    assert_eq!(dir.read("client.toml"), CLIENT);
    // What would be needed too is told, and not written halfway.
    let said = dir.run(&["set", "client.toml", "goal.1.want=lower front"]).failed(3);
    assert!(said.contains("the key `side` is missing"), "{said}");
    assert_eq!(dir.read("client.toml"), CLIENT);
}

#[test]
fn schemas_are_written_once() {
    let dir = TestDir::new();
    for kind in ["client", "layout", "cell"] {
        let (what, file) = (format!("{kind}-schema"), format!("{kind}.json"));
        let said = dir.run(&["new", &what, &file]).done();
        assert!(said.contains(&format!("#:schema {file}")), "{said}");
        let schema: serde_json::Value = serde_json::from_str(&dir.read(&file)).unwrap();
        assert_eq!(schema["properties"]["kind"]["const"], kind);
        dir.run(&["new", &what, &file]).failed(6);
    }
}

#[test]
fn a_new_client_is_refused_until_its_blanks_are_filled_in() {
    let dir = TestDir::new();
    dir.run(&["new", "client", "k.toml"]).done();
    for words in [&["check", "k.toml"][..], &["plan", "k.toml", "--record", "--by", "OT"]] {
        let said = dir.run(words).failed(3);
        assert!(said.contains("`measures.hip_width` is not filled in yet"), "{said}");
        assert!(said.contains("`weight.kg` is not filled in yet"), "{said}");
    }
    assert!(!dir.read("k.toml").contains("\n[[record]]"));
}

#[test]
fn wrong_keys_are_a_wrong_call() {
    let dir = dir();
    let said = dir.run(&["set", "client.toml", "hip_width=380"]).failed(2);
    assert!(said.contains("did you mean `measures.hip_width`?"), "{said}");
    assert!(dir.run(&["set", "client.toml"]).failed(2).contains("KEY=VALUE"));
    assert_eq!(dir.read("client.toml"), CLIENT);
}

#[test]
fn goals_are_ordered_and_removed() {
    let dir = dir();
    dir.run(&["set", "client.toml", "goal.1.want=near stock", "goal.2.want=equal firmness"]).done();
    dir.run(&["set", "client.toml", "--move", "goal.2=1", "--remove", "goal.2"]).done();
    let text = dir.read("client.toml");
    assert!(text.contains("equal firmness") && !text.contains("near stock"), "{text}");
}

#[test]
fn without_a_weight_nothing_is_planned_for_goals_nor_recorded() {
    let start = CLIENT.find("[weight]").unwrap();
    let end = CLIENT.find("[chair]").unwrap();
    let without = format!("{}{}", &CLIENT[..start], &CLIENT[end..]);
    let goal = "\n[[goal]]\nwant = \"near stock\"\n";
    let dir = dir().with("client.toml", format!("{without}{goal}"));
    let before = dir.read("client.toml");
    let ran = dir.run(&["plan", "client.toml", "--record", "--by", "OT"]);
    assert_eq!(ran.code, Some(3), "{}", ran.stderr);
    let expected = "error: nothing is planned for the goals without the client's weight; nothing was recorded\n";
    assert!(ran.stderr.contains(expected), "{}", ran.stderr);
    assert_eq!(dir.read("client.toml"), before);
    // Without goals there is nothing to be planned for, and the stock fill with its change is told.
    let dir = dir.with("client.toml", &without);
    dir.run(&["plan", "client.toml", "--record", "--by", "OT"]).warned();
    assert_ne!(dir.read("client.toml"), without);
}
