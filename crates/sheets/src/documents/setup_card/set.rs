//! First part of the setup card: the counts as they are set, for whom, and what for.

use case::Entry;
use cushion::CompartmentIx;
use kurbo::{Point, Rect};
use words::CheckedOn;

use super::super::ClientPapers;
use super::super::code::Code;
use super::super::look::{BODY, GUTTER, LESSER_HEADING, SMALL, STRONG, columns, first_within};
use super::super::views::{View, draw_named};
use super::counts::counts;
use super::{Part, flowed, table_with};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Page, Role};
use crate::paper::Paper;
use crate::text::{SetError, Style, wrap};

/// How high the drawing and the rows of the tables are.
#[derive(Clone, Copy)]
struct Room {
    /// Height of the drawing, as a share of the page.
    drawing: f64,
    /// Least height of a row, in millimetres.
    row: f64,
}

impl Room {
    /// From the most room to the least in which one can still write.
    const ALL: [Self; 6] = [
        Self { drawing: 0.38, row: 6.4 },
        Self { drawing: 0.36, row: 5.8 },
        Self { drawing: 0.33, row: 5.4 },
        Self { drawing: 0.30, row: 5.0 },
        Self { drawing: 0.26, row: 4.8 },
        Self { drawing: 0.24, row: 4.8 },
    ];
}

/// What stands beside the drawing, and goes on below it where it finds no room.
struct Note {
    mark: String,
    indent: f64,
    words: String,
    style: Style,
    /// Whether it is a heading.
    head: bool,
    /// Whether it stays on one side with what comes next: a list whose order matters is read at a glance.
    keeps_with_next: bool,
}

/// The pages of the part, with the largest drawing with which it is one; else with which the counts stand
/// beside it on the first.
pub(super) fn pages(papers: &ClientPapers<'_>, paper: Paper) -> Result<Vec<Page>, SetError> {
    let notes = notes(papers);
    let whole = |room: Room| {
        flowed(papers, paper, Part::Set, |flow| {
            counts_with_drawing(flow, papers, &notes, room, paper)?;
            flow.space(2.5);
            found(flow, papers, room)?;
            changed(flow, papers)
        })
    };
    let pages = first_within(1, &Room::ALL, whole)?;
    if pages.len() == 1 {
        return Ok(pages);
    }
    let keeps_counts = |room: &Room| {
        let upper = flowed(papers, paper, Part::Set, |flow| {
            counts_with_drawing(flow, papers, &notes, *room, paper)
        });
        upper.is_ok_and(|pages| pages.len() == 1)
    };
    Room::ALL.into_iter().find(keeps_counts).map_or(Ok(pages), whole)
}

/// The drawing with what stands beside and below it, and the counts.
fn counts_with_drawing(
    flow: &mut Flow<'_>,
    papers: &ClientPapers<'_>,
    notes: &[Note],
    room: Room,
    paper: Paper,
) -> Result<(), SetError> {
    let beside = std::cell::Cell::new(0);
    flow.put(|frame| {
        beside.set(drawing(frame, papers, room.drawing * paper.height(), notes)?);
        Ok(())
    })?;
    flow.space(1.5);
    for note in &notes[beside.get()..] {
        if note.head {
            flow.space(1.5);
            flow.need(note.style.line_height() + 2.0 * BODY.line_height())?;
            flow.put(|frame| frame.heading(3, &note.words, &note.style))?;
        } else {
            flow.item(&note.mark, note.indent, &note.words, &note.style)?;
        }
    }
    flow.space(1.5);
    counts(flow, papers, room.row)?;
    if papers.client.nothing_is_left_to_move() {
        flow.space(1.0);
        flow.put(|frame| frame.paragraph(papers.language.setup_card().all_moved, &BODY))?;
    }
    Ok(())
}

/// What the counts are expected to change, wanted or not.
fn changed(flow: &mut Flow<'_>, papers: &ClientPapers<'_>) -> Result<(), SetError> {
    let costs = papers.extras.costs.iter().flat_map(|own| papers.language.costs_on_paper(own));
    for (at, line) in costs.enumerate() {
        if at == 0 {
            flow.space(1.5);
            flow.need(LESSER_HEADING.line_height() + 2.0 * BODY.line_height())?;
            flow.put(|frame| frame.heading(3, &line, &LESSER_HEADING))?;
        } else {
            flow.item("–", 3.0, &line, &BODY)?;
        }
    }
    Ok(())
}

/// Who the client is, what is wanted, what to take care of.
fn notes(papers: &ClientPapers<'_>) -> Vec<Note> {
    let (language, client) = (papers.language, papers.client);
    let texts = language.setup_card();
    let mut notes = Vec::new();
    let mut list = |head: &str, entries: Vec<String>, numbered: bool, style: Style| {
        if entries.is_empty() {
            return;
        }
        let (mark, words, count) = (String::new(), head.to_owned(), entries.len());
        notes.push(Note {
            mark,
            indent: 0.0,
            words,
            style: LESSER_HEADING,
            head: true,
            keeps_with_next: true,
        });
        notes.extend(entries.into_iter().enumerate().map(|(at, words)| {
            let mark = if numbered { format!("{}", at + 1) } else { "–".to_owned() };
            let indent = if numbered { 5.0 } else { 3.0 };
            let keeps_with_next = numbered && at + 1 < count;
            Note { mark, indent, words, style, head: false, keeps_with_next }
        }));
    };
    let mut known = language.posture(&client.posture);
    known.extend(language.skin(&client.skin));
    known.extend(language.function(&client.function));
    if known.is_empty() {
        known.push(texts.nothing_known.to_owned());
    }
    list(texts.the_client, known, false, BODY);
    let goals = papers.extras.goals.iter().map(|own| language.goal_outcome(own));
    list(texts.goals, goals.collect(), true, BODY);
    let own = papers.cautions.iter().map(|caution| language.caution(caution));
    let always = texts.cautions.iter().map(|own| (*own).to_owned());
    let cautions = own.chain(always).chain(reasons(papers)).collect();
    list(texts.take_care, cautions, false, BODY);
    notes
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

/// The cushion from above at the left; at the right as many notes as find room, whose number is
/// returned.
fn drawing(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    height: f64,
    notes: &[Note],
) -> Result<usize, SetError> {
    let language = papers.language;
    let place = frame.take(height, "the drawing")?;
    let split = columns(place, 7, 12).x0;
    let page = frame.page();
    let heading = page.block(Role::Heading(3));
    let baseline = place.y0 + LESSER_HEADING.first_baseline();
    let from_above = language.setup_card().from_above;
    heading.text(Point::new(place.x0, baseline), from_above, &LESSER_HEADING, Align::Left)?;
    let top = place.y0 + LESSER_HEADING.line_height();
    let alt = language.counts_from_above(papers.pattern.compartments().len());
    let block = page.block(Role::Figure { alt });
    let counts = |ix: CompartmentIx| {
        let count = &papers.plan.counts[ix.index()];
        (count.number.to_string(), Some(count.planned.to_string()))
    };
    let area = Rect::new(place.x0, top, split - GUTTER, place.y1 - BODY.line_height());
    draw_named(block, language.shared(), papers.pattern, View::Above, area, counts, 14.0)?;
    let key = Point::new(place.x0, place.y1 - BODY.line_height() + BODY.first_baseline());
    let block = page.block(Role::Paragraph);
    block.text(key, language.shared().discs_and_numbers, &SMALL, Align::Left)?;
    let column = Rect { x0: split, ..place };
    let left = code(page, papers, column)?;
    beside(&mut Frame::new(page, left), notes)
}

/// The code at the lower end of a column, with what it is for and its text, for whoever has to type
/// it; returns what is left of the column.
fn code(page: &mut Page, papers: &ClientPapers<'_>, column: Rect) -> Result<Rect, SetError> {
    let Some(code) = Code::of(papers) else { return Ok(column) };
    let text = code.text_beside(&SMALL, column.width())?;
    let words = [(papers.language.setup_card().code_is_for, BODY), (text.as_str(), SMALL)];
    // The line below the drawing may be longer than the drawing is wide.
    let y1 = column.y1 - BODY.line_height();
    let y0 = y1 - code.height(&words, column.width())?;
    code.with_words(&mut Frame::new(page, Rect { y0, y1, ..column }), &words)?;
    Ok(Rect { y1: y0 - 1.0, ..column })
}

/// Sets notes until there is no more room for one with what it keeps with.
fn beside(frame: &mut Frame<'_>, notes: &[Note]) -> Result<usize, SetError> {
    for (at, note) in notes.iter().enumerate() {
        let width = frame.area().width();
        let height = |note: &Note| -> Result<f64, SetError> {
            let lines = wrap(&note.words, &note.style, width - note.indent)?.len() as f64;
            Ok(lines * note.style.line_height() + if note.head { 1.5 } else { 0.0 })
        };
        let mut needed = height(note)?;
        for pair in notes[at..].windows(2).take_while(|pair| pair[0].keeps_with_next) {
            needed += height(&pair[1])?;
        }
        if needed > frame.room() {
            return Ok(at);
        }
        if note.head {
            frame.space(if at == 0 { 0.0 } else { 1.5 });
            frame.heading(3, &note.words, &note.style)?;
        } else {
            frame.item(&note.mark, note.indent, &note.words, &note.style)?;
        }
    }
    Ok(notes.len())
}

/// What is expected under each seat bone, and what the fitting found.
fn found(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, room: Room) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.setup_card());
    if let Some(expected) = &papers.extras.expected {
        let third = flow.width() / 3.0;
        let mut table = table_with(&texts.bone_columns, &[third, third, third], 1);
        table.least_row = room.row;
        let under = [expected.left_under.left, expected.left_under.right];
        let [left, right] = under.map(|own| language.left_under_bone(&own));
        table.row([texts.expected_under_bones.to_owned(), left, right]);
        flow.put(|frame| frame.table(&table).map(drop))?;
        flow.space(2.0);
    }
    flow.need(LESSER_HEADING.line_height() + 2.0 * BODY.line_height())?;
    flow.put(|frame| frame.heading(3, texts.found, &LESSER_HEADING))?;
    let found = found_for(papers);
    if found.is_empty() {
        return flow.put(|frame| frame.paragraph(texts.nothing_found, &STRONG));
    }
    for own in &found {
        flow.item("–", 3.0, own, &BODY)?;
    }
    Ok(())
}

/// What was found that led to the latest plan, and since.
fn found_for(papers: &ClientPapers<'_>) -> Vec<String> {
    let record = papers.client.in_force();
    let plan = |entry: &&Entry| matches!(entry, Entry::Plan(_));
    let Some(latest) = record.iter().rposition(plan) else { return Vec::new() };
    let from = match record[..latest].last() {
        Some(Entry::Adjustment(_)) => latest - 1,
        _ => latest,
    };
    let said = record.iter().enumerate().skip(from).filter_map(|(at, entry)| match entry {
        Entry::FittingCheck(check) => Some(papers.language.fitting_found(check)),
        Entry::Adjustment(own) => {
            let on = if at < latest { CheckedOn::CountsBefore } else { CheckedOn::TheseCounts };
            Some(papers.language.checks_found(own, on))
        }
        Entry::Checked(_) | Entry::Skin(_) => Some(papers.language.entry_found(entry)),
        _ => None,
    });
    said.collect()
}
