//! Tests of the body: measures, shapes and loads.

use case::BodyValue;
use cushion::{Force, Length, Mass, Side};

use super::*;

fn client() -> SeatedClient {
    SeatedClient::new(Mass::from_kg(78.0))
}

fn body(client: &SeatedClient) -> Body {
    Body::of_client(client).expect("it is a body")
}

fn load() -> Load {
    Load::new(Force::from_n(500.0), [0.0, 0.170])
}

/// Radius of curvature along an axis at the lowest point near a site, m.
fn radius(body: &Body, at: [f64; 2], along: [f64; 2]) -> f64 {
    let h = |step: f64| body.form.height(at[0] + step * along[0], at[1] + step * along[1]);
    let step = 0.005;
    step * step / (h(step) + h(-step) - 2.0 * h(0.0))
}

fn at(body: &Body, name: SiteName) -> [f64; 2] {
    body.site(name).expect("the body has this site").at
}

#[test]
fn the_lowest_point_is_zero_and_nothing_is_lower() {
    let jig = Jig::new(Length::from_mm(440.0), Jig::STEPS[1], Jig::FORWARD);
    for body in [Body::reference(load()), body(&client()), Body::jig(jig, load())] {
        let grid = (-110..=110).flat_map(|i| (0..=200).map(move |j| (i, j)));
        let heights =
            grid.map(|(i, j)| body.form.height(0.002 * f64::from(i), 0.002 * f64::from(j)));
        let least = heights.fold(f64::INFINITY, f64::min) - body.lowest;
        // A grid of 2 mm misses the lowest point by some micrometres.
        assert!((0.0..2e-5).contains(&least), "{least}");
    }
}

/// Values worked out by hand from the formulas of `tests/reference/prototype_cases.md`.
#[test]
fn the_reference_body_has_the_heights_of_its_formulas() {
    let form = ReferenceForm;
    // At a seat bone only the other three surfaces, some 20 mm higher, blend in.
    let bone = form.height(0.060, 0.130);
    let thigh: f64 = 0.090 * (1.0 - (1.0 - (0.025f64 / 0.090).powi(2)).sqrt()) + 0.020;
    let share = |z: f64| (-z / 0.004).exp();
    let other_thigh = 0.090 * (145.0f64 / 90.0).powi(2) + 0.020;
    let sum = 1.0 + share(0.085) + share(thigh) + share(other_thigh);
    assert!((bone + 0.004 * sum.ln()).abs() < 1e-15);
}

#[test]
fn mirror_image_in_mirror_image_out() {
    let mut left = client();
    left.injured.left = true;
    left.obliquity = Some(Obliquity::at_seat_bones(Side::Left, Length::from_mm(12.0)));
    left.windswept = Some((Side::Right, 10.0));
    left.measures.thigh_depth.left = Some(Length::from_mm(450.0));
    left.measures.thigh_depth.right = Some(Length::from_mm(480.0));
    let mut right = left.clone();
    right.injured = case::Sides { left: false, right: true };
    right.obliquity = Some(Obliquity::at_seat_bones(Side::Right, Length::from_mm(12.0)));
    right.windswept = Some((Side::Left, 10.0));
    right.measures.thigh_depth.left = Some(Length::from_mm(480.0));
    right.measures.thigh_depth.right = Some(Length::from_mm(450.0));
    let (left, right) = (body(&left), body(&right));
    for x in [-0.21, -0.06, 0.0, 0.033, 0.18] {
        for y in [0.0, 0.1, 0.125, 0.3, 0.4] {
            assert!((left.height(x, y) - right.height(-x, y)).abs() < 1e-15, "{x} {y}");
            let even = body(&client());
            assert_eq!(even.height(x, y), even.height(-x, y));
        }
    }
}

/// Outside source: Sonenblum et al., Journal of Tissue Viability 29, 69-75 (2020): 91.5 mm, and
/// 65.9 mm with a history of injury.
#[test]
fn the_skin_under_a_seat_bone_has_the_measured_radius() {
    let mut injured = client();
    injured.injured.left = true;
    let body = body(&injured);
    for (side, expected) in [(Side::Left, 0.0659), (Side::Right, 0.0915)] {
        let bone = at(&body, SiteName::SeatBone(side));
        for along in [[1.0, 0.0], [0.0, 1.0]] {
            let found = radius(&body, bone, along);
            // Over 10 mm the hyperboloid is blunter by a few hundredths, and thigh and middle
            // blend in; never more than a tenth.
            assert!((found / expected - 1.0).abs() < 0.1, "{side:?} {along:?}: {found}");
        }
    }
}

#[test]
fn trochanters_are_a_step_above_the_seat_bones() {
    for step in [25.0, 40.0] {
        let client = SeatedClient { trochanter_step: Some(Length::from_mm(step)), ..client() };
        let body = body(&client);
        for side in [Side::Left, Side::Right] {
            let [x, y] = at(&body, SiteName::Trochanter(side));
            // Nothing but the thigh blends in there, and that by less than its 4 mm.
            let found = body.height(x, y) * 1e3;
            assert!((found - step).abs() < 3.0, "{found}");
        }
    }
}

#[test]
fn an_obliquity_lowers_one_seat_bone_by_so_much() {
    let heights = |obliquity| {
        let body = body(&SeatedClient { obliquity, ..client() });
        let height = |side| {
            let [x, y] = at(&body, SiteName::SeatBone(side));
            body.height(x, y)
        };
        height(Side::Right) - height(Side::Left)
    };
    // Thighs move only in part and blend in: half a millimetre.
    let near = |found: f64, expected: f64| (found - expected).abs() < 5e-4;
    let mm = Length::from_mm;
    assert!(near(heights(Some(Obliquity::at_seat_bones(Side::Left, mm(12.0)))), 0.012));
    assert!(near(heights(Some(Obliquity::at_seat_bones(Side::Right, mm(12.0)))), -0.012));
    // At spines 240 mm apart a pelvis with seat bones 120 mm apart shows twice as much.
    assert!(near(heights(Some(Obliquity::at_asis(Side::Left, mm(24.0)))), 0.012));
    assert!(heights(None).abs() < 1e-15);
}

#[test]
fn knees_go_where_they_are_swept_and_as_wide_as_measured() {
    let x = |client: &SeatedClient, side| at(&body(client), SiteName::Thigh(side))[0];
    let swept = SeatedClient { windswept: Some((Side::Left, 15.0)), ..client() };
    assert!(x(&swept, Side::Left) < x(&client(), Side::Left));
    assert!(x(&swept, Side::Right) < x(&client(), Side::Right));
    let mut wide = client();
    wide.measures.external_knee_width = Some(Length::from_mm(400.0));
    // Half way to the knee, half way from hip end (85 mm) to knee (200 - 55 mm).
    assert!((x(&wide, Side::Right) - 0.115).abs() < 1e-9);
}

#[test]
fn a_shorter_thigh_leaves_the_front_edge() {
    let mut short = client();
    short.measures.thigh_depth.left = Some(Length::from_mm(380.0));
    short.measures.thigh_depth.right = Some(Length::from_mm(480.0));
    let body = body(&short);
    assert!(body.height(-0.11, 0.42) > body.height(0.11, 0.42) + 0.05);
}

#[test]
fn the_load_is_the_default_share() {
    let body = body(&client());
    // 78 kg x 0.65 x 9.80665 m/s2.
    assert!((body.load().weight.to_n() - 497.197).abs() < 1e-3);
    assert!((body.load().at[1] - 0.165).abs() < 1e-12 && body.load().at[0] == 0.0);
}

#[test]
fn what_is_no_body_is_refused() {
    let refused = |client: SeatedClient| {
        Body::of_client(&client).map(|_| ()).expect_err("it is refused").what
    };
    assert_eq!(refused(SeatedClient::new(Mass::from_kg(5.0))), BodyValue::Weight);
    assert_eq!(refused(SeatedClient { seat_share: f64::NAN, ..client() }), BodyValue::SeatShare);
    let thighs = case::Sides { left: Some(ThighPose { out: f64::NAN, up: 0.0 }), right: None };
    let soft = |tissue| SeatedClient { tissue_stiffness: Some(tissue), ..client() };
    assert_eq!(refused(soft(f64::NAN)), BodyValue::TissueStiffness);
    assert_eq!(refused(soft(0.0)), BodyValue::TissueStiffness);
    assert_eq!(refused(SeatedClient { thighs, ..client() }), BodyValue::ThighOut);
    let mut narrow = client();
    narrow.measures.trochanter_width = Some(Length::from_mm(150.0));
    assert_eq!(refused(narrow), BodyValue::TrochanterWidth);
}

/// Outside source: Ammer et al., RESNA 2005: cylinders 120 mm and buttons 380 mm apart, 40 mm
/// above them, for cushions of 460 to 480 mm.
#[test]
fn the_jig_has_its_dimensions() {
    let jig = Jig::new(Length::from_mm(470.0), Length::from_mm(40.0), Jig::FORWARD);
    let body = Body::jig(jig, load());
    let [x, y] = at(&body, SiteName::SeatBone(Side::Right));
    assert!((x - 0.060).abs() < 1e-12 && (y - 0.125).abs() < 1e-12);
    assert_eq!(body.height(x, y), 0.0);
    let [x, y] = at(&body, SiteName::Trochanter(Side::Left));
    assert!((x + 0.190).abs() < 1e-12);
    assert!((body.height(x, y) - 0.040).abs() < 1e-12);
    // The plate, beside everything.
    assert!((body.height(0.0, 0.3) - 0.045).abs() < 1e-12);
    let narrow = Jig::new(Length::from_mm(235.0), Length::from_mm(25.0), Jig::FORWARD);
    assert!(
        (at(&Body::jig(narrow, load()), SiteName::SeatBone(Side::Right))[0] - 0.030).abs() < 1e-12
    );
}

/// A body of 360 mm hips with a fixed obliquity, left lower, and both knees to the left.
fn oblique_and_swept(mm: f64, degrees: f64) -> Result<Body, BodyError> {
    let mut own = client();
    own.measures.hip_width = Some(Length::from_mm(360.0));
    own.obliquity = Some(Obliquity::at_seat_bones(Side::Left, Length::from_mm(mm)));
    own.windswept = Some((Side::Left, degrees));
    Body::of_client(&own)
}

#[test]
fn a_pelvis_that_falls_away_sideways_is_refused_and_not_followed_for_ever() {
    let refused = oblique_and_swept(60.0, 45.0).expect_err("it has no lowest point");
    assert_eq!(refused.what, BodyValue::SweptObliquity);
    assert!(refused.value == 60.0 && refused.most < 60.0, "{refused}");
    // Each alone has a lowest point, and so has what is common.
    for (mm, degrees) in [(60.0, 0.0), (0.0, 60.0), (30.0, 60.0), (12.0, 20.0)] {
        assert!(oblique_and_swept(mm, degrees).is_ok(), "{mm} {degrees}");
    }
}

#[test]
fn every_posture_that_a_file_can_tell_ends_in_a_body_or_a_refusal() {
    for mm in [0.0, 25.0, 50.0, 75.0, 100.0] {
        for degrees in [0.0, 20.0, 40.0, 60.0] {
            let found = oblique_and_swept(mm, degrees).map(|body| body.height(0.0, 0.125));
            assert!(found.is_err() || found.is_ok_and(f64::is_finite), "{mm} {degrees}");
        }
    }
}

#[test]
fn only_a_client_that_asks_for_it_is_soft_and_then_has_the_skin_without_load() {
    let jig = Jig::new(Length::from_mm(440.0), Jig::STEPS[1], Jig::FORWARD);
    let rigid = body(&client());
    for own in [Body::reference(load()), Body::jig(jig, load()), rigid.clone()] {
        assert_eq!(own.tissue_stiffness(), None);
    }
    let soft = body(&SeatedClient { tissue_stiffness: Some(0.5e6), ..client() });
    assert_eq!(soft.tissue_stiffness(), Some(0.5e6));
    let [x, y] = at(&soft, SiteName::SeatBone(Side::Left));
    // Sharper around the seat bone: the foam's pressure had flattened it.
    for out in [0.010, 0.020, 0.030] {
        assert!(soft.height(x - out, y) > rigid.height(x - out, y));
    }
    // A base that sags does so by as much under both.
    let sagged = |body: &Body| {
        let by = Length::from_mm(20.0);
        body.clone().over_sag(by, Length::from_mm(440.0)).height(x, y) - body.height(x, y)
    };
    assert!((sagged(&soft) - sagged(&rigid)).abs() < 1e-15);
}
