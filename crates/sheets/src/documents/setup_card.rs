//! The setup card: one page for the therapist, at the chair.

use case::CountedFrom;
use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{
    BODY, FIRM, HEADING, INK, PALE, STRONG, facts, first_within, foot, inside, text, title_line,
};
use super::views::{View, draw_named};
use super::{ClientPapers, DocumentError};
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style};
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
    /// Moves to the plan.
    pub moves: Vec<case::Move>,
    /// From what the moves go out: what was recorded last before the plan.
    pub moves_from: Option<CountedFrom>,
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
/// counts and checks with columns to write in, cautions; then goals, findings and moves.
///
/// The first page is for the chair; what finds no room on it, and what follows from goals and
/// checks, goes to the next.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn setup_card(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let reasons = reasons(papers);
    let whole = |room| pages(papers, &reasons, paper, room, true);
    let chair = |room: &Room| pages(papers, &reasons, paper, *room, false);
    // What is for the chair stands on one page where it can, and rather a smaller drawing than a
    // page more.
    let rooms = Room::ALL.into_iter().filter(|room| chair(room).is_ok_and(|own| own.len() == 1));
    let rooms: Vec<Room> = rooms.collect();
    let most = if papers.extras.is_empty() { 1 } else { 2 };
    let mut document = papers.document(words::SETUP_CARD, words::SETUP_CARD_SUBJECT);
    document.pages = first_within(most, if rooms.is_empty() { &Room::ALL } else { &rooms }, whole)?;
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

/// The pages of the card, with so much room; only what is for the chair, or the whole.
fn pages(
    papers: &ClientPapers<'_>,
    reasons: &[String],
    paper: Paper,
    room: Room,
    whole: bool,
) -> Result<Vec<Page>, SetError> {
    let begin = |_| {
        let mut page = Page::new(paper, words::SETUP_CARD);
        let mut frame = framed(&mut page, papers)?;
        head(&mut frame, papers)?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    let own = papers.cautions.iter().map(String::as_str);
    let reasons = reasons.iter().map(String::as_str);
    let cautions: Vec<&str> = own.chain(words::SETUP_CAUTIONS).chain(reasons).collect();
    let left = std::cell::Cell::new(0);
    flow.put(|frame| {
        left.set(drawings(frame, papers, room.drawing * paper.height(), &cautions)?);
        Ok(())
    })?;
    flow.space(2.0);
    counts(&mut flow, papers, room)?;
    flow.space(2.5);
    flow.put(|frame| checks(frame, room))?;
    flow.space(1.5);
    flow.put(|frame| frame.paragraph(words::ORDER_OF_A_FITTING, &CAUTION))?;
    if !whole {
        return Ok(flow.pages());
    }
    for caution in &cautions[left.get()..] {
        flow.item("–", 3.0, caution, &CAUTION)?;
    }
    flow.space(2.0);
    extras(&mut flow, papers)?;
    Ok(flow.pages())
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

/// Sets entries of a list until there is no more room; returns how many were set.
fn listed(frame: &mut Frame<'_>, entries: &[&str], style: &Style) -> Result<usize, SetError> {
    for (at, entry) in entries.iter().enumerate() {
        match frame.item("–", 3.0, entry, style) {
            Ok(()) => {}
            Err(SetError::Overflow { .. }) => return Ok(at),
            Err(error) => return Err(error),
        }
    }
    Ok(entries.len())
}

/// Goals, the table of findings, moves.
fn extras(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let extras = papers.extras;
    if !extras.goals.is_empty() {
        flow.need(HEADING.line_height() + 3.0 * BODY.line_height())?;
        flow.put(|frame| frame.heading(2, words::GOALS, &HEADING))?;
    }
    for (at, goal) in extras.goals.iter().enumerate() {
        flow.item(&format!("{}", at + 1), 5.0, goal, &BODY)?;
    }
    flow.space(2.0);
    if !extras.if_then.is_empty() {
        if_then(flow, &extras.if_then)?;
        flow.space(2.0);
    }
    if !extras.moves.is_empty() {
        moves(flow, papers)?;
    }
    Ok(())
}

/// The table that works without the program.
fn if_then(flow: &mut Flow<'_>, rows: &[IfThen]) -> Result<(), SetError> {
    let wide = flow.width();
    let widths = [wide * 0.30, wide * 0.36, wide * 0.34];
    let columns = words::IF_THEN_COLUMNS.iter().zip(widths);
    let columns = columns.map(|(head, width)| Column::new(*head, width, Align::Left)).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    for row in rows {
        table.row([row.finding.as_str(), &row.then, &row.cost]);
    }
    flow.headed_table(words::IF_THEN, &HEADING, &table, |_, _, _| {})?;
    flow.space(1.0);
    flow.put(|frame| frame.paragraph(words::IF_THEN_NOTE, &BODY))
}

/// The moves as sentences, and what they change in each compartment, drawn as the cushion is
/// opened; sentences that find no room beside the drawing stand below it.
fn moves(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    const HEIGHT: f64 = 84.0;
    let from = papers.extras.moves_from.unwrap_or(CountedFrom::Stock);
    let said: Vec<String> = (papers.extras.moves.iter())
        .map(|own| ::words::BasicWords::a_move(&::words::English, own))
        .collect();
    let said: Vec<&str> = said.iter().map(String::as_str).collect();
    let beside = std::cell::Cell::new(0);
    flow.put(|frame| {
        frame.heading(2, &words::moves_from(from), &HEADING)?;
        frame.paragraph(words::MOVES_FROM_BELOW, &BODY)?;
        let place = frame.take(HEIGHT, words::MOVES_ALT)?;
        let split = place.x0 + place.width() * 0.58;
        let area = Rect::new(place.x0, place.y0, split - 4.0, place.y1);
        let block = frame.page().block(Role::Figure { alt: words::MOVES_ALT.to_owned() });
        let labels = |ix: CompartmentIx| {
            let number = papers.pattern[ix].number;
            let by = change(&papers.extras.moves, number);
            (number.to_string(), (by != 0).then(|| words::change(by)))
        };
        draw_named(block, papers.pattern, View::Below, area, labels, 13.0)?;
        let column = Rect::new(split, place.y0, place.x1, place.y1);
        beside.set(listed(&mut Frame::new(frame.page(), column), &said, &BODY)?);
        Ok(())
    })?;
    for own in &said[beside.get()..] {
        flow.item("–", 3.0, own, &BODY)?;
    }
    Ok(())
}

/// By how many cells the moves change a compartment.
fn change(moves: &[case::Move], number: u8) -> i64 {
    let own = case::Place::Compartment(number);
    let sum = |of: fn(&case::Move) -> case::Place| -> i64 {
        moves.iter().filter(|step| of(step) == own).map(|step| i64::from(step.cells)).sum()
    };
    sum(|step| step.to) - sum(|step| step.from)
}

fn head(frame: &mut Frame<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let status = words::card_state(papers.standing(), words::ESTIMATE_UNTIL_CHECKED);
    title_line(frame, words::SETUP_CARD, &status, papers.is_estimate())?;
    let plan = papers.plan;
    facts(
        frame,
        &[
            (words::CLIENT, papers.client.code.to_string()),
            (words::LAYOUT, papers.pattern.layout().to_string()),
            (words::SIZE, words::size(plan.size)),
            (words::CELLS_IN_ALL, plan.total().to_string()),
            (words::SPARE_CELLS, papers.spares().to_string()),
            (words::RECORDED, plan.on.to_string()),
        ],
    )
}

/// The cushion from above at the left; at the right the view from below and as many cautions as
/// find room, whose number is returned.
fn drawings(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    height: f64,
    cautions: &[&str],
) -> Result<usize, SetError> {
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
    cautions: &[&str],
) -> Result<usize, SetError> {
    let mut frame = Frame::new(page, column);
    frame.heading(2, words::FROM_BELOW, &HEADING)?;
    let (area, block) = frame.figure(36.0, words::BELOW_ALT)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, papers.pattern, View::Below, area, numbers, 10.0)?;
    frame.heading(2, words::CAUTIONS, &HEADING)?;
    listed(&mut frame, cautions, &CAUTION)
}

/// The counts, with columns for what is found in each compartment.
fn counts(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, room: Room) -> Result<(), SetError> {
    let wide = flow.width();
    let widths = [9.0, wide - 117.0, 13.0, 15.0, 17.0, 21.0, 21.0, 21.0];
    let mut table = columns(&words::COUNT_COLUMNS, &widths);
    table.least_row = room.row;
    for (count, there) in papers.plan.counts.iter().zip(papers.pattern.compartments()) {
        let change = i64::from(count.planned) - i64::from(count.stock);
        table.row([
            count.number.to_string(),
            ::words::ENGLISH.compartment(there),
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
    flow.headed_table(words::COUNTS, &HEADING, &table, |frame, rows, _| {
        emphasise(frame, rows, &widths);
    })
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
