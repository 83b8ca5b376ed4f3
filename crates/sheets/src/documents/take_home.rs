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
use crate::text::{SetError, Style, measure};
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
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, area);
    top(&mut frame, papers, words::WALL_TITLE, print)?;
    stop_rules(&mut frame, print)?;
    frame.space(print.gap);
    for (which, (head, sentences)) in Picture::WALL.iter().zip(words::WALL_STEPS) {
        pictured(&mut frame, *which, (head, sentences), print)?;
        frame.space(print.gap);
    }
    own_notes(&mut frame, papers, print)?;
    frame.space(print.gap);
    calls(&mut frame, papers, print)?;
    Ok(page)
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
        text(19.0, Weight::Bold, Color::WHITE)
    } else {
        text(print.size, Weight::Bold, INK)
    };
    let place = frame.take(if solid { 12.0 } else { 9.0 }, status)?;
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

/// When not to sit on it, in a frame.
fn stop_rules(frame: &mut Frame<'_>, print: Print) -> Result<(), SetError> {
    let start = frame.y();
    let whole = frame.area();
    let inner = Rect::new(whole.x0 + 4.0, start + 2.0, whole.x1 - 4.0, whole.y1);
    let end = {
        let mut box_frame = Frame::new(frame.page(), inner);
        box_frame.heading(2, words::STOP, &print.head())?;
        for rule in words::STOP_RULES {
            box_frame.item("•", 6.0, rule, &print.words())?;
        }
        box_frame.paragraph(words::STOP_THEN, &print.firmly())?;
        box_frame.y() + 2.0
    };
    let place = frame.take(end - start, words::STOP)?;
    frame.page().block(Role::Artifact).rect(place, None, Some(Pen::solid(1.2, INK)));
    Ok(())
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

/// Whom to call.
fn calls(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, print: Print) -> Result<(), SetError> {
    frame.heading(2, words::CALL, &print.head())?;
    for contact in &papers.client.contacts {
        let hours = contact.hours.as_ref().map_or(String::new(), |hours| format!(", {hours}"));
        frame.paragraph(&format!("{}: {}{hours}", contact.who, contact.phone), &print.firmly())?;
    }
    for _ in papers.client.contacts.len()..CALL_LINES {
        written_line(frame, words::WHO_AND_PHONE, print)?;
    }
    Ok(())
}

fn second_page(papers: &ClientPapers<'_>, paper: Paper, print: Print) -> Result<Page, SetError> {
    let mut page = Page::new(paper, words::TAKE_HOME_2);
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, area);
    top(&mut frame, papers, words::SECOND_TITLE, print)?;
    let (start, whole) = (frame.y(), frame.area());
    let split = whole.x0 + whole.width() * 0.54;
    let beside = {
        let area = Rect::new(split + 5.0, start, whole.x1, whole.y1);
        let mut column = Frame::new(frame.page(), area);
        recount(&mut column, papers, print)?;
        column.y()
    };
    let left = {
        let area = Rect::new(whole.x0, start, split, whole.y1);
        let mut column = Frame::new(frame.page(), area);
        column.heading(2, words::WASHING, &print.head())?;
        for (step, sentence) in words::WASHING_STEPS.iter().enumerate() {
            column.item(&format!("{}", step + 1), 6.0, sentence, &print.words())?;
        }
        column.y()
    };
    frame.take(left.max(beside) - start, words::WASHING)?;
    frame.space(print.gap);
    for (head, sentences) in words::SECOND_STEPS {
        frame.heading(2, head, &print.head())?;
        frame.paragraph(&sentences.join(" "), &print.words())?;
        frame.space(print.gap);
    }
    last_lines(&mut frame, papers, print)?;
    Ok(page)
}

/// The counts, pocket by pocket, and where the pockets are.
fn recount(frame: &mut Frame<'_>, papers: &ClientPapers<'_>, print: Print) -> Result<(), SetError> {
    frame.heading(2, words::CELLS_IN_EACH_POCKET, &print.head())?;
    let (area, block) = frame.figure(52.0, words::BELOW_ALT)?;
    let numbers = |ix: CompartmentIx| (papers.pattern[ix].number.to_string(), None);
    draw_named(block, papers.pattern, View::Below, area, numbers, 14.0)?;
    let wide = frame.area().width();
    // Two pockets to a row: the table stays short enough for the page.
    let columns = [words::POCKET, words::CELLS, words::POCKET, words::CELLS];
    let columns =
        columns.into_iter().map(|head| Column::new(head, wide / 4.0, Align::Centre)).collect();
    let mut table = Table::new(columns, print.firmly(), print.words());
    table.head_ground = Some(PALE);
    let counts = &papers.plan.counts;
    let half = counts.len().div_ceil(2);
    for row in 0..half {
        let pair = |at: usize| match counts.get(at) {
            Some(count) => [count.number.to_string(), count.planned.to_string()],
            None => [String::new(), String::new()],
        };
        let (first, second) = (pair(row), pair(row + half));
        table.row(first.into_iter().chain(second));
    }
    let rows = frame.table(&table)?;
    frame_counts(frame, &rows, wide / 4.0);
    frame.paragraph(&words::all_cells(papers.plan.total()), &print.firmly())?;
    frame.paragraph(&words::spare_bag(papers.client.cushion.spare_cells), &print.words())
}

/// Firm frames around both columns of counts, so that they are not read as numbers of pockets.
fn frame_counts(frame: &mut Frame<'_>, rows: &[Rect], column: f64) {
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let block = frame.page().block(Role::Artifact);
    for at in [1.0, 3.0] {
        let left = first.x0 + column * at;
        block.rect(Rect::new(left, first.y0, left + column, last.y1), None, Some(FIRM));
    }
}

fn last_lines(
    frame: &mut Frame<'_>,
    papers: &ClientPapers<'_>,
    print: Print,
) -> Result<(), SetError> {
    let review = papers.client.next_review;
    if let Some(day) = review {
        frame.paragraph(&words::next_look(day), &print.firmly())?;
    }
    let small = print.words().colored(SOFT);
    frame.paragraph(&words::sheet_of(papers.plan.on, papers.date), &small)
}
