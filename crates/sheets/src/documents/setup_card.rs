//! The setup card: one page for the therapist, at the chair.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{
    BODY, FIRM, HEADING, PALE, SMALL, STRONG, facts, first_that_fits, foot, inside, title_line,
};
use super::views::{View, draw_named};
use super::{ClientPapers, DocumentError};
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;
use crate::words::english as words;

/// How high the drawings and the rows of the tables are.
#[derive(Clone, Copy)]
struct Room {
    /// Height of the drawings, as a share of the page.
    drawing: f64,
    /// Least height of a row, in millimetres.
    row: f64,
}

impl Room {
    /// From the most room to the least in which one can still write.
    const ALL: [Self; 4] = [
        Self { drawing: 0.32, row: 5.8 },
        Self { drawing: 0.30, row: 5.4 },
        Self { drawing: 0.27, row: 5.0 },
        Self { drawing: 0.25, row: 4.8 },
    ];
}

/// Composes the setup card: the cushion from above with number and count in each compartment,
/// counts and checks with columns to write in, cautions.
///
/// One page; cautions that find no room on it go to a second.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or something finds no room.
pub fn setup_card(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let (page, left) = first_that_fits(Room::ALL, |room| card(papers, paper, room))?;
    let mut document = papers.document(words::SETUP_CARD, words::SETUP_CARD_SUBJECT);
    document.pages.push(page);
    if !left.is_empty() {
        document.pages.push(more_cautions(papers, paper, &left)?);
    }
    Ok(document)
}

/// The card, and the cautions for which there was no room on it.
fn card<'a>(
    papers: &ClientPapers<'a>,
    paper: Paper,
    room: Room,
) -> Result<(Page, Vec<&'a str>), SetError> {
    let mut page = Page::new(paper, words::SETUP_CARD);
    let mut frame = framed(&mut page, papers)?;
    head(&mut frame, papers)?;
    let own = papers.cautions.iter().map(String::as_str);
    let mut cautions: Vec<&str> = own.chain(words::SETUP_CAUTIONS).collect();
    drawings(&mut frame, papers, room.drawing * paper.height(), &mut cautions)?;
    frame.space(2.0);
    counts(&mut frame, papers, room)?;
    frame.space(2.5);
    checks(&mut frame, room)?;
    frame.space(1.5);
    frame.paragraph(words::ORDER_OF_A_FITTING, &SMALL)?;
    place_cautions(&mut frame, &mut cautions)?;
    Ok((page, cautions))
}

/// A frame above the foot of the page.
fn framed<'p>(page: &'p mut Page, papers: &ClientPapers<'_>) -> Result<Frame<'p>, SetError> {
    let plan = papers.plan;
    let made_from = format!(
        "{} {}, {}, {}; {} {}, {} {}; {} {}.",
        words::PLAN_OF,
        plan.on,
        plan.by,
        plan.program,
        words::LAYOUT_DIGEST,
        plan.layout_digest,
        words::CELL_DIGEST,
        plan.cell_digest,
        words::PRINTED_ON,
        papers.date
    );
    let drawn_by = papers.drawn_by();
    let mut lines = vec![made_from.as_str()];
    lines.extend((!drawn_by.is_empty()).then_some(drawn_by.as_str()));
    lines.push(words::DEFER);
    let end = foot(page, &lines)?;
    let area = inside(page);
    Ok(Frame::new(page, Rect::new(area.x0, area.y0, area.x1, end - 2.0)))
}

/// Sets cautions until there is no more room; what was set is taken from the list.
fn place_cautions(frame: &mut Frame<'_>, cautions: &mut Vec<&str>) -> Result<(), SetError> {
    while let Some(caution) = cautions.first() {
        match frame.item("–", 3.0, caution, &SMALL.colored(BODY.color)) {
            Ok(()) => {
                cautions.remove(0);
            }
            Err(SetError::Overflow { .. }) => break,
            Err(error) => return Err(error),
        }
    }
    Ok(())
}

fn more_cautions(
    papers: &ClientPapers<'_>,
    paper: Paper,
    cautions: &[&str],
) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::SETUP_CARD);
    let mut frame = framed(&mut page, papers)?;
    head(&mut frame, papers)?;
    frame.heading(2, words::CAUTIONS, &HEADING)?;
    for caution in cautions {
        frame.item("–", 3.0, caution, &BODY)?;
    }
    Ok(page)
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
            (words::RECORDED, plan.on.to_string()),
        ],
    )
}

/// The cushion from above at the left; at the right the view from below and the cautions.
fn drawings(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    height: f64,
    cautions: &mut Vec<&str>,
) -> Result<(), SetError> {
    let place = frame.take(height, "the drawings")?;
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
    side_column(page, papers, column, cautions)
}

fn side_column(
    page: &mut Page,
    papers: &ClientPapers<'_>,
    column: Rect,
    cautions: &mut Vec<&str>,
) -> Result<(), SetError> {
    let mut frame = Frame::new(page, column);
    frame.heading(2, words::FROM_BELOW, &HEADING)?;
    let (area, block) = frame.figure(36.0, words::BELOW_ALT)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, papers.pattern, View::Below, area, numbers, 10.0)?;
    frame.heading(2, words::CAUTIONS, &HEADING)?;
    place_cautions(&mut frame, cautions)
}

/// The counts, with columns for what is found in each compartment.
fn counts(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, room: Room) -> Result<(), SetError> {
    frame.heading(2, words::COUNTS, &HEADING)?;
    let wide = frame.area().width();
    let widths = [9.0, wide - 117.0, 13.0, 15.0, 17.0, 21.0, 21.0, 21.0];
    let mut table = columns(&words::COUNT_COLUMNS, &widths);
    table.least_row = room.row;
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
fn checks(frame: &mut Frame<'_>, room: Room) -> Result<(), SetError> {
    frame.heading(2, words::CHECKS, &HEADING)?;
    let wide = frame.area().width();
    let widths = [58.0, wide - 58.0 - 78.0, 26.0, 26.0, 26.0];
    let mut table = columns(&words::CHECK_COLUMNS, &widths);
    table.least_row = room.row;
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
    table.margin = 0.8;
    table
}
