//! The report on an order: what each line needs, and all together.

use case::{Finding, Spread};
use cushion::{Length, Mass};
use schemars::JsonSchema;
use serde::Serialize;

use super::finding::{FindingBody, Say};
use super::parts::MassBody;
use super::{json, rounded};

/// What is reported of an order.
pub struct OrderReport<'a> {
    /// What it is called.
    pub order: &'a str,
    /// Its lines.
    pub lines: Vec<LineOfOrder<'a>>,
    /// The paths that were written.
    pub written: &'a [String],
}

/// What is reported of a line.
pub struct LineOfOrder<'a> {
    /// The line of the text, from 1.
    pub line: usize,
    /// The client's code; none as supplied.
    pub client: Option<&'a str>,
    /// The layout.
    pub layout: &'a str,
    /// Its revision, where its author counts them.
    pub revision: Option<u32>,
    /// The digest of its text.
    pub layout_digest: &'a str,
    /// Width x depth in mm.
    pub size: String,
    /// The cell.
    pub cell: &'a str,
    /// The digest of its text.
    pub cell_digest: &'a str,
    /// Litres that one of its cells takes when poured.
    pub poured_litres: f64,
    /// The check word of the counts.
    pub word: &'a str,
    /// How many cushions.
    pub quantity: u32,
    /// Their serials, one for each, or none.
    pub serials: &'a [String],
    /// The first and the last of their cards.
    pub cards: [usize; 2],
    /// Spare cells with each.
    pub spares: u32,
    /// What each weighs when finished.
    pub finished: Spread<Mass>,
    /// What goes into each.
    pub compartments: Vec<CompartmentOfOrder<'a>>,
    /// By which a person knows which line it is.
    pub known_by: String,
    /// What is to be known before it is filled.
    pub findings: &'a [Finding],
}

/// What is reported of a compartment.
pub struct CompartmentOfOrder<'a> {
    /// The id.
    pub id: &'a str,
    /// The number sewn at its opening.
    pub number: u8,
    /// Cells to fill.
    pub cells: u32,
    /// How many the count may be off.
    pub plus_minus: u32,
    /// How high it stands after patting; none where that is not known.
    pub height: Option<Spread<Length>>,
}

/// Cells of one kind, of the whole order.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CellsOfOrder<'a> {
    /// The cell.
    cell: &'a str,
    cell_digest: &'a str,
    /// To fill into all cushions.
    pub cells: u32,
    /// To go with them.
    pub spares: u32,
    /// Both.
    in_all: u32,
    /// Roughly, poured into a large vessel: to choose one, never to count by.
    poured_litres: f64,
}

impl LineOfOrder<'_> {
    /// Cells in one cushion.
    #[must_use]
    pub fn cells(&self) -> u32 {
        self.compartments.iter().map(|own| own.cells).sum()
    }
}

impl OrderReport<'_> {
    /// How many cushions.
    #[must_use]
    pub fn cushions(&self) -> usize {
        self.lines.iter().map(|own| own.quantity as usize).sum()
    }

    /// Cells of each kind, in the order of the lines.
    #[must_use]
    pub fn cells(&self) -> Vec<CellsOfOrder<'_>> {
        let mut all: Vec<CellsOfOrder<'_>> = Vec::new();
        for line in &self.lines {
            let (cells, spares) = (line.quantity * line.cells(), line.quantity * line.spares);
            let litres = f64::from(cells + spares) * line.poured_litres;
            let known = |own: &&mut CellsOfOrder<'_>| {
                (own.cell, own.cell_digest) == (line.cell, line.cell_digest)
            };
            match all.iter_mut().find(known) {
                Some(own) => {
                    own.cells += cells;
                    own.spares += spares;
                    own.in_all += cells + spares;
                    own.poured_litres += litres;
                }
                None => all.push(CellsOfOrder {
                    cell: line.cell,
                    cell_digest: line.cell_digest,
                    cells,
                    spares,
                    in_all: cells + spares,
                    poured_litres: litres,
                }),
            }
        }
        all.iter_mut().for_each(|own| own.poured_litres = rounded(own.poured_litres));
        all
    }
}

/// An order: its lines, and what they need in all.
#[derive(Serialize, JsonSchema)]
pub(super) struct OrderBody<'a> {
    order: &'a str,
    cushions: usize,
    /// Cells of each kind.
    cells: Vec<CellsOfOrder<'a>>,
    lines: Vec<LineBody<'a>>,
    /// The paths that were written.
    written: &'a [String],
}

/// One line.
#[derive(Serialize, JsonSchema)]
struct LineBody<'a> {
    /// The line of the order's text, from 1.
    line: usize,
    /// The client's code; null as supplied.
    client: Option<&'a str>,
    layout: &'a str,
    revision: Option<u32>,
    layout_digest: &'a str,
    /// Width x depth in mm.
    size_mm: &'a str,
    cell: &'a str,
    cell_digest: &'a str,
    /// By which the counts are known again, on the card and on the pick list.
    check_word: &'a str,
    cushions: u32,
    /// One for each cushion, or none.
    serials: &'a [String],
    first_card: usize,
    last_card: usize,
    /// Cells in one cushion.
    cells_each: u32,
    /// Spare cells that go with one.
    spares_each: u32,
    /// One finished cushion, without spare cells, labels and an outer cover.
    finished: MassBody,
    compartments: Vec<CompartmentBody<'a>>,
}

/// One compartment.
#[derive(Serialize, JsonSchema)]
struct CompartmentBody<'a> {
    id: &'a str,
    number: u8,
    cells: u32,
    /// How many cells the count may be off.
    plus_minus_cells: u32,
    /// How high it is expected to stand after patting; null where that is not known.
    height: Option<HeightBody>,
}

/// A height with its range.
#[derive(Serialize, JsonSchema)]
struct HeightBody {
    mm: f64,
    low_mm: f64,
    high_mm: f64,
}

/// Returns the report on an order.
#[must_use]
pub fn order(program: &str, own: &OrderReport<'_>, say: Say<'_>) -> String {
    let mut warnings: Vec<FindingBody> = Vec::new();
    for line in &own.lines {
        // Whose it is stands before it, as there are many.
        let said = |finding: &Finding| format!("{}: {}", line.known_by, say(finding));
        warnings.extend(FindingBody::all(line.findings, &said));
    }
    let body = OrderBody {
        order: own.order,
        cushions: own.cushions(),
        cells: own.cells(),
        lines: own.lines.iter().map(line).collect(),
        written: own.written,
    };
    json("order", program, warnings, body)
}

fn line<'a>(own: &'a LineOfOrder<'a>) -> LineBody<'a> {
    LineBody {
        line: own.line,
        client: own.client,
        layout: own.layout,
        revision: own.revision,
        layout_digest: own.layout_digest,
        size_mm: &own.size,
        cell: own.cell,
        cell_digest: own.cell_digest,
        check_word: own.word,
        cushions: own.quantity,
        serials: own.serials,
        first_card: own.cards[0],
        last_card: own.cards[1],
        cells_each: own.cells(),
        spares_each: own.spares,
        finished: own.finished.into(),
        compartments: own.compartments.iter().map(compartment).collect(),
    }
}

fn compartment<'a>(own: &CompartmentOfOrder<'a>) -> CompartmentBody<'a> {
    let height = |own: Spread<Length>| HeightBody {
        mm: rounded(own.central.to_mm()),
        low_mm: rounded(own.low.to_mm()),
        high_mm: rounded(own.high.to_mm()),
    };
    CompartmentBody {
        id: own.id,
        number: own.number,
        cells: own.cells,
        plus_minus_cells: own.plus_minus,
        height: own.height.map(height),
    }
}
