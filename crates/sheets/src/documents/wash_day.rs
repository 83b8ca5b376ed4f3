//! The sheet for the day of a wash: the order of work, the recount, a label for each bag.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{ACCENT, FIRM, INK, PALE, field_rows, text};
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

/// Labels in a row.
const ACROSS: usize = 4;
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
    papers.flowing(paper, [texts.title, texts.subject], &[&origin], |flow| set(flow, papers))
}

fn set(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.wash_day());
    flow.put(|frame| {
        frame.heading(2, texts.order_of_work, &HEAD)?;
        for (at, step) in language.take_home().washing_steps.iter().enumerate() {
            frame.item(&format!("{}", at + 1), 6.0, step, &WORDS)?;
        }
        frame.paragraph(texts.small_cells, &FIRMLY)
    })?;
    flow.space(3.0);
    flow.put(|frame| {
        frame.heading(2, texts.from_below, &HEAD)?;
        let height = height_of(papers.pattern, frame.area().width()).min(56.0);
        let (area, block) = frame.figure(height, language.shared().numbers_from_below)?;
        let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
        let letters = Letters { numbers: 18.0, edges: 10.0 };
        draw_named(block, language.shared(), papers.pattern, View::Below, area, numbers, letters)
    })?;
    flow.space(3.0);
    let table = counts(papers, flow.width());
    flow.headed_table(texts.count, &HEAD, &table, |_, _, _| {})?;
    flow.space(1.0);
    flow.put(|frame| field_rows(frame, texts.fields, 10.0))?;
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
fn counts(papers: &ClientPapers<'_>, wide: f64) -> Table {
    let texts = papers.language.wash_day();
    let widths = [22.0, wide - 94.0, 20.0, 26.0, 26.0];
    let columns = texts.columns.iter().zip(widths).enumerate().map(|(at, (head, width))| {
        let column = Column::new(*head, width, if at == 1 { Align::Left } else { Align::Centre });
        if at == 0 { column.of_compartments() } else { column }
    });
    let mut table = Table::new(columns.collect(), FIRMLY, WORDS);
    table.head_ground = Some(PALE);
    table.least_row = 8.0;
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
