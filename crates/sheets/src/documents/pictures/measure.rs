//! How each measure of a client and a chair is taken: one picture for each drawing that a question
//! asks for.

use case::question::Drawing;
use kurbo::{Affine, Point, Rect, Shape as _, Vec2};
use words::Language;

use super::super::look::{ACCENT, PALE};
use super::super::measuring_form::person_from_above;
use super::WIDTH;
use super::pelvis::seat_bones;
use super::seated::{ANKLE, BACK_OF_KNEE, BUTTOCK, HIP, KNEE, SEAT_BONE, SHOULDER, SOLE};
use super::sketch::{LINE, SIDE, Sketch, limb, smooth};
use crate::color::Color;
use crate::page::{Align, Fill, Pen};
use crate::picture::Picture;
use crate::text::SetError;

/// Height of a picture, in millimetres.
const HEIGHT: f64 = 62.0;
/// Where a person seen from above or from behind stands, and the drawing's edges beside it.
const MIDDLE: f64 = 32.0;
const EDGES: [f64; 2] = [10.5, 53.5];
/// Where the name begins beside such a drawing, and how wide it may be.
const BESIDE: f64 = 61.5;
const ROOM: f64 = WIDTH - BESIDE - 0.5;
/// The corner of the figure from above: its middle, and the page's upper edge.
const ABOVE: Point = Point::new(MIDDLE, 2.0);

/// Draws how something is measured: a person or a chair, and a strong line with the measure's name.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn measure_picture(language: &dyn Language, drawing: Drawing) -> Result<Picture, SetError> {
    let mut sketch = Sketch::new();
    let name = language.measure_name(drawing);
    match drawing {
        Drawing::HipWidth => sketch.across(language, name, 36.0, 17.2, Some(12.0))?,
        Drawing::TrochanterWidth => sketch.across(language, name, 44.5, 16.4, None)?,
        Drawing::KneeWidth => sketch.across(language, name, 12.4, 14.3, Some(8.0))?,
        Drawing::SeatBoneSpacing => sketch.seat_bone_spacing(language, name)?,
        Drawing::Obliquity => sketch.obliquity(language, name)?,
        Drawing::Rotation => sketch.rotation(language, name)?,
        Drawing::Windswept => sketch.windswept(language, name)?,
        Drawing::ThighDepth => sketch.thigh_depth(name)?,
        Drawing::LowerLegLength => sketch.lower_leg_length(name)?,
        Drawing::LegDifference => sketch.leg_difference(name)?,
        Drawing::HipFlexion => sketch.hip_flexion(name)?,
        Drawing::PoplitealAngle => sketch.popliteal_angle(name)?,
        Drawing::Tilt => sketch.tilt(name)?,
        Drawing::SeatBonesForward => sketch.seat_bones_forward(name)?,
        Drawing::ChairWidth => sketch.chair_width(language, name)?,
        Drawing::SlingSag => sketch.sling_sag(language, name)?,
        Drawing::ChairDepth => sketch.chair_depth(name)?,
        Drawing::Footrest => sketch.footrest(name)?,
        Drawing::ChairTilt => sketch.chair_tilt(name)?,
        Drawing::Crown => sketch.crown(name)?,
    }
    Ok(sketch.finish([WIDTH, HEIGHT], language.how_it_is_measured(drawing)))
}

/// A point of a picture.
const fn p(x: f64, y: f64) -> Point {
    Point::new(x, y)
}

/// From above and from behind.
impl Sketch {
    /// The front in words, over a person from above.
    fn front(&mut self, language: &dyn Language) -> Result<(), SetError> {
        let front = language.shared().front;
        self.block.text(p(MIDDLE, 4.6), front, &SIDE, Align::Centre).map(drop)
    }

    /// Width of a person from above: so far down the figure, so far from its middle; boards as long
    /// stand at both sides.
    fn across(
        &mut self,
        language: &dyn Language,
        name: &str,
        down: f64,
        half: f64,
        boards: Option<f64>,
    ) -> Result<(), SetError> {
        const THICK: f64 = 1.8;
        person_from_above(&mut self.block, ABOVE);
        let y = ABOVE.y + down;
        for side in [-1.0, 1.0] {
            if let Some(long) = boards {
                let middle = p(MIDDLE + side * (half + THICK / 2.0), y);
                let place = Rect::from_center_size(middle, (THICK, long));
                self.rounded(place, Some(Color::WHITE), LINE);
            } else {
                self.guide(p(MIDDLE + side * half, y - 6.0), p(MIDDLE + side * half, y + 6.0));
            }
        }
        self.dimension(p(MIDDLE - half, y), p(MIDDLE + half, y));
        // Where the name's line does not go through the word at the side.
        let words = if y < 30.0 { 42.0 } else { 20.0 };
        self.sides(language, EDGES, words, false)?;
        self.front(language)?;
        self.led_name(p(MIDDLE + half + THICK + 1.0, y), name)
    }

    /// The name beside a drawing, at the height of its line and led to it.
    fn led_name(&mut self, from: Point, name: &str) -> Result<(), SetError> {
        self.block.line(from, p(BESIDE - 1.0, from.y), &Pen::dashed(0.4, ACCENT, 0.4, 1.4));
        self.name(p(BESIDE, from.y), ROOM, name, Align::Left)
    }

    fn seat_bone_spacing(&mut self, language: &dyn Language, name: &str) -> Result<(), SetError> {
        let place = Affine::translate((MIDDLE, 24.0));
        self.pelvis(place);
        let [left, right] = seat_bones(place);
        let y = 50.0;
        self.guide(left, p(left.x, y + 1.0));
        self.guide(right, p(right.x, y + 1.0));
        self.dimension(p(left.x, y), p(right.x, y));
        self.sides(language, EDGES, 24.0, false)?;
        self.led_name(p(right.x + 1.5, y), name)
    }

    fn obliquity(&mut self, language: &dyn Language, name: &str) -> Result<(), SetError> {
        let turn = Affine::rotate(f64::to_radians(-12.0));
        let place = Affine::translate((MIDDLE, 26.0)) * turn;
        self.pelvis(place);
        self.between_seat_bones(place, MIDDLE);
        let [left, right] = seat_bones(place);
        self.sides(language, EDGES, 24.0, false)?;
        self.led_name(p(MIDDLE + 2.0, left.y.max(right.y) + 4.6), name)
    }

    fn rotation(&mut self, language: &dyn Language, name: &str) -> Result<(), SetError> {
        const TURN: f64 = 14.0;
        person_from_above(&mut self.block, ABOVE);
        let middle = p(MIDDLE, 46.0);
        let place = Affine::translate(middle.to_vec2()) * Affine::rotate(-TURN.to_radians());
        let pelvis = smooth(&[
            (-11.5, -5.0),
            (-12.6, 0.0),
            (-9.0, 5.0),
            (-3.0, 6.6),
            (3.0, 6.6),
            (9.0, 5.0),
            (12.6, 0.0),
            (11.5, -5.0),
            (7.0, -1.4),
            (0.0, 0.8),
            (-7.0, -1.4),
        ]);
        self.block.path(place * pelvis, Some(Fill::solid(Color::WHITE)), Some(LINE));
        let [left, right] = [-11.2, 11.2].map(|x| place * p(x, -4.4));
        self.landmark(left);
        self.landmark(right);
        let along = (right - left).normalize();
        self.guide(left - along * 4.0, right + along * 8.0);
        self.guide(left - (4.0, 0.0), left + (34.0, 0.0));
        self.angle(left, 31.0, [0.0, -TURN]);
        self.sides(language, EDGES, 20.0, false)?;
        self.front(language)?;
        self.led_name(p(left.x + 35.0, 43.0), name)
    }

    fn windswept(&mut self, language: &dyn Language, name: &str) -> Result<(), SetError> {
        const ASIDE: f64 = 17.0;
        let (sin, cos) = ASIDE.to_radians().sin_cos();
        let hips = [20.5, 34.5].map(|x| p(x, 49.5));
        let knee = |hip: Point, long: f64| p(hip.x + sin * long, hip.y - cos * long);
        let mut shapes = vec![limb((20.5, 50.0), 8.8, (34.5, 50.0), 8.8)];
        shapes.extend(hips.map(|hip| {
            let knee = knee(hip, 33.0);
            limb((hip.x, hip.y - 1.0), 7.6, (knee.x, knee.y), 5.2)
        }));
        self.silhouette(&shapes, PALE);
        let hip = hips[1];
        self.landmark(hip);
        self.landmark(knee(hip, 32.0));
        self.guide(hip, p(hip.x, 8.0));
        self.guide(hip, knee(hip, 43.0));
        self.angle(hip, 39.4, [-90.0, ASIDE - 90.0]);
        self.sides(language, [EDGES[0] - 1.0, EDGES[1]], 40.0, false)?;
        self.front(language)?;
        self.name(p(BESIDE, 13.0), ROOM, name, Align::Left)
    }
}

/// A person from the side.
impl Sketch {
    fn thigh_depth(&mut self, name: &str) -> Result<(), SetError> {
        self.seated(Affine::IDENTITY);
        let y = 49.0;
        self.guide(p(BUTTOCK, 34.0), p(BUTTOCK, y + 1.5));
        self.guide(BACK_OF_KNEE, p(BACK_OF_KNEE.x, y + 1.5));
        self.dimension(p(BUTTOCK, y), p(BACK_OF_KNEE.x, y));
        self.name(p(36.0, 55.0), 30.0, name, Align::Centre)
    }

    fn lower_leg_length(&mut self, name: &str) -> Result<(), SetError> {
        self.seated(Affine::IDENTITY);
        let x = 45.0;
        self.guide(BACK_OF_KNEE, p(x - 1.5, BACK_OF_KNEE.y));
        self.guide(p(ANKLE.x, SOLE), p(x - 1.5, SOLE));
        self.dimension(p(x, BACK_OF_KNEE.y), p(x, SOLE));
        self.name(p(x - 3.0, 52.0), 38.0, name, Align::Right)
    }

    fn leg_difference(&mut self, name: &str) -> Result<(), SetError> {
        const LONGER: f64 = 8.5;
        self.far_leg(Affine::IDENTITY, LONGER);
        self.seated(Affine::IDENTITY);
        let (front, y) = (KNEE.x + 4.4, 26.0);
        for x in [front, front + LONGER] {
            self.guide(p(x, KNEE.y - 1.0), p(x, y - 1.5));
        }
        self.dimension(p(front, y), p(front + LONGER, y));
        self.name(p(38.0, 17.0), 45.0, name, Align::Left)
    }

    fn hip_flexion(&mut self, name: &str) -> Result<(), SetError> {
        self.seated(Affine::IDENTITY);
        let trunk = (HIP - SHOULDER).normalize();
        self.guide(SHOULDER, HIP + trunk * 21.0);
        self.guide(HIP, KNEE);
        self.landmark(HIP);
        self.landmark(KNEE);
        self.landmark(SHOULDER);
        let thigh = KNEE - HIP;
        self.angle(HIP, 15.0, [trunk, thigh].map(|way| way.angle().to_degrees()));
        self.name(p(27.0, 54.0), 26.0, name, Align::Right)
    }

    fn popliteal_angle(&mut self, name: &str) -> Result<(), SetError> {
        self.seated(Affine::IDENTITY);
        self.guide(KNEE, HIP);
        self.guide(KNEE, ANKLE);
        self.landmark(HIP);
        self.landmark(KNEE);
        self.landmark(ANKLE);
        let shank = (ANKLE - KNEE).angle().to_degrees();
        let thigh = (HIP - KNEE).angle().to_degrees().rem_euclid(360.0);
        self.angle(KNEE, 12.0, [thigh, shank]);
        self.name(p(43.0, 54.0), 40.0, name, Align::Right)
    }

    fn tilt(&mut self, name: &str) -> Result<(), SetError> {
        const TURN: f64 = 16.0;
        let sits = Affine::translate((-10.0, 0.0));
        self.seated_without_arm(sits);
        let middle = sits * p(30.2, 34.0);
        let place = Affine::translate(middle.to_vec2())
            * Affine::rotate(-TURN.to_radians())
            * Affine::scale(0.56);
        let bone = smooth(&[
            (-11.0, -8.0),
            (-5.0, -15.0),
            (4.0, -15.5),
            (12.0, -8.0),
            (8.0, -2.0),
            (8.5, 5.0),
            (10.0, 9.0),
            (3.0, 9.0),
            (-2.0, 14.0),
            (-6.0, 13.0),
            (-5.0, 5.0),
            (-8.0, 0.0),
        ]);
        self.block.path(place * bone, Some(Fill::solid(Color::WHITE)), Some(LINE));
        let [back, front] = [p(-11.0, -8.0), p(12.0, -8.0)].map(|own| place * own);
        self.landmark(back);
        self.landmark(front);
        self.guide(back, back + (front - back).normalize() * 44.0);
        self.guide(back, back + Vec2::new(44.0, 0.0));
        self.angle(back, 40.0, [0.0, -TURN]);
        self.name(p(60.0, 27.0), ROOM, name, Align::Left)
    }

    fn seat_bones_forward(&mut self, name: &str) -> Result<(), SetError> {
        let place = Affine::translate((8.0, 0.0)) * Affine::scale(0.84);
        let (top, rear) = ((place * p(0.0, 44.0)).y, 18.0);
        let cushion = Rect::new(rear, top - 1.2, rear + 26.0, top + 5.4);
        self.cushion(&cushion.to_rounded_rect(1.4).to_path(1e-2));
        self.seated(place);
        let bone = place * SEAT_BONE;
        self.landmark(bone);
        let y = 52.0;
        self.guide(p(rear, top + 2.0), p(rear, y + 1.5));
        self.guide(bone, p(bone.x, y + 1.5));
        self.dimension(p(rear, y), p(bone.x, y));
        self.name(p(rear, 58.5), 60.0, name, Align::Left)
    }
}
