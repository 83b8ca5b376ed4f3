//! Why there is no stock fill, and why cells are not counted by weight.

use cushion::{Length, Point};

/// Why there is no stock fill.
#[derive(Clone, Debug, PartialEq)]
pub enum StockError {
    /// The pattern cannot be meshed.
    Mesh(MeshError),
    /// The stock crown is not above the walls: the cells would lie loose.
    NoCrown(Length),
}

impl From<MeshError> for StockError {
    fn from(error: MeshError) -> Self {
        Self::Mesh(error)
    }
}

/// Why seams cannot be meshed.
#[derive(Clone, Debug, PartialEq)]
pub enum MeshError {
    /// Two seams run too close to each other to put triangles between them.
    TooClose {
        /// Where, in millimetres.
        at: Point,
    },
    /// The seams enclose nothing.
    Empty,
}

/// Why grams cannot be used.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum BatchError {
    /// The batch is too small.
    FewCells {
        /// Cells counted.
        cells: u32,
        /// The least that is taken.
        least: u32,
    },
    /// The batch is larger than anybody counts by hand.
    ManyCells {
        /// Cells counted.
        cells: u32,
        /// The most that is taken.
        most: u32,
    },
    /// A number is not above zero.
    NotANumber,
    /// One cell would weigh what no cell weighs.
    CellWeight {
        /// Grams of one cell.
        cell: f64,
        /// The least that is taken, g.
        least: f64,
        /// The most that is taken, g.
        most: f64,
    },
    /// The scale cannot tell single cells.
    CoarseScale {
        /// Grams of one cell.
        cell: f64,
        /// The scale's division, in grams.
        division: f64,
    },
}
