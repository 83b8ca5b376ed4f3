//! What is said of wrong layouts.

use cushion::{
    Fault, FaultKind, Layout, Length, Mass, Measure, Point, Subject, arrange, check_layout, sketch,
};

use crate::build::{Build, bow, size};

const CELL: Length = Length::from_mm(50.0);

fn in_words(faults: &[Fault]) -> Vec<String> {
    let about = |fault: &Fault| match &fault.subject {
        Subject::Layout => "layout".to_owned(),
        Subject::Point(name) => format!("point {name}"),
        Subject::Seam(name) => format!("seam {name}"),
        Subject::Compartment(name) => format!("compartment {name}"),
        Subject::Sizes => "sizes".to_owned(),
        Subject::MadeSize(place) => format!("size {place}"),
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
    are_marked(&build.0, "400x400", &faults);
}

/// Whether each fault has a place on the drawing at a size, but for those that are nowhere: what
/// the layout has too much of, what it lacks as a whole, and what is about its list of sizes.
#[track_caller]
fn are_marked(layout: &Layout, at: &str, faults: &[Fault]) {
    let sketch = sketch(layout, size(at), faults);
    assert_eq!(sketch.places.len(), faults.len());
    for (fault, place) in faults.iter().zip(sketch.places) {
        let nowhere = matches!(
            fault.kind,
            FaultKind::TooMuch { .. }
                | FaultKind::NoOutline
                | FaultKind::MissingNumber(_)
                | FaultKind::OtherFaces
                | FaultKind::RatedAboveLarger(_)
        );
        assert_eq!(place.is_none(), nowhere, "{fault:?} at {place:?}");
        let Some(place) = place else { continue };
        let (half, depth) = (size(at).width().to_mm() / 2.0, size(at).depth().to_mm());
        assert!(place.x.abs() <= half && (0.0..=depth).contains(&place.y), "{fault:?} at {place}");
    }
}

/// Faults that have no place of their own are marked where whoever looks will find them.
#[test]
fn what_cannot_be_drawn_is_marked_between_its_points() {
    let place = |layout: &Layout| {
        let faults = check_layout(layout, CELL);
        assert_eq!(faults.len(), 1, "{:?}", in_words(&faults));
        are_marked(layout, "400x400", &faults);
        sketch(layout, size("400x400"), &faults).places[0].expect("it has a place")
    };
    // From (0, 0) to (0, 200).
    let bowed = crossed().shaped("arch", &["rear", "mid"], bow(0.6), false);
    assert_eq!(place(&bowed.0), Point::new(0.0, 100.0));
    // From a corner at (200, 0) to nowhere.
    let unknown = crossed().seam("lost", &["rear-corner", "nowhere"]);
    assert_eq!(place(&unknown.0), Point::new(200.0, 0.0));
    // On a seam that is not there, between (200, 0) and (200, 400).
    let no_seam = crossed().on("astray", "rim", "rear-corner", "front-corner", 0.5);
    assert_eq!(place(&no_seam.0), Point::new(200.0, 200.0));
    // A seed behind the rear edge is marked at the edge.
    let behind = crossed().one("rear", 0.0, -0.2, 1).one("front", 0.0, 0.8, 2);
    let faults = arrange(&behind.0, size("400x400")).expect_err("the layout is wrong");
    let marked = sketch(&behind.0, size("400x400"), &faults).places;
    assert!(marked.contains(&Some(Point::new(0.0, 0.0))), "{marked:?}");
    // The deeper of two is where the crown rises most.
    let mut high = Build::mirrored().point("mid", 0.0, 0.25).point("low-side", 0.5, 0.25);
    high.0.seams[0].through.insert(2, crate::build::name("low-side"));
    let mut high = high.seam("across", &["mid", "low-side"]);
    high.0.stock_crown = Measure { share: 0.0, mm: 50.0 };
    let high = high.one("rear", 0.0, 0.1, 1).one("front", 0.0, 0.7, 2);
    assert_eq!(place(&high.0), Point::new(0.0, 280.0));
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
    assert_eq!(in_words(&check_layout(&build.0, CELL)), [""; 0]);
    let made = |text: &str| cushion::MadeSize { size: size(text), ..build.0.sizes[0] };
    let small = vec![made("400x400"), made("160x154"), made("150x150")];
    build.0.sizes = small;
    let faults = check_layout(&build.0, CELL);
    let found = in_words(&faults);
    assert_eq!(
        found,
        [
            "compartment rear: at its widest, 77 mm, compartment 1 is narrower than a hand",
            "compartment front: at its widest, 77 mm, compartment 2 is narrower than a hand",
            "stock crown: a crown of 10.0 mm is more than an eighth of the width; the model is good to 9.6 mm",
        ]
    );
    let sizes: Vec<String> = faults[0].sizes.iter().map(ToString::to_string).collect();
    assert_eq!(sizes, ["160x154", "150x150"]);
}

#[test]
fn the_end_that_is_named_is_the_end_of_the_seam() {
    // Its other end is nearer by coordinates that are written than the stray one, which lies on
    // a seam.
    let build = crossed()
        .point("lost", 0.2, 0.7)
        .on("on-stray", "stray", "mid", "lost", 0.5)
        .seam("stray", &["mid", "lost"])
        .point("far", 0.3, 0.9)
        .seam("branch", &["far", "on-stray"]);
    check(
        build,
        &[
            "seam stray: this seam ends at `lost`, where no other seam is",
            "seam branch: this seam ends at `far`, where no other seam is",
        ],
    );
    let guest = crossed()
        .point("inner", 0.1, 0.7)
        .on("on-across", "across", "mid", "side", 0.5)
        .seam("stray", &["on-across", "inner"]);
    check(guest, &["seam stray: this seam ends at `inner`, where no other seam is"]);
}

#[test]
fn an_outline_beyond_the_size() {
    let build = Build::mirrored().one("all", 0.0, 0.5, 1);
    let mut layout: Layout = build.0;
    layout.seams[0].shape = bow(-0.1);
    check(
        Build(layout),
        &["seam outline: the outline reaches 40 mm beyond the size, near x 240, y 200 mm"],
    );
}

#[test]
fn a_seam_through_one_point_twice() {
    let there_and_back = |times: usize| {
        let through: Vec<&str> = ["mid", "side"].repeat(times);
        crossed().seam("again", &through)
    };
    check(there_and_back(100), &["seam again: this seam runs through `mid` twice"]);
    // To close, the first comes again at the end.
    let ring = crossed()
        .point("a", 0.1, 0.7)
        .point("b", 0.3, 0.7)
        .point("c", 0.2, 0.9)
        .seam("ring", &["a", "b", "c", "a"])
        .one("rear", 0.0, 0.2, 1)
        .one("front", 0.0, 0.6, 2)
        .pair("isle", 0.2, 0.75, 3, 4);
    assert!(arrange(&ring.0, size("400x400")).is_ok());
}

#[test]
fn more_than_any_cushion_needs_is_refused_at_once() {
    let mut seams = crossed();
    for count in 0..600 {
        seams = seams.point(&format!("p{count}"), 0.0, f64::from(count) / 1000.0);
    }
    let through: Vec<String> = (0..500).map(|count| format!("p{count}")).collect();
    let through: Vec<&str> = through.iter().map(String::as_str).collect();
    for count in 0..251 {
        seams = seams.seam(&format!("s{count}"), &through);
    }
    for count in 0..100 {
        seams = seams.one(&format!("c{count}"), 0.0, 0.5, 1);
    }
    let made = seams.0.sizes[0];
    seams.0.sizes = vec![made; 101];
    check(
        seams,
        &[
            "layout: there are more than 500 points",
            "layout: there are more than 250 seams",
            "layout: there are more than 1000 points in the lists of all seams",
            "layout: there are more than 99 compartments",
            "sizes: there are more than 100 sizes",
        ],
    );
}

#[track_caller]
fn check_all(layout: &Layout, expected: &[&str]) {
    let faults = check_layout(layout, CELL);
    assert_eq!(in_words(&faults), expected);
    are_marked(layout, &layout.sizes[0].size.to_string(), &faults);
}

#[test]
fn crowns_that_no_sheet_makes() {
    let with = |mm: f64| {
        let mut layout = crossed().one("rear", 0.0, 0.2, 1).one("front", 0.0, 0.8, 2).0;
        layout.stock_crown = Measure { share: 0.0, mm };
        layout
    };
    // Both are 200 mm wide.
    check_all(&with(24.0), &[]);
    check_all(
        &with(30.0),
        &[
            "stock crown: a crown of 30 mm is more than an eighth of the width; the model is good to 25 mm",
        ],
    );
    check_all(
        &with(60.0),
        &[
            "stock crown: a crown of 60 mm is more than a quarter of the width; the model is good to 25 mm",
        ],
    );
    check_all(
        &with(-5.0),
        &["stock crown: a crown of -5 mm is not above the walls: the cells would lie loose"],
    );
}

#[test]
fn what_is_left_over_or_left_out() {
    let layout =
        crossed().point("idle", 0.3, 0.8).one("rear", 0.0, 0.2, 1).one("front", 0.0, 0.8, 4);
    check_all(
        &layout.0,
        &[
            "point idle: no seam runs through this point",
            "layout: the number 2 is left out between the others",
        ],
    );
}

#[test]
fn a_smaller_size_rated_for_more() {
    let mut layout = crossed().one("rear", 0.0, 0.2, 1).one("front", 0.0, 0.8, 2).0;
    let made = |text: &str, kg: f64| cushion::MadeSize {
        size: size(text),
        max_user_weight: Mass::from_kg(kg),
    };
    layout.sizes = vec![made("400x400", 90.0), made("440x400", 80.0), made("360x440", 100.0)];
    check_all(&layout, &["size 0: this size is rated for more weight than the larger 440x400"]);
}

#[test]
fn a_narrow_compartment_is_not_said_of_its_mirror_image() {
    // Written whole: the left of the two strips beside a seam that is not in the middle.
    let mut build = Build::whole()
        .point("front-in", 0.3, 1.0)
        .point("rear-in", 0.3, 0.0)
        .point("front-out", -0.3, 1.0)
        .point("rear-out", -0.3, 0.0)
        .one("wide", -0.4, 0.5, 1)
        .one("middle", 0.0, 0.5, 2)
        .one("thin", 0.4, 0.5, 3);
    let through = ["rear-left", "rear-out", "rear-in", "rear-right"];
    let back = ["front-right", "front-in", "front-out", "front-left"];
    build.0.seams.clear();
    let build = build
        .closed("outline", &[through, back].concat())
        .seam("in", &["rear-in", "front-in"])
        .seam("out", &["rear-out", "front-out"]);
    let mut layout = build.0;
    layout.sizes[0].size = size("330x400");
    check_all(
        &layout,
        &[
            "compartment wide: at its widest, 66 mm, compartment 1 is narrower than a hand",
            "compartment thin: at its widest, 66 mm, compartment 3 is narrower than a hand",
        ],
    );
}
