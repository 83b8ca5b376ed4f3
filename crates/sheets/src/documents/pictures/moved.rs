//! One move of cells, from below: the two compartments, or one and the spare bag.

use case::Place;
use cushion::Pattern;
use kurbo::{BezPath, Point, Rect, Shape as _, Vec2};
use words::Language;

use super::super::DocumentError;
use super::super::labels::Ground;
use super::super::look::{ACCENT, INK, PALE, text};
use super::super::views::{Named, View, draw_seams, place_on_page};
use super::pattern::{area_of, outline};
use super::{LETTERS, WIDTH};
use crate::color::Color;
use crate::disc::Disc;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::picture::{Part, Picture, blank};
use crate::text::{SetError, Style, measure};

/// Height of the strip for the bag, in millimetres.
const STRIP: f64 = 19.0;
/// Half of the width of the bag, and of its height.
const BAG: Vec2 = Vec2::new(7.0, 5.6);
/// How many cells.
const CELLS: Style = text(14.0, Weight::Bold, INK);
const ARROW: Pen = Pen::solid(1.6, ACCENT);
const HEAD: f64 = 4.0;
/// From what an arrow begins at to its tail.
const AWAY: f64 = 1.6;
/// From the arrow to the words beside it: more than a disc reaches.
const CLEAR: f64 = 2.6;

/// Where words may stand along an arrow, as shares of its length, the best first.
const ALONG: [f64; 9] = [0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.0];

/// Where an arrow begins or ends, and how much room is kept around it.
#[derive(Clone, Copy)]
struct End {
    at: Point,
    around: f64,
}

/// Where words may stand: on the drawing, round which its edges are named, or below, where the bag is.
#[derive(Clone, Copy)]
struct Room {
    within: Rect,
    below: f64,
}

impl Room {
    /// By how much words of a size stand clear of what is round them, negative where they are on it.
    fn around(self, at: Point, half: Vec2) -> f64 {
        let words = Rect::from_points(at - half, at + half);
        let Rect { x0, y0, x1, y1 } = self.within;
        let sides = (words.x0 - x0).min(x1 - words.x1);
        sides.min((words.y0 - y0).min(y1 - words.y1).max(words.y0 - self.below))
    }
}

/// Draws a move from below: the two compartments pale with their numbers, an arrow from one to the
/// other, how many cells; the spare bag stands outside of the cushion.
///
/// # Errors
///
/// Fails where the pattern has no compartment of a number, or a character has no glyph.
pub fn move_picture(
    language: &dyn Language,
    pattern: &Pattern,
    from: Place,
    to: Place,
    cells: u32,
) -> Result<Picture, DocumentError> {
    let area = area_of(pattern);
    let named = Named::of(language.shared(), pattern, View::Below, area, LETTERS.edges)?;
    let place = place_on_page(pattern, View::Below, named.inner);
    let with_bag = from == Place::Spare || to == Place::Spare;
    let height = area.height() + if with_bag { STRIP } else { 0.0 };
    let (mut parts, mut over) = (Vec::new(), blank());
    draw_seams(&mut over, pattern, place);
    named.draw(&mut over, language.shared())?;
    let mut ends = [None, None];
    for (end, own) in ends.iter_mut().zip([from, to]) {
        let Place::Compartment(number) = own else { continue };
        let ix = pattern.by_number(number).ok_or(DocumentError::OtherCompartments)?;
        let disc = Disc::of(&number.to_string(), LETTERS.numbers)?;
        let at = Ground::of(pattern, ix, place).place_for(Vec2::new(disc.radius, disc.radius)).0;
        *end = Some(End { at, around: disc.radius });
        disc.draw(&mut over, at, &number.to_string(), ACCENT)?;
    }
    for ix in pattern.indices() {
        let number = pattern[ix].number;
        let named = [from, to].contains(&Place::Compartment(number));
        let fill = if named { PALE } else { Color::WHITE };
        let mut block = blank();
        block.path(outline(pattern, ix, place), Some(Fill::even_odd(fill)), None);
        parts.push(Part::of(Some(number), block));
    }
    if with_bag {
        let near = ends.iter().flatten().next().map_or(WIDTH, |own| own.at.x);
        let bag = bag(&mut over, language, area.height(), near)?;
        ends.iter_mut().filter(|own| own.is_none()).for_each(|own| *own = Some(bag));
    }
    if let [Some(from), Some(to)] = ends {
        let room = Room { within: named.drawn, below: area.height() };
        arrow(&mut over, [from, to], &language.cells(cells), room)?;
    }
    parts.push(Part::of(None, over));
    let alt = language.move_shows(from, to, cells);
    Ok(Picture { width: area.width(), height, alt, parts })
}

/// Draws the spare bag below the cushion, beside the words for its rear edge, on the side of the
/// compartment.
fn bag(block: &mut Block, language: &dyn Language, below: f64, near: f64) -> Result<End, SetError> {
    let x = if near < WIDTH / 2.0 { 2.2 * BAG.x } else { WIDTH - 2.2 * BAG.x };
    let at = Point::new(x, below + 7.0);
    let corner = |across: f64, down: f64| at + Vec2::new(across * BAG.x, down * BAG.y);
    let mut path = BezPath::new();
    path.move_to(corner(-0.5, -1.0));
    path.curve_to(corner(-0.4, -0.6), corner(-0.4, -0.6), corner(-0.8, -0.2));
    path.curve_to(corner(-1.1, 0.6), corner(-1.0, 1.0), corner(-0.6, 1.0));
    path.line_to(corner(0.6, 1.0));
    path.curve_to(corner(1.0, 1.0), corner(1.1, 0.6), corner(0.8, -0.2));
    path.curve_to(corner(0.4, -0.6), corner(0.4, -0.6), corner(0.5, -1.0));
    path.close_path();
    block.path(path, Some(Fill::solid(PALE)), Some(Pen::solid(0.7, INK)));
    let tie = Pen::solid(0.7, INK);
    block.line(corner(-0.42, -0.62), corner(0.42, -0.62), &tie);
    let style = text(LETTERS.edges, Weight::Bold, INK);
    let words = at + Vec2::new(0.0, BAG.y + 1.6 + style.cap_height());
    block.text(words, language.spare_bag(), &style, Align::Centre)?;
    Ok(End { at, around: BAG.y + 0.4 })
}

/// Draws the arrow on white, and how many cells beside its middle, or further along where there is no
/// room beside the middle.
fn arrow(block: &mut Block, [from, to]: [End; 2], cells: &str, room: Room) -> Result<(), SetError> {
    if from.at == to.at {
        // From a place to itself nothing goes.
        return Ok(());
    }
    let along = (to.at - from.at).normalize();
    let start = from.at + along * (from.around + AWAY);
    let tip = to.at - along * (to.around + AWAY / 2.0);
    // Between neighbours that are small, a smaller head leaves some of the line.
    let head = HEAD.min(0.7 * start.distance(tip));
    block.line(start, tip - along * head, &Pen::solid(ARROW.width + 1.2, Color::WHITE));
    block.arrow(start, tip, head, &ARROW);
    let half = Vec2::new(measure(cells, &CELLS)?, CELLS.cap_height()) / 2.0 + Vec2::new(0.8, 0.8);
    let across = Vec2::new(-along.y, along.x);
    // Clear of the arrow and of the discs at its ends, whichever way it goes.
    let off = across.x.abs() * half.x + across.y.abs() * half.y + CLEAR;
    let beside = |share: f64| {
        let places = [off, -off].map(|off| start.lerp(tip, share) + across * off);
        let [one, other] = places.map(|at| room.around(at, half));
        if one >= other { (places[0], one) } else { (places[1], other) }
    };
    let places = ALONG.map(beside);
    let clear = places.iter().find(|own| own.1 >= 0.0);
    let most = || places.iter().max_by(|one, other| one.1.total_cmp(&other.1));
    let at = clear.or_else(most).map_or(start, |own| own.0);
    let ground = Rect::from_points(at - half, at + half).to_rounded_rect(0.8).to_path(1e-2);
    block.path(ground, Some(Fill::solid(Color::WHITE)), None);
    let baseline = at + Vec2::new(0.0, CELLS.cap_height() / 2.0);
    block.text(baseline, cells, &CELLS, Align::Centre).map(drop)
}
