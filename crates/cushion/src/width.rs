//! How wide a compartment is at its widest place: the largest disc that fits in it.

use i_overlay::mesh::float::outline::offset::OutlineOffset;
use i_overlay::mesh::float::style::{LineJoin, OutlineStyle};
use kurbo::Point;

use crate::{CompartmentIx, Length, Pattern};

/// Straight ways stand for curves within this, in millimetres: a fifth of what can be sewn.
const FLAT: f64 = 0.1;
/// Angle of a step on a rounded corner of the disc, in radians.
pub(crate) const STEP: f64 = 0.1;
/// The width is found to this, in millimetres.
pub(crate) const RESOLUTION: f64 = 0.5;

/// Closed ways, the outer ones counter-clockwise and the holes clockwise.
pub(crate) type Contours = Vec<Vec<[f64; 2]>>;

/// Returns the width of the widest place of a compartment, to half a millimetre: the diameter of
/// the largest disc that fits in it anywhere.
#[must_use]
pub fn greatest_width(pattern: &Pattern, compartment: CompartmentIx) -> Length {
    Length::from_mm(largest_disc(&contours(pattern, compartment)).0)
}

/// Returns the widest place of a compartment: the diameter of the largest disc that fits in it, to
/// half a millimetre, and the disc's centre, in millimetres.
#[must_use]
pub fn widest_place(pattern: &Pattern, compartment: CompartmentIx) -> (Length, Point) {
    let (diameter, centre) = largest_disc(&contours(pattern, compartment));
    (Length::from_mm(diameter), centre)
}

/// Returns the diameter of the largest disc that fits in a shape, and its centre.
pub(crate) fn largest_disc(shape: &Contours) -> (f64, Point) {
    let first = shape.first().and_then(|line| line.first()).copied().unwrap_or_default();
    let mut centre = Point::new(first[0], first[1]);
    // No disc is larger than the one of the same area.
    let (mut fits, mut fails) = (0.0, 2.0 * (area(shape) / std::f64::consts::PI).sqrt() + 0.1);
    while fails - fits > RESOLUTION {
        let middle = f64::midpoint(fits, fails);
        let centres = moved(shape, -middle / 2.0);
        if let Some(place) = centres.first().and_then(middle_of) {
            (fits, centre) = (middle, place);
        } else {
            fails = middle;
        }
    }
    (fits, centre)
}

/// Whether a disc of this diameter fits in a shape anywhere.
pub(crate) fn holds_disc(shape: &Contours, diameter: f64) -> bool {
    !moved(shape, -diameter / 2.0).is_empty()
}

/// The mean of the corners of a shape's outer way.
fn middle_of(shape: &Contours) -> Option<Point> {
    let line = shape.first().filter(|line| !line.is_empty())?;
    let sum = line.iter().fold([0.0; 2], |sum, at| [sum[0] + at[0], sum[1] + at[1]]);
    Some(Point::new(sum[0] / line.len() as f64, sum[1] / line.len() as f64))
}

/// A compartment as straight ways.
pub(crate) fn contours(pattern: &Pattern, compartment: CompartmentIx) -> Contours {
    let compartment = &pattern[compartment];
    let line = |ring| {
        let mut points: Vec<[f64; 2]> = Vec::new();
        for piece in pattern.pieces(ring) {
            let flat = crate::Chain::new(vec![piece]).flatten(FLAT);
            points.extend(flat[..flat.len() - 1].iter().map(|point| [point.x, point.y]));
        }
        points
    };
    std::iter::once(&compartment.outer).chain(&compartment.holes).map(line).collect()
}

/// Moves the border of a shape outwards by so much, inwards where negative, with round corners.
pub(crate) fn moved(shape: &Contours, by: f64) -> Vec<Contours> {
    shape.outline(&OutlineStyle::new(by).line_join(LineJoin::Round(STEP)))
}

/// Area of an outer contour less its holes.
pub(crate) fn area(contours: &Contours) -> f64 {
    let signed = |line: &Vec<[f64; 2]>| -> f64 {
        (0..line.len())
            .map(|place| {
                let (a, b) = (line[place], line[(place + 1) % line.len()]);
                (a[0] * b[1] - b[0] * a[1]) / 2.0
            })
            .sum()
    };
    contours.iter().map(signed).sum()
}
