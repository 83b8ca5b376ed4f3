//! Moves: cells taken from one place to another, in handfuls.

/// Where cells are.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// In the compartment of this number.
    Compartment(u8),
    /// In the spare bag.
    Spare,
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
