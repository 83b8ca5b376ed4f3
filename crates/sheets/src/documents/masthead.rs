//! The strip at the head of each page of a client: whose it is, for which cushion, of which plan,
//! which page of how many.

use kurbo::{Point, Rect};

use super::ClientPapers;
use super::look::{ACCENT, INK, SMALL, STRONG, columns, text};
use crate::color::Color;
use crate::font::Weight;
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
}

/// What the strip says on every page, and how high it is.
pub(super) struct Masthead {
    facts: Vec<Fact>,
    height: f64,
}

impl Masthead {
    /// The strip for an area that is as wide as a page's.
    pub(super) fn of(papers: &ClientPapers<'_>, area: Rect) -> Result<Self, SetError> {
        let (language, shared, pattern) =
            (papers.language, papers.language.shared(), papers.pattern);
        let size = format!("{} {}", pattern.layout(), language.size(papers.plan.size));
        let serial = papers.client.cushion.serial.clone().unwrap_or_default();
        let plan = format!("{} · {}", papers.mark.number, papers.mark.word);
        let said = [
            (shared.client, papers.client.code.to_string(), 0, 2),
            (shared.serial, serial, 2, 4),
            (shared.layout_and_size, size, 4, 7),
            (shared.rated_for, language.rating(pattern.max_user_weight()), 7, 9),
            (shared.plan_and_word, plan, 9, 11),
        ];
        let facts = said.into_iter().map(|(name, value, from, to)| {
            let inset = if to == 11 { 2.0 * INSET } else { 0.0 };
            let room = columns(area, from, to).width() - inset;
            let (lines, style) = fitted(&value, room)?;
            Ok(Fact { name, lines, style, from, to })
        });
        let facts = facts.collect::<Result<Vec<Fact>, SetError>>()?;
        let more = facts.iter().map(|own| (own.lines.len() as f64 - 1.0) * own.style.line_height());
        let height = HEIGHT + more.fold(0.0, f64::max);
        Ok(Self { facts, height })
    }

    /// Its height, in millimetres.
    pub(super) const fn height(&self) -> f64 {
        self.height
    }

    /// Draws it at the top of an area, with which page of how many it is.
    pub(super) fn draw(
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
        let dark = columns(strip, 9, 11);
        block.rect(dark, Some(Fill::solid(ACCENT)), None);
        for own in &self.facts {
            set(page, columns(strip, own.from, own.to), own)?;
        }
        let place = columns(strip, 11, 12);
        let (lines, style) = fitted(of, place.width())?;
        set(page, place, &Fact { name, lines, style, from: 11, to: 12 })
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
    let dark = fact.to == 11;
    let ink = |style: Style| if dark { style.colored(Color::WHITE) } else { style };
    let x = place.x0 + if dark { INSET } else { 0.0 };
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
