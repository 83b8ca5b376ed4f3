//! Moves: cells taken from one place to another, in handfuls.

use std::fmt;

/// Where cells are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// In the compartment of this number.
    Compartment(u8),
    /// In the spare bag.
    Spare,
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Compartment(number) => write!(f, "compartment {number}"),
            Self::Spare => f.write_str("the spare bag"),
        }
    }
}

/// Some cells from one place to another.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Move {
    /// Where they are taken.
    pub from: Place,
    /// Where they are put.
    pub to: Place,
    /// How many.
    pub cells: u32,
}

impl fmt::Display for Move {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let cells = if self.cells == 1 { "cell" } else { "cells" };
        write!(f, "Move {} {cells} from {} to {}", self.cells, self.from, self.to)
    }
}
