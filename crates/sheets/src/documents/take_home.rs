//! The take-home sheet: two pages for carers. The first hangs on a wall, the second is for the
//! day of a wash, a flight or a burst cell.

use cushion::CompartmentIx;
use kurbo::{Point, Rect};

use super::look::{ACCENT, FIRM, INK, PALE, SOFT, THIN, first_that_fits, inside, text};
use super::pictures::{Picture, picture};
use super::views::{View, draw_named};
use super::{ClientPapers, DocumentError};
use crate::color::Color;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Fill, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::{SetError, Style, measure, wrap};
use crate::words::english as words;

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

/// Composes the take-home sheet.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or the notes find no room.
pub fn take_home(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let mut document = papers.document(words::TAKE_HOME, words::TAKE_HOME_SUBJECT);
    document.pages.push(first_that_fits(Print::ALL, |print| wall_page(papers, paper, print))?);
    document.pages.push(first_that_fits(Print::ALL, |print| second_page(papers, paper, print))?);
    Ok(document)
}

/// Returns the words of the sheet's sentences, a page each, as carers read them.
#[must_use]
pub fn take_home_text(document: &Document) -> Vec<String> {
    let page = |page: &Page| {
        let blocks = page.blocks.iter().filter(|block| {
            matches!(block.role, Role::Paragraph | Role::ListItem | Role::Heading(_))
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

fn wall_page(papers: &ClientPapers<'_>, paper: Paper, print: Print) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::TAKE_HOME);
    let area = above_foot(&mut page, papers, 1)?;
    let mut frame = Frame::new(&mut page, area);
    top(&mut frame, papers, words::WALL_TITLE, print)?;
    boxed(&mut frame, print, |frame| stop_rules(frame, print))?;
    frame.space(print.gap);
    for (which, (head, sentences)) in Picture::WALL.iter().zip(words::WALL_STEPS) {
        pictured(&mut frame, *which, (head, sentences), print)?;
        frame.space(print.gap);
    }
    own_notes(&mut frame, papers, print)?;
    frame.space(print.gap);
    boxed(&mut frame, print, |frame| calls(frame, papers, print))?;
    Ok(page)
}

/// Sets the foot of a page, which tells old sheets from new ones; returns the area above it.
fn above_foot(page: &mut Page, papers: &ClientPapers<'_>, number: usize) -> Result<Rect, SetError> {
    let style = text(14.0, Weight::Regular, SOFT).led(1.2);
    let area = inside(page);
    let line = words::sheet_of(papers.plan.on, papers.date, number);
    let height = wrap(&line, &style, area.width())?.len() as f64 * style.line_height();
    let at = Point::new(area.x0, area.y1 - height);
    page.block(Role::Paragraph).paragraph(at, area.width(), &line, &style, Align::Left)?;
    Ok(Rect::new(area.x0, area.y0, area.x1, at.y - 1.0))
}

/// Title, state of the sheet, code, line for the name.
fn top(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    title: &str,
    print: Print,
) -> Result<(), SetError> {
    frame.heading(1, title, &print.title())?;
    frame.space(1.5);
    let (status, solid) = match papers.fitting_check() {
        Some(check) => (words::checked_do_not_change(check.on, &check.by), false),
        None => (words::NOT_FITTED_YET.to_owned(), true),
    };
    banner(frame, &status, solid, print)?;
    let place = frame.take(10.0, words::NAME)?;
    let block = frame.page().block(Role::Paragraph);
    let baseline = place.y1 - 2.0;
    let width =
        block.text(Point::new(place.x0, baseline), words::NAME, &print.words(), Align::Left)?;
    let code = format!("{} {}", words::CODE, papers.client.code);
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
    let style = if solid {
        text(24.0, Weight::Bold, Color::WHITE)
    } else {
        text(print.size, Weight::Bold, INK)
    };
    let place = frame.take(if solid { 13.0 } else { 9.0 }, status)?;
    let width = measure(status, &style)?;
    if width > place.width() - 4.0 {
        let room = place.width() - 4.0;
        return Err(SetError::TooWide { word: status.to_owned(), width, room });
    }
    let block = frame.page().block(Role::Paragraph);
    let fill = Fill::solid(if solid { INK } else { PALE });
    block.rect(place, Some(fill), None);
    let middle = place.center() + (0.0, style.cap_height() / 2.0);
    block.text(middle, status, &style, Align::Centre)?;
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
    let place = frame.take(end - start, words::STOP)?;
    frame.page().block(Role::Artifact).rect(place, None, Some(Pen::solid(1.2, INK)));
    Ok(())
}

/// When not to sit on it.
fn stop_rules(frame: &mut Frame<'_>, print: Print) -> Result<(), SetError> {
    frame.heading(2, words::STOP, &print.head())?;
    for rule in words::STOP_RULES {
        frame.item("•", 6.0, rule, &print.words())?;
    }
    frame.paragraph(words::STOP_THEN, &print.firmly())
}

/// A picture at the left, a heading and sentences beside it.
fn pictured(
    frame: &mut Frame<'_>,
    which: Picture,
    (head, sentences): (&str, &[&str]),
    print: Print,
) -> Result<(), SetError> {
    const WIDE: f64 = 34.0;
    const HIGH: f64 = 25.0;
    let start = frame.y();
    let whole = frame.area();
    let beside = Rect::new(whole.x0 + WIDE + 4.0, start, whole.x1, whole.y1);
    let end = {
        let mut column = Frame::new(frame.page(), beside);
        column.heading(2, head, &print.head())?;
        column.paragraph(&sentences.join(" "), &print.words())?;
        column.y()
    };
    let place = frame.take((end - start).max(HIGH), head)?;
    let block = frame.page().block(Role::Figure { alt: which.alt().to_owned() });
    picture(block, which, Rect::from_origin_size(place.origin(), (WIDE, HIGH)))
}

/// What the therapist wrote for this carer, and what to sit on meanwhile.
fn own_notes(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    print: Print,
) -> Result<(), SetError> {
    if !papers.client.carer_notes.is_empty() {
        frame.heading(2, words::OWN_NOTES, &print.head())?;
    }
    for note in &papers.client.carer_notes {
        frame.item("•", 6.0, note, &print.firmly())?;
    }
    match &papers.client.meanwhile {
        Some(meanwhile) => frame.paragraph(&words::sit_meanwhile(meanwhile), &print.words()),
        None => written_line(frame, words::MEANWHILE, print),
    }
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

/// Whom to call, and when not to wait for them.
fn calls(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, print: Print) -> Result<(), SetError> {
    frame.heading(2, words::CALL, &print.head())?;
    for contact in &papers.client.contacts {
        let hours = contact.hours.as_ref().map_or(String::new(), |hours| format!(", {hours}"));
        frame.paragraph(&format!("{}: {}{hours}", contact.who, contact.phone), &print.firmly())?;
    }
    for _ in papers.client.contacts.len()..CALL_LINES {
        written_line(frame, words::WHO_AND_PHONE, print)?;
    }
    frame.heading(2, words::EMERGENCY, &print.head())?;
    for sign in words::EMERGENCY_SIGNS {
        frame.item("•", 6.0, sign, &print.words())?;
    }
    Ok(())
}

fn second_page(papers: &ClientPapers<'_>, paper: Paper, print: Print) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::TAKE_HOME_2);
    let area = above_foot(&mut page, papers, 2)?;
    let mut frame = Frame::new(&mut page, area);
    top(&mut frame, papers, words::SECOND_TITLE, print)?;
    let (start, whole) = (frame.y(), frame.area());
    let split = whole.x0 + whole.width() * 0.6;
    let left = {
        let area = Rect::new(whole.x0, start, split, whole.y1);
        let mut column = Frame::new(frame.page(), area);
        washing(&mut column, print)?;
        column.y()
    };
    let beside = {
        let area = Rect::new(split + 7.0, start, whole.x1, whole.y1);
        let mut column = Frame::new(frame.page(), area);
        recount(&mut column, papers, print)?;
        column.y()
    };
    frame.take(left.max(beside) - start, words::WASHING)?;
    frame.space(print.gap);
    section(&mut frame, words::CALL_SAME_DAY, print)?;
    if let Some(day) = papers.client.next_review {
        frame.paragraph(&words::next_look(day), &print.firmly())?;
    }
    Ok(page)
}

/// The steps of a wash, and what else is seldom needed.
fn washing(frame: &mut Frame<'_>, print: Print) -> Result<(), SetError> {
    frame.heading(2, words::WASHING, &print.head())?;
    for (step, sentence) in words::WASHING_STEPS.iter().enumerate() {
        frame.item(&format!("{}", step + 1), 6.0, sentence, &print.words())?;
    }
    for sentences in words::BESIDE_COUNTS {
        frame.space(print.gap);
        section(frame, sentences, print)?;
    }
    Ok(())
}

/// A heading and its sentences.
fn section(
    frame: &mut Frame<'_>,
    (head, sentences): (&str, &[&str]),
    print: Print,
) -> Result<(), SetError> {
    frame.heading(2, head, &print.head())?;
    frame.paragraph(&sentences.join(" "), &print.words())
}

/// The counts, pocket by pocket, and where the pockets are.
fn recount(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, print: Print) -> Result<(), SetError> {
    frame.heading(2, words::CELLS_IN_EACH_POCKET, &print.head())?;
    frame.paragraph(words::OPENINGS_UP, &text(14.0, Weight::Regular, INK).led(1.2))?;
    let wide = frame.area().width();
    let (area, block) = frame.figure(0.82 * wide, words::BELOW_ALT)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, papers.pattern, View::Below, area, numbers, 16.0)?;
    frame.space(1.5);
    let columns = [words::POCKET, words::CELLS];
    let columns =
        columns.into_iter().map(|head| Column::new(head, wide / 2.0, Align::Centre)).collect();
    let mut table = Table::new(columns, print.firmly(), print.words());
    table.head_ground = Some(PALE);
    table.margin = 0.2 + print.gap / 5.0;
    for count in &papers.plan.counts {
        table.row([count.number.to_string(), count.planned.to_string()]);
    }
    let rows = frame.table(&table)?;
    frame_counts(frame, &rows, wide / 2.0);
    frame.space(0.5);
    frame.paragraph(&words::all_cells(papers.plan.total()), &print.firmly())?;
    if papers.fitting_check().is_none() {
        frame.paragraph(words::COUNTS_ARE_AN_ESTIMATE, &print.firmly())?;
    }
    frame.paragraph(&words::spare_bag(papers.client.cushion.spare_cells), &print.words())
}

/// A firm frame around the counts, so that they are not read as numbers of pockets.
fn frame_counts(frame: &mut Frame<'_>, rows: &[Rect], column: f64) {
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let around = Rect::new(first.x0 + column, first.y0, last.x1, last.y1);
    frame.page().block(Role::Artifact).rect(around, None, Some(FIRM));
}
