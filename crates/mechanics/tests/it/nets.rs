//! Seam nets drawn by hand, for tests. Lengths in millimetres.

use std::f64::consts::{PI, TAU};

use cushion::{Chain, Piece, Point};
use kurbo::{CubicBez, Vec2};
use mechanics::SeamNet;

/// A seam with the compartment to the left hand and to the right.
pub(crate) type Seam = (Chain, Option<u32>, Option<u32>);

pub(crate) fn at(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

pub(crate) fn line(from: Point, to: Point) -> Chain {
    Chain::new(vec![Piece::Line(from, to)])
}

/// Straight from point to point.
pub(crate) fn polyline(points: &[Point]) -> Chain {
    Chain::new(points.windows(2).map(|pair| Piece::Line(pair[0], pair[1])).collect())
}

/// An arc around `center`, angles in degrees.
pub(crate) fn arc(center: Point, radius: f64, from: f64, sweep: f64) -> Piece {
    Piece::Arc { center, radius, start: from * PI / 180.0, sweep: sweep * PI / 180.0 }
}

/// What one chain encloses, counter-clockwise.
pub(crate) fn inside(chain: Chain) -> SeamNet {
    SeamNet::new(vec![(chain, Some(0), None)], false)
}

/// A polygon, counter-clockwise.
pub(crate) fn polygon(corners: &[Point]) -> SeamNet {
    let mut closed = corners.to_vec();
    closed.push(corners[0]);
    inside(polyline(&closed))
}

pub(crate) fn regular_polygon(sides: usize, side: f64) -> SeamNet {
    let radius = side / (2.0 * (PI / sides as f64).sin());
    let corner = |at: usize| (Vec2::from_angle(TAU * at as f64 / sides as f64) * radius).to_point();
    polygon(&(0..sides).map(corner).collect::<Vec<_>>())
}

pub(crate) fn circle(radius: f64) -> SeamNet {
    inside(Chain::new(vec![arc(at(0.0, 0.0), radius, 0.0, 360.0)]))
}

/// An ellipse from 64 cubics, which leave it by less than a millionth of its size.
pub(crate) fn ellipse(a: f64, b: f64) -> SeamNet {
    let parts = 64;
    let step = TAU / f64::from(parts);
    let reach = 4.0 / 3.0 * (step / 4.0).tan();
    let place = |angle: f64| at(a * angle.cos(), b * angle.sin());
    let way = |angle: f64| Vec2::new(-a * angle.sin(), b * angle.cos()) * reach;
    let piece = |part: i32| {
        let (from, to) = (step * f64::from(part), step * f64::from(part + 1));
        let (p0, p3) = (place(from), if part + 1 == parts { place(0.0) } else { place(to) });
        Piece::Cubic(CubicBez::new(p0, p0 + way(from), p3 - way(to), p3))
    };
    inside(Chain::new((0..parts).map(piece).collect()))
}

/// A sector of an annulus; a whole sector where the inner radius is zero.
pub(crate) fn sector(inner: f64, outer: f64, degrees: f64) -> SeamNet {
    let centre = at(0.0, 0.0);
    let rim = arc(centre, outer, 0.0, degrees);
    let pieces = if inner == 0.0 {
        vec![Piece::Line(centre, rim.start()), rim, Piece::Line(rim.end(), centre)]
    } else {
        let hub = arc(centre, inner, degrees, -degrees);
        vec![Piece::Line(hub.end(), rim.start()), rim, Piece::Line(rim.end(), hub.start()), hub]
    };
    inside(Chain::new(pieces))
}

/// An annulus whose inner seam is held too.
pub(crate) fn annulus(inner: f64, outer: f64) -> SeamNet {
    let ring = |radius| Chain::new(vec![arc(at(0.0, 0.0), radius, 0.0, 360.0)]);
    SeamNet::new(vec![(ring(outer), Some(0), None), (ring(inner), None, Some(0))], false)
}

/// A rectangle cut by straight seams at `xs` and `ys`, the sides of the rectangle included;
/// compartments by rows from the rear left.
pub(crate) fn grid(xs: &[f64], ys: &[f64], mirrored: bool) -> SeamNet {
    let (columns, rows) = (xs.len() - 1, ys.len() - 1);
    let cell = |column: Option<usize>, row: Option<usize>| match (column, row) {
        (Some(column), Some(row)) if column < columns && row < rows => {
            Some((row * columns + column) as u32)
        }
        _ => None,
    };
    let mut seams: Vec<Seam> = Vec::new();
    for (row, y) in ys.iter().enumerate() {
        for (column, pair) in xs.windows(2).enumerate() {
            let (left, right) =
                (cell(Some(column), Some(row)), cell(Some(column), row.checked_sub(1)));
            seams.push((line(at(pair[0], *y), at(pair[1], *y)), left, right));
        }
    }
    for (column, x) in xs.iter().enumerate() {
        for (row, pair) in ys.windows(2).enumerate() {
            let (left, right) =
                (cell(column.checked_sub(1), Some(row)), cell(Some(column), Some(row)));
            seams.push((line(at(*x, pair[0]), at(*x, pair[1])), left, right));
        }
    }
    SeamNet::new(seams, mirrored)
}

/// Two rows by two sides on 440 x 400 mm, as in the straight-seam reference cases.
pub(crate) fn case_four() -> SeamNet {
    grid(&[-220.0, 0.0, 220.0], &[0.0, 220.0, 400.0], true)
}

/// Three rows by two sides on 440 x 400 mm, as in the straight-seam reference cases.
pub(crate) fn case_six() -> SeamNet {
    grid(&[-220.0, 0.0, 220.0], &[0.0, 140.0, 272.0, 400.0], true)
}

/// A right half with curved seams, a rounded corner, a compartment across the centre line with
/// an island in it, and its mirror image.
pub(crate) fn curved() -> SeamNet {
    let bow = |a: Point, b: Point, height: f64| Chain::new(vec![Piece::bow(a, b, height)]);
    let rear = Chain::new(vec![
        Piece::Line(at(0.0, 0.0), at(180.0, 0.0)),
        arc(at(180.0, 40.0), 40.0, -90.0, 90.0),
        Piece::Line(at(220.0, 40.0), at(220.0, 200.0)),
    ]);
    let front = Chain::new(vec![
        Piece::Line(at(220.0, 200.0), at(220.0, 350.0)),
        arc(at(170.0, 350.0), 50.0, 0.0, 90.0),
        Piece::Line(at(170.0, 400.0), at(0.0, 400.0)),
    ]);
    let isle = Chain::new(vec![Piece::Cubic(CubicBez::new(
        at(0.0, 80.0),
        at(90.0, 80.0),
        at(90.0, 170.0),
        at(0.0, 170.0),
    ))]);
    // Across: rear 0 with island 1 in it; front left 2, front right 3.
    let half: Vec<Seam> = vec![
        (rear, Some(0), None),
        (front, Some(3), None),
        (isle, Some(1), Some(0)),
        (bow(at(0.0, 230.0), at(220.0, 200.0), -20.0), Some(3), Some(0)),
    ];
    let image = |side: Option<u32>| side.map(|side| [0, 1, 3, 2][side as usize]);
    let mut seams = half.clone();
    for (chain, left, right) in half {
        seams.push((chain.mirrored(), image(right), image(left)));
    }
    seams.push((line(at(0.0, 230.0), at(0.0, 400.0)), Some(2), Some(3)));
    SeamNet::new(seams, true)
}
