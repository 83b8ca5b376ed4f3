//! Right texts: the built-in ones and the starters.

use case::{CushionSides, LayoutRef};
use case::{FileKind, LayoutError, LayoutRequest, LayoutSource};
use cushion::{Name, Rim, Severity};
use files::{
    BUILT_IN_CELLS, BUILT_IN_LAYOUTS, BuiltIn, Known, check, kind_of, read_client, read_layout,
    starter,
};

#[track_caller]
fn without_remarks(text: &str, kind: FileKind) {
    assert_eq!(kind_of(text), Some(kind));
    let checked = check(text, &Known::NOTHING);
    assert_eq!(checked.kind, Some(kind));
    assert_eq!(checked.remarks, []);
}

#[test]
fn built_in_texts_are_right_and_say_their_names() {
    for layout in BUILT_IN_LAYOUTS {
        without_remarks(layout.text, FileKind::Layout);
        let read = read_layout(layout.text).value.unwrap();
        assert_eq!(read.name.as_str(), layout.name);
    }
    for cell in BUILT_IN_CELLS {
        without_remarks(cell.text, FileKind::Cell);
        assert_eq!(files::read_cell(cell.text).value.unwrap().name.as_str(), cell.name);
    }
}

#[test]
fn starters_are_right() {
    without_remarks(starter::layout(), FileKind::Layout);
    without_remarks(starter::cell(), FileKind::Cell);
    without_remarks(&starter::example(words::ENGLISH), FileKind::Client);
}

#[test]
fn the_built_in_cell_holds_25_ml() {
    // 0.190510 of the cube of the edge: Robin's formula, see tests/reference/pillow_bounds.csv.
    let expected = 0.190_510 * 50.8_f64.powi(3) / 1e3;
    let volume = BuiltIn::cell().inflated.to_ml();
    // The table gives six digits.
    assert!((volume - expected).abs() < 1e-4 && (volume - 25.0).abs() < 0.1, "{volume}");
}

#[test]
fn the_built_in_source_knows_its_names_only() {
    let ask = |name: &str, parameters| {
        let size = "440x400".parse().unwrap();
        BuiltIn.layout(&LayoutRequest { name: name.to_owned(), size, parameters }, &|_| None)
    };
    let drawn = ask("row-six", Default::default()).unwrap();
    assert_eq!(drawn.layout.name.as_str(), "row-six");
    assert_eq!(read_layout(&drawn.text).value, Some(drawn.layout));
    assert_eq!((&*drawn.origin, drawn.drawn_by), ("built-in layout row-six", None));
    let known = ["row-six", "island-eight", "curved-ten"].map(str::to_owned).into();
    let unknown = LayoutError::UnknownName { name: "row-seven".to_owned(), known };
    assert_eq!(ask("row-seven", Default::default()), Err(unknown));
    let other = LayoutError::OtherSource { name: "./rows.toml".to_owned() };
    assert_eq!(ask("./rows.toml", Default::default()), Err(other));
    let given = Name::new("pitch").unwrap();
    let none = LayoutError::NoParameters { name: "row-six".to_owned(), given: given.clone() };
    assert_eq!(ask("row-six", [(given, 1.0)].into()), Err(none));
}

#[test]
fn inches_and_pounds_are_read_exactly() {
    let text = starter::example(words::ENGLISH)
        .replace("units = \"mm\"", "units = \"in\"")
        .replace("hip_width = 380", "hip_width = 15")
        .replace("trochanter_width = 350", "trochanter_width = 14")
        .replace("{ left = 480, right = 480 }", "{ left = 19, right = 19 }")
        .replace("{ left = 420, right = 420 }", "{ left = 16.5, right = 16.5 }")
        .replace("external_knee_width = 340", "external_knee_width = 13")
        .replace("inside_width = 450", "inside_width = 18")
        .replace("inside_depth = 430", "inside_depth = 17")
        .replace("kg = 60", "lb = 132")
        .replace("\"440x400\"", "\"17x16in\"");
    let read = read_client(&text);
    assert_eq!(read.remarks, []);
    let client = read.value.unwrap();
    // Exact by definition: 25.4 mm, 0.45359237 kg.
    assert!((client.measures.hip_width.unwrap().to_mm() - 381.0).abs() < 1e-9);
    assert!((client.weighing.unwrap().weight.to_kg() - 59.874_192_84).abs() < 1e-9);
    assert_eq!(client.cushion.size.to_string(), "431.8x406.4");
}

#[test]
fn layouts_are_named_in_three_ways() {
    let named = |layout: &str| {
        let text =
            starter::example(words::ENGLISH).replace("\"row-six\"", &format!("\"{layout}\""));
        read_client(&text).value.unwrap().cushion.layout
    };
    assert_eq!(
        named("row-six"),
        LayoutRef::Named { name: "row-six".into(), parameters: Default::default() }
    );
    assert_eq!(named("../mine.toml"), LayoutRef::File("../mine.toml".into()));
    assert_eq!(
        named("plugin:rings"),
        LayoutRef::Named { name: "plugin:rings".into(), parameters: Default::default() }
    );
}

#[test]
fn remarks_that_are_no_errors_leave_the_value() {
    let text = starter::example(words::ENGLISH).replace("hip_width = 380", "hip_width = 600");
    let read = read_client(&text);
    assert!(read.value.is_some());
    assert!(read.remarks.iter().all(|remark| remark.severity == Severity::Remark));
    let said: Vec<String> = read.remarks.iter().map(|own| crate::said_of(own).message).collect();
    // The second one by open body data of adults: of a child it is not said.
    let of_adults = "the hips are unusually wide for 60 kg";
    assert_eq!(said, ["the hips are wider than the thighs are deep", of_adults]);
    let child = text.replacen("client = \"X-001\"", "client = \"X-001\"\nchild = true", 1);
    assert_eq!(read_client(&child).remarks.len(), 1);
}

#[test]
fn words_of_a_compartment_are_english_or_one_for_each_language() {
    let plain = "words = \"under the thigh\"";
    let both = "words = { en = \"under the thigh\", es = \"bajo el muslo\" }";
    let read = |text: &str| {
        without_remarks(text, FileKind::Layout);
        let layout = read_layout(text).value.unwrap();
        cushion::arrange(&layout, layout.sizes[0].size).unwrap()
    };
    assert!(starter::layout().contains(plain));
    let text = starter::layout().replace(plain, both);
    for (pattern, spanish) in
        [(read(starter::layout()), "under the thigh"), (read(&text), "bajo el muslo")]
    {
        let thigh = &pattern[pattern.by_id("front-left").unwrap()];
        assert_eq!(thigh.words.in_language("es"), spanish);
        assert_eq!(thigh.words.in_language("en"), "under the thigh");
        assert_eq!(words::ENGLISH.compartment(thigh), "under the thigh, client's left");
        let rear = &pattern[pattern.by_id("rear").unwrap()];
        assert_eq!(words::ENGLISH.compartment(rear), "under the seat bones");
    }
}

#[test]
fn words_in_other_languages_are_checked_for_characters_too() {
    let text = starter::layout().replace(
        "words = \"under the thigh\"",
        "words = { en = \"under the thigh\", ja = \"\u{592a}\u{3082}\u{3082}\" }",
    );
    let known = Known { printable: &|own| own.is_ascii(), ..Known::NOTHING };
    let remarks = check(&text, &known).remarks;
    assert_eq!(remarks.len(), 1, "{remarks:?}");
    assert_eq!(remarks[0].finding.id(), "value-unprintable");
}

#[test]
fn what_holds_the_outer_walls_is_read() {
    let layout = |rim: &str| {
        let text = starter::layout().replace("rim = \"soft\"", rim);
        read_layout(&text).value.unwrap().rim
    };
    assert_eq!(layout("rim = \"soft\""), Rim::Soft);
    assert_eq!(layout("rim = \"boxed\""), Rim::Boxed);
    assert_eq!(layout(""), Rim::Soft, "who says nothing has nothing that holds");
    let sides = |line: &str| {
        let text = starter::example(words::ENGLISH).replace("base = \"solid\"", line);
        read_client(&text).value.unwrap().chair.cushion_sides
    };
    assert_eq!(sides(""), None);
    assert_eq!(sides("cushion_sides = \"held\""), Some(CushionSides::Held));
    assert_eq!(sides("cushion_sides = \"open\""), Some(CushionSides::Open));
    for own in BUILT_IN_LAYOUTS {
        assert_eq!(read_layout(own.text).value.unwrap().rim, Rim::Soft, "{}", own.name);
    }
}
