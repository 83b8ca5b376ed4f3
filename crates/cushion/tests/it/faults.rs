//! What is said of wrong layouts.

use cushion::{Fault, Layout, Subject, arrange, check_layout};

use crate::build::{Build, bow, size};

fn in_words(faults: &[Fault]) -> Vec<String> {
    let about = |fault: &Fault| match &fault.subject {
        Subject::Layout => "layout".to_owned(),
        Subject::Point(name) => format!("point {name}"),
        Subject::Seam(name) => format!("seam {name}"),
        Subject::Compartment(name) => format!("compartment {name}"),
        Subject::Sizes => "sizes".to_owned(),
        Subject::StockCrown => "stock crown".to_owned(),
    };
    faults
        .iter()
        .map(|fault| {
            format!("{}: {}", about(fault), words::ENGLISH.layout_fault(&fault.kind).message)
        })
        .collect()
}

#[track_caller]
fn check(build: Build, expected: &[&str]) {
    let faults = arrange(&build.0, size("400x400")).expect_err("the layout is wrong");
    assert_eq!(in_words(&faults), expected);
    for fault in &faults {
        assert!(words::ENGLISH.layout_fault(&fault.kind).hint.is_some());
    }
}

/// A cross seam at half depth between two points on the outline.
fn crossed() -> Build {
    Build::mirrored()
        .point("mid", 0.0, 0.5)
        .on("side", "outline", "rear-corner", "front-corner", 0.5)
        .seam("across", &["mid", "side"])
}

#[test]
fn names_that_nothing_has() {
    check(
        Build::mirrored()
            .on("side", "rim", "rear-corner", "nowhere", 0.5)
            .seam("across", &["rear", "middle"]),
        &[
            "point side: no seam is called `rim`",
            "point side: no point is called `nowhere`",
            "seam across: no point is called `middle`",
        ],
    );
}

#[test]
fn an_outline_that_does_not_close() {
    let build = Build::whole();
    let mut layout: Layout = build.0;
    layout.seams[0].closed = false;
    check(Build(layout), &["seam outline: the outline does not close"]);
}

#[test]
fn a_seam_that_ends_nowhere() {
    check(
        crossed().point("lost", 0.2, 0.7).seam("stray", &["mid", "lost"]),
        &["seam stray: this seam ends at `lost`, where no other seam is"],
    );
}

#[test]
fn seams_that_cross() {
    check(
        crossed().seam("long", &["rear-corner", "front"]),
        &[
            "seam long: this seam meets the seam `across` near x 100, y 200 mm, where they share no point",
        ],
    );
}

#[test]
fn a_seam_that_touches_the_outline_from_inside() {
    check(
        crossed().point("edge", 0.5, 0.7).seam("touch", &["mid", "edge", "front"]),
        &[
            "seam touch: this seam meets the seam `outline` near x 200, y 280 mm, where they share no point",
        ],
    );
}

#[test]
fn a_seam_outside() {
    check(
        crossed()
            .shaped("handle", &["rear-corner", "front-corner"], bow(-0.3), false)
            .one("rear", 0.0, 0.2, 1)
            .one("front", 0.0, 0.8, 2),
        &["seam handle: this seam lies outside the outline"],
    );
}

#[test]
fn points_on_each_other() {
    check(
        crossed().point("twin", 0.0, 0.5).seam("extra", &["twin", "front"]),
        &["point twin: this point lies on the point `mid`"],
    );
}

#[test]
fn points_that_need_each_other() {
    check(
        Build::mirrored()
            .on("a", "two", "b", "rear", 0.5)
            .on("b", "one", "a", "front", 0.5)
            .seam("one", &["a", "front"])
            .seam("two", &["b", "rear"]),
        &["point a: this point lies on a seam that needs the point first"],
    );
}

#[test]
fn a_point_beyond_its_stretch() {
    check(
        Build::mirrored().on("side", "outline", "rear-corner", "front-corner", 1.2),
        &["point side: this point lies beyond the stretch that it counts on"],
    );
    check(
        Build::mirrored().on("side", "outline", "front-corner", "rear-corner", 0.5),
        &["point side: the seam `outline` does not run through `rear-corner` here"],
    );
}

#[test]
fn roundings_and_bows_without_room() {
    check(crossed().round("rear-corner", 300.0), &["point rear-corner: this rounding has no room"]);
    check(
        crossed().shaped("arch", &["rear", "mid"], bow(0.6), false),
        &["seam arch: this seam bows out by more than half a circle"],
    );
}

#[test]
fn seeds_that_do_not_fit_the_faces() {
    check(
        crossed().one("rear", 0.0, 0.2, 1),
        &["layout: no compartment claims the space around x 100, y 300 mm"],
    );
    check(
        crossed().one("rear", 0.0, 0.2, 1).one("again", 0.0, 0.3, 2).one("front", 0.0, 0.8, 3),
        &["compartment again: this seed lies in the compartment `rear`"],
    );
    check(
        crossed().one("rear", 0.0, -0.2, 1).one("front", 0.0, 0.8, 2),
        &["compartment rear: this seed lies in no compartment"],
    );
}

#[test]
fn numbers_and_sides_that_do_not_fit() {
    let split = || crossed().seam("centre", &["mid", "front"]).one("rear", 0.0, 0.2, 1);
    check(
        split().one("front", 0.25, 0.8, 2),
        &["compartment front: the numbers do not fit the sides that this seed stands for"],
    );
    check(
        split().pair("front", 0.25, 0.8, 2, 1),
        &["compartment front: the number 1 is given twice"],
    );
    check(
        split().pair("front", -0.25, 0.8, 2, 3),
        &["compartment front: this lies on the client's left, which is made by mirror"],
    );
    check(
        Build::whole().one("the-left", 0.25, 0.5, 1),
        &["compartment the-left: the id names one side and the compartment lies on the other"],
    );
}

#[test]
fn three_mistakes_are_three_faults() {
    let build = crossed()
        .point("lost", 0.2, 0.7)
        .seam("stray", &["mid", "lost"])
        .seam("long", &["rear-corner", "front"]);
    let faults = arrange(&build.0, size("400x400")).expect_err("the layout is wrong");
    assert_eq!(faults.len(), 2, "{:?}", in_words(&faults));
}

#[test]
fn faults_show_only_at_the_sizes_that_have_them() {
    let mut build = crossed().one("rear", 0.0, 0.2, 1).one("front", 0.0, 0.8, 2);
    build.0.sizes[0].size = size("400x400");
    assert_eq!(in_words(&check_layout(&build.0)), [""; 0]);
    let made = |text: &str| cushion::MadeSize { size: size(text), ..build.0.sizes[0] };
    let small = vec![made("400x400"), made("160x154"), made("150x150")];
    build.0.sizes = small;
    let faults = check_layout(&build.0);
    let found = in_words(&faults);
    assert_eq!(
        found,
        [
            "compartment rear: at 77 mm, this compartment is narrower than a hand",
            "compartment front: at 77 mm, this compartment is narrower than a hand",
            "stock crown: a crown of 10 mm is more than an eighth of the width; the model is good to 10 mm",
        ]
    );
    assert_eq!(faults[0].size.map(|size| size.to_string()), Some("160x154".into()));
}
