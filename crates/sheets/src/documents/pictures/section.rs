//! One section through the cushion under the client: shapes and heights, never pressures.

use case::Spread;
use cushion::Length;
use kurbo::{Point, Vec2};
use words::Language;

use super::super::look::{ACCENT, INK, SOFT, text};
use super::super::section::{
    BODY_LINE, Section, SectionAt, SectionSite, cushion, ends_of, range, title_and_ends,
};
use super::super::views::{BAR, TO_BAR};
use super::WIDTH;
use crate::color::Color;
use crate::font::Weight;
use crate::page::{Align, Block, Fill, Pen};
use crate::picture::{Part, Picture, blank};
use crate::text::{SetError, Style, measure};

/// The least cushion that must be left under a place on the body: where checks by hand feel less,
/// there is an alarm.
const LEAST: Length = Length::from_mm(25.0);
/// The underside of the body is drawn up to so far above the walls, mm of the client.
const ABOVE: f64 = 30.0;
/// White at both sides, in millimetres of the picture.
const SIDES: f64 = 5.0;
/// Height of a row of labels over the drawing, and of the words under it.
const ROW: f64 = 5.0;
const UNDER: f64 = 6.5;
/// Between two labels.
const BETWEEN: f64 = 2.0;
/// How far a label reaches inward from its line, and how far off the middle it still stands over it.
const INWARD: f64 = 3.0;
const NEAR: f64 = 4.0;
/// Height of the line that says what the drawing is.
const STATUS: f64 = 4.6;

const LABEL: Style = text(9.5, Weight::Bold, INK);
const ENDS: Style = text(9.5, Weight::Bold, INK);

/// Draws one section, as wide as the picture: the cushion under the client hatched, its top without
/// the client dashed, the client's underside, seams, and over each place on the body how much
/// cushion is left under it.
///
/// `wall_height` is that of the pattern. The section has points at two places at least.
///
/// # Errors
///
/// Fails where a character has no glyph.
pub fn section_picture(
    language: &dyn Language,
    section: &Section,
    wall_height: Length,
) -> Result<Picture, SetError> {
    let (title, ends, _) = title_and_ends(language, section.at);
    let (low, high) = ends_of(section);
    let scale = (WIDTH - 2.0 * SIDES) / (high - low);
    let labels = labels(language, section, low, scale)?;
    let rows = labels.iter().map(|own| own.row + 1).max().unwrap_or(0);
    let wall = wall_height.to_mm();
    let top = rows as f64 * ROW + 2.0;
    let base = top + tallest(section, wall) * scale;
    let on_page = |[along, height]: [f64; 2]| {
        Point::new(SIDES + (along - low) * scale, base - height * scale)
    };
    let mut block = blank();
    cushion(&mut block, section, wall, &on_page);
    block.line(on_page([low, 0.0]), on_page([high, 0.0]), &Pen::solid(0.7, INK));
    least_line(&mut block, language, [low, high].map(|at| on_page([at, LEAST.to_mm()])))?;
    let body: Vec<Point> = (section.body.iter())
        .filter(|point| point[1] < wall + ABOVE)
        .map(|point| on_page(*point))
        .collect();
    block.open_path(&body, &BODY_LINE);
    for (site, label) in section.sites.iter().zip(&labels) {
        draw_site(&mut block, site, label, &on_page)?;
    }
    if section.at == SectionAt::SeatBones {
        // Seen from behind, the client's left is at the left.
        let [from, to] = [0.0, wall].map(|height| on_page([low, height]) - (TO_BAR, 0.0));
        block.line(from, to, &Pen::solid(BAR, ACCENT));
    }
    let y = base + UNDER - 2.0;
    block.text(Point::new(SIDES, y), ends[0], &ENDS, Align::Left)?;
    block.text(Point::new(WIDTH - SIDES, y), ends[1], &ENDS, Align::Right)?;
    let status = language.sections().status;
    let style = text(8.0, Weight::Bold, SOFT);
    block.text(Point::new(WIDTH / 2.0, y + STATUS), status, &style, Align::Centre)?;
    let sites: Vec<_> = section.sites.iter().map(|site| (site.name, site.height)).collect();
    let alt = language.section_picture_shows(&title, &sites, LEAST);
    let parts = vec![Part::of(None, block)];
    Ok(Picture { width: WIDTH, height: base + UNDER + STATUS, alt, parts })
}

/// How high the drawing is: enough for the tops and for the greatest height of a place, mm of the
/// client.
fn tallest(section: &Section, wall: f64) -> f64 {
    let tops = section.unloaded.iter().chain(&section.loaded).map(|point| point[1]);
    let sites = section.sites.iter().map(|site| site.height.high.to_mm());
    tops.chain(sites).fold(wall + ABOVE, f64::max)
}

/// Draws the line at the least that must be left. It is named below its left end, where no place
/// on the body is, and under all that is drawn of the body.
fn least_line(
    block: &mut Block,
    language: &dyn Language,
    [from, to]: [Point; 2],
) -> Result<(), SetError> {
    block.line(from, to, &Pen::dashed(0.6, ACCENT, 2.4, 1.6));
    let words = language.least_left(LEAST);
    let style = text(8.0, Weight::Bold, ACCENT);
    let wide = measure(&words, &style)?;
    let baseline = Point::new(from.x + 1.2 + wide / 2.0, from.y + style.cap_height() + 0.9);
    let half = Vec2::new(wide / 2.0 + 0.5, style.cap_height() / 2.0 + 0.4);
    let middle = baseline - Vec2::new(0.0, style.cap_height() / 2.0);
    let ground = kurbo::Rect::from_points(middle - half, middle + half);
    block.rect(ground, Some(Fill::solid(Color::WHITE)), None);
    block.text(baseline, &words, &style, Align::Centre).map(drop)
}

/// What stands over a site, in the row that it has, 0 the upmost.
struct Label {
    words: String,
    left: f64,
    wide: f64,
    row: usize,
}

/// Puts each label into the upmost row in which it keeps clear of those before, within the picture;
/// in the order of the sites.
///
/// Labels reach outward from the lines down to their places, and those in the middle come first:
/// so no line goes through the words of another.
fn labels(
    language: &dyn Language,
    section: &Section,
    low: f64,
    scale: f64,
) -> Result<Vec<Label>, SetError> {
    let off_middle = |site: &SectionSite| SIDES + (site.at - low) * scale - WIDTH / 2.0;
    let one = |site: &SectionSite| {
        let words = language.left_in_short(&site.height);
        let wide = measure(&words, &LABEL)?;
        let off = off_middle(site);
        let before = match off {
            off if off < -NEAR => wide - INWARD,
            off if off > NEAR => INWARD,
            _ => wide / 2.0,
        };
        let left = (WIDTH / 2.0 + off - before).min(WIDTH - 0.5 - wide).max(0.5);
        Ok(Label { words, left, wide, row: 0 })
    };
    let mut labels = section.sites.iter().map(one).collect::<Result<Vec<_>, SetError>>()?;
    let mut order: Vec<usize> = (0..labels.len()).collect();
    let off = |at: &usize| off_middle(&section.sites[*at]).abs();
    order.sort_by(|a, b| off(a).total_cmp(&off(b)));
    for (place, at) in order.iter().enumerate() {
        let own = &labels[*at];
        let meets = |row: usize| {
            order[..place].iter().map(|other| &labels[*other]).any(|other| {
                let apart = own.left > other.left + other.wide + BETWEEN
                    || other.left > own.left + own.wide + BETWEEN;
                other.row == row && !apart
            })
        };
        // One row more than there are labels has room.
        let row = (0..=place).find(|row| !meets(*row)).unwrap_or(place);
        labels[*at].row = row;
    }
    Ok(labels)
}

/// Draws a place on the body, with the cushion left under it over the drawing.
fn draw_site(
    block: &mut Block,
    site: &SectionSite,
    label: &Label,
    on_page: &dyn Fn([f64; 2]) -> Point,
) -> Result<(), SetError> {
    let Spread { central, low, high } = site.height;
    let [low, at, high] = [low, central, high].map(|height| on_page([site.at, height.to_mm()]));
    let baseline = Point::new(label.left, LABEL.cap_height() + 1.0 + ROW * label.row as f64);
    let from = Point::new(at.x, baseline.y + 1.2);
    block.line(from, high, &Pen::dashed(0.25, SOFT, 0.5, 1.0));
    range(block, [low, at, high]);
    block.text(baseline, &label.words, &LABEL, Align::Left).map(drop)
}
