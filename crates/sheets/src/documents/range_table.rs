//! The range table: a layout at every size that it is made in, for those who make and fill it.

use case::{Date, Digest};
use cushion::{Cell, CompartmentIx, CountColumn, Jump, Layout, Name, RangeRow};
use kurbo::Rect;
use words::Language;

use super::look::{
    BODY, HEADING, SMALL, STRONG, columns, dense_table, facts, foot, inside, numbered, title_line,
};
use super::views::{View, draw_named, height_of};
use super::{DocumentError, document};
use crate::flow::Flow;
use crate::frame::Frame;
use crate::page::{Align, Document, Page, Role};
use crate::paper::Paper;
use crate::table::{Column, Table};
use crate::text::SetError;

/// What a range table is made from.
#[derive(Clone, Copy)]
pub struct RangeTable<'a> {
    /// In which language it is.
    pub language: &'a dyn Language,
    /// The layout.
    pub layout: &'a Layout,
    /// By which its text is known again.
    pub digest: &'a Digest,
    /// What is counted.
    pub cell: &'a Cell,
    /// The sizes, at least one.
    pub rows: &'a [RangeRow],
    /// Counts that do not go with their neighbours.
    pub jumps: &'a [Jump],
    /// The day that the page bears.
    pub date: Date,
    /// Program and version.
    pub program: &'a str,
}

/// Widths of columns, in millimetres.
const SIZE: f64 = 19.0;
const RATED: f64 = 15.0;
const COUNTS: f64 = 24.0;
const TOTAL: f64 = 27.0;
const NUMBER: f64 = 17.0;

/// Composes the range table.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn range_table(own: &RangeTable<'_>, paper: Paper) -> Result<Document, DocumentError> {
    let language = own.language;
    let texts = language.range_table();
    let last = format!("{}, {}.", own.program, own.date);
    let known = language.layout_digest(own.layout.revision, own.digest);
    let begin = |_| {
        let mut page = Page::new(language, paper, texts.title);
        let lines = [texts.limits, texts.clinician_decides, &format!("{known} {last}")];
        let end = foot(&mut page, &lines)?;
        let mut frame = Frame::new(&mut page, Rect { y1: end - 2.0, ..inside_of(paper, language) });
        title_line(&mut frame, texts.title, texts.estimate, true)?;
        facts(&mut frame, &named(own))?;
        let left = Rect { y0: frame.y(), ..frame.area() };
        Ok((page, left))
    };
    let mut flow = Flow::new(&begin)?;
    flow.put(|frame| whose_numbers(frame, own))?;
    flow.space(3.0);
    let counted = cushion::columns_of_counts(own.rows);
    let most = ((flow.width() - SIZE - RATED - TOTAL) / COUNTS).floor().max(1.0) as usize;
    let parts = counted.len().div_ceil(most);
    for (at, some) in counted.chunks(most).enumerate() {
        let heading = if at == 0 { texts.counts } else { "" };
        let table = counts(own, some, at + 1 == parts);
        flow.headed_table(heading, &HEADING, &table, |_, _, _| ())?;
        flow.space(3.0);
    }
    flow.paragraph(texts.legend, &BODY)?;
    jumps(&mut flow, own)?;
    flow.space(3.0);
    let seams = names_of_seams(own.rows);
    let most = ((flow.width() - SIZE - 3.0 * NUMBER) / NUMBER).floor().max(1.0) as usize;
    for (at, some) in seams.chunks(most).enumerate() {
        let heading = if at == 0 { texts.seams } else { "" };
        flow.headed_table(heading, &HEADING, &lengths(own, some), |_, _, _| ())?;
        flow.space(3.0);
    }
    let mut made = document(language, texts.title, texts.subject, own.date, own.program);
    made.pages = numbered(flow.pages(), language)?;
    Ok(made)
}

/// The area inside the margins of a paper.
fn inside_of(paper: Paper, language: &dyn Language) -> Rect {
    inside(&Page::new(language, paper, ""))
}

fn named<'a>(own: &RangeTable<'a>) -> Vec<(&'a str, String)> {
    let texts = own.language.range_table();
    let revision = own.layout.revision.map_or(texts.no_revision.to_owned(), |it| it.to_string());
    vec![
        (texts.layout, own.layout.name.to_string()),
        (texts.revision, revision),
        (texts.digest, own.digest.as_str().to_owned()),
        (texts.cell, own.cell.name.to_string()),
        (texts.sizes, own.rows.len().to_string()),
        (texts.printed, own.date.to_string()),
    ]
}

/// A small drawing with the numbers, and what the layout is for beside it.
fn whose_numbers(frame: &mut Frame<'_>, own: &RangeTable<'_>) -> Result<(), SetError> {
    let middle = &own.rows[own.rows.len() / 2].pattern;
    let wide = columns(frame.area(), 0, 4).width();
    let place = frame.take(height_of(middle, wide), own.language.range_table().from_above)?;
    let (drawn, beside) = (columns(place, 0, 4), columns(place, 4, 12));
    let alt = own.language.numbers_from_above(middle.compartments().len());
    let numbers = |ix: CompartmentIx| (middle[ix].number.to_string(), None);
    let shared = own.language.shared();
    let page = frame.page();
    let block = page.block(Role::Figure { alt });
    draw_named(block, shared, middle, View::Above, drawn, numbers, 11.5)?;
    let mut text = Frame::new(page, beside);
    let said = |text| own.language.text_of_layout(text);
    text.paragraph(said(&own.layout.title), &STRONG)?;
    text.space(1.0);
    text.paragraph(said(&own.layout.about), &BODY)?;
    text.space(1.0);
    text.paragraph(said(&own.layout.rating_from), &SMALL)
}

/// A table whose look all of them share.
fn table(columns: Vec<Column>) -> Table {
    dense_table(columns, 0.7)
}

/// Some of the compartments; the last of such tables has the whole cushion too.
fn counts(own: &RangeTable<'_>, some: &[CountColumn], is_last: bool) -> Table {
    let (language, texts) = (own.language, own.language.range_table());
    let mut columns = vec![
        Column::new(texts.size, SIZE, Align::Left),
        Column::new(texts.rated, RATED, Align::Right),
    ];
    columns.extend(some.iter().map(|it| Column::new(it.name(), COUNTS, Align::Centre)));
    columns.extend(is_last.then(|| Column::new(texts.in_all, TOTAL, Align::Centre)));
    let mut table = table(columns);
    for (at, row) in own.rows.iter().enumerate() {
        let mut cells =
            vec![row.made.size.to_string(), format!("{:.0}", row.made.max_user_weight.to_kg())];
        cells.extend(some.iter().map(|column| {
            let jumping = |jump: &Jump| jump.row == at && column.numbers.contains(&jump.number);
            let jumps = own.jumps.iter().any(jumping);
            let there = row.pattern.by_number(column.numbers[0]).map(|ix| row.fill[ix].cells);
            let said = |it: cushion::CountRange| {
                language.cells_with_range(it.low, it.stock, it.high, jumps)
            };
            there.map_or_else(String::new, said)
        }));
        let [low, stock, high] = row.totals();
        cells.extend(is_last.then(|| language.cells_with_range(low, stock, high, false)));
        table.row(cells);
    }
    table
}

/// The jumps, each a sentence.
fn jumps(flow: &mut Flow<'_>, own: &RangeTable<'_>) -> Result<(), SetError> {
    let language = own.language;
    if own.jumps.is_empty() {
        return flow.paragraph(language.no_jumps(), &BODY);
    }
    flow.space(2.0);
    flow.put(|frame| frame.heading(2, language.range_table().jumps, &HEADING))?;
    for jump in own.jumps {
        let size = |row: usize| own.rows[row].made.size;
        let said = language.jump(jump, size(jump.from), size(jump.row));
        flow.item("!", 4.0, &said, &BODY)?;
    }
    Ok(())
}

/// The seams that any size has, in the order of the layout.
fn names_of_seams(rows: &[RangeRow]) -> Vec<Name> {
    let mut names: Vec<Name> = Vec::new();
    for (name, _) in rows.iter().flat_map(|row| row.pattern.seam_lengths()) {
        if !names.contains(&name) {
            names.push(name);
        }
    }
    names
}

fn lengths(own: &RangeTable<'_>, some: &[Name]) -> Table {
    let texts = own.language.range_table();
    let mut columns = vec![Column::new(texts.size, SIZE, Align::Left)];
    let heads = some.iter().map(Name::to_string).chain([texts.all_seams.to_owned()]);
    columns.extend(heads.map(|head| Column::new(head, NUMBER, Align::Right)));
    columns.push(Column::new(texts.litres, NUMBER, Align::Right));
    columns.push(Column::new(texts.cells_g, NUMBER, Align::Right));
    let mut table = table(columns);
    for row in own.rows {
        let seams = row.pattern.seam_lengths();
        let mut cells = vec![row.made.size.to_string()];
        cells.extend(some.iter().map(|name| {
            let found = seams.iter().find(|(own, _)| own == name);
            found.map_or_else(String::new, |(_, length)| format!("{:.0}", length.to_mm()))
        }));
        cells.push(format!("{:.0}", row.seams().to_mm()));
        cells.push(own.language.decimal(row.volume().to_litres(), 1));
        cells.push(format!("{:.0}", row.cells_mass(own.cell.film).to_g()));
        table.row(cells);
    }
    table
}
