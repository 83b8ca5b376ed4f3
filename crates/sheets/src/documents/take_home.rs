//! The take-home sheet: two pages for carers. The first hangs on a wall, the second is for the
//! day of a wash, a flight or a burst cell.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};
use words::{Language, PassageTexts, TakeHomeTexts};

use super::look::{ACCENT, FIRM, INK, PALE, SOFT, THIN, first_within, inside, text};
use super::pictures::{Picture, picture};
use super::views::{View, draw_named};
use super::{ClientPapers, DocumentError};
use crate::color::Color;
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Fill, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style, measure, wrap};

/// How large the words are and how much room is left between things.
#[derive(Clone, Copy)]
struct Print {
    /// Size of the words, in points.
    size: f64,
    /// Room between things, in millimetres.
    gap: f64,
}

impl Print {
    /// From the largest to the least; large print for tired eyes, never below 14 points.
    const ALL: [Self; 6] = [
        Self { size: 16.0, gap: 4.0 },
        Self { size: 16.0, gap: 2.0 },
        Self { size: 15.0, gap: 4.0 },
        Self { size: 15.0, gap: 2.0 },
        Self { size: 14.0, gap: 2.0 },
        Self { size: 14.0, gap: 1.0 },
    ];

    fn words(self) -> Style {
        text(self.size, Weight::Regular, INK).led(1.2)
    }

    fn firmly(self) -> Style {
        text(self.size, Weight::Bold, INK).led(1.2)
    }

    fn head(self) -> Style {
        text(self.size + 1.0, Weight::Bold, ACCENT).led(1.25)
    }

    fn title(self) -> Style {
        text(self.size + 8.0, Weight::Bold, ACCENT).led(1.25)
    }
}

/// Composes the take-home sheet: a page for the wall and a page for a wash, or as many as the
/// notes and the calls need.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn take_home(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let texts = papers.language.take_home();
    let mut document = papers.document(texts.title, texts.subject);
    // The pages say how many there are, so they are set again where it is not the usual two.
    document.pages = pages(papers, paper, 2)?;
    if document.pages.len() != 2 {
        document.pages = pages(papers, paper, document.pages.len())?;
    }
    Ok(document)
}

/// Both parts of the sheet, whose feet say that it has so many pages.
fn pages(papers: &ClientPapers<'_>, paper: Paper, of: usize) -> Result<Vec<Page>, SetError> {
    let sheet = Sheet { papers, paper, of };
    let mut pages = first_within(1, &Print::ALL, |print| wall_pages(sheet, print))?;
    let before = pages.len();
    let second = |print| match second_page(sheet, before + 1, print) {
        Err(SetError::Overflow { .. }) => second_pages(sheet, before, print),
        other => other.map(|page| vec![page]),
    };
    pages.extend(first_within(1, &Print::ALL, second)?);
    Ok(pages)
}

/// What each page of the sheet needs.
#[derive(Clone, Copy)]
struct Sheet<'a> {
    papers: &'a ClientPapers<'a>,
    paper: Paper,
    /// How many pages there are.
    of: usize,
}

impl Sheet<'_> {
    /// Begins the page of a number, with a title; returns it with the area that is left.
    fn begin(
        self,
        number: usize,
        (name, title): (&str, &str),
        print: Print,
    ) -> Result<(Page, Rect), SetError> {
        let mut page = Page::new(self.papers.language, self.paper, name);
        let area = above_foot(&mut page, self, number)?;
        let mut frame = Frame::new(&mut page, area);
        top(&mut frame, self.papers, title, print)?;
        let left = Rect { y0: frame.y(), ..area };
        Ok((page, left))
    }
}

/// Returns the words of the sheet's sentences, a page each, as carers read them.
#[must_use]
pub fn take_home_text(document: &Document) -> Vec<String> {
    let page = |page: &Page| {
        let blocks = page.in_order().filter(|block| {
            matches!(block.role, Role::Paragraph | Role::ListItem | Role::Heading(_) | Role::Foot)
        });
        let line = |block: &crate::page::Block| {
            let runs = block.marks.iter().filter_map(|mark| match mark {
                crate::page::Mark::Text(run) => Some(run.shaped.text()),
                crate::page::Mark::Shape(_) => None,
            });
            runs.collect::<Vec<_>>().join(" ")
        };
        blocks.map(line).collect::<Vec<_>>().join("\n")
    };
    document.pages.iter().map(page).collect()
}

fn wall_pages(sheet: Sheet<'_>, print: Print) -> Result<Vec<Page>, SetError> {
    let (papers, texts) = (sheet.papers, sheet.papers.language.take_home());
    let begin = |number| sheet.begin(number, (texts.title, texts.heading), print);
    let mut flow = Flow::new(&begin)?;
    flow.put(|frame| boxed(frame, print, |frame| stop_rules(frame, texts, print)))?;
    flow.space(print.gap);
    for which in Picture::WALL {
        flow.put(|frame| pictured(frame, papers.language, which, print))?;
        flow.space(print.gap);
    }
    own_notes(&mut flow, papers, print)?;
    flow.space(print.gap);
    let contacts = papers.client.contacts.len();
    if contacts <= CALLS_IN_A_BOX {
        flow.put(|frame| {
            boxed(frame, print, |frame| {
                calls(frame, papers, 0..contacts, print)?;
                emergency(frame, texts, print)
            })
        })?;
    } else {
        for first in (0..contacts).step_by(CALLS_IN_A_BOX) {
            let some = first..contacts.min(first + CALLS_IN_A_BOX);
            flow.put(|frame| {
                boxed(frame, print, |frame| calls(frame, papers, some.clone(), print))
            })?;
            flow.space(print.gap);
        }
        flow.put(|frame| boxed(frame, print, |frame| emergency(frame, texts, print)))?;
    }
    Ok(flow.pages())
}

/// Sets the foot of a page, which tells old sheets from new ones; returns the area above it.
fn above_foot(page: &mut Page, sheet: Sheet<'_>, number: usize) -> Result<Rect, SetError> {
    let style = text(14.0, Weight::Regular, SOFT).led(1.2);
    let area = inside(page);
    let papers = sheet.papers;
    let mut line = papers.language.take_home_foot(number, sheet.of, papers.plan.on, papers.date);
    let serial = papers.client.cushion.serial.as_deref();
    line.extend(serial.map(|serial| format!(" {}.", papers.language.serial(serial))));
    line.extend(papers.drawn_by().map(|plugin| format!(" {}", plugin.said(papers.language))));
    let height = wrap(&line, &style, area.width())?.len() as f64 * style.line_height();
    let at = Point::new(area.x0, area.y1 - height);
    page.block(Role::Foot).paragraph(at, area.width(), &line, &style, Align::Left)?;
    Ok(Rect::new(area.x0, area.y0, area.x1, at.y - 1.0))
}

/// Title, state of the sheet, code, line for the name.
fn top(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    title: &str,
    print: Print,
) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.take_home());
    frame.heading(1, title, &print.title())?;
    frame.space(1.5);
    banner(frame, &language.take_home_state(papers.standing()), papers.is_estimate(), print)?;
    let place = frame.take(10.0, texts.name)?;
    let block = frame.page().block(Role::Paragraph);
    let baseline = place.y1 - 2.0;
    let width =
        block.text(Point::new(place.x0, baseline), texts.name, &print.words(), Align::Left)?;
    let code = language.code(&papers.client.code);
    let code_width =
        block.text(Point::new(place.x1, baseline), &code, &print.firmly(), Align::Right)?;
    let line = baseline + 0.8;
    let (from, to) = (place.x0 + width + 2.0, place.x1 - code_width - 5.0);
    block.line(Point::new(from, line), Point::new(to, line), &THIN);
    frame.space(2.0);
    Ok(())
}

/// A box over the whole width; white on dark where nothing may be overlooked.
fn banner(frame: &mut Frame<'_>, status: &str, solid: bool, print: Print) -> Result<(), SetError> {
    let (size, color) = if solid { (24.0, Color::WHITE) } else { (print.size, INK) };
    let room = frame.area().width() - 4.0;
    // Rather a line in smaller print than a second line; never below that of the sheet.
    let share = room / measure(status, &text(1.0, Weight::Bold, color))?;
    let style = text(size.min(share).max(print.size), Weight::Bold, color).led(1.2);
    let lines = wrap(status, &style, room)?.len() as f64;
    let place = frame.take(lines * style.line_height() + if solid { 3.0 } else { 2.2 }, status)?;
    let block = frame.page().block(Role::Paragraph);
    let fill = Fill::solid(if solid { INK } else { PALE });
    block.rect(place, Some(fill), None);
    let top = place.center().y - lines * style.line_height() / 2.0;
    block.paragraph(Point::new(place.x0 + 2.0, top), room, status, &style, Align::Centre)?;
    Ok(())
}

/// Sets what must be found first, in a firm frame.
fn boxed(
    frame: &mut Frame<'_>,
    print: Print,
    inside: impl Fn(&mut Frame<'_>) -> Result<(), SetError>,
) -> Result<(), SetError> {
    let edge = 1.0 + print.gap / 4.0;
    let (start, whole) = (frame.y(), frame.area());
    let inner = Rect::new(whole.x0 + 4.0, start + edge, whole.x1 - 4.0, whole.y1);
    let end = {
        let mut box_frame = Frame::new(frame.page(), inner);
        inside(&mut box_frame)?;
        box_frame.y() + edge
    };
    let place = frame.take(end - start, "a box")?;
    frame.page().block(Role::Artifact).rect(place, None, Some(Pen::solid(1.2, INK)));
    Ok(())
}

/// When not to sit on it.
fn stop_rules(frame: &mut Frame<'_>, texts: &TakeHomeTexts, print: Print) -> Result<(), SetError> {
    frame.heading(2, texts.stop, &print.head())?;
    for rule in texts.stop_rules {
        frame.item("•", 6.0, rule, &print.words())?;
    }
    frame.paragraph(texts.stop_then, &print.firmly())
}

/// A picture at the left, a heading and sentences beside it.
fn pictured(
    frame: &mut Frame<'_>,
    language: &dyn Language,
    which: Picture,
    print: Print,
) -> Result<(), SetError> {
    const WIDE: f64 = 34.0;
    const HIGH: f64 = 25.0;
    // Arms reach a little out of the picture.
    const INDENT: f64 = 1.7;
    let texts = language.take_home();
    let PassageTexts { heading, sentences } = which.passage(texts);
    let start = frame.y();
    let whole = frame.area();
    let beside = Rect::new(whole.x0 + INDENT + WIDE + 4.0, start, whole.x1, whole.y1);
    let end = {
        let mut column = Frame::new(frame.page(), beside);
        column.heading(2, heading, &print.head())?;
        column.paragraph(&sentences.join(" "), &print.words())?;
        column.y()
    };
    let place = frame.take((end - start).max(HIGH), heading)?;
    let block = frame.page().block(Role::Figure { alt: which.shows(texts).to_owned() });
    let area = Rect::from_origin_size(place.origin() + (INDENT, 0.0), (WIDE, HIGH));
    picture(block, language, which, area)
}

/// What the therapist wrote for this carer, and what to sit on meanwhile.
fn own_notes(flow: &mut Flow<'_>, papers: &ClientPapers<'_>, print: Print) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.take_home());
    for said in how_long(papers) {
        flow.put(|frame| frame.paragraph(&said, &print.firmly()))?;
    }
    let notes = &papers.client.carer_notes;
    if !notes.is_empty() {
        flow.need(print.head().line_height() + 3.0 * print.firmly().line_height())?;
        flow.put(|frame| frame.heading(2, texts.notes_for_you, &print.head()))?;
    }
    for note in notes {
        flow.item("•", 6.0, note, &print.firmly())?;
    }
    flow.put(|frame| match &papers.client.meanwhile {
        Some(meanwhile) => frame.paragraph(&language.sit_meanwhile(meanwhile), &print.words()),
        None => written_line(frame, texts.meanwhile, print),
    })
}

/// How long the client may sit: only what a clinician said, and where an injury is not healed, that
/// it is to be asked.
fn how_long(papers: &ClientPapers<'_>) -> Vec<String> {
    let (client, language) = (papers.client, papers.language);
    let mut said = Vec::new();
    match client.sit_at_most {
        Some(own) => said.push(language.sit_at_most(own.minutes, own.times)),
        None if !client.skin.unhealed().is_empty() => {
            said.push(language.take_home().ask_how_long.to_owned());
        }
        None => {}
    }
    said.extend(client.pressure_relief.clone());
    said
}

/// A name, and a line to write on.
fn written_line(frame: &mut Frame<'_>, name: &str, print: Print) -> Result<(), SetError> {
    let place = frame.take(8.5, name)?;
    let block = frame.page().block(Role::Paragraph);
    let baseline = place.y1 - 1.8;
    let width = block.text(Point::new(place.x0, baseline), name, &print.words(), Align::Left)?;
    let from = Point::new(place.x0 + width + 2.0, baseline + 0.8);
    block.line(from, Point::new(place.x1, from.y), &THIN);
    Ok(())
}

/// Lines for whom to call that a sheet has at least, empty ones to write on.
const CALL_LINES: usize = 2;

/// The most numbers to call in one box.
const CALLS_IN_A_BOX: usize = 6;

/// Whom to call, in their order.
fn calls(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    which: std::ops::Range<usize>,
    print: Print,
) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.take_home());
    frame.heading(2, texts.call, &print.head())?;
    for contact in &papers.client.contacts[which] {
        frame.paragraph(&language.call(contact), &print.firmly())?;
    }
    for _ in papers.client.contacts.len()..CALL_LINES {
        written_line(frame, texts.who_and_phone, print)?;
    }
    Ok(())
}

/// When not to wait for them.
fn emergency(frame: &mut Frame<'_>, texts: &TakeHomeTexts, print: Print) -> Result<(), SetError> {
    frame.heading(2, texts.get_help_now, &print.head())?;
    for sign in texts.emergency_signs {
        frame.item("•", 6.0, sign, &print.words())?;
    }
    Ok(())
}

/// The second part on one page: the wash at the left, the counts at the right.
fn second_page(sheet: Sheet<'_>, number: usize, print: Print) -> Result<Page, SetError> {
    let (papers, texts) = (sheet.papers, sheet.papers.language.take_home());
    let heads = (texts.second_title, texts.second_heading);
    let (mut page, whole) = sheet.begin(number, heads, print)?;
    let mut frame = Frame::new(&mut page, whole);
    let split = whole.x0 + whole.width() * 0.6;
    let left = {
        let mut column = Frame::new(frame.page(), Rect { x1: split, ..whole });
        washing(&mut column, texts, print)?;
        for passage in texts.beside_counts {
            column.space(print.gap);
            section(&mut column, *passage, print)?;
        }
        column.y()
    };
    let beside = {
        let mut column = Frame::new(frame.page(), Rect { x0: split + 7.0, ..whole });
        where_pockets_are(&mut column, papers, print)?;
        let table = counts(papers, column.area().width(), print);
        let rows = column.table(&table)?;
        frame_counts(&mut column, &rows, column_of(&table));
        in_all(&mut column, papers, print)?;
        column.y()
    };
    frame.take(left.max(beside) - whole.y0, texts.washing)?;
    frame.space(print.gap);
    section(&mut frame, texts.call_the_same_day, print)?;
    if let Some(day) = papers.standing().review.by() {
        frame.paragraph(&papers.language.next_look(day), &print.firmly())?;
    }
    Ok(page)
}

/// The same, one under the other, where one page is too small for it.
fn second_pages(sheet: Sheet<'_>, before: usize, print: Print) -> Result<Vec<Page>, SetError> {
    let (papers, texts) = (sheet.papers, sheet.papers.language.take_home());
    let heads = (texts.second_title, texts.second_heading);
    let begin = |number| sheet.begin(before + number, heads, print);
    let mut flow = Flow::new(&begin)?;
    flow.put(|frame| where_pockets_are(frame, papers, print))?;
    flow.space(1.5);
    let table = counts(papers, flow.width(), print);
    flow.headed_table("", &print.head(), &table, |frame, rows, _| {
        frame_counts(frame, rows, column_of(&table));
    })?;
    flow.put(|frame| in_all(frame, papers, print))?;
    flow.space(print.gap);
    flow.put(|frame| washing(frame, texts, print))?;
    for passage in texts.beside_counts.iter().chain([&texts.call_the_same_day]) {
        flow.space(print.gap);
        flow.put(|frame| section(frame, *passage, print))?;
    }
    if let Some(day) = papers.standing().review.by() {
        flow.put(|frame| frame.paragraph(&papers.language.next_look(day), &print.firmly()))?;
    }
    Ok(flow.pages())
}

/// The steps of a wash.
fn washing(frame: &mut Frame<'_>, texts: &TakeHomeTexts, print: Print) -> Result<(), SetError> {
    frame.heading(2, texts.washing, &print.head())?;
    for (step, sentence) in texts.washing_steps.iter().enumerate() {
        frame.item(&format!("{}", step + 1), 6.0, sentence, &print.words())?;
    }
    Ok(())
}

/// A heading and its sentences.
fn section(
    frame: &mut Frame<'_>,
    PassageTexts { heading, sentences }: PassageTexts,
    print: Print,
) -> Result<(), SetError> {
    frame.heading(2, heading, &print.head())?;
    frame.paragraph(&sentences.join(" "), &print.words())
}

/// The tallest drawing of the pockets, in millimetres.
const TALLEST: f64 = 110.0;

/// Where the pockets are, with their numbers.
fn where_pockets_are(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    print: Print,
) -> Result<(), SetError> {
    let (texts, shared) = (papers.language.take_home(), papers.language.shared());
    frame.heading(2, texts.cells_in_each_pocket, &print.head())?;
    frame.paragraph(texts.openings_up, &text(14.0, Weight::Regular, INK).led(1.2))?;
    let height = (0.82 * frame.area().width()).min(TALLEST);
    let (area, block) = frame.figure(height, shared.numbers_from_below)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, shared, papers.pattern, View::Below, area, numbers, 16.0)?;
    frame.space(1.5);
    Ok(())
}

/// The counts, pocket by pocket.
fn counts(papers: &ClientPapers<'_>, wide: f64, print: Print) -> Table {
    let texts = papers.language.take_home();
    let columns = [texts.pocket, texts.cells];
    let columns = columns.into_iter().map(|head| Column::new(head, wide / 2.0, Align::Centre));
    let mut table = Table::new(columns.collect(), print.firmly(), print.words());
    table.head_ground = Some(PALE);
    table.margin = 0.2 + print.gap / 5.0;
    for count in &papers.plan.counts {
        table.row([count.number.to_string(), count.planned.to_string()]);
    }
    table
}

/// Where the column of the counts begins, from the table's left edge.
fn column_of(table: &Table) -> f64 {
    table.columns[0].width
}

/// The sum of the counts, whether they were checked, and the bag.
fn in_all(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, print: Print) -> Result<(), SetError> {
    frame.space(0.5);
    let (language, texts) = (papers.language, papers.language.take_home());
    frame.paragraph(&language.all_pockets(papers.plan.total()), &print.firmly())?;
    if papers.is_estimate() {
        frame.paragraph(texts.counts_are_an_estimate, &print.firmly())?;
    }
    frame.paragraph(&language.keep_the_bag(papers.spares()), &print.words())
}

/// A firm frame around the counts, so that they are not read as numbers of pockets.
fn frame_counts(frame: &mut Frame<'_>, rows: &[Rect], column: f64) {
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let around = Rect::new(first.x0 + column, first.y0, last.x1, last.y1);
    frame.page().block(Role::Artifact).rect(around, None, Some(FIRM));
}
