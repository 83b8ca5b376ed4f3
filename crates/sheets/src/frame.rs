//! A column of blocks that flows from top to bottom and says when it is full.

use kurbo::{Point, Rect};

use crate::page::{Align, Block, Page, Role};
use crate::text::{SetError, Style, beginning, wrap};

/// A place on a page that is filled with blocks from the top.
///
/// Nothing is ever made smaller to fit: what finds no room is an error, and nothing of it is
/// drawn.
pub struct Frame<'p> {
    page: &'p mut Page,
    area: Rect,
    y: f64,
    tables: usize,
}

impl<'p> Frame<'p> {
    /// Begins at the top of an area of the page.
    pub fn new(page: &'p mut Page, area: Rect) -> Self {
        let tables = page.blocks.iter().filter_map(table_of).max().map_or(0, |last| last + 1);
        Self { page, area, y: area.y0, tables }
    }

    /// The page, for what is placed by hand.
    pub const fn page(&mut self) -> &mut Page {
        self.page
    }

    /// The area that is filled.
    pub const fn area(&self) -> Rect {
        self.area
    }

    /// How far down it is filled, in millimetres from the top of the page.
    pub const fn y(&self) -> f64 {
        self.y
    }

    /// The height left, in millimetres.
    pub fn room(&self) -> f64 {
        self.area.y1 - self.y
    }

    /// Leaves a height free, in millimetres; at the end of the area less is enough.
    pub fn space(&mut self, height: f64) {
        self.y = (self.y + height).min(self.area.y1);
    }

    /// Takes a height, in millimetres, over the whole width; `what` names it in the error.
    pub fn take(&mut self, height: f64, what: &str) -> Result<Rect, SetError> {
        let by = height - self.room();
        // A micrometre for the rounding of sums.
        if by > 1e-3 {
            return Err(SetError::Overflow { what: beginning(what, 40), by });
        }
        let taken = Rect::new(self.area.x0, self.y, self.area.x1, self.y + height);
        self.y = taken.y1;
        Ok(taken)
    }

    /// Sets a heading; 1 is the title of the page.
    pub fn heading(&mut self, level: u8, text: &str, style: &Style) -> Result<(), SetError> {
        self.words(Role::Heading(level), 0.0, text, style, Align::Left)
    }

    /// Sets a paragraph.
    pub fn paragraph(&mut self, text: &str, style: &Style) -> Result<(), SetError> {
        self.words(Role::Paragraph, 0.0, text, style, Align::Left)
    }

    /// Sets a block of words in a role, from an indent in millimetres.
    pub fn words(
        &mut self,
        role: Role,
        indent: f64,
        text: &str,
        style: &Style,
        align: Align,
    ) -> Result<(), SetError> {
        let width = self.area.width() - indent;
        let height = wrap(text, style, width)?.len() as f64 * style.line_height();
        let place = self.take(height, text)?;
        let at = Point::new(place.x0 + indent, place.y0);
        self.page.block(role).paragraph(at, width, text, style, align)?;
        Ok(())
    }

    /// Sets one entry of a list: its mark (a number, a dash) at the edge, its words indented by
    /// millimetres. Without a mark it goes on with the entry before it.
    pub fn item(
        &mut self,
        mark: &str,
        indent: f64,
        text: &str,
        style: &Style,
    ) -> Result<(), SetError> {
        let width = self.area.width() - indent;
        let height = wrap(text, style, width)?.len() as f64 * style.line_height();
        let place = self.take(height, text)?;
        let block = self.page.block(Role::ListItem);
        let baseline = Point::new(place.x0, place.y0 + style.first_baseline());
        if !mark.is_empty() {
            block.text(baseline, mark, style, Align::Left)?;
        }
        let at = Point::new(place.x0 + indent, place.y0);
        block.paragraph(at, width, text, style, Align::Left)?;
        Ok(())
    }

    /// Takes a height, in millimetres, for a drawing; `alt` says in words what it shows.
    pub fn figure(&mut self, height: f64, alt: &str) -> Result<(Rect, &mut Block), SetError> {
        let place = self.take(height, alt)?;
        Ok((place, self.page.block(Role::Figure { alt: alt.to_owned() })))
    }

    /// A number for a table that no other of the page has.
    pub(crate) const fn next_table(&mut self) -> usize {
        self.tables += 1;
        self.tables - 1
    }
}

const fn table_of(block: &Block) -> Option<usize> {
    match block.role {
        Role::Cell { table, .. } => Some(table),
        _ => None,
    }
}
