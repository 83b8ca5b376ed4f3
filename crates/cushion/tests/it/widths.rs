//! Widths, narrow places and corners against shapes of which they are known.

use cushion::{
    FaultKind, Length, NarrowPlace, Pattern, acute_corners, check_layout, greatest_width,
    narrow_places,
};

use crate::build::{Build, assert_near, bow, size};

/// The width is found to half a millimetre, and a curve's two sides are each a tenth off.
const FOUND_TO: f64 = 0.7;
/// A place is the middle of what was found, which may lie anywhere along an arm.
const AT: f64 = 2.0;

const HAND: Length = Length::from_mm(78.0);
const CELL: Length = Length::from_mm(50.0);

fn narrow(pattern: &Pattern, id: &str, width: Length) -> Vec<NarrowPlace> {
    narrow_places(pattern, pattern.by_id(id).expect("the compartment is there"), width)
}

fn widest(pattern: &Pattern, id: &str) -> f64 {
    greatest_width(pattern, pattern.by_id(id).expect("the compartment is there")).to_mm()
}

fn corners(pattern: &Pattern, id: &str) -> Vec<(f64, f64, f64)> {
    let ix = pattern.by_id(id).expect("the compartment is there");
    let found = acute_corners(pattern, ix);
    found.iter().map(|corner| (corner.at.x, corner.at.y, corner.degrees)).collect()
}

#[test]
fn a_rectangle_is_as_wide_as_its_short_side() {
    let strip = Build::whole()
        .on("west", "outline", "front-left", "rear-left", 0.75)
        .on("east", "outline", "rear-right", "front-right", 0.25)
        .seam("across", &["west", "east"])
        .one("rear", 0.0, 0.1, 1)
        .one("front", 0.0, 0.8, 2);
    let pattern = strip.at("400x400");
    assert_near(widest(&pattern, "rear"), 100.0, FOUND_TO);
    assert_near(widest(&pattern, "front"), 300.0, FOUND_TO);
    // A disc just as wide reaches all of it, a wider one goes in nowhere.
    assert_eq!(narrow(&pattern, "rear", Length::from_mm(100.0)), []);
    assert_eq!(narrow(&pattern, "rear", Length::from_mm(101.0)), []);
    assert!(corners(&pattern, "rear").is_empty());
}

#[test]
fn a_neck_counts_and_a_disc_is_its_diameter() {
    // Between the disc and the sides, 400 mm apart, is left (400 - 240) / 2 on each side.
    let ring = Build::mirrored()
        .point("isle-rear", 0.0, 0.2)
        .point("isle-front", 0.0, 0.8)
        .shaped("isle", &["isle-rear", "isle-front"], bow(-0.5), false)
        .one("isle", 0.0, 0.5, 1)
        .one("around", 0.0, 0.1, 2);
    let pattern = ring.at("400x400");
    assert_near(widest(&pattern, "isle"), 240.0, FOUND_TO);
    // The corners are wider: a disc that touches the island and both walls, 200 root 2 from the
    // middle, has a radius with r + 120 + r root 2 = 200 root 2.
    let corner = 2.0 * (200.0 * 2.0_f64.sqrt() - 120.0) / (1.0 + 2.0_f64.sqrt());
    assert_near(widest(&pattern, "around"), corner, FOUND_TO);
    assert_eq!(narrow(&pattern, "around", Length::from_mm(79.5)), []);
    let necks = narrow(&pattern, "around", Length::from_mm(90.0));
    let neck = necks.first().expect("there is a neck");
    assert_near(neck.width.to_mm(), 80.0, FOUND_TO + 0.5);
}

/// A room with an arm that leaves it to the front: 40 mm wide, 120 mm long.
fn arm() -> Build {
    Build::whole()
        .point("mouth-left", -0.05, 0.7)
        .point("mouth-right", 0.05, 0.7)
        .on("end-left", "outline", "front-right", "front-left", 0.55)
        .on("end-right", "outline", "front-right", "front-left", 0.45)
        .on("west", "outline", "front-left", "rear-left", 0.3)
        .on("east", "outline", "rear-right", "front-right", 0.7)
        .seam("left", &["west", "mouth-left", "end-left"])
        .seam("right", &["east", "mouth-right", "end-right"])
        .one("room", 0.0, 0.3, 1)
        .one("beside-left", -0.3, 0.85, 2)
        .one("beside-right", 0.3, 0.85, 3)
}

#[test]
fn an_arm_is_found_with_its_width_and_place() {
    let pattern = arm().at("400x400");
    let places = narrow(&pattern, "room", HAND);
    let [arm] = places.as_slice() else { panic!("{places:?}") };
    assert_near(arm.width.to_mm(), 40.0, FOUND_TO);
    assert_near(arm.at.x, 0.0, AT);
    assert!((280.0..400.0).contains(&arm.at.y), "{arm:?}");
    assert_eq!(narrow(&pattern, "room", Length::from_mm(39.0)), []);
    let faults = check_layout(&arm_at_two_sizes(), CELL);
    let [fault] = faults.as_slice() else { panic!("{faults:?}") };
    assert!(matches!(fault.kind, FaultKind::NarrowArm { number: 1, .. }), "{fault:?}");
    let sizes: Vec<String> = fault.sizes.iter().map(ToString::to_string).collect();
    assert_eq!(sizes, ["400x400", "440x400"]);
}

fn arm_at_two_sizes() -> cushion::Layout {
    let mut layout = arm().0;
    let made = |text: &str| cushion::MadeSize { size: size(text), ..layout.sizes[0] };
    layout.sizes = vec![made("400x400"), made("440x400")];
    layout
}

#[test]
fn a_corridor_between_two_rooms_is_found() {
    // The seams leave a corridor of 60 mm in the middle, 80 mm long.
    let walls = Build::mirrored()
        .point("in-rear", 0.075, 0.4)
        .point("in-front", 0.075, 0.6)
        .on("side-rear", "outline", "rear-corner", "front-corner", 0.4)
        .on("side-front", "outline", "rear-corner", "front-corner", 0.6)
        .seam("wall", &["side-rear", "in-rear", "in-front", "side-front"])
        .one("rooms", 0.0, 0.2, 1)
        .pair("block", 0.3, 0.5, 2, 3);
    let pattern = walls.at("400x400");
    let places = narrow(&pattern, "rooms", HAND);
    let [corridor] = places.as_slice() else { panic!("{places:?}") };
    assert_near(corridor.width.to_mm(), 60.0, FOUND_TO);
    assert_near(corridor.at.x, 0.0, AT);
    assert_near(corridor.at.y, 200.0, 40.0);
}

#[test]
fn a_rectangle_cut_corner_to_corner_has_acute_corners_and_room_for_a_disc() {
    let cut = Build::whole()
        .seam("cut", &["rear-left", "front-right"])
        .one("rear", 0.3, 0.2, 1)
        .one("front", -0.3, 0.8, 2);
    let pattern = cut.at("440x200");
    let diagonal = 440.0_f64.hypot(200.0);
    // The inscribed disc of a right triangle: sum of the legs less the hypotenuse.
    assert_near(widest(&pattern, "rear"), 440.0 + 200.0 - diagonal, FOUND_TO);
    let degrees = (200.0_f64 / 440.0).atan().to_degrees();
    let found = corners(&pattern, "rear");
    let [(x, y, angle)] = found.as_slice() else { panic!("{found:?}") };
    assert_near(*x, -220.0, 1e-6);
    assert_near(*y, 0.0, 1e-6);
    assert_near(*angle, degrees, 1e-6);
    assert_eq!(narrow(&pattern, "rear", HAND), []);
    // Half a right angle is not acute, and no arm.
    let half = cut.at("400x400");
    assert!(corners(&half, "rear").is_empty());
    assert_eq!(narrow(&half, "rear", HAND), []);
}

#[test]
fn the_cell_that_goes_in_decides_what_is_too_narrow() {
    let mut build = Build::mirrored()
        .point("mid", 0.0, 0.15)
        .on("side", "outline", "rear-corner", "front-corner", 0.15)
        .seam("across", &["mid", "side"])
        .one("rear", 0.0, 0.1, 1)
        .one("front", 0.0, 0.8, 2);
    build.0.sizes[0].size = size("400x400");
    // 60 mm: narrower than a hand, and than a cell of 70 mm.
    let kinds = |cell: f64| -> Vec<FaultKind> {
        let faults = check_layout(&build.0, Length::from_mm(cell));
        faults.into_iter().map(|fault| fault.kind).collect()
    };
    assert!(matches!(kinds(50.0)[..], [FaultKind::NarrowerThanHand { number: 1, .. }]));
    assert!(matches!(kinds(70.0)[..], [FaultKind::NarrowerThanCell { number: 1, .. }]));
    assert!(matches!(kinds(60.0)[..], [FaultKind::NarrowerThanHand { number: 1, .. }]));
}

#[test]
fn the_widest_place_is_where_the_largest_disc_fits() {
    let build = Build::mirrored()
        .point("mid", 0.0, 0.5)
        .on("side", "outline", "rear-corner", "front-corner", 0.25)
        .seam("slant", &["mid", "side"])
        .one("rear", 0.0, 0.2, 1)
        .one("front", 0.0, 0.8, 2);
    let pattern = build.at("400x400");
    let rear = pattern.by_id("rear").expect("the compartment is there");
    // A house of 400 across, 200 high in the middle and 100 at the sides: the disc stands on the
    // base and under both slopes, whose normal has the share 200 / hypot(100, 200) upwards.
    let upwards = 200.0 / 100.0_f64.hypot(200.0);
    let radius = 200.0 * upwards / (1.0 + upwards);
    assert_near(greatest_width(&pattern, rear).to_mm(), 2.0 * radius, FOUND_TO);
}
