//! One page of histograms over many bodies.

use kurbo::{Point, Rect};
use words::Language;

use super::look::{BODY, HEADING, INK, PALE, SMALL, SOFT, foot, inside, title_line};
use super::{DocumentError, document};
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Fill, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::SetError;

/// How often values fall into equal steps.
#[derive(Clone, Debug, PartialEq)]
pub struct Histogram {
    /// What it is about, with the unit.
    pub title: String,
    /// Names of the steps, in order.
    pub names: Vec<String>,
    /// How many fall into each.
    pub counts: Vec<u32>,
    /// A sentence under it.
    pub note: String,
}

/// What the page of a survey is made from.
#[derive(Clone, Copy)]
pub struct SurveyPage<'a> {
    /// In which language it is.
    pub language: &'a dyn Language,
    /// What was surveyed.
    pub title: &'a str,
    /// What came out, in sentences.
    pub sentences: &'a [String],
    /// At most six.
    pub panels: &'a [Histogram],
    /// The day that the page bears.
    pub date: case::Date,
    /// Program and version.
    pub program: &'a str,
}

/// About the width of a small character, mm.
const CHARACTER: f64 = 1.75;

/// Composes the page.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn survey_page(papers: &SurveyPage<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let language = papers.language;
    let texts = language.survey();
    let mut page = Page::new(language, paper, papers.title);
    let last = format!("{}, {}.", papers.program, papers.date);
    let end = foot(&mut page, &[texts.limits, &last])?;
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, Rect::new(area.x0, area.y0, area.x1, end - 2.0));
    title_line(&mut frame, papers.title, texts.estimate, true)?;
    for sentence in papers.sentences {
        frame.paragraph(sentence, &BODY)?;
    }
    frame.space(3.0);
    let rows = papers.panels.len().div_ceil(2).max(1);
    let height = (frame.room() / rows as f64 - 4.0).min(70.0);
    for pair in papers.panels.chunks(2) {
        let place = frame.take(height, &pair[0].title)?;
        let half = place.width() / 2.0;
        for (column, panel) in pair.iter().enumerate() {
            let x = place.x0 + half * column as f64;
            let own = Rect::new(x, place.y0, x + half - 6.0, place.y1);
            histogram(frame.page(), language, panel, own)?;
        }
        frame.space(4.0);
    }
    let mut made = document(language, papers.title, texts.subject, papers.date, papers.program);
    made.pages.push(page);
    Ok(made)
}

fn histogram(
    page: &mut Page,
    language: &dyn Language,
    panel: &Histogram,
    place: Rect,
) -> Result<(), SetError> {
    let baseline = place.y0 + HEADING.first_baseline();
    let heading = page.block(Role::Heading(2));
    heading.text(Point::new(place.x0, baseline), &panel.title, &HEADING, Align::Left)?;
    let names = panel.names.iter().map(String::as_str);
    let steps: Vec<(&str, u32)> = names.zip(panel.counts.iter().copied()).collect();
    let alt = language.histogram_shows(&panel.title, &steps);
    let block = page.block(Role::Figure { alt });
    let chart = Rect::new(
        place.x0,
        place.y0 + HEADING.line_height() + 4.0,
        place.x1,
        place.y1 - 2.0 * SMALL.line_height() - 1.0,
    );
    bars(block, panel, chart)?;
    let note = Point::new(place.x0, place.y1 - 0.5);
    block.text(note, &panel.note, &SMALL.colored(INK), Align::Left)?;
    Ok(())
}

fn bars(block: &mut Block, panel: &Histogram, chart: Rect) -> Result<(), SetError> {
    let most = f64::from(panel.counts.iter().copied().max().unwrap_or(0).max(1));
    let step = chart.width() / panel.counts.len().max(1) as f64;
    // Names that would run into each other are left out evenly.
    let longest = panel.names.iter().map(|name| name.chars().count()).max().unwrap_or(0);
    let every = (((longest + 1) as f64 * CHARACTER) / step).ceil().max(1.0) as usize;
    for (at, (count, name)) in panel.counts.iter().zip(&panel.names).enumerate() {
        let x = chart.x0 + step * at as f64;
        let top = chart.y1 - chart.height() * f64::from(*count) / most;
        let bar = Rect::new(x + 0.4, top, x + step - 0.4, chart.y1);
        block.rect(bar, Some(Fill::solid(PALE)), Some(Pen::solid(0.3, INK)));
        let middle = bar.center().x;
        if *count > 0 && step > 5.0 {
            let above = Point::new(middle, top - 1.0);
            block.text(above, &count.to_string(), &SMALL, Align::Centre)?;
        }
        if at % every == 0 {
            let below = Point::new(middle, chart.y1 + SMALL.line_height());
            block.text(below, name, &SMALL, Align::Centre)?;
        }
    }
    let pen = Pen::solid(0.35, SOFT);
    block.line(Point::new(chart.x0, chart.y1), Point::new(chart.x1, chart.y1), &pen);
    Ok(())
}
