//! Pictures for carers, a few lines each.

use kurbo::{Arc, BezPath, Point, Rect, Shape as _, Vec2};
use words::{Language, PassageTexts, SharedTexts, TakeHomeTexts};

use super::look::{ACCENT, INK, PALE, text};
use crate::color::Color;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::text::SetError;

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
