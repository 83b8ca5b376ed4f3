//! The tiles of a template: the sheet cut into pages of paper, with a map.

use kurbo::{Affine, Point, Rect};
use words::Language;

use super::super::look::{
    BODY, HEADING, INK, LESSER_HEADING, SMALL, SOFT, STRONG, THIN, facts, foot, inside, text,
    title_line, unreviewed,
};
use super::super::{DocumentError, document};
use super::TemplatePapers;
use super::drawing::{Window, draw_piece, pen};
use super::sheet::lines;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::SetError;

/// By so much a page shows what the next one shows too, in millimetres.
const OVERLAP: f64 = 10.0;
/// Room above and below the window of a page, in millimetres.
const ABOVE: f64 = 11.0;
const BELOW: f64 = 5.0;
/// The square by which a print is measured, in millimetres.
const SQUARE: f64 = 100.0;
/// Half of a registration cross, in millimetres.
const CROSS: f64 = 4.0;

/// How the sheet is cut.
struct Grid {
    /// The part of a page in which the sheet is seen.
    window: Rect,
    columns: usize,
    rows: usize,
    /// The sheet, from its upper left corner.
    sheet: Rect,
}

/// One tile.
#[derive(Clone, Copy)]
struct Tile {
    column: usize,
    row: usize,
}

impl Tile {
    /// Its name, such as `B2`: a letter for the column and a number for the row.
    fn name(self) -> String {
        let letter = char::from(b'A' + (self.column % 26) as u8);
        let more = if self.column < 26 { "" } else { "A" };
        format!("{more}{letter}{}", self.row + 1)
    }
}

impl Grid {
    fn new(own: &TemplatePapers<'_>, paper: Paper) -> Self {
        let area = inside(&Page::new(own.language, paper, ""));
        let window = Rect::new(area.x0, area.y0 + ABOVE, area.x1, area.y1 - BELOW);
        let sheet = own.template.sheet.inflate(2.0, 2.0);
        let count =
            |whole: f64, seen: f64| ((whole - OVERLAP) / (seen - OVERLAP)).ceil().max(1.0) as usize;
        let (columns, rows) =
            (count(sheet.width(), window.width()), count(sheet.height(), window.height()));
        Self { window, columns, rows, sheet }
    }

    fn step(&self) -> (f64, f64) {
        (self.window.width() - OVERLAP, self.window.height() - OVERLAP)
    }

    /// From the sheet, y up, to the page of a tile.
    fn place(&self, tile: Tile) -> Affine {
        let (right, down) = self.step();
        let x = self.window.x0 - self.sheet.x0 - right * tile.column as f64;
        let y = self.window.y0 + self.sheet.y1 - down * tile.row as f64;
        Affine::new([1.0, 0.0, 0.0, -1.0, x, y])
    }

    fn window(&self, tile: Tile) -> Window {
        Window { place: self.place(tile), seen: Some(self.window) }
    }

    fn tiles(&self) -> impl Iterator<Item = Tile> + use<> {
        let columns = self.columns;
        (0..self.rows).flat_map(move |row| (0..columns).map(move |column| Tile { column, row }))
    }
}

/// Composes the map and the tiles; those without lines are left out.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn template_tiles(own: &TemplatePapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let (language, template) = (own.language, own.template);
    let texts = language.template();
    let grid = Grid::new(own, paper);
    let shown = |tile: &Tile| template.pieces.iter().any(|piece| grid.window(*tile).shows(piece));
    let tiles: Vec<Tile> = grid.tiles().filter(shown).collect();
    let mut made = document(language, texts.tiles_title, texts.subject, own.date, own.program);
    made.pages.push(map_page(own, &grid, &tiles, paper)?);
    for (at, tile) in tiles.iter().enumerate() {
        made.pages.push(tile_page(own, (&grid, &tiles), *tile, (at + 2, paper))?);
    }
    made.pages.iter_mut().try_for_each(|page| unreviewed(page, language))?;
    Ok(made)
}

fn map_page(
    own: &TemplatePapers<'_>,
    grid: &Grid,
    tiles: &[Tile],
    paper: Paper,
) -> Result<Page, SetError> {
    let language = own.language;
    let texts = language.template();
    let mut page = Page::new(language, paper, texts.tiles_title);
    let number = language.page_of(1, tiles.len() + 1);
    let last = format!("{}, {}. {number}", own.program, own.date);
    let end = foot(&mut page, &[texts.trial, &last])?;
    let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..inside_of(paper, language) });
    title_line(&mut frame, texts.tiles_title, texts.untested, true)?;
    facts(&mut frame, &own.facts())?;
    for (at, line) in texts.how_to_join.iter().enumerate() {
        frame.item(&format!("{}.", at + 1), 5.0, line, &STRONG)?;
    }
    frame.space(2.0);
    for note in own.notes().iter().filter(|note| *note != texts.trial) {
        frame.paragraph(note, &BODY)?;
        frame.space(0.8);
    }
    frame.space(2.0);
    frame.heading(2, texts.map, &HEADING)?;
    frame.paragraph(texts.map_shows, &BODY)?;
    frame.space(7.0);
    let (beside, room) = (frame.area(), frame.room());
    let place = frame.take(room, texts.map)?;
    lines(frame.page(), own, Point::new(beside.x0, place.y0 - 2.0))?;
    map(&mut page, own, grid, (tiles, place))?;
    Ok(page)
}

fn inside_of(paper: Paper, language: &dyn Language) -> Rect {
    inside(&Page::new(language, paper, ""))
}

/// The whole sheet, made small, with the windows of the pages and their names.
fn map(
    page: &mut Page,
    own: &TemplatePapers<'_>,
    grid: &Grid,
    (tiles, room): (&[Tile], Rect),
) -> Result<(), SetError> {
    let (right, down) = grid.step();
    let wide = right * grid.columns as f64 + OVERLAP;
    let high = down * grid.rows as f64 + OVERLAP;
    let scale = (room.width() / wide).min(room.height() / high);
    let corner = Affine::new([
        scale,
        0.0,
        0.0,
        -scale,
        room.x0 - grid.sheet.x0 * scale,
        room.y0 + grid.sheet.y1 * scale,
    ]);
    let texts = own.language.template();
    let block = page.block_called("map", Role::Figure { alt: texts.map_shows.to_owned() });
    for piece in &own.template.pieces {
        let path = corner * piece.lines[0].chain.to_path();
        block.path(path, None, Some(Pen::solid(0.3, INK)));
    }
    let thin = Pen::dashed(0.2, SOFT, 1.5, 1.0);
    let all = Rect::new(
        room.x0,
        room.y0,
        room.x0 + right * grid.columns as f64 * scale,
        room.y0 + down * grid.rows as f64 * scale,
    );
    for column in 0..=grid.columns {
        let x = all.x0 + right * column as f64 * scale;
        block.line(Point::new(x, all.y0), Point::new(x, all.y1), &thin);
    }
    for row in 0..=grid.rows {
        let y = all.y0 + down * row as f64 * scale;
        block.line(Point::new(all.x0, y), Point::new(all.x1, y), &thin);
    }
    for tile in tiles {
        let x = room.x0 + right * tile.column as f64 * scale;
        let y = room.y0 + down * tile.row as f64 * scale;
        let at = Point::new(x + 1.2, y + LESSER_HEADING.cap_height() + 1.4);
        block.text(at, &tile.name(), &LESSER_HEADING, Align::Left)?;
    }
    Ok(())
}

fn tile_page(
    own: &TemplatePapers<'_>,
    (grid, tiles): (&Grid, &[Tile]),
    tile: Tile,
    (number, paper): (usize, Paper),
) -> Result<Page, SetError> {
    let language = own.language;
    let texts = language.template();
    let name = tile.name();
    let mut page = Page::new(language, paper, format!("{} {name}", texts.tiles_title));
    let window = grid.window(tile);
    let of_page = language.page_of(number, tiles.len() + 1);
    let pieces: Vec<String> = (own.template.pieces.iter())
        .filter(|piece| window.shows(piece))
        .map(|piece| piece.kind.id())
        .collect();
    head(&mut page, own, grid.window, (&name, &of_page, &pieces.join(", ")))?;
    square(&mut page, texts.square, grid.window)?;
    for piece in own.template.pieces.iter().filter(|piece| window.shows(piece)) {
        draw_piece(&mut page, language, piece, window)?;
    }
    let beside = |column: Option<usize>, row: Option<usize>| {
        let (column, row) = (column?, row?);
        tiles.iter().find(|own| own.column == column && own.row == row).copied()
    };
    let neighbours = [
        beside(tile.column.checked_sub(1), Some(tile.row)),
        beside(Some(tile.column + 1), Some(tile.row)),
        beside(Some(tile.column), tile.row.checked_sub(1)),
        beside(Some(tile.column), Some(tile.row + 1)),
    ];
    edges(&mut page, language, grid.window, neighbours)?;
    Ok(page)
}

/// The name of the page, what it is of, and what is on it.
fn head(
    page: &mut Page,
    own: &TemplatePapers<'_>,
    window: Rect,
    (name, of_page, pieces): (&str, &str, &str),
) -> Result<(), SetError> {
    let language = own.language;
    let pattern = own.pattern;
    let style = text(17.0, Weight::Bold, INK);
    let top = window.y0 - ABOVE;
    let block = page.block(Role::Heading(1));
    let baseline = top + style.cap_height() + 0.5;
    block.text(Point::new(window.x0, baseline), name, &style, Align::Left)?;
    let whose = format!(
        "{} {}, {}: {pieces}",
        language.layout_with_revision(pattern.layout().as_str(), pattern.revision()),
        language.size(pattern.size()),
        own.digest.as_str(),
    );
    let wide = window.width() - 22.0 - 20.0;
    let first = crate::text::wrap(&whose, &SMALL, wide)?;
    let block = page.block(Role::Paragraph);
    for (at, line) in first.iter().take(2).enumerate() {
        let y = top + SMALL.first_baseline() + at as f64 * SMALL.line_height();
        block.text(Point::new(window.x0 + 22.0, y), line, &SMALL, Align::Left)?;
    }
    let y = top + SMALL.first_baseline();
    block.text(Point::new(window.x1, y), of_page, &SMALL, Align::Right)?;
    Ok(())
}

/// A dotted square in the middle of the window, to measure the print by.
fn square(page: &mut Page, words: &str, window: Rect) -> Result<(), SetError> {
    let corner = window.center() - kurbo::Vec2::new(SQUARE, SQUARE) / 2.0;
    let own = Rect::from_origin_size(corner, (SQUARE, SQUARE));
    let block = page.block_called("square", Role::Figure { alt: words.to_owned() });
    block.rect(own, None, Some(Pen::dashed(0.4, SOFT, 0.01, 1.6)));
    let at = Point::new(own.x0 + 2.0, own.y1 - 1.5);
    block.text(at, words, &SMALL, Align::Left)?;
    Ok(())
}

/// Where the page joins its neighbours: crosses that both have, the line to cut at, their names.
fn edges(
    page: &mut Page,
    language: &dyn Language,
    window: Rect,
    [left, right, above, below]: [Option<Tile>; 4],
) -> Result<(), SetError> {
    let block = page.block_called("joins", Role::Paragraph);
    let line = pen(templates::Layer::Cut);
    let lines = [window.x0, window.x1 - OVERLAP].map(|x| (x, [window.y0, window.y1 - OVERLAP]));
    for (x, ys) in lines {
        for y in ys {
            let at = Point::new(x, y);
            block.line(at - (CROSS, 0.0), at + (CROSS, 0.0), &Pen::solid(0.2, line.color));
            block.line(at - (0.0, CROSS), at + (0.0, CROSS), &Pen::solid(0.2, line.color));
            block.circle(at, 1.5, None, Some(Pen::solid(0.2, line.color)));
        }
    }
    let middle = window.center();
    let joins = |tile: Tile| language.template_joins(&tile.name());
    if let Some(tile) = left {
        let at = Point::new(window.x0 - 1.5, middle.y);
        block.turned_text(at, -90.0, &joins(tile), &SMALL, Align::Centre)?;
    }
    if let Some(tile) = right {
        let x = window.x1 - OVERLAP;
        block.line(Point::new(x, window.y0), Point::new(x, window.y1), &cut_here());
        let at = Point::new(window.x1 + 1.5, middle.y);
        block.turned_text(at, 90.0, &joins(tile), &SMALL, Align::Centre)?;
    }
    if let Some(tile) = above {
        let at = Point::new(middle.x, window.y0 - 0.8);
        block.text(at, &joins(tile), &SMALL, Align::Centre)?;
    }
    if let Some(tile) = below {
        let y = window.y1 - OVERLAP;
        block.line(Point::new(window.x0, y), Point::new(window.x1, y), &cut_here());
        let at = Point::new(middle.x, window.y1 + 0.5 + SMALL.cap_height());
        block.text(at, &joins(tile), &SMALL, Align::Centre)?;
    }
    block.rect(window, None, Some(THIN));
    Ok(())
}

/// The line at which a page may be cut.
fn cut_here() -> Pen {
    Pen::dashed(0.2, SOFT, 5.0, 2.0)
}
