//! Pictures for carers, a few lines each.

use kurbo::{Arc, BezPath, Point, Rect, Shape as _, Vec2};
use words::{Language, MeasuringFormTexts, PassageTexts, SharedTexts, TakeHomeTexts};

use super::look::{ACCENT, INK, PALE, text};
use crate::color::Color;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style};

/// A picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Picture {
    /// The cushion from above, front and top named.
    WayRound,
    /// Two flat hands on the cushion.
    PatLevel,
    /// A hand under the cushion, below a seat bone.
    UnderCheck,
    /// A mark on skin in a mirror, and a clock of half an hour.
    SkinCheck,
}

impl Picture {
    /// The pictures of the page for the wall, in order.
    pub(super) const WALL: [Self; 4] =
        [Self::WayRound, Self::PatLevel, Self::UnderCheck, Self::SkinCheck];

    /// What stands beside it.
    pub(super) fn passage(self, texts: &TakeHomeTexts) -> PassageTexts {
        match self {
            Self::WayRound => texts.right_way_round,
            Self::PatLevel => texts.pat_level,
            Self::UnderCheck => texts.check_from_below,
            Self::SkinCheck => texts.look_at_the_skin,
        }
    }

    /// What it shows, in a sentence.
    pub(super) fn shows(self, texts: &TakeHomeTexts) -> &'static str {
        match self {
            Self::WayRound => texts.right_way_round_picture,
            Self::PatLevel => texts.pat_level_picture,
            Self::UnderCheck => texts.check_from_below_picture,
            Self::SkinCheck => texts.look_at_the_skin_picture,
        }
    }
}

const LINE: Pen = Pen::solid(0.6, INK);
const BOLD_LINE: Pen = Pen::solid(0.9, ACCENT);

/// Draws a picture into an area of 34 x 25 mm.
pub(super) fn picture(
    block: &mut Block,
    language: &dyn Language,
    which: Picture,
    area: Rect,
) -> Result<(), SetError> {
    match which {
        Picture::WayRound => way_round(block, language.shared(), area),
        Picture::PatLevel => pat_level(block, area),
        Picture::UnderCheck => under_check(block, area),
        Picture::SkinCheck => skin_check(block, language.take_home().half_an_hour, area),
    }
}

fn way_round(block: &mut Block, texts: &SharedTexts, area: Rect) -> Result<(), SetError> {
    let style = text(14.0, Weight::Bold, INK);
    let cushion = Rect::new(area.x0 + 5.0, area.y0 + 6.0, area.x1 - 5.0, area.y1 - 0.5);
    super::views::plain(block, cushion);
    let middle = cushion.center();
    block.text(Point::new(middle.x, area.y0 + 4.4), texts.front, &style, Align::Centre)?;
    block.arrow(
        Point::new(middle.x, cushion.y0 + 9.0),
        Point::new(middle.x, cushion.y0 + 1.2),
        3.0,
        &BOLD_LINE,
    );
    block.text(Point::new(middle.x, cushion.y1 - 3.0), texts.top, &style, Align::Centre)?;
    Ok(())
}

/// The cushion from the front: a base line and a gently arched top between two walls.
fn cushion_from_front(block: &mut Block, area: Rect, arch: f64) -> f64 {
    let (left, right, floor) = (area.x0 + 2.0, area.x1 - 2.0, area.y1 - 2.0);
    let wall = floor - 7.0;
    let mut path = BezPath::new();
    path.move_to((left, floor));
    path.line_to((left, wall));
    path.quad_to(((left + right) / 2.0, wall - 2.0 * arch), (right, wall));
    path.line_to((right, floor));
    path.close_path();
    block.path(path, Some(Fill::solid(PALE)), Some(LINE));
    wall - arch
}

fn pat_level(block: &mut Block, area: Rect) -> Result<(), SetError> {
    let top = cushion_from_front(block, area, 1.2);
    for side in [-1.0, 1.0] {
        let x = area.center().x + side * 7.5;
        hand_from_side(block, Point::new(x, top + 0.2), side);
        let up = Point::new(x - side * 2.0, top - 11.5);
        let down = Point::new(x - side * 2.0, top - 4.0);
        block.arrow(up, down, 2.4, &BOLD_LINE);
    }
    Ok(())
}

/// A flat hand on something, seen from the side, with the middle of its palm at a point; `side`
/// is where the arm comes from.
fn hand_from_side(block: &mut Block, at: Point, side: f64) {
    let p = |x: f64, y: f64| at + Vec2::new(x * side, y);
    let mut hand = BezPath::new();
    hand.move_to(p(8.6, -9.6));
    hand.line_to(p(4.4, -3.6));
    hand.curve_to(p(3.2, -2.6), p(1.0, -2.7), p(-1.0, -2.4));
    hand.line_to(p(-5.2, -1.8));
    hand.curve_to(p(-6.8, -1.5), p(-6.8, 0.0), p(-5.2, 0.0));
    hand.line_to(p(4.4, 0.0));
    hand.curve_to(p(6.4, -0.2), p(7.2, -1.6), p(8.0, -2.8));
    hand.line_to(p(11.2, -7.6));
    block.path(hand, Some(Fill::solid(Color::WHITE)), Some(LINE));
    thumb(block, p(2.2, -1.5), p(-2.0, -0.9));
}

/// A flat hand with its arm, seen from the side, lying under something: the middle of its back is
/// at a point, the arm goes to the right.
fn hand_below(block: &mut Block, at: Point) {
    let p = |x: f64, y: f64| at + Vec2::new(x, y);
    let mut hand = BezPath::new();
    hand.move_to(p(13.5, 0.4));
    hand.line_to(p(5.0, 0.0));
    hand.line_to(p(-5.6, 0.0));
    hand.curve_to(p(-7.2, 0.0), p(-7.2, 1.7), p(-5.6, 1.8));
    hand.line_to(p(0.0, 2.7));
    hand.curve_to(p(2.5, 3.1), p(4.0, 3.3), p(6.0, 3.3));
    hand.line_to(p(13.5, 4.0));
    block.path(hand, Some(Fill::solid(Color::WHITE)), Some(LINE));
    thumb(block, p(3.0, 1.3), p(-1.6, 1.1));
}

fn thumb(block: &mut Block, root: Point, tip: Point) {
    let mut line = BezPath::new();
    line.move_to(root);
    line.quad_to(root.midpoint(tip) + (0.0, -0.5), tip);
    block.path(line, None, Some(Pen::solid(0.45, INK)));
}

fn under_check(block: &mut Block, area: Rect) -> Result<(), SetError> {
    let floor = area.y1 - 4.4;
    let (left, right) = (area.x0 + 2.0, area.x1 - 2.0);
    let middle = area.center().x;
    let top = floor - 11.0;
    // The cushion, pressed in by two seat bones.
    let mut sheet = BezPath::new();
    sheet.move_to((left, floor));
    sheet.line_to((left, top));
    sheet.curve_to((left + 4.0, top), (middle - 9.0, floor - 5.5), (middle - 6.5, floor - 5.5));
    sheet.curve_to((middle - 3.5, floor - 5.5), (middle - 3.0, top + 3.0), (middle, top + 3.0));
    sheet.curve_to(
        (middle + 3.0, top + 3.0),
        (middle + 3.5, floor - 5.5),
        (middle + 6.5, floor - 5.5),
    );
    sheet.curve_to((middle + 9.0, floor - 5.5), (right - 4.0, top), (right, top));
    sheet.line_to((right, floor));
    sheet.close_path();
    block.path(sheet, Some(Fill::solid(PALE)), Some(LINE));
    // The seat bones above it.
    for side in [-1.0, 1.0] {
        let x = middle + side * 6.5;
        let mut bone = BezPath::new();
        bone.move_to((x - 3.5, area.y0 + 3.0));
        bone.curve_to((x - 3.5, floor - 8.0), (x - 2.5, floor - 7.2), (x, floor - 7.2));
        bone.curve_to((x + 2.5, floor - 7.2), (x + 3.5, floor - 8.0), (x + 3.5, area.y0 + 3.0));
        block.path(bone, None, Some(Pen::solid(0.8, INK)));
    }
    // The hand comes in from the side, below a bone; between them must be a thumb of cushion.
    let bone = middle + 6.5;
    hand_below(block, Point::new(bone, floor));
    let (high, low) = (Point::new(bone, floor - 6.4), Point::new(bone, floor - 0.2));
    block.arrow(high.midpoint(low), high, 1.7, &BOLD_LINE);
    block.arrow(high.midpoint(low), low, 1.7, &BOLD_LINE);
    Ok(())
}

fn skin_check(block: &mut Block, half_an_hour: &str, area: Rect) -> Result<(), SetError> {
    let centre = Point::new(area.x0 + 10.5, area.y0 + 9.0);
    block.circle(centre, 8.0, Some(Fill::solid(Color::WHITE)), Some(LINE));
    let mark = kurbo::Ellipse::new(centre, (4.0, 3.0), 0.3).to_path(1e-2);
    block.hatch(&mark, 35.0, 1.0, &Pen::solid(0.35, INK));
    block.path(mark, None, Some(Pen::solid(0.5, INK)));
    // The handle of the mirror.
    let handle = Vec2::new(-0.5, 0.866);
    block.line(centre + handle * 8.0, centre + handle * 14.0, &Pen::solid(1.6, INK));
    let clock = Point::new(area.x1 - 7.5, area.y0 + 8.0);
    block.circle(clock, 5.6, None, Some(LINE));
    let half = Arc::new(clock, (4.4, 4.4), -std::f64::consts::FRAC_PI_2, std::f64::consts::PI, 0.0);
    let mut sector = BezPath::new();
    sector.move_to(clock);
    sector.line_to(clock - Vec2::new(0.0, 4.4));
    sector.extend(half.append_iter(1e-2));
    sector.close_path();
    block.path(sector, Some(Fill::solid(PALE)), Some(Pen::solid(0.4, INK)));
    let style = text(14.0, Weight::Bold, INK);
    let below = Point::new(clock.x, clock.y + 12.0);
    block.text(below, half_an_hour, &style, Align::Centre)?;
    Ok(())
}

/// Draws where the body is measured, from the side and from above, into 64 mm of height.
pub(super) fn where_to_measure(
    block: &mut Block,
    language: &dyn Language,
    area: Rect,
) -> Result<(), SetError> {
    let style = text(9.0, Weight::Bold, INK);
    let texts = language.measuring_form();
    let (side, above) = (area.x0, area.x0 + area.width() * 0.5);
    let baseline = area.y0 + style.cap_height();
    block.text(Point::new(side, baseline), texts.from_the_side, &style, Align::Left)?;
    block.text(Point::new(above, baseline), texts.from_above, &style, Align::Left)?;
    from_the_side(block, texts, Point::new(side + 14.0, area.y0 + 8.0))?;
    let clients_left = language.shared().clients_left_short;
    from_above(block, texts, clients_left, Point::new(above + 24.0, area.y0 + 5.0))
}

const DIMENSION: Style = text(8.5, Weight::SemiBold, ACCENT);

/// A line with a head at both ends, and its name at a point.
fn dimension(
    block: &mut Block,
    (from, to): (Point, Point),
    name: &str,
    at: Point,
    align: Align,
) -> Result<(), SetError> {
    let middle = from.midpoint(to);
    let pen = Pen::solid(0.35, ACCENT);
    block.arrow(middle, from, 2.0, &pen);
    block.arrow(middle, to, 2.0, &pen);
    block.text(at, name, &DIMENSION, align)?;
    Ok(())
}

fn from_the_side(
    block: &mut Block,
    texts: &MeasuringFormTexts,
    origin: Point,
) -> Result<(), SetError> {
    let p = |x: f64, y: f64| origin + Vec2::new(x, y);
    let mut body = BezPath::new();
    body.move_to(p(2.0, 8.0));
    body.curve_to(p(-2.0, 16.0), p(-1.0, 26.0), p(0.0, 31.0));
    body.curve_to(p(0.5, 35.0), p(3.0, 36.0), p(6.0, 36.0));
    body.line_to(p(37.0, 35.0));
    body.line_to(p(36.0, 50.0));
    body.line_to(p(36.0, 54.0));
    body.line_to(p(50.0, 54.0));
    body.line_to(p(49.0, 51.0));
    body.line_to(p(43.0, 49.0));
    body.line_to(p(45.0, 27.0));
    body.curve_to(p(44.0, 24.5), p(42.0, 24.0), p(39.0, 24.0));
    body.line_to(p(16.0, 25.0));
    body.curve_to(p(17.0, 19.0), p(15.0, 13.0), p(13.0, 8.0));
    block.path(body, Some(Fill::solid(PALE)), Some(LINE));
    block.circle(p(8.5, 2.6), 4.6, Some(Fill::solid(PALE)), Some(LINE));
    let thigh = (p(0.0, 40.0), p(36.5, 40.0));
    dimension(block, thigh, texts.thigh_depth, p(17.0, 44.0), Align::Centre)?;
    let leg = (p(33.0, 36.0), p(33.0, 54.0));
    dimension(block, leg, texts.lower_leg, p(31.5, 50.5), Align::Right)
}

/// Hips and thighs of a seated person from above, knees up the page.
fn from_above(
    block: &mut Block,
    texts: &MeasuringFormTexts,
    clients_left: &str,
    top: Point,
) -> Result<(), SetError> {
    let p = |x: f64, y: f64| top + Vec2::new(x, y);
    let half = |side: f64| {
        let q = |x: f64, y: f64| p(side * x, y);
        let mut half = BezPath::new();
        half.move_to(q(0.0, 54.0));
        half.curve_to(q(8.0, 55.5), q(15.0, 54.0), q(16.2, 47.0));
        half.curve_to(q(16.8, 43.0), q(17.4, 40.0), q(17.2, 36.0));
        half.curve_to(q(17.0, 28.0), q(15.0, 20.0), q(14.2, 13.0));
        half.curve_to(q(13.6, 7.5), q(5.4, 7.5), q(5.0, 13.0));
        half.curve_to(q(4.6, 20.0), q(2.4, 30.0), q(0.0, 33.0));
        half
    };
    // From the knees' side back along one leg, then out along the other.
    let mut body = half(-1.0).reverse_subpaths();
    body.extend(half(1.0).iter().skip(1));
    body.close_path();
    block.path(body, Some(Fill::solid(PALE)), Some(LINE));
    for side in [-1.0, 1.0] {
        block.circle(p(side * 5.5, 48.0), 1.0, Some(Fill::solid(INK)), None);
        block.circle(p(side * 15.0, 44.5), 1.0, Some(Fill::solid(INK)), None);
    }
    let knees = (p(-14.2, 5.0), p(14.2, 5.0));
    dimension(block, knees, texts.knee_width, p(21.0, 6.0), Align::Left)?;
    let hips = (p(-17.2, 36.0), p(17.2, 36.0));
    dimension(block, hips, texts.hip_width, p(21.0, 37.0), Align::Left)?;
    let trochanters = (p(-16.4, 44.5), p(16.4, 44.5));
    dimension(block, trochanters, texts.trochanter_width, p(21.0, 45.5), Align::Left)?;
    let bones = (p(-5.5, 51.0), p(5.5, 51.0));
    block.line(p(6.5, 51.0), p(20.0, 51.0), &Pen::dashed(0.25, ACCENT, 0.5, 1.0));
    dimension(block, bones, texts.seat_bone_spacing, p(21.0, 52.0), Align::Left)?;
    let style = text(8.0, Weight::Regular, INK);
    block.turned_text(p(-20.5, 31.0), -90.0, clients_left, &style, Align::Centre)?;
    Ok(())
}
