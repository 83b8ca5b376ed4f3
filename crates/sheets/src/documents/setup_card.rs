//! The setup card: one page for the therapist, at the chair.

use case::{CountedFrom, GoalOutcome, IfThen};
use cushion::CompartmentIx;
use kurbo::{Point, Rect};
use words::Language;

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
    /// What becomes of each goal.
    pub goals: Vec<GoalOutcome>,
    /// Moves to the plan.
    pub moves: Vec<case::Move>,
    /// From what the moves go out: what was recorded last before the plan.
    pub moves_from: Option<CountedFrom>,
    /// What to move when a check finds something.
    pub if_then: Vec<IfThen>,
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
    let texts = papers.language.setup_card();
    let reasons = reasons(papers);
    let whole = |room| pages(papers, &reasons, paper, room, true);
    let chair = |room: &Room| pages(papers, &reasons, paper, *room, false);
    // What is for the chair stands on one page where it can, and rather a smaller drawing than a
    // page more.
    let rooms = Room::ALL.into_iter().filter(|room| chair(room).is_ok_and(|own| own.len() == 1));
    let rooms: Vec<Room> = rooms.collect();
    let most = if papers.extras.is_empty() { 1 } else { 2 };
    let mut document = papers.document(texts.title, texts.subject);
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
    let said = |(reason, by, numbers): &(&str, i64, Vec<u8>)| {
        papers.language.reason_of_change(numbers, *by, reason)
    };
    groups.iter().map(said).collect()
}

/// The pages of the card, with so much room; only what is for the chair, or the whole.
fn pages(
    papers: &ClientPapers<'_>,
    reasons: &[String],
    paper: Paper,
    room: Room,
    whole: bool,
) -> Result<Vec<Page>, SetError> {
    let texts = papers.language.setup_card();
    let begin = |_| {
        let mut page = Page::new(papers.language, paper, texts.title);
        let mut frame = framed(&mut page, papers)?;
        head(&mut frame, papers)?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    let own: Vec<String> =
        papers.cautions.iter().map(|caution| papers.language.caution(caution)).collect();
    let own = own.iter().map(String::as_str);
    let reasons = reasons.iter().map(String::as_str);
    let cautions: Vec<&str> = own.chain(texts.cautions.iter().copied()).chain(reasons).collect();
    let left = std::cell::Cell::new(0);
    flow.put(|frame| {
        left.set(drawings(frame, papers, room.drawing * paper.height(), &cautions)?);
        Ok(())
    })?;
    flow.space(2.0);
    counts(&mut flow, papers, room)?;
    flow.space(2.5);
    flow.put(|frame| checks(frame, papers.language, room))?;
    flow.space(1.5);
    flow.put(|frame| frame.paragraph(texts.order_of_a_fitting, &CAUTION))?;
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
    let made_from = papers.language.setup_card_origin(papers.plan, papers.date);
    let drawn_by = papers.drawn_by().map(|plugin| plugin.said(papers.language));
    let mut lines = vec![made_from.as_str()];
    lines.extend(drawn_by.as_deref());
    lines.push(papers.language.setup_card().clinician_decides);
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
    let texts = papers.language.setup_card();
    if !extras.goals.is_empty() {
        flow.need(HEADING.line_height() + 3.0 * BODY.line_height())?;
        flow.put(|frame| frame.heading(2, texts.goals, &HEADING))?;
    }
    for (at, goal) in extras.goals.iter().enumerate() {
        let said = papers.language.goal_outcome(goal);
        flow.item(&format!("{}", at + 1), 5.0, &said, &BODY)?;
    }
    flow.space(2.0);
    if !extras.if_then.is_empty() {
        if_then(flow, papers.language, &extras.if_then)?;
        flow.space(2.0);
    }
    if !extras.moves.is_empty() {
        moves(flow, papers)?;
    }
    Ok(())
}

/// The table that works without the program.
fn if_then(flow: &mut Flow<'_>, language: &dyn Language, rows: &[IfThen]) -> Result<(), SetError> {
    let texts = language.setup_card();
    let wide = flow.width();
    let widths = [wide * 0.30, wide * 0.36, wide * 0.34];
    let columns = texts.if_then_columns.iter().zip(widths);
    let columns = columns.map(|(head, width)| Column::new(*head, width, Align::Left)).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    for row in rows {
        let cost = row.cost.map_or_else(String::new, |cost| language.remedy_cost(&cost));
        table.row([language.card_finding(&row.found), language.remedy(&row.then), cost]);
    }
    flow.headed_table(texts.if_then, &HEADING, &table, |_, _, _| {})?;
    flow.space(1.0);
    flow.put(|frame| frame.paragraph(texts.if_then_note, &BODY))
}

/// The moves as sentences, and what they change in each compartment, drawn as the cushion is
/// opened; sentences that find no room beside the drawing stand below it.
fn moves(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    const HEIGHT: f64 = 84.0;
    let (language, texts) = (papers.language, papers.language.setup_card());
    let from = papers.extras.moves_from.unwrap_or(CountedFrom::Stock);
    let said: Vec<String> = papers.extras.moves.iter().map(|own| language.a_move(own)).collect();
    let said: Vec<&str> = said.iter().map(String::as_str).collect();
    let beside = std::cell::Cell::new(0);
    flow.put(|frame| {
        frame.heading(2, &language.moves_from(from), &HEADING)?;
        frame.paragraph(texts.moves_from_below, &BODY)?;
        let place = frame.take(HEIGHT, texts.moves_drawing)?;
        let split = place.x0 + place.width() * 0.58;
        let area = Rect::new(place.x0, place.y0, split - 4.0, place.y1);
        let block = frame.page().block(Role::Figure { alt: texts.moves_drawing.to_owned() });
        let labels = |ix: CompartmentIx| {
            let number = papers.pattern[ix].number;
            let by = change(&papers.extras.moves, number);
            (number.to_string(), (by != 0).then(|| language.change(by)))
        };
        draw_named(
            block,
            papers.language.shared(),
            papers.pattern,
            View::Below,
            area,
            labels,
            13.0,
        )?;
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
    let (language, shared) = (papers.language, papers.language.shared());
    let status = language.setup_card_state(papers.standing());
    title_line(frame, language.setup_card().title, &status, papers.is_estimate())?;
    let plan = papers.plan;
    let mut all = vec![
        (shared.client, papers.client.code.to_string()),
        (shared.layout, papers.pattern.layout().to_string()),
        (shared.width_by_depth, language.size(plan.size)),
        (shared.cells_in_all, plan.total().to_string()),
        (shared.spare_cells, papers.spares().to_string()),
        (shared.plan_recorded, plan.on.to_string()),
    ];
    all.extend(papers.client.cushion.serial.clone().map(|own| (shared.serial, own)));
    facts(frame, &all)
}

/// The cushion from above at the left; at the right the view from below and as many cautions as
/// find room, whose number is returned.
fn drawings(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    height: f64,
    cautions: &[&str],
) -> Result<usize, SetError> {
    let language = papers.language;
    let place = frame.take(height, "the drawings")?;
    let split = place.x0 + place.width() * 0.6;
    let page = frame.page();
    let heading = page.block(Role::Heading(2));
    let baseline = place.y0 + HEADING.first_baseline();
    let from_above = language.setup_card().from_above;
    heading.text(Point::new(place.x0, baseline), from_above, &HEADING, Align::Left)?;
    let top = place.y0 + HEADING.line_height();
    let alt = language.counts_from_above(papers.pattern.compartments().len());
    let block = page.block(Role::Figure { alt });
    let counts = |ix: CompartmentIx| {
        let count = &papers.plan.counts[ix.index()];
        (count.number.to_string(), Some(language.cells_in_drawing(count.planned)))
    };
    let area = Rect::new(place.x0, top, split - 4.0, place.y1);
    draw_named(block, papers.language.shared(), papers.pattern, View::Above, area, counts, 17.0)?;
    let column = Rect::new(split, place.y0, place.x1, place.y1);
    side_column(page, papers, column, cautions)
}

fn side_column(
    page: &mut Page,
    papers: &ClientPapers<'_>,
    column: Rect,
    cautions: &[&str],
) -> Result<usize, SetError> {
    let texts = papers.language.setup_card();
    let mut frame = Frame::new(page, column);
    frame.heading(2, texts.from_below, &HEADING)?;
    let (area, block) = frame.figure(36.0, papers.language.shared().numbers_from_below)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, papers.language.shared(), papers.pattern, View::Below, area, numbers, 10.0)?;
    frame.heading(2, texts.take_care, &HEADING)?;
    listed(&mut frame, cautions, &CAUTION)
}

/// The counts, with columns for what is found in each compartment.
fn counts(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, room: Room) -> Result<(), SetError> {
    let wide = flow.width();
    let widths = [9.0, wide - 117.0, 13.0, 15.0, 17.0, 21.0, 21.0, 21.0];
    let (language, texts) = (papers.language, papers.language.setup_card());
    let mut table = columns(&texts.count_columns, &widths, 2);
    table.least_row = room.row;
    for (count, there) in papers.plan.counts.iter().zip(papers.pattern.compartments()) {
        let change = i64::from(count.planned) - i64::from(count.stock);
        table.row([
            count.number.to_string(),
            language.compartment(there),
            count.stock.to_string(),
            language.change(change),
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
        language.shared().total.to_owned(),
        stock.to_string(),
        language.change(i64::from(total) - i64::from(stock)),
        total.to_string(),
        String::new(),
        String::new(),
        String::new(),
    ]);
    flow.headed_table(texts.counts, &HEADING, &table, |frame, rows, _| {
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
fn checks(frame: &mut Frame<'_>, language: &dyn Language, room: Room) -> Result<(), SetError> {
    let texts = language.setup_card();
    frame.heading(2, texts.checks, &HEADING)?;
    let wide = frame.area().width();
    let widths = [wide - 3.0 * 35.0, 35.0, 35.0, 35.0];
    let mut table = columns(&texts.check_columns, &widths, 1);
    table.least_row = room.row;
    for row in texts.check_rows {
        table.row([row.check, row.answers, row.answers, row.answers]);
    }
    frame.table(&table)?;
    Ok(())
}

/// A table, of whose columns the first few are words, the others numbers and room to write.
fn columns(heads: &[&str], widths: &[f64], words: usize) -> Table {
    let column = |(at, (head, width)): (usize, (&&str, &f64))| {
        let align = if at < words { Align::Left } else { Align::Centre };
        Column::new(*head, *width, align)
    };
    let columns = heads.iter().zip(widths).enumerate().map(column).collect();
    let mut table = Table::new(columns, STRONG, BODY);
    table.head.size_pt = 8.5;
    table.head_ground = Some(PALE);
    table.margin = 0.8;
    table
}
