//! The code by which counts are found again, with what it is for beside it.

use kurbo::{Point, Rect};

use super::ClientPapers;
use super::look::INK;
use crate::frame::Frame;
use crate::page::{Align, Fill, Page, Role};
use crate::qr::Qr;
use crate::text::{SetError, Style, measure, wrap};

/// Between the white around the code and the words, in millimetres: the white parts them already.
const BESIDE: f64 = 0.5;

/// The code of a paper.
pub(super) struct Code<'a> {
    text: &'a str,
    qr: Qr,
    /// What it is to those who cannot see it.
    alt: String,
}

impl<'a> Code<'a> {
    /// The code of a client's papers; none where they have none.
    pub(super) fn of(papers: &ClientPapers<'a>) -> Option<Self> {
        let text = papers.code?;
        Some(Self { text, qr: Qr::of(text)?, alt: papers.language.code_says(text) })
    }

    /// Its text.
    pub(super) const fn text(&self) -> &'a str {
        self.text
    }

    /// Its text in lines for beside it, all in a width: none ends within a part or a number, so that
    /// whoever types it keeps the place.
    pub(super) fn text_beside(&self, style: &Style, wide: f64) -> Result<String, SetError> {
        let room = wide - self.width() - BESIDE;
        let mut lines: Vec<String> = Vec::new();
        for piece in self.text.split_inclusive(['/', '-']) {
            match lines.last_mut() {
                Some(line) if measure(&format!("{line}{piece}"), style)? <= room => *line += piece,
                _ => lines.push(piece.to_owned()),
            }
        }
        Ok(lines.join("\n"))
    }

    /// Its width and height in millimetres, with the white around it.
    pub(super) fn width(&self) -> f64 {
        self.qr.width()
    }

    /// How high it is with words beside it, all in a width, in millimetres.
    pub(super) fn height(&self, words: &[(&str, Style)], wide: f64) -> Result<f64, SetError> {
        let heights = self.heights(words, wide)?;
        Ok(heights.iter().sum::<f64>().max(self.width()))
    }

    /// Draws it at the left of a frame, with words beside it.
    pub(super) fn with_words(
        &self,
        frame: &mut Frame<'_>,
        words: &[(&str, Style)],
    ) -> Result<(), SetError> {
        let heights = self.heights(words, frame.area().width())?;
        let high = heights.iter().sum::<f64>();
        let place = frame.take(high.max(self.width()), self.text)?;
        let middle = place.center().y;
        self.draw(frame.page(), Point::new(place.x0, middle - self.width() / 2.0));
        let x = place.x0 + self.width() + BESIDE;
        let mut y = middle - high / 2.0;
        for ((words, style), height) in words.iter().zip(heights) {
            let block = frame.page().block(Role::Paragraph);
            block.paragraph(Point::new(x, y), place.x1 - x, words, style, Align::Left)?;
            y += height;
        }
        Ok(())
    }

    /// Draws it in the upper right corner of a place.
    pub(super) fn in_corner(&self, page: &mut Page, place: Rect) {
        self.draw(page, Point::new(place.x1 - self.width(), place.y0));
    }

    /// How high words are beside it.
    fn heights(&self, words: &[(&str, Style)], wide: f64) -> Result<Vec<f64>, SetError> {
        let room = wide - self.width() - BESIDE;
        let height = |(words, style): &(&str, Style)| {
            Ok(wrap(words, style, room)?.len() as f64 * style.line_height())
        };
        words.iter().map(height).collect()
    }

    fn draw(&self, page: &mut Page, at: Point) {
        let block = page.block(Role::Figure { alt: self.alt.clone() });
        block.path(self.qr.path(at), Some(Fill::solid(INK)), None);
    }
}
