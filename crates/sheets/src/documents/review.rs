//! The review of a layout: findings, a small picture of each size, and the numbers.

use case::{Date, Digest, REVIEWED, ReviewFinding, ReviewedSeat, ReviewedSize};
use cushion::{Cell, CompartmentIx, Layout, Length, Purpose, RangeRow};
use kurbo::{Point, Rect};
use words::Language;

use super::look::{
    ACCENT, BODY, HEADING, INK, SMALL, STRONG, THIN, columns, dense_table, facts, foot, inside,
    numbered, title_line,
};
use super::views::{View, draw, mark_clients_left, place_on_page};
use super::{DocumentError, document};
use crate::color::Color;
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Document, Fill, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;

/// What the page of a review is made from.
#[derive(Clone, Copy)]
pub struct ReviewPage<'a> {
    /// In which language it is.
    pub language: &'a dyn Language,
    /// The layout.
    pub layout: &'a Layout,
    /// By which its text is known again.
    pub digest: &'a Digest,
    /// What is counted.
    pub cell: &'a Cell,
    /// The sizes, at least one.
    pub sizes: &'a [ReviewedSize],
    /// Each with its pattern and stock fill.
    pub rows: &'a [RangeRow],
    /// What is found, the worst first.
    pub findings: &'a [ReviewFinding],
    /// Bodies that a size suits, of so many.
    pub bodies: (usize, usize),
    /// The day that the page bears.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

/// Composes the page; with many sizes it flows over several.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn review_page(own: &ReviewPage<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let (language, texts) = (own.language, own.language.review());
    let known = language.layout_digest(own.layout.revision, own.digest);
    let last = format!("{known} {}, {}.", own.program, own.date);
    let begin = |_| {
        let mut page = Page::new(language, paper, texts.title);
        let end = foot(&mut page, &[texts.limits, texts.clinician_decides, &last])?;
        let area = inside(&page);
        let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..area });
        title_line(&mut frame, texts.title, texts.estimate, true)?;
        facts(&mut frame, &named(own))?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    findings(&mut flow, own)?;
    flow.space(2.0);
    pictures(&mut flow, own)?;
    flow.space(1.0);
    // A table of one row at the foot of a page is overlooked.
    flow.need(40.0)?;
    flow.headed_table(texts.by_size, &HEADING, &by_size(own, flow.width()), |_, _, _| ())?;
    flow.space(1.5);
    flow.paragraph(texts.legend, &BODY)?;
    flow.paragraph(texts.sources, &SMALL)?;
    flow.space(3.0);
    flow.headed_table(texts.by_compartment, &HEADING, &cells(own, flow.width()), |_, _, _| ())?;
    let mut made = document(language, texts.title, texts.subject, own.date, own.program);
    made.pages = numbered(flow.pages(), language)?;
    Ok(made)
}

fn named<'a>(own: &ReviewPage<'a>) -> Vec<(&'a str, String)> {
    let (language, texts) = (own.language, own.language.review());
    let (layout, revision) = (own.layout.name.as_str(), own.layout.revision);
    vec![
        (texts.layout, language.layout_with_revision(layout, revision)),
        (texts.cell, own.cell.name.to_string()),
        (texts.sizes, own.sizes.len().to_string()),
        (texts.bodies, language.page_of(own.bodies.0, own.bodies.1)),
        (texts.printed, own.date.to_string()),
    ]
}

/// What is found, numbered, each with what to do.
fn findings(flow: &mut Flow<'_>, own: &ReviewPage<'_>) -> Result<(), SetError> {
    let (language, texts) = (own.language, own.language.review());
    flow.put(|frame| frame.heading(2, texts.findings, &HEADING))?;
    if own.findings.is_empty() {
        return flow.paragraph(texts.no_findings, &BODY);
    }
    for (at, finding) in own.findings.iter().enumerate() {
        let said = language.review_finding(finding);
        flow.item(&format!("{}", at + 1), 7.0, &said.message, &STRONG)?;
        flow.item("", 7.0, &said.hint.unwrap_or_default(), &BODY)?;
        flow.space(0.8);
    }
    Ok(())
}

/// Pictures side by side.
const ACROSS: usize = 4;
/// Height of a picture with its words, in millimetres.
const PICTURE: f64 = 48.0;
/// Of that the words below.
const CAPTION: f64 = 9.0;

/// A small picture of each size, with the places of seat bones.
fn pictures(flow: &mut Flow<'_>, own: &ReviewPage<'_>) -> Result<(), SetError> {
    let texts = own.language.review();
    let all: Vec<(&ReviewedSize, &RangeRow)> = own.sizes.iter().zip(own.rows).collect();
    for (at, some) in all.chunks(ACROSS).enumerate() {
        flow.put(|frame| {
            if at == 0 {
                frame.heading(2, texts.sizes_from_above, &HEADING)?;
                frame.space(1.0);
            }
            let place = frame.take(PICTURE, texts.sizes_from_above)?;
            for (column, (size, row)) in some.iter().enumerate() {
                let wide = 12 / ACROSS;
                let tile = columns(place, column * wide, (column + 1) * wide);
                picture(frame.page(), own, (size, row), tile)?;
            }
            Ok(())
        })?;
    }
    Ok(())
}

fn picture(
    page: &mut Page,
    own: &ReviewPage<'_>,
    (size, row): (&ReviewedSize, &RangeRow),
    tile: Rect,
) -> Result<(), SetError> {
    /// Beside and above a drawing, in millimetres, and the radius of a dot.
    const BESIDE: f64 = 3.0;
    const DOT: f64 = 0.7;
    let language = own.language;
    let pattern = &row.pattern;
    let inner =
        Rect::new(tile.x0 + BESIDE, tile.y0 + 1.0, tile.x1 - BESIDE, tile.y1 - CAPTION - 2.0);
    let alt = language.numbers_from_above(pattern.compartments().len());
    let block = page.block(Role::Figure { alt });
    let place = place_on_page(pattern, View::Above, inner);
    // Of whom a size suits nobody knows where their bones are.
    let known = if size.bodies > 0 { size.bones.apart.as_slice() } else { &[] };
    for (apart, percent) in known.iter().zip(REVIEWED) {
        for side in [-0.5, 0.5] {
            let at = place * Point::new(side * apart.to_mm(), BONES_FORWARD);
            // The middle one is full; numbers lie over them.
            let fill = if percent == 50 { ACCENT } else { Color::WHITE };
            block.circle(at, DOT, Some(Fill::solid(fill)), Some(THIN));
        }
    }
    let numbers = |ix: CompartmentIx| (pattern[ix].number.to_string(), None);
    draw(block, pattern, View::Above, inner, numbers, 8.0, 0.5 * inner.height())?;
    mark_clients_left(block, pattern, View::Above, inner);
    let said = [(pattern.size().to_string(), STRONG), (language.rating(Some(size.rated)), SMALL)];
    let block = page.block(Role::Paragraph);
    for (at, (words, style)) in said.iter().enumerate() {
        let y = tile.y1 - CAPTION + 3.4 + 3.8 * at as f64;
        block.text(Point::new(tile.center().x, y), words, style, Align::Centre)?;
    }
    Ok(())
}

/// How far in front of the rear edge the seat bones are taken to lie, in millimetres, as the numbers
/// were found.
const BONES_FORWARD: f64 = 125.0;

/// A table whose look all of them share.
fn table(columns: Vec<Column>) -> Table {
    dense_table(columns, 0.8)
}

/// A row for each size.
fn by_size(own: &ReviewPage<'_>, wide: f64) -> Table {
    let (language, texts) = (own.language, own.language.review());
    let widths = [18.0, 13.0, 13.0, 14.0, 15.0, 15.0, 27.0, 0.0, 0.0, 19.0];
    let rest = (wide - widths.iter().sum::<f64>()) / 2.0;
    let column = |head: &str, at: usize| {
        let width = if widths[at] > 0.0 { widths[at] } else { rest };
        Column::new(head, width, if at == 0 { Align::Left } else { Align::Centre })
    };
    let heads = [
        texts.size,
        texts.rated,
        texts.suits,
        texts.code,
        texts.bone_to_seam,
        texts.on_seam,
        texts.left,
        texts.bottomed,
        texts.slack,
        texts.opening,
    ];
    let mut table = table(heads.iter().enumerate().map(|(at, head)| column(head, at)).collect());
    for size in own.sizes {
        let least =
            size.compartments.iter().map(|own| own.opening.to_mm()).fold(f64::INFINITY, f64::min);
        table.row([
            size.size.to_string(),
            format!("{:.0}", size.rated.to_kg()),
            size.bodies.to_string(),
            size.code.to_owned(),
            of_known(size, whole(size.bones.to_seam[1])),
            of_known(size, format!("{} %", language.decimal(size.bones.on_seam * 100.0, 0))),
            of_seats(&size.seats, &|own| {
                own.left.map_or_else(|| "–".to_owned(), |left| whole(left.central))
            }),
            of_seats(&size.seats, &|own| numbers(&own.bottomed)),
            of_seats(&size.seats, &|own| numbers(&own.slack)),
            format!("{least:.0}"),
        ]);
    }
    table
}

/// What is said of people's bones; a stroke where the size suits nobody of the table.
fn of_known(size: &ReviewedSize, said: String) -> String {
    if size.bodies > 0 { said } else { "–".to_owned() }
}

fn whole(length: Length) -> String {
    format!("{:.0}", length.to_mm())
}

/// Numbers of compartments; a stroke for none.
fn numbers(all: &[u8]) -> String {
    if all.is_empty() {
        return "–".to_owned();
    }
    all.iter().map(u8::to_string).collect::<Vec<_>>().join(", ")
}

/// Something of the lightest, the middle and the heaviest body; once where it is the same of all.
fn of_seats(seats: &[ReviewedSeat], of: &dyn Fn(&ReviewedSeat) -> String) -> String {
    let all: Vec<String> = seats.iter().map(of).collect();
    match all.first() {
        Some(first) if all.iter().all(|own| own == first) => first.clone(),
        _ => all.join(" / "),
    }
}

/// What one cell does in each compartment, at the size that suits most bodies.
fn cells(own: &ReviewPage<'_>, wide: f64) -> Table {
    let (language, texts) = (own.language, own.language.review());
    const NUMBER: f64 = 20.0;
    let number = |head: &str| Column::new(head, NUMBER, Align::Centre);
    let mut table = table(vec![
        Column::new(texts.number, 13.0, Align::Left).of_compartments(),
        Column::new(texts.purpose, wide - 13.0 - 6.0 * NUMBER, Align::Left),
        number(texts.cells),
        number(texts.width),
        number(texts.under_left),
        number(texts.under_right),
        number(texts.lifts),
        number(texts.pitch),
    ]);
    table.mark = INK;
    let Some(size) = own.sizes.iter().max_by_key(|own| own.bodies) else { return table };
    for own in &size.compartments {
        let [low, stock, high] = own.cells;
        let signed = |number: f64, decimals: usize| {
            let said = language.decimal(number.abs(), decimals);
            let sign = if number < 0.0 { "–" } else { "+" };
            format!("{sign}{said}")
        };
        let of = |number: &dyn Fn(&case::CellsDo) -> String| {
            own.effect.as_ref().map_or_else(|| "–".to_owned(), number)
        };
        table.row([
            own.number.to_string(),
            purpose(own.purpose, size),
            language.cells_with_range(low, stock, high, false),
            whole(own.width),
            of(&|it| signed(it.under.left.to_mm(), 2)),
            of(&|it| signed(it.under.right.to_mm(), 2)),
            of(&|it| it.lifts.map_or_else(|| "–".to_owned(), |own| signed(own.to_mm(), 1))),
            of(&|it| signed(it.pitch_deg, 3)),
        ]);
    }
    table
}

/// What a compartment is for, in the word of layout files, with the size that the row is of.
fn purpose(own: Purpose, size: &ReviewedSize) -> String {
    format!("{} ({})", own.words(), size.size)
}
