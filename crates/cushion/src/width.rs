//! Least width of a compartment, by opening with a disc: what a round hand cannot reach.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::single::SingleFloatOverlay;
use i_overlay::mesh::float::outline::offset::OutlineOffset;
use i_overlay::mesh::float::style::{LineJoin, OutlineStyle};

use crate::{CompartmentIx, Length, Pattern};

/// Straight ways stand for curves within this, in millimetres: a fifth of what can be sewn.
const FLAT: f64 = 0.1;
/// Angle of a step on a rounded corner of the disc, in radians.
const STEP: f64 = 0.1;
/// A disc of radius r misses 1.24 r² of a corner of 45 degrees; a corner may be that sharp
/// without counting as a narrow place.
const CORNER_ALLOWANCE: f64 = 1.3;
/// The width is found to this, in millimetres.
const RESOLUTION: f64 = 0.5;

type Contours = Vec<Vec<[f64; 2]>>;

/// Returns the width of the narrowest place of a compartment, to half a millimetre.
///
/// It is the diameter of the largest disc that reaches the whole compartment in one sweep, but
/// for its corners: the disc's centre can go from everywhere to everywhere, and nothing larger
/// than a sharp corner is left over.
#[must_use]
pub fn least_width(pattern: &Pattern, compartment: CompartmentIx) -> Length {
    largest_disc(&contours(pattern, compartment), disc_reaches)
}

/// Returns the width of the widest place of a compartment, to half a millimetre: the diameter of
/// the largest disc that fits in it anywhere.
#[must_use]
pub fn greatest_width(pattern: &Pattern, compartment: CompartmentIx) -> Length {
    largest_disc(&contours(pattern, compartment), |shape, diameter| {
        !shape.outline(&round(-diameter / 2.0)).is_empty()
    })
}

/// Returns the diameter of the largest disc for which `suits` holds, as it does for all smaller.
fn largest_disc(shape: &Contours, suits: impl Fn(&Contours, f64) -> bool) -> Length {
    // No disc is larger than the one of the same area.
    let (mut fits, mut fails) = (0.0, 2.0 * (area(shape) / std::f64::consts::PI).sqrt() + 0.1);
    while fails - fits > RESOLUTION {
        let middle = f64::midpoint(fits, fails);
        if suits(shape, middle) {
            fits = middle;
        } else {
            fails = middle;
        }
    }
    Length::from_mm(fits)
}

/// Returns whether a disc of this diameter reaches the whole compartment but for its corners.
#[must_use]
pub(crate) fn is_as_wide(pattern: &Pattern, compartment: CompartmentIx, width: Length) -> bool {
    disc_reaches(&contours(pattern, compartment), width.to_mm())
}

fn contours(pattern: &Pattern, compartment: CompartmentIx) -> Contours {
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

fn disc_reaches(shape: &Contours, diameter: f64) -> bool {
    let radius = diameter / 2.0;
    // A hundredth less on the way in, so that a compartment just as wide as the disc passes.
    let centres = shape.outline(&round(0.01 - radius));
    if centres.len() != 1 {
        return false;
    }
    let reached = centres.outline(&round(radius));
    let left: Vec<Contours> = shape.overlay(&reached, OverlayRule::Difference, FillRule::EvenOdd);
    left.iter().all(|piece| area(piece) <= CORNER_ALLOWANCE * radius * radius)
}

/// Moves a contour outwards by so much, inwards where negative, with round corners.
fn round(by: f64) -> OutlineStyle<f64> {
    OutlineStyle::new(by).line_join(LineJoin::Round(STEP))
}

/// Area of an outer contour less its holes.
fn area(contours: &Contours) -> f64 {
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
