//! The height gauge: how high each compartment should stand after patting level, at full size, to be
//! cut out; beside it a bar to compare a thumb with.

use case::Spread;
use cushion::Length;
use kurbo::{Point, Rect};

use super::look::{
    ACCENT, BODY, FIRM, INK, LESSER_HEADING, MARGIN, PALE, STRONG, field_rows, text,
};
use super::{ClientPapers, DocumentError, of_clients_left};
use crate::color::Color;
use crate::disc::Disc;
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Fill, Pen};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style};

/// Width of a compartment's column, in millimetres.
const COLUMN: f64 = 13.0;
/// Left of the columns, for the scale.
const SCALE: f64 = 13.0;
/// Above the highest bar, for the numbers.
const HEAD: f64 = 15.0;
/// What the head and the foot of a page take, at most.
const AROUND: f64 = 75.0;
/// The ground of the plausible heights.
const RANGE: Color = Color::grey(196);

/// Size of the numbers, in points.
const NUMBER: f64 = 11.5;
const SMALL: Style = text(8.0, Weight::Regular, INK);

/// A compartment on the gauge.
struct Gauged {
    number: u8,
    height: Option<Spread<Length>>,
}

/// Composes the height gauge of a client's cushion. A height that is not known has no bar, and a line
/// to write on.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn height_gauge(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let texts = papers.language.height_gauge();
    let origin = papers.language.fill_card_origin(papers.plan, papers.date);
    papers.flowing(paper, [texts.title, texts.subject], &[&origin], |flow| set(flow, papers, paper))
}

fn set(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, paper: Paper) -> Result<(), SetError> {
    let texts = papers.language.height_gauge();
    flow.put(|frame| {
        frame.paragraph(texts.nothing_under_a_client, &text(11.5, Weight::Bold, INK))?;
        frame.space(1.0);
        frame.paragraph(texts.how_sure, &BODY)
    })?;
    flow.space(2.0);
    flow.put(|frame| measures(frame, papers))?;
    flow.space(2.0);
    flow.put(|frame| {
        frame.heading(2, texts.how_to_use, &LESSER_HEADING)?;
        for (at, step) in texts.steps.iter().enumerate() {
            frame.item(&format!("{}", at + 1), 5.0, step, &BODY)?;
        }
        Ok(())
    })?;
    flow.space(2.5);
    gauges(flow, papers, paper)?;
    flow.space(2.5);
    let (table, field) = (table(papers, flow.width()), 9.0);
    // Nobody cuts a page in two that has half of a table on it.
    flow.need(LESSER_HEADING.line_height() + table.height()? + 1.0 + field)?;
    flow.headed_table(texts.heights, &LESSER_HEADING, &table, |_, _, _| {})?;
    flow.space(1.0);
    flow.put(|frame| field_rows(frame, texts.fields, field))
}

/// The line and the bar by which the print is checked.
fn measures(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let texts = papers.language.height_gauge();
    frame.heading(2, texts.check_the_print, &LESSER_HEADING)?;
    let (place, block) = frame.figure(14.5, texts.measures_drawn)?;
    let (y, left) = (place.y0 + 3.0, place.x0 + 0.5);
    let pen = Pen::solid(0.35, INK);
    block.line(Point::new(left, y), Point::new(left + 100.0, y), &pen);
    for at in 0..=10 {
        let (x, long) = (left + 10.0 * f64::from(at), if at % 5 == 0 { 2.0 } else { 1.0 });
        block.line(Point::new(x, y - long), Point::new(x, y + long), &pen);
    }
    let bar = Rect::new(left + 118.0, y - 1.5, left + 143.0, y + 1.5);
    block.rect(bar, Some(Fill::solid(ACCENT)), None);
    block.paragraph(Point::new(left, y + 3.0), 100.0, texts.line, &BODY, Align::Left)?;
    let wide = place.x1 - bar.x0;
    block.paragraph(Point::new(bar.x0, y + 3.0), wide, texts.bar, &BODY, Align::Left).map(drop)
}

/// The gauges, each with as many compartments as find room side by side.
fn gauges(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, paper: Paper) -> Result<(), SetError> {
    let texts = papers.language.height_gauge();
    let all = gauged(papers);
    let highest = all.iter().filter_map(|own| own.height).map(|own| own.high.to_mm());
    let highest = highest.fold(papers.pattern.wall_height().to_mm(), f64::max);
    let high = highest + HEAD;
    if high > paper.height() - 2.0 * MARGIN - AROUND {
        return flow.put(|frame| frame.paragraph(texts.too_high, &STRONG));
    }
    let across = ((flow.width() - SCALE - 3.0) / COLUMN).floor() as usize;
    let rows = all.len().div_ceil(across);
    for row in all.chunks(all.len().div_ceil(rows)) {
        flow.put(|frame| {
            frame.heading(2, texts.cut_out, &LESSER_HEADING)?;
            frame.space(1.5);
            let (place, block) = frame.figure(high, texts.drawing)?;
            let wide = SCALE + COLUMN * row.len().max(6) as f64 + 3.0;
            let strip = Rect { x1: place.x0 + wide, ..place };
            gauge(block, strip, row, papers)
        })?;
        flow.space(2.5);
    }
    Ok(())
}

/// The compartments with their heights, as far as they are known.
fn gauged(papers: &ClientPapers<'_>) -> Vec<Gauged> {
    let counts = papers.plan.counts.iter().enumerate();
    let height = |at: usize| papers.extras.heights.get(at).copied().flatten();
    counts.map(|(at, own)| Gauged { number: own.number, height: height(at) }).collect()
}

/// One gauge, whose lower edge is the table.
fn gauge(
    block: &mut Block,
    strip: Rect,
    row: &[Gauged],
    papers: &ClientPapers<'_>,
) -> Result<(), SetError> {
    let texts = papers.language.height_gauge();
    block.rect(strip, None, Some(Pen::dashed(0.3, INK, 1.6, 1.8)));
    let up = |mm: f64| strip.y1 - mm;
    scale(block, strip, texts.unit)?;
    for (at, own) in row.iter().enumerate() {
        let x = strip.x0 + SCALE + COLUMN * (at as f64 + 0.5);
        let column = |from: f64, to: f64| Rect::new(x - 5.0, up(to), x + 5.0, up(from));
        let number = own.number.to_string();
        let disc = Disc::of(&number, NUMBER)?;
        disc.draw(block, Point::new(x, strip.y0 + 1.0 + disc.radius), &number, ACCENT)?;
        let top = strip.y0 + 5.0;
        let Some(height) = own.height else {
            let y = top + 7.0;
            block.line(Point::new(x - 4.5, y), Point::new(x + 4.5, y), &FIRM);
            continue;
        };
        let [low, high] = [height.low, height.high].map(Length::to_mm);
        block.rect(column(low, high), Some(Fill::solid(RANGE)), None);
        let y = up(height.central.to_mm());
        block.line(Point::new(x - 5.8, y), Point::new(x + 5.8, y), &Pen::solid(0.7, INK));
        let said = papers.language.height_on_gauge(height.central);
        block.text(Point::new(x, top + 4.6), &said, &SMALL, Align::Centre)?;
    }
    let left = strip.x0 + SCALE;
    block.text(Point::new(left, strip.y1 - 2.0), texts.on_the_table, &STRONG, Align::Left)?;
    let whose = papers.language.whose_gauge(&papers.client.code, papers.mark);
    block.text(Point::new(left, strip.y1 - 7.0), &whose, &SMALL, Align::Left)?;
    block.line(
        Point::new(strip.x0, strip.y1 - 0.4),
        Point::new(strip.x1, strip.y1 - 0.4),
        &Pen::solid(0.8, ACCENT),
    );
    Ok(())
}

/// The scale at the left edge, in millimetres from the table.
fn scale(block: &mut Block, strip: Rect, unit: &str) -> Result<(), SetError> {
    let most = (strip.height() - 5.0).floor() as u32;
    for mm in 1..=most {
        let y = strip.y1 - f64::from(mm);
        let long = if mm % 10 == 0 {
            4.0
        } else if mm % 5 == 0 {
            3.0
        } else {
            1.8
        };
        let pen = Pen::solid(if mm % 10 == 0 { 0.3 } else { 0.15 }, INK);
        block.line(Point::new(strip.x0, y), Point::new(strip.x0 + long, y), &pen);
        if mm % 10 == 0 && mm + 6 < most {
            let baseline = Point::new(strip.x0 + 4.8, y + SMALL.cap_height() / 2.0);
            block.text(baseline, &mm.to_string(), &SMALL, Align::Left)?;
        }
    }
    let at = Point::new(strip.x0 + 4.8, strip.y0 + 1.5 + SMALL.cap_height());
    block.text(at, unit, &SMALL, Align::Left).map(drop)
}

fn table(papers: &ClientPapers<'_>, wide: f64) -> Table {
    let language = papers.language;
    let widths = [10.0, wide - 112.0, 16.0, 54.0, 32.0];
    let heads = language.height_gauge().columns.iter().zip(widths).enumerate();
    let columns = heads.map(|(at, (head, width))| {
        let column = Column::new(*head, width, if at < 2 { Align::Left } else { Align::Centre });
        if at == 0 { column.of_compartments() } else { column }
    });
    let mut table = Table::new(columns.collect(), STRONG, BODY);
    table.head_ground = Some(PALE);
    table.mark = ACCENT;
    table.of_clients_left = of_clients_left(papers.pattern);
    table.margin = 0.8;
    table.least_row = 6.0;
    let rows = papers.plan.counts.iter().zip(papers.pattern.compartments()).zip(gauged(papers));
    for ((count, there), own) in rows {
        table.row([
            count.number.to_string(),
            language.compartment(there),
            count.planned.to_string(),
            own.height.map_or_else(String::new, |own| language.left_under_bone(&own)),
            String::new(),
        ]);
    }
    table
}
