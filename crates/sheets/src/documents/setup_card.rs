//! The setup card: one page for the therapist, at the chair.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{
    ACCENT, BODY, FIRM, HEADING, INK, PALE, STRONG, facts, first_that_fits, foot, inside, text,
    title_line,
};
use super::views::{EDGE_WORDS, View, draw_named, place_on_page};
use super::{ClientPapers, DocumentError};
use crate::color::Color;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Fill, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style, measure};
use crate::words::english as words;

const CAUTION: Style = text(9.0, Weight::Regular, INK);

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
    const ALL: [Self; 5] = [
        Self { drawing: 0.33, row: 6.4 },
        Self { drawing: 0.32, row: 5.8 },
        Self { drawing: 0.30, row: 5.4 },
        Self { drawing: 0.28, row: 5.0 },
        Self { drawing: 0.25, row: 4.8 },
    ];
}

/// What follows from goals and checks; empty where nothing is known.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SetupExtras {
    /// What became of each goal, in sentences.
    pub goals: Vec<String>,
    /// Moves from the stock fill to the plan.
    pub moves: Vec<case::Move>,
    /// What to move when a check finds something.
    pub if_then: Vec<IfThen>,
}

/// One line of the table that works without the program.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct IfThen {
    /// What is found.
    pub finding: String,
    /// What to do.
    pub then: String,
    /// What that costs elsewhere.
    pub cost: String,
}

impl SetupExtras {
    fn is_empty(&self) -> bool {
        self.goals.is_empty() && self.moves.is_empty() && self.if_then.is_empty()
    }
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
    let reasons = reasons(papers);
    let card = |room| card(papers, &reasons, paper, room);
    let whole = |room| card(room).map(|(page, left)| left.is_empty().then_some(page));
    // Rather a smaller drawing than a second page.
    let (page, left) = match Room::ALL.into_iter().find_map(|room| whole(room).ok().flatten()) {
        Some(page) => (page, Vec::new()),
        None => first_that_fits(Room::ALL, card)?,
    };
    let mut document = papers.document(words::SETUP_CARD, words::SETUP_CARD_SUBJECT);
    document.pages.push(page);
    if !left.is_empty() || !papers.extras.is_empty() {
        document.pages.push(second_page(papers, paper, &left)?);
    }
    Ok(document)
}

/// Why counts differ from the stock fill, a sentence for each reason that the client's file gives.
fn reasons(papers: &ClientPapers<'_>) -> Vec<String> {
    let mut groups: Vec<(&str, i64, Vec<u8>)> = Vec::new();
    for change in &papers.client.changes {
        let recorded = papers.plan.counts.iter().find(|count| count.id == change.compartment);
        let Some(count) = recorded else { continue };
        let by = i64::from(count.planned) - i64::from(count.stock);
        match groups.iter_mut().find(|group| group.0 == change.reason && group.1 == by) {
            _ if by == 0 => {}
            Some(group) => group.2.push(count.number),
            None => groups.push((&change.reason, by, vec![count.number])),
        }
    }
    groups.iter().map(|(reason, by, numbers)| words::reason(numbers, *by, reason)).collect()
}

/// The card, and the cautions for which there was no room on it.
fn card<'a>(
    papers: &ClientPapers<'a>,
    reasons: &'a [String],
    paper: Paper,
    room: Room,
) -> Result<(Page, Vec<&'a str>), SetError> {
    let mut page = Page::new(paper, words::SETUP_CARD);
    let mut frame = framed(&mut page, papers)?;
    head(&mut frame, papers)?;
    let own = papers.cautions.iter().map(String::as_str);
    let reasons = reasons.iter().map(String::as_str);
    let mut cautions: Vec<&str> = own.chain(words::SETUP_CAUTIONS).chain(reasons).collect();
    drawings(&mut frame, papers, room.drawing * paper.height(), &mut cautions)?;
    frame.space(2.0);
    counts(&mut frame, papers, room)?;
    frame.space(2.5);
    checks(&mut frame, room)?;
    frame.space(1.5);
    frame.paragraph(words::ORDER_OF_A_FITTING, &CAUTION)?;
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
        match frame.item("–", 3.0, caution, &CAUTION) {
            Ok(()) => {
                cautions.remove(0);
            }
            Err(SetError::Overflow { .. }) => break,
            Err(error) => return Err(error),
        }
    }
    Ok(())
}

/// Goals, moves, the table of findings, and the cautions that found no room on the card.
fn second_page(
    papers: &ClientPapers<'_>,
    paper: Paper,
    cautions: &[&str],
) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::SETUP_CARD);
    let mut frame = framed(&mut page, papers)?;
    head(&mut frame, papers)?;
    let extras = papers.extras;
    if !extras.goals.is_empty() {
        frame.heading(2, words::GOALS, &HEADING)?;
        for (at, goal) in extras.goals.iter().enumerate() {
            frame.item(&format!("{}", at + 1), 5.0, goal, &BODY)?;
        }
        frame.space(2.0);
    }
    if !extras.if_then.is_empty() {
        if_then(&mut frame, &extras.if_then)?;
        frame.space(2.0);
    }
    if !extras.moves.is_empty() {
        moves(&mut frame, papers)?;
        frame.space(2.0);
    }
    if !cautions.is_empty() {
        frame.heading(2, words::CAUTIONS, &HEADING)?;
    }
    for caution in cautions {
        frame.item("–", 3.0, caution, &BODY)?;
    }
    Ok(page)
}

/// The table that works without the program.
fn if_then(frame: &mut Frame<'_>, rows: &[IfThen]) -> Result<(), SetError> {
    frame.heading(2, words::IF_THEN, &HEADING)?;
    let wide = frame.area().width();
    let widths = [wide * 0.30, wide * 0.36, wide * 0.34];
    let columns = words::IF_THEN_COLUMNS.iter().zip(widths);
    let columns = columns.map(|(head, width)| Column::new(*head, width, Align::Left)).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    for row in rows {
        table.row([row.finding.as_str(), &row.then, &row.cost]);
    }
    frame.table(&table)?;
    frame.space(1.0);
    frame.paragraph(words::IF_THEN_NOTE, &BODY)
}

/// The moves as sentences, and as arrows on a small drawing.
fn moves(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    const HEIGHT: f64 = 84.0;
    frame.heading(2, words::MOVES, &HEADING)?;
    let place = frame.take(HEIGHT, words::MOVES_ALT)?;
    let split = place.x0 + place.width() * 0.58;
    let area = Rect::new(place.x0, place.y0, split - 4.0, place.y1);
    let block = frame.page().block(Role::Figure { alt: words::MOVES_ALT.to_owned() });
    let labels = |ix: CompartmentIx| {
        let number = papers.pattern[ix].number;
        (number.to_string(), bag(&papers.extras.moves, number))
    };
    draw_named(block, papers.pattern, View::Above, area, labels, 10.5)?;
    arrows(block, papers, area)?;
    let mut column = Frame::new(frame.page(), Rect::new(split, place.y0, place.x1, place.y1));
    for own in &papers.extras.moves {
        column.item("–", 3.0, &format!("{own}."), &BODY)?;
    }
    Ok(())
}

/// What goes from a compartment to the spare bag, or comes from it.
fn bag(moves: &[case::Move], number: u8) -> Option<String> {
    let own = case::Place::Compartment(number);
    moves.iter().find_map(|step| match (step.from, step.to) {
        (from, case::Place::Spare) if from == own => Some(words::with_bag(step.cells, true)),
        (case::Place::Spare, to) if to == own => Some(words::with_bag(step.cells, false)),
        _ => None,
    })
}

/// An arrow for each move between compartments, with the number of cells on it.
fn arrows(block: &mut Block, papers: &ClientPapers<'_>, area: Rect) -> Result<(), SetError> {
    let onto_page = place_on_page(papers.pattern, View::Above, area.inset(-EDGE_WORDS));
    let at = |own: case::Place| match own {
        case::Place::Compartment(number) => {
            papers.pattern.by_number(number).map(|ix| onto_page * papers.pattern[ix].seed)
        }
        case::Place::Spare => None,
    };
    let style = text(8.0, Weight::Bold, INK);
    for own in &papers.extras.moves {
        let (Some(from), Some(to)) = (at(own.from), at(own.to)) else { continue };
        let way = to - from;
        let step = way / way.hypot() * 5.0;
        block.arrow(from + step, to - step, 1.6, &Pen::solid(0.5, ACCENT));
        // Nearer to the beginning, where arrows of one compartment spread.
        let label = own.cells.to_string();
        let place = from.lerp(to, 0.42);
        let around = Rect::from_center_size(place, (measure(&label, &style)? + 1.2, 3.6));
        block.rect(around, Some(Fill::solid(Color::WHITE)), None);
        block.text(place + (0.0, 1.2), &label, &style, Align::Centre)?;
    }
    Ok(())
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
    let widths = [wide - 3.0 * 35.0, 35.0, 35.0, 35.0];
    let mut table = columns(&words::CHECK_COLUMNS, &widths);
    table.least_row = room.row;
    for (check, answer) in words::CHECK_ROWS {
        table.row([check, answer, answer, answer]);
    }
    frame.table(&table)?;
    Ok(())
}

fn columns(heads: &[&str], widths: &[f64]) -> Table {
    let column = |(at, (head, width)): (usize, (&&str, &f64))| {
        let words = at == 0 || *head == words::COUNT_COLUMNS[1];
        let align = if words { Align::Left } else { Align::Centre };
        Column::new(*head, *width, align)
    };
    let columns = heads.iter().zip(widths).enumerate().map(column).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head.size_pt = 8.5;
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    table
}
