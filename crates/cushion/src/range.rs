//! A range: a layout at every size that it is made in, each with its stock fill.

use crate::{Length, MadeSize, Mass, Name, Pattern, StockFill, Volume};

/// By how much a count may differ from the one that grows with the cushion, as a share of it.
///
/// Steps between made sizes change the area of a compartment by 10 to 20 %, and its count by some
/// more than that; a quarter beyond it is a slip in the layout, or a seam that is kept at a fixed
/// place. Common practice, no source.
const JUMP: f64 = 0.25;
/// Fewer cells than this are no jump, whatever share they are.
const FEW: f64 = 4.0;

/// One made size of a layout.
#[derive(Clone, Debug, PartialEq)]
pub struct RangeRow {
    /// The size, with what it is rated for.
    pub made: MadeSize,
    /// The layout at that size.
    pub pattern: Pattern,
    /// How it is filled as supplied.
    pub fill: StockFill,
}

impl RangeRow {
    /// Cells in the whole cushion: where all are at their low end, as supplied, at their high end.
    #[must_use]
    pub fn totals(&self) -> [u32; 3] {
        self.fill.compartments.iter().fold([0; 3], |[low, stock, high], own| {
            [low + own.cells.low, stock + own.cells.stock, high + own.cells.high]
        })
    }

    /// Space under the top sheet, of all compartments.
    #[must_use]
    pub fn volume(&self) -> Volume {
        self.fill.compartments.iter().map(|own| own.volume).sum()
    }

    /// Mass of all cells as supplied, each of so much film.
    #[must_use]
    pub fn cells_mass(&self, film: Mass) -> Mass {
        film * f64::from(self.fill.total())
    }

    /// Length of all seams, the outer one included.
    #[must_use]
    pub fn seams(&self) -> Length {
        self.pattern.seam_lengths().into_iter().map(|(_, length)| length).sum()
    }
}

/// A count that does not go with its neighbours.
#[derive(Clone, Debug, PartialEq)]
pub struct Jump {
    /// The row at which it is found.
    pub row: usize,
    /// The row next smaller, with which it was compared.
    pub from: usize,
    /// The number of the compartment.
    pub number: u8,
    /// What it is called.
    pub id: Name,
    /// Cells in the smaller size.
    pub was: u32,
    /// Cells in this size.
    pub is: u32,
    /// Cells, if it had grown as the cushion did.
    pub expected: u32,
}

/// Returns the counts that jump from one size to the next larger; rows are in any order. The next
/// smaller size is, of those that are nowhere wider or deeper, the one of the greatest area.
///
/// A count jumps where it differs by more than a quarter from what it would be, had it grown as the
/// area of the whole cushion did. Of mirror images the one with the lower number is told.
#[must_use]
pub fn jumps(rows: &[RangeRow]) -> Vec<Jump> {
    let area = |row: &RangeRow| row.pattern.indices().map(|ix| row.pattern.area(ix).to_mm2()).sum();
    let areas: Vec<f64> = rows.iter().map(area).collect();
    let mut found = Vec::new();
    for row in 0..rows.len() {
        let size = rows[row].made.size;
        let smaller = |from: &usize| {
            let own = rows[*from].made.size;
            own != size && own.width() <= size.width() && own.depth() <= size.depth()
        };
        let next = (0..rows.len()).filter(smaller).max_by(|a, b| areas[*a].total_cmp(&areas[*b]));
        if let Some(from) = next {
            found.extend(jumps_between(rows, from, row, areas[row] / areas[from]));
        }
    }
    found
}

fn jumps_between(rows: &[RangeRow], from: usize, row: usize, grown: f64) -> Vec<Jump> {
    let (small, large) = (&rows[from], &rows[row]);
    let mut found: Vec<Jump> = Vec::new();
    for ix in large.pattern.indices() {
        let compartment = &large.pattern[ix];
        let Some(before) = small.pattern.by_number(compartment.number) else { continue };
        let (was, is) = (small.fill[before].cells.stock, large.fill[ix].cells.stock);
        let expected = f64::from(was) * grown;
        let off = (f64::from(is) - expected).abs();
        // A compartment has its partner's counts.
        let told = large.pattern.partner(ix).is_some_and(|own| own < ix);
        if off > JUMP * expected && off >= FEW && !told {
            let (number, id) = (compartment.number, compartment.id.clone());
            let expected = expected.round() as u32;
            found.push(Jump { row, from, number, id, was, is, expected });
        }
    }
    found
}

/// Compartments whose counts are the same at every size: mirror images, mostly.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CountColumn {
    /// Their numbers, from the lowest.
    pub numbers: Vec<u8>,
}

impl CountColumn {
    /// The numbers, such as `3, 4`.
    #[must_use]
    pub fn name(&self) -> String {
        let numbers: Vec<String> = self.numbers.iter().map(u8::to_string).collect();
        numbers.join(", ")
    }
}

/// Puts each compartment together with its mirror image where both have the same counts at every
/// size; in the order of the numbers.
#[must_use]
pub fn columns_of_counts(rows: &[RangeRow]) -> Vec<CountColumn> {
    let mut numbers: Vec<u8> = rows
        .iter()
        .flat_map(|row| row.pattern.compartments().iter().map(|own| own.number))
        .collect();
    numbers.sort_unstable();
    numbers.dedup();
    let counts = |number: u8| -> Vec<_> {
        let of = |row: &RangeRow| row.pattern.by_number(number).map(|ix| row.fill[ix].cells);
        rows.iter().map(of).collect()
    };
    let are_images = |one: u8, other: u8| {
        rows.iter().all(|row| {
            row.pattern.by_number(one).is_none_or(|ix| {
                let partner = row.pattern.partner(ix);
                partner.is_some_and(|ix| row.pattern[ix].number == other)
            })
        })
    };
    let mut columns: Vec<CountColumn> = Vec::new();
    for number in numbers {
        let own = counts(number);
        let like = |column: &&mut CountColumn| {
            let first = column.numbers[0];
            counts(first) == own && are_images(first, number)
        };
        match columns.iter_mut().find(like) {
            Some(column) => column.numbers.push(number),
            None => columns.push(CountColumn { numbers: vec![number] }),
        }
    }
    columns
}
