//! The tag that is sewn to the cover: which way round, and the numbers. Never a count.

use case::Date;
use cushion::{CompartmentIx, Pattern};
use kurbo::{BezPath, Point, Rect, Vec2};
use words::Language;

use super::look::{ACCENT, INK, SOFT, field_rows, text};
use super::views::{View, draw, mark_clients_left};
use super::{DocumentError, DrawnBy, OrderPapers, document};
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::{SetError, Style, beginning, wrap};

/// How much of a plugin and its parameters is set, in characters: as much as there is room for. The
/// digest, by which all is known again, is whole.
const OF_A_PLUGIN: [usize; 4] = [60, 45, 30, 15];
/// How much of a serial there is room for, in characters.
const MOST_OF_A_SERIAL: usize = 40;
/// Size of a tag, in millimetres.
const SIZE: Vec2 = Vec2::new(Paper::Tag.width(), Paper::Tag.height());
/// The least print of a tag.
const SMALL: Style = text(8.0, Weight::Regular, INK);

/// What a tag is of.
#[derive(Clone, Copy)]
struct Tag<'a> {
    language: &'a dyn Language,
    pattern: &'a Pattern,
    drawn_by: Option<DrawnBy<'a>>,
    serial: Option<&'a str>,
    date: Date,
    program: &'a str,
}

/// Composes the sewn-in tag of a cushion that has no serial, 100 x 60 mm.
///
/// # Errors
///
/// As [`tag_with_serial`].
pub fn tag(
    language: &dyn Language,
    pattern: &Pattern,
    drawn_by: Option<DrawnBy<'_>>,
    date: Date,
    program: &str,
) -> Result<Document, DocumentError> {
    tag_with_serial(language, pattern, (drawn_by, None), date, program)
}

/// Composes the sewn-in tag, 100 x 60 mm, with the serial of the cushion.
///
/// A tag outlives every plan, so it bears no counts: after a wash they would undo a set-up.
/// `drawn_by` is the plugin that drew the pattern, where one did.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn tag_with_serial(
    language: &dyn Language,
    pattern: &Pattern,
    (drawn_by, serial): (Option<DrawnBy<'_>>, Option<&str>),
    date: Date,
    program: &str,
) -> Result<Document, DocumentError> {
    let texts = language.sewn_in_tag();
    let mut page = Page::new(language, Paper::Tag, texts.title);
    let tag = Tag { language, pattern, drawn_by, serial, date, program };
    tag.set(&mut page, Point::ORIGIN)?;
    let mut document = document(language, texts.title, texts.subject, date, program);
    document.pages.push(page);
    Ok(document)
}

/// Between tags on a sheet, in millimetres.
const BETWEEN: f64 = 6.0;
/// Tags side by side on a sheet, and one above the other.
const COLUMNS: usize = 2;
const ROWS: usize = 3;

/// Composes a sheet of tags with marks to cut along, on a paper laid across.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn tags_sheet(
    language: &dyn Language,
    pattern: &Pattern,
    drawn_by: Option<DrawnBy<'_>>,
    paper: Paper,
    (date, program): (Date, &str),
) -> Result<Document, DocumentError> {
    let tag = Tag { language, pattern, drawn_by, serial: None, date, program };
    let texts = language.sewn_in_tag();
    let mut document = document(language, texts.sheet_title, texts.sheet_subject, date, program);
    document.pages.push(sheet(language, &[tag; COLUMNS * ROWS], paper, |_, _, _| Ok(()))?);
    Ok(document)
}

/// Composes the sheets of an order's tags, in the order of its cards; beside each stands to which
/// card it belongs, where it is cut off.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn tags_of_order(order: &OrderPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let OrderPapers { language, date, program, .. } = *order;
    let tags: Vec<Tag<'_>> = (order.cushions.iter())
        .map(|own| {
            let (pattern, drawn_by, serial) = (own.pattern(), own.drawn_by(), own.serial);
            Tag { language, pattern, drawn_by, serial, date, program }
        })
        .collect();
    let texts = language.sewn_in_tag();
    let mut document = document(language, texts.sheet_title, texts.sheet_subject, date, program);
    let sheets = tags.len().div_ceil(COLUMNS * ROWS);
    for (at, some) in tags.chunks(COLUMNS * ROWS).enumerate() {
        let card = |place: usize| at * COLUMNS * ROWS + place + 1;
        let beside = |page: &mut Page, place: usize, corner: Point| {
            // Above the tag, in what is cut off.
            let baseline = corner + Vec2::new(5.0, -1.6);
            let said = language.tag_of_card(card(place));
            page.block(Role::Foot).text(baseline, &said, &SMALL, Align::Left).map(drop)
        };
        let mut page = sheet(language, some, paper, beside)?;
        let said = language.tags_of_order(order.name, at + 1, sheets);
        in_the_margin(&mut page, &format!("{said} {}", language.order().print_at_full_size))?;
        document.pages.push(page);
    }
    Ok(document)
}

/// Words in the left margin of a sheet, beside the tags.
fn in_the_margin(page: &mut Page, words: &str) -> Result<(), SetError> {
    /// Left free at the edge of the paper and before the marks, in millimetres.
    const EDGE: f64 = 8.0;
    const MARKS: f64 = 5.0;
    let wide = corner(page.bounds().width(), page.bounds().height()).x - EDGE - MARKS;
    let at = Point::new(EDGE, corner(page.bounds().width(), page.bounds().height()).y);
    page.block(Role::Foot).paragraph(at, wide, words, &SMALL, Align::Left).map(drop)
}

/// Where the first tag of a sheet begins.
fn corner(width: f64, height: f64) -> Vec2 {
    let all = |count: usize, own: f64| count as f64 * own + (count as f64 - 1.0) * BETWEEN;
    Vec2::new(width - all(COLUMNS, SIZE.x), height - all(ROWS, SIZE.y)) / 2.0
}

/// A sheet of tags, as many as there is room for at most; `beside` adds to each, by its place and its
/// corner.
fn sheet(
    language: &dyn Language,
    tags: &[Tag<'_>],
    paper: Paper,
    beside: impl Fn(&mut Page, usize, Point) -> Result<(), SetError>,
) -> Result<Page, SetError> {
    let (width, height) = (paper.height(), paper.width());
    let title = language.sewn_in_tag().sheet_title;
    let mut page = Page::new(language, Paper::Custom { width, height }, title);
    for (at, tag) in tags.iter().enumerate() {
        let step = Vec2::new(
            (at % COLUMNS) as f64 * (SIZE.x + BETWEEN),
            (at / COLUMNS) as f64 * (SIZE.y + BETWEEN),
        );
        let origin = (corner(width, height) + step).to_point();
        crop_marks(page.block(Role::Artifact), Rect::from_origin_size(origin, SIZE.to_size()));
        tag.set(&mut page, origin)?;
        beside(&mut page, at, origin)?;
    }
    Ok(page)
}

/// Short lines outside the corners, along which one cuts.
fn crop_marks(block: &mut Block, place: Rect) {
    const FROM: f64 = 0.8;
    const TO: f64 = 2.8;
    let pen = Pen::solid(0.2, INK);
    for (x, out) in [(place.x0, -1.0), (place.x1, 1.0)] {
        for (y, down) in [(place.y0, -1.0), (place.y1, 1.0)] {
            block.line(Point::new(x + out * FROM, y), Point::new(x + out * TO, y), &pen);
            block.line(Point::new(x, y + down * FROM), Point::new(x, y + down * TO), &pen);
        }
    }
}

impl Tag<'_> {
    /// Sets the tag with its top left corner at a point.
    fn set(self, page: &mut Page, origin: Point) -> Result<(), SetError> {
        let mut last = Ok(());
        for of_plugin in OF_A_PLUGIN {
            let mut tried = page.clone();
            last = self.set_with(&mut tried, origin, of_plugin);
            if last.is_ok() {
                *page = tried;
                break;
            }
        }
        last
    }

    /// The same with so much of the plugin, in characters.
    fn set_with(self, page: &mut Page, origin: Point, of_plugin: usize) -> Result<(), SetError> {
        let at = |x0: f64, y0: f64, x1: f64, y1: f64| Rect::new(x0, y0, x1, y1) + origin.to_vec2();
        let foot = self.foot(page, at(4.0, 0.0, SIZE.x - 4.0, SIZE.y - 2.5), of_plugin)?;
        let bottom = foot - origin.y - 1.0;
        const CARE: f64 = 8.4;
        self.drawing(page, at(4.0, 10.0, 48.0, bottom - CARE - 1.0), origin.y + 2.6)?;
        self.care(page, at(4.0, bottom - CARE, 49.0, bottom))?;
        let column = at(53.0, 3.0, SIZE.x - 4.0, bottom);
        self.words(&mut Frame::new(page, column))
    }

    /// Program, date and plugin, at the lower edge of an area; returns its top.
    fn foot(self, page: &mut Page, area: Rect, of_plugin: usize) -> Result<f64, SetError> {
        let mut line = format!("{}, {}", self.program, self.date);
        if let Some(DrawnBy { plugin, layout }) = self.drawn_by {
            let plugin = &beginning(plugin, of_plugin);
            line = format!("{line}. {}", DrawnBy { plugin, layout }.said(self.language));
        }
        if let Some(own) = self.language.unreviewed() {
            line = format!("{line}. {own}");
        }
        let style = SMALL.colored(SOFT);
        let height = wrap(&line, &style, area.width())?.len() as f64 * style.line_height();
        let top = Point::new(area.x0, area.y1 - height);
        page.block(Role::Foot).paragraph(top, area.width(), &line, &style, Align::Left)?;
        Ok(top.y)
    }

    /// The cushion from below, with an arrow to its front up to a height.
    fn drawing(self, page: &mut Page, area: Rect, tip: f64) -> Result<(), SetError> {
        let alt = self.language.sewn_in_tag().drawing.to_owned();
        let block = page.block(Role::Figure { alt });
        let large = text(14.0, Weight::Bold, ACCENT);
        let x = area.center().x;
        let front = Point::new(x, area.y0 - 2.6);
        let width = block.text(front, self.language.shared().front, &large, Align::Centre)?;
        for side in [-1.0, 1.0] {
            let at = x + side * (width / 2.0 + 5.0);
            let (from, to) = (Point::new(at, front.y + 0.6), Point::new(at, tip));
            block.arrow(from, to, 3.0, &Pen::solid(0.9, ACCENT));
        }
        let numbers = |ix: CompartmentIx| (self.pattern[ix].number.to_string(), None);
        let inner = Rect { x1: area.x1 - 2.5, x0: area.x0 + 2.5, ..area };
        draw(block, self.pattern, View::Below, inner, numbers, 12.0, 0.5 * inner.height())?;
        mark_clients_left(block, self.pattern, View::Below, inner);
        Ok(())
    }

    /// Signs of care, after the public standard (ISO 3758, from memory), each crossed out: neither
    /// the cells nor the seams are made for it. What is washed is the outer cover.
    fn care(self, page: &mut Page, area: Rect) -> Result<(), SetError> {
        const SIDE: f64 = 6.4;
        let texts = self.language.sewn_in_tag();
        let block = page.block(Role::Figure { alt: texts.care.to_owned() });
        let step = (area.width() - SIDE) / 4.0;
        for (at, sign) in [tub, triangle, dryer, iron, circle].into_iter().enumerate() {
            let corner = Point::new(area.x0 + step * at as f64, area.y0);
            let place = Square::new(corner, SIDE);
            sign(block, place);
            let pen = Pen::solid(0.5, INK);
            block.line(place.at(-0.06, -0.02), place.at(1.06, 1.02), &pen);
            block.line(place.at(1.06, -0.02), place.at(-0.06, 1.02), &pen);
        }
        Ok(())
    }

    fn words(self, frame: &mut Frame<'_>) -> Result<(), SetError> {
        let (language, texts) = (self.language, self.language.sewn_in_tag());
        frame.heading(1, texts.this_side_down, &text(9.5, Weight::Bold, INK))?;
        frame.space(0.4);
        frame.paragraph(texts.sides, &SMALL)?;
        frame.space(0.4);
        frame.paragraph(texts.fill_by_the_card, &text(8.0, Weight::Bold, INK))?;
        frame.paragraph(texts.care_in_words, &SMALL)?;
        frame.space(0.6);
        let pattern = self.pattern;
        let what = format!(
            "{}, {}",
            language.layout_with_revision(pattern.layout().as_str(), pattern.revision()),
            language.size(pattern.size())
        );
        let firm = text(8.0, Weight::SemiBold, INK);
        frame.paragraph(&what, &firm)?;
        frame.paragraph(&language.rating_on_tag(pattern.max_user_weight()), &firm)?;
        if let Some(serial) = self.serial {
            frame.paragraph(&language.serial(&beginning(serial, MOST_OF_A_SERIAL)), &firm)?;
        }
        // A serial that is known is not written in by hand.
        let known = usize::from(self.serial.is_some());
        field_rows(frame, &texts.fields[known..], 4.6)
    }
}

/// Where a sign is drawn: a square, in shares of its side.
#[derive(Clone, Copy)]
struct Square {
    corner: Point,
    side: f64,
}

impl Square {
    const fn new(corner: Point, side: f64) -> Self {
        Self { corner, side }
    }

    fn at(self, x: f64, y: f64) -> Point {
        self.corner + Vec2::new(x, y) * self.side
    }
}

const SIGN: Pen = Pen::solid(0.45, INK);

/// Washing.
fn tub(block: &mut Block, place: Square) {
    let sides =
        [place.at(0.0, 0.2), place.at(0.14, 0.95), place.at(0.86, 0.95), place.at(1.0, 0.2)];
    block.open_path(&sides, &SIGN);
    let mut water = BezPath::new();
    water.move_to(place.at(0.05, 0.36));
    for at in 0..3 {
        let x = 0.05 + 0.3 * f64::from(at);
        water.quad_to(place.at(x + 0.075, 0.24), place.at(x + 0.15, 0.36));
        water.quad_to(place.at(x + 0.225, 0.48), place.at(x + 0.3, 0.36));
    }
    block.path(water, None, Some(SIGN));
}

/// Bleaching.
fn triangle(block: &mut Block, place: Square) {
    let corners = [place.at(0.5, 0.08), place.at(1.0, 0.95), place.at(0.0, 0.95)];
    block.polygon(&corners, None, Some(SIGN));
}

/// Drying in a dryer.
fn dryer(block: &mut Block, place: Square) {
    let square = Rect::from_points(place.at(0.04, 0.04), place.at(0.96, 0.96));
    block.rect(square, None, Some(SIGN));
    block.circle(place.at(0.5, 0.5), 0.4 * place.side, None, Some(SIGN));
}

/// Ironing.
fn iron(block: &mut Block, place: Square) {
    let mut path = BezPath::new();
    path.move_to(place.at(0.0, 0.9));
    path.quad_to(place.at(0.05, 0.45), place.at(0.4, 0.45));
    path.line_to(place.at(0.86, 0.45));
    path.line_to(place.at(1.0, 0.9));
    path.close_path();
    block.path(path, None, Some(SIGN));
    let handle = [place.at(0.2, 0.2), place.at(0.8, 0.2), place.at(0.86, 0.45)];
    block.open_path(&handle, &SIGN);
}

/// Cleaning by a dry cleaner.
fn circle(block: &mut Block, place: Square) {
    block.circle(place.at(0.5, 0.52), 0.46 * place.side, None, Some(SIGN));
}
