//! The setup card: one page for the therapist, at the chair.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{BODY, FIRM, HEADING, PALE, SMALL, STRONG, facts, foot, inside, title_line};
use super::views::{View, draw_named};
use super::{ClientPapers, DocumentError};
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;
use crate::words::english as words;

/// Height of the drawings, in millimetres.
const DRAWING: f64 = 92.0;

/// Composes the setup card: the cushion from above with number and count in each compartment,
/// counts and checks with columns to write in, cautions.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or something finds no room.
pub fn setup_card(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let mut page = Page::new(paper, words::SETUP_CARD);
    let digests = [
        format!(
            "{} {} {}, {} {}, {} {}.",
            words::PLAN_OF,
            papers.plan.on,
            papers.plan.program,
            words::LAYOUT_DIGEST,
            papers.plan.layout_digest,
            words::CELL_DIGEST,
            papers.plan.cell_digest
        ),
        drawn_by(papers),
        words::DEFER.to_owned(),
    ];
    let lines: Vec<&str> =
        digests.iter().map(String::as_str).filter(|line| !line.is_empty()).collect();
    let end = foot(&mut page, &lines)?;
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, Rect::new(area.x0, area.y0, area.x1, end - 2.0));
    head(&mut frame, papers)?;
    drawings(&mut frame, papers)?;
    frame.space(2.0);
    counts(&mut frame, papers)?;
    frame.space(3.0);
    checks(&mut frame)?;
    frame.space(2.0);
    frame.paragraph(words::ORDER_OF_A_FITTING, &SMALL)?;
    let mut document = papers.document(words::SETUP_CARD, words::SETUP_CARD_SUBJECT);
    document.pages.push(page);
    Ok(document)
}

fn drawn_by(papers: &ClientPapers<'_>) -> String {
    papers
        .plan
        .drawn_by
        .as_ref()
        .map_or(String::new(), |plugin| format!("{} {plugin}.", words::DRAWN_BY))
}

fn head(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let status = match papers.fitting_check() {
        Some(check) => words::checked_on(check.on, &check.by),
        None => words::ESTIMATE_UNTIL_CHECKED.to_owned(),
    };
    title_line(frame, words::SETUP_CARD, &status, papers.fitting_check().is_none())?;
    let plan = papers.plan;
    facts(
        frame,
        &[
            (words::CLIENT, papers.client.code.to_string()),
            (words::LAYOUT, papers.pattern.layout().to_string()),
            (words::SIZE, words::size(plan.size)),
            (words::CELLS_IN_ALL, plan.total().to_string()),
            (words::SPARE_CELLS, papers.client.cushion.spare_cells.to_string()),
            (words::RECORDED, format!("{}, {}", plan.on, plan.by)),
            (words::PRINTED, papers.date.to_string()),
        ],
    )
}

/// The cushion from above at the left; at the right the view from below and the cautions.
fn drawings(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let place = frame.take(DRAWING, "the drawings")?;
    let split = place.x0 + place.width() * 0.6;
    let page = frame.page();
    let heading = page.block(Role::Heading(2));
    let baseline = place.y0 + HEADING.first_baseline();
    heading.text(Point::new(place.x0, baseline), words::FROM_ABOVE, &HEADING, Align::Left)?;
    let top = place.y0 + HEADING.line_height();
    let alt = words::above_alt(papers.pattern.compartments().len());
    let block = page.block(Role::Figure { alt });
    let counts = |ix: CompartmentIx| {
        let count = &papers.plan.counts[ix.index()];
        (count.number.to_string(), Some(words::cells(count.planned)))
    };
    let area = Rect::new(place.x0, top, split - 4.0, place.y1);
    draw_named(block, papers.pattern, View::Above, area, counts, 17.0)?;
    let column = Rect::new(split, place.y0, place.x1, place.y1);
    side_column(page, papers, column)
}

fn side_column(page: &mut Page, papers: &ClientPapers<'_>, column: Rect) -> Result<(), SetError> {
    let mut frame = Frame::new(page, column);
    frame.heading(2, words::FROM_BELOW, &HEADING)?;
    let (area, block) = frame.figure(43.0, words::BELOW_ALT)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, papers.pattern, View::Below, area, numbers, 10.0)?;
    frame.heading(2, words::CAUTIONS, &HEADING)?;
    let own = papers.cautions.iter().map(String::as_str);
    for caution in own.chain(words::SETUP_CAUTIONS.iter().copied()) {
        frame.item("–", 3.0, caution, &SMALL.colored(BODY.color))?;
    }
    Ok(())
}

/// The counts, with columns for what is found in each compartment.
fn counts(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    frame.heading(2, words::COUNTS, &HEADING)?;
    let wide = frame.area().width();
    let widths = [10.0, wide - 130.0, 16.0, 18.0, 18.0, 22.0, 22.0, 24.0];
    let mut table = columns(&words::COUNT_COLUMNS, &widths);
    table.least_row = 5.6;
    for (count, there) in papers.plan.counts.iter().zip(papers.pattern.compartments()) {
        let change = i64::from(count.planned) - i64::from(count.stock);
        table.row([
            count.number.to_string(),
            there.words.clone(),
            count.stock.to_string(),
            words::change(change),
            count.planned.to_string(),
            String::new(),
            String::new(),
            String::new(),
        ]);
    }
    let stock: u32 = papers.plan.counts.iter().map(|count| count.stock).sum();
    let total = papers.plan.total();
    table.row([
        String::new(),
        words::TOTAL.to_owned(),
        stock.to_string(),
        words::change(i64::from(total) - i64::from(stock)),
        total.to_string(),
        String::new(),
        String::new(),
        String::new(),
    ]);
    let rows = frame.table(&table)?;
    emphasise(frame, &rows, &widths);
    Ok(())
}

/// A firm frame around the planned counts.
fn emphasise(frame: &mut Frame<'_>, rows: &[Rect], widths: &[f64]) {
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let left = first.x0 + widths[..4].iter().sum::<f64>();
    let around = Rect::new(left, first.y0, left + widths[4], last.y1);
    frame.page().block(Role::Artifact).rect(around, None, Some(FIRM));
}

/// The checks by hand, with the words in which they are answered.
fn checks(frame: &mut Frame<'_>) -> Result<(), SetError> {
    frame.heading(2, words::CHECKS, &HEADING)?;
    let wide = frame.area().width();
    let widths = [58.0, wide - 58.0 - 78.0, 26.0, 26.0, 26.0];
    let mut table = columns(&words::CHECK_COLUMNS, &widths);
    table.least_row = 5.6;
    for (check, answer) in words::CHECK_ROWS {
        table.row([check, answer, "", "", ""]);
    }
    frame.table(&table)?;
    Ok(())
}

fn columns(heads: &[&str], widths: &[f64]) -> Table {
    let column = |(at, (head, width)): (usize, (&&str, &f64))| {
        let align = if at < 2 { Align::Left } else { Align::Centre };
        Column::new(*head, *width, align)
    };
    let columns = heads.iter().zip(widths).enumerate().map(column).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head.size_pt = 8.5;
    table.head_ground = Some(PALE);
    table.margin = 1.0;
    table
}
