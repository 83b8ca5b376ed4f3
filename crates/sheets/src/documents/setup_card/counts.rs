//! The counts of the setup card: left and right side by side where each compartment has a partner,
//! so that a difference is seen and no rows are taken for each other; else row by row.

use cushion::{CompartmentIx, Pattern, Side};
use kurbo::Rect;

use super::super::ClientPapers;
use super::super::look::{FIRM, INK, LESSER_HEADING, text};
use super::table_with;
use crate::flow::Flow;
use crate::font::Weight;
use crate::frame::Frame;
use crate::page::{Align, Role};
use crate::table::Table;
use crate::text::{SetError, Style};

/// Widths of one side's columns, in millimetres: number, stock, change, set to, counted.
const OF_SIDE: [f64; 5] = [10.0, 12.0, 14.0, 15.0, 17.0];

/// How the counts look that are to be set.
const PLANNED: Style = text(11.5, Weight::Bold, INK);

/// Sets the counts, with room to write what was counted; rows are at least so high, in millimetres.
pub(super) fn counts(
    flow: &mut Flow<'_>,
    papers: &ClientPapers<'_>,
    least_row: f64,
) -> Result<(), SetError> {
    match pairs(papers.pattern) {
        Some(pairs) => by_pairs(flow, papers, &pairs, least_row),
        None => row_by_row(flow, papers, least_row),
    }
}

/// Left and right compartments that are each other's partners; none where one has no partner.
fn pairs(pattern: &Pattern) -> Option<Vec<[CompartmentIx; 2]>> {
    let of_side = |side| pattern.indices().filter(move |ix| pattern[*ix].side == Some(side));
    let is_partner = |left: CompartmentIx, right: &CompartmentIx| {
        pattern[*right].has_partner && pattern[left].words == pattern[*right].words
    };
    let pair = |left: CompartmentIx| {
        let mut partners = of_side(Side::Right).filter(|right| is_partner(left, right));
        partners.next().filter(|_| partners.next().is_none()).map(|right| [left, right])
    };
    let all = of_side(Side::Left).map(pair).collect::<Option<Vec<_>>>()?;
    let mut met: Vec<CompartmentIx> = all.iter().flatten().copied().collect();
    met.sort_unstable();
    met.dedup();
    (met.len() == pattern.compartments().len()).then_some(all)
}

fn by_pairs(
    flow: &mut Flow<'_>,
    papers: &ClientPapers<'_>,
    pairs: &[[CompartmentIx; 2]],
    least_row: f64,
) -> Result<(), SetError> {
    let (language, texts) = (papers.language, papers.language.setup_card());
    let shared = language.shared();
    let side: f64 = OF_SIDE.iter().sum();
    let middle = flow.width() - 2.0 * side;
    let sides = table_with(
        &[
            shared.clients_left,
            &language.all_cells(papers.plan.total(), papers.spares()),
            shared.clients_right,
        ],
        &[side, middle, side],
        0,
    );
    let [number, place, stock, change, planned, counted] = texts.count_columns;
    let heads = [number, stock, change, planned, counted];
    let heads = [&heads[..], &[place], &heads[..]].concat();
    let widths = [&OF_SIDE[..], &[middle], &OF_SIDE[..]].concat();
    let mut table = table_with(&heads, &widths, 0);
    for at in [0, OF_SIDE.len() + 1] {
        table.columns[at] = table.columns[at].clone().of_compartments();
    }
    for at in [3, OF_SIDE.len() + 4] {
        table.columns[at] = table.columns[at].clone().with(PLANNED);
    }
    table.least_row = least_row;
    table.named_rows = false;
    for [left, right] in pairs {
        let row = [
            half(papers, *left),
            vec![language.place_of(&papers.pattern[*left].words).to_owned()],
            half(papers, *right),
        ];
        table.row(row.concat());
    }
    table.of_clients_left = (0..pairs.len()).collect();
    let of = |at: usize| pairs.iter().map(|pair| pair[at]).collect::<Vec<_>>();
    let totals = [sums(papers, &of(0)), vec![shared.total.to_owned()], sums(papers, &of(1))];
    table.row(totals.concat());
    let height = LESSER_HEADING.line_height() + sides.height()? + table.height()?;
    flow.need(height)?;
    flow.put(|frame| frame.heading(3, texts.counts, &LESSER_HEADING))?;
    flow.put(|frame| frame.table(&sides).map(drop))?;
    flow.headed_table("", &LESSER_HEADING, &table, |frame, rows, _| {
        emphasise(frame, rows, &widths, 3);
        emphasise(frame, rows, &widths, OF_SIDE.len() + 4);
    })
}

/// What stands in one side's columns of a compartment's row.
fn half(papers: &ClientPapers<'_>, ix: CompartmentIx) -> Vec<String> {
    let count = &papers.plan.counts[ix.index()];
    let mut cells = vec![count.number.to_string()];
    cells.extend(sums(papers, &[ix]).into_iter().skip(1));
    cells
}

/// The sums over compartments in the columns of a side, without a number.
fn sums(papers: &ClientPapers<'_>, all: &[CompartmentIx]) -> Vec<String> {
    let counts = || all.iter().map(|ix| &papers.plan.counts[ix.index()]);
    let stock: u32 = counts().map(|own| own.stock).sum();
    let planned: u32 = counts().map(|own| own.planned).sum();
    let change = i64::from(planned) - i64::from(stock);
    let language = papers.language;
    vec![
        String::new(),
        stock.to_string(),
        language.change(change),
        planned.to_string(),
        String::new(),
    ]
}

fn row_by_row(
    flow: &mut Flow<'_>,
    papers: &ClientPapers<'_>,
    least_row: f64,
) -> Result<(), SetError> {
    let [number, stock, change, planned, counted] = OF_SIDE;
    let counted = counted + 10.0;
    let place = flow.width() - (number + stock + change + planned + counted);
    let widths = [number, place, stock, change, planned, counted];
    let (language, texts) = (papers.language, papers.language.setup_card());
    let mut table: Table = table_with(&texts.count_columns, &widths, 2);
    table.columns[0] = table.columns[0].clone().of_compartments();
    table.columns[1].align = Align::Left;
    table.columns[4] = table.columns[4].clone().with(PLANNED);
    table.least_row = least_row;
    let place = |ix: CompartmentIx| language.compartment(&papers.pattern[ix]);
    let with = |[number, stock, change, planned, counted]: [String; 5], place| {
        [number, place, stock, change, planned, counted]
    };
    let columns = |cells: Vec<String>| <[String; 5]>::try_from(cells).unwrap_or_default();
    for ix in papers.pattern.indices() {
        table.row(with(columns(half(papers, ix)), place(ix)));
        if papers.pattern[ix].side == Some(Side::Left) {
            table.of_clients_left.push(table.rows.len() - 1);
        }
    }
    let all: Vec<CompartmentIx> = papers.pattern.indices().collect();
    let total = language.all_cells(papers.plan.total(), papers.spares());
    table.row(with(columns(sums(papers, &all)), total));
    flow.headed_table(texts.counts, &LESSER_HEADING, &table, |frame, rows, _| {
        emphasise(frame, rows, &widths, 4);
    })
}

/// A firm frame around one column, that of the planned counts.
fn emphasise(frame: &mut Frame<'_>, rows: &[Rect], widths: &[f64], column: usize) {
    let (Some(first), Some(last)) = (rows.first(), rows.last()) else { return };
    let left = first.x0 + widths[..column].iter().sum::<f64>();
    let around = Rect::new(left, first.y0, left + widths[column], last.y1);
    frame.page().block(Role::Artifact).rect(around, None, Some(FIRM));
}
