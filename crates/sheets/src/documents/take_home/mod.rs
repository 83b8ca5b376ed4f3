//! The take-home sheet for carers: a page for the wall, the steps of each day, what to do with the
//! cells, a page to write on. Print is never smaller than it says; what finds no room flows on.

mod cells;
mod pictures;
mod steps;
mod wall;
mod writing;

use kurbo::{Point, Rect};
use words::{Language, PassageTexts};

use super::look::{ACCENT, GUTTER, INK, PALE, SOFT, THIN, inside, text};
use super::{ClientPapers, DocumentError};
use crate::color::Color;
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Fill, Mark, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::{SIZES, SetError, Style, measure, wrap};

/// How large print is.
#[derive(Clone, Copy)]
struct Print {
    /// Size of the words, in points.
    words: f64,
    /// Size of the title.
    title: f64,
    /// Size of headings.
    head: f64,
    /// Size of labels in pictures and of the foot.
    label: f64,
}

impl Print {
    /// For tired eyes.
    const USUAL: Self = Self { title: 24.0, words: 16.5, head: 20.0, label: 14.0 };
    /// For weak eyes.
    const LARGE: Self = Self { title: 29.0, words: 20.0, head: 24.0, label: 16.5 };

    fn words(self) -> Style {
        text(self.words, Weight::Regular, INK).led(1.2)
    }

    fn firmly(self) -> Style {
        text(self.words, Weight::Bold, INK).led(1.2)
    }

    fn head(self) -> Style {
        text(self.head, Weight::Bold, ACCENT).led(1.25)
    }

    fn step(self) -> Style {
        text(self.words, Weight::Bold, ACCENT).led(1.25)
    }

    fn label(self) -> Style {
        text(self.label, Weight::Bold, INK).led(1.2)
    }

    fn title(self) -> Style {
        text(self.title, Weight::Bold, ACCENT).led(1.25)
    }
}

/// Room between things, in millimetres.
const GAP: f64 = 3.0;

/// Composes the take-home sheet. Where whoever hands it over reads another language, the same follows
/// in theirs, so that the two can go through it together.
///
/// # Errors
///
/// Fails where the plan is not for this pattern, or a character has no glyph.
pub fn take_home(papers: &ClientPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    papers.counts_fit()?;
    let texts = papers.language.take_home();
    let mut document = papers.document_with_code(texts.title, texts.subject);
    document.pages = whole(papers, paper, false)?;
    if let Some(language) = papers.handed_over_in {
        let own = ClientPapers { language, handed_over_in: None, large_print: false, ..*papers };
        document.pages.extend(whole(&own, paper, true)?);
    }
    Ok(document)
}

/// The sheet in one language, for the carer or for the therapist.
fn whole(
    papers: &ClientPapers<'_>,
    paper: Paper,
    for_therapist: bool,
) -> Result<Vec<Page>, SetError> {
    // The pages say how many there are, so they are set again where it is not the usual number.
    const USUAL: usize = 5;
    let print = if papers.large_print { Print::LARGE } else { Print::USUAL };
    let pages_of = |of: usize| pages(Sheet { papers, paper, print, of, for_therapist });
    let first = pages_of(USUAL)?;
    if first.len() == USUAL { Ok(first) } else { pages_of(first.len()) }
}

/// All parts of the sheet.
fn pages(sheet: Sheet<'_>) -> Result<Vec<Page>, SetError> {
    let papers = sheet.papers;
    let texts = papers.language.take_home();
    let mut pages = sheet.part(0, texts.heading, |flow| wall::set(flow, sheet))?;
    pages.extend(sheet.part(pages.len(), texts.steps_heading, |flow| steps::set(flow, sheet))?);
    pages.extend(sheet.part(pages.len(), texts.cells_heading, |flow| cells::set(flow, sheet))?);
    Ok(pages)
}

/// What each page of the sheet needs.
#[derive(Clone, Copy)]
struct Sheet<'a> {
    papers: &'a ClientPapers<'a>,
    paper: Paper,
    print: Print,
    /// How many pages there are.
    of: usize,
    /// Whether this is the same as the carer's sheet, for a therapist who reads another language.
    for_therapist: bool,
}

impl Sheet<'_> {
    /// Sets a part of the sheet, which begins a page after so many.
    fn part(
        self,
        before: usize,
        heading: &str,
        set: impl Fn(&mut Flow<'_>) -> Result<(), SetError>,
    ) -> Result<Vec<Page>, SetError> {
        let begin = |number| self.begin(before + number, heading);
        let mut flow = Flow::new(&begin)?;
        set(&mut flow)?;
        Ok(flow.pages())
    }

    /// Begins the page of a number, with a heading; returns it with the area that is left.
    fn begin(self, number: usize, heading: &str) -> Result<(Page, Rect), SetError> {
        let title = self.papers.language.take_home().title;
        let mut page = Page::new(self.papers.language, self.paper, title);
        let area = self.above_foot(&mut page, number)?;
        if self.for_therapist {
            // In the margin, where it takes no room from what both have.
            let line = self.papers.language.take_home().same_for_therapist;
            let style = text(Print::USUAL.label, Weight::Bold, ACCENT);
            let at = Point::new(area.x0, area.y0 - 0.5);
            page.block(Role::Paragraph).text(at, line, &style, Align::Left)?;
        }
        let mut frame = Frame::new(&mut page, area);
        self.top(&mut frame, heading)?;
        if let Some(other) = self.papers.handed_over_in.filter(|_| number == 1) {
            self.to_whoever_hands_over(&mut frame, other)?;
        }
        let left = Rect { y0: frame.y(), ..area };
        Ok((page, left))
    }

    /// Sets the foot of a page, which tells old sheets from new ones; returns the area above it.
    fn above_foot(self, page: &mut Page, number: usize) -> Result<Rect, SetError> {
        let style = text(self.print.label, Weight::Regular, SOFT).led(1.2);
        // A sheet for a wall is not filed: it needs no room for holes.
        let area = inside(page);
        let area = Rect { x0: area.x0 - GUTTER, ..area };
        let papers = self.papers;
        let (of_pages, plan) = ((number, self.of), papers.plan.on);
        let mut line = papers.language.take_home_foot(of_pages, plan, papers.date);
        line.extend(papers.serial.map(|serial| format!(" {}.", papers.language.serial(serial))));
        line.extend(papers.drawn_by().map(|plugin| format!(" {}", plugin.said(papers.language))));
        let height = wrap(&line, &style, area.width())?.len() as f64 * style.line_height();
        let at = Point::new(area.x0, area.y1 - height);
        page.block(Role::Foot).paragraph(at, area.width(), &line, &style, Align::Left)?;
        if let Some(line) = papers.language.unreviewed() {
            // In the margin under the foot, where it takes no room from the sheet.
            let style = text(Print::USUAL.label, Weight::Regular, SOFT).led(1.2);
            let at = Point::new(area.x0, area.y1 + style.first_baseline());
            page.block(Role::Foot).text(at, line, &style, Align::Left)?;
        }
        Ok(Rect::new(area.x0, area.y0, area.x1, at.y - 1.0))
    }

    /// Title, state of the sheet, code, line for the name.
    fn top(self, frame: &mut Frame<'_>, heading: &str) -> Result<(), SetError> {
        let (papers, print) = (self.papers, self.print);
        let (language, texts) = (papers.language, papers.language.take_home());
        self.plan(frame)?;
        frame.heading(1, heading, &print.title())?;
        frame.space(1.5);
        self.banner(frame, &language.take_home_state(papers.standing()))?;
        let place = frame.take(10.0, texts.name)?;
        let block = frame.page().block(Role::Paragraph);
        let baseline = place.y1 - 2.0;
        let name = Point::new(place.x0, baseline);
        let width = block.text(name, texts.name, &print.words(), Align::Left)?;
        let code = language.code(&papers.client.code);
        let code_width =
            block.text(Point::new(place.x1, baseline), &code, &print.firmly(), Align::Right)?;
        let line = baseline + 0.8;
        let (from, to) = (place.x0 + width + 2.0, place.x1 - code_width - 5.0);
        block.line(Point::new(from, line), Point::new(to, line), &THIN);
        frame.space(2.0);
        Ok(())
    }

    /// To whoever hands the sheet over and may not read its language: how the fitting stands, and in
    /// which language the sheet is.
    fn to_whoever_hands_over(
        self,
        frame: &mut Frame<'_>,
        other: &dyn Language,
    ) -> Result<(), SetError> {
        let papers = self.papers;
        let state = other.take_home_state(papers.standing());
        let line = format!("{state} {}", other.sheet_in(papers.language.own_name()));
        frame.paragraph(&line, &text(self.print.label, Weight::Regular, SOFT).led(1.2))?;
        frame.space(1.5);
        Ok(())
    }

    /// The dark box at the top right by which a sheet is compared with the setup card.
    fn plan(self, frame: &mut Frame<'_>) -> Result<(), SetError> {
        let style = self.print.label().colored(Color::WHITE);
        let words = self.papers.language.plan_in_short(self.papers.mark);
        let (area, y) = (frame.area(), frame.y());
        let size = (measure(&words, &style)? + 6.0, style.line_height() + 2.0);
        let around = Rect::from_origin_size((area.x1 - size.0, y + 1.0), size);
        let block = frame.page().block(Role::Foot);
        block.rect(around, Some(Fill::solid(ACCENT)), None);
        let baseline = around.center().y + style.cap_height() / 2.0;
        let at = Point::new(around.center().x, baseline);
        block.text(at, &words, &style, Align::Centre).map(drop)
    }

    /// A box over the whole width; white on dark where nothing may be overlooked.
    fn banner(self, frame: &mut Frame<'_>, status: &str) -> Result<(), SetError> {
        let (print, solid) = (self.print, self.papers.is_estimate());
        let (size, color) = if solid { (24.0, Color::WHITE) } else { (print.label, INK) };
        let room = frame.area().width() - 4.0;
        // Rather a line in smaller print than a second line; never below that of the sheet.
        let share = room / measure(status, &text(1.0, Weight::Bold, color))?;
        let fitting = SIZES.iter().rfind(|own| **own <= size.min(share)).unwrap_or(&SIZES[0]);
        let style = text(fitting.max(print.words.min(size)), Weight::Bold, color).led(1.2);
        let lines = wrap(status, &style, room)?.len() as f64;
        let height = lines * style.line_height() + if solid { 3.0 } else { 2.2 };
        let place = frame.take(height, status)?;
        let block = frame.page().block(Role::Paragraph);
        block.rect(place, Some(Fill::solid(if solid { INK } else { PALE })), None);
        let top = place.center().y - lines * style.line_height() / 2.0;
        block.paragraph(Point::new(place.x0 + 2.0, top), room, status, &style, Align::Centre)?;
        Ok(())
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
                Mark::Text(run) => Some(run.shaped.text()),
                Mark::Shape(_) => None,
            });
            runs.collect::<Vec<_>>().join(" ")
        };
        blocks.map(line).collect::<Vec<_>>().join("\n")
    };
    document.pages.iter().map(page).collect()
}

/// Sets what must be found first, in a firm frame; a thin one where it matters less.
fn boxed(
    frame: &mut Frame<'_>,
    pen: f64,
    inside: impl Fn(&mut Frame<'_>) -> Result<(), SetError>,
) -> Result<(), SetError> {
    const EDGE: f64 = 1.6;
    let (start, whole) = (frame.y(), frame.area());
    let inner = Rect::new(whole.x0 + 4.0, start + EDGE, whole.x1 - 4.0, whole.y1);
    let end = {
        let mut box_frame = Frame::new(frame.page(), inner);
        inside(&mut box_frame)?;
        box_frame.y() + EDGE
    };
    let place = frame.take(end - start, "a box")?;
    frame.page().block(Role::Artifact).rect(place, None, Some(Pen::solid(pen, INK)));
    Ok(())
}

/// Sets two things side by side.
fn side_by_side(
    frame: &mut Frame<'_>,
    share: f64,
    left: impl Fn(&mut Frame<'_>) -> Result<(), SetError>,
    right: impl Fn(&mut Frame<'_>) -> Result<(), SetError>,
) -> Result<(), SetError> {
    let (start, whole) = (frame.y(), frame.area());
    let split = whole.x0 + (whole.width() - GUTTER) * share;
    let halves =
        [Rect { y0: start, x1: split, ..whole }, Rect { y0: start, x0: split + GUTTER, ..whole }];
    let [left_half, right_half] = halves;
    let one = {
        let mut column = Frame::new(frame.page(), left_half);
        left(&mut column)?;
        column.y()
    };
    let other = {
        let mut column = Frame::new(frame.page(), right_half);
        right(&mut column)?;
        column.y()
    };
    frame.take(one.max(other) - start, "two columns").map(drop)
}

/// A heading and its sentences, each a line of its own.
fn section(
    frame: &mut Frame<'_>,
    PassageTexts { heading, sentences }: PassageTexts,
    print: Print,
) -> Result<(), SetError> {
    frame.heading(2, heading, &print.head())?;
    for sentence in sentences {
        frame.item("•", 5.0, sentence, &print.words())?;
    }
    Ok(())
}

/// A name, and a line to write on.
fn written_line(frame: &mut Frame<'_>, name: &str, print: Print) -> Result<(), SetError> {
    const LEAST_LINE: f64 = 30.0;
    let style = print.words();
    // A name that leaves too little of the line stands above it.
    let beside = measure(name, &style)? + LEAST_LINE <= frame.area().width();
    if !beside {
        frame.paragraph(name, &style)?;
    }
    let place = frame.take(style.line_height() + 2.5, name)?;
    let block = frame.page().block(Role::Paragraph);
    let baseline = place.y1 - 1.8;
    let width = match beside {
        true => block.text(Point::new(place.x0, baseline), name, &style, Align::Left)? + 2.0,
        false => 0.0,
    };
    let from = Point::new(place.x0 + width, baseline + 0.8);
    block.line(from, Point::new(place.x1, from.y), &THIN);
    Ok(())
}

/// Length of a line to write a number on, in millimetres.
const LINE: f64 = 24.0;

/// A sentence with rooms to write a number in: words, a short line, words.
fn filled_in(frame: &mut Frame<'_>, parts: &[&str], print: Print) -> Result<(), SetError> {
    let style = print.words();
    let place = frame.take(style.line_height() + 2.0, parts[0])?;
    let block = frame.page().block(Role::Paragraph);
    let (baseline, mut x) = (place.y1 - 1.8, place.x0);
    for (at, part) in parts.iter().enumerate() {
        if at > 0 {
            let y = baseline + 0.8;
            block.line(Point::new(x, y), Point::new(x + LINE, y), &THIN);
            x += LINE + 2.0;
        }
        if !part.is_empty() {
            x += block.text(Point::new(x, baseline), part, &style, Align::Left)? + 2.0;
        }
    }
    Ok(())
}
