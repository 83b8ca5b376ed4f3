//! Pictures for carers, a few lines each.

use kurbo::{Arc, BezPath, Point, Rect, Shape as _, Vec2};

use super::look::{ACCENT, INK, PALE, text};
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::{SetError, Style};
use crate::words::english as words;

/// A picture.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Picture {
    /// The cushion from above, front and top named.
    WayRound,
    /// Two flat hands on the cushion.
    PatLevel,
    /// A hand under the cushion, below a seat bone.
    UnderCheck,
    /// A mark on skin, and a clock of half an hour.
    SkinCheck,
}

impl Picture {
    /// The pictures of the page for the wall, in order.
    pub(super) const WALL: [Self; 4] =
        [Self::WayRound, Self::PatLevel, Self::UnderCheck, Self::SkinCheck];

    /// What it shows, in a sentence.
    pub(super) fn alt(self) -> &'static str {
        match self {
            Self::WayRound => words::WAY_ROUND_ALT,
            Self::PatLevel => words::PAT_LEVEL_ALT,
            Self::UnderCheck => words::UNDER_CHECK_ALT,
            Self::SkinCheck => words::SKIN_CHECK_ALT,
        }
    }
}

const LINE: Pen = Pen::solid(0.6, INK);
const BOLD_LINE: Pen = Pen::solid(0.9, ACCENT);

/// Draws a picture into an area of 34 x 25 mm.
pub(super) fn picture(block: &mut Block, which: Picture, area: Rect) -> Result<(), SetError> {
    match which {
        Picture::WayRound => way_round(block, area),
        Picture::PatLevel => pat_level(block, area),
        Picture::UnderCheck => under_check(block, area),
        Picture::SkinCheck => skin_check(block, area),
    }
}

fn way_round(block: &mut Block, area: Rect) -> Result<(), SetError> {
    let style = text(14.0, Weight::Bold, INK);
    let cushion = Rect::new(area.x0 + 5.0, area.y0 + 6.0, area.x1 - 5.0, area.y1 - 0.5);
    super::views::plain(block, cushion);
    let middle = cushion.center();
    block.text(Point::new(middle.x, area.y0 + 4.4), words::FRONT, &style, Align::Centre)?;
    block.arrow(
        Point::new(middle.x, cushion.y0 + 9.0),
        Point::new(middle.x, cushion.y0 + 1.2),
        3.0,
        &BOLD_LINE,
    );
    block.text(Point::new(middle.x, cushion.y1 - 3.0), words::TOP, &style, Align::Centre)?;
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
        hand_from_side(block, Point::new(x, top - 1.0), side);
        let up = Point::new(x, top - 12.0);
        let down = Point::new(x, top - 5.0);
        block.arrow(up, down, 2.4, &BOLD_LINE);
    }
    Ok(())
}

/// A flat hand, seen from the side, with its middle at a point; `side` is where the arm goes.
fn hand_from_side(block: &mut Block, at: Point, side: f64) {
    let mut hand = BezPath::new();
    let p = |x: f64, y: f64| at + Vec2::new(x * side, y);
    hand.move_to(p(-5.0, 0.3));
    hand.curve_to(p(-6.2, 0.2), p(-6.0, -1.6), p(-4.6, -1.7));
    hand.line_to(p(1.0, -2.6));
    hand.line_to(p(6.5, -3.6));
    hand.line_to(p(6.5, -0.6));
    hand.line_to(p(2.5, 0.3));
    hand.close_path();
    block.path(hand, Some(Fill::solid(crate::color::Color::WHITE)), Some(LINE));
}

fn under_check(block: &mut Block, area: Rect) -> Result<(), SetError> {
    let floor = area.y1 - 2.0;
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
    // The hand comes in from the side, palm up, under the cushion.
    let hand = Point::new(middle + 6.5, floor + 2.4);
    hand_from_side(block, hand, 1.0);
    block.arrow(
        Point::new(area.x1 + 1.5, floor + 1.2),
        Point::new(middle + 14.0, floor + 1.2),
        2.2,
        &BOLD_LINE,
    );
    Ok(())
}

fn skin_check(block: &mut Block, area: Rect) -> Result<(), SetError> {
    let centre = Point::new(area.x0 + 10.5, area.y0 + 12.0);
    block.circle(centre, 8.0, Some(Fill::solid(crate::color::Color::WHITE)), Some(LINE));
    let mark = kurbo::Ellipse::new(centre, (4.0, 3.0), 0.3).to_path(1e-2);
    block.hatch(&mark, 35.0, 1.0, &Pen::solid(0.35, INK));
    block.path(mark, None, Some(Pen::solid(0.5, INK)));
    // The glass through which one looks.
    let handle = Vec2::new(0.72, 0.72);
    block.line(centre + handle * 8.0, centre + handle * 15.0, &Pen::solid(1.4, INK));
    let clock = Point::new(area.x1 - 6.5, area.y0 + 8.0);
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
    block.text(below, words::HALF_AN_HOUR, &style, Align::Centre)?;
    Ok(())
}

/// Draws where the body is measured, from the side and from the front, into 58 mm of height.
pub(super) fn where_to_measure(block: &mut Block, area: Rect) -> Result<(), SetError> {
    from_the_side(block, Point::new(area.x0 + area.width() * 0.12, area.y0))?;
    from_the_front(block, Point::new(area.x0 + area.width() * 0.72, area.y0))
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

fn from_the_side(block: &mut Block, origin: Point) -> Result<(), SetError> {
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
    dimension(block, thigh, words::THIGH_DEPTH, p(17.0, 44.0), Align::Centre)?;
    let leg = (p(33.0, 36.0), p(33.0, 54.0));
    dimension(block, leg, words::LOWER_LEG, p(31.5, 50.5), Align::Right)
}

fn from_the_front(block: &mut Block, top: Point) -> Result<(), SetError> {
    let p = |x: f64, y: f64| top + Vec2::new(x, y);
    let mut body = BezPath::new();
    body.move_to(p(-9.0, 8.0));
    body.curve_to(p(-10.0, 18.0), p(-15.0, 22.0), p(-16.0, 30.0));
    body.curve_to(p(-16.5, 36.0), p(-14.0, 38.0), p(-9.0, 38.0));
    body.line_to(p(9.0, 38.0));
    body.curve_to(p(14.0, 38.0), p(16.5, 36.0), p(16.0, 30.0));
    body.curve_to(p(15.0, 22.0), p(10.0, 18.0), p(9.0, 8.0));
    block.path(body, Some(Fill::solid(PALE)), Some(LINE));
    block.circle(p(0.0, 2.6), 4.6, Some(Fill::solid(PALE)), Some(LINE));
    for side in [-1.0, 1.0] {
        // Knees in front of the hips, seat bones at their lowest.
        block.circle(
            p(side * 8.5, 31.0),
            5.6,
            Some(Fill::solid(crate::color::Color::WHITE)),
            Some(LINE),
        );
        block.circle(p(side * 5.0, 38.0), 1.0, Some(Fill::solid(INK)), None);
    }
    let hips = (p(-16.3, 18.0), p(16.3, 18.0));
    dimension(block, hips, words::HIPS, p(18.5, 19.0), Align::Left)?;
    let trochanters = (p(-15.4, 24.0), p(15.4, 24.0));
    dimension(block, trochanters, words::TROCHANTERS, p(18.5, 25.0), Align::Left)?;
    let knees = (p(-14.1, 31.0), p(14.1, 31.0));
    dimension(block, knees, words::KNEES, p(18.5, 32.0), Align::Left)?;
    let bones = (p(-5.0, 42.0), p(5.0, 42.0));
    dimension(block, bones, words::SEAT_BONES, p(18.5, 43.0), Align::Left)
}
