//! How the documents look: inks, sizes of text, margins, and the parts that all of them share.

use kurbo::{Point, Rect};
use words::Language;

use crate::color::Color;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Block, Fill, Page, Pen, Role};
use crate::table::{Column, Table};
use crate::text::{SetError, Style, measure, wrap};

/// An ink and the ground that it stands on.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ink {
    /// The colour of the text.
    pub text: Color,
    /// The colour under it.
    pub ground: Color,
}

/// Words and lines.
pub(super) const INK: Color = Color::rgb(24, 28, 33);
/// Headings, frames and what the eye should find first.
pub(super) const ACCENT: Color = Color::rgb(16, 72, 84);
/// Lesser words.
pub(super) const SOFT: Color = Color::rgb(78, 84, 90);
/// A light ground under headings of tables.
pub(super) const PALE: Color = Color::rgb(228, 236, 238);

/// Every pair of text and ground that the documents use.
pub const INKS: [Ink; 6] = [
    Ink { text: INK, ground: Color::WHITE },
    Ink { text: ACCENT, ground: Color::WHITE },
    Ink { text: SOFT, ground: Color::WHITE },
    Ink { text: INK, ground: PALE },
    Ink { text: Color::WHITE, ground: ACCENT },
    Ink { text: Color::WHITE, ground: INK },
];

/// White left at the left edge of a page, in millimetres: room to punch holes.
const LEFT: f64 = 16.0;
/// White left at the top of a page.
const TOP: f64 = 9.0;
/// White left at the right and at the bottom: what any printer can leave, and a last line.
pub(super) const MARGIN: f64 = 12.0;

/// Columns that facts, drawings and tables share.
const COLUMNS: usize = 12;
/// Between columns, in millimetres.
pub(super) const GUTTER: f64 = 4.0;

/// A line between things.
pub(super) const THIN: Pen = Pen::solid(0.25, SOFT);
/// A line around things that matter.
pub(super) const FIRM: Pen = Pen::solid(0.6, INK);

pub(super) const TITLE: Style = text(24.0, Weight::Bold, ACCENT);
pub(super) const HEADING: Style = text(14.0, Weight::Bold, ACCENT);
/// Headings where a page is full of them.
pub(super) const LESSER_HEADING: Style = text(11.5, Weight::Bold, ACCENT);
pub(super) const BODY: Style = text(9.5, Weight::Regular, INK);
pub(super) const STRONG: Style = text(9.5, Weight::Bold, INK);
pub(super) const SMALL: Style = text(8.0, Weight::Regular, SOFT);

/// A style with the documents' leading.
pub(super) const fn text(size_pt: f64, weight: Weight, color: Color) -> Style {
    Style::new(size_pt, weight).colored(color).led(1.28)
}

/// The area inside the margins.
pub(super) fn inside(page: &Page) -> Rect {
    let all = page.bounds();
    Rect::new(all.x0 + LEFT, all.y0 + TOP, all.x1 - MARGIN, all.y1 - MARGIN)
}

/// The part of an area from one of the twelve columns up to another.
pub(super) fn columns(area: Rect, from: usize, to: usize) -> Rect {
    let step = (area.width() + GUTTER) / COLUMNS as f64;
    let left = |column: usize| area.x0 + step * column as f64;
    Rect { x0: left(from), x1: left(to) - GUTTER, ..area }
}

/// Sets the title at the left and, at the right, a box with what must be known at once; what
/// stands on further lines is said less loudly.
pub(super) fn title_line(
    frame: &mut Frame<'_>,
    title: &str,
    status: &str,
    solid: bool,
) -> Result<(), SetError> {
    let title_width = measure(title, &TITLE)?;
    let room = frame.area().width() - title_width - 14.0;
    let lines = lines_of_status(status, if solid { Color::WHITE } else { INK }, room)?;
    let height: f64 = lines.iter().map(|(_, style)| style.line_height()).sum();
    let place = frame.take((height + 4.0).max(13.0), title)?;
    let middle = place.center().y;
    let page = frame.page();
    let heading = page.block(Role::Heading(1));
    let baseline = middle + TITLE.cap_height() / 2.0;
    heading.text(Point::new(place.x0, baseline), title, &TITLE, Align::Left)?;
    let widths = lines.iter().map(|(line, style)| measure(line, style));
    let widest = widths.collect::<Result<Vec<_>, _>>()?.into_iter().fold(0.0, f64::max);
    let around = Rect::new(place.x1 - widest - 8.0, place.y0 + 0.5, place.x1, place.y1 - 0.5);
    let block = page.block(Role::Paragraph);
    let fill = solid.then_some(Fill::solid(INK));
    block.rect(around, fill, Some(FIRM));
    let mut y = middle - height / 2.0;
    for (line, style) in &lines {
        let baseline = y + (style.line_height() + style.cap_height()) / 2.0;
        block.text(Point::new(around.x0 + 4.0, baseline), line, style, Align::Left)?;
        y += style.line_height();
    }
    frame.space(1.5);
    Ok(())
}

/// The lines of a status, the first of them bold, with their styles.
fn lines_of_status(status: &str, ink: Color, room: f64) -> Result<Vec<(String, Style)>, SetError> {
    let mut all = Vec::new();
    for (at, part) in status.lines().enumerate() {
        let (size, weight) = if at == 0 { (11.5, Weight::Bold) } else { (9.5, Weight::Regular) };
        let style = text(size, weight, ink);
        all.extend(wrap(part, &style, room)?.into_iter().map(|line| (line, style)));
    }
    Ok(all)
}

/// Sets facts side by side, each under its name, over the width of the frame.
pub(super) fn facts(frame: &mut Frame<'_>, facts: &[(&str, String)]) -> Result<(), SetError> {
    let columns = columns_of_facts(frame.area().width(), facts)?;
    // Small print for what would need a second line, and then as many lines as it needs.
    let small = Style { size_pt: SMALL.size_pt, ..STRONG };
    let set = |value: &str, width: f64| -> Result<(Vec<String>, Style), SetError> {
        let style = if measure(value, &STRONG)? <= width { STRONG } else { small };
        Ok((wrap(value, &style, width)?, style))
    };
    let values = facts.iter().zip(&columns).map(|((_, value), [_, width])| set(value, *width));
    let values = values.collect::<Result<Vec<_>, _>>()?;
    let lines = values.iter().map(|(lines, _)| lines.len()).max().unwrap_or(1) as f64;
    let place = frame.take(10.0 + (lines - 1.0) * small.line_height(), "facts")?;
    for ((column, (name, _)), (lines, style)) in columns.iter().zip(facts).zip(&values) {
        let x = place.x0 + column[0];
        let block = frame.page().block(Role::Paragraph);
        block.text(Point::new(x, place.y0 + 3.2), name, &SMALL, Align::Left)?;
        for (row, line) in lines.iter().enumerate() {
            let y = place.y0 + 7.8 + row as f64 * style.line_height();
            block.text(Point::new(x, y), line, style, Align::Left)?;
        }
    }
    frame.space(2.0);
    Ok(())
}

/// Where each fact begins and how wide it may be, in millimetres from the left edge: as wide as it
/// needs where there is room for all, else all as wide.
fn columns_of_facts(wide: f64, facts: &[(&str, String)]) -> Result<Vec<[f64; 2]>, SetError> {
    const BETWEEN: f64 = 3.0;
    let needs = facts
        .iter()
        .map(|(name, value)| Ok(measure(name, &SMALL)?.max(measure(value, &STRONG)?) + BETWEEN));
    let needs = needs.collect::<Result<Vec<f64>, SetError>>()?;
    let step = wide / facts.len() as f64;
    let spare = (wide - needs.iter().sum::<f64>()) / facts.len() as f64;
    let mut x = 0.0;
    let column = |need: &f64| {
        let own = if spare < 0.0 { step } else { need + spare };
        let from = x;
        x += own;
        // A hair for the rounding of sums.
        [from, own - BETWEEN + 1e-6]
    };
    Ok(needs.iter().map(column).collect())
}

/// Sets a field to be filled in by hand: a name, and a line over the rest of the width.
fn field(block: &mut Block, at: Rect, name: &str, style: &Style) -> Result<(), SetError> {
    let baseline = at.y1 - 1.6;
    let width = match name {
        "" => 0.0,
        _ => block.text(Point::new(at.x0, baseline), name, style, Align::Left)? + 1.5,
    };
    let line = at.y1 - 1.0;
    block.line(Point::new(at.x0 + width, line), Point::new(at.x1, line), &THIN);
    Ok(())
}

/// Sets rows of fields to be filled in by hand, side by side, each row so high.
pub(super) fn field_rows(
    frame: &mut Frame<'_>,
    rows: &[&[&str]],
    height: f64,
) -> Result<(), SetError> {
    for row in rows {
        let place = frame.take(height, row.first().copied().unwrap_or_default())?;
        let step = (place.width() + GUTTER) / row.len() as f64;
        let block = frame.page().block(Role::Paragraph);
        for (column, name) in row.iter().enumerate() {
            let x = place.x0 + step * column as f64;
            field(block, Rect::new(x, place.y0, x + step - GUTTER, place.y1), name, &BODY)?;
        }
    }
    Ok(())
}

/// Composes with the first of the ways that needs no more than so many pages; where none does,
/// with the first of those that need the fewest.
pub(super) fn first_within<W: Copy>(
    most: usize,
    ways: &[W],
    compose: impl Fn(W) -> Result<Vec<Page>, SetError>,
) -> Result<Vec<Page>, SetError> {
    let mut made: Vec<Result<Vec<Page>, SetError>> = Vec::new();
    for way in ways {
        match compose(*way) {
            Ok(pages) if pages.len() <= most => return Ok(pages),
            other => made.push(other),
        }
    }
    let length = |made: &Result<Vec<Page>, SetError>| made.as_ref().map_or(usize::MAX, Vec::len);
    let shortest = (0..made.len()).min_by_key(|at| length(&made[*at])).unwrap_or(0);
    made.swap_remove(shortest)
}

/// The line by which a page is struck through once there is a newer one. It stands in the margin
/// under the foot, in the same place on every page.
pub(super) const LAST_LINE: Style = text(8.0, Weight::Bold, INK);

/// Says in the margin under the foot that no professional looked through the words of a page, where
/// that is so.
pub(super) fn unreviewed(page: &mut Page, language: &dyn Language) -> Result<(), SetError> {
    let Some(line) = language.unreviewed() else { return Ok(()) };
    let area = inside(page);
    let at = Point::new(area.x0, area.y1 + LAST_LINE.first_baseline());
    page.block(Role::Foot).text(at, line, &SMALL, Align::Left).map(drop)
}

/// Numbers pages in the margin under the foot, at the right, and says there that no professional looked
/// through their words, where that is so.
pub(super) fn numbered(
    mut pages: Vec<Page>,
    language: &dyn Language,
) -> Result<Vec<Page>, SetError> {
    let of = pages.len();
    for (at, page) in pages.iter_mut().enumerate() {
        let area = inside(page);
        let number = language.page_of(at + 1, of);
        let under = Point::new(area.x1, area.y1 + SMALL.first_baseline());
        page.block(Role::Foot).text(under, &number, &SMALL, Align::Right)?;
        unreviewed(page, language)?;
    }
    Ok(pages)
}

/// A table of many numbers: small heads on a pale ground, and a margin in each cell, in millimetres.
pub(super) fn dense_table(columns: Vec<Column>, margin: f64) -> Table {
    let mut table = Table::new(columns, STRONG, BODY);
    table.head.size_pt = SMALL.size_pt;
    table.head_ground = Some(PALE);
    table.margin = margin;
    table
}

/// Sets the last lines of a page, at its lower edge; returns where they begin.
pub(super) fn foot(page: &mut Page, lines: &[&str]) -> Result<f64, SetError> {
    let area = inside(page);
    let height = SMALL.line_height();
    let wrapped = lines.iter().map(|line| wrap(line, &SMALL, area.width()));
    let lines = wrapped.collect::<Result<Vec<_>, _>>()?.concat();
    let top = area.y1 - height * lines.len() as f64;
    let block = page.block(Role::Foot);
    for (row, line) in lines.iter().enumerate() {
        let y = top + height * row as f64 + SMALL.first_baseline();
        block.text(Point::new(area.x0, y), line, &SMALL, Align::Left)?;
    }
    Ok(top)
}
