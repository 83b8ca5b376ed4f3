//! The body from behind, with the places that a page lets somebody choose.

use case::SiteName;
use cushion::Side;
use kurbo::{Affine, BezPath, Ellipse, Point, Shape as _};
use words::Language;

use super::super::look::{ACCENT, PALE};
use super::WIDTH;
use super::sketch::{LINE, Sketch, limb, mirrored, smooth};
use crate::color::Color;
use crate::page::{Fill, Pen};
use crate::picture::Picture;
use crate::text::SetError;

/// Height of the picture, in millimetres.
const HEIGHT: f64 = 84.0;
/// The middle of the body.
const MIDDLE: f64 = WIDTH / 2.0;
/// Radius of the ring around a place.
const RING: f64 = 2.6;

/// A body from behind, with the places on it.
#[derive(Clone, Debug, PartialEq)]
pub struct BodyPicture {
    /// The drawing, with a ring at each place.
    pub picture: Picture,
    /// Each place with the middle of its ring, as shares of the picture's width and height, 0 to 1
    /// from the top left corner.
    pub sites: Vec<(SiteName, f64, f64)>,
}

/// Draws a seated body from behind, its thighs below, with a ring at each named place. No two
/// places are nearer than 0.14 of the width.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn body_picture(language: &dyn Language) -> Result<BodyPicture, SetError> {
    let mut sketch = Sketch::new();
    sketch.body_from_behind();
    for name in SiteName::ALL {
        let ring = Pen::solid(0.9, ACCENT);
        sketch.block.circle(place(name), RING, Some(Fill::solid(Color::WHITE)), Some(ring));
    }
    sketch.sides(language, [9.5, WIDTH - 9.5], 44.0, false)?;
    let sites = SiteName::ALL.map(|name| {
        let at = place(name);
        (name, at.x / WIDTH, at.y / HEIGHT)
    });
    let picture = sketch.finish([WIDTH, HEIGHT], language.body_shows());
    Ok(BodyPicture { picture, sites: sites.to_vec() })
}

/// Where a place is drawn.
fn place(name: SiteName) -> Point {
    let on = |side, across: f64, y| match side {
        Side::Left => Point::new(MIDDLE - across, y),
        Side::Right => Point::new(MIDDLE + across, y),
    };
    match name {
        SiteName::SeatBone(side) => on(side, 8.6, 57.0),
        SiteName::Coccyx => Point::new(MIDDLE, 46.0),
        SiteName::Trochanter(side) => on(side, 19.4, 48.0),
        SiteName::Thigh(side) => on(side, 13.6, 71.0),
    }
}

impl Sketch {
    fn body_from_behind(&mut self) {
        let shift = Affine::translate((MIDDLE, 0.0));
        let both = |own: &BezPath| [shift * own.clone(), shift * mirrored(own)];
        for side in [-1.0, 1.0] {
            self.thigh_from_behind(side);
        }
        let trunk = smooth(&[
            (0.0, 14.6),
            (9.0, 15.2),
            (15.0, 17.2),
            (15.6, 23.0),
            (13.6, 33.0),
            (16.6, 42.0),
            (21.6, 49.0),
            (21.0, 58.0),
            (14.0, 64.6),
            (5.0, 64.0),
            (0.0, 62.0),
            (-5.0, 64.0),
            (-14.0, 64.6),
            (-21.0, 58.0),
            (-21.6, 49.0),
            (-16.6, 42.0),
            (-13.6, 33.0),
            (-15.6, 23.0),
            (-15.0, 17.2),
            (-9.0, 15.2),
        ]);
        let arm = [
            limb((14.6, 19.4), 4.0, (19.4, 33.0), 2.9),
            limb((19.4, 33.0), 2.9, (20.8, 40.0), 2.3),
        ];
        let neck = limb((MIDDLE, 11.0), 2.8, (MIDDLE, 16.0), 3.6);
        let head = Ellipse::new((MIDDLE, 7.4), (4.6, 5.6), 0.0).to_path(1e-3);
        let mut shapes: Vec<BezPath> = arm.iter().flat_map(both).collect();
        shapes.extend([neck, head, shift * trunk]);
        self.silhouette(&shapes, PALE);
        // The cleft.
        let cleft = [Point::new(MIDDLE, 50.5), Point::new(MIDDLE, 62.0)];
        self.block.open_path(&cleft, &LINE);
    }

    /// A thigh of a side, -1 left and 1 right, open where the drawing ends.
    fn thigh_from_behind(&mut self, side: f64) {
        let at = |x: f64, y: f64| Point::new(MIDDLE + side * x, y);
        let mut outer = BezPath::new();
        outer.move_to(at(21.0, 54.0));
        outer.curve_to(at(22.4, 62.0), at(22.2, 72.0), at(20.8, HEIGHT - 1.0));
        let mut inner = BezPath::new();
        inner.move_to(at(6.6, HEIGHT - 1.0));
        inner.curve_to(at(5.4, 76.0), at(4.0, 70.0), at(2.6, 60.0));
        let mut inside = outer.clone();
        inside.line_to(at(6.6, HEIGHT - 1.0));
        inside.extend(inner.iter().skip(1));
        inside.close_path();
        self.block.path(inside, Some(Fill::solid(PALE)), None);
        for line in [outer, inner] {
            self.block.path(line, None, Some(Pen::solid(LINE.width, LINE.color)));
        }
    }
}
