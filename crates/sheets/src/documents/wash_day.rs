//! The sheet for the day of a wash: the order of work, the recount, a label for each bag.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{ACCENT, FIRM, GUTTER, INK, PALE, field_rows, text};
use super::views::{Letters, View, draw_named, height_of};
use super::{ClientPapers, DocumentError, of_clients_left};
use crate::disc::Disc;
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style, wrap};

const WORDS: Style = text(14.0, Weight::Regular, INK);
const FIRMLY: Style = text(14.0, Weight::Bold, INK);
const HEAD: Style = text(16.5, Weight::Bold, ACCENT);

/// How high the drawing and the rows of the table are.
#[derive(Clone, Copy)]
struct Room {
    /// Greatest height of the drawing, in millimetres.
    drawing: f64,
    /// Between the words and the rules of the table, in millimetres.
    margin: f64,
}

impl Room {
    /// From the most room to the least.
    const ALL: [Self; 3] =
        [Self { drawing: 56.0, margin: 1.2 }, Self { drawing: 54.0, margin: 0.6 }, Self::LEAST];
    /// The least in which one can still write.
    const LEAST: Self = Self { drawing: 54.0, margin: 0.3 };
}

/// Labels in a row.
const ACROSS: usize = 4;
/// How much of the width the drawing has.
const LEFT: f64 = 0.44;
/// How many contacts are named, of those who are called first.
const CALLS: usize = 2;
/// Height of a field to write in, in millimetres.
const FIELD: f64 = 10.0;
/// Height of a label, in millimetres.
const LABEL: f64 = 40.0;

/// Composes the sheet for the day of a wash.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn wash_day(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let texts = papers.language.wash_day();
    let origin = papers.language.fill_card_origin(papers.plan, papers.date);
    let made = |room, labels| {
        papers.flowing(paper, [texts.title, texts.subject], &[&origin], |flow| {
            work(flow, papers, room)?;
            if labels { all_labels(flow, papers) } else { Ok(()) }
        })
    };
    // Whoever works has all of it on one page, even where the labels need another.
    let on_one_page = |labels| {
        let is_one = |room: &Room| made(*room, labels).is_ok_and(|made| made.pages.len() == 1);
        Room::ALL.into_iter().find(is_one)
    };
    let room = on_one_page(true).or_else(|| on_one_page(false)).unwrap_or(Room::LEAST);
    made(room, true)
}

/// What is done, and room to write it down.
fn work(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, room: Room) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.wash_day());
    flow.put(|frame| {
        frame.heading(2, texts.order_of_work, &HEAD)?;
        for (at, step) in language.take_home().washing_steps.iter().enumerate() {
            frame.item(&format!("{}", at + 1), 6.0, step, &WORDS)?;
        }
        frame.paragraph(texts.small_cells, &FIRMLY)?;
        let seat = papers.client.meanwhile.iter();
        let mut seat = seat.map(|own| language.sit_meanwhile(own));
        seat.try_for_each(|own| frame.paragraph(&own, &WORDS))
    })?;
    flow.space(2.0);
    flow.put(|frame| {
        let (start, whole) = (frame.y(), frame.area());
        let middle = whole.x0 + whole.width() * LEFT;
        let halves = [
            Rect { y0: start, x1: middle - GUTTER, ..whole },
            Rect { y0: start, x0: middle, ..whole },
        ];
        let [left, right] = halves;
        let drawn = from_below(&mut Frame::new(frame.page(), left), papers, room.drawing)?;
        let told = burst(&mut Frame::new(frame.page(), right), papers)?;
        frame.take(f64::max(drawn, told) - start, texts.from_below).map(drop)
    })?;
    flow.space(2.0);
    let table = counts(papers, room.margin, flow.width());
    flow.headed_table(texts.count, &HEAD, &table, |_, _, _| {})?;
    flow.space(1.0);
    flow.put(|frame| field_rows(frame, texts.fields, FIELD))
}

/// Where the pockets are, with their numbers; returns where it ends.
fn from_below(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    highest: f64,
) -> Result<f64, SetError> {
    let shared = papers.language.shared();
    frame.heading(2, papers.language.wash_day().from_below, &HEAD)?;
    let height = height_of(papers.pattern, frame.area().width()).min(highest);
    let (area, block) = frame.figure(height, shared.numbers_from_below)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    let letters = Letters { numbers: 18.0, edges: 10.0 };
    draw_named(block, shared, papers.pattern, View::Below, area, numbers, letters)?;
    Ok(frame.y())
}

/// What to do with a cell that burst, whom to call, how to count, what the bag holds, and room for
/// what the file does not say; returns where it ends.
fn burst(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<f64, SetError> {
    let (language, texts) = (papers.language, papers.language.wash_day());
    frame.heading(2, texts.burst_cell.heading, &HEAD)?;
    for sentence in texts.burst_cell.sentences {
        frame.paragraph(sentence, &WORDS)?;
    }
    let contacts = papers.client.contacts.iter().take(CALLS);
    for contact in contacts {
        frame.paragraph(&language.call(contact), &FIRMLY)?;
    }
    if papers.client.contacts.is_empty() {
        field_rows(frame, &[&[language.take_home().who_and_phone]], FIELD)?;
    }
    frame.paragraph(texts.count_twice, &WORDS)?;
    frame.paragraph(&language.keep_the_bag(papers.spares()), &WORDS)?;
    if papers.client.meanwhile.is_none() {
        field_rows(frame, &[&[language.take_home().meanwhile]], FIELD)?;
    }
    Ok(frame.y())
}

/// A label for each bag.
fn all_labels(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let texts = papers.language.wash_day();
    flow.space(3.0);
    flow.need(HEAD.line_height() + LABEL)?;
    flow.put(|frame| frame.heading(2, texts.bag_labels, &HEAD))?;
    flow.space(1.0);
    let all: Vec<CompartmentIx> = papers.pattern.indices().collect();
    for row in all.chunks(ACROSS) {
        flow.put(|frame| labels(frame, papers, row))?;
    }
    Ok(())
}

/// What came out of each pocket and went back in.
fn counts(papers: &ClientPapers<'_>, margin: f64, wide: f64) -> Table {
    let texts = papers.language.wash_day();
    let widths = [22.0, wide - 94.0, 20.0, 26.0, 26.0];
    let columns = texts.columns.iter().zip(widths).enumerate().map(|(at, (head, width))| {
        let column = Column::new(*head, width, if at == 1 { Align::Left } else { Align::Centre });
        if at == 0 { column.of_compartments() } else { column }
    });
    let mut table = Table::new(columns.collect(), FIRMLY, WORDS);
    table.head_ground = Some(PALE);
    table.margin = margin;
    table.mark = ACCENT;
    table.of_clients_left = of_clients_left(papers.pattern);
    for (count, there) in papers.plan.counts.iter().zip(papers.pattern.compartments()) {
        let (number, cells) = (count.number.to_string(), count.planned.to_string());
        let place = papers.language.compartment(there);
        table.row([number, place, cells, String::new(), String::new()]);
    }
    table
}

/// Labels side by side, with broken lines to cut along.
fn labels(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    row: &[CompartmentIx],
) -> Result<(), SetError> {
    let language = papers.language;
    let small = text(9.5, Weight::Regular, INK);
    let place = frame.take(LABEL, language.wash_day().bag_labels)?;
    let wide = place.width() / ACROSS as f64;
    for (column, ix) in row.iter().enumerate() {
        let x = place.x0 + wide * column as f64;
        let label = Rect::new(x, place.y0, x + wide, place.y1);
        let cut = Pen::dashed(FIRM.width / 2.0, INK, 1.6, 1.8);
        frame.page().block(Role::Artifact).rect(label, None, Some(cut));
        let (middle, count) = (label.center().x, &papers.plan.counts[ix.index()]);
        let block = frame.page().block(Role::Paragraph);
        let number = count.number.to_string();
        let disc = Disc::of(&number, 24.0)?;
        let mut y = label.y0 + 2.0 + disc.radius;
        disc.draw(block, Point::new(middle, y), &number, ACCENT)?;
        y += disc.radius + 1.0 + FIRMLY.first_baseline();
        let cells = language.cells_in_drawing(count.planned);
        block.text(Point::new(middle, y), &cells, &FIRMLY, Align::Centre)?;
        let where_it_is = language.compartment(&papers.pattern[*ix]);
        let words = format!("{where_it_is}\n{}", papers.client.code);
        let room = wide - 4.0;
        let height = wrap(&words, &small, room)?.len() as f64 * small.line_height();
        let at = Point::new(label.x0 + 2.0, label.y1 - 1.5 - height);
        block.paragraph(at, room, &words, &small, Align::Centre)?;
    }
    Ok(())
}
