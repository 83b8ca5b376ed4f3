//! Pages that follow each other: what finds no room on one goes on to the next.

use kurbo::Rect;

use crate::frame::Frame;
use crate::page::Page;
use crate::table::Table;
use crate::text::{SetError, Style, wrap};

/// Begins the page of a number, counted from 1: with its head and foot, and the area between.
pub(crate) type Begin<'a> = dyn Fn(usize) -> Result<(Page, Rect), SetError> + 'a;

/// The most lines of one entry that stay together.
const MOST_LINES: usize = 12;

/// Pages that are filled from the top, one after the other.
pub(crate) struct Flow<'a> {
    begin: &'a Begin<'a>,
    full: Vec<Page>,
    page: Page,
    /// What is left of the page.
    left: Rect,
    /// Whether nothing was set yet on the page.
    fresh: bool,
}

impl<'a> Flow<'a> {
    /// Begins with the first page.
    pub(crate) fn new(begin: &'a Begin<'a>) -> Result<Self, SetError> {
        let (page, left) = begin(1)?;
        Ok(Self { begin, full: Vec::new(), page, left, fresh: true })
    }

    /// Sets what stays together, on the next page where this one is too full for it.
    ///
    /// # Errors
    ///
    /// Fails where it finds no room on a page of its own.
    pub(crate) fn put(
        &mut self,
        set: impl Fn(&mut Frame<'_>) -> Result<(), SetError>,
    ) -> Result<(), SetError> {
        let before = self.page.blocks.len();
        match self.set(&set) {
            Err(SetError::Overflow { .. }) if !self.fresh => {
                self.page.blocks.truncate(before);
                self.turn()?;
                self.set(&set)
            }
            other => other,
        }
    }

    /// Sets one entry of a list, see [`Frame::item`]; a very long one goes on on the next page.
    pub(crate) fn item(
        &mut self,
        mark: &str,
        indent: f64,
        text: &str,
        style: &Style,
    ) -> Result<(), SetError> {
        let lines = wrap(text, style, self.width() - indent)?;
        if lines.len() <= MOST_LINES {
            return self.put(|frame| frame.item(mark, indent, text, style));
        }
        for (at, some) in lines.chunks(MOST_LINES).enumerate() {
            let mark = if at == 0 { mark } else { "" };
            self.put(|frame| frame.item(mark, indent, &some.join("\n"), style))?;
        }
        Ok(())
    }

    /// Sets a paragraph; a very long one goes on on the next page.
    pub(crate) fn paragraph(&mut self, text: &str, style: &Style) -> Result<(), SetError> {
        for some in wrap(text, style, self.width())?.chunks(MOST_LINES) {
            self.put(|frame| frame.paragraph(&some.join("\n"), style))?;
        }
        Ok(())
    }

    /// Begins the next page where less than a height, in millimetres, is left on this one; returns
    /// whether it did.
    pub(crate) fn need(&mut self, height: f64) -> Result<bool, SetError> {
        let turns = self.left.height() < height && !self.fresh;
        if turns {
            self.turn()?;
        }
        Ok(turns)
    }

    /// Sets a table under a heading, its head again on each page; `then` adds to the rows that
    /// stand on a page, the head first, with the place of the first of them among all rows.
    pub(crate) fn headed_table(
        &mut self,
        heading: &str,
        style: &Style,
        table: &Table,
        then: impl Fn(&mut Frame<'_>, &[Rect], usize),
    ) -> Result<(), SetError> {
        let mut from = 0;
        let (head, rows) = table.head_and_rows()?;
        while from < table.rows.len() {
            let part = |to: usize| table.part(from..to);
            let above = match (from, heading) {
                (0, heading) if !heading.is_empty() => {
                    wrap(heading, style, self.width())?.len() as f64 * style.line_height()
                }
                _ => 0.0,
            };
            let mut room = self.left.height() - above - head;
            let fits = |height: &&f64| {
                room -= **height;
                room >= 0.0
            };
            let most = rows[from..].iter().take_while(fits).count();
            if most == 0 && !self.fresh {
                self.turn()?;
                continue;
            }
            let to = from + most.max(1);
            self.put(|frame| {
                if above > 0.0 {
                    frame.heading(2, heading, style)?;
                }
                let rows = frame.table(&part(to))?;
                then(frame, &rows, from);
                Ok(())
            })?;
            from = to;
        }
        Ok(())
    }

    /// Leaves a height free, in millimetres; at the end of a page less is enough.
    pub(crate) fn space(&mut self, height: f64) {
        self.left.y0 = (self.left.y0 + height).min(self.left.y1);
    }

    /// The width of the pages' areas, in millimetres.
    pub(crate) fn width(&self) -> f64 {
        self.left.width()
    }

    /// Returns the pages.
    pub(crate) fn pages(self) -> Vec<Page> {
        let Self { mut full, page, .. } = self;
        full.push(page);
        full
    }

    fn set(
        &mut self,
        set: &impl Fn(&mut Frame<'_>) -> Result<(), SetError>,
    ) -> Result<(), SetError> {
        let mut frame = Frame::new(&mut self.page, self.left);
        set(&mut frame)?;
        self.left.y0 = frame.y();
        self.fresh = false;
        Ok(())
    }

    fn turn(&mut self) -> Result<(), SetError> {
        let (page, left) = (self.begin)(self.full.len() + 2)?;
        self.full.push(std::mem::replace(&mut self.page, page));
        (self.left, self.fresh) = (left, true);
        Ok(())
    }
}
