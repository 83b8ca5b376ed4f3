//! Lengths and areas of single curves against closed forms and kurbo.

use std::f64::consts::{FRAC_PI_2, PI};

use cushion::{Chain, Piece, Point};
use kurbo::{CubicBez, Shape};

use crate::build::assert_near;

#[test]
fn a_bow_stands_off_to_the_left_hand() {
    let arc = Piece::bow(Point::new(0.0, 0.0), Point::new(100.0, 0.0), 20.0);
    assert_near(arc.eval(0.5).x, 50.0, 1e-9);
    assert_near(arc.eval(0.5).y, 20.0, 1e-9);
    assert_near(arc.start().distance(Point::ORIGIN), 0.0, 1e-9);
    assert_near(arc.end().distance(Point::new(100.0, 0.0)), 0.0, 1e-9);
    // Radius (50² + 20²) / 40, half angle 2 atan(20 / 50).
    assert_near(arc.length(), 72.5 * 4.0 * 0.4_f64.atan(), 1e-9);
}

#[test]
fn a_half_circle_has_its_area_and_centroid() {
    let (from, to) = (Point::new(30.0, 10.0), Point::new(130.0, 10.0));
    let way = [Piece::bow(to, from, -50.0), Piece::Line(from, to)];
    let area: f64 = way.iter().map(Piece::swept_area).sum();
    assert_near(area, PI * 2500.0 / 2.0, 1e-9);
    let moment = way.iter().map(Piece::swept_moment).fold(kurbo::Vec2::ZERO, |a, b| a + b);
    assert_near(moment.x / area, 80.0, 1e-9);
    // A half disc's centroid stands 4 r / (3 pi) off its straight side.
    assert_near(moment.y / area, 10.0 + 200.0 / (3.0 * PI), 1e-9);
}

#[test]
fn cubics_agree_with_kurbo() {
    let cubic = CubicBez::new((0.0, 0.0), (40.0, 90.0), (120.0, -30.0), (150.0, 60.0));
    let closing = Piece::Line(Point::new(150.0, 60.0), Point::ORIGIN);
    let area = Piece::Cubic(cubic).swept_area() + closing.swept_area();
    let mut path = cubic.to_path(1e-3);
    path.close_path();
    assert_near(area, path.area(), 1e-9);
}

#[test]
fn the_mirror_image_has_the_same_length_and_the_other_area() {
    let pieces = [
        Piece::bow(Point::new(10.0, 0.0), Point::new(60.0, 30.0), 8.0),
        Piece::Cubic(CubicBez::new((60.0, 30.0), (70.0, 60.0), (90.0, 50.0), (95.0, 20.0))),
    ];
    for piece in pieces {
        let image = piece.mirrored();
        assert_near(image.length(), piece.length(), 1e-9);
        assert_near(image.swept_area(), -piece.swept_area(), 1e-9);
        assert_near(image.eval(0.3).x, -piece.eval(0.3).x, 1e-9);
        assert_near(image.eval(0.3).y, piece.eval(0.3).y, 1e-9);
    }
}

#[test]
fn splitting_loses_nothing() {
    let chain = Chain::new(vec![
        Piece::Line(Point::new(0.0, 0.0), Point::new(50.0, 0.0)),
        Piece::Arc { center: Point::new(50.0, 30.0), radius: 30.0, start: -FRAC_PI_2, sweep: 1.2 },
    ]);
    for at in [10.0, 50.0, 60.0] {
        let (before, after) = chain.split_at(at);
        assert_near(before.length(), at, 1e-9);
        assert_near(before.length() + after.length(), chain.length(), 1e-9);
        assert_near(before.end().distance(after.start()), 0.0, 1e-9);
    }
}

#[test]
fn flat_ways_stay_within_the_tolerance() {
    let arc = Piece::bow(Point::new(0.0, 0.0), Point::new(100.0, 0.0), 30.0);
    let line = Chain::new(vec![arc]).flatten(0.05);
    let Piece::Arc { center, radius, .. } = arc else { panic!("a bow is an arc") };
    for pair in line.windows(2) {
        let gap = radius - pair[0].midpoint(pair[1]).distance(center);
        assert!((0.0..=0.05).contains(&gap), "{gap}");
    }
}
