//! Counting by weight: from a reference batch counted by hand and weighed that day.
//!
//! Source: Steiner and MacKay, Scale counting, Technometrics 46, 348 (2004). Grams are of no use
//! without the batch: film and moisture differ from lot to lot.

use case::BatchError;

/// A batch counted by hand and weighed that day on the same scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Batch {
    /// Cells counted.
    pub cells: u32,
    /// Their weight without the vessel, in grams.
    pub grams: f64,
    /// The scale's smallest division, in grams.
    pub division: f64,
}

/// How much single cells differ in weight, as a share: an estimate.
const CELLS_DIFFER: f64 = 0.04;
/// The largest batch: more is not counted by hand.
const MOST_BATCH: u32 = 10_000;
/// What one cell weighs, g: from a thimble of thin film to a bag of half a litre.
const CELL_GRAMS: [f64; 2] = [0.01, 50.0];
/// The least batch: below, its own error outweighs everything.
const LEAST_BATCH: u32 = 20;

/// A count by weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Counted {
    /// Cells, to the nearest.
    pub cells: u32,
    /// Standard deviation, in cells.
    pub sd: f64,
    /// Two standard deviations, rounded up.
    pub plus_minus: u32,
}

impl Batch {
    /// Checks that the batch can be counted with.
    ///
    /// # Errors
    ///
    /// Returns why not.
    pub fn checked(self) -> Result<Self, BatchError> {
        let numbers = self.grams > 0.0 && self.grams.is_finite() && self.division > 0.0;
        if !numbers {
            return Err(BatchError::NotANumber);
        }
        if self.cells < LEAST_BATCH {
            return Err(BatchError::FewCells { cells: self.cells, least: LEAST_BATCH });
        }
        if self.cells > MOST_BATCH {
            return Err(BatchError::ManyCells { cells: self.cells, most: MOST_BATCH });
        }
        let cell = self.cell();
        let [least, most] = CELL_GRAMS;
        if !(least..=most).contains(&cell) {
            return Err(BatchError::CellWeight { cell, least, most });
        }
        if self.division > cell {
            return Err(BatchError::CoarseScale { cell, division: self.division });
        }
        Ok(self)
    }

    /// Grams of one cell.
    #[must_use]
    pub fn cell(&self) -> f64 {
        self.grams / f64::from(self.cells)
    }

    /// Grams of so many cells.
    #[must_use]
    pub fn grams_of(&self, cells: u32) -> f64 {
        self.cell() * f64::from(cells)
    }

    /// The count of what weighs so many grams without its vessel.
    #[must_use]
    pub fn count(&self, grams: f64) -> Counted {
        let cells = grams / self.cell();
        let sd = sd(cells, f64::from(self.cells), self.cell(), self.division, CELLS_DIFFER);
        Counted { cells: cells.round() as u32, sd, plus_minus: (2.0 * sd).ceil() as u32 }
    }
}

/// Standard deviation of a count of `cells` from a batch of `batch` cells of mean mass `cell`,
/// weighed to `division`, where single cells differ by `cv`:
/// `Var = N cv2 + 2 d2/(12 m2) + (N/n0)2 [n0 cv2 + 2 d2/(12 m2)]`.
fn sd(cells: f64, batch: f64, cell: f64, division: f64, cv: f64) -> f64 {
    let weighing = 2.0 * division * division / (12.0 * cell * cell);
    let of_compartment = cells * cv * cv + weighing;
    let of_batch = (cells / batch).powi(2) * (batch * cv * cv + weighing);
    (of_compartment + of_batch).sqrt()
}

/// Returns about how many litres poured cells take, to the nearest half: rough.
#[must_use]
pub fn litres(cells: u32, each: cushion::Volume, packing: f64) -> f64 {
    let litres = f64::from(cells) * each.to_litres() / packing;
    (litres * 2.0).round() / 2.0
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Outside source: the table of `tests/reference/count_by_weight.csv`.
    #[test]
    fn the_error_is_that_of_the_reference_table() {
        let table = include_str!("../../../../tests/reference/count_by_weight.csv");
        let rows = table.lines().skip_while(|line| !line.starts_with("cell_mass")).skip(1);
        let mut seen = 0;
        for row in rows {
            let numbers: Vec<f64> =
                row.split(',').map(|cell| cell.parse().expect("a number")).collect();
            let [cell, division, cells, batch, expected] = numbers[..] else { panic!("{row}") };
            let found = sd(cells, batch, cell, division, 0.04);
            // Half a unit of the last printed digit.
            assert!((found - expected).abs() <= 0.0051, "{row}: {found}");
            seen += 1;
        }
        assert_eq!(seen, 72);
    }

    #[test]
    fn a_count_is_exact_for_equal_cells_and_says_how_sure_it_is() {
        let batch = Batch { cells: 50, grams: 30.0, division: 0.1 }.checked().expect("a batch");
        let counted = batch.count(batch.grams_of(120));
        assert_eq!(counted.cells, 120);
        assert!((0.5..1.5).contains(&counted.sd) && counted.plus_minus == 2);
    }

    #[test]
    fn scales_and_batches_that_cannot_count_are_refused() {
        let batch = |cells, grams, division| Batch { cells, grams, division }.checked();
        assert!(matches!(batch(50, 30.0, 1.0), Err(BatchError::CoarseScale { .. })));
        assert_eq!(batch(10, 6.0, 0.1), Err(BatchError::FewCells { cells: 10, least: 20 }));
        assert_eq!(batch(50, f64::NAN, 0.1), Err(BatchError::NotANumber));
        assert_eq!(batch(50, 30.0, 0.0), Err(BatchError::NotANumber));
        assert!(matches!(batch(50, 1e300, 0.1), Err(BatchError::CellWeight { .. })));
        assert!(matches!(batch(50, 1e-300, 1e-308), Err(BatchError::CellWeight { .. })));
        assert!(matches!(batch(4_000_000_000, 40.0, 0.1), Err(BatchError::ManyCells { .. })));
    }
}
