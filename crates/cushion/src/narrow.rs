//! Narrow places of a compartment: arms and necks that a round hand does not reach, and acute
//! corners, each with its place.

use std::f64::consts::PI;

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;
use kurbo::{Line, ParamCurveNearest, Point, Vec2};

use crate::curve::Piece;
use crate::width::{Contours, RESOLUTION, STEP, area, contours, largest_disc, moved};
use crate::{CompartmentIx, Length, Pattern};

/// A corner sharper than this is acute: 30 degrees, by decision. A cell of 50 mm stays some 70 mm
/// away from its tip.
const ACUTE: f64 = 30.0 * PI / 180.0;
/// How far along a seam its direction at a corner is taken, in millimetres.
const ALONG: f64 = 2.0;
/// What a disc of radius r leaves of a corner may be larger by this share, and by this of r²:
/// straight ways stand for curves.
const SHARE_MORE: f64 = 0.05;
const MORE: f64 = 0.03;
/// Half a degree: corners are found from points 2 mm away.
const ANGLE: f64 = 0.5 * PI / 180.0;

/// A place of a compartment that is too narrow for a disc, or a corner that is acute.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NarrowPlace {
    /// Where, in millimetres.
    pub at: Point,
    /// The width there.
    pub width: Length,
}

/// An acute corner of a compartment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct AcuteCorner {
    /// Where, in millimetres.
    pub at: Point,
    /// Its angle in degrees.
    pub degrees: f64,
}

/// Returns the arms and necks of a compartment that are narrower than `width`, the largest first.
///
/// A disc of that width is led everywhere in the compartment: what it does not reach is an arm,
/// unless it is no more than a disc leaves of any corner. Where it cannot go from one part to
/// another there is a neck. None where the disc fits nowhere: then all is narrow, see
/// [`crate::greatest_width`].
#[must_use]
pub fn narrow_places(
    pattern: &Pattern,
    compartment: CompartmentIx,
    width: Length,
) -> Vec<NarrowPlace> {
    let shape = contours(pattern, compartment);
    let radius = width.to_mm() / 2.0;
    // A hundredth less on the way in, so that a compartment just as wide as the disc passes.
    let centres = moved(&shape, 0.01 - radius);
    if centres.is_empty() {
        return Vec::new();
    }
    let corners = acute_corners(pattern, compartment);
    let reached: Contours = centres.iter().flat_map(|own| moved(own, radius)).flatten().collect();
    let left: Vec<Contours> = shape.overlay(&reached, OverlayRule::Difference, FillRule::NonZero);
    let mut arms: Vec<(f64, NarrowPlace)> = left
        .iter()
        .filter(|piece| area(piece) > allowance(piece, radius, &corners))
        .map(|piece| {
            let (_, at) = largest_disc(piece);
            let width = widest_disc_over(&shape, at, 2.0 * radius);
            (area(piece), NarrowPlace { at, width: Length::from_mm(width) })
        })
        .collect();
    arms.sort_by(|a, b| b.0.total_cmp(&a.0));
    let mut places: Vec<NarrowPlace> = arms.into_iter().map(|(_, place)| place).collect();
    if let Some(neck) = neck(&shape, &centres, 2.0 * radius) {
        // What is left of a neck is known better as one.
        places.retain(|place| place.at.distance(neck.at) > radius);
        places.insert(0, neck);
    }
    places
}

/// The diameter, below `most`, of the largest disc in a shape that covers a place.
fn widest_disc_over(shape: &Contours, at: Point, most: f64) -> f64 {
    let covers = |diameter: f64| {
        let centres = moved(shape, -diameter / 2.0);
        let lines = centres.iter().flatten();
        let nearest = lines.flat_map(|line| {
            (0..line.len()).map(move |place| {
                let ends = [line[place], line[(place + 1) % line.len()]];
                let [from, to] = ends.map(|end| Point::new(end[0], end[1]));
                Line::new(from, to).nearest(at, 0.0).distance_sq.sqrt()
            })
        });
        nearest.fold(f64::INFINITY, f64::min) <= diameter / 2.0
    };
    let (mut open, mut closed) = (0.0, most);
    while closed - open > RESOLUTION {
        let middle = f64::midpoint(open, closed);
        if covers(middle) { open = middle } else { closed = middle }
    }
    open
}

/// What a disc leaves of the corner that a left piece is, at most; of acute corners, more.
fn allowance(piece: &Contours, radius: f64, corners: &[AcuteCorner]) -> f64 {
    let within = |corner: &&AcuteCorner| {
        let near = |at: &[f64; 2]| Point::new(at[0], at[1]).distance(corner.at) < 0.5;
        piece.iter().flatten().any(near)
    };
    let sharpest = corners.iter().filter(within).map(|corner| corner.degrees.to_radians());
    let angle = sharpest.reduce(f64::min).unwrap_or_else(|| (PI - hollow(piece) - STEP).max(ACUTE));
    // Between the legs and the disc: two right-angled triangles less a sector.
    let corner = 1.0 / libm::tan(angle / 2.0) - (PI - angle) / 2.0;
    ((1.0 + SHARE_MORE) * corner + MORE) * radius * radius
}

/// By how much the border of a left piece turns inwards: the angle over which the disc touches it,
/// in radians, less up to a step of the disc's border.
fn hollow(piece: &Contours) -> f64 {
    let turns = piece.iter().flat_map(|line| {
        (0..line.len()).map(|place| {
            let at = |step: usize| {
                let [x, y] = line[(place + step) % line.len()];
                Point::new(x, y)
            };
            turn(at(1) - at(0), at(2) - at(1))
        })
    });
    turns.filter(|turn| *turn < 0.0).map(f64::abs).sum()
}

/// The place where the way between parts of a compartment is too narrow.
fn neck(shape: &Contours, centres: &[Contours], width: f64) -> Option<NarrowPlace> {
    let (first, rest) = centres.split_first()?;
    let points = |shape: &Contours| -> Vec<Point> {
        shape.iter().flatten().map(|at| Point::new(at[0], at[1])).collect()
    };
    let (own, others) = (points(first), rest.iter().flat_map(points).collect::<Vec<_>>());
    let pairs = own.iter().flat_map(|a| others.iter().map(move |b| (*a, *b)));
    let (a, b) = pairs.min_by(|a, b| a.0.distance(a.1).total_cmp(&b.0.distance(b.1)))?;
    let (mut open, mut closed) = (0.0, width);
    while closed - open > RESOLUTION {
        let middle = f64::midpoint(open, closed);
        if moved(shape, -middle / 2.0).len() > 1 { closed = middle } else { open = middle }
    }
    Some(NarrowPlace { at: a.midpoint(b), width: Length::from_mm(open) })
}

/// Returns the corners of a compartment that are sharper than 30 degrees.
#[must_use]
pub fn acute_corners(pattern: &Pattern, compartment: CompartmentIx) -> Vec<AcuteCorner> {
    let compartment = &pattern[compartment];
    let mut corners = Vec::new();
    for ring in std::iter::once(&compartment.outer).chain(&compartment.holes) {
        let pieces: Vec<Piece> = pattern.pieces(ring).collect();
        for (place, piece) in pieces.iter().enumerate() {
            let next = &pieces[(place + 1) % pieces.len()];
            // The compartment is on the left hand.
            let angle = PI - turn(last_way(piece), -last_way(&next.reversed()));
            if angle < ACUTE - ANGLE {
                corners.push(AcuteCorner { at: piece.end(), degrees: angle.to_degrees() });
            }
        }
    }
    corners
}

/// From a point a little before the end of a piece to its end.
fn last_way(piece: &Piece) -> Vec2 {
    let share = (ALONG / piece.length()).min(0.5);
    piece.end() - piece.eval(1.0 - share)
}

/// The turn from one direction to another, to the left positive, in radians.
fn turn(from: Vec2, to: Vec2) -> f64 {
    libm::atan2(from.cross(to), from.dot(to))
}
