//! One page of histograms over many bodies.

use kurbo::{Point, Rect};
use words::Language;

use super::axis::{AXIS, MARK, legend, round_step};
use super::look::{
    ACCENT, BODY, INK, LESSER_HEADING, PALE, SMALL, foot, inside, title_line, unreviewed,
};
use super::{DocumentError, document};
use crate::frame::Frame;
use crate::page::{Align, Block, Document, Fill, Page, Pen, Role};
use crate::paper::Paper;
use crate::text::SetError;

/// How often values fall into equal steps.
#[derive(Clone, Debug, PartialEq)]
pub struct Histogram {
    /// What it is about.
    pub title: String,
    /// What is measured along it, with the unit.
    pub axis: String,
    /// Names of the steps, in order; or one more, the ends of the steps where these are numbers.
    pub names: Vec<String>,
    /// How many fall into each.
    pub counts: Vec<u32>,
    /// Below what 5, 50 and 95 of 100 values are, in steps from the beginning; none where they are
    /// no numbers.
    pub most: Option<[f64; 3]>,
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
    /// At most eight.
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
    unreviewed(&mut page, language)?;
    let end = foot(&mut page, &[texts.limits, &last])?;
    let area = inside(&page);
    let mut frame = Frame::new(&mut page, Rect::new(area.x0, area.y0, area.x1, end - 2.0));
    title_line(&mut frame, papers.title, texts.estimate, true)?;
    for sentence in papers.sentences {
        frame.paragraph(sentence, &BODY)?;
    }
    frame.space(1.0);
    legend(&mut frame, &[(texts.bar, bar), (texts.most_bodies, whisker)])?;
    frame.space(2.0);
    let rows = papers.panels.len().div_ceil(2).max(1);
    let height = (frame.room() / rows as f64 - 3.0).min(70.0);
    for pair in papers.panels.chunks(2) {
        let place = frame.take(height, &pair[0].title)?;
        let half = place.width() / 2.0;
        for (column, panel) in pair.iter().enumerate() {
            let x = place.x0 + half * column as f64;
            let own = Rect::new(x, place.y0, x + half - 6.0, place.y1);
            histogram(frame.page(), language, panel, own)?;
        }
        frame.space(3.0);
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
    let baseline = place.y0 + LESSER_HEADING.first_baseline();
    let heading = page.block(Role::Heading(2));
    heading.text(Point::new(place.x0, baseline), &panel.title, &LESSER_HEADING, Align::Left)?;
    let steps: Vec<(String, u32)> = names_of(language, panel).zip(panel.counts.clone()).collect();
    let steps: Vec<(&str, u32)> = steps.iter().map(|(name, count)| (&**name, *count)).collect();
    let alt = language.histogram_shows(&panel.title, &steps);
    let block = page.block(Role::Figure { alt });
    let line = SMALL.line_height();
    // Left of it the numbers of the axis; under it a range, the names, the axis and the note.
    let chart = Rect::new(
        place.x0 + 9.0,
        place.y0 + LESSER_HEADING.line_height() + line + 3.0,
        place.x1 - 2.0,
        place.y1 - 3.0 * line - RANGE - 1.5,
    );
    count_axis(block, language.survey().bodies, panel, chart)?;
    bars(block, panel, chart)?;
    if let Some(most) = panel.most {
        let step = chart.width() / panel.counts.len().max(1) as f64;
        let y = chart.y1 + RANGE / 2.0;
        range(block, most.map(|at| Point::new(chart.x0 + at * step, y)));
    }
    let style = SMALL.colored(INK);
    let under = Point::new(chart.center().x, chart.y1 + RANGE + 2.0 * line);
    block.text(under, &panel.axis, &SMALL, Align::Centre)?;
    block.text(Point::new(place.x0, place.y1 - 0.5), &panel.note, &style, Align::Left)?;
    Ok(())
}

/// Height of the range under the bars, mm.
const RANGE: f64 = 4.0;

/// The name of each step.
fn names_of<'a>(
    language: &'a dyn Language,
    panel: &'a Histogram,
) -> impl Iterator<Item = String> + 'a {
    let edges = panel.names.len() > panel.counts.len();
    (0..panel.counts.len()).filter_map(move |at| {
        let name = panel.names.get(at)?;
        let next = panel.names.get(at + 1).filter(|_| edges);
        Some(next.map_or_else(|| name.clone(), |next| language.values_between(name, next)))
    })
}

/// A bar, as the legend shows it.
fn bar(block: &mut Block, at: Rect) {
    block.rect(at, Some(Fill::solid(PALE)), Some(Pen::solid(0.3, INK)));
}

/// A range, as the legend shows it.
fn whisker(block: &mut Block, at: Rect) {
    let y = at.center().y;
    range(block, [at.x0, at.center().x, at.x1].map(|x| Point::new(x, y)));
}

/// Draws where most bodies lie: from a point to another, and the middle one between them.
fn range(block: &mut Block, [low, middle, high]: [Point; 3]) {
    let pen = Pen::solid(0.5, ACCENT);
    block.line(low, high, &pen);
    for end in [low, high] {
        block.line(end - (0.0, 1.0), end + (0.0, 1.0), &pen);
    }
    block.circle(middle, 0.8, Some(Fill::solid(ACCENT)), None);
}

/// The greatest count of a panel, at least 1.
fn most(panel: &Histogram) -> u32 {
    panel.counts.iter().copied().max().unwrap_or(0).max(1)
}

/// Draws the upright axis: how many bodies.
fn count_axis(
    block: &mut Block,
    bodies: &str,
    panel: &Histogram,
    chart: Rect,
) -> Result<(), SetError> {
    let most = most(panel);
    let foot = Point::new(chart.x0, chart.y1);
    block.line(Point::new(chart.x0, chart.y0), foot, &AXIS);
    for count in (0..=u64::from(most)).step_by(round_step(most) as usize) {
        let at = foot - (0.0, chart.height() * count as f64 / f64::from(most));
        block.line(at - (MARK, 0.0), at, &AXIS);
        let baseline = at + (-MARK - 0.8, SMALL.cap_height() / 2.0);
        block.text(baseline, &count.to_string(), &SMALL, Align::Right)?;
    }
    let above = Point::new(chart.x0 - 9.0, chart.y0 - SMALL.line_height() - 0.5);
    block.text(above, bodies, &SMALL, Align::Left)?;
    Ok(())
}

fn bars(block: &mut Block, panel: &Histogram, chart: Rect) -> Result<(), SetError> {
    let most = f64::from(most(panel));
    let step = chart.width() / panel.counts.len().max(1) as f64;
    for (at, count) in panel.counts.iter().enumerate() {
        let x = chart.x0 + step * at as f64;
        let top = chart.y1 - chart.height() * f64::from(*count) / most;
        let own = Rect::new(x + 0.4, top, x + step - 0.4, chart.y1);
        bar(block, own);
        if *count > 0 && step > 5.0 {
            let above = Point::new(own.center().x, top - 1.0);
            block.text(above, &count.to_string(), &SMALL, Align::Centre)?;
        }
    }
    // Names stand under the middle of their bars, in two rows where they would run into each other;
    // ends of steps stand where these end, and of those that would, some are left out evenly.
    let edges = panel.names.len() > panel.counts.len();
    let longest = panel.names.iter().map(|name| name.chars().count()).max().unwrap_or(0);
    let every = (((longest + 1) as f64 * CHARACTER) / step).ceil().max(1.0) as usize;
    let (rows, every) = if edges { (1, every) } else { (every.min(2), every.div_ceil(2)) };
    for (at, name) in panel.names.iter().enumerate().step_by(every) {
        let x = chart.x0 + step * (at as f64 + if edges { 0.0 } else { 0.5 });
        let foot = Point::new(x, chart.y1);
        block.line(foot, foot + (0.0, MARK), &AXIS);
        let line = SMALL.line_height();
        let down = if edges { RANGE } else { MARK + line * (at / every % rows) as f64 };
        block.text(foot + (0.0, down + line), name, &SMALL, Align::Centre)?;
    }
    block.line(Point::new(chart.x0, chart.y1), Point::new(chart.x1, chart.y1), &AXIS);
    Ok(())
}
