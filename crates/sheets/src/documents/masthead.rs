//! The strip at the head of each page of a client, and of each card of an order: whose it is, for
//! which cushion, of which plan or which card, which page of how many.

use case::{ClientCode, PlanMark, Review};
use cushion::Pattern;
use kurbo::{Point, Rect};
use words::Language;

use super::look::{
    ACCENT, INK, LAST_LINE, SMALL, STRONG, columns, inside, text, title_line, unreviewed,
};
use crate::color::Color;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Fill, Page, Pen, Role};
use crate::text::{SetError, Style, measure, wrap};

/// The height of a strip whose values have a line each, in millimetres.
const HEIGHT: f64 = 11.0;
/// From an edge of the dark box to its words, in millimetres.
const INSET: f64 = 2.0;

/// A value under its name, in some of the twelve columns.
struct Fact {
    name: &'static str,
    lines: Vec<String>,
    style: Style,
    from: usize,
    to: usize,
    /// Whether it stands in the dark box.
    dark: bool,
}

/// By what the pages of a client are known again.
#[derive(Clone, Copy, Debug)]
pub struct Identity<'a> {
    /// Whose they are.
    pub code: &'a ClientCode,
    /// The serial of the cushion; where it is not known there is a line to write on.
    pub serial: Option<&'a str>,
    /// The cushion.
    pub pattern: &'a Pattern,
    /// The plan; none where the counts are in no record.
    pub mark: Option<&'a PlanMark>,
    /// Until when they hold.
    pub review: Review,
}

impl Identity<'_> {
    /// Begins a page at its head: room for the strip that [`Self::on`] draws, the title, and in a box
    /// how things stand, dark where that is not sure, and when it is looked at again.
    pub(super) fn head(
        &self,
        language: &dyn Language,
        frame: &mut Frame<'_>,
        title: &str,
        (mut status, unsure): (String, bool),
    ) -> Result<(), SetError> {
        if let Some(review) = language.look_again(self.review) {
            status = format!("{status}\n{review}");
        }
        begin(&self.said(language), frame, title, (&status, unsure))
    }

    /// Draws on each page the strip by which it is known again, and the line by which it is struck
    /// through.
    pub(super) fn on(
        &self,
        language: &dyn Language,
        pages: Vec<Page>,
    ) -> Result<Vec<Page>, SetError> {
        identified(&self.said(language), language, pages)
    }

    fn said(&self, language: &dyn Language) -> Vec<Said> {
        let shared = language.shared();
        let recorded = self.mark.map(|mark| format!("{} · {}", mark.number, mark.word));
        let plan = recorded.unwrap_or_else(|| shared.not_recorded.to_owned());
        let mut said = vec![(shared.client, self.code.to_string(), [0, 2], false)];
        said.extend(of_cushion(language, self.pattern, self.serial));
        said.push((shared.plan_and_word, plan, [9, 11], true));
        said
    }
}

/// By what a card of an order is known again that is of no client.
#[derive(Clone, Copy, Debug)]
pub(super) struct CardIdentity<'a> {
    /// The order.
    pub(super) order: &'a str,
    /// The serial of the cushion; where there is none there is a line to write on.
    pub(super) serial: Option<&'a str>,
    /// The cushion.
    pub(super) pattern: &'a Pattern,
    /// Which card of the order, from 1.
    pub(super) card: usize,
    /// By which its counts are known again.
    pub(super) word: &'a str,
}

impl CardIdentity<'_> {
    /// As [`Identity::head`].
    pub(super) fn head(
        &self,
        language: &dyn Language,
        frame: &mut Frame<'_>,
        title: &str,
        status: &str,
    ) -> Result<(), SetError> {
        begin(&self.said(language), frame, title, (status, true))
    }

    /// As [`Identity::on`].
    pub(super) fn on(
        &self,
        language: &dyn Language,
        pages: Vec<Page>,
    ) -> Result<Vec<Page>, SetError> {
        identified(&self.said(language), language, pages)
    }

    fn said(&self, language: &dyn Language) -> Vec<Said> {
        let texts = language.order();
        let card = format!("{} · {}", self.card, self.word);
        let mut said = vec![(texts.order, self.order.to_owned(), [0, 2], false)];
        said.extend(of_cushion(language, self.pattern, self.serial));
        said.push((texts.card_and_word, card, [9, 11], true));
        said
    }
}

/// A value under its name, from one of the twelve columns to another, and whether it stands in the
/// dark box.
type Said = (&'static str, String, [usize; 2], bool);

/// What is said of a cushion.
fn of_cushion(language: &dyn Language, pattern: &Pattern, serial: Option<&str>) -> [Said; 3] {
    let shared = language.shared();
    let size = format!(
        "{} {}",
        language.layout_with_revision(pattern.layout().as_str(), pattern.revision()),
        language.size(pattern.size())
    );
    [
        (shared.serial, serial.unwrap_or_default().to_owned(), [2, 4], false),
        (shared.layout_and_size, size, [4, 7], false),
        (shared.rated_for, language.rating(pattern.max_user_weight()), [7, 9], false),
    ]
}

/// Begins a page: room for the strip, and the title with how things stand.
fn begin(
    said: &[Said],
    frame: &mut Frame<'_>,
    title: &str,
    (status, unsure): (&str, bool),
) -> Result<(), SetError> {
    let masthead = Masthead::of(said, frame.area())?;
    frame.take(masthead.height + 2.5, title)?;
    title_line(frame, title, status, unsure)
}

/// Draws the strip and the last line on each page.
fn identified(
    said: &[Said],
    language: &dyn Language,
    mut pages: Vec<Page>,
) -> Result<Vec<Page>, SetError> {
    let (of, shared) = (pages.len(), language.shared());
    for (at, page) in pages.iter_mut().enumerate() {
        let area = inside(page);
        let number = language.page_of(at + 1, of);
        Masthead::of(said, area)?.draw(page, area, (shared.page, &number))?;
        let last = Point::new(area.x1, area.y1 + LAST_LINE.first_baseline());
        page.block(Role::Foot).text(last, shared.superseded, &LAST_LINE, Align::Right)?;
    }
    pages.iter_mut().try_for_each(|page| unreviewed(page, language))?;
    Ok(pages)
}

/// What the strip says on every page, and how high it is.
struct Masthead {
    facts: Vec<Fact>,
    /// Its height, in millimetres.
    height: f64,
}

impl Masthead {
    /// The strip for an area that is as wide as a page's.
    fn of(said: &[Said], area: Rect) -> Result<Self, SetError> {
        let facts = said.iter().map(|(name, value, [from, to], dark)| {
            let inset = if *dark { 2.0 * INSET } else { 0.0 };
            let room = columns(area, *from, *to).width() - inset;
            let (lines, style) = fitted(value, room)?;
            Ok(Fact { name, lines, style, from: *from, to: *to, dark: *dark })
        });
        let facts = facts.collect::<Result<Vec<Fact>, SetError>>()?;
        let more = facts.iter().map(|own| (own.lines.len() as f64 - 1.0) * own.style.line_height());
        let height = HEIGHT + more.fold(0.0, f64::max);
        Ok(Self { facts, height })
    }

    /// Draws it at the top of an area, with which page of how many it is.
    fn draw(
        &self,
        page: &mut Page,
        area: Rect,
        (name, of): (&'static str, &str),
    ) -> Result<(), SetError> {
        let strip = Rect { y1: area.y0 + self.height, ..area };
        let block = page.block(Role::Foot);
        for y in [strip.y0, strip.y1] {
            let pen = Pen::solid(0.3, INK);
            block.line(Point::new(strip.x0, y), Point::new(strip.x1, y), &pen);
        }
        for own in self.facts.iter().filter(|own| own.dark) {
            let ground = columns(strip, own.from, own.to);
            block.rect(ground, Some(Fill::solid(ACCENT)), None);
        }
        for own in &self.facts {
            set(page, columns(strip, own.from, own.to), own)?;
        }
        let place = columns(strip, 11, 12);
        let (lines, style) = fitted(of, place.width())?;
        set(page, place, &Fact { name, lines, style, from: 11, to: 12, dark: false })
    }
}

/// A value in the largest print in which it has one line, else in small print over more.
fn fitted(value: &str, room: f64) -> Result<(Vec<String>, Style), SetError> {
    let styles = [11.5, 9.5, 8.0].map(|size| text(size, Weight::Bold, INK));
    for style in styles {
        if measure(value, &style)? <= room {
            return Ok((vec![value.to_owned()], style));
        }
    }
    Ok((wrap(value, &styles[2], room)?, styles[2]))
}

/// Sets a value under its name; a place without a value has a line to write on.
fn set(page: &mut Page, place: Rect, fact: &Fact) -> Result<(), SetError> {
    let ink = |style: Style| if fact.dark { style.colored(Color::WHITE) } else { style };
    let x = place.x0 + if fact.dark { INSET } else { 0.0 };
    let block = page.block(Role::Foot);
    block.text(Point::new(x, place.y0 + 3.6), fact.name, &ink(SMALL), Align::Left)?;
    if fact.lines.iter().all(String::is_empty) {
        let (from, to) = (Point::new(x, place.y1 - 1.6), Point::new(place.x1, place.y1 - 1.6));
        block.line(from, to, &Pen::solid(0.25, STRONG.color));
    }
    for (row, line) in fact.lines.iter().enumerate().filter(|(_, line)| !line.is_empty()) {
        let y = place.y0 + 8.6 + row as f64 * fact.style.line_height();
        block.text(Point::new(x, y), line, &ink(fact.style), Align::Left)?;
    }
    Ok(())
}
