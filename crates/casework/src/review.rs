//! A review of a layout over its sizes and over bodies from a table.

use case::{
    Client, Date, Drawn, ReviewFinding, ReviewedCompartment, ReviewedSize, SurveyedBody,
    review_findings,
};
use cushion::{Cell, Layout, Length, RangeRow, greatest_width, jumps};
use fitting::{PreparedCushion, Spacings};
use sheets::{Document, ReviewPage};

use crate::PROGRAM;
use crate::edition::Edition;
use crate::error::WorkError;
use crate::made_range::made_range;
use crate::not_drawn::not_drawn;
use crate::side_by_side::side_by_side;
use crate::sourced::Sourced;
use crate::stock::no_stock;
use crate::survey::anybody;

/// A layout that was reviewed.
#[derive(Clone, Debug)]
pub struct Reviewed {
    /// The sizes, in the order of the layout.
    pub sizes: Vec<ReviewedSize>,
    /// Each with its pattern and stock fill.
    pub rows: Vec<RangeRow>,
    /// What is found, the worst first.
    pub findings: Vec<ReviewFinding>,
    /// Bodies of the table.
    pub bodies: usize,
    /// Of those the ones that a size suits.
    pub suited: usize,
}

/// Reviews a layout at every made size, on all cores; `told` is called as each size is done.
///
/// # Errors
///
/// Fails where a size cannot be made or filled.
pub fn review(
    layout: &mut Sourced<Layout>,
    cell: &Cell,
    bodies: &[SurveyedBody],
    on: Date,
    told: &(dyn Fn() + Sync),
) -> Result<Reviewed, WorkError> {
    let rows = made_range(layout, cell, &|| ())?;
    let like = anybody(layout)?;
    let sizes = &layout.value.sizes;
    let chosen: Vec<_> = bodies.iter().map(|body| fitting::size_for(body, sizes)).collect();
    let one = |row: &RangeRow| {
        let suited = bodies.iter().zip(&chosen).filter(|(_, own)| **own == Some(row.made.size));
        let suited: Vec<&SurveyedBody> = suited.map(|(body, _)| body).collect();
        let made = reviewed_size((layout, row), cell, &suited, (&like, on));
        told();
        made
    };
    let made = side_by_side(&rows, one);
    let sizes = made.into_iter().collect::<Result<Vec<ReviewedSize>, WorkError>>()?;
    let jumps: Vec<_> = jumps(&rows)
        .into_iter()
        .map(|jump| {
            let (from, to) = (rows[jump.from].made.size, rows[jump.row].made.size);
            (jump, from, to)
        })
        .collect();
    let findings = review_findings(&sizes, &jumps);
    let suited = chosen.iter().flatten().count();
    Ok(Reviewed { sizes, rows, findings, bodies: bodies.len(), suited })
}

/// One size with the bodies that it suits.
fn reviewed_size(
    (layout, row): (&Sourced<Layout>, &RangeRow),
    cell: &Cell,
    suited: &[&SurveyedBody],
    (like, on): (&Client, Date),
) -> Result<ReviewedSize, WorkError> {
    let RangeRow { made, pattern, fill } = row;
    let cushion = PreparedCushion::new(pattern, cell, Spacings::of_many_bodies())
        .map_err(|error| no_stock(layout, pattern, error))?;
    let ranked = fitting::ranked_bodies(suited);
    let seats = ranked.iter().map(|own| fitting::reviewed_seat(&cushion, *own, like, on));
    let seats = seats.collect();
    let middle = ranked.get(1).map(|own| own.1);
    let effects = match middle {
        Some(body) => {
            let client = fitting::client_of_body(body, made.size, like, on);
            let counts = fitting::stock_counts(&cushion);
            fitting::cells_do((&cushion, &counts), &client, body.weight)
        }
        None => vec![None; fill.compartments.len()],
    };
    let options = templates::Options { allowance: Length::from_mm(10.0), eased: true };
    let openings = templates::Template::new(pattern, fill, options).openings;
    let opening = |number: u8| {
        let own = openings.iter().find(|own| own.number == number);
        own.map_or(Length::ZERO, |own| own.length)
    };
    let compartments = pattern.indices().zip(effects).map(|(ix, effect)| {
        let (own, cells) = (&pattern[ix], fill[ix].cells);
        ReviewedCompartment {
            id: own.id.clone(),
            number: own.number,
            purpose: own.purpose,
            cells: [cells.low, cells.stock, cells.high],
            width: greatest_width(pattern, ix),
            opening: opening(own.number),
            effect,
        }
    });
    Ok(ReviewedSize {
        size: made.size,
        rated: made.max_user_weight,
        code: fitting::code_group(pattern.class(), true, made.size.width()).code,
        bodies: suited.len(),
        bones: fitting::bones_and_seams(pattern, women(suited)),
        compartments: compartments.collect(),
        seats,
    })
}

/// The share of women among bodies; those of whom the table does not say are half of each.
fn women(bodies: &[&SurveyedBody]) -> f64 {
    let share = |body: &&SurveyedBody| match body.sex.chars().next() {
        Some('F' | 'f' | 'W' | 'w') => 1.0,
        Some('M' | 'm') => 0.0,
        _ => 0.5,
    };
    if bodies.is_empty() {
        return 0.5;
    }
    bodies.iter().map(share).sum::<f64>() / bodies.len() as f64
}

/// Composes the page of a review.
///
/// # Errors
///
/// Fails where something finds no room.
pub fn review_page(
    layout: &Sourced<Layout>,
    cell: &Cell,
    reviewed: &Reviewed,
    edition: Edition,
) -> Result<Document, WorkError> {
    let Edition { language, on, paper, .. } = edition;
    let digest = layout.digest();
    let own = ReviewPage {
        language,
        layout: &layout.value,
        digest: &digest,
        cell,
        sizes: &reviewed.sizes,
        rows: &reviewed.rows,
        findings: &reviewed.findings,
        bodies: (reviewed.suited, reviewed.bodies),
        date: on,
        program: PROGRAM,
    };
    let what = Drawn::Paper { name: "review".to_owned(), of: layout.file.shown() };
    sheets::review_page(&own, paper).map_err(|error| not_drawn(what, error))
}
