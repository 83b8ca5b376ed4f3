//! An order's papers: the pick list, and a fill card for each cushion.

use case::{Date, Spread};
use cushion::{Cell, Mass, Pattern};
use kurbo::{Point, Rect};
use words::Language;

use super::fill_card::{InOrder, pages_of_client, pages_of_stock};
use super::look::{
    BODY, HEADING, INK, SMALL, STRONG, dense_table, facts, foot, inside, numbered, text, title_line,
};
use super::{ClientPapers, DocumentError, DrawnBy, StockPapers, document};
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Pen, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;

/// What an order's papers are made from.
#[derive(Clone, Copy)]
pub struct OrderPapers<'a> {
    /// In which language they are.
    pub language: &'a dyn Language,
    /// What the order is called.
    pub name: &'a str,
    /// The cushions, in the order of their cards, one at least.
    pub cushions: &'a [OrderedCushion<'a>],
    /// The day that the papers bear.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

/// What a cushion is filled with.
#[derive(Clone, Copy)]
pub enum ToFill<'a> {
    /// A size as supplied.
    Stock(StockPapers<'a>),
    /// What a client's record has.
    Client(ClientPapers<'a>),
}

/// One cushion of an order.
#[derive(Clone, Copy)]
pub struct OrderedCushion<'a> {
    /// What it is filled with.
    pub fill: ToFill<'a>,
    /// Its serial, where it has one.
    pub serial: Option<&'a str>,
    /// By which its counts are known again.
    pub word: &'a str,
    /// Cells to fill into it.
    pub cells: u32,
    /// Spare cells that go with it.
    pub spares: u32,
    /// What it is expected to weigh when finished.
    pub finished: Spread<Mass>,
}

impl<'a> OrderedCushion<'a> {
    /// The pattern.
    pub(super) fn pattern(&self) -> &'a Pattern {
        match self.fill {
            ToFill::Stock(papers) => papers.pattern,
            ToFill::Client(papers) => papers.pattern,
        }
    }

    /// The plugin that drew the pattern, where one did.
    pub(super) fn drawn_by(&self) -> Option<DrawnBy<'_>> {
        match &self.fill {
            ToFill::Stock(papers) => papers.drawn_by,
            ToFill::Client(papers) => papers.drawn_by(),
        }
    }

    fn cell(&self) -> &'a Cell {
        match self.fill {
            ToFill::Stock(papers) => papers.cell,
            ToFill::Client(papers) => papers.cell,
        }
    }

    /// Which layout it is, with its revision.
    fn layout(&self, language: &dyn Language) -> String {
        let pattern = self.pattern();
        language.layout_with_revision(pattern.layout().as_str(), pattern.revision())
    }
}

/// Composes a fill card for each cushion, in their order.
///
/// # Errors
///
/// Fails where a fill is not for its pattern, or something finds no room.
pub fn fill_cards(order: &OrderPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let (language, texts) = (order.language, order.language.order());
    let (title, subject) = (texts.fill_cards, texts.fill_cards_subject);
    let mut made = document(language, title, subject, order.date, order.program);
    let cards = order.cushions.len();
    for (at, own) in order.cushions.iter().enumerate() {
        let OrderedCushion { serial, word, spares, .. } = *own;
        let of = InOrder { order: order.name, card: at + 1, cards, serial, word, spares };
        made.pages.extend(match &own.fill {
            ToFill::Stock(papers) => pages_of_stock(papers, Some(&of), paper)?,
            ToFill::Client(papers) => pages_of_client(papers, Some(&of), paper)?,
        });
    }
    Ok(made)
}

/// Composes the pick list: what to fetch in all, by size and cell, and each cushion with room to
/// tick it off.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn pick_list(order: &OrderPapers<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let (language, texts) = (order.language, order.language.order());
    let last = format!("{}, {}.", order.program, order.date);
    let begin = |_| {
        let mut page = Page::new(language, paper, texts.pick_list);
        let end = foot(&mut page, &[texts.clinician_decides, &last])?;
        let area = inside(&page);
        let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..area });
        title_line(&mut frame, texts.pick_list, texts.estimate_until_counted, true)?;
        facts(&mut frame, &totals(order))?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    let wide = flow.width();
    let to_fetch = to_fetch(order, wide);
    flow.headed_table(texts.cells_to_fetch, &HEADING, &to_fetch, |_, _, _| ())?;
    flow.paragraph(texts.litres_are_rough, &SMALL)?;
    flow.space(3.0);
    let sizes = by_size_and_cell(order, wide);
    flow.headed_table(texts.by_size_and_cell, &HEADING, &sizes, |_, _, _| ())?;
    flow.space(3.0);
    each_cushion(&mut flow, order)?;
    flow.space(1.5);
    flow.put(|frame| {
        frame.paragraph(texts.how_to_match, &BODY)?;
        frame.paragraph(texts.masses_are_estimates, &SMALL)
    })?;
    let (title, subject) = (texts.pick_list, texts.pick_list_subject);
    let mut made = document(language, title, subject, order.date, order.program);
    made.pages = numbered(flow.pages(), language)?;
    Ok(made)
}

/// The whole order in a line.
fn totals<'a>(order: &OrderPapers<'a>) -> Vec<(&'a str, String)> {
    let texts = order.language.order();
    let sum = |of: &dyn Fn(&OrderedCushion<'_>) -> u32| order.cushions.iter().map(of).sum::<u32>();
    let (cells, spares) = (sum(&|own| own.cells), sum(&|own| own.spares));
    vec![
        (texts.order, order.name.to_owned()),
        (texts.cushions, order.cushions.len().to_string()),
        (texts.to_fill, cells.to_string()),
        (texts.spare, spares.to_string()),
        (texts.in_all, (cells + spares).to_string()),
        (texts.printed, order.date.to_string()),
    ]
}

/// A table whose look all of them share.
fn table(columns: Vec<Column>) -> Table {
    dense_table(columns, 0.9)
}

/// Items that belong together, in the order in which the first of each is met.
fn grouped<T>(items: impl IntoIterator<Item = T>, alike: impl Fn(&T, &T) -> bool) -> Vec<Vec<T>> {
    let mut groups: Vec<Vec<T>> = Vec::new();
    for item in items {
        match groups.iter_mut().find(|own| alike(&own[0], &item)) {
            Some(group) => group.push(item),
            None => groups.push(vec![item]),
        }
    }
    groups
}

/// How many cells of each kind.
fn to_fetch(order: &OrderPapers<'_>, wide: f64) -> Table {
    /// Widths of columns of numbers, in millimetres.
    const NUMBER: f64 = 26.0;
    const LITRES: f64 = 38.0;
    let (language, texts) = (order.language, order.language.order());
    let number = |head: &str| Column::new(head, NUMBER, Align::Right);
    let mut table = table(vec![
        Column::new(texts.cell, wide - 3.0 * NUMBER - LITRES, Align::Left),
        number(texts.to_fill),
        number(texts.spare),
        number(texts.in_all).with(text(11.5, Weight::Bold, INK)),
        Column::new(texts.about_litres, LITRES, Align::Right),
    ]);
    for own in grouped(order.cushions, |one, other| one.cell() == other.cell()) {
        let cell = own[0].cell();
        let (cells, spares) = (own.iter().map(|it| it.cells), own.iter().map(|it| it.spares));
        let (cells, spares) = (cells.sum::<u32>(), spares.sum::<u32>());
        table.row([
            format!("{} ({})", cell.title, cell.name),
            cells.to_string(),
            spares.to_string(),
            (cells + spares).to_string(),
            language.decimal(poured(cell, cells + spares), 0),
        ]);
    }
    table
}

/// Litres that so many cells take when poured into a large vessel, where walls hardly matter.
fn poured(cell: &Cell, cells: u32) -> f64 {
    f64::from(cells) * cell.inflated.to_litres() / cell.packing.bulk
}

/// A line for each layout, size and cell.
fn by_size_and_cell(order: &OrderPapers<'_>, wide: f64) -> Table {
    const SIZE: f64 = 20.0;
    const NUMBER: f64 = 18.0;
    const CARDS: f64 = 34.0;
    let (language, texts) = (order.language, order.language.order());
    let number = |head: &str| Column::new(head, NUMBER, Align::Right);
    let names = (wide - SIZE - 4.0 * NUMBER - CARDS) / 2.0;
    let mut table = table(vec![
        Column::new(texts.layout, names, Align::Left),
        Column::new(texts.size, SIZE, Align::Left),
        Column::new(texts.cell, names, Align::Left),
        number(texts.cushions),
        number(texts.each),
        number(texts.to_fill),
        number(texts.spare),
        Column::new(texts.cards, CARDS, Align::Left),
    ]);
    let alike = |one: &(usize, &OrderedCushion<'_>), other: &(usize, &OrderedCushion<'_>)| {
        let (one, other) = (one.1, other.1);
        one.pattern() == other.pattern() && one.cell() == other.cell()
    };
    for own in grouped(order.cushions.iter().enumerate(), alike) {
        let first = own[0].1;
        let same = own.iter().all(|(_, it)| it.cells == first.cells && it.word == first.word);
        let sum = |of: &dyn Fn(&OrderedCushion<'_>) -> u32| own.iter().map(|(_, it)| of(it)).sum();
        let (cells, spares): (u32, u32) = (sum(&|it| it.cells), sum(&|it| it.spares));
        table.row([
            first.layout(language),
            first.pattern().size().to_string(),
            first.cell().name.to_string(),
            own.len().to_string(),
            if same { first.cells.to_string() } else { texts.by_card.to_owned() },
            cells.to_string(),
            spares.to_string(),
            runs(own.iter().map(|(at, _)| at + 1)),
        ]);
    }
    table
}

/// Numbers that rise, runs of them in short: `1–12, 14`.
fn runs(numbers: impl Iterator<Item = usize>) -> String {
    let mut runs: Vec<[usize; 2]> = Vec::new();
    for number in numbers {
        match runs.last_mut() {
            Some([_, last]) if *last + 1 == number => *last = number,
            _ => runs.push([number, number]),
        }
    }
    let said = runs.iter().map(|[from, to]| match to - from {
        0 => from.to_string(),
        _ => format!("{from}–{to}"),
    });
    said.collect::<Vec<_>>().join(", ")
}

/// A row for each cushion, with a box to tick.
fn each_cushion(flow: &mut Flow<'_>, order: &OrderPapers<'_>) -> Result<(), SetError> {
    let (language, texts) = (order.language, order.language.order());
    let widths = [11.5, 28.0, 0.0, 17.0, 14.0, 14.5, 16.0, 31.0, 12.5];
    let rest = flow.width() - widths.iter().sum::<f64>();
    let strong = text(11.5, Weight::Bold, INK);
    let mut table = table(vec![
        Column::new(texts.card, widths[0], Align::Right),
        Column::new(texts.serial, widths[1], Align::Left).with(STRONG),
        Column::new(texts.layout_and_size, rest, Align::Left),
        Column::new(texts.whose, widths[3], Align::Left),
        Column::new(texts.check_word, widths[4], Align::Left).with(STRONG),
        Column::new(texts.to_fill, widths[5], Align::Right).with(strong),
        Column::new(texts.spare, widths[6], Align::Right),
        Column::new(texts.mass, widths[7], Align::Left),
        Column::new(texts.done, widths[8], Align::Centre),
    ]);
    table.least_row = 6.8;
    for (at, own) in order.cushions.iter().enumerate() {
        let whose = match own.fill {
            ToFill::Stock(_) => texts.stock.to_owned(),
            ToFill::Client(papers) => papers.client.code.to_string(),
        };
        table.row([
            (at + 1).to_string(),
            own.serial.unwrap_or_default().to_owned(),
            format!("{} {}", own.layout(language), own.pattern().size()),
            whose,
            own.word.to_owned(),
            own.cells.to_string(),
            own.spares.to_string(),
            language.grams_with_range(&own.finished),
            String::new(),
        ]);
    }
    flow.headed_table(texts.card_by_card, &HEADING, &table, |frame, rows, _| {
        let middle = frame.area().x1 - widths[8] / 2.0;
        let pen = Pen::solid(0.4, INK);
        let block = frame.page().block(Role::Artifact);
        for row in rows.iter().skip(1) {
            let side = 3.6;
            let corner = Point::new(middle - side / 2.0, row.center().y - side / 2.0);
            block.check_box(corner, side, &pen);
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_of_numbers_are_told_in_short() {
        assert_eq!(runs([1, 2, 3, 5, 7, 8].into_iter()), "1–3, 5, 7–8");
        assert_eq!(runs([4].into_iter()), "4");
    }
}
